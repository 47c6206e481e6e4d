// Rows of the list: amount, the other measure, name, and the rest in plain words.
#include <utility>

#include "card/maker.hpp"
#include "words/fold.hpp"

namespace qtn {

// In the order of the page. A chosen alternative and the line that it stands for change places.
Range32 Maker::rows(Index part) {
  const auto first = static_cast<std::uint32_t>(card_.rows.size());
  const Slice lines = recipe_.parts[part].lines;
  for (Index i = lines.first; i < lines.end() && i < recipe_.lines.size(); ++i) {
    const TakeLine& line = recipe_.lines[i];
    if (line.given) continue;
    Index shown = i;
    if (line.chosen < recipe_.lines.size()) shown = line.chosen;
    if (line.alternative && line.parent < recipe_.lines.size() && recipe_.lines[line.parent].chosen == i) {
      shown = line.parent;
    }
    row(i, shown, line.alternative);
  }
  unlisted_uses(part);
  return {first, static_cast<std::uint32_t>(card_.rows.size()) - first};
}

void Maker::row(Index stands, Index index, bool alternative) {
  const TakeLine& line = recipe_.lines[index];
  const Shown& amount = shown(adapted_.lines, index);
  Row row;
  row.alternative = alternative;
  row.optional = line.optional;
  row.rough = amount.rough;
  row_amount(line, amount, row);
  row_second(index, line, amount, row);
  row_name(line, amount, row);
  row_rest(index, line, amount, row);
  if (recipe_.lines[stands].struck || line.struck) {
    for (const Range32 range : {row.amount, row.second, row.name, row.rest})
      for (std::uint32_t i = range.first; i < range.first + range.count; ++i) card_.runs[i].role = Role::struck;
  }
  card_.rows.push_back(row);
}

void Maker::row_amount(const TakeLine& line, const Shown& shown, Row& row) {
  out_.begin();
  if (!shown.text.empty()) out_.add(shown.text, Role::amount, shown.exact);
  else if (line.measured()) out_.collapsed(slice(line.amount_span), Role::amount);
  row.amount = out_.end();
}

void Maker::row_second(Index index, const TakeLine& line, const Shown& amount, Row& row) {
  if (adapted_.beside) {
    const Shown& other = shown(adapted_.lines_beside, index);
    out_.begin();
    out_.add(other.text, Role::second, other.exact);
    row.second = out_.end();
    row.rough = row.rough || other.rough;
    return;
  }
  if (line.stated.empty()) return;
  out_.begin();
  for (Index i = line.stated.first; i < line.stated.end(); ++i) {
    const Stated& stated = recipe_.stated[i];
    if (amount.changed && !stated.each) continue;  // it says what was; what one weighs stays
    if (!out_.empty()) out_.add(", ", Role::second);
    out_.collapsed(slice(stated.span), Role::second);
    if (stated.each && !slice(stated.span).ends_with("each")) out_.add(words_[Label::each], Role::second);
  }
  row.second = out_.end();
}

void Maker::row_name(const TakeLine& line, const Shown& shown, Row& row) {
  out_.begin();
  const bool counted = shown.changed && line.basis == Basis::amount && line.written.unit == kNoUnit && !line.pack &&
                       shown.unit.empty() && !shown.number.empty() && !line.house_measure;
  if (counted) out_.add(is_one(shown.number) ? singular_of(line.name) : plural_of(line.name), Role::name);
  else out_.collapsed(line.name, Role::name);
  if (line.target.kind == TargetKind::use && line.target.index < recipe_.uses.size()) {
    out_.put(" (");
    out_.put(words_[Label::from_file]);
    out_.put(recipe_.uses[line.target.index].path);
    out_.put(")");
  }
  row.name = out_.end();
}

void Maker::item() {
  if (!out_.empty()) out_.put(", ");
}

void Maker::row_rest(Index index, const TakeLine& line, const Shown& shown, Row& row) {
  out_.begin();
  if (adapted_.beside) {
    for (Index i = line.stated.first; i < line.stated.end(); ++i) {
      if (!recipe_.stated[i].each) continue;
      item();
      out_.collapsed(slice(recipe_.stated[i].span), Role::text);
      out_.put(words_[Label::each]);
    }
  }
  for (Index i = line.tails.first; i < line.tails.end(); ++i) tail(recipe_.tails[i]);
  if (line.splits) given(index);
  const bool ratio_line =
      line.basis == Basis::percent || line.basis == Basis::rate || line.basis == Basis::parts;
  if (ratio_line && !shown.text.empty() && shown.text != slice(line.amount_span)) ratio(line);
  row.rest = out_.end();
}

void Maker::tail(const Tail& tail) {
  item();
  const auto say_amount = [&](Label before) {
    if (!tail.amount) return out_.collapsed(slice(tail.span), Role::text);
    out_.put(words_[before]);
    out_.add(amount(*tail.amount, tail.amount_span), Role::amount, *tail.amount);
  };
  switch (tail.kind) {
    case TailKind::from:
      say_amount(Label::from);
      if (!tail.amount) return;
      if (tail.name.empty()) return out_.put(words_[Label::as_bought]);
      out_.put(" ");
      if (as_written() || tail.amount->unit != kNoUnit) return out_.collapsed(tail.name, Role::text);
      return out_.put(tail.amount->high > Fraction(1) ? plural_of(tail.name) : singular_of(tail.name));
    case TailKind::taking_up: return say_amount(Label::taking_up);
    case TailKind::start_with: return say_amount(Label::start_with);
    case TailKind::optional: return out_.put(words_[Label::optional]);
    case TailKind::fixed: return out_.put(words_[Label::fixed]);
    case TailKind::gently: return out_.put(words_[Label::gently]);
    default: return out_.collapsed(slice(tail.span), Role::text);
  }
}

// "giving 250 g prawns and 150 g shells"
void Maker::given(Index parent) {
  Index last = kNone, count = 0;
  const Slice lines = recipe_.parts[recipe_.lines[parent].part].lines;
  const auto belongs = [&](Index i) { return recipe_.lines[i].given && recipe_.lines[i].parent == parent; };
  for (Index i = lines.first; i < lines.end(); ++i)
    if (belongs(i)) last = i;
  for (Index i = lines.first; last != kNone && i <= last; ++i) {
    if (!belongs(i)) continue;
    if (count == 0) {
      item();
      out_.put(words_[Label::giving]);
    } else {
      out_.put(i == last ? words_[Label::and_] : std::string_view(", "));
    }
    const TakeLine& line = recipe_.lines[i];
    const Shown& amount = shown(adapted_.lines, i);
    if (!amount.text.empty()) out_.add(amount.text, Role::amount, amount.exact);
    else out_.collapsed(slice(line.amount_span), Role::amount);
    out_.put(" ");
    out_.collapsed(line.name, Role::text);
    ++count;
  }
}

// "50 % of the plain flour", "18 g per kg of the thighs and the fat", "3 parts"
void Maker::ratio(const TakeLine& line) {
  item();
  const TakeHead& head = recipe_.parts[line.part].head;
  std::string_view written = slice(line.amount_span);
  // The base is said in words; brackets are not printed.
  if (const std::size_t bracket = written.find('['); bracket != std::string_view::npos) {
    written = trim(written.substr(0, bracket));
    if (written.ends_with(" of")) written = trim(written.substr(0, written.size() - 3));
  }
  out_.collapsed(written, Role::text);
  if (line.basis == Basis::parts) return;
  if (line.basis == Basis::rate && written.find(" per ") == std::string_view::npos) {
    const std::optional<Quantity>& per = line.per ? line.per : head.per;
    if (per) {
      out_.put(words_[Label::per]);
      out_.put(per->low == Fraction(1) ? std::string(write_unit(per->unit, Fraction(1))) : write_plain(*per));
    }
  }
  if (!line.members.empty()) return base_of(line.members);
  if (head.all_flour) return out_.put(words_[Label::of_all_flour]);
  base_of(head.members);
}

void Maker::base_of(Slice members) {
  bool first = true;
  for (Index i = members.first; i < members.end() && i < recipe_.set_members.size(); ++i) {
    const Target& target = recipe_.set_members[i];
    std::string_view name = trim(slice(target.span));
    if (target.kind == TargetKind::line && target.index < recipe_.lines.size()) name = recipe_.lines[target.index].name;
    if (target.kind == TargetKind::part && target.index < recipe_.parts.size()) name = recipe_.parts[target.index].name;
    if (target.kind == TargetKind::use && target.index < recipe_.uses.size()) name = recipe_.uses[target.index].as;
    if (name.empty()) continue;
    if (name.size() > 4 && lower(name.substr(0, 4)) == "the ") name.remove_prefix(4);
    out_.put(first ? words_[Label::of_the] : words_[Label::and_]);
    out_.collapsed(name, Role::text);
    first = false;
  }
}

// A recipe from another file that the method takes without a line in the list.
void Maker::unlisted_uses(Index part) {
  for (Index use = 0; use < recipe_.uses.size(); ++use) {
    const auto is_it = [&](const Target& target) { return target.kind == TargetKind::use && target.index == use; };
    bool listed = false, taken = false;
    for (const TakeLine& line : recipe_.lines) listed = listed || is_it(line.target);
    if (listed) continue;
    const Slice steps = recipe_.parts[part].steps;
    for (Index s = steps.first; s < steps.end() && s < recipe_.steps.size(); ++s) {
      const Slice clauses = recipe_.steps[s].clauses;
      for (Index c = clauses.first; c < clauses.end() && c < recipe_.clauses.size(); ++c) {
        const Slice mentions = recipe_.clauses[c].mentions;
        for (Index m = mentions.first; m < mentions.end(); ++m) taken = taken || is_it(recipe_.mentions[m].target);
      }
    }
    if (!taken) continue;
    TakeLine line;
    line.name = recipe_.uses[use].as;
    line.basis = Basis::unmeasured;
    line.target.kind = TargetKind::use;
    line.target.index = use;
    Row row;
    row_name(line, {}, row);
    card_.rows.push_back(row);
  }
}

}  // namespace qtn
