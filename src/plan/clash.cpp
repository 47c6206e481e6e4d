// Which labels cannot hold together, as few as there are.
#include <algorithm>

#include "plan/network.hpp"

namespace qtn::plan {
namespace {

// How many sets are tried before the first minimal one is taken as it is. A recipe has some twenty labels; of a menu of
// hundreds, pairs and a few triples.
constexpr std::size_t kTries = 20'000;

using Kept = std::vector<char>;

bool holds_with(const Network& network, const Kept& kept) { return holds(place(network, kept)); }

// Drops what is not needed, the last label first, so that what stands first on the page is told.
std::vector<Number> minimal(const Network& network) {
  Kept kept(network.labels, 1);
  // Halves first: of a long list most goes at once.
  for (Number size = network.labels; size > 1; size = (size + 1) / 2) {
    for (Number from = 0; from < network.labels; from += size) {
      Kept fewer = kept;
      const Number to = std::min(network.labels, from + size);
      std::fill(fewer.begin() + from, fewer.begin() + to, char{0});
      if (!holds_with(network, fewer)) kept = fewer;
    }
  }
  for (Number label = network.labels; label-- > 0;) {
    if (kept[label] == 0) continue;
    kept[label] = 0;
    if (holds_with(network, kept)) kept[label] = 1;
  }
  std::vector<Number> labels;
  for (Number label = 0; label < network.labels; ++label)
    if (kept[label] != 0) labels.push_back(label);
  return labels;
}

// The first set of `size` labels, in the order of the page, that cannot hold; false when there is none or it would take
// too long.
bool smaller(const Network& network, std::size_t size, std::size_t& tries, std::vector<Number>& out) {
  std::vector<Number> chosen(size);
  for (std::size_t i = 0; i < size; ++i) chosen[i] = static_cast<Number>(i);
  Kept kept(network.labels, 0);
  while (true) {
    if (tries-- == 0) return tries = 0, false;
    std::fill(kept.begin(), kept.end(), char{0});
    for (const Number label : chosen) kept[label] = 1;
    if (!holds_with(network, kept)) return out = chosen, true;
    std::size_t at = size;
    while (at > 0 && chosen[at - 1] == network.labels - (size - (at - 1))) --at;
    if (at == 0) return false;
    ++chosen[at - 1];
    for (std::size_t i = at; i < size; ++i) chosen[i] = chosen[i - 1] + 1;
  }
}

// The smallest length of a path that comes back to where it began, longer than nothing: what is too much. Of the
// cycles of a minimal set there is one, up to what chance adds; the first found is told.
Ticks excess_of(const Placed& placed) {
  std::vector<Ticks> latest(placed.points, 0);
  std::vector<std::size_t> by(placed.points, placed.lags.size());
  for (const Lag& lag : placed.lags)
    if (lag.before == lag.after && lag.least > 0) return lag.least;
  Point moved = 0;
  for (Number round = 0; round <= placed.points; ++round) {
    for (std::size_t i = 0; i < placed.lags.size(); ++i) {
      const Lag& lag = placed.lags[i];
      if (latest[lag.before] + lag.least <= latest[lag.after]) continue;
      latest[lag.after] = latest[lag.before] + lag.least;
      by[lag.after] = i;
      moved = lag.after;
    }
  }
  for (Number step = 0; step < placed.points; ++step) moved = placed.lags[by[moved]].before;  // now on the cycle
  Ticks sum = 0;
  Point at = moved;
  do {
    const Lag& lag = placed.lags[by[at]];
    sum += lag.least;
    at = lag.before;
  } while (at != moved);
  return sum;
}

}  // namespace

Clash clash_of(const Network& network) {
  Clash clash;
  clash.labels = minimal(network);
  std::size_t tries = kTries;
  for (std::size_t size = 1; size < clash.labels.size() && tries > 0; ++size) {
    std::vector<Number> found;
    if (!smaller(network, size, tries, found)) continue;
    clash.labels = found;
    break;
  }
  Kept kept(network.labels, 0);
  for (const Number label : clash.labels) kept[label] = 1;
  clash.excess = excess_of(place(network, kept));
  return clash;
}

}  // namespace qtn::plan
