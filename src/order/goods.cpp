#include "order/goods.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <vector>

#include "data/tables.hpp"
#include "words/fold.hpp"
#include "words/rows.hpp"

namespace qtn {
namespace {

using Words = std::vector<std::string>;

std::string joined(const Words& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : " ") + word;
  return out;
}

struct Goods {
  Goods() {
    for (Rows rows(data::goods()); rows.next();) {
      std::string_view names = rows[1];
      std::string first;
      while (!names.empty()) {
        const std::string name = joined(fold_name(next_item(names, ',')));
        if (first.empty()) first = name;
        if (rows[0] == "same") same[name] = first;
        if (rows[0] == "done") done.insert(name);
        if (rows[0] == "tap") tap.insert(name);
        if (rows[0] == "cut") cuts.insert(name);
        if (rows[0] == "other") others.insert(name);
      }
    }
  }
  std::map<std::string, std::string> same;  // folded
  std::set<std::string> done, tap, cuts, others;
};

const Goods& goods() {
  static const Goods all;
  return all;
}

}  // namespace

std::string goods_key(std::string_view name) {
  Words words = fold_name(name);
  while (words.size() > 1 && goods().done.count(words.front()) != 0) words.erase(words.begin());
  const std::string key = joined(words);
  const auto found = goods().same.find(key);
  return found == goods().same.end() ? key : found->second;
}

bool is_tap_water(std::string_view name) {
  const Words words = fold_name(name);
  return !words.empty() && words.back() == "water" &&
         std::all_of(words.begin(), words.end() - 1, [](const std::string& word) { return goods().tap.count(word) != 0; });
}

std::size_t brings(std::string_view brought, std::string_view name) {
  const Words wanted = fold_name(brought);
  Words words = fold_name(name);
  if (wanted.empty()) return 0;
  if (goods_key(brought) == goods_key(name)) return words.size() + 1;
  for (;; words.pop_back()) {  // behind the name only what it is cut into
    if (words.size() < wanted.size()) return 0;
    if (std::equal(wanted.rbegin(), wanted.rend(), words.rbegin())) break;
    if (goods().cuts.count(words.back()) == 0) return 0;
  }
  for (std::size_t i = 0; i + wanted.size() < words.size(); ++i)
    if (goods().others.count(words[i]) != 0) return 0;
  return wanted.size();
}

}  // namespace qtn
