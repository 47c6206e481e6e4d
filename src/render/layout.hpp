// What the four renderers share: places in a card, and the few words that a layout needs and a card does not hold.
#pragma once
#include <span>
#include <string_view>

#include "card/card.hpp"

namespace qtn {

inline std::span<const Run> runs_of(const Card& card, Range32 range) {
  return std::span<const Run>(card.runs).subspan(range.first, range.count);
}
inline std::span<const Fact> facts_of(const Card& card, Range32 range) {
  return std::span<const Fact>(card.facts).subspan(range.first, range.count);
}
inline std::span<const Row> rows_of(const Card& card, Range32 range) {
  return std::span<const Row>(card.rows).subspan(range.first, range.count);
}
inline std::span<const CardStep> steps_of(const Card& card, Range32 range) {
  return std::span<const CardStep>(card.steps).subspan(range.first, range.count);
}

inline std::span<const Hour> hours_of(const Card& card, Range32 range) {
  return std::span<const Hour>(card.hours).subspan(range.first, range.count);
}

inline std::span<const Grid> grids_of(const Card& card, Range32 range) {
  return std::span<const Grid>(card.grids).subspan(range.first, range.count);
}
inline bool is_sum(const Grid& grid, std::size_t column) { return column < grid.sums.size() && grid.sums[column]; }

// The columns that stand beside one another.
inline std::size_t columns_beside(const Grid& grid) { return grid.heads.size() - (grid.last_under && grid.heads.size() > 2 ? 1 : 0); }

// Has this list a second column? One of things that are only counted has nothing to say there.
inline bool two_columns(const Card& card, Range32 rows) {
  if (!card.second) return false;
  for (const Row& row : rows_of(card, rows))
    if (!row.second.empty()) return true;
  return false;
}

// Before an alternative line, which the card hands over bare: in a list without columns a word is the only sign.
inline constexpr std::string_view kOr = "or ";
// Around struck words, where a format has no line to draw through them.
inline constexpr std::string_view kLeftOut = "(left out: ";

// "Caution": so that a remark is known for what it is without colour.
constexpr std::string_view word_of(Remark::Kind kind) {
  switch (kind) {
    case Remark::Kind::caution:
      return "Caution";
    case Remark::Kind::watch:
      return "Watch";
    case Remark::Kind::lacking:
      return "Not known";
    case Remark::Kind::note:
      break;
  }
  return "Note";
}
// Cautions are read before the work begins, notes after it.
constexpr bool stands_first(Remark::Kind kind) {
  return kind == Remark::Kind::caution || kind == Remark::Kind::watch;
}

// Stands beside the steps without a number of its own.
constexpr bool is_aside(StepKind kind) { return kind == StepKind::note || kind == StepKind::caution; }
// By hand and by machine are two ways of one step and share its number.
constexpr bool shares_number(StepKind before, StepKind kind) {
  return (before == StepKind::by_hand && kind == StepKind::by_machine) ||
         (before == StepKind::by_machine && kind == StepKind::by_hand);
}

// A part of the panel behind the method is a sentence or two; only where there are several steps are they numbered.
inline bool wants_numbers(const Card& card, Range32 steps) {
  int seen = 0;
  for (const CardStep& step : steps_of(card, steps)) seen += is_aside(step.kind) ? 0 : 1;
  return seen > 1;
}

// May a card lead there? Only http, https, mailto and relative paths; anything else prints its text without a link.
bool may_link(std::string_view target);
// The target of a run's link, empty when it has none or may not have it.
std::string_view link_of(const Card& card, const Run& run);

}  // namespace qtn
