// The words of one step: prose line by line, brackets, links. No amount is read here.
#include <array>
#include <bitset>

#include "base/scan.hpp"
#include "syntax/read.hpp"

namespace qtn::syntax {
namespace {

enum Mark : unsigned char { kPlain, kLineEnd, kOpen, kEscape, kTick, kMarkup, kAmpersand, kBang };

constexpr std::array<unsigned char, 256> make_marks() {
  std::array<unsigned char, 256> marks{};
  marks['\n'] = kLineEnd;
  marks['['] = kOpen;
  marks['\\'] = kEscape;
  marks['`'] = kTick;
  marks['*'] = marks['_'] = marks['<'] = kMarkup;
  marks['&'] = kAmpersand;
  marks['!'] = kBang;
  return marks;
}
constexpr auto kMarks = make_marks();

class StepReader {
 public:
  StepReader(std::string_view all, Span span, std::vector<Node>& nodes) : all_(all), end_(span.end), nodes_(nodes) {
    at_ = span.begin;
    begin_line();
  }

  void run() {
    while (at_ < end_) {
      switch (kMarks[static_cast<unsigned char>(all_[at_])]) {
        case kPlain: skip_plain(); break;
        case kLineEnd: end_line(); break;
        case kOpen: bracket(); break;
        case kEscape: markup_ = 1; at_ = std::min(at_ + 2, end_); break;
        case kTick: ticks(); break;
        case kMarkup: markup_ = 1; ++at_; break;
        case kAmpersand: ampersand(); break;
        default: bang(); break;
      }
    }
    flush(end_);
  }

 private:
  char peek(std::uint32_t at) const { return at < end_ ? all_[at] : '\0'; }

  void skip_plain() {
    at_ = static_cast<std::uint32_t>(find_any<'\n', '[', '\\', '`', '*', '_', '<', '&', '!'>(all_.substr(0, end_), at_ + 1));  // those of kMarks
  }

  void flush(std::uint32_t end) {
    std::uint32_t last = end;
    while (last > prose_ && (all_[last - 1] == '\r' || all_[last - 1] == '\n')) --last;
    if (last > prose_) leaf(nodes_, Kind::prose, {prose_, last}, markup_);
    markup_ = 0;
  }

  void begin_line() {
    for (;;) {
      while (at_ < end_ && (all_[at_] == ' ' || all_[at_] == '\t')) ++at_;
      if (peek(at_) != '#' || !line_begin_) break;
      const std::size_t stop = all_.find('\n', at_);
      at_ = stop == std::string_view::npos ? end_ : std::min(end_, static_cast<std::uint32_t>(stop) + 1);
    }
    prose_ = at_;
    reported_ = false;
  }

  void end_line() {
    if (at_ >= 2 && all_[at_ - 1] == ' ' && all_[at_ - 2] == ' ') markup_ = 1;  // a hard break
    flush(at_);
    ++at_;
    line_begin_ = true;
    begin_line();
  }

  // A code span hides what is in it. A run of ticks that nothing closes is plain; its length is remembered, so that
  // many of them stay linear.
  void ticks() {
    const std::uint32_t from = at_;
    while (peek(at_) == '`') ++at_;
    const std::uint32_t size = at_ - from;
    markup_ = 1;
    if (size >= unclosed_.size() || unclosed_[size]) return;
    for (std::uint32_t i = at_; i < end_;) {
      if (all_[i] != '`') {
        ++i;
        continue;
      }
      const std::uint32_t run = i;
      while (peek(i) == '`') ++i;
      if (i - run == size) {
        while (at_ < i) {  // prose is told line by line
          if (all_[at_] == '\n') end_line(), markup_ = 1;
          else ++at_;
        }
        return;
      }
    }
    unclosed_[size] = true;
  }

  void ampersand() {
    const char next = peek(at_ + 1);
    if ((next >= 'a' && next <= 'z') || (next >= 'A' && next <= 'Z') || next == '#') markup_ = 1;
    ++at_;
  }

  void bang() {
    if (peek(at_ + 1) == '[') markup_ = 1;  // an image is plain text (L9); its bracket is none
    ++at_;
  }

  void bracket() {
    std::uint32_t lines = 0;
    for (std::uint32_t i = at_ + 1; i < end_; ++i) {
      const char c = all_[i];
      if (c == '[') break;
      if (c == '\n' && ++lines > 1) break;
      if (c != ']') continue;
      if (peek(i + 1) == '(' && link(i)) return;
      flush(at_);
      const std::uint32_t node = open(nodes_, Kind::bracket, at_);
      read_clause(all_, {at_ + 1, i}, nodes_);
      close(nodes_, node, i + 1);
      at_ = prose_ = i + 1;
      return;
    }
    if (!reported_) {  // one a line is enough to mend it
      flush(at_);
      leaf(nodes_, Kind::open_bracket, {at_, at_ + 1});
      prose_ = at_ + 1;
      reported_ = true;
    }
    ++at_;
  }

  bool link(std::uint32_t shut) {
    std::uint32_t i = shut + 2;
    while (i < end_ && all_[i] != ')' && all_[i] != '\n' && all_[i] != '[') ++i;
    if (peek(i) != ')') return false;
    flush(at_);
    leaf(nodes_, Kind::link, {at_, i + 1});
    at_ = prose_ = i + 1;
    return true;
  }

  std::string_view all_;
  std::uint32_t end_;
  std::vector<Node>& nodes_;
  std::uint32_t at_ = 0, prose_ = 0;
  std::uint16_t markup_ = 0;
  bool line_begin_ = false;
  bool reported_ = false;
  std::bitset<64> unclosed_;
};

}  // namespace

void split_step(std::string_view all, Span span, std::vector<Node>& nodes) { StepReader(all, span, nodes).run(); }

}  // namespace qtn::syntax
