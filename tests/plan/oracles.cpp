#include "plan/oracles.hpp"

#include <fmt/format.h>

namespace qtn::tests {
namespace {

using namespace plan;

std::string number(Ticks value) { return value < 0 ? fmt::format("(- {})", -value) : std::to_string(value); }

// A moment, as either language writes it.
std::string mzn(const Moment& moment) { return fmt::format("(t[{}]+({}))", moment.point, moment.shift); }
std::string smt(const Moment& moment) { return fmt::format("(+ t{} {})", moment.point, number(moment.shift)); }

std::string mzn_length(const Job& job) {
  if (job.begin.point == job.end.point) return std::to_string(job.end.shift - job.begin.shift);
  return fmt::format("max(0,{}-{})", mzn(job.end), mzn(job.begin));
}

struct Places {
  bool Job::* wants;
  int count;
};

std::vector<Places> places(const Problem& problem) { return {{&Job::hands, problem.cooks}, {&Job::ring, problem.rings}}; }

void mzn_crowd(const Problem& problem, const Places& place, std::string& out) {
  std::string begins, lengths, ones;
  for (Number a = 0; a < problem.jobs.size(); ++a) {
    if (!(problem.jobs[a].*place.wants)) continue;
    const Job& job = problem.jobs[a];
    begins += mzn(job.begin) + ",";
    lengths += mzn_length(job) + ",";
    ones += "1,";
    if (place.count != 1) continue;
    for (Number b = a + 1; b < problem.jobs.size(); ++b)
      if (problem.jobs[b].*place.wants && !clash_free_run(problem, a, b))
        out += fmt::format("constraint {} <= {} \\/ {} <= {};\n", mzn(job.end), mzn(problem.jobs[b].begin), mzn(problem.jobs[b].end), mzn(job.begin));
  }
  if (place.count != 1 && !ones.empty()) out += fmt::format("constraint cumulative([{}],[{}],[{}],{});\n", begins, lengths, ones, place.count);
}

void mzn_ovens(const Problem& problem, std::string& out) {
  std::string begins, lengths, ones;
  std::vector<Number> bakes;
  for (Number a = 0; a < problem.jobs.size(); ++a) {
    if (!problem.jobs[a].oven) continue;
    bakes.push_back(a);
    ones += "1,";
    begins += mzn(problem.jobs[a].begin) + ",";
    lengths += mzn_length(problem.jobs[a]) + ",";
  }
  if (bakes.empty()) return;
  // All ovens together: follows from the rest, and helps Gecode.
  out += fmt::format("constraint cumulative([{}],[{}],[{}],{});\n", begins, lengths, ones, problem.ovens.all_shelves());
  out += fmt::format("array[0..{}] of var 1..{}: oven;\n", problem.jobs.size() - 1, problem.ovens.count());
  for (const auto& [a, b] : oven_mates(problem)) out += fmt::format("constraint oven[{}] = oven[{}];\n", a, b);
  for (const Unlike& pair : unlike_bakes(problem)) {
    const Job &a = problem.jobs[pair.a], &b = problem.jobs[pair.b];
    std::string taken_over;
    if (b.goes_on != kNothing) taken_over += fmt::format(" \\/ {} <= {}", mzn(a.end), mzn(problem.jobs[b.goes_on].end));
    if (a.goes_on != kNothing) taken_over += fmt::format(" \\/ {} <= {}", mzn(b.end), mzn(problem.jobs[a.goes_on].end));
    out += fmt::format("constraint oven[{}] != oven[{}] \\/ {}+{} <= {} \\/ {}+{} <= {}{};\n", pair.a, pair.b, mzn(a.end), pair.to_b, mzn(b.begin),
                       mzn(b.end), pair.to_a, mzn(a.begin), taken_over);
  }
  for (const Warm& pair : warm_bakes(problem)) {
    const Job &heating = problem.jobs[pair.heating], &bake = problem.jobs[pair.bake];
    out += fmt::format("constraint oven[{}] != oven[{}] \\/ {} >= {} \\/ {} <= {};\n", pair.heating, pair.bake, mzn(bake.begin), mzn(heating.end),
                       mzn(bake.begin), mzn(heating.begin));
  }
  for (int oven = 1; oven <= problem.ovens.count(); ++oven) {
    std::string here;
    for (const Number bake : bakes) here += fmt::format("bool2int(oven[{}]={}),", bake, oven);
    out += fmt::format("constraint cumulative([{}],[{}],[{}],{});\n", begins, lengths, here, problem.ovens.shelves[static_cast<std::size_t>(oven - 1)]);
  }
}

std::string either(const std::vector<std::string>& parts) {
  std::string out = "(or false";
  for (const std::string& part : parts) out += " " + part;
  return out + ")";
}

// Job b is at work when job a begins (of two that begin together, the first one of the list is there already).
std::string smt_beside(const Problem& problem, Number a, Number b) {
  const Job &one = problem.jobs[a], &two = problem.jobs[b];
  return fmt::format("(and ({} {} {}) (< {} {}))", b < a ? "<=" : "<", smt(two.begin), smt(one.begin), smt(one.begin), smt(two.end));
}

void smt_crowd(const Problem& problem, const Places& place, std::string& out) {
  for (Number a = 0; a < problem.jobs.size(); ++a) {
    if (!(problem.jobs[a].*place.wants)) continue;
    std::string beside;
    for (Number b = 0; b < problem.jobs.size(); ++b) {
      if (b == a || !(problem.jobs[b].*place.wants) || clash_free_run(problem, a, b)) continue;
      const Job &one = problem.jobs[a], &two = problem.jobs[b];
      if (place.count == 1)
        out += fmt::format("(assert (or (<= {} {}) (<= {} {})))\n", smt(one.end), smt(two.begin), smt(two.end), smt(one.begin));
      else
        beside += fmt::format(" (ite {} 1 0)", smt_beside(problem, a, b));
    }
    if (!beside.empty()) out += fmt::format("(assert (< (+ 0{}) {}))\n", beside, place.count);
  }
}

void smt_ovens(const Problem& problem, std::string& out) {
  for (const Unlike& pair : unlike_bakes(problem)) {
    const Job &a = problem.jobs[pair.a], &b = problem.jobs[pair.b];
    std::string taken_over;
    if (b.goes_on != kNothing) taken_over += fmt::format(" (<= {} {})", smt(a.end), smt(problem.jobs[b.goes_on].end));
    if (a.goes_on != kNothing) taken_over += fmt::format(" (<= {} {})", smt(b.end), smt(problem.jobs[a.goes_on].end));
    out += fmt::format("(assert (or (distinct o{} o{}) (<= (+ {} {}) {}) (<= (+ {} {}) {}){}))\n", pair.a, pair.b, smt(a.end), pair.to_b,
                       smt(b.begin), smt(b.end), pair.to_a, smt(a.begin), taken_over);
  }
  for (const Warm& pair : warm_bakes(problem)) {
    const Job &heating = problem.jobs[pair.heating], &bake = problem.jobs[pair.bake];
    out += fmt::format("(assert (or (distinct o{} o{}) (>= {} {}) (<= {} {})))\n", pair.heating, pair.bake, smt(bake.begin), smt(heating.end),
                       smt(bake.begin), smt(heating.begin));
  }
  for (const auto& [a, b] : oven_mates(problem)) out += fmt::format("(assert (= o{} o{}))\n", a, b);
  for (Number a = 0; a < problem.jobs.size(); ++a) {
    if (!problem.jobs[a].oven) continue;
    std::string beside;
    for (Number b = 0; b < problem.jobs.size(); ++b)
      if (b != a && problem.jobs[b].oven && !clash_free_run(problem, a, b))
        beside += fmt::format(" (ite (and (= o{} o{}) {}) 1 0)", a, b, smt_beside(problem, a, b));
    for (int oven = 1; !beside.empty() && oven <= problem.ovens.count(); ++oven)
      out += fmt::format("(assert (or (distinct o{} {}) (< (+ 0{}) {})))\n", a, oven, beside, problem.ovens.shelves[static_cast<std::size_t>(oven - 1)]);
  }
}

}  // namespace

std::string minizinc_model(const Problem& problem, Ticks from, Ticks to) {
  std::string out = "include \"cumulative.mzn\";\n";
  out += fmt::format("array[0..{}] of var {}..{}: t;\n", problem.points - 1, from, to);
  for (const Lag& lag : problem.lags) out += fmt::format("constraint t[{}]-t[{}] >= {};\n", lag.after, lag.before, lag.least);
  for (const Bounds& each : problem.bounds) {
    if (each.not_before > -kNever) out += fmt::format("constraint t[{}] >= {};\n", each.point, each.not_before);
    if (each.not_after < kNever) out += fmt::format("constraint t[{}] <= {};\n", each.point, each.not_after);
  }
  for (const Job& job : problem.jobs) {
    out += fmt::format("constraint {} >= {};\n", mzn(job.end), mzn(job.begin));
    if (!job.awake) continue;
    for (const Stretch& closed : problem.closed)
      out += fmt::format("constraint {} <= {} \\/ {} >= {};\n", mzn(job.end), closed.from, mzn(job.begin), closed.to);
  }
  for (const Across& wait : problem.across) {
    out += "constraint false";
    for (const Ticks midnight : problem.midnights) out += fmt::format(" \\/ ({} <= {} /\\ {} >= {})", mzn(wait.begin), midnight, mzn(wait.end), midnight);
    out += ";\n";
  }
  for (const Places& place : places(problem)) mzn_crowd(problem, place, out);
  mzn_ovens(problem, out);
  std::string goal = "0", shown;
  for (std::size_t i = 0; i < std::min<std::size_t>(problem.objectives.size(), 2); ++i) {
    const Objective& objective = problem.objectives[i];
    std::string points;
    for (const Point point : objective.points) points += fmt::format("t[{}],", point);
    const bool sum = objective.kind == Objective::Kind::sum;
    const Ticks many = sum ? static_cast<Ticks>(objective.points.size()) : 1;
    out += fmt::format("var {}..{}: v{};\n", from * many, to * many, i);
    out += fmt::format("constraint v{} = {}([{}]);\n", i, sum ? "sum" : "min", points);
    goal = fmt::format("({}*{}+v{})", goal, (to - from) * many + 1, i);
    shown += fmt::format("\\(v{}) ", i);
  }
  return out + fmt::format("solve :: int_search(t, dom_w_deg, indomain_max) maximize {};\noutput [\"{}\"];\n", goal, shown);
}

std::string smt_rules(const Problem& problem) {
  std::string out;
  for (Point point = 0; point < problem.points; ++point) out += fmt::format("(declare-const t{} Int)\n", point);
  for (Number job = 0; job < problem.jobs.size(); ++job)
    if (problem.jobs[job].oven) out += fmt::format("(declare-const o{0} Int)\n(assert (and (<= 1 o{0}) (<= o{0} {1})))\n", job, problem.ovens.count());
  for (const Lag& lag : problem.lags) out += fmt::format("(assert (>= (- t{} t{}) {}))\n", lag.after, lag.before, number(lag.least));
  for (const Bounds& each : problem.bounds) {
    if (each.not_before > -kNever) out += fmt::format("(assert (>= t{} {}))\n", each.point, number(each.not_before));
    if (each.not_after < kNever) out += fmt::format("(assert (<= t{} {}))\n", each.point, number(each.not_after));
  }
  for (const Job& job : problem.jobs) {
    out += fmt::format("(assert (>= {} {}))\n", smt(job.end), smt(job.begin));
    if (!job.awake) continue;
    for (const Stretch& closed : problem.closed)
      out += fmt::format("(assert (or (<= {} {}) (>= {} {})))\n", smt(job.end), number(closed.from), smt(job.begin), number(closed.to));
  }
  for (const Across& wait : problem.across) {
    std::vector<std::string> nights;
    for (const Ticks midnight : problem.midnights)
      nights.push_back(fmt::format("(and (<= {} {}) (>= {} {}))", smt(wait.begin), number(midnight), smt(wait.end), number(midnight)));
    out += "(assert " + either(nights) + ")\n";
  }
  for (const Places& place : places(problem)) smt_crowd(problem, place, out);
  smt_ovens(problem, out);
  return out;
}

std::string smt_reaches(const Problem& problem, std::size_t at, Ticks value) {
  const Objective& objective = problem.objectives[at];
  std::string out;
  if (objective.kind == Objective::Kind::sum) {
    out = "(assert (>= (+ 0";
    for (const Point point : objective.points) out += fmt::format(" t{}", point);
    return out + ") " + number(value) + "))\n";
  }
  for (const Point point : objective.points) out += fmt::format("(assert (>= t{} {}))\n", point, number(value));
  return out;
}

}  // namespace qtn::tests
