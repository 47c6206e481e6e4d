// Files that use one another in a ring: every one of them is told, with the whole ring (semantics part 8, Uses).
//
// A file is settled once it and all that it uses are done and no ring joins it to a file that is still open. A use that
// meets an unsettled file closes a ring: that file leads back to an open one, and so to the file that uses it (Gabow's
// path-based strong components; each file and each use is looked at once).
#include <algorithm>

#include "book/book.hpp"

namespace qtn {
namespace {

// Names shown of a ring; a longer one is cut in its middle.
constexpr std::size_t kShown = 8;

}  // namespace

void Book::enter_ring_search(Checked& entry) {
  entry.order = ++opened_;
  entry.place = open_.size();
  unsettled_.push_back(&entry);
  ring_starts_.push_back(entry.order);
}

void Book::leave_ring_search(Checked& entry) {
  if (ring_starts_.back() != entry.order) return;  // it waits for the file that its ring begins in
  ring_starts_.pop_back();
  while (!unsettled_.empty() && unsettled_.back()->order >= entry.order) {
    unsettled_.back()->settled = true;
    unsettled_.pop_back();
  }
}

void Book::ring(const Open& from, const Use& use, const std::string& target, const Checked& other) {
  while (ring_starts_.back() > other.order) ring_starts_.pop_back();
  Checked& entry = *from.entry;
  const bool itself = &entry == &other;
  entry.report.add(Code::use_ring, use.span,
                   itself ? "This file uses itself." : "These recipes each need the other first: " + chain(from, target, other) + ".")
      .find("`" + std::string(use.path) + "`").expect(itself ? "another file" : "one of them made without the others");
  const Checked* const meets = is_open(other) ? &other : other.meets;
  if (meets == nullptr || !is_open(*meets)) return;
  if (entry.meets != nullptr && is_open(*entry.meets) && entry.meets->place <= meets->place) return;
  entry.meets = meets;
  entry.onward.clear();
  if (is_open(other)) return;
  entry.onward.push_back(target);
  for (const std::string& path : other.onward)
    if (entry.onward.size() < kShown) entry.onward.push_back(path);
}

// From this file round to itself.
std::string Book::chain(const Open& from, const std::string& target, const Checked& other) const {
  std::vector<std::string_view> way{from.path};
  const Checked* meets = &other;
  if (!is_open(other)) {
    way.push_back(target);
    way.insert(way.end(), other.onward.begin(), other.onward.end());
    meets = other.meets;
  }
  const bool known = meets != nullptr && is_open(*meets);
  const std::size_t first = known ? meets->place : open_.size() - 1, count = open_.size() - first;
  const bool cut = !known || way.size() + count > kShown + 1;
  const std::size_t front = cut ? std::min(way.size(), kShown / 2) : way.size(), back = cut ? std::min(count, kShown / 2) : count;
  std::string out;
  for (std::size_t i = 0; i < front; ++i) (out += out.empty() ? "" : " → ") += way[i];
  if (cut) out += " → …";
  for (std::size_t i = open_.size() - back; i < open_.size(); ++i) (out += " → ") += open_[i].path;
  return out;
}

}  // namespace qtn
