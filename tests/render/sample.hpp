// A card built by hand: the leek tart of Saltmarsh House, and texts that try to break out of a page.
#pragma once
#include <initializer_list>
#include <string>

#include "card/card.hpp"

namespace qtn::test {

struct Piece {
  std::string_view text;
  Role role = Role::text;
  std::uint8_t style = 0;
  std::string_view link = {};
  Quantity exact = {};  // of no size: none
};

class CardMaker {
 public:
  Card card;

  Range32 words(std::initializer_list<Piece> pieces) {
    const Range32 range{here(card.runs), static_cast<std::uint32_t>(pieces.size())};
    for (const Piece& piece : pieces) add(piece);
    return range;
  }
  Range32 words(std::string_view text, Role role = Role::text) {
    if (text.empty()) return {};
    return words({Piece{text, role}});
  }
  void add(const Piece& piece) {
    Run run{here(card.text), static_cast<std::uint32_t>(piece.text.size()), piece.role, piece.style, 0, 0};
    card.text += piece.text;
    if (!piece.link.empty()) {
      run.link = static_cast<std::uint16_t>(card.links.size());
      card.links.emplace_back(piece.link);
    }
    if (!piece.exact.low.is_zero()) {
      run.exact = here(card.exacts);
      card.exacts.push_back(piece.exact);
    }
    card.runs.push_back(run);
  }
  void fact(FactKind kind, std::string_view label, Range32 value) {
    card.facts.push_back({static_cast<std::uint16_t>(kind), words(label), value});
  }
  Row& row(Range32 amount, std::string_view second, std::string_view name, std::string_view rest = {}) {
    Row row;
    row.amount = amount;
    row.second = words(second, Role::second);
    row.name = words(name, Role::name);
    row.rest = words(rest);
    card.rows.push_back(row);
    return card.rows.back();
  }
  void step(StepKind kind, std::string_view label, Range32 runs) { card.steps.push_back({kind, words(label), runs}); }

  // Begins a section; end_section() gives it the facts, rows and steps added since.
  void begin_section(std::string_view title) {
    section_ = {words(title, Role::name), {here(card.facts), 0}, {here(card.rows), 0}, {here(card.steps), 0}, {}, {}};
  }
  Section end_section() {
    section_.facts.count = here(card.facts) - section_.facts.first;
    section_.rows.count = here(card.rows) - section_.rows.first;
    section_.steps.count = here(card.steps) - section_.steps.first;
    return section_;
  }

  template <class List>
  static std::uint32_t here(const List& list) {
    return static_cast<std::uint32_t>(list.size());
  }

 private:
  Section section_;
};

inline Quantity amount(Fraction value, UnitId unit, Manner manner = Manner::plain) {
  return {value, value, unit, manner, false};
}
inline Piece grams(std::string_view text, Fraction value) {
  return {text, Role::amount, 0, {}, amount(value, common().gram)};
}
inline Piece minutes(std::string_view text, Fraction low, Fraction high) {
  return {text, Role::time, 0, {}, {low, high, common().minute, Manner::plain, false}};
}
inline Piece name(std::string_view text) {
  return {text, Role::name};
}

inline void shortcrust(CardMaker& make) {
  make.begin_section("Shortcrust");
  make.fact(FactKind::makes, "Makes", make.words("370 g", Role::amount));
  make.fact(FactKind::keeps, "Keeps", make.words("2 days chilled, 3 months frozen"));
  make.row(make.words({grams("220 g", 220)}), "8 oz", "plain flour");
  make.row(make.words({grams("110 g", 110)}), "4 oz", "butter", "cold, in 10 mm dice");
  make.row(make.words({{"½ tsp", Role::amount, 0, {}, amount(Fraction::of(1, 2), common().teaspoon)}}), "",
           "fine salt");
  make.row(make.words({grams("≈ 43 g", 44)}), "1½ oz", "water", "ice-cold").rough = true;
  make.step(StepKind::step, "",
            make.words({{"Rub "},
                        name("the butter"),
                        {" into "},
                        name("the flour"),
                        {" and "},
                        name("the salt"),
                        {" until it looks like crumbs "},
                        minutes("about 5 min", 5, 5),
                        {"."}}));
  make.step(StepKind::by_hand, "By hand",
            make.words({{"Stir in "},
                        name("the water"),
                        {" with a "},
                        {"round-ended", Role::text, kEmphasis},
                        {" knife and press together. Wrap it, then "},
                        {"rest at least 1 h", Role::time},
                        {" in the fridge at "},
                        {"4 °C", Role::temperature},
                        {"."}}));
  make.step(StepKind::by_machine, "By machine", make.words("Pulse four times, tip out and press together."));
  make.step(StepKind::note, "Note", make.words("A dry day wants a little more water."));
  make.card.parts.push_back(make.end_section());
}

inline void filling(CardMaker& make) {
  make.begin_section("Filling");
  make.row(make.words({grams("400 g", 400)}), "14 oz", "leeks", "trimmed and sliced, from 550 g");
  make.row(make.words({{"3", Role::amount, 0, {}, amount(3, kNoUnit)}}), "", "large eggs");
  make.row(make.words({{"250 ml", Role::amount, 0, {}, amount(250, common().millilitre)}}), "9 fl oz", "double cream");
  make.row(make.words({grams("100 g", 100)}), "3½ oz", "farmhouse cheddar", "grated");
  make.row(make.words({grams("100 g", 100)}), "3½ oz", "blue cheese", "crumbled").alternative = true;
  make.row({}, "", "white pepper", "to taste, optional").optional = true;
  make.step(StepKind::step, "",
            make.words({{"Sweat "},
                        name("the leeks"),
                        {" in "},
                        name("the butter"),
                        {" "},
                        {"(30 g)", Role::spent},
                        {", covered, "},
                        minutes("15 min", 15, 15),
                        {", then cool "},
                        minutes("20 min", 20, 20),
                        {". They must be "},
                        {"quite soft", Role::text, kStrong},
                        {"."}}));
  make.step(StepKind::meanwhile, "Meanwhile",
            make.words({{"Beat "},
                        name("the eggs"),
                        {" with "},
                        name("the cream"),
                        {" and "},
                        {"three quarters of the cheddar", Role::name},
                        {" "},
                        {"(75 g)", Role::spent},
                        {". No "},
                        {"nutmeg", Role::struck},
                        {" here."}}));
  make.card.parts.push_back(make.end_section());
}

inline void tart(CardMaker& make) {
  make.begin_section("Tart");
  make.step(StepKind::step, "",
            make.words({{"Roll "},
                        name("the Shortcrust"),
                        {" to "},
                        {"3 mm", Role::measure},
                        {" and line the tin. Chill "},
                        minutes("30 min", 30, 30),
                        {"."}}));
  make.step(StepKind::ahead, "Ahead",
            make.words({{"Put a baking sheet in the oven and heat "},
                        minutes("20 min", 20, 20),
                        {" at "},
                        {"190 °C", Role::temperature},
                        {"."}}));
  make.step(StepKind::step, "",
            make.words({{"Bake blind "},
                        minutes("20 min", 20, 20),
                        {" at "},
                        {"190 °C", Role::temperature},
                        {". Fill with "},
                        name("the Filling"),
                        {" and bake "},
                        minutes("30 to 35 min", 30, 35),
                        {" at "},
                        {"170 °C", Role::temperature},
                        {" until the centre reads "},
                        {"78 °C", Role::reading},
                        {" (see "},
                        {"the probe page", Role::text, 0, "notes/probe.html?a=1&b=2"},
                        {")."}}));
  make.step(
      StepKind::step, "",
      make.words(
          {{"Cool "}, {"at least 20 min", Role::time}, {" before cutting into "}, {"8 slices", Role::pieces}, {"."}}));
  make.card.parts.push_back(make.end_section());
}

inline Card tart_card() {
  CardMaker make;
  Card& card = make.card;
  card.title = make.words("Leek and farmhouse cheese tart", Role::name);
  card.edition = make.words("as written, grams and ounces");
  make.fact(FactKind::makes, "Makes", make.words("1 tart"));
  make.fact(FactKind::serves, "Serves", make.words("6 to 8"));
  make.fact(FactKind::tin, "Tin", make.words("23 cm round, 3 cm deep"));
  make.fact(FactKind::oven, "Oven", make.words("conventional"));
  make.fact(FactKind::keeps, "Keeps", make.words("2 days chilled"));
  make.fact(FactKind::source, "Source", make.words("Saltmarsh House, winter book, page 12"));
  card.head = {0, CardMaker::here(card.facts)};
  card.second = true;
  card.first_column = make.words("grams");
  card.second_column = make.words("ounces");
  card.list_heading = make.words("You need");
  card.method_heading = make.words("Method");
  card.notes_heading = make.words("Notes");
  card.trials_heading = make.words("Tastings");
  card.remarks.push_back({Remark::Kind::caution, make.words("Serve hot within two hours, or chill at once.")});
  card.remarks.push_back({Remark::Kind::note, make.words("Made for the winter tables; half goes to the porch room.")});
  card.remarks.push_back({Remark::Kind::lacking, make.words("What a leek weighs, so none is shown by number.")});
  shortcrust(make);
  filling(make);
  tart(make);
  make.begin_section("To reheat");
  make.step(StepKind::step, "",
            make.words({{"Bake "},
                        minutes("12 min", 12, 12),
                        {" at "},
                        {"160 °C", Role::temperature},
                        {" until the centre reads "},
                        {"75 °C", Role::reading},
                        {"."}}));
  card.after_heading = make.words("Once it is made");
  card.after.push_back(make.end_section());
  card.after.back().kind = AfterKind::reheat;
  card.trials.push_back({make.words("2026-02-11"), make.words("fine salt ¼ tsp → ½ tsp. Flat when tasted warm.")});
  card.trials.push_back({make.words("2026-01-20"), make.words("no change")});
  return std::move(make.card);
}

// Every string that a page, a sheet or a terminal could mistake for its own.
inline constexpr std::string_view kHostile[] = {
    "<script>alert(1)</script>",
    "a | b * c _d_ **e** `f`",
    "&amp; &lt; &#60; & \"quotes\" 'single'",
    "</style></title>",
    "# not a heading #",
    "1. not a step",
    "2) nor this",
    "- not a list",
    "+ nor this",
    "> not a quotation",
    "---",
    "***",
    "===",
    "~~~",
    "```",
    "[text](javascript:alert(1))",
    "![picture](x)",
    "\\*\\\\",
    "-5 °C",
    "line\nbreak\ttab",
    "<!-- x",
    "*",
    "`",
    "\\",
    "&",
    "ends with #",
    "####",
    "   indented",
    "http://example.org <a@b.example>",
    "10 \xc2\xbd \xe2\x80\x9cno\xe2\x80\x9d",
};

// One text in every place of a card.
inline Card hostile_card(std::string_view text, std::string_view link) {
  CardMaker make;
  Card& card = make.card;
  card.title = make.words(text, Role::name);
  card.list_heading = make.words(text);
  card.notes_heading = make.words(text);
  card.trials_heading = make.words(text);
  make.fact(FactKind::source, text, make.words(text));
  card.head = {0, 1};
  card.remarks.push_back({Remark::Kind::caution, make.words(text)});
  card.remarks.push_back({Remark::Kind::note, make.words(text)});
  make.begin_section(text);
  make.row(make.words(text, Role::amount), text, text, text);
  make.step(StepKind::step, text,
            make.words({{text, Role::text, kStrong},
                        {text, Role::text, kCode},
                        {text, Role::text, 0, link},
                        {text, Role::time},
                        {text, Role::struck},
                        {text, Role::text, kEmphasis}}));
  make.step(StepKind::step, "", make.words({{text, Role::text, 0, link}, {text, Role::text, kEmphasis | kStrong}}));
  card.parts.push_back(make.end_section());
  card.trials.push_back({make.words(text), make.words(text)});
  return std::move(make.card);
}

}  // namespace qtn::test
