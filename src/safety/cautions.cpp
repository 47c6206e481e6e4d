// What a card says of safety: few words, each once, at the step that calls for them.
#include <algorithm>
#include <map>

#include "recipe/sentences.hpp"
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
      if (fact.field == Field::caution) written_.push_back(lower(recipe.slice(fact.span)));
  }

  Cautions run() {
    if (has_hazards(recipe_)) raw();
    if (keeps_under_oil(recipe_)) say("oil", kNone, {});
    slow_beans();
    pans();
    std::stable_sort(out_.list.begin(), out_.list.end(), [](const Caution& a, const Caution& b) { return (a.step == kNone) != (b.step == kNone) ? a.step == kNone : a.step < b.step; });
    return std::move(out_);
  }

 private:
  void say(std::string_view key, Index step, const std::string& food) {
    const CautionWords& words = caution_words(key);
    for (std::string_view unless = words.unless; !unless.empty();)
      if (is_written(next_item(unless, ','))) return;
    std::string text(words.text);
    if (const std::size_t at = text.find("{}"); at != std::string::npos) text.replace(at, 2, food);
    add(step, text);
  }
  // "wash + raw": both in one caution of the writer's.
  bool is_written(std::string_view words) const {
    return std::any_of(written_.begin(), written_.end(), [&](const std::string& own) {
      for (std::string_view all = words; !all.empty();)
        if (own.find(next_item(all, '+')) == std::string::npos) return false;
      return true;
    });
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
    tasted_in_words();
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
    without_reading(uncertain);
    kept(tale);
    for (const PotEvent& event : tale.waits) {
      const Clause& clause = recipe_.clauses[event.clause];
      if (verb_of(clause).name != "thaw" || clause.place == Takes::fridge) continue;
      for (const RawItem& item : event.items)
        if (spoils(item.kind) && item.kind != Hazard::rice) say("thaw", clause.step, the_names({&item}));
    }
    if (!judged.empty()) out_.checked = "against the figures of the " + std::string(name_of(law_ == Law::EU ? Law::UK : law_)) + ": " + the_names(judged);
  }

  // One line for all that shares a heat; the one that wants most speaks for all.
  void without_reading(const std::vector<const RawItem*>& items) {
    std::map<Index, std::vector<const RawItem*>> by_step;
    for (const RawItem* item : items)
      if (core_rule(law_, item->kind) != nullptr) by_step[item->heat == kNone || !item->here ? kNone : recipe_.clauses[item->heat].step].push_back(item);
    for (const auto& [step, group] : by_step) {
      const auto heat = [&](const RawItem* item) { return core_rule(law_, item->kind)->points.back().celsius; };
      const CoreRule& rule = *core_rule(law_, (*std::max_element(group.begin(), group.end(), [&](const RawItem* a, const RawItem* b) { return heat(a) < heat(b); }))->kind);
      add(step, "No reading here makes sure of " + the_names(group) + ": " + std::string(rule.words) + " in the middle (" + source_of(law_, rule.source) + ").");
    }
  }

  // "Taste the batter" out of brackets: with something raw named before it in its part, no heat yet, and one to come.
  void tasted_in_words() {
    const auto heats = [](const Clause& clause) { return clause.kind == ClauseKind::time && verb_of(clause).heats; };
    for (const Part& part : recipe_.parts) {
      bool raw = false;
      for (Index s = part.steps.first; s < part.steps.end(); ++s)
        for (const Sentence& sentence : sentences_of(recipe_, recipe_.steps[s])) {
          const Slice clauses = sentence.clauses;
          for (Index c = clauses.first; c < clauses.end(); ++c) {
            for (Index m = recipe_.clauses[c].mentions.first; m < recipe_.clauses[c].mentions.end(); ++m)
              if (const Target& target = recipe_.mentions[m].target; target.kind == TargetKind::line) raw = raw || needs_heat(hazard_of(recipe_, recipe_.lines[target.index]));
              else if (target.kind == TargetKind::everything)
                for (Index l = part.lines.first; l < part.lines.end(); ++l) raw = raw || needs_heat(hazard_of(recipe_, recipe_.lines[l]));
          }
          if (raw && says_taste(sentence) && std::any_of(recipe_.clauses.begin() + clauses.first, recipe_.clauses.end(), heats)) say("spoonful", s, {});
          if (std::any_of(recipe_.clauses.begin() + clauses.first, recipe_.clauses.begin() + clauses.end(), heats)) raw = false;
        }
    }
  }

  // The deed, not "salt to taste" or "the taste of"; and no spoonful is cooked first.
  bool says_taste(const Sentence& sentence) const {
    const std::string text = lower(recipe_.slice(sentence.span));
    for (const std::string_view cooked : {"spoonful", "fry a", "cook a", "not taste", "n't taste", "never taste", "without tasting"})
      if (text.find(cooked) != std::string::npos) return false;
    // Behind the first heat of the sentence it is cooked.
    std::size_t end = text.size();
    for (Index c = sentence.clauses.end(); c-- > sentence.clauses.first;)
      if (recipe_.clauses[c].kind == ClauseKind::time && verb_of(recipe_.clauses[c]).heats) end = recipe_.clauses[c].span.begin - sentence.span.begin;
    for (std::size_t at = text.find("taste"); at < end; at = text.find("taste", at + 1)) {
      const std::string_view before = std::string_view(text).substr(0, at), behind = std::string_view(text).substr(at + 5);
      const bool deed = before.empty() || before.ends_with("; ") || before.ends_with(", ") || before.ends_with("and ") || before.ends_with("then ");
      if (deed && (behind.starts_with(' ') || behind.starts_with(',') || behind.starts_with('.') || behind.starts_with(';'))) return true;
    }
    return false;
  }

  // Dried beans of any kind in a slow cooker, which may never boil. Kidney beans have a check of their own.
  void slow_beans() {
    static const WordKey kDried = fold_key("dried"), kBean = fold_key("beans");
    for (const TakeLine& line : recipe_.lines) {
      const auto keys = recipe_.keys_of(line);
      if (std::find(keys.begin(), keys.end(), kDried) == keys.end() || std::find(keys.begin(), keys.end(), kBean) == keys.end()) continue;
      if (hazard_of(recipe_, line) == Hazard::none && in_slow_cooker()) say("beans", kNone, std::string(line.name));
    }
  }

  // ... and nothing boils hard before.
  bool in_slow_cooker() const {
    const std::string text = lower(recipe_.text);
    if (text.find("slow cooker") == std::string::npos && text.find("slow-cooker") == std::string::npos) return false;
    return std::none_of(recipe_.clauses.begin(), recipe_.clauses.end(), [&](const Clause& clause) { return verb_of(clause).name == "boil" && least_minutes(recipe_, clause) >= 10; });
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
        if (kind == Hazard::curing_salt) say(lower(line.name).find("petre") != std::string::npos || lower(line.name).find("peter") != std::string::npos || lower(line.name).find("nitrate") != std::string::npos ? "saltpetre" : "curing salt", clause.step, {});
        if (!needs_heat(kind) || kind == Hazard::egg || kind == Hazard::flour || kind == Hazard::beans || handled_) continue;
        handled_ = true;
        std::string_view name = line.given && line.parent != kNone ? recipe_.lines[line.parent].name : line.name;
        if (lower(name).starts_with("raw ")) name.remove_prefix(4);
        say(kind == Hazard::poultry ? "poultry" : "meat", clause.step, std::string(name));
      }
  }

  static bool is_cooked(const RawItem& item) { return item.heated || item.done || item.kind == Hazard::cooked || item.kind == Hazard::cooked_rice; }

  // Kept for longer than the law's own figure, though not past all of them. What is cured raw keeps by its cure.
  void kept(const PotTale& tale) {
    const bool cured = std::any_of(tale.end.begin(), tale.end.end(), [](const RawItem& item) { return item.kind == Hazard::curing_salt; });
    for (const Keep& keep : recipe_.keeps) {
      if (keep.place != KeepPlace::chilled || keep.once_open || keep.length.is_lost()) continue;
      const double hours = in_base(keep.length, recipe_.dialect).high.approx() / 60;
      const RawItem* worst = nullptr;
      for (const RawItem& item : tale.end)
        if (spoils(item.kind) && (is_cooked(item) || !cured) && hours > keep_limit(law_, item.kind).value && (worst == nullptr || keep_limit(law_, item.kind).value < keep_limit(law_, worst->kind).value)) worst = &item;
      if (worst == nullptr) continue;
      const Law other = law_ == Law::US ? Law::UK : Law::US;
      const Limit &own = keep_limit(law_, worst->kind), &far = keep_limit(other, worst->kind);
      add(kNone, "Of " + the_names({worst}) + (is_cooked(*worst) ? ", cooked," : ", eaten as it is,") + " the figure is " + std::string(own.words) + " (" + source_of(law_, own.source) + "); " + std::string(name_of(other)) + ": " +
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
      const bool to_caramel = sugar && !fat && ((on_hob && verb.heats) || hottest >= kHotSugar) && !in_oven(step) && says_caramel(step);
      if (sugar && !fat && (verb.name == "caramelise" || to_caramel || (hottest >= kHotSugar && (on_hob || (reading && !in_oven(step)))))) say("sugar", s, {});
    }
  }

  // The stages of boiled sugar in words; "caramelised onions" are none.
  bool says_caramel(const Step& step) const {
    const std::string text = lower(recipe_.slice(step.span));
    for (const std::string_view stage : {"hard crack", "soft crack", "hard ball", "firm ball", "soft ball", "hard-crack", "soft-crack", "hard-ball", "firm-ball", "soft-ball"})
      if (text.find(stage) != std::string::npos) return true;
    for (const std::string_view colour : {"to a caramel", "a dark caramel", "a light caramel", "a golden caramel", "amber caramel", "dry caramel", "a deep caramel", "caramel colour", "dark amber", "deep amber"})
      if (text.find(colour) != std::string::npos) return true;
    return false;
  }

  // A loaf that reads so much in the oven is no syrup.
  bool in_oven(const Step& step) const {
    for (Index c = step.clauses.first; c < step.clauses.end(); ++c)
      if (const Verb& verb = verb_of(recipe_.clauses[c]); (verb.takes & static_cast<std::uint8_t>(Takes::oven)) != 0) return true;
    return false;
  }

  const Recipe& recipe_;
  Law law_;
  std::vector<std::string> written_;  // the writer's own cautions
  Cautions out_;
  bool handled_ = false;
};

}  // namespace

Cautions cautions_of(const Recipe& recipe) {
  if (recipe.kind != FileKind::recipe) return {};
  return Cautioner(recipe).run();
}

}  // namespace qtn
