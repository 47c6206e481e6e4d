#include "plan/conflicts.hpp"

#include <algorithm>

namespace qtn::plan {
namespace {

bool one_run(const Job& a, const Job& b) { return a.run == b.run && a.run != kNothing; }

}  // namespace

Ticks gap_between(const Problem& problem, const Job& first, const Job& second) {
  if (!first.oven || !second.oven || second.heated_before) return 0;
  const bool alike = first.heat >= 0 && std::abs(first.heat - second.heat) <= problem.ovens.tolerance;
  return alike ? 0 : problem.ovens.change;
}

Conflicts::Conflicts(const Problem& problem) : problem_(problem), oven_of_(problem.jobs.size(), kNothing) {
  for (Number j = 0; j < problem.jobs.size(); ++j) {
    if (problem.jobs[j].hands) hands_.push_back(j);
    if (problem.jobs[j].ring) rings_.push_back(j);
    if (problem.jobs[j].oven) ovens_.push_back(j);
  }
}

const std::vector<Conflict>& Conflicts::find(const State& state, std::size_t most) {
  found_.clear();
  sweep(state, Order::For::hands, hands_, problem_.cooks);
  sweep(state, Order::For::ring, rings_, problem_.rings);
  if (problem_.ovens.count == 1) one_oven(state);
  ovens(state);
  std::stable_sort(found_.begin(), found_.end(), [](const Conflict& a, const Conflict& b) { return a.time > b.time; });
  if (found_.size() > most) found_.resize(most);
  return found_;
}

// Jobs of the latest times by their beginnings; wherever more go on than there is room for, one conflict of the job that
// is one too many with those that began last.
void Conflicts::sweep(const State& state, Order::For what, const std::vector<Number>& jobs, int capacity) {
  sorted_.clear();
  for (const Number j : jobs)
    if (state.time(problem_.jobs[j].begin) < state.time(problem_.jobs[j].end)) sorted_.push_back(j);
  std::sort(sorted_.begin(), sorted_.end(), [&](Number a, Number b) {
    const Ticks at = state.time(problem_.jobs[a].begin), bt = state.time(problem_.jobs[b].begin);
    return at != bt ? at < bt : a < b;
  });
  active_.clear();
  for (const Number j : sorted_) {
    const Job& job = problem_.jobs[j];
    const Ticks begin = state.time(job.begin);
    std::erase_if(active_, [&](Number a) { return state.time(problem_.jobs[a].end) <= begin; });
    // Of one run only one goes on at a time, however their uncertain ends lie; the later stands for both.
    std::erase_if(active_, [&](Number a) { return one_run(problem_.jobs[a], job); });
    active_.push_back(j);
    if (active_.size() <= static_cast<std::size_t>(capacity)) continue;
    Conflict conflict;
    conflict.what = what;
    conflict.time = begin;
    conflict.jobs.assign(active_.end() - capacity - 1, active_.end());
    for (std::size_t a = 0; a < conflict.jobs.size(); ++a)
      for (std::size_t b = a + 1; b < conflict.jobs.size(); ++b) conflict.pairs.push_back({conflict.jobs[a], conflict.jobs[b]});
    found_.push_back(std::move(conflict));
  }
}

bool Conflicts::bakes_alike(Number a, Number b) const {
  const Job &one = problem_.jobs[a], &other = problem_.jobs[b];
  return one.heat >= 0 && other.heat >= 0 && std::abs(one.heat - other.heat) <= problem_.ovens.tolerance;
}

// Can these be in the ovens at one moment? By heat, ascending, as many to an oven as are alike and find a shelf: no
// other way needs fewer.
bool Conflicts::fits(std::vector<Number> jobs) const {
  std::sort(jobs.begin(), jobs.end(), [&](Number a, Number b) { return problem_.jobs[a].heat < problem_.jobs[b].heat; });
  int ovens = 0;
  for (std::size_t i = 0; i < jobs.size();) {
    const std::size_t first = i++;
    while (i < jobs.size() && i - first < static_cast<std::size_t>(problem_.ovens.shelves) && bakes_alike(jobs[first], jobs[i])) ++i;
    ++ovens;
  }
  return ovens <= problem_.ovens.count;
}

// With one oven, bakes of unlike heat, and the time to change between them.
void Conflicts::one_oven(const State& state) {
  for (std::size_t a = 0; a < ovens_.size(); ++a) {
    for (std::size_t b = a + 1; b < ovens_.size(); ++b) {
      const Job &one = problem_.jobs[ovens_[a]], &other = problem_.jobs[ovens_[b]];
      if (one_run(one, other) || bakes_alike(ovens_[a], ovens_[b])) continue;
      const Ticks one_begin = state.time(one.begin), other_begin = state.time(other.begin);
      if (other_begin >= state.time(one.end) + gap_between(problem_, one, other)) continue;
      if (one_begin >= state.time(other.end) + gap_between(problem_, other, one)) continue;
      found_.push_back({Order::For::oven, {ovens_[a], ovens_[b]}, {{ovens_[a], ovens_[b]}}, std::max(one_begin, other_begin)});
    }
  }
}

void Conflicts::ovens(const State& state) {
  sorted_.clear();
  for (const Number j : ovens_)
    if (state.time(problem_.jobs[j].begin) < state.time(problem_.jobs[j].end)) sorted_.push_back(j);
  std::sort(sorted_.begin(), sorted_.end(), [&](Number a, Number b) {
    const Ticks at = state.time(problem_.jobs[a].begin), bt = state.time(problem_.jobs[b].begin);
    return at != bt ? at < bt : a < b;
  });
  active_.clear();
  const std::size_t before = found_.size();
  for (const Number j : sorted_) {
    const Job& job = problem_.jobs[j];
    const Ticks begin = state.time(job.begin);
    std::erase_if(active_, [&](Number a) { return state.time(problem_.jobs[a].end) <= begin || one_run(problem_.jobs[a], job); });
    active_.push_back(j);
    if (fits(active_)) continue;
    // As few of them as still do not fit.
    std::vector<Number> few = active_;
    for (std::size_t i = 0; i + 1 < few.size();) {
      std::vector<Number> fewer = few;
      fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
      if (!fits(fewer)) few = std::move(fewer);
      else ++i;
    }
    Conflict conflict{Order::For::oven, few, {}, begin};
    for (std::size_t a = 0; a < few.size(); ++a)
      for (std::size_t b = a + 1; b < few.size(); ++b) conflict.pairs.push_back({few[a], few[b]});
    const bool told = problem_.ovens.count == 1 && few.size() == 2 && !bakes_alike(few[0], few[1]);
    if (!told) found_.push_back(std::move(conflict));
  }
  if (found_.size() == before && found_.empty()) assign(state);
}

// Each bake stays in the oven that it began in. Depth first over the bakes by their beginnings; where no way is found,
// one of the pairs that go on at once, or want the time to change, has to part.
bool Conflicts::assign(const State& state) {
  const std::vector<Number> order = sorted_;
  std::fill(oven_of_.begin(), oven_of_.end(), kNothing);
  const Number count = static_cast<Number>(problem_.ovens.count);
  const auto close = [&](const Job& one, const Job& other) {
    return state.time(other.begin) < state.time(one.end) + gap_between(problem_, one, other) &&
           state.time(one.begin) < state.time(other.end) + gap_between(problem_, other, one);
  };
  const auto may = [&](std::size_t at, Number oven) {
    const Job& job = problem_.jobs[order[at]];
    int beside = 1;
    for (std::size_t i = 0; i < at; ++i) {
      const Number other = order[i];
      if (oven_of_[other] != oven || one_run(problem_.jobs[other], job)) continue;
      if (!bakes_alike(other, order[at])) {
        if (close(problem_.jobs[other], job)) return false;
      } else if (state.time(problem_.jobs[other].end) > state.time(job.begin) && ++beside > problem_.ovens.shelves) {
        return false;
      }
    }
    return true;
  };
  std::size_t deepest = 0, tries = 0;
  std::vector<Number> next(order.size(), 0);
  for (std::size_t at = 0; at < order.size();) {
    Number oven = next[at];
    while (oven < count && !may(at, oven)) ++oven;
    if (oven < count && ++tries < 20'000) {
      oven_of_[order[at]] = oven;
      next[at++] = oven + 1;
      if (at < order.size()) next[at] = 0;
      deepest = std::max(deepest, at);
      continue;
    }
    oven_of_[order[at]] = kNothing;
    if (at == 0 || tries >= 20'000) {
      Conflict conflict{Order::For::oven, {}, {}, state.time(problem_.jobs[order[deepest]].begin)};
      for (std::size_t a = 0; a <= deepest; ++a)
        for (std::size_t b = a + 1; b <= deepest; ++b)
          if (!one_run(problem_.jobs[order[a]], problem_.jobs[order[b]]) && close(problem_.jobs[order[a]], problem_.jobs[order[b]]))
            conflict.pairs.push_back({order[a], order[b]});
      found_.push_back(std::move(conflict));
      return false;
    }
    --at;
  }
  return true;
}

}  // namespace qtn::plan
