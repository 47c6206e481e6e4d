#include "recipe/names.hpp"

#include <algorithm>
#include <unordered_set>

#include "data/tables.hpp"
#include "words/rows.hpp"

namespace qtn {
namespace {

// Words of data/cuts.txt: "the salmon" for salmon fillets.
const std::unordered_set<WordKey>& cuts() {
  static const std::unordered_set<WordKey> words = [] {
    std::unordered_set<WordKey> out;
    for (Rows rows(data::cuts()); rows.next();)
      for (std::string_view list = rows[0]; !list.empty();) out.insert(fold_key(next_item(list, ',')));
    return out;
  }();
  return words;
}

// Is the word what all behind it only says the piece or the shape of?
bool is_cut_of(std::span<const WordKey> name, WordKey word) {
  for (std::size_t i = name.size(); i-- > 0;) {
    if (name[i] == word) return true;
    if (!cuts().contains(name[i])) return false;
  }
  return false;
}

}  // namespace

bool is_head(std::span<const WordKey> name, WordKey word) {
  static const WordKey kTurns[] = {fold_key("of"), fold_key("in"), fold_key("on"), fold_key("with"), fold_key("for")};
  if (name.empty()) return false;
  if (name.back() == word) return true;
  for (std::size_t i = 1; i < name.size(); ++i)
    if (std::find(std::begin(kTurns), std::end(kTurns), name[i]) != std::end(kTurns)) return name[i - 1] == word;
  return false;
}

Names::Names(const Recipe& recipe) : recipe_(recipe) {
  keys_.reserve(recipe.lines.size() * 3 + 16);
  lines_.reserve(recipe.lines.size());
  parts_.reserve(recipe.parts.size());
  lines_of_part_.reserve(recipe.parts.size());
  words_.reserve(16);
  candidates_.reserve(8);
  for (Index p = 0; p < recipe.parts.size(); ++p) {
    const Part& part = recipe.parts[p];
    const auto first = static_cast<Index>(lines_.size());
    for (Index i = part.lines.first; i < part.lines.end(); ++i) {
      const TakeLine& line = recipe.lines[i];
      // An alternative's names are also names of the line above (T16).
      const Index meant = line.alternative && line.parent != kNone ? line.parent : i;
      Entry entry{{static_cast<Index>(keys_.size()), line.keys.count}, {TargetKind::line, meant, p, line.name_span}, line.measured()};
      const auto words = recipe.keys_of(line);
      keys_.insert(keys_.end(), words.begin(), words.end());
      lines_.push_back(entry);
    }
    lines_of_part_.push_back({first, static_cast<Index>(lines_.size()) - first});
    add(part.name, {TargetKind::part, p, p, part.span}, parts_);
    for (Index m = 0; m < part.makes.size(); ++m)
      if (part.makes[m].by_product) add(part.makes[m].thing, {TargetKind::product, m, p, part.makes[m].span}, parts_);
  }
  for (Index u = 0; u < recipe.uses.size(); ++u) add(recipe.uses[u].as, {TargetKind::use, u, kNone, recipe.uses[u].span}, uses_);
}

void Names::add(std::string_view name, const Target& target, std::vector<Entry>& out) {
  Entry entry{{static_cast<Index>(keys_.size()), 0}, target, true};
  fold_keys(name, keys_);
  entry.keys.count = static_cast<Index>(keys_.size()) - entry.keys.first;
  out.push_back(entry);
}

bool Names::matches(const Entry& entry, std::span<const WordKey> words) const {
  for (WordKey word : words) {
    bool there = false;
    for (Index k = entry.keys.first; k < entry.keys.end() && !there; ++k) there = keys_[k] == word;
    if (!there) return false;
  }
  return entry.keys.count != 0;
}

// "the sliced onions" of `2 onions, sliced`: the words beside the name stand in the preparation (3.1.5).
void Names::by_preparation(Slice lines, std::span<const WordKey> words) const {
  std::vector<WordKey> there;
  for (Index i = lines.first; i < lines.end(); ++i) {
    const Entry& entry = lines_[i];
    if (entry.target.kind != TargetKind::line) continue;
    const auto own = keys_of(entry);  // its name is in the mention, "the lemon zest" of `1 lemon, zest only` included
    if (own.empty() || std::none_of(words.begin(), words.end(), [&](WordKey word) { return is_head(own, word); })) continue;
    there.assign(own.begin(), own.end());
    const TakeLine& line = recipe_.lines[entry.target.index];
    for (Index t = line.tails.first; t < line.tails.end(); ++t)
      if (recipe_.tails[t].kind == TailKind::preparation) fold_keys(recipe_.slice(recipe_.tails[t].span), there);
    const auto holds = [&](WordKey word) { return std::find(there.begin(), there.end(), word) != there.end(); };
    if (std::all_of(words.begin(), words.end(), holds)) candidates_.push_back(&entry);
  }
}

bool Names::equals(const Entry& entry, std::span<const WordKey> words) const {
  return entry.keys.count == words.size() && std::equal(words.begin(), words.end(), keys_.begin() + entry.keys.first);
}

// Several candidates: exact equality, then the last word, then the preparation, then a measured line (3.1.4, 3.1.5).
Names::Answer Names::choose(std::vector<const Entry*>& kept, std::span<const WordKey> words) const {
  const auto narrow = [&](auto keep) {
    const auto left_out = [&](const Entry* entry) { return !keep(*entry); };
    if (!std::all_of(kept.begin(), kept.end(), left_out)) kept.erase(std::remove_if(kept.begin(), kept.end(), left_out), kept.end());
  };
  if (kept.size() > 1) narrow([&](const Entry& e) { return equals(e, words); });
  if (kept.size() > 1) narrow([&](const Entry& e) { return is_head(keys_of(e), words.back()); });
  if (kept.size() > 1) narrow([&](const Entry& e) { return e.measured; });
  Answer out;
  for (const Entry* entry : kept) {
    const bool seen = std::any_of(out.found.begin(), out.found.end(), [&](const Target& t) { return t.kind == entry->target.kind && t.index == entry->target.index; });
    if (!seen) out.found.push_back(entry->target);
  }
  if (out.found.size() == 1) out.last_word_differs = !is_head(keys_of(*kept.front()), words.back()) && !is_cut_of(keys_of(*kept.front()), words.back());
  return out;
}

Names::Answer Names::ask(std::string_view text, Index part) const {
  words_.clear();
  fold_keys(text, words_);
  if (words_.empty()) return {};
  static const WordKey kKept = fold_key("kept"), kEverything = fold_key("everything");
  if (words_.size() == 1 && words_[0] == kEverything) return {{{TargetKind::everything, 0, part, {}}}, false};
  const bool kept = words_.size() > 1 && words_[0] == kKept;
  std::vector<const Entry*>& candidates = candidates_;
  candidates.clear();
  const auto collect = [&](const std::vector<Entry>& entries, Slice slice, std::span<const WordKey> words) {
    for (Index i = slice.first; i < slice.end(); ++i)
      if (matches(entries[i], words)) candidates.push_back(&entries[i]);
  };
  const Slice all_lines{0, static_cast<Index>(lines_.size())};
  const Slice mine = part == kNone ? all_lines : lines_of_part_[part];
  collect(lines_, mine, words_);
  if (candidates.empty() && kept) {
    const auto rest = std::span<const WordKey>(words_).subspan(1);
    collect(lines_, mine, rest);
    if (!candidates.empty()) {
      Answer out = choose(candidates, rest);
      for (Target& target : out.found) target.kind = TargetKind::aside;
      out.last_word_differs = false;
      return out;
    }
  }
  if (part == kNone) candidates.clear();
  if (candidates.empty()) collect(parts_, {0, static_cast<Index>(parts_.size())}, words_);
  if (candidates.empty()) collect(uses_, {0, static_cast<Index>(uses_.size())}, words_);
  if (candidates.empty() && part != kNone && words_.size() > 1) {
    by_preparation(mine, words_);
    if (!candidates.empty()) {
      Answer out = choose(candidates, words_);
      out.last_word_differs = false;
      return out;
    }
  }
  if (candidates.empty() && part == kNone) collect(lines_, all_lines, words_);
  if (candidates.empty()) return {};
  return choose(candidates, words_);
}

bool Names::begins_with(WordKey word) const {
  for (const std::vector<Entry>* entries : {&lines_, &parts_, &uses_})
    for (const Entry& entry : *entries)
      if (entry.keys.count != 0 && keys_[entry.keys.first] == word) return true;
  return false;
}

bool Names::whole_name(std::string_view text, Index part, Target& out) const {
  // Most brackets begin with a verb or a number, as no name does.
  if (!begins_with(first_key(text))) return false;
  words_.clear();
  fold_keys(text, words_);
  const auto look = [&](const std::vector<Entry>& entries, Slice slice) {
    for (Index i = slice.first; i < slice.end(); ++i)
      if (equals(entries[i], words_)) {
        out = entries[i].target;
        return true;
      }
    return false;
  };
  const Slice mine = part == kNone ? Slice{0, static_cast<Index>(lines_.size())} : lines_of_part_[part];
  return look(lines_, mine) || look(parts_, {0, static_cast<Index>(parts_.size())}) || look(uses_, {0, static_cast<Index>(uses_.size())});
}

std::vector<std::string_view> Names::known(Index part) const {
  std::vector<std::string_view> out;
  for (const TakeLine& line : recipe_.lines)
    if (part == kNone || line.part == part) out.push_back(line.name);
  for (const Part& one : recipe_.parts) out.push_back(one.name);
  for (const Use& use : recipe_.uses) out.push_back(use.as);
  return out;
}

std::vector<Index> Names::parts_listing(std::string_view text, Index part) const {
  std::vector<Index> out;
  words_.clear();
  fold_keys(text, words_);
  for (Index p = 0; p < lines_of_part_.size(); ++p)
    for (Index i = lines_of_part_[p].first; p != part && i < lines_of_part_[p].end(); ++i)
      if (matches(lines_[i], words_) && (out.empty() || out.back() != p)) out.push_back(p);
  return out;
}

std::string_view Names::name_of(const Target& target) const {
  switch (target.kind) {
    case TargetKind::line:
    case TargetKind::aside: return recipe_.lines[target.index].name;
    case TargetKind::part: return recipe_.parts[target.index].name;
    case TargetKind::use: return recipe_.uses[target.index].as;
    case TargetKind::product: return recipe_.parts[target.part].makes[target.index].thing;
    default: return {};
  }
}

std::vector<Index> lines_named(const Recipe& recipe, std::string_view name) {
  const Names names(recipe);
  std::vector<Index> found;
  for (Index part = 0; part < recipe.parts.size(); ++part) {
    for (const Target& target : names.ask(name, part).found)
      if (target.kind == TargetKind::line) found.push_back(target.index);
  }
  return found;
}

}  // namespace qtn
