// What stands in a bracket: its form to a typed clause. Dimensions are asked here, never by the grammar.
#include <algorithm>

#include "diag/nearest.hpp"
#include "recipe/builder.hpp"
#include "recipe/strength.hpp"
#include "words/lexicon.hpp"
#include "words/lists.hpp"

namespace qtn {

void Builder::clause(View bracket) {
  Clause one;
  one.span = bracket.span();
  one.part = part_;
  one.terms.first = static_cast<Index>(recipe_.terms.size());
  one.mentions.first = static_cast<Index>(recipe_.mentions.size());
  if (!house_action(one))
    for (View form : bracket) clause_form(form, one);
  one.terms.count = static_cast<Index>(recipe_.terms.size()) - one.terms.first;
  one.mentions.count = static_cast<Index>(recipe_.mentions.size()) - one.mentions.first;
  if (one.kind == ClauseKind::time && !one.own_verb) nearest_verb(one);
  if (one.kind == ClauseKind::temperature) nearest_verb(one);
  recipe_.clauses.push_back(one);
}

void Builder::clause_form(View form, Clause& one) {
  switch (form.kind()) {
    case Kind::share: one.kind = ClauseKind::use; return share(form, one);
    case Kind::pot: return pot(form, one);
    case Kind::drift: return drift(form, one);
    case Kind::action: return action(form, one);
    case Kind::heat:
      one.kind = ClauseKind::temperature;
      amount_term(TermRole::to, form.first(Kind::amt), one);
      equivalents(form, one);
      return check_clause(one);
    case Kind::wait:
      one.kind = form.has(Kind::within) ? ClauseKind::use_within : ClauseKind::time;
      return action_tails(form, one);
    case Kind::led: return led(form, one);
    case Kind::refs: one.kind = ClauseKind::use; return refs(form, one, Taking::mention);
    default:
      one.kind = ClauseKind::bad;  // a whole listed name may still be meant: resolve.cpp says what is wrong, if it is
      return;
  }
}

// A verb of the house opens the clause: the words behind it are read as behind any verb.
bool Builder::house_action(Clause& one) {
  if (!recipe_.kitchen || recipe_.kitchen->verbs.empty()) return false;
  const Span inner{one.span.begin + 1, one.span.end - 1};
  const std::string_view text = in_.slice(inner);
  for (const auto& [name, house] : recipe_.kitchen->verbs) {
    const std::size_t size = name.size();
    if (text.size() < size || lower(text.substr(0, size)) != lower(name) || (text.size() > size && letter_at(text, size) != 0)) continue;
    Tree rest;
    if (!parse_action(in_.source.text(), {inner.begin + static_cast<std::uint32_t>(size), inner.end}, rest)) return false;
    one.kind = ClauseKind::time;
    one.own_verb = true;
    one.house_verb = &house;
    action_tails(View(rest, 0), one);
    return true;
  }
  return false;
}

Term& Builder::term(TermRole role, const Quantity& amount, Span span, Clause&) {
  recipe_.terms.push_back({role, amount, span, false});
  return recipe_.terms.back();
}

void Builder::amount_term(TermRole role, View amt, Clause& one) {
  const ReadAmount read = read_amount(in_, amt, Place::clause);
  Quantity amount = read.amount;
  if (read.damaged) amount.low = amount.high = Fraction::lost();
  Span span = read.span;
  if (read.sign) span.end = read.sign_span.begin;
  while (span.end > span.begin && (in_.source.text()[span.end - 1] == ' ')) --span.end;
  if (read.sign && in_.slice(span).size() > 3 && in_.slice(span).substr(span.size() - 3) == " to") span.end -= 3;
  term(role, amount, span, one);
  if (read.sign) term(TermRole::to, *read.sign, read.sign_span, one);
}

// The parenthesis behind an amount: each statement in it is checked against that amount (check_clause; resolve.cpp
// where it is of a thing in the list). The weight of each is none of the whole.
void Builder::stated(View equivs, Clause& one) {
  for (View inner : equivs) {
    if (inner.kind() == Kind::amt) amount_term(TermRole::equivalent, inner, one);
    if (inner.kind() == Kind::each && recipe_.terms.size() > one.terms.first) recipe_.terms.pop_back();
  }
}

void Builder::equivalents(View of, Clause& one) {
  for (View child : of)
    if (child.kind() == Kind::equivs) stated(child, one);
}

void Builder::mention(View ref, Taking taking, Clause&) {
  Mention one;
  one.span = ref.span();
  one.taking = taking;
  recipe_.mentions.push_back(one);
}

void Builder::refs(View at, Clause& one, Taking taking) {
  for (View child : at)
    if (child.kind() == Kind::ref) mention(child, taking, one);
}

void Builder::share(View at, Clause& one) {
  Fraction count(1), size(1);
  bool about = false, rest = false;
  for (View child : at) {
    switch (child.kind()) {
      case Kind::about: about = true; break;
      case Kind::number:
      case Kind::number_word:
      case Kind::article: count = read_number(in_, child); break;
      case Kind::share_word: size = Lexicon::standard().row(child.value()).value; break;
      case Kind::rest: rest = true; break;
      case Kind::ref:
        mention(child, rest ? Taking::rest : Taking::share, one);
        recipe_.mentions.back().about = about;
        recipe_.mentions.back().share = count * size;
        break;
      default: break;
    }
  }
  if (count * size > Fraction(1))
    report_.add(Code::share_over_whole, at.span(), "This share is more than the whole.").find("`" + std::string(in_.slice(at.span())) + "`").expect("a share of at most all of it");
}

void Builder::pot(View at, Clause& one) {
  const View verb_node = at.first(Kind::verb);
  one.verb = Lexicon::standard().row(verb_node.value()).verb;
  one.own_verb = true;
  switch (verb(one.verb).deed) {
    case Deed::keep_back: one.kind = ClauseKind::keep_back; break;
    case Deed::take_out: one.kind = ClauseKind::take_out; break;
    case Deed::discard: one.kind = ClauseKind::discard; break;
    case Deed::strain_out: one.kind = ClauseKind::strain_out; break;
    default: one.kind = ClauseKind::drain; break;
  }
  for (View child : at) {
    if (child.kind() == Kind::pot_rest) one.the_rest = true;
    if (child.kind() == Kind::share) share(child, one);
    if (child.kind() == Kind::amt) amount_term(TermRole::use, child, one);
    if (child.kind() == Kind::equivs) stated(child, one);
    if (child.kind() == Kind::ref) {
      const bool amount = recipe_.terms.size() > one.terms.first;
      mention(child, amount ? Taking::amount : Taking::named, one);
      if (amount) recipe_.mentions.back().term = one.terms.first;
    }
  }
  const bool takes_away = one.kind == ClauseKind::take_out || one.kind == ClauseKind::discard || one.kind == ClauseKind::strain_out;
  if (takes_away && !one.the_rest && recipe_.mentions.size() == one.mentions.first)
    report_.add(Code::take_out_what, at.span(), "This does not say what leaves the pot.").find("`" + std::string(in_.slice(one.span)) + "`")
        .expect("a name, or what is left: `[" + std::string(verb(one.verb).name) + " the bay leaves]`, `[discard the rest]`");
  if (one.kind == ClauseKind::keep_back && recipe_.mentions.size() == one.mentions.first)
    report_.add(Code::keep_back_what, at.span(), "This does not say what is kept back.").expect("an amount and a name: `[keep back 50 g of the water]`");
}

void Builder::drift(View at, Clause& one) {
  one.kind = ClauseKind::drift;
  one.gains = at.has(Kind::gains);
  refs(at, one, Taking::named);
  amount_term(TermRole::change, at.first(Kind::amt), one);
  Term& change = recipe_.terms.back();
  if (!change.amount.is_lost() && expect_dimension(in_, change.amount, change.span, {Dimension::ratio}, "a loss or gain is") &&
      !one.gains && change.amount.high >= Fraction(100))
    report_.add(Code::loses_all, change.span, "Nothing would be left.").find("`" + std::string(in_.slice(change.span)) + "`").expect("a loss below 100 %");
}

void Builder::action(View at, Clause& one) {
  const View verb_node = at.first(Kind::verb);
  one.verb = Lexicon::standard().row(verb_node.value()).verb;
  one.own_verb = true;
  const Deed deed = verb(one.verb).deed;
  one.kind = deed == Deed::reading      ? ClauseKind::reading
             : deed == Deed::tasting    ? ClauseKind::taste
             : deed == Deed::weighing   ? ClauseKind::checkpoint
             : deed == Deed::reducing   ? ClauseKind::reduce
             : deed == Deed::use_within && at.has(Kind::within) ? ClauseKind::use_within
                                        : ClauseKind::time;
  action_tails(at, one);
}

void Builder::action_tails(View at, Clause& one) {
  const TermRole main = one.kind == ClauseKind::reading      ? TermRole::reading
                        : one.kind == ClauseKind::checkpoint ? TermRole::checkpoint
                                                             : TermRole::length;
  const auto overnight = [&](View child, bool alone) {
    const Quantity night{alone ? Fraction(8) : recipe_.terms.back().amount.low, Fraction(12), common().hour, Manner::plain, false};
    if (alone) {
      term(TermRole::length, night, child.span(), one).overnight = true;
      return;
    }
    Term& last = recipe_.terms.back();
    const Fraction low = in_base(last.amount, recipe_.dialect).low / Fraction(60);
    last.amount = {low, Fraction(12), common().hour, Manner::plain, false};
    last.overnight = true;
    last.span.end = child->end;
    one.or_overnight = true;
  };
  for (View child : at) {
    switch (child.kind()) {
      case Kind::amt: amount_term(main, child, one); break;
      case Kind::overnight: overnight(child, true); break;
      case Kind::or_overnight: if (recipe_.terms.size() > one.terms.first) overnight(child, false); break;
      case Kind::within: amount_term(TermRole::within, child.first(Kind::amt), one); break;
      case Kind::times: {
        const Fraction count = read_number(in_, *child.begin());
        term(TermRole::times, {count, count, kNoUnit, Manner::plain, false}, child.span(), one);
        break;
      }
      case Kind::each_unit: {
        const UnitId id = Lexicon::standard().row(child.first(Kind::unit).value()).unit;
        term(TermRole::every, {Fraction(1), Fraction(1), id, Manner::plain, false}, child.span(), one);
        break;
      }
      case Kind::every:
        if (child.has(Kind::amt)) amount_term(TermRole::every, child.first(Kind::amt), one);
        else term(TermRole::every, {Fraction(1), Fraction(1), Lexicon::standard().row(child.first(Kind::unit).value()).unit, Manner::plain, false}, child.span(), one);
        break;
      case Kind::between: amount_term(TermRole::between, child.first(Kind::amt), one); break;
      case Kind::load: {
        const ReadAmount read = read_item(in_, child, Place::clause);
        term(TermRole::load, read.amount, read.span, one);
        break;
      }
      case Kind::at_amount:
        amount_term(TermRole::temperature, child.first(Kind::amt), one);
        equivalents(child, one);
        break;
      case Kind::to_amount:
        amount_term(TermRole::to, child.first(Kind::amt), one);
        equivalents(child, one);
        break;
      case Kind::by_amount: if (child.has(Kind::amt)) amount_term(TermRole::by, child.first(Kind::amt), one); break;
      case Kind::for_amount: amount_term(one.kind == ClauseKind::reading ? TermRole::hold : TermRole::length, child.first(Kind::amt), one); break;
      case Kind::plus_amount: amount_term(TermRole::plus, child.first(Kind::amt), one); break;
      case Kind::per:
        if (child.has(Kind::number)) {
          const ReadAmount read = read_item(in_, child, Place::clause);
          term(TermRole::per, read.amount, read.span, one);
        } else if (child.has(Kind::unit)) {
          term(TermRole::per, {Fraction(1), Fraction(1), Lexicon::standard().row(child.first(Kind::unit).value()).unit, Manner::plain, false}, child.first(Kind::unit).span(), one);
        } else if (child.has(Kind::word)) {
          one.each_side = lower(in_.slice(child.first(Kind::word).span())) == "side";
        }
        if (child.has(Kind::ref)) mention(child.first(Kind::ref), Taking::named, one);
        break;
      case Kind::each_side: one.each_side = true; break;
      case Kind::place: {
        const ListWord* word = list_word(WordList::place, Lexicon::standard().row(child.value()).text);
        if (word != nullptr) one.place = static_cast<Takes>(word->value.over());
        break;
      }
      case Kind::of_word: one.of = in_.slice(child.first(Kind::word).span()); break;
      case Kind::until: one.until = in_.slice(child.span()); break;
      case Kind::if_needed: one.if_needed = true; break;
      case Kind::equivs: stated(child, one); break;
      case Kind::minimum: {
        const bool most = lower(in_.slice(child.span())) == "maximum";
        const Span length = recipe_.terms.size() > one.terms.first ? recipe_.terms.back().span : child.span();
        const std::string mended = (most ? "at most " : "at least ") + std::string(in_.slice(length));
        report_.add(Code::minimum_behind, {length.begin, child->end}, "A least or greatest time is said before it.")
            .find("`" + std::string(in_.slice({length.begin, child->end})) + "`").expect("`" + mended + "`")
            .fix({length.begin, child->end}, mended, "write `" + mended + "`");
        break;
      }
      default: break;
    }
  }
  check_clause(one);
}

void Builder::led(View at, Clause& one) {
  const bool word = at.has(Kind::number_word);
  const View first = word ? at.first(Kind::number_word) : at.first(Kind::amt);
  if (at.has(Kind::of_refs)) {
    one.kind = ClauseKind::use;
    if (word) {
      const Fraction count = read_number(in_, first);
      term(TermRole::use, {count, count, kNoUnit, Manner::plain, false}, first.span(), one);
    } else {
      amount_term(TermRole::use, first, one);
    }
    Term& asked = recipe_.terms.back();
    const bool share = asked.amount.dimension() == Dimension::ratio || (asked.amount.unit == kNoUnit && asked.amount.high < Fraction(1));
    if (share) asked.role = TermRole::share;
    const Index index = static_cast<Index>(recipe_.terms.size() - 1);
    for (View ref : at.first(Kind::of_refs)) {
      if (ref.kind() != Kind::ref) continue;
      mention(ref, share ? Taking::share : Taking::amount, one);
      Mention& made = recipe_.mentions.back();
      made.term = index;
      made.about = asked.amount.manner == Manner::about;
    }
    if (!asked.amount.is_lost() && !share)
      expect_dimension(in_, asked.amount, asked.span, {Dimension::mass, Dimension::volume, Dimension::count, Dimension::length}, "what is taken of the list is");
    return equivalents(at, one);
  }
  if (at.has(Kind::name)) {
    // A use when the name is in the list, else pieces (T4): names.cpp decides. After a percentage a strength.
    one.thing = in_.slice(at.first(Kind::name).span());
    if (word) {
      const Fraction count = read_number(in_, first);
      term(TermRole::pieces, {count, count, kNoUnit, Manner::plain, false}, first.span(), one);
    } else {
      amount_term(TermRole::pieces, first, one);
    }
    Term& counted = recipe_.terms.back();
    if (counted.amount.dimension() == Dimension::ratio) {
      counted.role = TermRole::strength;
      one.kind = ClauseKind::strength;
      return;
    }
    if (counted.amount.unit == kNoUnit && is_bare_strength("1 " + std::string(one.thing))) {
      bare_strength(counted.span, std::string(in_.slice(counted.span)) + " " + std::string(one.thing));
      one.kind = ClauseKind::bad, one.explained = true;
      return;
    }
    one.kind = ClauseKind::pieces;
    mention(at.first(Kind::name), Taking::amount, one);
    recipe_.mentions.back().term = static_cast<Index>(recipe_.terms.size() - 1);
    equivalents(at, one);
    if (at.has(Kind::of_amount)) amount_term(TermRole::piece_weight, at.first(Kind::of_amount).first(Kind::amt), one);
    return;
  }
  if (word) {
    one.kind = ClauseKind::bad;
    return;
  }
  const ReadAmount read = read_amount(in_, first, Place::clause);
  if (at.has(Kind::by_size)) {
    one.kind = ClauseKind::measure;
    Quantity size = read.amount;
    const Index index = static_cast<Index>(recipe_.terms.size());
    term(TermRole::measure, size, read.span, one);
    for (View child : at) {
      if (child.kind() != Kind::by_size) continue;
      const ReadAmount next = read_item(in_, child, Place::clause);
      term(TermRole::measure, next.amount, next.span, one);
      if (size.unit == kNoUnit) recipe_.terms[index].amount.unit = next.amount.unit;
      expect_dimension(in_, next.amount, next.span, {Dimension::length}, "the sides of a piece are");
    }
    return;
  }
  switch (read.amount.dimension()) {
    case Dimension::duration: one.kind = ClauseKind::time; break;
    case Dimension::temperature: one.kind = ClauseKind::temperature; break;
    case Dimension::length: one.kind = ClauseKind::measure; break;
    default:
      one.kind = ClauseKind::bad;
      one.explained = true;
      if (!read.damaged)
        report_.add(Code::amount_of_nothing, one.span, "This amount does not say what it is of.")
            .find("`" + std::string(in_.slice(one.span)) + "`").expect("a name from the list: `[100 g of the cheddar]`");
      return;
  }
  const TermRole role = one.kind == ClauseKind::time ? TermRole::length : one.kind == ClauseKind::temperature ? TermRole::temperature : TermRole::measure;
  if (one.kind != ClauseKind::time) {
    term(role, read.amount, read.span, one);
    if (read.damaged) recipe_.terms.back().amount.low = recipe_.terms.back().amount.high = Fraction::lost();
    equivalents(at, one);
    return check_clause(one);
  }
  action_tails(at, one);
}

namespace {

struct Wants {
  TermRole role;
  std::string_view where;
  std::initializer_list<Dimension> dimensions;
};

}  // namespace

// Every place wants its kind of amount; anything else names both (5.2).
void Builder::check_clause(Clause& one) {
  static const Wants kWants[] = {
      {TermRole::length, "this wants", {Dimension::duration}},
      {TermRole::temperature, "after `at` stands", {Dimension::temperature}},
      {TermRole::reading, "a reading is", {Dimension::temperature}},
      {TermRole::hold, "how long a reading holds is", {Dimension::duration}},
      {TermRole::plus, "after `plus` stands", {Dimension::duration}},
      {TermRole::within, "after `within` stands", {Dimension::duration}},
      {TermRole::every, "after `every` stands", {Dimension::duration}},
      {TermRole::between, "between two turns stands", {Dimension::duration}},
      {TermRole::per, "after `per` stands", {Dimension::mass, Dimension::volume, Dimension::count}},
      {TermRole::checkpoint, "what is weighed is", {Dimension::mass, Dimension::volume}},
      {TermRole::by, "after `by` stands", {Dimension::temperature, Dimension::mass, Dimension::volume, Dimension::ratio}},
  };
  const Term* length = nullptr;
  const Term* before = nullptr;
  for (Index i = one.terms.first; i < recipe_.terms.size(); ++i) {
    Term& term = recipe_.terms[i];
    if (term.amount.is_lost()) continue;
    const Dimension dimension = term.amount.dimension();
    for (const Wants& wants : kWants)
      if (wants.role == term.role && !expect_dimension(in_, term.amount, term.span, wants.dimensions,
              one.own_verb && wants.role == TermRole::length ? "after `" + std::string(verb(one.verb).name) + "` stands" : std::string(wants.where)))
        term.amount.low = term.amount.high = Fraction::lost();
    if (term.role == TermRole::to && dimension != Dimension::temperature) {
      const bool waits = one.own_verb && verb(one.verb).wait;  // nothing cools to 20 g
      if (waits && dimension != Dimension::length) expect_dimension(in_, term.amount, term.span, {Dimension::temperature}, "after `to` stands");
      else if (dimension == Dimension::mass || dimension == Dimension::volume) one.kind = ClauseKind::reduce;
      else if (dimension == Dimension::length) term.role = TermRole::measure;
      else expect_dimension(in_, term.amount, term.span, {Dimension::temperature, Dimension::mass, Dimension::volume}, "after `to` stands");
    }
    if (term.role == TermRole::length && dimension == Dimension::duration) {
      if (length != nullptr)
        report_.add(Code::second_time, term.span, "A second time stands in one bracket.").also(length->span, "the first is here")
            .expect("a bracket for each time").find("`" + std::string(in_.slice(term.span)) + "`");
      length = &term;
    }
    if (term.role == TermRole::equivalent && before != nullptr && !before->amount.is_lost()) {
      if (expect_dimension(in_, term.amount, term.span, {before->amount.dimension()}, "what stands in parentheses restates the amount before it, which is")) {
        const Agreement agreement = agrees(before->amount, in_base(before->amount, recipe_.dialect), term.amount, recipe_.dialect);
        if (!agreement.holds) {
          auto& problem = report_.add(Code::equivalent_off, term.span, "`" + std::string(in_.slice(term.span)) + "` is not the same as `" + std::string(in_.slice(before->span)) + "`.");
          problem.also(before->span, "the first amount rules").find("`" + std::string(in_.slice(term.span)) + "`");
          if (!agreement.correct.empty()) problem.expect("`" + agreement.correct + "`").fix(term.span, agreement.correct, "write `" + agreement.correct + "`");
        }
      }
    }
    if (term.role != TermRole::equivalent) before = &term;
  }
}

}  // namespace qtn
