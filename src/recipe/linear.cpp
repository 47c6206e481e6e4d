#include "recipe/linear.hpp"

#include <algorithm>
#include <functional>

namespace qtn {
namespace {
constexpr std::size_t kMostSteps = 2'000'000;  // a recipe needs some hundreds; a hostile file stops here
}

Linear::Unknown Linear::unknown() {
  row_of_.push_back(kNobody);
  values_.emplace_back();
  known_.push_back(false);
  work_.emplace_back();
  seen_.push_back(false);
  return static_cast<Unknown>(row_of_.size() - 1);
}

void Linear::count_in(Unknown unknown, const Fraction& by) {
  if (!seen_[unknown]) {
    seen_[unknown] = true;
    touched_.push_back(unknown);
    if (row_of_[unknown] != kNobody) {
      waiting_.push_back(row_of_[unknown]);
      std::push_heap(waiting_.begin(), waiting_.end(), std::greater<>());
    }
  }
  work_[unknown] += by;
  if (work_[unknown].is_lost() || ++steps_ > kMostSteps) gave_up_ = true;
}

// A row holds only unknowns whose own rows are younger, so one pass from the oldest row on puts all of them in.
void Linear::put_in_rows(Fraction& constant, std::vector<Taken>& from) {
  while (!waiting_.empty() && !gave_up_) {
    std::pop_heap(waiting_.begin(), waiting_.end(), std::greater<>());
    const std::uint32_t at = waiting_.back();
    waiting_.pop_back();
    const Row& row = rows_[at];
    const Fraction by = work_[row.own];
    if (by.is_zero()) continue;
    work_[row.own] = Fraction();
    for (const Factor& factor : row.factors) count_in(factor.unknown, -(by * factor.by));
    constant -= by * row.constant;
    if (constant.is_lost()) gave_up_ = true;
    from.push_back({at, by});
  }
  waiting_.clear();
}

Linear::Outcome Linear::add(const std::vector<Factor>& factors, const Fraction& constant, std::uint32_t label,
                            Unknown own) {
  if (gave_up_) return Outcome::redundant;
  Row row{own, {}, constant, label, Fraction(1), {}};
  for (const Factor& factor : factors) count_in(factor.unknown, factor.by);
  put_in_rows(row.constant, row.from);

  for (const Unknown unknown : touched_)
    if (!work_[unknown].is_zero()) row.factors.push_back({unknown, work_[unknown]});
  for (const Unknown unknown : touched_) work_[unknown] = Fraction(), seen_[unknown] = false;
  touched_.clear();
  if (gave_up_) return Outcome::redundant;
  if (row.factors.empty()) {
    if (row.constant.is_zero()) return Outcome::redundant;
    clash_from_ = std::move(row.from);
    return Outcome::clash;
  }

  auto chosen =
      std::find_if(row.factors.begin(), row.factors.end(), [&](const Factor& factor) { return factor.unknown == own; });
  if (chosen == row.factors.end()) chosen = row.factors.begin();
  const Fraction by = chosen->by;
  row.own = chosen->unknown;
  row.scale = by;
  row.factors.erase(chosen);
  for (Factor& factor : row.factors) {
    factor.by /= by;
    if (factor.by.is_lost()) gave_up_ = true;
  }
  row.constant /= by;
  if (row.constant.is_lost()) gave_up_ = true;
  row_of_[row.own] = static_cast<std::uint32_t>(rows_.size());
  rows_.push_back(std::move(row));
  return Outcome::added;
}

// What each equation counts for in the one that clashed. One whose share comes out at nothing has no part in it.
std::vector<std::uint32_t> Linear::clashing() const {
  std::vector<Fraction> share(rows_.size());
  for (const Taken& taken : clash_from_) share[taken.row] += taken.times;
  std::vector<std::uint32_t> labels;
  for (std::size_t i = rows_.size(); i-- > 0;) {  // a row took only older ones in
    if (share[i].is_zero()) continue;
    share[i] /= rows_[i].scale;
    for (const Taken& taken : rows_[i].from) share[taken.row] -= share[i] * taken.times;
    labels.push_back(rows_[i].label);
  }
  std::reverse(labels.begin(), labels.end());
  return labels;
}

void Linear::solve() {
  std::fill(known_.begin(), known_.end(), false);
  for (auto row = rows_.rbegin(); row != rows_.rend(); ++row) {
    Fraction value = row->constant;
    bool known = true;
    for (const Factor& factor : row->factors) {
      known = known && known_[factor.unknown];
      if (known) value -= factor.by * values_[factor.unknown];
    }
    if (known && value.is_lost()) gave_up_ = true;
    known_[row->own] = known && !value.is_lost();
    values_[row->own] = value;
  }
}

}  // namespace qtn
