// Blocks of the kitchen: a name, then its facts, each read by what its block is about.
#include <algorithm>

#include "recipe/kitchen_reader.hpp"
#include "words/lexicon.hpp"

namespace qtn {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

struct Form {
  Field field;
  std::string_view looks;
};
constexpr Form kForms[] = {
    {Field::kitchen, "the name of the house"},
    {Field::measures, "`British`, `American` or `Australian`"},
    {Field::words, "`British` or `American`"},
    {Field::law, "`UK`, `EU` or `US`"},
    {Field::seasoning, "`gently`, or `in proportion`"},
    {Field::way, "`hand` or `machine`: which of two ways of a step is taken"},
    {Field::zone, "a zone of the world's clocks: `Europe/London`"},
    {Field::currency, "three letters as on a bank statement: `GBP`"},
    {Field::night, "two times of a 24-hour clock: `22:00 to 06:30`"},
    {Field::cooks, "how many cook: `2`"},
    {Field::rounding, "a share, `5 %`, or `standardized`"},
    {Field::work, "a time: `5 min`"},
    {Field::scale, "the least weight the scale shows: `1 g`"},
    {Field::ovens, "`conventional`, `fan` or `gas`; `2 shelves`; `heats in 25 min`; `runs 10 °C hot`; `2 of these`"},
    {Field::hobs, "`gas`, `electric`, `ceramic` or `induction`; `4 rings`"},
    {Field::fridges, "its temperature, `4 °C`; `3 shelves` or `3 drawers`; `120 l`"},
    {Field::tins, "a size, then how many: `23 cm round, 3 cm deep, 2 of these`"},
    {Field::verbs, "`hands`, `oven`, `hob`, `fridge` or `freezer`; `wait`; `food` or `cook`"},
    {Field::house_measures, "what it holds or weighs: `120 ml`"},
    {Field::house_words, "one word that is said for it: `neeps`"},
    {Field::ingredients, "`contains wheat`; `1.05 g per ml`; `50 g each`"},
    {Field::suppliers, "what it brings, then `;` and when: `flour, oats; Tuesdays`"},
    {Field::prices, "a price for an amount, and its day: `1.95 per 250 g, 2026-01-05`"},
};

}  // namespace

std::string_view kitchen_form(Field field) {
  for (const Form& form : kForms)
    if (form.field == field) return form.looks;
  return "a value";
}

int small_number(const Fraction& value) {
  constexpr Wide kMost = 1000;  // no kitchen has more of anything
  return static_cast<int>(std::min(value.floor(), kMost));
}

void KitchenReader::wrong(Code code, Field where, Span span) {
  report_.add(code, span, quoted(in_.slice(span)) + " is not read under " + quoted(std::string(row(where).word) + ":") + ".")
      .find(quoted(in_.slice(span))).expect(std::string(kitchen_form(where)));
}

void KitchenReader::said(std::string_view what, Span span) {
  for (const auto& [known, first] : said_)
    if (known == what) {
      report_.add(Code::kitchen_said_twice, span, "This line has said that already.").find(quoted(in_.slice(span)))
          .also(first, "here").expect("one of the two");
      return;
    }
  said_.push_back({std::string(what), span});
}

std::optional<KitchenReader::Counted> KitchenReader::counted(Span span) {
  if (span.empty() || !parse_value(Field::work, in_.source.text(), span, scratch_)) return std::nullopt;
  const View at(scratch_, 0);
  if (!at.has(Kind::amt)) return std::nullopt;
  Counted out{read_amount(in_, at.first(Kind::amt), Place::clause), {}};
  if (at.has(Kind::name)) out.rest = lower(in_.slice(at.first(Kind::name).span()));
  return out;
}

std::optional<Quantity> KitchenReader::figure(Code code, Field where, Span span, Dimensions wanted, bool may_be_below) {
  const auto read = counted(span);
  if (!read || !read->rest.empty()) {
    wrong(code, where, span);
    return std::nullopt;
  }
  const Quantity& amount = read->read.amount;
  if (read->read.damaged || !expect_dimension(in_, amount, read->read.span, wanted, quoted(std::string(row(where).word) + ":") + " wants"))
    return std::nullopt;
  if (amount.is_range() || amount.manner == Manner::at_least || amount.manner == Manner::at_most) {
    report_.add(code, span, "The house's own figures are single ones.").find(quoted(in_.slice(span))).expect("one figure");
    return std::nullopt;
  }
  if (!may_be_below && amount.low.sign() <= 0 && !amount.low.is_lost()) {
    report_.add(Code::zero_amount, Severity::error, span, "This says nothing of how much.").find(quoted(in_.slice(span)))
        .expect("a figure above 0");
    return std::nullopt;
  }
  return amount;
}

// ---- lines --------------------------------------------------------------------------------------------------------

void KitchenReader::block(View at) {
  const Field which = field_of(at.value());
  const Span word = at.first(Kind::word).span();
  misspelt(at);
  once(which, word);
  if (at->size == 2)
    report_.add(Code::empty_field, word, quoted(std::string(row(which).word) + ":") + " has no line under it.")
        .expect("a name, two blanks or more, then " + std::string(kitchen_form(which)));
  std::vector<std::pair<std::vector<std::string>, Span>> names;
  for (View line : at) {
    if (line.kind() == Kind::bad_line) bad_line(which, line.span());
    if (line.kind() != Kind::fact) continue;
    const Span name = line.first(Kind::fact_name).span();
    const auto cells = cells_of(line);
    kitchen_.facts.push_back({which, name, cells.empty() ? Span{name.end, line->end} : Span{cells.front().span.begin, line->end}});
    auto folded = fold_name(in_.slice(name));
    for (const auto& [other, first] : names)
      if (other == folded)
        repeated(which, name, first);
    names.push_back({std::move(folded), name});
    said_.clear();
    bool comma = false;
    for (std::size_t i = 1; i < cells.size(); ++i) comma = comma_number(cells[i - 1], cells[i]) || comma;
    if (!comma) fact(which, name, cells);
  }
}

void KitchenReader::repeated(Field which, Span name, Span first) {
  auto& problem = report_.add(Code::kitchen_name_repeated, name, quoted(in_.slice(name)) + " stands here a second time.")
                      .also(first, "the first is here").expect("one line for each name");
  if (which == Field::suppliers) problem.expect("one line for each supplier, with all that it brings").because("The order to a supplier goes out once, on one day.");
  if (which == Field::prices) problem.expect("one line for each thing, with the price that holds").because("With two prices nobody knows what the dish costs.");
}

void KitchenReader::bad_line(Field which, Span span) {
  const std::string_view text = in_.slice(span);
  const bool named = text.find("  ") != std::string_view::npos || text.find('\t') != std::string_view::npos;
  auto& problem = report_.add(Code::kitchen_fact_form, span,
              named ? "This line is not read as a name and its facts." : "Two blanks or more part a name from its facts; here is no such gap.")
      .find(quoted(text)).expect("a name, two blanks or more, then " + std::string(kitchen_form(which)));
  // "range: 2 shelves", as the fields of the head are written.
  const std::size_t colon = text.find(": ");
  if (named || colon == std::string_view::npos || colon == 0) return;
  const auto at = static_cast<std::uint32_t>(colon);
  problem.fix({span.begin + at, span.begin + at + 2}, "  ", "put two blanks in the place of the colon");
}

std::vector<KitchenReader::Cell> KitchenReader::cells_of(View line) {
  std::vector<Cell> cells;
  for (View one : line) {
    if (one.kind() != Kind::cell) continue;
    Span span = one.span();
    const std::string_view text = trim(in_.slice(span));
    if (text.empty()) continue;
    span.begin += static_cast<std::uint32_t>(text.data() - in_.slice(span).data());
    span.end = span.begin + static_cast<std::uint32_t>(text.size());
    cells.push_back({span, text, lower(text)});
  }
  return cells;
}

// "1,95 per 250 g": the comma parted one number into two facts.
bool KitchenReader::comma_number(const Cell& before, const Cell& after) {
  if (!is_digit(before.text.back()) || !is_digit(after.text.front()) || in_.slice({before.span.end, after.span.begin}) != ",")
    return false;
  const Span both{before.span.begin, after.span.end};
  report_.add(Code::comma_in_number, both, "A comma is not read in numbers: it parts one fact from the next.")
      .find(quoted(in_.slice(both))).expect("a point, `1.5`, or no mark, `1500`");
  return true;
}

void KitchenReader::fact(Field which, Span name, const std::vector<Cell>& cells) {
  switch (which) {
    case Field::ovens:
      kitchen_.ovens.push_back({});
      kitchen_.ovens.back().name = in_.slice(name);
      for (const Cell& cell : cells) oven(cell, kitchen_.ovens.back());
      break;
    case Field::hobs:
      kitchen_.hobs.push_back({});
      kitchen_.hobs.back().name = in_.slice(name);
      for (const Cell& cell : cells) hob(cell, kitchen_.hobs.back());
      break;
    case Field::fridges:
      kitchen_.fridges.push_back({in_.slice(name), std::nullopt});
      for (const Cell& cell : cells) fridge(cell, kitchen_.fridges.back());
      break;
    case Field::suppliers: supplier(name, cells); break;
    case Field::tins: tin(name, cells); break;
    case Field::verbs: verb(name, cells); break;
    case Field::house_measures: measure(name, cells); break;
    case Field::house_words: house_word(name, cells); break;
    case Field::ingredients: food(name, cells); break;
    case Field::prices: price(name, cells); break;
    default: wrong(Code::kitchen_fact_form, which, name); break;
  }
}

// "2 of these". Said to be read even where its number is wrong, since then that was said.
bool KitchenReader::of_these(const Cell& cell, int* number_of) {
  constexpr std::string_view kEnd = " of these";
  if (!cell.word.ends_with(kEnd)) return false;
  said("of these", cell.span);
  const Span number{cell.span.begin, cell.span.end - static_cast<std::uint32_t>(kEnd.size())};
  const auto count = figure(Code::kitchen_fact_form, Field::tins, number, {Dimension::count});
  if (count && !count->low.is_whole()) wrong(Code::kitchen_fact_form, Field::tins, cell.span);
  else if (count && number_of != nullptr) *number_of = small_number(count->low);
  return true;
}

// ---- words --------------------------------------------------------------------------------------------------------

void KitchenReader::verb(Span name, const std::vector<Cell>& cells) {
  const std::string_view text = in_.slice(name);
  if (const Found found = Lexicon::standard().longest(text, kVerbWord); found && found.size == text.size())
    report_.add(Code::kitchen_verb_listed, name, quoted(text) + " is a listed verb already.").find(quoted(text))
        .expect("a verb of the house's own");
  Verb made;
  made.name = text;
  made.attention = Attention::none;
  std::optional<Range> range;
  for (const Cell& cell : cells) {
    if (cell.word == "food" || cell.word == "cook") {
      said("range", cell.span);
      range = cell.word == "cook" ? Range::cook : Range::food;
      continue;
    }
    said(cell.word, cell.span);
    const std::uint8_t takes = takes_named(cell.word);
    if (cell.word == "wait") made.wait = true;
    else if (takes == 0) wrong(Code::kitchen_verb_fact, Field::verbs, cell.span);
    made.takes = static_cast<std::uint8_t>(made.takes | takes);
    if (cell.word == "hands") made.attention = Attention::throughout;
    if (cell.word == "oven" || cell.word == "hob") made.heats = true;
  }
  made.range = range.value_or(made.wait ? Range::cook : Range::food);
  kitchen_.verbs.push_back({text, made});
}

void KitchenReader::measure(Span name, const std::vector<Cell>& cells) {
  const std::string_view text = in_.slice(name);
  if (const Found found = Lexicon::standard().longest(text, kUnitWord); found && found.size == text.size()) {
    report_.add(Code::kitchen_measure_is_unit, name, quoted(text) + " is a unit of its own.").find(quoted(text))
        .expect("another name for the house's measure");
    return;
  }
  if (cells.size() != 1) return wrong(Code::kitchen_measure_fact, Field::house_measures, {cells.front().span.begin, cells.back().span.end});
  if (const auto amount = figure(Code::kitchen_measure_fact, Field::house_measures, cells[0].span, {Dimension::volume, Dimension::mass}))
    kitchen_.measures.push_back({text, *amount});
}

void KitchenReader::house_word(Span name, const std::vector<Cell>& cells) {
  if (cells.size() != 1) return wrong(Code::kitchen_fact_form, Field::house_words, {cells.front().span.begin, cells.back().span.end});
  kitchen_.words_of_house.push_back({in_.slice(name), cells[0].text});
}

}  // namespace qtn
