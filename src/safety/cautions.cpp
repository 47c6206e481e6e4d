// What a card says of safety: few words, each once, at the step that calls for them.
#include <algorithm>

#include "safety/safety.hpp"
#include "safety/say.hpp"
#include "safety/storing.hpp"
#include "words/rows.hpp"

namespace qtn {
namespace {

// Sugar at the boil: hotter than water, and it sticks. Water boils at 100 °C, a syrup of two parts sugar near 103 °C.
constexpr double kHotSugar = 105;
constexpr double kDeepFat = 500;  // ml: more is a panful

class Cautioner {
 public:
  explicit Cautioner(const Recipe& recipe) : recipe_(recipe), law_(law_of(recipe)) {
    for (const TextFact& fact : recipe.facts)
      if (fact.field == Field::caution) written_ += lower(recipe.slice(fact.span)) + " ";
  }

  Cautions run() {
    if (has_hazards(recipe_)) raw();
    if (is_flavoured_oil(recipe_)) say("oil", kNone, {});
    pans();
    std::stable_sort(out_.list.begin(), out_.list.end(), [](const Caution& a, const Caution& b) { return (a.step == kNone) != (b.step == kNone) ? a.step == kNone : a.step < b.step; });
    return std::move(out_);
  }

 private:
  void say(std::string_view key, Index step, const std::string& food) {
    const CautionWords& words = caution_words(key);
    for (std::string_view unless = words.unless; !unless.empty();)
      if (written_.find(next_item(unless, ',')) != std::string::npos) return;
    std::string text(words.text);
    if (const std::size_t at = text.find("{}"); at != std::string::npos) text.replace(at, 2, food);
    add(step, text);
  }
  void add(Index step, const std::string& text) {
    for (const Caution& old : out_.list)
      if (old.text == text) return;
    out_.list.push_back({step, text});
  }

  void raw() {
    const PotTale tale = follow(recipe_, law_);
    handling();
    for (const PotEvent& event : tale.tastings)
      if (std::any_of(event.items.begin(), event.items.end(), [](const RawItem& item) { return !item.heated && !item.broth && needs_heat(item.kind); }))
        say("spoonful", recipe_.clauses[event.clause].step, {});
    std::vector<const RawItem*> eggs, uncertain, judged;
    for (const RawItem& item : tale.end) {
      if (item.kind == Hazard::egg && !item.done) eggs.push_back(&item);
      if (item.kind == Hazard::honey) say("honey", kNone, {});
      if (needs_heat(item.kind) && item.kind != Hazard::egg && item.kind != Hazard::flour && item.kind != Hazard::beans) {
        judged.push_back(&item);
        if (!item.done && !item.broth) uncertain.push_back(&item);
      }
    }
    if (!eggs.empty()) say("egg", kNone, the_names(eggs));
    for (const RawItem* item : uncertain)
      if (const CoreRule* const rule = core_rule(law_, item->kind))
        add(item->heat == kNone || !item->here ? kNone : recipe_.clauses[item->heat].step,
            "No reading here makes sure of " + the_names({item}) + ": " + std::string(rule->words) + " in the middle (" + source_of(law_, rule->source) + ").");
    kept(tale);
    for (const PotEvent& event : tale.waits) {
      const Clause& clause = recipe_.clauses[event.clause];
      if (verb_of(clause).name != "thaw" || clause.place == Takes::fridge) continue;
      for (const RawItem& item : event.items)
        if (spoils(item.kind) && item.kind != Hazard::rice) say("thaw", clause.step, the_names({&item}));
    }
    if (!judged.empty()) out_.checked = "against the figures of the " + std::string(name_of(law_ == Law::EU ? Law::UK : law_)) + ": " + the_names(judged);
  }

  static bool needs_heat(Hazard kind) {
    return kind != Hazard::none && kind != Hazard::rice && kind != Hazard::cooked && kind != Hazard::cooked_rice && kind != Hazard::honey && kind != Hazard::curing_salt;
  }

  // The first step that names raw meat or fish of this page.
  void handling() {
    for (const Clause& clause : recipe_.clauses)
      for (Index m = clause.mentions.first; m < clause.mentions.end(); ++m) {
        const Target& target = recipe_.mentions[m].target;
        if (target.kind != TargetKind::line || clause.kind != ClauseKind::use) continue;
        const TakeLine& line = recipe_.lines[target.index];
        const Hazard kind = hazard_of(recipe_, line);
        if (kind == Hazard::curing_salt) say("curing salt", clause.step, {});
        if (!needs_heat(kind) || kind == Hazard::egg || kind == Hazard::flour || kind == Hazard::beans || handled_) continue;
        handled_ = true;
        say(kind == Hazard::poultry ? "poultry" : "meat", clause.step, std::string(line.given && line.parent != kNone ? recipe_.lines[line.parent].name : line.name));
      }
  }

  // Kept for longer than the law's own figure, though not past all of them.
  void kept(const PotTale& tale) {
    for (const Keep& keep : recipe_.keeps) {
      if (keep.place != KeepPlace::chilled || keep.once_open || keep.length.is_lost()) continue;
      const double hours = in_base(keep.length, recipe_.dialect).high.approx() / 60;
      const RawItem* worst = nullptr;
      for (const RawItem& item : tale.end)
        if (spoils(item.kind) && hours > keep_limit(law_, item.kind).value && (worst == nullptr || keep_limit(law_, item.kind).value < keep_limit(law_, worst->kind).value)) worst = &item;
      if (worst == nullptr) continue;
      const Law other = law_ == Law::US ? Law::UK : Law::US;
      const Limit &own = keep_limit(law_, worst->kind), &far = keep_limit(other, worst->kind);
      add(kNone, "Of " + the_names({worst}) + ", cooked, the figure is " + std::string(own.words) + " (" + source_of(law_, own.source) + "); " + std::string(name_of(other)) + ": " +
                     std::string(far.words) + ". Freeze the rest.");
    }
  }

  // Panfuls of hot fat, and sugar at the boil.
  void pans() {
    for (Index p = 0; p < recipe_.parts.size(); ++p) {
      const Part& part = recipe_.parts[p];
      bool fat = false, sugar = false;
      for (Index l = part.lines.first; l < part.lines.end(); ++l) {
        const TakeLine& line = recipe_.lines[l];
        const std::string_view name = line.food == nullptr ? std::string_view() : line.food->name;
        sugar = sugar || name.ends_with("sugar") || name == "golden syrup" || name == "sugar syrup" || name == "liquid glucose" || name == "honey";
        if (!name.ends_with("oil") && name != "lard" && name != "beef dripping" && name != "goose fat" && name != "duck fat") continue;
        const bool deep = line.measured() && line.amount.dimension() == Dimension::volume && in_base(line.amount, recipe_.dialect).high.approx() >= kDeepFat;
        const bool heavy = line.measured() && line.amount.dimension() == Dimension::mass && in_base(line.amount, recipe_.dialect).high.approx() >= kDeepFat;
        fat = fat || deep || heavy;
      }
      for (Index s = part.steps.first; s < part.steps.end() && (fat || sugar); ++s) hot_step(s, fat, sugar);
    }
  }

  void hot_step(Index s, bool fat, bool sugar) {
    const Step& step = recipe_.steps[s];
    for (Index c = step.clauses.first; c < step.clauses.end(); ++c) {
      const Clause& clause = recipe_.clauses[c];
      const Verb& verb = verb_of(clause);
      double hottest = 0;
      for (Index t = clause.terms.first; t < clause.terms.end(); ++t)
        if (const Quantity& heat = recipe_.terms[t].amount; heat.dimension() == Dimension::temperature && !heat.is_lost()) hottest = std::max(hottest, in_base(heat, recipe_.dialect).high.approx());
      const bool on_hob = clause.place == Takes::hob || ((verb.takes & static_cast<std::uint8_t>(Takes::hob)) != 0 && clause.place == Takes::nothing);
      const bool reading = clause.kind == ClauseKind::reading;
      if (fat && (verb.name.ends_with("fry") || (on_hob && hottest > 120))) say("fat", s, {});
      if (sugar && !fat && ((verb.name == "caramelise") || (hottest >= kHotSugar && (on_hob || (reading && !in_oven(step)))))) say("sugar", s, {});
    }
  }

  // A loaf that reads so much in the oven is no syrup.
  bool in_oven(const Step& step) const {
    for (Index c = step.clauses.first; c < step.clauses.end(); ++c)
      if (const Verb& verb = verb_of(recipe_.clauses[c]); (verb.takes & static_cast<std::uint8_t>(Takes::oven)) != 0) return true;
    return false;
  }

  const Recipe& recipe_;
  Law law_;
  std::string written_;
  Cautions out_;
  bool handled_ = false;
};

}  // namespace

Cautions cautions_of(const Recipe& recipe) {
  if (recipe.kind != FileKind::recipe) return {};
  return Cautioner(recipe).run();
}

}  // namespace qtn
