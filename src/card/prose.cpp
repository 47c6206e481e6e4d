// The only file that includes cmark.h.
#include "card/prose.hpp"

#include <cmark.h>

#include <algorithm>
#include <cstring>
#include <memory>

#include "base/scan.hpp"
#include "card/arena.hpp"
#include "card/prose_signs.hpp"

namespace qtn {
namespace {

// Longer marked stretches print as written: the library takes quadratic time for some texts.
constexpr std::size_t kLongest = 1 << 14;

std::size_t next_mark(std::string_view text, std::size_t at) {
  return find_any<'\\', '`', '*', '_', '<', '&', '!', '[', ']'>(text, at);
}
bool is_mark(char c) { return next_mark({&c, 1}, 0) == 0; }
bool is_blank(char c) { return c == ' ' || c == '\t'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

// The blanks nearest to a place in a text, or its ends.
std::size_t word_begin(std::string_view text, std::size_t at) {
  while (at > 0 && !is_blank(text[at - 1])) --at;
  return at;
}
std::size_t word_end(std::string_view text, std::size_t at) {
  while (at < text.size() && !is_blank(text[at])) ++at;
  return at;
}

extern "C" {
void* qtn_take(std::size_t count, std::size_t size) { return Arena::here().take(count, size); }
void* qtn_resize(void* block, std::size_t size) { return Arena::here().resize(block, size); }
void qtn_leave(void*) {}
}

cmark_mem& memory() {
  static cmark_mem functions{qtn_take, qtn_resize, qtn_leave};
  return functions;
}

// Puts a parsed paragraph into the card.
class Reader {
 public:
  Reader(Writer& out, const Signs& signs, OwnFragments* own, std::vector<bool>& seen)
      : out_(out), signs_(signs), own_(own), seen_(seen) {}

  // False when the text did not come through whole; then what was written is to be taken back.
  bool read(cmark_node* document) {
    cmark_node* const paragraph = cmark_node_first_child(document);
    if (paragraph == nullptr || cmark_node_next(paragraph) != nullptr) return false;
    if (cmark_node_get_type(paragraph) != CMARK_NODE_PARAGRAPH) return false;
    cmark_iter* const walk = cmark_iter_new(paragraph);
    for (cmark_event_type event = cmark_iter_next(walk); event != CMARK_EVENT_DONE; event = cmark_iter_next(walk)) {
      node(cmark_iter_get_node(walk), event == CMARK_EVENT_ENTER);
    }
    out_.style = 0;
    out_.link = 0;
    return whole_;
  }

 private:
  void node(cmark_node* node, bool enter) {
    switch (cmark_node_get_type(node)) {
      case CMARK_NODE_TEXT: return literal(cmark_node_get_literal(node));
      case CMARK_NODE_CODE:
        out_.style = static_cast<std::uint8_t>(out_.style | kCode);
        literal(cmark_node_get_literal(node));
        out_.style = static_cast<std::uint8_t>(out_.style & ~kCode);
        return;
      case CMARK_NODE_HTML_INLINE: return html(cmark_node_get_literal(node));
      case CMARK_NODE_SOFTBREAK:
      case CMARK_NODE_LINEBREAK: return out_.blank();
      case CMARK_NODE_EMPH: return weight(kEmphasis, emphasis_, enter);
      case CMARK_NODE_STRONG: return weight(kStrong, strong_, enter);
      case CMARK_NODE_LINK: return link(node, enter);
      case CMARK_NODE_IMAGE: return image(node, enter);
      default: return;
    }
  }

  void weight(Style style, int& depth, bool enter) {
    depth += enter ? 1 : -1;
    out_.style = static_cast<std::uint8_t>(depth > 0 ? out_.style | style : out_.style & ~style);
  }

  void link(cmark_node* node, bool enter) {
    if (!enter) {
      out_.link = 0;
      return;
    }
    const std::string_view target = cmark_node_get_url(node);
    if (holds_sign(target) || holds_sign(cmark_node_get_title(node))) whole_ = false;
    if (!target.empty()) out_.link = out_.add_link(target);
  }

  // An image is plain text: as it was written.
  void image(cmark_node* node, bool enter) {
    if (enter) return out_.put("![");
    out_.put("](");
    literal(cmark_node_get_url(node));
    if (const std::string_view title = cmark_node_get_title(node); !title.empty()) {
      out_.put(" \"");
      literal(title);
      out_.put("\"");
    }
    out_.put(")");
  }

  void html(std::string_view tag) {
    std::string line(tag);
    std::replace(line.begin(), line.end(), '\n', ' ');
    literal(line);
  }

  bool holds_sign(std::string_view text) const {
    return text.find(signs_.own()) < text.size() || text.find(signs_.line()) < text.size();
  }

  void literal(std::string_view text) {
    std::size_t from = 0;
    for (std::size_t at = text.find(Signs::kLead); at < text.size(); at = text.find(Signs::kLead, at)) {
      if (text.substr(at, 3) == signs_.line()) {
        out_.put(text.substr(from, at - from));
        at += 3;
        while (at < text.size() && is_blank(text[at])) ++at;
        from = at;
      } else if (text.substr(at, 3) == signs_.own()) {
        const std::size_t open = at;
        const std::size_t number = own_number(text, at);
        if (number == std::string_view::npos || open == from || text[open - 1] != '{') {
          whole_ = false;
          return;
        }
        out_.put(text.substr(from, open - 1 - from));
        own_->write_own(number);
        from = at;
      } else {
        ++at;
      }
    }
    out_.put(text.substr(from));
  }

  // Reads sign, digits, sign, "}" and leaves `at` behind them; npos when it is not that, or comes a second time.
  std::size_t own_number(std::string_view text, std::size_t& at) {
    std::size_t number = 0;
    for (at += 3; at < text.size() && text[at] >= '0' && text[at] <= '9'; ++at) {
      number = number * 10 + static_cast<std::size_t>(text[at] - '0');
      if (number >= seen_.size()) return std::string_view::npos;
    }
    if (text.substr(at, 3) != signs_.own() || text.substr(at + 3, 1) != "}") return std::string_view::npos;
    at += 4;
    if (own_ == nullptr || seen_[number]) return std::string_view::npos;
    seen_[number] = true;
    return number;
  }

  Writer& out_;
  const Signs& signs_;
  OwnFragments* own_;
  std::vector<bool>& seen_;
  int emphasis_ = 0, strong_ = 0;
  bool whole_ = true;
};

// Appends text for the library: every line behind the sign, so that it opens no block.
void append_lines(std::string& buffer, std::string_view text, std::string_view sign) {
  for (std::size_t at = 0;;) {
    const std::size_t end = text.find_first_of("\r\n", at);
    buffer.append(text.substr(at, end - at));
    if (end == std::string_view::npos) return;
    at = end;
    while (at < text.size() && (text[at] == '\r' || text[at] == '\n' || is_blank(text[at]))) ++at;
    buffer += '\n';
    buffer.append(sign);
    buffer += ' ';
  }
}

}  // namespace

std::size_t first_mark(std::string_view text) {
  for (std::size_t at = next_mark(text, 0); at < text.size(); at = next_mark(text, at + 1)) {
    const char next = at + 1 < text.size() ? text[at + 1] : ' ';
    if (text[at] == '&' && !is_letter(next) && next != '#') continue;  // "soft & sweet"
    if (text[at] == '!' && next != '[') continue;
    return at;
  }
  return text.size();
}

void Prose::write(std::string_view text) {
  const std::size_t mark = first_mark(text);
  if (mark < text.size()) {
    const Fragment all{text, false, false, true};
    const std::span<const Fragment> one(&all, 1);
    const Writer::Mark before = out_.mark();
    if (marked(one, {0, 0, 0, text.size()}, nullptr)) return;
    out_.take_back(before);
  }
  out_.collapsed(text, Role::text);
}

void Prose::write(std::span<const Fragment> fragments, OwnFragments& own) {
  Window window{};
  if (!window_of(fragments, window)) return plain(fragments, 0, fragments.size(), own);
  const Writer::Mark before = out_.mark();
  plain(fragments, 0, window.first, own);
  if (fragments[window.first].line_start) out_.blank();
  if (!fragments[window.first].own) out_.put(fragments[window.first].text.substr(0, window.from));
  if (!marked(fragments, window, &own)) {
    out_.take_back(before);
    return plain(fragments, 0, fragments.size(), own);
  }
  const Fragment& last = fragments[window.last];
  if (!last.own) out_.put(last.text.substr(window.to));
  plain(fragments, window.last + 1, fragments.size(), own);
}

// From the blank before the first mark to the blank after the last, since what stands beside a mark gives it its
// meaning. Where no blank parts a mark from a clause, the clause belongs to it; so does the next line to a backslash.
bool Prose::window_of(std::span<const Fragment> fragments, Window& window) const {
  const auto holds_mark = [&](std::size_t i) {
    const Fragment& one = fragments[i];
    return one.marked && !one.own && first_mark(one.text) < one.text.size();
  };
  std::size_t first = 0, last = fragments.size();
  while (first < last && !holds_mark(first)) ++first;
  if (first == last) return false;
  while (!holds_mark(last - 1)) --last;
  --last;

  std::string_view text = fragments[first].text;
  std::size_t from = word_begin(text, first_mark(text));
  if (from == 0 && first > 0 && !fragments[first].line_start) {
    --first;
    // Of prose only its last word touches; blanks at the ends of a window would be lost.
    if (!fragments[first].own) from = word_begin(fragments[first].text, fragments[first].text.size());
  }

  text = fragments[last].text;
  std::size_t to = text.size();
  while (!is_mark(text[to - 1])) --to;
  to = word_end(text, to);
  const bool touches_next = last + 1 < fragments.size() && (!fragments[last + 1].line_start || text.back() == '\\');
  if (to == text.size() && touches_next) {
    ++last;
    to = fragments[last].own ? 0 : word_end(fragments[last].text, 0);
  }
  window = {first, last, from, to};
  return true;
}

bool Prose::marked(std::span<const Fragment> fragments, const Window& window, OwnFragments* own) {
  const auto part_of = [&](std::size_t i) {
    const std::size_t to = i == window.last ? window.to : std::string_view::npos;
    const std::size_t from = i == window.first ? window.from : 0;
    return fragments[i].text.substr(from, to - from);
  };
  Signs signs;
  std::size_t size = 0;
  for (std::size_t i = window.first; i <= window.last; ++i) {
    if (fragments[i].own) continue;
    signs.avoid(part_of(i));
    size += part_of(i).size();
  }
  if (size > kLongest || window.last - window.first > kLongest || !signs.choose()) return false;

  buffer_.clear();
  buffer_.append(signs.line());
  buffer_ += ' ';
  seen_.assign(fragments.size(), false);
  std::size_t wanted = 0;
  for (std::size_t i = window.first; i <= window.last; ++i) {
    const Fragment& one = fragments[i];
    if (one.line_start && i != window.first) append_lines(buffer_, "\n", signs.line());
    if (!one.own) {
      append_lines(buffer_, part_of(i), signs.line());
      continue;
    }
    // Braces mean nothing in CommonMark, and are punctuation to a mark beside them as the bracket was.
    buffer_ += '{';
    buffer_.append(signs.own());
    buffer_ += std::to_string(i);
    buffer_.append(signs.own());
    buffer_ += '}';
    ++wanted;
  }

  cmark_parser* const parser = cmark_parser_new_with_mem(CMARK_OPT_VALIDATE_UTF8, &memory());
  cmark_parser_feed(parser, buffer_.data(), buffer_.size());
  cmark_node* const document = cmark_parser_finish(parser);
  const bool whole = Reader(out_, signs, own, seen_).read(document);
  cmark_parser_free(parser);
  Arena::here().reset();
  return whole && static_cast<std::size_t>(std::count(seen_.begin(), seen_.end(), true)) == wanted;
}

void Prose::plain(std::span<const Fragment> fragments, std::size_t first, std::size_t last, OwnFragments& own) {
  for (std::size_t i = first; i < last; ++i) {
    if (fragments[i].line_start) out_.blank();
    if (fragments[i].own) {
      own.write_own(i);
      continue;
    }
    std::string_view text = fragments[i].text;
    const bool ends_line = i + 1 < fragments.size() && fragments[i + 1].line_start;
    while (ends_line && !text.empty() && is_blank(text.back())) text.remove_suffix(1);
    out_.put(text);
  }
}

}  // namespace qtn
