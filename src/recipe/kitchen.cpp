// The house's own facts: one file a book (semantics part 8). Every line is typed by its block; nothing is passed over.
#include <algorithm>

#include "diag/nearest.hpp"
#include "recipe/builder.hpp"
#include "words/fold.hpp"
#include "words/lexicon.hpp"

namespace qtn {
namespace {

std::string quoted(std::string_view text) { return "`" + std::string(text) + "`"; }

class KitchenReader {
 public:
  KitchenReader(const Source& source, const Tree& tree, Report& report) : in_{source, report, Dialect::unstated, {}}, tree_(tree), report_(report) {}

  Kitchen run() {
    kitchen_.work = {Fraction(5), Fraction(5), common().minute, Manner::plain, false};
    for (View at : View(tree_, 0)) {
      if (at.kind() == Kind::field) field(at);
      else if (at.kind() == Kind::block) block(at);
      else if (at.kind() == Kind::unknown_field) unknown(at);
      else report_.add(Code::stray_line, at.span(), "This line belongs to no field.").expect("a field of the kitchen, such as `ovens:`");
    }
    return std::move(kitchen_);
  }

 private:
  void unknown(View at) {
    const Span word = at.first(Kind::word).span();
    const auto words = field_words(kKitchen);
    const auto near = nearest(lower(in_.slice(word)), words);
    auto& problem = report_.add(Code::unknown_field, word, quoted(in_.slice(word)) + " is not a field of a kitchen. " + did_you_mean(near));
    for (std::string_view one : near) problem.offer(word, std::string(one), "write " + quoted(one));
  }

  // "22:00" as minutes of the day; -1 when it is no clock.
  static int clock(std::string_view text) {
    text = trim(text);
    if (text.size() != 5 || text[2] != ':') return -1;
    for (std::size_t i : {0u, 1u, 3u, 4u})
      if (text[i] < '0' || text[i] > '9') return -1;
    const int hour = (text[0] - '0') * 10 + text[1] - '0', minute = (text[3] - '0') * 10 + text[4] - '0';
    return hour < 24 && minute < 60 ? hour * 60 + minute : -1;
  }

  void choice(std::string_view field, Span span, std::string_view known) {
    report_.add(Code::unknown_choice, span, quoted(std::string(field) + ": " + std::string(in_.slice(span))) + " is not known.").expect(std::string(known));
  }

  std::optional<Quantity> single(View at, std::initializer_list<Dimension> wanted, std::string_view where) {
    if (!at.has(Kind::amt)) {
      report_.add(Code::unreadable_value, at.span(), quoted(in_.slice(at.first(Kind::word).span()) ) + " cannot read this value.").expect("one amount");
      return std::nullopt;
    }
    const ReadAmount read = read_amount(in_, at.first(Kind::amt), Place::head);
    if (read.damaged || !expect_dimension(in_, read.amount, read.span, wanted, where)) return std::nullopt;
    return read.amount;
  }

  void field(View at) {
    const Field which = field_of(at.value());
    const Span word = at.first(Kind::word).span();
    if ((at.value() & kMisspelt) != 0)
      report_.add(Code::unknown_field, word, quoted(in_.slice(word)) + " is not a field; did you mean " + quoted(row(which).word) + "?").fix(word, std::string(row(which).word), "write " + quoted(row(which).word));
    const Span span = at.has(Kind::text) ? at.first(Kind::text).span() : at.span();
    const std::string_view text = trim(in_.slice(span));
    const std::string value = lower(text);
    kitchen_.facts.push_back({which, word, span});
    switch (which) {
      case Field::kitchen: kitchen_.name = text; break;
      case Field::measures:
        if (value == "british") kitchen_.dialect = Dialect::british;
        else if (value == "american") kitchen_.dialect = Dialect::american;
        else if (value == "australian") kitchen_.dialect = Dialect::australian;
        else choice("measures", span, "`British`, `American` or `Australian`");
        in_.dialect = kitchen_.dialect;
        break;
      case Field::words:
        if (value == "british") kitchen_.words = WordsOf::british;
        else if (value == "american") kitchen_.words = WordsOf::american;
        else choice("words", span, "`British` or `American`");
        break;
      case Field::law:
        kitchen_.law = text;
        if (value != "uk" && value != "eu" && value != "us") choice("law", span, "`UK`, `EU` or `US`");
        break;
      case Field::seasoning:
        kitchen_.gentle_seasoning = value == "gently";
        if (value != "gently") choice("seasoning", span, "`gently`, or no line where seasoning grows in proportion");
        break;
      case Field::currency:
        kitchen_.currency = text;
        if (text.size() != 3) report_.add(Code::kitchen_currency, span, quoted(text) + " is no currency.").expect("three letters as on a bank statement: `GBP`");
        break;
      case Field::night: night(span, text); break;
      case Field::cooks:
        if (const auto read = single(at, {Dimension::count}, "`cooks:` wants")) {
          kitchen_.cooks = static_cast<int>(read->low.floor());
          if (!read->low.is_whole() || kitchen_.cooks < 1 || kitchen_.cooks > 99) report_.add(Code::kitchen_cooks, span, "This is no number of cooks.").expect("a whole number from 1 up");
        }
        break;
      case Field::rounding:
        if (const auto read = single(at, {Dimension::ratio}, "`rounding:` wants")) {
          const Fraction share = in_base(*read, in_.dialect).low;
          if (share < Fraction::of(1, 100) || share > Fraction::of(1, 10)) report_.add(Code::kitchen_rounding, span, "Cards are rounded to between 1 and 10 %.").expect("`5 %`, or another from 1 to 10 %");
          else kitchen_.tolerance = share;
        }
        break;
      case Field::work:
        if (const auto read = single(at, {Dimension::duration}, "`work:` wants")) kitchen_.work = *read;
        break;
      case Field::scale:
        if (const auto read = single(at, {Dimension::mass}, "`scale:` wants")) kitchen_.finest = in_base(*read, in_.dialect).low;
        break;
      default: report_.add(Code::field_out_of_place, word, quoted(row(which).word) + " cannot stand in a kitchen's file."); break;
    }
  }

  void night(Span span, std::string_view text) {
    const std::size_t to = text.find(" to ");
    const int from = to == std::string_view::npos ? -1 : clock(text.substr(0, to)), until = to == std::string_view::npos ? -1 : clock(text.substr(to + 4));
    if (from < 0 || until < 0) {
      report_.add(Code::kitchen_not_a_clock, span, "This is no pair of clock times.").expect("`22:00 to 06:30`");
      return;
    }
    if (from == until) report_.add(Code::kitchen_night, span, "This night has no length.").expect("`22:00 to 06:30`");
    kitchen_.night_from = from, kitchen_.night_to = until;
  }

  void block(View at) {
    const Field which = field_of(at.value());
    std::vector<std::string> names;
    for (View line : at) {
      if (line.kind() == Kind::bad_line) {
        report_.add(Code::kitchen_fact_form, line.span(), "This line is not read.").find(quoted(in_.slice(line.span()))).expect("a name, two blanks or more, then its facts");
        continue;
      }
      if (line.kind() != Kind::fact) continue;
      const Span name = line.first(Kind::fact_name).span();
      kitchen_.facts.push_back({which, name, {name.end, line->end}});
      const std::string folded = lower(in_.slice(name));
      if (std::find(names.begin(), names.end(), folded) != names.end())
        report_.add(Code::kitchen_name_repeated, name, quoted(in_.slice(name)) + " stands here a second time.").expect("one line a name");
      names.push_back(folded);
      fact(which, name, line);
    }
  }

  // A cell as an amount, with the words behind it.
  struct Cell {
    std::optional<Quantity> amount;
    std::string rest;   // what follows the amount, or all of it
    std::optional<Quantity> per;
  };
  Cell read_cell(Span span) {
    Cell out;
    const std::string text(trim(in_.slice(span)));
    const auto amount_of = [&](const std::string& line, std::string* name) -> std::optional<Quantity> {
      const Source source("cell", line);
      Tree tree;
      parse_line(source.text(), tree);
      const View at(tree, 0);
      if (at.kind() != Kind::take_line || !at.has(Kind::amt)) return std::nullopt;
      Report quiet;
      Reading in{source, quiet, in_.dialect, {}};
      const ReadAmount read = read_amount(in, at.first(Kind::amt), Place::clause);
      if (read.damaged) return std::nullopt;
      if (at.has(Kind::per)) {
        const View per = at.first(Kind::per);
        if (per.has(Kind::number)) out.per = read_item(in, per, Place::clause).amount;
        else if (per.has(Kind::unit)) out.per = Quantity{Fraction(1), Fraction(1), Lexicon::standard().row(per.first(Kind::unit).value()).unit, Manner::plain, false};
      }
      if (at.has(Kind::name)) *name = std::string(source.text(at.first(Kind::name).span()));
      return read.amount;
    };
    std::string name;
    out.amount = amount_of(text + " thing", &name);
    if (out.amount) {
      out.rest = name.size() > 6 ? name.substr(0, name.size() - 6) : "";
      return out;
    }
    out.rest = lower(text);
    return out;
  }

  void wrong(Code code, Span cell, std::string_view expected) {
    report_.add(code, cell, quoted(trim(in_.slice(cell))) + " is not read here.").expect(std::string(expected));
  }

  void fact(Field which, Span name, View line) {
    for (View cell : line) {
      if (cell.kind() != Kind::cell) continue;
      const Span span = cell.span();
      const Cell read = read_cell(span);
      switch (which) {
        case Field::ovens: oven(span, read); break;
        case Field::hobs: if (!read.amount || read.rest.find("ring") == std::string::npos) wrong(Code::kitchen_hob_fact, span, "`4 rings`"); break;
        case Field::fridges: if (!is_heat(span)) wrong(Code::kitchen_fridge_fact, span, "its temperature: `4 °C`"); break;
        case Field::tins: if (in_.slice(span).find_first_of("0123456789") == std::string_view::npos) wrong(Code::kitchen_tin_fact, span, "`23 cm round, 3 cm deep, 2 of these`"); break;
        case Field::verbs: verb_fact(name, span, read.rest); break;
        case Field::house_measures: measure(name, span, read); break;
        case Field::house_words: kitchen_.words_of_house.push_back({in_.slice(name), trim(in_.slice(span))}); break;
        case Field::ingredients: food(name, span, read); break;
        case Field::prices: price(span, read); break;
        default: break;
      }
    }
  }

  bool is_heat(Span span) const {
    const std::string_view text = in_.slice(span);
    return text.find("°C") != std::string_view::npos || text.find("°F") != std::string_view::npos;
  }

  void oven(Span span, const Cell& read) {
    const std::string text = lower(trim(in_.slice(span)));
    if (text == "conventional" || text == "fan" || text == "gas") {
      if (kitchen_.oven == OvenKind::unstated)
        kitchen_.oven = text == "fan" ? OvenKind::fan : text == "gas" ? OvenKind::gas : OvenKind::conventional;
      return;
    }
    const bool known = (read.amount && read.rest.find("shel") == 0) || text.find("heats in ") == 0 || (text.find("runs ") == 0 && is_heat(span));
    if (!known) wrong(Code::kitchen_oven_fact, span, "conventional, fan or gas; `2 shelves`; `heats in 25 min`; `runs 10 °C hot`");
  }

  void verb_fact(Span name, Span span, const std::string& word) {
    const std::string_view text = in_.slice(name);
    if (kitchen_.verbs.empty() || kitchen_.verbs.back().first != text) {
      if (Lexicon::standard().longest(text, kVerbWord)) report_.add(Code::kitchen_verb_listed, name, quoted(text) + " is a listed verb already.").expect("a verb of the house's own");
      Verb verb;
      verb.name = text;
      verb.attention = Attention::none;
      kitchen_.verbs.push_back({text, verb});
    }
    Verb& verb = kitchen_.verbs.back().second;
    if (word == "wait") verb.wait = true, verb.range = Range::cook;
    else if (word == "food") verb.range = Range::food;
    else if (word == "cook") verb.range = Range::cook;
    else if (const std::uint8_t takes = takes_named(word); takes != 0) {
      verb.takes = static_cast<std::uint8_t>(verb.takes | takes);
      if (word == "hands") verb.attention = Attention::throughout;
      if (word == "oven" || word == "hob") verb.heats = true;
    } else {
      wrong(Code::kitchen_verb_fact, span, "hands, oven, hob, fridge or freezer; `wait`; `food` or `cook`");
    }
  }

  void measure(Span name, Span span, const Cell& read) {
    const bool sized = read.amount && (read.amount->dimension() == Dimension::volume || read.amount->dimension() == Dimension::mass);
    if (!sized) return wrong(Code::kitchen_measure_fact, span, "what it holds or weighs: `120 ml`");
    if (Lexicon::standard().longest(in_.slice(name), kUnitWord))
      report_.add(Code::kitchen_measure_is_unit, name, quoted(in_.slice(name)) + " is a unit of its own.").expect("another name for the house's measure");
    kitchen_.measures.push_back({in_.slice(name), *read.amount});
  }

  void food(Span name, Span span, const Cell& read) {
    const std::string folded(in_.slice(name));
    if (kitchen_.foods.empty() || kitchen_.foods.back().name != folded) kitchen_.foods.push_back({folded, {}});
    Food& mine = kitchen_.foods.back().food;
    const Food* const listed = Larder::standard().find(folded);
    const std::string text = lower(trim(in_.slice(span)));
    if (text.find("contains ") == 0) return;  // kept in facts; allergens are matched by who prints them
    if (read.amount && read.per && read.amount->dimension() == Dimension::mass && read.per->dimension() == Dimension::volume) {
      mine.density.value = in_base(*read.amount, in_.dialect).low / in_base(*read.per, in_.dialect).low;
      if (listed != nullptr && listed->density.known() && ((mine.density.value - listed->density.value) / listed->density.value).abs() > Fraction::of(1, 4))
        report_.add(Code::kitchen_density_far, span, "The table has " + listed->density.value.decimal(2) + " g per ml.").find(quoted(trim(in_.slice(span)))).expect("a figure within 25 % of it, or a weighing that says otherwise");
      return;
    }
    if (read.amount && read.amount->dimension() == Dimension::mass && text.size() > 5 && text.substr(text.size() - 5) == " each") {
      mine.each.value = in_base(*read.amount, in_.dialect).low;
      if (listed != nullptr && listed->each.known() && ((mine.each.value - listed->each.value) / listed->each.value).abs() > Fraction::of(1, 4))
        report_.add(Code::kitchen_each_far, span, "The table has " + listed->each.value.decimal(0) + " g each.").find(quoted(trim(in_.slice(span)))).expect("a figure within 25 % of it, or a weighing that says otherwise");
      return;
    }
    if (text.find(' ') == std::string::npos && !read.amount) return;  // a list goes on: contains wheat, rye
    wrong(Code::kitchen_food_fact, span, "`contains wheat`; `1.05 g per ml`; `50 g each`");
  }

  void price(Span span, const Cell& read) {
    const std::string_view text = trim(in_.slice(span));
    const bool date = text.size() == 10 && text[4] == '-' && text[7] == '-';
    if (date || (read.amount && (read.per || text.find(" per ") != std::string_view::npos))) return;
    wrong(Code::kitchen_price_fact, span, "a price for an amount and a date: `1.95 per 250 g, 2026-01-05`");
  }

  Reading in_;
  const Tree& tree_;
  Report& report_;
  Kitchen kitchen_;
};

}  // namespace

Kitchen check_kitchen(const Source& source, const Tree& tree, Report& report) { return KitchenReader(source, tree, report).run(); }

}  // namespace qtn
