// A card: what is said, in which order, in which words. Everything a reader sees is decided here; a renderer only lays
// out and escapes. All text lives in one string; runs are places in it.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "measure/quantity.hpp"

namespace qtn {

enum class Role : std::uint8_t {
  text,         // prose
  amount,       // "220 g", "1½": a number with its unit, to be kept on one line
  second,       // the other measure, quieter
  name,         // an ingredient, a part, a dish
  time,         // "30 to 35 min"
  temperature,  // "190 °C"
  reading,      // "78 °C" at the core
  measure,      // "3 mm"
  pieces,       // "8 slices"
  spent,        // what an in-step mention comes to: "(100 g)"
  struck,       // a line that this version leaves out
};

// Bits of Run::style, from the writer's own CommonMark.
enum Style : std::uint8_t { kStrong = 1, kEmphasis = 2, kCode = 4 };

struct Run {
  std::uint32_t begin = 0, size = 0;  // in Card::text
  Role role = Role::text;
  std::uint8_t style = 0;
  std::uint16_t link = 0;   // index into Card::links; 0: none
  std::uint32_t exact = 0;  // index into Card::exacts; 0: none
};

struct Range32 {
  std::uint32_t first = 0, count = 0;
  bool empty() const { return count == 0; }
};

// A label and what it says: "Makes" "1 tart".
struct Fact {
  std::uint16_t kind = 0;  // enum FactKind, for JSON keys and icons of none
  Range32 label, value;    // of runs
};
enum class FactKind : std::uint16_t {
  makes, serves, tin, oven, keeps, ready, needs, scales, batch, source, by, date, standardized, edition, serve, guests,
};

// One ingredient line.
struct Row {
  Range32 amount;   // runs; may be empty
  Range32 second;   // runs; the column beside, may be empty
  Range32 name;     // runs
  Range32 rest;     // runs: preparation and tails, without the comma before them
  bool alternative = false;  // an `or` line: stands under the line it replaces
  bool optional = false;
  bool rough = false;        // ≈ somewhere in the amount
};

enum class StepKind : std::uint8_t { step, meanwhile, ahead, by_hand, by_machine, note };

struct CardStep {
  StepKind kind = StepKind::step;
  Range32 label;  // runs: "Meanwhile", "Ahead", "By hand"; empty for a plain step
  Range32 runs;
};

// A part, or a block after the dish. Steps are numbered through the section by the renderer, notes and openers too
// where they are steps of their own (`note` is not).
struct Section {
  Range32 title;  // runs; empty when the dish has one unnamed part
  Range32 facts;  // of Card::facts
  Range32 rows;
  Range32 steps;
};

struct Remark {
  enum class Kind : std::uint8_t { caution, note, watch, lacking } kind = Kind::note;
  Range32 runs;
};

// One tasting that the card remembers.
struct TrialLine {
  Range32 date, runs;
};

struct Card {
  std::string text;
  std::vector<Run> runs;
  std::vector<std::string> links{{}};
  std::vector<Quantity> exacts{{}};
  std::vector<Fact> facts;
  std::vector<Row> rows;
  std::vector<CardStep> steps;

  Range32 title;              // runs
  Range32 edition;            // runs: "scaled to 3 times", "for 20"; empty as written
  Range32 head;               // of facts: of the whole dish
  std::vector<Section> parts;
  std::vector<Section> after; // to keep, to freeze, to reheat, to finish
  std::vector<Remark> remarks;
  std::vector<TrialLine> trials;
  // Headings in the card's words, as runs: "You need", "Method", "Tastings", "Amounts".
  Range32 list_heading, method_heading, trials_heading, notes_heading;
  // Column heads when a second column is shown: "grams", "ounces".
  Range32 first_column, second_column;
  bool second = false;
  std::string_view language = "en-GB";  // BCP 47

  std::string_view view(const Run& run) const { return std::string_view(text).substr(run.begin, run.size); }
};

}  // namespace qtn
