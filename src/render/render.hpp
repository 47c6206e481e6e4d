// A card, or a run sheet, in one of its outputs. Layout and escaping only: no arithmetic, no look-ups, no words of its own beyond
// what a format demands.
#pragma once
#include <span>
#include <string>

#include "card/card.hpp"

namespace qtn {

enum class Format : std::uint8_t { markdown, html, text, json, ical, csv };
// What a format is asked for: a calendar is of a run sheet only, columns are of an order.
enum class Paper : std::uint8_t { card, day, order };

// Appends to `out`, so that many cards can share one buffer.
void render_markdown(const Card& card, std::string& out);  // CommonMark
void render_html(const Card& card, std::string& out);      // one self-contained file
void render_text(const Card& card, std::string& out);      // plain text, no markup characters
void render_json(const Card& card, std::string& out);      // display text beside exact values
void render_ical(const Card& card, std::string& out);      // of a run sheet: RFC 5545
void render_csv(const Card& card, std::string& out);       // of an order, its records: RFC 4180
void render(Format format, const Card& card, std::string& out);
// A table's own card and one for each dish: one page in HTML, one after another in any other output.
void render(Format format, std::span<const Card> cards, std::string& out);
void render_html(std::span<const Card> cards, std::string& out);

// The row of the formats table: name ("html"), file ending ("html"), what it is for.
struct FormatRow {
  Format format;
  std::string_view name, ending, purpose;
};
const FormatRow* find_format(std::string_view name, Paper paper = Paper::card);
std::string format_names(Paper paper = Paper::card);  // "markdown, html, text, json"

}  // namespace qtn
