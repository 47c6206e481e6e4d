// Which bakes of a recipe have to be in one oven: what it heats an oven for, and what goes on in it.
#include "day/lengths.hpp"
#include "day/problem.hpp"
#include "plan/queue.hpp"

namespace qtn {
namespace {

class Keeper {
 public:
  Keeper(const Clock& clock, Posed& posed) : clock_(clock), posed_(posed), distances_(posed.problem) {
    for (Number j = 0; j < jobs().size(); ++j)
      if (jobs()[j].oven) bakes_.push_back(j);
  }

  void run() {
    for (std::size_t at = 0; at < bakes_.size(); ++at) {
      jobs()[bakes_[at]].one_oven = bakes_[at];
      place(at);
    }
    // An oven that is hot is not left alone for a night.
    for (const auto& [job, activity] : hot_) jobs().push_back(job), posed_.activity_of.push_back(activity);
  }

 private:
  std::vector<plan::Job>& jobs() { return posed_.problem.jobs; }
  const Doing& doing(Number job) const { return clock_.doings[posed_.activity_of[job]]; }

  bool surely_before(const plan::Moment& end, const plan::Moment& begin) const {
    const Ticks most = distances_.most(end.point)[begin.point];
    return most < plan::kNever && most + end.shift <= begin.shift;
  }
  // Is it over before the other begins, in every plan? A length that is a guess may be shorter than the guess.
  bool surely_over(Number one, Number other) {
    const plan::Spot& end = posed_.placed.ends[posed_.activity_of[one]];
    const plan::Job &first = jobs()[one], &second = jobs()[other];
    return surely_before(first.end, second.begin) || (end.point != first.end.point && end.high == 0 && surely_before({end.point, 0}, second.begin));
  }

  void place(std::size_t at) {
    const Number bake = bakes_[at];
    Number before = kNothing;  // the last one that is surely over
    bool heated = false, in_turn = true;
    for (std::size_t i = at; i-- > 0 && !heated;) {
      if (doing(bakes_[i]).making != doing(bake).making) continue;
      const bool over = surely_over(bakes_[i], bake);
      in_turn = in_turn && over;
      if (over && before == kNothing) before = bakes_[i];
      heated = jobs()[bakes_[i]].heats;
    }
    if (before == kNothing) return;
    plan::Job &one = jobs()[before], &other = jobs()[bake];
    if (other.heats && !one.heats) return;  // another heating: whichever oven is free
    const bool takes_over = same_heat(before, bake) || goes_on(before, bake);
    if (!takes_over && !(heated && in_turn)) return;
    other.one_oven = one.one_oven;
    if (!takes_over || !surely_before(one.end, other.begin)) return;
    other.goes_on = before;
    if (one.heats && !other.heats && other.awake) {
      plan::Job hot;
      hot.begin = one.begin, hot.end = other.begin, hot.awake = true;
      hot_.push_back({hot, posed_.activity_of[before]});
    }
    other.heats = false;  // where two heatings follow each other: the fat in its tin, in the hot oven
  }

  // Where only one of the two says its heat, it is that of both; `raise by 20 °C` is that much above the one before.
  bool same_heat(Number before, Number bake) {
    const auto unwritten = [&](Number job) { return jobs()[job].heat >= kUnwrittenHeat; };
    if (unwritten(bake)) {
      const std::optional<int> by = raised_by(doing(bake));
      if (by && !unwritten(before)) jobs()[bake].heat = jobs()[before].heat + *by;
      if (by) return false;
      jobs()[bake].heat = jobs()[before].heat;
    } else if (unwritten(before) && doing(before).verb->heats_oven) {
      const int heat = jobs()[before].heat;
      for (const Number job : bakes_)
        if (jobs()[job].heat == heat) jobs()[job].heat = jobs()[bake].heat;
    }
    return jobs()[before].heat == jobs()[bake].heat;
  }

  // Tenths of a degree; nothing where it is no raising or lowering.
  std::optional<int> raised_by(const Doing& doing) const {
    if (doing.clause == kNone) return std::nullopt;
    const Recipe& recipe = clock_.recipe_of(doing);
    const Term* const by = term_of(recipe, recipe.clauses[doing.clause], TermRole::by);
    if (by == nullptr || by->amount.is_lost()) return std::nullopt;
    const int tenths = static_cast<int>((in_base(by->amount, recipe.dialect).high * Fraction(10)).nearest());
    return doing.verb->name == "lower" ? -tenths : tenths;
  }

  // Nothing is done between the two but waiting for a sign: the dish is in the oven, turned up or down.
  bool goes_on(Number before, Number bake) const {
    for (Number i = posed_.activity_of[before]; i <= posed_.activity_of[bake]; ++i) {
      const Doing& one = clock_.doings[i];
      if (one.making != doing(bake).making || one.part != doing(bake).part) return false;
      const bool between = i != posed_.activity_of[before] && i != posed_.activity_of[bake];
      if (between && (one.written || !one.sign)) return false;
    }
    return true;
  }

  const Clock& clock_;
  Posed& posed_;
  plan::Distances distances_;
  std::vector<Number> bakes_;
  std::vector<std::pair<plan::Job, Number>> hot_;  // from a heating to its bake, and the heating's activity
};

}  // namespace

void keep_in_oven(const Clock& clock, Posed& posed) { Keeper(clock, posed).run(); }

}  // namespace qtn
