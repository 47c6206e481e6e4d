#include "safety/pots.hpp"

#include <algorithm>

#include "recipe/makes.hpp"
#include "recipe/sentences.hpp"

namespace qtn {
namespace {

// Common practice, no source: a bath or an oven that is cooler than this counts no minutes, and a reading is asked.
constexpr double kWetHeat = 75, kDryHeat = 110;
// An egg in a batter or a dough is thin: common practice, no source.
constexpr DoneAfter kEggInBatter{5, 1};

bool has_any(std::string_view text, std::initializer_list<std::string_view> words) {
  return std::any_of(words.begin(), words.end(), [&](std::string_view word) { return text.find(word) != std::string_view::npos; });
}

// Words between a heat and a thing named behind it that put the thing in afterwards.
bool goes_in_after(std::string_view between) {
  return has_any(between, {" then", "stir", "add", "fold", "whisk", "beat", "off the heat", "finish", "pour", "serve", "scatter", "sprinkle", "strew", "brush"});
}

// Between a heat and what it heats: `[simmer 2 h] [the beef] in [the water]`.
bool joins(std::string_view between) {
  const std::string_view word = trim(between);
  return word.empty() || word == "in" || word == "and" || word == "," || word == "with" || word == "on" || word == "of";
}

// Words that put a heat of its own under what the sentence names.
bool has_own_pan(std::string_view sentence) {
  for (const std::string_view which : {"another ", " separate ", " second ", " different ", " clean ", "the other "}) {
    const std::size_t at = sentence.find(which);
    if (at == std::string_view::npos) continue;
    const std::string_view rest = sentence.substr(at + which.size());
    for (const std::string_view what : {"pan", "pot", "frying pan", "saucepan", "small pan", "large pan", "tin", "dish", "casserole", "skillet", "wok", "tray"})
      if (rest.starts_with(what)) return true;
  }
  return false;
}

class Follower {
 public:
  Follower(const Recipe& recipe, Law law, int depth) : recipe_(recipe), law_(law), depth_(depth), parts_(recipe.parts.size()), state_(recipe.parts.size()) {}

  const std::vector<RawItem>& part(Index index) {
    if (state_[index] == 0) {
      state_[index] = 1;
      std::vector<RawItem> outer = std::move(pot_);
      pot_ = {};
      bring_in_unnamed(index);
      const Part& one = recipe_.parts[index];
      for (Index s = one.steps.first; s < one.steps.end(); ++s)
        if (counts_in_pot(recipe_, one, s)) step(recipe_.steps[s]);
      parts_[index] = std::move(pot_);
      pot_ = std::move(outer);
      state_[index] = 2;
    }
    return parts_[index];
  }

  PotTale tell() {
    PotTale tale;
    if (recipe_.parts.empty()) return tale;
    tale_ = &tale;
    for (Index p = 0; p < recipe_.parts.size(); ++p) part(p);
    pot_ = parts_[recipe_.dish];
    for (const AfterBlock& block : recipe_.after) {
      if (block.field == Field::to_finish) continue;
      const std::vector<RawItem> dish = pot_;
      reheating_ = block.field == Field::to_reheat;
      for (Index s = block.steps.first; s < block.steps.end(); ++s) step(recipe_.steps[s]);
      reheating_ = false;
      pot_ = dish;
    }
    for (const AfterBlock& block : recipe_.after)
      for (Index s = block.steps.first; s < block.steps.end() && block.field == Field::to_finish; ++s) step(recipe_.steps[s]);
    tale.end = std::move(pot_);
    // What no heat reaches afterwards is eaten raw: a spoonful of it fried would tell nothing.
    const auto stays_raw = [&](const RawItem& item) {
      return std::none_of(tale.end.begin(), tale.end.end(), [&](const RawItem& last) { return last.name == item.name && (last.heated || last.done); });
    };
    for (PotEvent& event : tale.tastings) std::erase_if(event.items, stays_raw);
    return tale;
  }

 private:
  void put(RawItem item) {
    item.in_pot = true, item.pot = pan_;
    for (RawItem& old : pot_)
      if (old.name == item.name && old.kind == item.kind && old.here == item.here) {
        old.in_pot = true;
        if (!old.heated && !old.done) return;
        if (old.place.begin == item.place.begin) return;  // a later mention of the same line
      }
    pot_.push_back(item);
  }

  void put_line(Index index) {
    const TakeLine& listed = recipe_.lines[index];
    if (listed.struck) return;
    const TakeLine& line = standing(recipe_, listed);
    if (line.target.kind == TargetKind::part || line.target.kind == TargetKind::use) return put_made(line.target, line.span);
    if (const Hazard kind = hazard_of(recipe_, line); kind != Hazard::none) {
      RawItem item;
      item.kind = kind, item.name = item.said = line.name, item.place = line.name_span.empty() ? line.span : line.name_span;
      if (line.given && line.parent != kNone) item.place = recipe_.lines[line.parent].name_span, item.said = recipe_.lines[line.parent].name;
      put(item);
    }
  }

  // What another part or recipe ends with.
  void put_made(const Target& target, Span place) {
    std::vector<RawItem> items;
    if (target.kind == TargetKind::part) {
      if (state_[target.index] == 1) return;  // its own part, or a ring that was reported
      items = part(target.index);
    } else {
      const Use& use = recipe_.uses[target.index];
      if (use.recipe == nullptr || use.recipe->parts.empty() || depth_ >= kDeepestUse) return;
      items = Follower(*use.recipe, law_, depth_ + 1).part(use.part == kNone ? use.recipe->dish : use.part);
      for (RawItem& item : items) item.place = place, item.here = false, item.heat = item.low = item.longest = kNone;
    }
    for (const RawItem& item : items) put(item);
  }

  // A line that no step names goes in first; the counting has pointed at it.
  void bring_in_unnamed(Index part) {
    const Slice lines = recipe_.parts[part].lines;
    for (Index l = lines.first; l < lines.end(); ++l) {
      if (!in_sums(recipe_.lines[l])) continue;
      const bool named = std::any_of(recipe_.mentions.begin(), recipe_.mentions.end(), [&](const Mention& mention) {
        return mention.target.kind == TargetKind::everything || (mention.target.kind == TargetKind::line && mention.target.index == l) ||
               (recipe_.lines[l].target.kind != TargetKind::none && mention.target.kind == recipe_.lines[l].target.kind && mention.target.index == recipe_.lines[l].target.index);
      });
      if (!named) put_line(l);
    }
  }

  void step(const Step& step) {
    const bool beside = step.kind == StepKindOf::meanwhile;
    if (beside) pan_ = ++pans_;
    for (const Sentence& sentence : sentences_of(recipe_, step)) {
      const bool apart = !beside && has_own_pan(recipe_.slice(sentence.span));
      if (apart) pan_ = ++pans_;
      this->sentence(sentence);
      if (apart) pan_ = 0;
    }
    pan_ = 0;
  }

  void sentence(const Sentence& sentence) {
    Index last = kNone;  // the last time of the sentence
    const Slice all = sentence.clauses;
    const auto is_time = [&](Index c) { return recipe_.clauses[c].kind == ClauseKind::time; };
    for (Index c = all.first; c < all.end(); ++c)
      if (is_time(c)) last = c;
    for (Index c = all.first; c < all.end(); ++c) {
      // What is named behind its heat was in it: behind the last one anything, behind another what joins on at once.
      std::uint32_t joined = recipe_.clauses[c].span.end;
      for (Index later = c + 1; is_time(c) && later < all.end() && (c == last || !is_time(later)); ++later) {
        const Clause& next = recipe_.clauses[later];
        if (next.kind != ClauseKind::use) continue;
        const bool on = joins(recipe_.slice({joined, next.span.begin}));
        if (on) joined = next.span.end;
        if (on || (c == last && !goes_in_after(recipe_.slice({recipe_.clauses[c].span.end, next.span.begin})))) clause(later);
      }
      clause(c);
    }
  }

  void clause(Index index) {
    const Clause& one = recipe_.clauses[index];
    switch (one.kind) {
      case ClauseKind::use: return uses(one);
      case ClauseKind::take_out:
      case ClauseKind::discard:
      case ClauseKind::strain_out: return leave(one);
      case ClauseKind::taste:
        if (std::any_of(pot_.begin(), pot_.end(), [](const RawItem& item) { return item.in_pot && !item.heated && !item.broth; })) note(&PotTale::tastings, index);
        return;
      case ClauseKind::time:
      case ClauseKind::reduce: time(index);
        [[fallthrough]];
      case ClauseKind::reading:
        if (const auto reading = reading_of(recipe_, one)) read(index, *reading);
        return;
      default: return;
    }
  }

  // Of a recipe that another uses nothing is told here: it has a report and a card of its own.
  void note(std::vector<PotEvent> PotTale::*kind, Index clause) {
    if (tale_ == nullptr || pot_.empty()) return;
    std::vector<PotEvent>& events = tale_->*kind;
    events.push_back({clause, {}});
    for (const RawItem& item : pot_)
      if (item.in_pot) events.back().items.push_back(item);
  }

  void uses(const Clause& one) {
    for (Index m = one.mentions.first; m < one.mentions.end(); ++m) {
      const Mention& mention = recipe_.mentions[m];
      const Target& target = mention.target;
      if (target.kind == TargetKind::line) put_line(target.index);
      else if (target.kind == TargetKind::part || target.kind == TargetKind::use) put_made(target, mention.span);
      else if (target.kind == TargetKind::everything)
        for (Index l = recipe_.parts[one.part].lines.first; l < recipe_.parts[one.part].lines.end(); ++l) put_line(l);
    }
  }

  void leave(const Clause& one) {
    for (Index m = one.mentions.first; m < one.mentions.end(); ++m) {
      const Target& target = recipe_.mentions[m].target;
      if (target.kind != TargetKind::line) continue;
      for (RawItem& item : pot_) {
        if (item.name != recipe_.lines[target.index].name) continue;
        item.in_pot = one.kind != ClauseKind::take_out;
        if (one.kind == ClauseKind::take_out) continue;
        item.broth = item.wet > 0, item.done = true, item.in_pot = item.broth;
      }
    }
  }

  // Is it in the pan at hand? A pan into which nothing went is the one pot.
  bool is_here(const RawItem& item) const {
    if (!item.in_pot) return false;
    return pan_ == 0 || item.pot == pan_ || std::none_of(pot_.begin(), pot_.end(), [&](const RawItem& one) { return one.pot == pan_; });
  }

  void time(Index index) {
    const Clause& one = recipe_.clauses[index];
    uses(one);  // `20 min per 450 g of the turkey`
    const Verb& verb = verb_of(one);
    if (!verb.heats) {
      if (verb.wait || verb.cools) note(&PotTale::waits, index);
      return;
    }
    // The oven's own heating, with nothing in it.
    const Step& step = recipe_.steps[one.step];
    if (verb.heats_oven && step.kind == StepKindOf::ahead) return;
    const std::optional<double> heat = heat_of(recipe_, one);
    const bool hot = !heat || *heat >= (verb.moist ? kWetHeat : kDryHeat);
    const double minutes = least_minutes(recipe_, one);
    const bool batter = std::any_of(pot_.begin(), pot_.end(), [&](const RawItem& item) { return item.kind == Hazard::flour && is_here(item); });
    for (RawItem& item : pot_) {
      if (!is_here(item) || item.broth) continue;
      item.heated = true;
      item.heat = index, item.low = kNone;
      if (minutes >= item.longest_minutes) item.longest = index, item.longest_minutes = minutes;
      if (!hot) continue;
      (verb.moist ? item.wet : item.dry) += minutes;
      if (verb.name == "boil" || verb.name == "pressure-cook") item.boiled += minutes;
      const DoneAfter after = item.kind == Hazard::egg && batter ? kEggInBatter : done_after(item.kind);
      const bool whole_cut_us = law_ == Law::US && item.kind == Hazard::beef;  // there a reading is asked of a whole cut, too
      if ((after.wet && item.wet >= *after.wet) || (after.dry && item.dry >= *after.dry && !whole_cut_us)) item.done = true;
    }
    if (reheating_) note(&PotTale::reheats, index);
  }

  // A reading that is enough is its own proof; one that is not counts of what a heat has reached.
  void read(Index index, const Reading& reading) {
    for (RawItem& item : pot_) {
      if (!is_here(item)) continue;
      const CoreRule* const rule = core_rule(law_, item.kind);
      if (rule == nullptr) continue;
      if (seconds_wanted(*rule, reading.celsius) <= reading.seconds) item.done = item.heated = true, item.low = kNone;
      else if (item.heated) item.low = index;
    }
    if (reheating_ && recipe_.clauses[index].kind == ClauseKind::reading) note(&PotTale::reheats, index);
  }

  const Recipe& recipe_;
  Law law_;
  int depth_;
  std::vector<RawItem> pot_;
  std::vector<std::vector<RawItem>> parts_;
  std::vector<int> state_;
  PotTale* tale_ = nullptr;
  bool reheating_ = false;
  int pan_ = 0, pans_ = 0;  // the pan at hand; 0: the one pot
};

}  // namespace

PotTale follow(const Recipe& recipe, Law law) { return Follower(recipe, law, 0).tell(); }

}  // namespace qtn
