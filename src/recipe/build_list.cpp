// Take lines: amount, name, what stands after the comma.
#include <algorithm>

#include "recipe/builder.hpp"
#include "recipe/list_words.hpp"
#include "recipe/phases.hpp"
#include "recipe/strength.hpp"
#include "words/lexicon.hpp"

namespace qtn {
void Builder::take_block(View block) {
  Part& mine = part();
  mine.has_list = true;
  bool any = false;
  for (View at : block) {
    switch (at.kind()) {
      case Kind::take_head: take_head(at); break;
      case Kind::bad_value:
        report_.add(Code::unreadable_value, at.span(), "What stands after `take:` is not read.")
            .find("`" + std::string(in_.slice(at.span())) + "`")
            .expect("nothing, or `% of plain flour`, `per kg of [thighs + fat]`, `parts`; the lines of the list stand below");
        any = true;
        break;
      case Kind::take_line: take_line(at); any = true; break;
      case Kind::bad_line:
        explain_bad_line(in_, at.span(), recipe_.kind == FileKind::menu);
        recipe_.damaged.push_back(at.span());
        part().disturbed = any = true;
        break;
      default: break;
    }
  }
  if (!any) report_.add(Code::empty_block, block.first(Kind::word).span(), "This list has nothing in it.").expect("one ingredient a line under `take:`");
}

void Builder::members(View set, Slice& out) {
  out.first = static_cast<Index>(recipe_.set_members.size());
  for (View ref : set) {
    if (ref.kind() != Kind::ref) continue;
    Target target;
    target.part = part_;
    target.span = ref.span();
    recipe_.set_members.push_back(target);
  }
  out.count = static_cast<Index>(recipe_.set_members.size()) - out.first;
}

void Builder::take_head(View at) {
  TakeHead head;
  head.span = at.span();
  for (View child : at) {
    switch (child.kind()) {
      case Kind::percent: head.basis = Basis::percent; break;
      case Kind::by_parts: head.basis = Basis::parts; break;
      case Kind::by_volume: head.by_volume = true; break;
      case Kind::per: {
        head.basis = Basis::rate;
        const bool number = child.has(Kind::number);
        Quantity per{Fraction(1), Fraction(1), kNoUnit, Manner::plain, false};
        if (number) per = read_item(in_, child, Place::list).amount;
        else if (child.has(Kind::unit)) per.unit = Lexicon::standard().row(child.first(Kind::unit).value()).unit;
        head.per = per;
        break;
      }
      case Kind::set: members(child, head.members); break;
      case Kind::name: {
        const std::string_view name = in_.slice(child.span());
        if (starts_with_word(name, "all")) head.all_flour = true;
        Target target;
        target.part = part_;
        target.span = child.span();
        if (head.all_flour) target.span.begin += 4;
        head.members.first = static_cast<Index>(recipe_.set_members.size());
        head.members.count = 1;
        recipe_.set_members.push_back(target);
        break;
      }
      default: break;
    }
  }
  part().head = head;
}

void Builder::take_line(View at) {
  TakeLine line;
  line.span = at.span();
  line.part = part_;
  line.alternative = at.has(Kind::alternative);
  if (line.alternative) {
    Index above = static_cast<Index>(recipe_.lines.size());
    while (above > part().lines.first && (recipe_.lines[above - 1].given || recipe_.lines[above - 1].alternative)) --above;
    if (above == part().lines.first || !recipe_.lines[above - 1].measured())
      report_.add(Code::or_without_line, at.first(Kind::alternative).span(), "There is no measured line above that this one could replace.")
          .expect("an `or` line right under the line that it stands in for");
    else line.parent = above - 1;
  }
  line_amount(at, line);
  line_tails(at, line);
  std::vector<View> names;
  for (View child : at)
    if (child.kind() == Kind::name) names.push_back(child);
  finish_line(at, std::move(line), std::move(names));
}

void Builder::line_amount(View at, TakeLine& line) {
  line.basis = Basis::unmeasured;
  bool damaged = false;
  for (View child : at) {
    switch (child.kind()) {
      case Kind::amt: {
        const ReadAmount read = read_amount(in_, child, Place::list);
        line.basis = Basis::amount;
        line.written = line.amount = read.amount;
        line.amount_span = read.span;
        damaged = read.damaged;
        if (!damaged)
          damaged = !expect_dimension(in_, read.amount, read.span,
                                      {Dimension::mass, Dimension::volume, Dimension::count, Dimension::length, Dimension::ratio},
                                      "an ingredient is measured by");
        break;
      }
      case Kind::by_parts: line.basis = Basis::parts; break;
      case Kind::each: line.each_of_several = true; break;
      case Kind::pack: {
        const ReadAmount one = read_item(in_, child, Place::list);
        line.pack = one.amount;
        if (child.has(Kind::count_noun)) line.pack_noun = in_.slice(child.first(Kind::count_noun).span());
        const bool fits = !one.damaged && expect_dimension(in_, one.amount, one.span, {Dimension::mass, Dimension::volume, Dimension::count, Dimension::length},
                                                           "the size of a pack is");
        if (!one.damaged && !fits) damaged = true;
        if (fits) {
          line.amount = one.amount;  // the count in front is in `written`
          line.amount.low = one.amount.low * line.written.low;
          line.amount.high = one.amount.high * line.written.high;
          line.amount_span.end = child->end;
        }
        break;
      }
      case Kind::per: {
        Quantity per{Fraction(1), Fraction(1), kNoUnit, Manner::plain, false};
        if (child.has(Kind::number)) per = read_item(in_, child, Place::list).amount;
        else if (child.has(Kind::unit)) per.unit = Lexicon::standard().row(child.first(Kind::unit).value()).unit;
        line.basis = Basis::rate;
        line.per = per;
        break;
      }
      case Kind::equivs: {
        line.stated.first = static_cast<Index>(recipe_.stated.size());
        for (View one : child) {
          if (one.kind() == Kind::each && !recipe_.stated.empty()) recipe_.stated.back().each = true;
          if (one.kind() != Kind::amt) continue;
          const ReadAmount read = read_amount(in_, one, Place::list);
          if (!read.damaged) recipe_.stated.push_back({read.amount, read.span, false});
        }
        line.stated.count = static_cast<Index>(recipe_.stated.size()) - line.stated.first;
        break;
      }
      default: break;
    }
  }
  if (line.basis == Basis::amount && line.written.dimension() == Dimension::ratio) line.basis = Basis::percent;
  if (damaged) part().disturbed = true;
  if (damaged) line.amount.low = line.amount.high = Fraction::lost();
  if (line.basis != Basis::amount && line.basis != Basis::unmeasured) line.amount.low = line.amount.high = Fraction::lost();
}

void Builder::line_tails(View at, TakeLine& line) {
  line.tails.first = static_cast<Index>(recipe_.tails.size());
  const auto add = [&](TailKind kind, View child) {
    Tail tail{kind, child.span(), {}, {}, {}};
    for (View inner : child) {
      if (inner.kind() == Kind::amt && !tail.amount) {
        const ReadAmount read = read_amount(in_, inner, Place::tail);
        if (!read.damaged) tail.amount = read.amount, tail.amount_span = read.span;
      }
      if (inner.kind() == Kind::name) tail.name = in_.slice(inner.span());
    }
    if (kind == TailKind::strength) {
      const ReadAmount read = read_item(in_, child, Place::tail);
      tail.amount = read.amount, tail.amount_span = read.span;
    }
    recipe_.tails.push_back(tail);
  };
  for (View child : at) {
    switch (child.kind()) {
      case Kind::from: add(TailKind::from, child); break;
      case Kind::taking_up: add(TailKind::taking_up, child); break;
      case Kind::start_with: add(TailKind::start_with, child); break;
      case Kind::strength: add(TailKind::strength, child); break;
      case Kind::trimmings: add(TailKind::trimmings, child); break;
      case Kind::at_clock: add(TailKind::at_clock, child); break;
      case Kind::each_weight: add(TailKind::each, child); break;
      case Kind::extra: add(TailKind::extra, child); break;
      case Kind::optional: add(TailKind::optional, child); line.optional = true; break;
      case Kind::fixed: add(TailKind::fixed, child); line.fixed = true; break;
      case Kind::gently: add(TailKind::gently, child); line.gently = true; break;
      // On a measured line these are preparation, but for a starting amount (T1).
      case Kind::unmeasured: add(line.measured() ? TailKind::preparation : TailKind::unmeasured, child); break;
      case Kind::preparation: add(TailKind::preparation, child); bare_tail(child.span()); measure_in(recipe_.tails.back()); break;
      case Kind::giving: line.splits = true; break;
      default: break;
    }
  }
  line.tails.count = static_cast<Index>(recipe_.tails.size()) - line.tails.first;
}

// A strength that lost its unit is a hundred-fold error in waiting, so it is no preparation.
void Builder::bare_tail(Span tail) {
  const std::string text(in_.slice(tail));
  if (!is_bare_strength(text)) return;
  bare_strength(tail, text);
  part().disturbed = true;
}

void Builder::bare_strength(Span at, const std::string& text) {
  report_.add(Code::bare_strength, at, "This strength is not read: a share is written as a number, `%` or `ppm`, and what it is of.")
      .expect(bare_strength_expected(text))
      .find("`" + text + "`");
}

void Builder::giving(View at, Index parent) {
  if (!at.has(Kind::giving)) return;
  TakeLine one;
  for (View child : at.first(Kind::giving)) {
    if (child.kind() == Kind::amt) {
      const ReadAmount read = read_amount(in_, child, Place::tail);
      one = TakeLine();
      one.written = one.amount = read.amount;
      one.amount_span = read.span;
      if (read.damaged) one.amount.low = one.amount.high = Fraction::lost();
    }
    if (child.kind() != Kind::name) continue;
    one.given = true;
    one.parent = parent;
    one.part = part_;
    one.name_span = child.span();
    one.name = in_.slice(child.span());
    one.span = {one.amount_span.begin, child->end};
    one.stated.first = static_cast<Index>(recipe_.stated.size());
    one.tails.first = static_cast<Index>(recipe_.tails.size());
    know_food(recipe_, one);
    recipe_.lines.push_back(one);
    ++part().lines.count;
  }
  check_given(recipe_.lines[parent], at.first(Kind::giving).span());
}

void Builder::finish_line(View at, TakeLine line, std::vector<View> names) {
  // A set before the name is a base (of [thighs + fat]); alone or after it, what is taken (450 g [Shortcrust]).
  for (View child : at) {
    if (child.kind() != Kind::set) continue;
    const bool base = !names.empty() && names.front()->begin > child->begin;
    if (base) {
      members(child, line.members);
      continue;
    }
    Slice taken;
    members(child, taken);
    if (taken.count != 0) line.target = recipe_.set_members[taken.first];
    if (names.empty() && taken.count != 0) line.name_span = line.target.span;
  }
  if (!names.empty()) line.name_span = names.front().span();
  line.name = in_.slice(line.name_span);
  if (line.amount_span.empty()) line.amount_span = {line.name_span.begin, line.name_span.begin};
  if (no_amount(at, line) || no_name(at, line)) line.basis = Basis::unmeasured, part().disturbed = true;

  house_measure(line);
  noun_of_name(at, line);
  if (line.each_of_several) return split_names(line);
  know_food(recipe_, line);
  weigh_readings(line);
  check_line(line);
  recipe_.lines.push_back(line);
  ++part().lines.count;
  if (line.splits) giving(at, static_cast<Index>(recipe_.lines.size()) - 1);
}

// 1 fillet steak, 4 leaf gelatine: the larder knows noun and name together, so the noun counts nothing.
void Builder::noun_of_name(View at, TakeLine& line) {
  if (line.basis != Basis::amount || line.pack || !at.has(Kind::amt) || !at.first(Kind::amt).has(Kind::count_noun)) return;
  const Span noun = at.first(Kind::amt).first(Kind::count_noun).span();
  if (lower(in_.slice(noun)) != unit(line.written.unit).name || noun.end >= line.name_span.begin) return;
  if (!trim(in_.slice({noun.end, line.name_span.begin})).empty()) return;  // a leaf of gelatine
  const Span both{noun.begin, line.name_span.end};
  const Food* const food = Larder::standard().find(in_.slice(both));
  if (food == nullptr) return;
  const std::vector<std::string> name = fold_name(in_.slice(both));
  const auto names = Larder::standard().other_names(*food);
  const auto is_name = [&](std::string_view one) { return fold_name(one) == name; };
  if (!is_name(food->name) && std::none_of(names.begin(), names.end(), is_name)) return;
  line.name_span = both;
  line.name = in_.slice(both);
  line.written.unit = line.amount.unit = kNoUnit;
  line.amount_span.end = noun.begin;
  while (line.amount_span.end > line.amount_span.begin && blank_at(in_.source.text(), line.amount_span.end - 1) != 0) --line.amount_span.end;
}

// 2 ladles of stock: so much of a measure of the house, and what is measured with it.
void Builder::house_measure(TakeLine& line) {
  if (!recipe_.kitchen || line.basis != Basis::amount || line.written.unit != kNoUnit) return;
  std::size_t at = 0;
  const HouseMeasure* const house = recipe_.kitchen->measure_at(line.name, at);
  if (house == nullptr) return;
  const auto measure_end = line.name_span.begin + static_cast<std::uint32_t>(at);
  const auto skip_blanks = [&] {
    while (blank_at(line.name, at) != 0) at += static_cast<std::size_t>(blank_at(line.name, at));
  };
  skip_blanks();
  if (lower(line.name.substr(at, 2)) == "of" && blank_at(line.name, at + 2) != 0) at += 2, skip_blanks();
  if (at >= line.name.size()) return;  // a ladle itself
  line.house_measure = true;
  line.amount.unit = house->amount.unit;
  line.amount.low = line.written.low * house->amount.low;
  line.amount.high = line.written.high * house->amount.low;
  line.amount_span.end = measure_end;
  line.name_span.begin += static_cast<std::uint32_t>(at);
  line.name = in_.slice(line.name_span);
}

// 1/2 tsp each dried thyme and dried sage: two ingredients (A17).
void Builder::split_names(const TakeLine& line) {
  std::string_view rest = line.name;
  std::uint32_t begin = line.name_span.begin;
  while (!rest.empty()) {
    std::size_t cut = find_word(rest, "and");
    std::size_t skip = 5;
    if (const std::size_t plus = rest.find(" + "); plus < cut) cut = plus, skip = 3;
    TakeLine one = line;
    one.name_span = {begin, begin + static_cast<std::uint32_t>(std::min(cut, rest.size()))};
    one.name = in_.slice(one.name_span);
    know_food(recipe_, one);
    weigh_readings(one);
    recipe_.lines.push_back(one);
    ++part().lines.count;
    if (cut == std::string_view::npos && begin == line.name_span.begin)
      report_.add(Code::unreadable_line, line.name_span, "`each` stands before one name only.")
          .find("`" + std::string(in_.slice(line.span)) + "`").expect("two names joined by `and`, or no `each`");
    if (cut == std::string_view::npos) return;
    begin += static_cast<std::uint32_t>(cut + skip);
    rest = rest.substr(cut + skip);
  }
}

}  // namespace qtn
