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
  makes, serves, tin, oven, keeps, ready, needs, scales, batch, source, by, date, tasted, edition, serve, guests, measures,
  begin, hands_on, waiting, whole, proof, time, contains, contains_instead, see_label, not_known, checked,
  comes, wanted, order_by, dishes, cost, portion, price,
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

enum class StepKind : std::uint8_t { step, meanwhile, ahead, by_hand, by_machine, note, caution };

struct CardStep {
  StepKind kind = StepKind::step;
  Range32 label;  // runs: "Meanwhile", "Ahead", "By hand"; empty for a plain step
  Range32 runs;
};

// One line of a run sheet.
struct Hour {
  enum class Kind : std::uint8_t { hands, watched, waits, serving } kind = Kind::hands;
  Range32 from, until;   // runs: "16:40"; `until` is empty where it is the same
  Range32 name;          // the dish and its part
  Range32 words;         // what is done
  Range32 who;           // "cook 1, oven"; may be empty
  Range32 why;           // why no later; may be empty
  Range32 aside;         // both, as a line prints them behind the rest
  bool rough = false;    // ≈: its length is not written
  int times = 1;         // this often, `every` minutes apart
  int every = 0;
  std::string key;       // names it from one plan to the next
  // ISO 8601; `utc` ones are empty without a zone.
  std::string from_wall, until_wall, from_utc, until_utc;
};

// Which serving a run sheet is for, and how often it was planned again: what stays the same when its hours move.
struct Serving {
  std::string wall, utc;  // ISO 8601, the first dish at table; `wall` is empty on any other paper, `utc` without a zone
  int revision = 0;       // one more than that of the earlier sheet that was kept to
};

// A day as a drawing: strips of hours, lanes one above the other. Lengths are minutes, from the strip's left edge.
struct Bar {
  std::uint16_t lane = 0;
  int from = 0, until = 0;
  Hour::Kind kind = Hour::Kind::hands;
  std::string label;
};
struct Strip {
  std::string title;                           // "Saturday 28 February 2026"
  int length = 0;
  std::vector<std::pair<int, std::string>> hours;  // marks of the axis
  std::vector<std::pair<int, int>> nights;
  std::vector<std::pair<int, std::string>> servings;  // "At table 18:30: Leek tart"
  std::vector<Bar> bars;
};
struct Drawing {
  std::string title;
  std::vector<std::string> lanes;
  std::vector<Strip> strips;
  bool empty() const { return strips.empty(); }
};

// A table of words and figures: orders, costs, readings. The first cell of a row names it.
struct Grid {
  std::vector<Range32> heads;              // of runs, one a column
  std::vector<std::vector<Range32>> rows;  // of runs, one a cell
  std::vector<bool> sums;                  // by column: set right, as figures to be added are; may be shorter
  bool to_fill = false;                    // an empty cell is a blank to write in
  bool last_is_total = false;              // a rule stands above the last row
  bool narrow = false;                     // fits a telephone; it is never pushed sideways
  bool last_under = false;                 // the last column stands under its row, over the whole width
};

enum class AfterKind : std::uint8_t { none, keep, freeze, reheat, finish };

// A part, or a block after the dish. Steps are numbered through the section by the renderer, openers too where they are
// steps of their own (notes and cautions are not).
struct Section {
  Range32 title;  // runs; empty when the dish has one unnamed part
  Range32 facts;  // of Card::facts
  Range32 rows;
  Range32 steps;
  Range32 hours;  // of a run sheet
  Range32 grids;  // of Card::grids
  AfterKind kind = AfterKind::none;  // of a block after the dish
};

struct Remark {
  enum class Kind : std::uint8_t { caution, note, watch, lacking } kind = Kind::note;
  Range32 runs;
};

// One tasting that the card remembers.
struct TrialLine {
  Range32 date, runs;
};

// Groups of both lists, for programs: the head says those of one.
struct AllergenWords {
  std::vector<std::string> contains, label;
};
struct AllergenFacts {
  bool said = false;  // a sheet or an order has none
  AllergenWords european, american;
  std::vector<std::string> unknown;
};

// A line of an order or of a costing as other programs read it: cells by Card::columns, plain numbers with a point, and what
// it is made up of, a dish and its amount each.
struct Entry {
  std::vector<std::string> cells;
  std::vector<std::pair<std::string, std::string>> of;
};

struct Card {
  std::string text;
  std::vector<Run> runs;
  std::vector<std::string> links{{}};
  std::vector<Quantity> exacts{{}};
  std::vector<Fact> facts;
  std::vector<Row> rows;
  std::vector<CardStep> steps;
  std::vector<Hour> hours;
  Serving serving;
  std::vector<Grid> grids;
  Drawing drawing;
  AllergenFacts allergens;
  std::vector<std::string> columns;  // of the records; without any there are none
  std::vector<Entry> records;

  Range32 title;              // runs
  Range32 edition;            // runs: "scaled to 3 times", "for 20"; empty as written
  Range32 head;               // of facts: of the whole dish
  std::vector<Section> parts;
  std::vector<Section> after; // to keep, to freeze, to reheat, to finish: one panel behind the method
  std::vector<Remark> remarks;
  std::vector<TrialLine> trials;
  // Headings in the card's words, as runs: "You need", "Method", "Once it is made", "Tastings".
  Range32 list_heading, method_heading, after_heading, trials_heading, notes_heading;
  // Column heads when a second column is shown: "grams", "ounces".
  Range32 first_column, second_column;
  bool second = false;
  std::string_view language = "en-GB";  // BCP 47
  std::string_view status;              // of a recipe: "draft", "tried", "standardized"

  std::string_view view(const Run& run) const { return std::string_view(text).substr(run.begin, run.size); }
};

}  // namespace qtn
