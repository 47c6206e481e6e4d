// A card in one of four outputs. Layout and escaping only: no arithmetic, no look-ups, no words of its own beyond
// what a format demands.
#pragma once
#include <string>

#include "card/card.hpp"

namespace qtn {

enum class Format : std::uint8_t { markdown, html, text, json };

// Appends to `out`, so that many cards can share one buffer.
void render_markdown(const Card& card, std::string& out);  // CommonMark
void render_html(const Card& card, std::string& out);      // one self-contained file
void render_text(const Card& card, std::string& out);      // plain text, no markup characters
void render_json(const Card& card, std::string& out);      // display text beside exact values
void render(Format format, const Card& card, std::string& out);

// The row of the formats table: name ("html"), file ending ("html"), what it is for.
struct FormatRow {
  Format format;
  std::string_view name, ending, purpose;
};
const FormatRow* find_format(std::string_view name);
std::string format_names();  // "markdown, html, text, json"

}  // namespace qtn
