// The outer level: lines, fields, blocks, steps. The one place that knows lines; amounts are read by read.cpp.
#include <algorithm>
#include <array>
#include <cstring>

#include "base/scan.hpp"
#include "diag/nearest.hpp"
#include "syntax/read.hpp"
#include "words/lexicon.hpp"

namespace qtn {
namespace syntax {
namespace {

bool is_thin(char c) { return c == ' ' || c == '\t'; }
// What a field's word may hold.
constexpr auto kFieldBytes = [] {
  std::array<bool, 256> out{};
  for (unsigned c = 0; c < 256; ++c)
    out[c] = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '-' || c >= 0x80 || c == ' ' || c == '\t';
  return out;
}();

class Splitter {
 public:
  Splitter(std::string_view text, Tree& tree) : text_(text), tree_(tree), nodes_(tree.nodes) {}

  void run() {
    tree_.clear();
    const auto size = static_cast<std::uint32_t>(text_.size());
    const std::uint32_t file = open(nodes_, Kind::file, 0);
    std::uint32_t at = 0;
    if (text_.substr(0, 3) == "\xEF\xBB\xBF") at = 3;  // a byte-order mark is tolerated
    for (std::uint32_t begin = 0; begin < size;) {
      const auto* stop = static_cast<const char*>(std::memchr(text_.data() + at, '\n', size - at));
      const std::uint32_t next = stop == nullptr ? size : static_cast<std::uint32_t>(stop - text_.data()) + 1;
      std::uint32_t end = stop == nullptr ? size : next - 1;
      if (end > at && text_[end - 1] == '\r') --end;
      tree_.lines.push_back({begin, LineKind::blank});
      line(at, end);
      begin = at = next;
    }
    end_step();
    end_value();
    end_block();
    close(nodes_, file, size);
  }

 private:
  enum class At { start, head, list, steps, log, facts };

  void mark(LineKind kind) { tree_.lines.back().kind = kind; }

  void line(std::uint32_t begin, std::uint32_t end) {
    std::uint32_t first = begin;
    while (first < end && is_thin(text_[first])) ++first;
    if (first == end) return blank();
    if (text_[first] == '#') return mark(LineKind::comment);
    if (field(begin, first, end)) return;
    switch (at_) {
      case At::start:
      case At::head: return head_line(first, end);
      case At::list: return take_line(first, end);
      case At::steps: return step_line(first, end);
      case At::log: return log_line(first, end);
      case At::facts: return fact_line(first, end);
    }
  }

  void blank() {
    end_step();
    end_value();
    note_open_ = false;
  }

  // ---- fields -----------------------------------------------------------------------------------------------------
  unsigned allowed() const {
    switch (at_) {
      case At::start: return kAnyHead;
      case At::head: return head_;
      case At::list: return kEnds;
      case At::steps: return kEnds | kSteps;
      case At::log: return kEnds | kLog;
      case At::facts: return tree_.kind == FileKind::kitchen ? unsigned{kKitchen} : unsigned{kEnds | kRecipe};
    }
    return 0;
  }

  // A word or a few, then a colon, at the start of a line.
  std::uint32_t colon_after(std::uint32_t first, std::uint32_t end) const {
    if (!kFieldBytes[static_cast<unsigned char>(text_[first])]) return 0;  // most lines of a list begin with a digit
    const std::uint32_t last = std::min(end, first + 32);
    const auto colon = static_cast<std::uint32_t>(find_any<':'>(text_.substr(0, last), first));
    if (colon == last) return 0;
    for (std::uint32_t i = first; i < colon; ++i)
      if (!kFieldBytes[static_cast<unsigned char>(text_[i])]) return 0;
    return colon;
  }

  bool field(std::uint32_t begin, std::uint32_t first, std::uint32_t end) {
    const std::uint32_t colon = colon_after(first, end);
    if (colon <= first) return false;
    std::uint32_t word_end = colon;
    while (word_end > first && is_thin(text_[word_end - 1])) --word_end;
    const std::string_view word = text_.substr(first, word_end - first);
    const bool in_head = at_ == At::head || at_ == At::start;
    std::uint16_t misspelt = 0;
    const FieldRow* row = find_field(word);
    if (row == nullptr || (row->where & allowed()) == 0) {
      if (at_ == At::start && row != nullptr) {  // H11: the rest is read as a recipe
        begin_file(FileKind::recipe);
        return field(begin, first, end);
      }
      const FieldRow* const near = row != nullptr ? nullptr : nearest_field(word, begin == first || in_head);
      if (near == nullptr) {
        if (!in_head) return false;
        unknown(first, word_end, colon, end, row);
        return true;
      }
      row = near;
      misspelt = kMisspelt;
    }
    start_field(*row, misspelt, {first, word_end}, colon + 1, end);
    return true;
  }

  const FieldRow* nearest_field(std::string_view word, bool column_one) const {
    if (!column_one) return nullptr;
    if (at_ != At::head && at_ != At::start && Lexicon::standard().longest(word, kVerbWord)) return nullptr;
    const FieldRow* best = nullptr;
    const int most = word.size() >= 7 ? 2 : 1;
    int best_distance = most + 1;
    for (std::string_view known : field_words(allowed())) {
      if (at_ == At::start && begins_part(*find_field(known))) continue;
      const int far = distance(word, known, most);
      if (far < best_distance) best_distance = far, best = find_field(known);
    }
    return best;
  }

  void unknown(std::uint32_t first, std::uint32_t word_end, std::uint32_t colon, std::uint32_t end, const FieldRow* row) {
    end_value();
    end_step();
    if (at_ == At::start) begin_file(FileKind::recipe);
    mark(LineKind::bad);
    const std::uint32_t node = open(nodes_, Kind::unknown_field, first, static_cast<std::uint16_t>(row != nullptr ? row->field : Field::none));
    leaf(nodes_, Kind::word, {first, word_end});
    value_ = node;
    value_end_ = std::max(end, colon + 1);
    value_field_ = Field::none;
  }

  void begin_file(FileKind kind) {
    tree_.kind = kind;
    head_ = kind == FileKind::menu ? kMenu : kind == FileKind::kitchen ? kKitchen : kRecipe;
    at_ = At::head;
  }

  void start_field(const FieldRow& row, std::uint16_t misspelt, Span word, std::uint32_t after, std::uint32_t end) {
    end_step();
    end_value();
    note_open_ = false;
    if (at_ == At::start) {
      if (row.field == Field::menu) begin_file(FileKind::menu);
      else if (row.field == Field::kitchen) begin_file(FileKind::kitchen);
      else begin_file(FileKind::recipe);
    }
    while (after < end && is_thin(text_[after])) ++after;
    const auto value = static_cast<std::uint16_t>(static_cast<std::uint16_t>(row.field) | misspelt);
    mark(LineKind::field);
    if (row.shape == Shape::opener) return start_opener(row.field, value, word, after, end);
    if (row.field == Field::note && (at_ == At::steps || at_ == At::log)) return start_note(word, after, end);
    if (row.shape == Shape::value || row.shape == Shape::text) return start_value(row, value, word, after, end);
    start_block(row, value, word, after, end);
  }

  void start_value(const FieldRow& row, std::uint16_t value, Span word, std::uint32_t after, std::uint32_t end) {
    end_block();
    if (row.field == Field::part) head_ = kPart;
    if (at_ == At::facts) head_ = tree_.kind == FileKind::kitchen ? unsigned{kKitchen} : head_;
    at_ = At::head;
    value_ = open(nodes_, Kind::field, word.begin, value);
    leaf(nodes_, Kind::word, word);
    value_field_ = row.field;
    value_begin_ = after;
    value_end_ = std::max(end, after);
  }

  void end_value() {
    if (value_ == 0) return;
    while (value_end_ > value_begin_ && is_thin(text_[value_end_ - 1])) --value_end_;
    if (value_field_ != Field::none && value_end_ > value_begin_) {
      const Span span{value_begin_, value_end_};
      if (row(value_field_).shape == Shape::text) leaf(nodes_, Kind::text, span);
      else if (!read_value(value_field_, text_, span, nodes_)) leaf(nodes_, Kind::bad_value, span);
    }
    close(nodes_, value_, value_end_);
    value_ = 0;
  }

  void head_line(std::uint32_t first, std::uint32_t end) {
    if (value_ != 0) {
      mark(LineKind::more);
      value_end_ = end;
      return;
    }
    mark(LineKind::bad);
    if (at_ == At::start) begin_file(FileKind::recipe);
    leaf(nodes_, Kind::bad_line, {first, trimmed(end)});
  }

  // ---- blocks -----------------------------------------------------------------------------------------------------
  void start_block(const FieldRow& row, std::uint16_t value, Span word, std::uint32_t after, std::uint32_t end) {
    end_block();
    block_ = open(nodes_, Kind::block, word.begin, value);
    block_field_ = row.field;
    leaf(nodes_, Kind::word, word);
    const Span rest{std::min(after, end), end};
    switch (row.shape) {
      case Shape::list:
        at_ = At::list;
        if (!rest.empty() && !read_take_head(text_, rest, nodes_)) leaf(nodes_, Kind::bad_value, rest);
        break;
      case Shape::log:
        at_ = At::log;
        if (!rest.empty()) leaf(nodes_, Kind::block_name, {rest.begin, trimmed(rest.end)});
        break;
      case Shape::facts:
        at_ = At::facts;
        if (!rest.empty()) fact_line(rest.begin, rest.end), mark(LineKind::field);
        break;
      default:
        at_ = At::steps;
        if (!rest.empty()) open_step(Opener::none, rest.begin, rest.end);
        break;
    }
    block_end_ = end;
  }

  void end_block() {
    end_step();
    if (block_ == 0) return;
    const Node& last = nodes_.back();
    close(nodes_, block_, std::max(block_end_, last.end));
    block_ = 0;
  }

  std::uint32_t trimmed(std::uint32_t end) const {
    while (end > 0 && is_thin(text_[end - 1])) --end;
    return end;
  }

  void take_line(std::uint32_t first, std::uint32_t end) {
    mark(LineKind::take_line);
    const Span span{first, trimmed(end)};
    const std::uint32_t node = open(nodes_, Kind::take_line, first);
    if (!read_take_line(text_, span, nodes_)) {
      mark(LineKind::bad);
      nodes_[node].kind = Kind::bad_line;
    }
    close(nodes_, node, span.end);
    block_end_ = span.end;
  }

  void log_line(std::uint32_t first, std::uint32_t end) {
    const Span span{first, trimmed(end)};
    block_end_ = span.end;
    if (note_open_) {  // a note goes on
      nodes_.back().end = span.end;
      mark(LineKind::more);
      return;
    }
    const std::uint32_t node = open(nodes_, Kind::change, first);
    const bool read = read_change(text_, span, nodes_);
    mark(read ? LineKind::change : LineKind::bad);
    if (!read) nodes_[node].kind = Kind::bad_line;
    close(nodes_, node, span.end);
  }

  void fact_line(std::uint32_t first, std::uint32_t end) {
    const Span span{first, trimmed(end)};
    const std::uint32_t node = open(nodes_, Kind::fact, first);
    const bool read = read_fact(block_field_, text_, span, nodes_);
    mark(read ? LineKind::fact : LineKind::bad);
    if (!read) nodes_[node].kind = Kind::bad_line;
    close(nodes_, node, span.end);
    block_end_ = span.end;
  }

  // ---- steps ------------------------------------------------------------------------------------------------------
  void open_step(Opener opener, std::uint32_t begin, std::uint32_t end) {
    step_ = open(nodes_, Kind::step, begin, static_cast<std::uint16_t>(opener));
    step_begin_ = begin;
    step_end_ = end;
  }

  void end_step() {
    if (step_ == 0) return;
    split_step(text_, {step_begin_, step_end_}, nodes_);
    close(nodes_, step_, step_end_);
    block_end_ = step_end_;
    step_ = 0;
  }

  void step_line(std::uint32_t first, std::uint32_t end) {
    mark(LineKind::prose);
    if (note_open_) {
      nodes_.back().end = trimmed(end);
      block_end_ = end;
      mark(LineKind::more);
      return;
    }
    if (step_ != 0) step_end_ = end;
    else open_step(Opener::none, first, end);
  }

  void start_opener(Field field, std::uint16_t value, Span word, std::uint32_t after, std::uint32_t end) {
    mark(LineKind::opener);
    const Opener opener = field == Field::meanwhile ? Opener::meanwhile
                          : field == Field::ahead   ? Opener::ahead
                          : field == Field::by_hand ? Opener::by_hand
                                                    : Opener::by_machine;
    open_step(opener, word.begin, end);
    nodes_.back().value = static_cast<std::uint16_t>(nodes_.back().value | (value & kMisspelt));
    leaf(nodes_, Kind::word, word);
    step_begin_ = std::min(after, end);
  }

  void start_note(Span, std::uint32_t after, std::uint32_t end) {
    mark(LineKind::note);
    leaf(nodes_, Kind::note, {after, std::max(after, trimmed(end))});  // an empty one ends where it begins
    block_end_ = end;
    note_open_ = true;
  }

  std::string_view text_;
  Tree& tree_;
  std::vector<Node>& nodes_;
  At at_ = At::start;
  unsigned head_ = kRecipe;
  std::uint32_t value_ = 0, value_begin_ = 0, value_end_ = 0;
  Field value_field_ = Field::none;
  std::uint32_t block_ = 0, block_end_ = 0;
  Field block_field_ = Field::none;
  std::uint32_t step_ = 0, step_begin_ = 0, step_end_ = 0;
  bool note_open_ = false;
};

}  // namespace
}  // namespace syntax

void parse(std::string_view text, Tree& tree) { syntax::Splitter(text, tree).run(); }

bool parse_action(std::string_view text, Span rest, Tree& tree) {
  tree.clear();
  const std::uint32_t node = syntax::open(tree.nodes, Kind::action, rest.begin);
  const bool read = syntax::read_action(text, rest, tree.nodes);
  syntax::close(tree.nodes, node, rest.end);
  return read;
}

bool parse_value(Field field, std::string_view text, Span span, Tree& tree) {
  tree.clear();
  const std::uint32_t node = syntax::open(tree.nodes, Kind::field, span.begin, static_cast<std::uint16_t>(field));
  const bool read = syntax::read_value(field, text, span, tree.nodes);
  syntax::close(tree.nodes, node, span.end);
  return read;
}

void parse_line(std::string_view text, Tree& tree) {
  tree.clear();
  const auto size = static_cast<std::uint32_t>(text.size());
  tree.lines.push_back({0, LineKind::take_line});
  const std::uint32_t node = syntax::open(tree.nodes, Kind::take_line, 0);
  if (!syntax::read_take_line(text, {0, size}, tree.nodes)) tree.nodes[node].kind = Kind::bad_line;
  syntax::close(tree.nodes, node, size);
}

}  // namespace qtn
