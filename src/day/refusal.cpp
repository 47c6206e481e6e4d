// Why there is no plan: the fewest things that cannot go together, in the words of the page.
#include <algorithm>

#include "day/table.hpp"
#include "day/say.hpp"

namespace qtn {
namespace {

constexpr std::uint64_t kNodes = 20'000;  // for one question of this kind

// What of the day is asked for; left out is what makes no difference.
struct Asked {
  std::vector<char> labels, jobs, pins;
  bool nights = true, start = true;
};

class Refusal {
 public:
  Refusal(const Clock& clock, const DayOrder& order, const std::vector<Pinned>& pins) : clock_(clock), order_(order), pins_(pins) {
    all_.labels.assign(clock.network.labels, 1);
    all_.pins.assign(pins.size(), 1);
    all_.jobs.assign(posed(all_).problem.jobs.size(), 1);
  }

  void tell(Report& report) {
    least_ = all_;
    if (impossible(least_)) shrink();
    least_.nights = least_.nights && !order_.nights;
    least_.start = least_.start && order_.start;
    subjects();
    std::string message = "There is no such day: ";
    const std::size_t shown = std::min(subjects_.size(), kMostNamed);
    for (std::size_t i = 0; i < shown; ++i) message += (i == 0 ? "" : i + 1 == subjects_.size() ? " and " : ", ") + subjects_[i];
    if (shown < subjects_.size()) message += " and " + std::to_string(subjects_.size() - shown) + " more";
    report.add(Code::no_plan, place_, message + predicate() + ".").expect(way_out());
  }

 private:
  static constexpr std::size_t kMostNamed = 6;

  Posed posed(const Asked& asked) const {
    DayOrder order = order_;
    if (!asked.start) order.start.reset();
    Posed out = pose(clock_, order, Guesses::free, clock_.per_minute == 1, asked.labels);
    for (std::size_t i = 0; i < pins_.size(); ++i)
      if (asked.pins[i] != 0) pin(out, order, pins_[i]);
    if (!asked.nights) out.problem.closed.clear();
    for (std::size_t j = 0; j < asked.jobs.size(); ++j) {
      if (asked.jobs[j] != 0) continue;
      plan::Job& one = out.problem.jobs[j];  // it stays, as another may go on from it
      one.hands = one.awake = one.ring = one.oven = false;
    }
    out.problem.objectives.clear();
    return out;
  }

  static plan::Plan::Outcome outcome(const plan::Problem& problem) { return plan::solve(problem, {kNodes}).outcome; }
  bool impossible(const Asked& asked) const { return outcome(posed(asked).problem) == plan::Plan::Outcome::impossible; }

  void shrink() {
    const auto drop = [&](char& one) {
      one = 0;
      if (!impossible(least_)) one = 1;
    };
    for (std::size_t j = least_.jobs.size(); j-- > 0;) drop(least_.jobs[j]);
    for (char& one : least_.pins) drop(one);
    for (bool* one : {&least_.nights, &least_.start}) {
      *one = false;
      if (!impossible(least_)) *one = true;
    }
    for (std::size_t l = least_.labels.size(); l-- > 0;) drop(least_.labels[l]);
  }

  std::string hour_of(Minute wall) const {
    const bool other_day = day_begin(wall) != day_begin(order_.serve.front());
    return write_clock(wall) + (other_day ? " on " + write_day(wall) : "");
  }

  std::string named(const std::string& words, const Recipe& recipe) const {
    return "`" + words + "`" + (clock_.makings.size() > 1 ? " (" + std::string(recipe.title) + ")" : "");
  }

  void place(const Recipe& recipe, Span span) {
    if (place_.size() == 0 && recipe.source == order_.source) place_ = span;
  }

  void subjects() {
    const Posed whole = posed(all_);
    std::vector<Number> told;
    const auto activity = [&](Number index, const std::string& more) {
      if (std::find(told.begin(), told.end(), index) != told.end()) return;
      told.push_back(index);
      const Doing& doing = clock_.doings[index];
      const Recipe& recipe = clock_.recipe_of(doing);
      subjects_.push_back(named(sheet_words(clock_, index), recipe) + more);
      place(recipe, doing.clause != kNone ? recipe.clauses[doing.clause].span : doing.sentence);
    };
    for (std::size_t i = 0; i < pins_.size(); ++i)
      if (least_.pins[i] != 0) activity(pins_[i].activity, ", pinned to " + hour_of(pins_[i].wall) + ",");
    for (Number j = 0; j < least_.jobs.size(); ++j)
      if (least_.jobs[j] != 0) jobs_.push_back(whole.problem.jobs[j]), activity(whole.activity_of[j], "");
    for (Number l = 0; l < least_.labels.size(); ++l) {
      if (least_.labels[l] == 0) continue;
      const Said& said = clock_.said[l];
      const Recipe& recipe = *clock_.makings[said.making].recipe;
      const auto doing = std::find_if(clock_.doings.begin(), clock_.doings.end(), [&](const Doing& one) {
        return said.clause != kNone && one.making == said.making && one.clause == said.clause;
      });
      if (doing != clock_.doings.end()) {
        activity(static_cast<Number>(doing - clock_.doings.begin()), "");
        continue;
      }
      subjects_.push_back(said.span.size() == 0 ? named("ready:", recipe) : named(words_of(recipe, said.span), recipe));
      place(recipe, said.span);
    }
  }

  std::string predicate() const {
    bool oven = !jobs_.empty(), hands = oven, ring = oven;
    for (const plan::Job& job : jobs_) oven = oven && job.oven, hands = hands && job.hands, ring = ring && job.ring;
    const bool one = subjects_.size() == 1;
    std::string out = subjects_.empty() ? "the written times do not fit"
                      : one ? " finds no hour"
                      : jobs_.size() < 2 ? " cannot all be kept"
                      : oven ? too_cold() ? " cannot all find the oven hot when they must" : " cannot all have the oven when they must"
                      : hands ? " want the same hands at once"
                      : ring ? " want more rings than there are" : " cannot all be done when they must";
    auto given = [&, any = false](const std::string& what) mutable { out += (any ? " and " : ", if ") + what, any = true; };
    if (least_.nights) given("nobody works from " + write_clock(order_.night_from) + " to " + write_clock(order_.night_to));
    if (least_.start) given("nothing begins before " + hour_of(*order_.start));
    const Minute last = *std::max_element(order_.serve.begin(), order_.serve.end());
    if (!least_.nights || least_.start) given("it is served at " + hour_of(last));
    if (const Ticks over = excess(); over > 0) out += ": " + say_length(over, clock_.per_minute) + " too many";
    return out;
  }

  // Would it do if an oven could be used while it heats?
  bool too_cold() const {
    plan::Problem problem = posed(least_).problem;
    problem.ovens.change = 0;
    if (outcome(problem) != plan::Plan::Outcome::impossible) return false;
    for (plan::Job& job : problem.jobs) job.heats = false;
    return outcome(problem) == plan::Plan::Outcome::planned;
  }

  // By how much the times alone miss; 0 where somebody's hands, the oven or the night is in the way.
  Ticks excess() const {
    if (!jobs_.empty() || least_.nights) return 0;
    const plan::Problem problem = posed(least_).problem;
    std::vector<Ticks> earliest(problem.points, -plan::kNever);
    for (const plan::Bounds& bounds : problem.bounds) earliest[bounds.point] = std::max(earliest[bounds.point], bounds.not_before);
    bool moved = true;
    for (plan::Number round = 0; moved && round <= problem.points; ++round) {
      moved = false;
      for (const plan::Lag& lag : problem.lags)
        if (earliest[lag.before] > -plan::kNever && earliest[lag.before] + lag.least > earliest[lag.after])
          earliest[lag.after] = earliest[lag.before] + lag.least, moved = true;
    }
    Ticks over = 0;
    for (const plan::Bounds& bounds : problem.bounds)
      if (!moved && bounds.not_after < plan::kNever) over = std::max(over, earliest[bounds.point] - bounds.not_after);
    return over;
  }

  // What a way out would be, tried one by one; the first that helps is told.
  std::string way_out() const {
    const auto helps = [&](auto change) {
      Asked asked = all_;
      plan::Problem other = change(asked);
      return outcome(other) == plan::Plan::Outcome::planned;
    };
    const auto house = [&](auto change) {
      return helps([&](Asked& asked) {
        plan::Problem problem = posed(asked).problem;
        change(problem);
        return problem;
      });
    };
    if (!pins_.empty() && helps([&](Asked& asked) { return std::fill(asked.pins.begin(), asked.pins.end(), 0), posed(asked).problem; }))
      return "another hour for what is pinned, or no pin";
    if (!order_.nights && helps([&](Asked& asked) { return asked.nights = false, posed(asked).problem; }))
      return "work in the night (`--nights`), or another hour";
    if (house([](plan::Problem& one) { ++one.cooks; })) return "another cook (`--cooks " + std::to_string(order_.cooks + 1) + "`)";
    if (house([](plan::Problem& one) { one.ovens.shelves.push_back(one.ovens.shelves.front()); })) return "another oven (`--ovens " + std::to_string(order_.ovens + 1) + "`)";
    if (house([](plan::Problem& one) { one.ovens.change = 0; })) return "a step `ahead:` that heats the oven";
    if (order_.start && helps([&](Asked& asked) { return asked.start = false, posed(asked).problem; }))
      return "an earlier beginning, or a later hour of serving";
    return "another hour, or dishes that leave more room";
  }

  const Clock& clock_;
  const DayOrder& order_;
  const std::vector<Pinned>& pins_;
  Asked all_, least_;
  std::vector<std::string> subjects_;
  std::vector<plan::Job> jobs_;  // of the subjects
  Span place_{};
};

}  // namespace

void tell_no_plan(const Clock& clock, const DayOrder& order, const std::vector<Pinned>& pins, Report& report) {
  Refusal(clock, order, pins).tell(report);
}

}  // namespace qtn
