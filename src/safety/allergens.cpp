#include "safety/allergens.hpp"

#include <algorithm>

#include "diag/nearest.hpp"
#include "recipe/makes.hpp"
#include "safety/say.hpp"

namespace qtn {
namespace {

constexpr std::size_t kMostPlaces = 4000;  // recipes and parts walked through, for a book of rings and ladders

// One recipe, or one of its parts, still to be read.
struct Place {
  const Recipe* recipe;
  Index part;        // kNone: all of its dish
  std::string way;
  Span at;           // in the file at hand; empty for its own lines
};

class Gatherer {
 public:
  explicit Gatherer(const Recipe& recipe) : home_(recipe) {}

  AllergenSheet run() {
    // Its own list is read whole, whatever uses what; a menu's dishes are recipes.
    for (const TakeLine& line : home_.lines) take(home_, line, "", line.span);
    for (std::size_t at = 0; at < places_.size() && at < kMostPlaces; ++at) {
      const Place place = places_[at];
      const Part& part = place.recipe->parts[place.part];
      for (Index l = part.lines.first; l < part.lines.end(); ++l) take(*place.recipe, place.recipe->lines[l], place.way, place.at);
      for (Index s = part.steps.first; s < part.steps.end(); ++s) mentions(*place.recipe, place.recipe->steps[s], place);
    }
    if (places_.size() > kMostPlaces) {
      Bringer rest;
      rest.known = false, rest.name = "what its many recipes use in turn";
      sheet_.bringers.push_back(rest);
    }
    return std::move(sheet_);
  }

 private:
  // Parts and recipes that only the method names.
  void mentions(const Recipe& recipe, const Step& step, const Place& from) {
    for (Index c = step.clauses.first; c < step.clauses.end(); ++c)
      for (Index m = recipe.clauses[c].mentions.first; m < recipe.clauses[c].mentions.end(); ++m)
        follow(recipe, recipe.mentions[m].target, from.way, from.at);
  }

  void follow(const Recipe& recipe, const Target& target, const std::string& way, Span at) {
    if (target.kind == TargetKind::part && &recipe != &home_) return add({&recipe, target.index, way, at});
    if (target.kind != TargetKind::use) return;
    const Use& use = recipe.uses[target.index];
    if (use.recipe == nullptr || use.recipe->parts.empty()) return;
    const std::string name(use.part == kNone ? use.recipe->title : use.recipe->parts[use.part].name);
    add({use.recipe, use.part == kNone ? use.recipe->dish : use.part, way.empty() ? name : way + ", " + name, at});
  }

  void add(const Place& place) {
    for (const Place& old : places_)
      if (old.recipe == place.recipe && old.part == place.part) return;
    places_.push_back(place);
  }

  void take(const Recipe& recipe, const TakeLine& listed, const std::string& way, Span at) {
    if (listed.struck || listed.given) return;
    const TakeLine& line = listed.chosen != kNone ? recipe.lines[listed.chosen] : listed;
    if (listed.alternative && listed.parent != kNone && recipe.lines[listed.parent].chosen != kNone) return;  // it, or the other, was chosen
    if (line.target.kind == TargetKind::part || line.target.kind == TargetKind::use) return follow(recipe, line.target, way, at);
    if (line.name.empty()) return;
    const Brings brought = house(recipe, line);
    if (brought.known && (brought.contains | brought.label) == 0 && !brought.see_label) return;
    Bringer one;
    one.contains = brought.contains, one.label = brought.label, one.absent = brought.absent, one.known = brought.known, one.see_label = brought.see_label;
    one.instead = listed.alternative, one.optional = line.optional;
    one.name = line.name, one.way = way, one.place = at;
    for (const Bringer& old : sheet_.bringers)
      if (old.name == one.name && old.way == one.way && old.instead == one.instead) return;
    sheet_.bringers.push_back(std::move(one));
  }

  // The table and what the house says of its own ingredient, together. `contains celery, nothing else` was read from its label.
  static Brings house(const Recipe& recipe, const TakeLine& line) {
    Brings out = brings(line.name, recipe.keys_of(line));
    const HouseFood* const own = recipe.kitchen ? recipe.kitchen->food(line.name) : nullptr;
    if (own != nullptr && own->allergens_said) {
      out.known = true;
      out.contains |= own->contains;
      if (own->nothing_else) out.label = 0, out.see_label = false;
      out.label &= ~out.contains;
    }
    // `lemon juice, from half a lemon` is pressed here and has no label.
    if (const Tail* const from = tail_of(recipe, line, TailKind::from); from != nullptr && !from->name.empty()) out.label = 0;
    return out;
  }

  const Recipe& home_;
  std::vector<Place> places_;
  AllergenSheet sheet_;
};

// "milk, gluten and eggs", item by item.
std::vector<Span> items(const Recipe& recipe, Span words) {
  std::vector<Span> out;
  const std::string_view text = recipe.slice(words);
  for (std::size_t at = 0; at <= text.size();) {
    std::size_t end = std::min(text.find(',', at), text.size()), next = end + 1;
    if (const std::size_t join = text.find(" and ", at); join < end) end = join, next = join + 5;
    std::size_t first = at, last = end;
    while (first < last && (text[first] == ' ' || text[first] == '\n' || text[first] == '\r')) ++first;
    while (last > first && (text[last - 1] == ' ' || text[last - 1] == '\n' || text[last - 1] == '\r' || text[last - 1] == '.')) --last;
    if (last > first) out.push_back({static_cast<std::uint32_t>(words.begin + first), static_cast<std::uint32_t>(words.begin + last)});
    at = next;
  }
  return out;
}

// The plain words of a set: "wheat", "milk".
std::vector<std::string> keys_in(AllergenSet set) {
  std::vector<std::string> out;
  for (std::size_t i = 0; i < allergen_list().size(); ++i)
    if ((set >> i & 1) != 0) out.emplace_back(allergen_list()[i].key);
  return out;
}

std::string join(const std::vector<std::string>& words, std::string_view last = " and ") {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) out += std::string(i == 0 ? "" : i + 1 == words.size() ? last : ", ") + words[i];
  return out;
}

// "the celery, from the Chicken stock,"
std::string told(const Bringer& one, bool goes_on) {
  return "the " + one.name + (one.way.empty() ? "" : ", from the " + one.way + (goes_on ? "," : ""));
}

// Why nobody can be sure that it is free of these; empty where it is.
std::string doubt(const Bringer& one, AllergenSet avoided) {
  avoided &= ~one.absent;
  if (avoided == 0) return "";
  const AllergenSet seen = one.label & avoided, maybe = seen != 0 ? seen : may_be(one.contains | one.label) & avoided;
  if (maybe != 0) return "Only a label tells whether there is any " + join(keys_in(maybe), " or ") + " in " + told(one, false) + ".";
  if (!one.known) return "The table of allergens does not know " + told(one, true) + " so nobody can say that the promise is kept.";
  return one.see_label && one.absent == 0 ? "Only a label tells what else is in " + told(one, false) + "." : "";
}

}  // namespace

AllergenSet AllergenSheet::contains() const {
  AllergenSet out = 0;
  for (const Bringer& one : bringers)
    if (!one.instead) out |= one.contains;
  return out;
}

AllergenSet AllergenSheet::label() const {
  AllergenSet out = 0;
  for (const Bringer& one : bringers) out |= one.instead ? one.contains | one.label : one.label;
  return out & ~contains();
}

bool AllergenSheet::all_known() const {
  return std::all_of(bringers.begin(), bringers.end(), [](const Bringer& one) { return one.known && !one.see_label; });
}

AllergenSheet allergens_of(const Recipe& recipe) { return Gatherer(recipe).run(); }

std::vector<std::string> groups_of(AllergenSet set, AllergenList list) {
  std::vector<std::pair<std::string_view, std::vector<std::string>>> groups;
  const auto rows = allergen_list();
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const std::string_view group = list == AllergenList::american ? rows[i].american : rows[i].european;
    if ((set >> i & 1) == 0 || group.empty()) continue;
    auto at = std::find_if(groups.begin(), groups.end(), [&](const auto& one) { return one.first == group; });
    if (at == groups.end()) at = groups.insert(groups.end(), {group, {}});
    if (rows[i].key != group && rows[i].key != "nuts") at->second.emplace_back(rows[i].key);
  }
  const bool unnamed = (set & allergens_held("nuts")) != 0;
  std::vector<std::string> out;
  for (auto& [group, kinds] : groups) {
    if (unnamed && group.ends_with("nuts") && group != "peanuts" && !kinds.empty()) kinds.emplace_back("others not named");
    // "milk"; a group of several says which of them; "soybeans" are what everybody calls soya.
    const bool several = group == "cereals containing gluten" || group.ends_with("nuts");
    out.push_back(std::string(group) + (several && !kinds.empty() ? " (" + join(kinds) + ")" : ""));
  }
  return out;
}

AllergenSet promised(const Recipe& recipe, Span word, Report* report) {
  const AllergenSet meant = allergens_meant(recipe.slice(word));
  if (meant != 0 || report == nullptr) return meant;
  auto& problem = report->add(Code::unknown_allergen, word, "`" + std::string(recipe.slice(word)) + "` is no allergen of the lists, so nobody can check it.")
        .expect("a word of them: gluten, wheat, milk, eggs, fish, crustaceans, molluscs, nuts, almonds, peanuts, soya, sesame, celery, mustard, sulphites, lupin");
  std::vector<std::string_view> known;
  for (const auto& one : allergen_list()) known.push_back(one.key);
  for (const std::string_view near : nearest(recipe.slice(word), known)) problem.offer(word, std::string(near), "write `" + std::string(near) + "`");
  return 0;
}

void check_promises(const Recipe& recipe, Report& report) {
  for (const TextFact& fact : recipe.facts) {
    if (fact.field != Field::without) continue;
    AllergenSet avoided = 0;
    for (const Span item : items(recipe, fact.span)) avoided |= promised(recipe, item, &report);
    if (avoided == 0) continue;
    for (const Bringer& one : allergens_of(recipe).bringers) {
      if (const AllergenSet bad = one.contains & avoided; bad != 0) {
        report.add(Code::brings_what_is_promised_away, one.place, "The " + one.name + (one.way.empty() ? "" : ", from the " + one.way + ",") + (plural(one.name) ? " bring " : " brings ") + join(keys_in(bad)) + ".")
            .find(quoted(one.name)).expect("something else in its place, or a line `without:` that does not promise it")
            .also(fact.span, "promised here");
      } else if (const std::string why = doubt(one, avoided); !why.empty()) {
        report.add(Code::promise_unsure, one.place, why)
            .find(quoted(one.name)).expect("one that is known to be without it, or what its label says, in the kitchen file: " + quoted(one.name + "   contains nothing else"))
            .also(fact.span, "promised here");
      }
    }
  }
  if (recipe.kind == FileKind::menu) guests_of(recipe, &report);
}

}  // namespace qtn
