// One line of the list by itself: what it lacks, and what it most likely was meant to say (semantics 1.3 and 1.5).
#include "diag/nearest.hpp"
#include "recipe/builder.hpp"
#include "recipe/equivalents.hpp"
#include "recipe/list_words.hpp"
#include "words/lexicon.hpp"

namespace qtn {
namespace {

bool digit_at(std::string_view text, std::size_t at) { return at < text.size() && text[at] >= '0' && text[at] <= '9'; }

// "Melt the butter": a verb in front that is no part of a listed food's own name ("roast beef" may be one).
bool reads_as_step(std::string_view name) {
  const Found verb = Lexicon::standard().longest(name, kVerbWord);
  if (!verb) return false;
  const Food* const food = Larder::standard().find(name);
  if (food == nullptr) return true;
  const std::vector<std::string> asked = fold_name(name);
  for (const std::string& word : fold_name(food->name))
    if (word == asked.front()) return false;
  for (const std::string_view other : Larder::standard().other_names(*food))
    if (fold_name(other).front() == asked.front()) return false;
  return true;
}

// The bytes of "an " in "an onion"; 0 for "a little oil" and the like, which say no number.
std::size_t article_size(std::string_view folded) {
  const std::size_t size = folded.substr(0, 2) == "a " ? 2 : folded.substr(0, 3) == "an " ? 3 : 0;
  if (size == 0 || folded.size() == size) return 0;
  for (std::string_view vague : {"little", "few", "lot", "bit", "splash", "good", "drizzle", "touch", "scattering", "couple"})
    if (folded.substr(size, vague.size()) == vague) return 0;
  return size;
}

// "juice of", "the grated zest of": what is taken of a fruit, and where the fruit begins; 0 for anything else.
std::size_t fruit_at(std::string_view folded) {
  const std::size_t from = folded.substr(0, 4) == "the " ? 4 : 0;
  for (std::string_view lead : {"juice of ", "zest of ", "zest and juice of ", "juice and zest of ", "grated zest of ", "finely grated zest of ", "rind of "})
    if (folded.substr(from, lead.size()) == lead && folded.size() > from + lead.size()) return from + lead.size();
  return 0;
}

// "1 lemon", "half a lemon", "a lemon" as an amount in front; empty where it does not say how many.
std::string so_many(std::string_view fruit) {
  const std::string folded = lower(fruit);
  if (digit_at(fruit, 0)) return std::string(fruit);
  for (std::string_view half : {"half a ", "half an "})
    if (folded.substr(0, half.size()) == half) return "1/2 " + std::string(fruit.substr(half.size()));
  const std::size_t one = article_size(folded);
  return one == 0 ? "" : "1 " + std::string(fruit.substr(one));
}

// "butter 100 g", "flour - 200 g": where the amount at the end begins, or npos.
std::size_t amount_behind(std::string_view name) {
  for (std::size_t at = name.find(' '); at != std::string_view::npos; at = name.find(' ', at + 1)) {
    std::size_t end = at + 1;
    if (!digit_at(name, end)) continue;
    while (end < name.size() && (digit_at(name, end) || name[end] == '.' || name[end] == '/')) ++end;
    const std::string_view unit = trim(name.substr(end));
    const Found found = Lexicon::standard().longest(unit, kUnitWord);
    return found && found.size == unit.size() ? at + 1 : std::string_view::npos;
  }
  return std::string_view::npos;
}

}  // namespace

// The amount stands behind what it is of. True when it was reported.
bool Builder::amount_after(const TakeLine& line) {
  const std::string name(line.name), folded = lower(line.name);
  std::string mended;
  if (const std::size_t fruit = fruit_at(folded); fruit != 0) {
    const std::size_t from = folded.substr(0, 4) == "the " ? 4 : 0;
    const std::string many = so_many(std::string_view(name).substr(fruit));
    if (!many.empty()) mended = many + ", " + name.substr(from, fruit - from - 4) + " only";
  } else if (const std::size_t at = amount_behind(name); at != std::string_view::npos) {
    std::string_view thing = trim(std::string_view(name).substr(0, at));
    for (std::string_view dash : {"-", "–", "—"})
      if (thing.size() > dash.size() && thing.substr(thing.size() - dash.size()) == dash) thing = trim(thing.substr(0, thing.size() - dash.size()));
    mended = name.substr(at) + " " + std::string(thing);
  }
  if (mended.empty()) return false;
  report_.add(Code::amount_after_name, line.name_span, "The amount stands after the name here.")
      .find("`" + name + "`").expect("`" + mended + "`").fix(line.name_span, mended, "write `" + mended + "`");
  return true;
}

// 2 % of [the Dough]: so much of it, but of what? A weight of it is taken: 500 g of [the Dough].
bool Builder::no_name(View at, TakeLine& line) {
  const bool share = line.basis == Basis::percent || line.basis == Basis::rate;
  if (!share || line.target.span.empty() || line.name_span.begin != line.target.span.begin || line.amount_span.end >= line.name_span.begin) return false;
  std::string_view between = in_.slice({line.amount_span.end, line.name_span.begin});
  between = trim(between.substr(0, between.find('[')));
  if (!between.ends_with("of")) return false;
  line.target = {};
  explain_bad_line(in_, at.span(), recipe_.kind == FileKind::menu);
  return true;
}

// A list line without an amount that says nothing about how much is wanted (A24). True when it was reported.
bool Builder::no_amount(View at, TakeLine& line) {
  if (line.measured() || line.target.span.size() != 0) return false;
  for (Index i = line.tails.first; i < line.tails.end(); ++i)
    if (recipe_.tails[i].kind == TailKind::unmeasured || recipe_.tails[i].kind == TailKind::start_with) return false;
  const std::string folded = lower(line.name);
  if (amount_after(line)) return true;
  if (has_number_word(line.name)) {
    explain_bad_line(in_, at.span(), recipe_.kind == FileKind::menu);
    return true;
  }
  if (reads_as_step(line.name)) {
    report_.add(Code::method_in_list, at.span(), "This reads as a step of the method, and it stands in the list.")
        .find("`" + std::string(in_.slice(at.span())) + "`").expect("an amount and a name; steps stand under `method:`");
    return true;
  }
  if (const std::size_t cut = unmeasured_at(line.name); cut != std::string_view::npos) {
    const Span gap{line.name_span.begin + static_cast<std::uint32_t>(cut), line.name_span.begin + static_cast<std::uint32_t>(cut) + 1};
    const std::string mended = std::string(line.name.substr(0, cut)) + ", " + std::string(line.name.substr(cut + 1));
    report_.add(Code::no_amount, line.name_span, "What a line without an amount is for stands behind a comma.")
        .find("`" + std::string(line.name) + "`").expect("`" + mended + "`").fix(gap, ", ", "write `" + mended + "`");
    return true;
  }
  auto& problem = report_.add(Code::no_amount, line.name_span, "`" + std::string(line.name) + "` has no amount.");
  problem.expect("an amount in front, or `to taste`, `for dusting`, `to serve` or `as needed` after a comma");
  if (const std::size_t one = article_size(folded); one != 0) {  // an onion, a large egg
    const std::string mended = "1 " + std::string(line.name.substr(one));
    problem.offer(line.name_span, mended, "write `" + mended + "`");
  } else if (const Found noun = Lexicon::standard().longest(line.name, kCountNoun); noun && noun.size < line.name.size() && folded[noun.size - 1] != 's') {
    const std::string mended = "1 " + std::string(line.name);  // pinch of pepper
    problem.offer(line.name_span, mended, "write `" + mended + "`");
    return true;
  }
  problem.offer({line.name_span.end, line.name_span.end}, ", to taste", "add `, to taste`");
  return true;
}

void Builder::check_line(const TakeLine& line) {
  check_base(line);
  check_name(line);
  check_count(line);
  check_tails(line);
  check_stated(line);
  check_sizes(line);
  check_order(line);
}

// A percentage and a rate say what they are of.
void Builder::check_base(const TakeLine& line) {
  if (line.basis == Basis::percent && line.members.empty() && part().head.basis != Basis::percent)
    report_.add(Code::percent_without_base, line.amount_span, "This percentage does not say what it is of.")
        .find("`" + std::string(in_.slice(line.amount_span)) + "`")
        .expect("`take: % of plain flour` above the list, or `% of [ ... ]` in the line");
  if (line.basis == Basis::rate && line.members.empty() && part().head.basis != Basis::rate)
    report_.add(Code::percent_without_base, line.amount_span, "This rate does not say what it is of.")
        .find("`" + std::string(in_.slice(line.amount_span)) + "`")
        .expect("`take: per kg of [ ... ]` above the list, or `per kg of [ ... ]` in the line");
}

void Builder::two_things(const TakeLine& line) {
  const std::string name(line.name);
  auto& problem = report_.add(Code::one_line_one_thing, line.name_span, "More than one thing stands in this line.");
  problem.find("`" + name + "`");
  const std::size_t sign = find_word(name, "+"), plus = sign != std::string::npos ? sign : find_word(name, "plus");
  const std::size_t behind = plus == std::string::npos ? plus : plus + (sign != std::string::npos ? 3 : 6);
  const auto place = [&](std::size_t at) { return line.name_span.begin + static_cast<std::uint32_t>(at); };
  if (plus != std::string::npos && (starts_with_word(name.substr(behind), "extra") || starts_with_word(name.substr(behind), "more"))) {
    const std::string mended = name.substr(0, plus) + ", plus " + name.substr(behind);
    problem.expect("a comma before what is wanted beside it: `" + mended + "`").fix({place(plus), place(behind)}, ", plus ", "write `" + mended + "`");
    return;
  }
  // lemon juice (about 1 lemon)
  if (const std::size_t open = name.find(" ("); open != std::string::npos && name.back() == ')') {
    const std::string said = name.substr(open + 2, name.size() - open - 3), thing = name.substr(0, open);
    std::size_t unit = said.find_last_of("0123456789");
    unit = unit == std::string::npos ? said.size() : unit + 1;
    if (!trim(std::string_view(said).substr(unit)).empty() && Lexicon::standard().longest(trim(std::string_view(said).substr(unit)), kUnitWord)) {
      const std::string mended = std::string(in_.slice(line.amount_span)) + " (" + said + ") " + thing;  // 2 onions (about 400 g)
      problem.expect("what all of it weighs right behind the number: `" + mended + "`")
          .offer({line.amount_span.begin, line.name_span.end}, mended, "write `" + mended + "`");
      return;
    }
    const std::string mended = thing + ", from " + said;
    problem.expect("what it is made from behind a comma: `" + mended + "`").offer(line.name_span, mended, "write `" + mended + "`");
    return;
  }
  problem.expect("one amount and one name a line; a choice is an `or` line of its own");
}

// 1 tbsp mustard (optional): the word counts only behind a comma.
void Builder::tail_in_parentheses(const TakeLine& line) {
  const std::string name(line.name), folded = lower(line.name);
  for (std::string_view tail : {"optional", "to taste", "to serve", "as needed", "fixed", "gently"}) {
    const std::string put = " (" + std::string(tail) + ")";
    if (folded.size() <= put.size() || folded.compare(folded.size() - put.size(), put.size(), put) != 0) continue;
    const std::string mended = name.substr(0, name.size() - put.size()) + ", " + std::string(tail);
    const Span span{line.name_span.end - static_cast<std::uint32_t>(put.size()), line.name_span.end};
    report_.add(Code::tail_in_parentheses, {span.begin + 1, span.end}, "In parentheses `" + std::string(tail) + "` is a part of the name.")
        .find("`" + name + "`").expect("`" + mended + "`").fix(span, ", " + std::string(tail), "write `" + mended + "`");
  }
}

void Builder::check_name(const TakeLine& line) {
  const std::string_view name = line.name;
  if (line.measured() && (has_number_word(name) || find_word(name, "plus") != std::string::npos || find_word(name, "+") != std::string::npos || find_word(name, "or") != std::string::npos)) {
    part().disturbed = true;
    two_things(line);
  }
  tail_in_parentheses(line);
  if (!line.measured() && !line.tails.empty()) {  // without a tail its amount is asked for first
    if (const std::size_t cut = find_word(name, "and"); cut != std::string::npos) {
      const std::string_view left = name.substr(0, cut), right = name.substr(cut + 5);
      const Food* both = line.food;
      if ((both == nullptr || !same_letters(both->name, name)) && Larder::standard().find(left) && Larder::standard().find(right)) {
        const std::string tail(in_.slice({line.name_span.end, line.span.end}));
        report_.add(Code::two_names_one_line, line.name_span, "Two ingredients stand in this line.")
            .find("`" + std::string(name) + "`").expect("a line for each")
            .fix(line.span, std::string(left) + tail + "\n  " + std::string(right) + tail, "give each its line");
      }
    }
  }
}

// What is counted may be a slip for something that is weighed or packed.
void Builder::check_count(const TakeLine& line) {
  const std::string_view name = line.name;
  if (line.basis == Basis::amount && line.written.low.is_zero() && line.written.high.is_zero())
    report_.add(Code::zero_amount, line.amount_span, "Nothing of `" + std::string(name) + "` is asked for.")
        .find("`" + std::string(in_.slice(line.amount_span)) + "`").expect("an amount above 0, or no line");
  if (line.basis != Basis::amount || line.written.unit != kNoUnit || line.written.low.is_lost()) return;
  if (starts_with_word(name, "spice")) {
    const std::string number = write_number(line.written.low, false, false);
    report_.add(Code::name_with_number, {line.span.begin, line.name_span.end}, "This counts " + number + " of `" + std::string(name) + "`.")
        .find("`" + number + " " + std::string(name) + "`").expect("a hyphen where the number belongs to the name: `" + number + "-" + std::string(name) + "`")
        .offer({line.amount_span.begin, line.name_span.end}, number + "-" + std::string(name), "write `" + number + "-" + std::string(name) + "`");
  }
  // 1 (400 g) tin tomatoes
  const Found noun = Lexicon::standard().longest(name, kCountNoun);
  if (noun && noun.size < name.size() && line.stated.count == 1 && !recipe_.stated[line.stated.first].each) {
    const Stated& size = recipe_.stated[line.stated.first];
    const Dimension dimension = size.amount.dimension();
    if (dimension == Dimension::mass || dimension == Dimension::volume) {
      const std::string mended = std::string(in_.slice(line.amount_span)) + " x " + std::string(in_.slice(size.span)) + " " + std::string(name);
      const Span whole{line.amount_span.begin, line.name_span.end};
      auto& problem = report_.add(Code::missing_times, Severity::warning, whole, "The size of a pack stands in parentheses.");
      problem.find("`" + std::string(in_.slice(whole)) + "`").expect("`" + mended + "`")
          .because("In parentheses stands what all of it comes to, and with two tins that is another amount.");
      if (line.written.low == Fraction(1) && line.written.high == Fraction(1)) problem.fix(whole, mended, "write `" + mended + "`");
      else problem.offer(whole, mended, "write `" + mended + "` if that is the size of each");
    }
  }
  near_unit(line);
}

// 250 grms flour: two hundred and fifty things, unless it is a slip for a unit.
void Builder::near_unit(const TakeLine& line) {
  const std::size_t blank = line.name.find(' ');
  if (blank == std::string_view::npos || blank < 3) return;
  const std::string word = lower(line.name.substr(0, blank));
  std::string_view near;
  for (const UnitWord& row : unit_words()) {
    const Dimension dimension = unit(row.unit).dimension;
    if ((dimension != Dimension::mass && dimension != Dimension::volume) || row.text.front() != word.front()) continue;
    const bool plural = row.text.size() > 1 && word.back() == 's' && word.compare(0, word.size() - 1, row.text) == 0;  // kgs
    if (plural || (row.text.size() > 3 && word.size() > 3 && distance(word, row.text, 1) == 1)) {
      near = row.text;
      if (plural) break;
    }
  }
  for (std::string_view food : {"pine", "pinto", "quark"})  // words of the trade that are one letter off a unit
    if (word == food) return;
  if (near.empty() || Larder::standard().find(line.name.substr(0, blank)) != nullptr) return;
  const Span span{line.name_span.begin, line.name_span.begin + static_cast<std::uint32_t>(blank)};
  report_.add(Code::near_unit, span, "This counts " + std::string(in_.slice(line.amount_span)) + " things called `" + std::string(line.name) + "`.")
      .find("`" + word + "`").expect("a unit such as `" + std::string(near) + "`, if one is meant").offer(span, std::string(near), "write `" + std::string(near) + "`");
}

// What stands behind the comma is an amount of its own kind, and no more than there is (1.3).
void Builder::check_tails(const TakeLine& line) {
  for (Index i = line.tails.first; i < line.tails.end(); ++i) {
    const Tail& tail = recipe_.tails[i];
    if (tail.kind == TailKind::at_clock && recipe_.kind != FileKind::menu)
      report_.add(Code::field_out_of_place, tail.span, "A time of the table stands in the list of a menu only.")
          .find("`" + std::string(in_.slice(tail.span)) + "`").expect("no time here; a menu's line says `at 19:00`");
    if (!tail.amount || tail.amount->is_lost()) continue;
    if (tail.kind == TailKind::from || tail.kind == TailKind::start_with)
      expect_dimension(in_, *tail.amount, tail.amount_span, {Dimension::mass, Dimension::volume, Dimension::count, Dimension::length},
                       tail.kind == TailKind::from ? "what is bought is measured by" : "what to start with is measured by");
    if (tail.kind == TailKind::each)
      expect_dimension(in_, *tail.amount, tail.amount_span, {Dimension::mass, Dimension::volume, Dimension::length}, "the size of each is");
    if (tail.kind != TailKind::taking_up) continue;
    if (expect_dimension(in_, *tail.amount, tail.amount_span, {Dimension::mass, Dimension::volume}, "what is taken up is measured by"))
      no_more_than(line, *tail.amount, tail.amount_span);
  }
}

// giving 250 g prawns and 150 g shells: together no more than the line (T1).
void Builder::check_given(const TakeLine& line, Span span) {
  Quantity sum{Fraction(), Fraction(), line.amount.unit, Manner::plain, false};
  for (Index i = static_cast<Index>(recipe_.lines.size()); i-- > 0 && recipe_.lines[i].given;) {
    const Quantity& one = recipe_.lines[i].amount;
    if (one.is_lost() || one.dimension() != line.amount.dimension()) return;
    const Fraction size = size_of(one.unit, recipe_.dialect) / size_of(sum.unit, recipe_.dialect);
    sum.low += one.low * size, sum.high += one.high * size;
  }
  no_more_than(line, sum, span);
}

// Where both can be weighed.
void Builder::no_more_than(const TakeLine& line, const Quantity& amount, Span span) {
  if (line.basis != Basis::amount || line.amount.is_lost()) return;
  Ends out, there;
  if (amount.dimension() == line.amount.dimension()) out = in_base(amount, recipe_.dialect), there = in_base(line.amount, recipe_.dialect);
  else out = grams_of(recipe_, line, amount), there = grams_of(recipe_, line, line.amount);
  if (out.low.is_lost() || there.high.is_lost() || out.low <= there.high * (Fraction(1) + tolerance(amount.manner, recipe_.tolerance()))) return;
  report_.add(Code::more_than_the_line, span, "This is more than the line has.").also(line.amount_span, "the whole of it")
      .find("`" + std::string(in_.slice(span)) + "`").expect("no more than " + write_plain(line.amount));
}

// Every stated equivalent against the first statement (A16).
void Builder::check_stated(const TakeLine& line) {
  if (line.stated.empty() || line.basis != Basis::amount) return;
  for (Index i = line.stated.first; i < line.stated.end(); ++i) {
    const Stated& stated = recipe_.stated[i];
    if (!stated.each) check_restated(recipe_, {line.amount, line.amount_span, stated.amount, stated.span}, &line, report_);
  }
}

}  // namespace qtn
