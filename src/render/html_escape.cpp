#include "render/html_escape.hpp"

#include "base/scan.hpp"

namespace qtn {
std::size_t first_special(std::string_view text) { return find_any<'"', '&', '<', '>'>(text); }

void put_escaped(Ink& ink, std::string_view text) {
  for (;;) {
    const std::size_t clean = first_special(text);
    ink.put(text.substr(0, clean));
    if (clean == text.size()) return;
    switch (text[clean]) {
      case '&':
        ink.mark("&amp;");
        break;
      case '<':
        ink.mark("&lt;");
        break;
      case '>':
        ink.mark("&gt;");
        break;
      default:
        ink.mark("&quot;");
    }
    text.remove_prefix(clean + 1);
  }
}

}  // namespace qtn
