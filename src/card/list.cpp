// Rows of the list.
#include "card/maker.hpp"
#include "words/fold.hpp"

namespace qtn {

namespace {

// At another size a thing that was one may be several, and the other way round.
std::string counted(const Recipe& recipe, const TakeLine& line, std::string_view name) {
  name = trim(name);
  if (recipe.factor == Fraction(1)) return std::string(name);
  return line.amount.high > Fraction(1) ? plural_of(name) : singular_of(name);
}

// 10 hand pies [Hand pies]: the thing that is counted has a word of its own before the name.
bool named_apart(const TakeLine& line) {
  return line.target.kind == TargetKind::use && line.measured() && !line.target.span.empty() &&
         line.name_span.begin < line.target.span.begin;
}

// Does the second column tell the reader nothing new? Then it stays empty.
bool says_the_same(const Shown& beside, const Shown& first) {
  const auto bare = [](std::string_view text) {
    for (const std::string_view manner : {"about ", "exactly ", "at most ", "up to ", "at least ", "≈ "})
      if (text.starts_with(manner)) text.remove_prefix(manner.size());
    return text;
  };
  const Quantity &a = beside.exact, &b = first.exact;
  const bool one_amount = a.unit == b.unit && a.low == b.low && a.high == b.high && !a.is_lost();
  return bare(beside.text) == bare(first.text) || (one_amount && !beside.rough);
}

}  // namespace

void Maker::rows(const Part& part) {
  for (Index i = part.lines.first; i < part.lines.end(); ++i)
    if (!recipe_.lines[i].given) row(i);
}

// Of an earlier day a line that came in later does not stand in the list, nor does what may take its place.
bool Maker::not_yet(const TakeLine& line) const {
  return recipe_.as_of && (line.struck || (line.alternative && line.parent != kNone && recipe_.lines[line.parent].struck));
}

void Maker::row(Index index) {
  const TakeLine& listed = recipe_.lines[index];
  if (not_yet(listed)) return;
  const TakeLine& line = listed.chosen != kNone ? recipe_.lines[listed.chosen] : listed;
  if (listed.alternative && listed.parent != kNone && recipe_.lines[listed.parent].chosen == index) return;  // it stands in the line's own place
  Row row;
  row.amount = amount_runs(adapted_.lines[index], line);
  row.second = second_runs(index);
  row.name = name_runs(line);
  row.rest = rest_runs(listed.chosen != kNone ? listed.chosen : index);
  row.alternative = listed.alternative;
  row.optional = line.optional;
  row.rough = adapted_.lines[index].rough;
  if (line.struck) {
    for (const Range32 range : {row.amount, row.second, row.rest})
      for (std::uint32_t i = range.first; i < range.first + range.count; ++i) card_.runs[i].role = Role::struck;
  }
  card_.rows.push_back(row);
}

Range32 Maker::amount_runs(const Shown& shown, const TakeLine& line) {
  out_.begin();
  out_.add(shown.text, Role::amount, shown.exact);
  // "a pinch of salt" keeps its "of", which stands between the two.
  const bool between = !shown.text.empty() && line.name_span.begin > line.amount_span.end;
  if (between && trim(recipe_.slice({line.amount_span.end, line.name_span.begin})) == "of") out_.put(" of");
  // 24 straws [Cheese straws]: what is counted stands with its number.
  if (named_apart(line)) out_.add(" " + counted(recipe_, line, recipe_.slice(line.name_span)), Role::amount);
  return out_.end();
}

// The column beside; without one, what the page itself states in parentheses, while nothing was changed.
Range32 Maker::second_runs(Index index) {
  out_.begin();
  const TakeLine& line = recipe_.lines[index];
  if (adapted_.beside) {
    const Shown& beside = adapted_.lines_beside[index];
    if (!says_the_same(beside, adapted_.lines[index])) out_.add(beside.text, Role::second, beside.exact);
  } else if (line.chosen == kNone) {
    for (Index s = line.stated.first; s < line.stated.end(); ++s) {
      const Stated& stated = recipe_.stated[s];
      if (adapted_.lines[index].changed && !stated.each) continue;  // it says what was; what one weighs stays
      if (!out_.empty()) out_.add(", ", Role::second);
      out_.add(in_print(recipe_.slice(stated.span)), Role::second, stated.amount);
      if (stated.each) out_.add(words_[Caption::each], Role::second);
    }
  }
  return out_.end();
}

Range32 Maker::name_runs(const TakeLine& line) {
  out_.begin();
  const bool one_by_one = line.measured() && line.amount.unit == kNoUnit && line.target.kind == TargetKind::none;
  const Role role = line.struck ? Role::struck : Role::name;
  if (wording_) {
    const bool thing = line.target.kind == TargetKind::none;
    checked_.push_back({CheckedWords::Kind::name, static_cast<std::uint32_t>(card_.runs.size()), thing ? static_cast<Index>(&line - recipe_.lines.data()) : kNone});
  }
  if (named_apart(line)) out_.collapsed(recipe_.slice(line.target.span), role);
  else out_.collapsed(one_by_one ? counted(recipe_, line, line.name) : std::string(line.name), role);
  if (line.target.kind == TargetKind::use) {
    const Use& use = recipe_.uses[line.target.index];
    const std::string_view title = use.recipe != nullptr ? use.recipe->title : std::string_view();
    out_.put(" (");
    if (title.empty()) out_.put(words_[Caption::from_file]), out_.put(use.path);
    else if (fold_name(title) == fold_name(recipe_.slice(line.target.span))) out_.put(words_[Caption::own_card]);
    else out_.put(words_[Caption::card_of]), out_.put(title);
    out_.put(")");
  }
  return out_.end();
}

Range32 Maker::rest_runs(Index index) {
  const TakeLine& line = recipe_.lines[index];
  out_.begin();
  const auto next = [&] {
    if (!out_.empty()) out_.put(", ");
  };
  const auto amount = [&](const Tail& tail) {
    out_.add(adapted_.tails[static_cast<std::size_t>(&tail - recipe_.tails.data())].text, Role::amount);
    if (tail.name.empty()) return;
    const bool plain = recipe_.factor == Fraction(1) || tail.amount->unit != kNoUnit;
    out_.put(" ");
    const bool several = tail.amount->high > Fraction(1);
    out_.put(plain ? std::string(tail.name) : several ? plural_of(tail.name) : singular_of(tail.name));
  };
  // With a column beside the amounts, what one weighs has no other place.
  for (Index s = line.stated.first; s < line.stated.end() && adapted_.beside; ++s) {
    if (!recipe_.stated[s].each) continue;
    next();
    out_.add(in_print(recipe_.slice(recipe_.stated[s].span)), Role::amount), out_.put(words_[Caption::each]);
  }
  for (Index t = line.tails.first; t < line.tails.end(); ++t) {
    const Tail& tail = recipe_.tails[t];
    next();
    switch (tail.kind) {
      case TailKind::from: out_.put(words_[Caption::from]), amount(tail), out_.put(tail.name.empty() ? words_[Caption::as_bought] : std::string_view()); break;
      case TailKind::taking_up: out_.put(words_[Caption::taking_up]), amount(tail); break;
      case TailKind::start_with: out_.put(words_[Caption::start_with]), amount(tail); break;
      case TailKind::each: amount(tail), out_.put(words_[Caption::each]); break;
      case TailKind::fixed: out_.put(words_[Caption::fixed]); break;
      case TailKind::gently: out_.put(words_[Caption::gently]); break;
      default: as_it_reads(tail); break;
    }
  }
  if (line.splits) {
    next();
    out_.put(words_[Caption::giving]);
    bool first = true;
    for (const TakeLine& given : recipe_.lines) {
      if (!given.given || given.parent != index) continue;
      if (!first) out_.put(words_[Caption::and_]);
      first = false;
      out_.add(adapted_.lines[static_cast<std::size_t>(&given - recipe_.lines.data())].text, Role::amount);
      out_.put(" "), out_.put(listed(given.name));
    }
  }
  const bool put_back = recipe_.as_of && recipe_.version != line.name;  // what took its place came later
  if (line.parent != kNone && line.alternative && recipe_.lines[line.parent].chosen == index && !put_back) {
    next();
    out_.put(words_[Caption::instead_of]), out_.put(listed(recipe_.lines[line.parent].name));
  }
  if (line.basis == Basis::percent) {
    next();
    out_.add(write_plain(line.written), Role::amount);
    base_of(line);
  }
  return out_.end();
}

// As it is written; a measure in it is the card's own.
void Maker::as_it_reads(const Tail& tail) {
  const std::string_view shown = tail.amount ? adapted_.tails[static_cast<std::size_t>(&tail - recipe_.tails.data())].text : std::string_view();
  const bool measure = tail.kind == TailKind::preparation && !shown.empty();
  if (!measure) return out_.collapsed(recipe_.slice(tail.span), Role::text);
  out_.collapsed(recipe_.slice({tail.span.begin, tail.amount_span.begin}), Role::text);
  out_.add(shown, Role::measure);
  if (tail.amount_span.end < tail.span.end) out_.collapsed(recipe_.slice({tail.amount_span.end, tail.span.end}), Role::text);
}

// What a percentage is of: "50 % of the plain flour".
void Maker::base_of(const TakeLine& line) {
  const TakeHead& head = recipe_.parts[line.part].head;
  if (line.members.empty() && head.all_flour) return out_.put(words_[Caption::of_all_flour]);
  const Slice members = line.members.empty() ? head.members : line.members;
  for (Index i = members.first; i < members.end(); ++i) {
    const Target& target = recipe_.set_members[i];
    const bool of_line = target.kind == TargetKind::line && target.index < recipe_.lines.size();
    out_.put(i == members.first ? words_[Caption::of_the] : words_[Caption::and_]);
    out_.collapsed(of_line ? listed(recipe_.lines[target.index].name) : recipe_.slice(target.span), Role::text);
  }
}

}  // namespace qtn
