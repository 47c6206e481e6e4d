// What a card says of allergens and of safety.
#include <algorithm>

#include "card/maker.hpp"
#include "safety/allergens.hpp"

namespace qtn {
namespace {

void add(std::string& out, std::string_view mark, const std::string& words) {
  if (!out.empty()) out += mark;
  out += words;
}

// "Worcestershire sauce", "celery, from the Chicken stock"
std::string named(const Bringer& one) {
  std::string out = one.name;
  if (!one.way.empty()) out += ", from the " + one.way;
  if (one.optional) out += ", where it is taken";
  return out;
}

}  // namespace

// Each group once; where nothing on the page itself brings it, the way it comes.
std::string Maker::contained(const AllergenSheet& sheet, AllergenList list) const {
  std::vector<std::string> groups;
  bool ways = false;
  const AllergenSet all = sheet.contains();
  for (const std::string& group : groups_of(all, list)) {
    std::string way;
    bool own = false;
    for (const Bringer& one : sheet.bringers) {
      if (one.instead || (one.contains & all) == 0) continue;
      const auto its = groups_of(one.contains, list);
      const std::string_view word = std::string_view(group).substr(0, group.find(" ("));
      if (std::none_of(its.begin(), its.end(), [&](const std::string& mine) { return std::string_view(mine).substr(0, mine.find(" (")) == word; })) continue;
      own = own || (one.way.empty() && !one.optional);
      if (way.empty()) way = named(one);
    }
    groups.push_back(own ? group : group + ": " + way);
    ways = ways || !own;
  }
  std::string out;
  for (const std::string& group : groups) add(out, ways ? "; " : ", ", group);
  return out;
}

void Maker::allergens() {
  const AllergenSheet sheet = allergens_of(recipe_);
  const Law law = law_of(recipe_);
  const AllergenList list = law == Law::US ? AllergenList::american : AllergenList::european;
  const std::string contains = contained(sheet, list);
  if (!contains.empty()) fact(FactKind::contains, Caption::contains, plain(contains));
  std::string label, instead, unknown;
  for (const Bringer& one : sheet.bringers) {
    if (!one.known) add(unknown, ", ", named(one));
    if (one.instead) {
      std::string groups;
      for (const std::string& group : groups_of((one.contains | one.label) & ~sheet.contains(), list)) add(groups, ", ", group);
      if (!groups.empty()) add(instead, "; ", named(one) + ": " + groups);
      continue;
    }
    std::string groups;
    for (const std::string& group : groups_of(one.label & ~sheet.contains(), list)) add(groups, ", ", group);
    if (!groups.empty() || (one.see_label && one.known)) add(label, "; ", named(one) + (groups.empty() ? "" : " (" + groups + ")"));
  }
  if (!instead.empty()) fact(FactKind::contains_instead, Caption::contains_instead, plain(instead));
  if (!label.empty()) fact(FactKind::see_label, Caption::see_label, plain(label));
  if (!unknown.empty()) fact(FactKind::not_known, Caption::not_known, plain(unknown));
  for (const GuestNeed& need : guests_of(recipe_, nullptr)) {
    std::string text = need.who + ": ";
    std::string can, look, open, not_;
    for (const std::string& dish : need.can) add(can, ", ", dish);
    for (const std::string& dish : need.label) add(look, ", ", dish);
    for (const std::string& dish : need.open) add(open, ", ", dish);
    for (const std::string& dish : need.cannot) add(not_, ", ", dish);
    std::string all;
    if (!can.empty()) add(all, "; ", can);
    if (!look.empty()) add(all, "; ", std::string(words_[Caption::after_labels]) + look);
    if (!open.empty()) add(all, "; ", std::string(words_[Caption::nobody_can_say]) + open);
    if (!not_.empty()) add(all, "; ", std::string(words_[Caption::not_for_them]) + not_);
    fact(FactKind::guests, Caption::can_eat, plain(text + all));
  }
  card_.allergens.said = true;
  for (const AllergenList each : {AllergenList::european, AllergenList::american}) {
    AllergenWords& words = each == AllergenList::american ? card_.allergens.american : card_.allergens.european;
    words.contains = groups_of(sheet.contains(), each);
    words.label = groups_of(sheet.label(), each);
  }
  for (const Bringer& one : sheet.bringers)
    if (!one.known) card_.allergens.unknown.push_back(named(one));
}

// Cautions of the whole dish stand with the writer's own; the others behind their step.
void Maker::dish_cautions() {
  for (const Caution& one : cautions_.list)
    if (one.step == kNone) card_.remarks.push_back({Remark::Kind::caution, plain(one.text)});
}

void Maker::step_cautions(Index step) {
  for (const Caution& one : cautions_.list) {
    if (one.step != step) continue;
    CardStep out;
    out.kind = StepKind::caution;
    out.label = plain(words_[Caption::caution]);
    out.runs = plain(one.text);
    card_.steps.push_back(out);
  }
}

// What was looked at, and what nobody looked at: silence is no promise.
void Maker::checked() {
  if (cautions_.checked.empty()) return;
  std::string text = cautions_.checked + std::string(words_[Caption::not_checked]);
  std::string unknown;
  for (const TakeLine& line : recipe_.lines)
    if (line.food == nullptr && line.target.kind == TargetKind::none && !line.given && !line.name.empty() && unknown.find(line.name) == std::string::npos) add(unknown, ", ", std::string(line.name));
  if (!unknown.empty()) text += std::string(words_[Caption::nor]) + unknown;
  fact(FactKind::checked, Caption::checked, plain(text + "."));
}

}  // namespace qtn
