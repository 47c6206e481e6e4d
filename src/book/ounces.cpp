// The ounces of a whole book: each file may be right by itself and still not agree with the next.
#include "recipe/ounces.hpp"

#include "book/book.hpp"

namespace qtn {
namespace {

constexpr std::size_t kMostShown = 8;  // files in one message

struct CountsBy {
  Checked* file;
  std::string path;
  std::vector<OuncePair> pairs;
  OunceSet set = kAnyOunce;  // what all its pairs allow
};

// The first pair of a file that an ounce does not fit, or one that decides the file's own.
Span telling(const CountsBy& file, OunceOf not_this) {
  for (const OuncePair& pair : file.pairs)
    if (!has(pair.set, not_this)) return pair.span;
  return file.pairs.front().span;
}

}  // namespace

void Book::compare_ounces(const std::vector<std::string>& paths) {
  std::vector<CountsBy> files;
  std::vector<OunceSet> sets;
  for (const std::string& path : paths) {
    const auto found = files_.find(path);
    if (found == files_.end() || found->second->recipe == nullptr) continue;
    CountsBy one{found->second.get(), path, ounce_pairs(*found->second->recipe)};
    for (const OuncePair& pair : one.pairs) one.set &= pair.set;
    if (one.pairs.empty() || one.set == 0) continue;  // mixed in itself: that was said
    sets.push_back(one.set);
    files.push_back(std::move(one));
  }
  const OunceOf main = most_of(sets);
  const CountsBy* off = nullptr;
  for (const CountsBy& file : files)
    if (off == nullptr && !has(file.set, main)) off = &file;
  if (off == nullptr) return;
  const OunceOf other = first_of(off->set);
  Report& report = off->file->report;
  auto& problem = report.add(Code::mixed_ounces, telling(*off, main),
                             "This file counts " + name_of(other) + " to the ounce; most of the book counts " + name_of(main) + ".");
  problem.expect("one way throughout the book; an ounce is " + name_of(OunceOf::exact));
  for (const CountsBy& file : files) {
    if (&file == off || problem.labels.size() == kMostShown) continue;
    const bool mine = has(file.set, main);
    if (mine && has(file.set, other)) continue;  // what fits both proves nothing
    problem.also(telling(file, mine ? other : main), name_of(mine ? main : first_of(file.set)) + " to the ounce here", file.path);
  }
  report.sort();
}

}  // namespace qtn
