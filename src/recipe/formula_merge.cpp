// What goes into each part, and how much of what else: the lines, the mentions of parts that have no line, and all of it
// opened up to the ingredients.
#include "recipe/formula_merge.hpp"

#include <algorithm>

#include "recipe/makes.hpp"
#include "recipe/ratio_system.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

constexpr std::size_t kMostNodes = 400, kMostLines = 400;  // beyond that it is no recipe
constexpr std::size_t kNoLine = static_cast<std::size_t>(-1);

bool is_part(const Target& target, Index part) {
  return target.kind == TargetKind::part && target.index == part;
}
bool is_taken(const Target& target) {
  return target.kind == TargetKind::part || target.kind == TargetKind::use;
}

// The recipe and part that a target stands for; null where it could not be had.
std::pair<const Recipe*, Index> meant_by(const Recipe& recipe, const Target& target) {
  if (target.kind == TargetKind::part) return {&recipe, target.index};
  const Use& use = recipe.uses[target.index];
  if (use.recipe == nullptr || use.recipe->parts.empty()) return {nullptr, kNone};
  return {use.recipe, use.part == kNone ? use.recipe->dish : use.part};
}

// What share of all that a part makes an amount is; lost where they cannot be compared.
Fraction share_of_product(const Recipe& recipe, Index part, const Ends& asked, Dimension dimension) {
  for (const Yield& yield : yields_of(recipe, part))
    if (!yield.by_product && yield.dimension == dimension) return middle(asked) / middle(yield.ends);
  const Part& one = recipe.parts[part];
  if (dimension != Dimension::mass || one.weight_low.is_lost() || one.weight_high.is_lost()) return Fraction::lost();
  return middle(asked) / middle({one.weight_low, one.weight_high});
}

// One key for a name in its order of words; what is for something else is a line of its own.
WordKey key_of(const FormulaLine& line) {
  thread_local std::vector<WordKey> words;
  words.clear();
  fold_keys(line.name, words);
  WordKey key = line.aside ? 1 : 0;
  for (const WordKey word : words) key = (key ^ word) * 0x9FB21C651E98DF25u;
  return key;
}

}  // namespace

FormulaMerge::FormulaMerge(const Recipe& recipe) {
  const auto parts = static_cast<Index>(std::min<std::size_t>(recipe.parts.size(), kMostNodes));
  for (Index p = 0; p < parts; ++p) node_of(&recipe, p);
  for (std::size_t i = 0; i < parts; ++i) work_through(i);
}

std::size_t FormulaMerge::node_of(const Recipe* recipe, Index part) {
  const auto [found, added] = at_.try_emplace({recipe, part}, nodes_.size());
  if (added) {
    nodes_.emplace_back();
    nodes_.back().recipe = recipe, nodes_.back().part = part;
  }
  return found->second;
}

// Those that are taken first; by hand, so that a chain of any length takes no stack.
void FormulaMerge::work_through(std::size_t first) {
  std::vector<std::size_t> path{first};
  while (!path.empty()) {
    const std::size_t at = path.back();
    if (!nodes_[at].open) nodes_[at].open = true, collect(at);
    std::size_t next = kNoLine;
    for (const Take& take : nodes_[at].takes)
      if (!nodes_[take.node].open) next = take.node;
    if (next != kNoLine) {
      path.push_back(next);
      continue;
    }
    path.pop_back();
    if (!nodes_[at].done) merge(at);
  }
}

void FormulaMerge::collect(std::size_t at) {
  const Recipe& recipe = *nodes_[at].recipe;
  const Slice lines = recipe.parts[nodes_[at].part].lines;
  for (Index i = lines.first; i < lines.end(); ++i) add_line(at, i);
  add_mentions(at);
}

void FormulaMerge::add_line(std::size_t at, Index i) {
  const Recipe& recipe = *nodes_[at].recipe;
  const TakeLine& line = recipe.lines[i];
  if (!line.measured() && !line.alternative && !line.struck && !is_taken(line.target))
    nodes_[at].not_measured.push_back(line.name);
  if (!in_sums(line)) return;
  const TakeLine& meant = standing(recipe, line);
  const Quantity amount = kept_amount(recipe, meant);
  FormulaLine row;
  row.name = meant.name;
  row.food = meant.food;
  row.grams = middle(grams_of(recipe, meant, amount));
  row.ranged = amount.is_range();
  row.taken = is_taken(line.target);
  row.line = i;
  for (Index t = line.tails.first; t < line.tails.end(); ++t)
    row.aside = row.aside || recipe.slice(recipe.tails[t].span).starts_with("for ");
  row.flour = !row.taken && is_flour(meant);
  if (row.flour && !row.grams.is_lost()) row.flour_grams = row.grams;
  if (is_part(line.target, nodes_[at].part) && !row.grams.is_lost()) nodes_[at].last_batch += row.grams;
  nodes_[at].lines.push_back(row);
  nodes_[at].of.push_back(i);
  if (!row.taken) return;
  const auto [from, part] = meant_by(recipe, line.target);
  if (from == nullptr || (from == &recipe && part == nodes_[at].part)) return;
  const Dimension dimension = amount.dimension();
  Fraction times = share_of_product(*from, part, in_base(amount, recipe.dialect), dimension);
  if (times.is_lost()) times = share_of_product(*from, part, {row.grams, row.grams}, Dimension::mass);
  add_take(at, line.target, {times, row.grams});
}

// What share of a part or recipe a mention of it takes.
FormulaMerge::Share FormulaMerge::share_of(const Recipe& recipe, const Mention& mention) const {
  const Fraction share = mention.takes ? middle({mention.part_low, mention.part_high}) : Fraction(0);
  if (mention.taking == Taking::amount && mention.term != kNone) {
    const auto [from, part] = meant_by(recipe, mention.target);
    const Quantity& asked = recipe.terms[mention.term].amount;
    if (from == nullptr || asked.is_lost()) return {Fraction::lost()};
    const Ends ends = in_base(asked, recipe.dialect);
    const bool weight = asked.dimension() == Dimension::mass;
    return {share_of_product(*from, part, ends, asked.dimension()), weight ? middle(ends) : Fraction::lost()};
  }
  // The other recipe stands there as it is written.
  return {mention.target.kind == TargetKind::use ? share * recipe.factor : share};
}

// A part that has no line goes in as the method says: all of it, or a share.
void FormulaMerge::add_mentions(std::size_t at) {
  const Recipe& recipe = *nodes_[at].recipe;
  const Part& part = recipe.parts[nodes_[at].part];
  const Slice lines = part.lines;
  const auto is_listed = [&](const Target& target) {
    for (Index i = lines.first; i < lines.end(); ++i) {
      const Target& other = recipe.lines[i].target;
      if (in_sums(recipe.lines[i]) && other.kind == target.kind && other.index == target.index) return true;
    }
    return false;
  };
  std::map<std::pair<TargetKind, Index>, Share> shares;
  for (Index s = part.steps.first; s < part.steps.end(); ++s) {
    if (!counts_in_pot(recipe, part, s)) continue;
    const Slice clauses = recipe.steps[s].clauses;
    for (Index c = clauses.first; c < clauses.end(); ++c) {
      const Clause& clause = recipe.clauses[c];
      for (Index m = clause.mentions.first; clause.kind == ClauseKind::use && m < clause.mentions.end(); ++m) {
        const Mention& mention = recipe.mentions[m];
        if (!is_taken(mention.target) || is_part(mention.target, nodes_[at].part)) continue;
        const Share share = share_of(recipe, mention);
        const auto [sum, first] = shares.try_emplace({mention.target.kind, mention.target.index}, share);
        if (!first) sum->second.times += share.times, sum->second.grams += share.grams;
      }
    }
  }
  for (const auto& [key, share] : shares) {
    const Target target{key.first, key.second, kNone, {}};
    if (share.times.is_zero() || is_listed(target)) continue;
    FormulaLine row;
    row.taken = true;
    row.name = key.first == TargetKind::part ? recipe.parts[key.second].name : recipe.uses[key.second].as;
    nodes_[at].lines.push_back(row);
    nodes_[at].of.push_back(kNone);
    add_take(at, target, share);
  }
}

// Of the line that was added last.
void FormulaMerge::add_take(std::size_t at, const Target& target, const Share& share) {
  const auto [from, part] = meant_by(*nodes_[at].recipe, target);
  if (from == nullptr || nodes_.size() >= kMostNodes) return;
  const std::size_t other = node_of(from, part);
  nodes_[at].takes.push_back({other, nodes_[at].lines.size() - 1, share});
}

// Where the other says nothing of what it makes, it makes what goes into it.
Fraction FormulaMerge::times_of(const Take& take) const {
  const Node& other = nodes_[take.node];
  if (!other.done || other.merged.size() >= kMostLines) return Fraction::lost();
  if (!take.share.times.is_lost()) return take.share.times;
  Fraction makes;
  for (const FormulaLine& line : other.merged) makes += line.grams;
  return other.not_weighed.empty() ? take.share.grams / makes : Fraction::lost();
}

bool FormulaMerge::find_dough(const Node& node) const {
  const Part& part = node.recipe->parts[node.part];
  if (part.head.all_flour) return true;
  Fraction flour, whole;
  bool own = false;
  for (const FormulaLine& line : node.lines) {
    own = own || !line.taken;
    if (line.taken || line.grams.is_lost()) continue;
    whole += line.grams, flour += line.flour_grams;
  }
  // With less than a tenth of it flour, it is a sauce or a stew.
  if (flour.sign() > 0) return flour * Fraction(10) >= whole;
  return !own && node.takes.size() == 1 && nodes_[node.takes[0].node].is_dough;
}

void FormulaMerge::add(Node& node, const FormulaLine& line, const Fraction& times) {
  if (line.grams.is_lost()) return;
  if (node.takes.empty()) {  // no two lines of one list are one thing
    node.merged.push_back(line);
    return;
  }
  const WordKey key = key_of(line);
  const auto found = std::find(node.names.begin(), node.names.end(), key);
  const auto at = static_cast<std::size_t>(found - node.names.begin());
  if (found == node.names.end()) {
    node.names.push_back(key);
    node.merged.push_back(line);
    node.merged.back().grams = node.merged.back().flour_grams = Fraction();
  }
  FormulaLine& sum = node.merged[at];
  sum.grams += line.grams * times, sum.flour_grams += line.flour_grams * times;
  sum.ranged = sum.ranged || line.ranged;
  if (sum.food == nullptr) sum.food = line.food;
}

void FormulaMerge::merge(std::size_t at) {
  Node& node = nodes_[at];
  node.done = true;
  node.free = node.not_measured;
  std::vector<const Take*> take_of(node.lines.size(), nullptr);
  for (const Take& take : node.takes) take_of[take.line] = &take;
  for (std::size_t i = 0; i < node.lines.size(); ++i) {
    FormulaLine& line = node.lines[i];
    const bool listed = line.taken && node.of[i] != kNone;
    if (listed && is_part(node.recipe->lines[node.of[i]].target, node.part)) continue;  // its own last batch
    const Fraction times = take_of[i] == nullptr ? Fraction::lost() : times_of(*take_of[i]);
    if (!times.is_lost())
      open_up(node, line, nodes_[take_of[i]->node], times);
    else if (line.grams.is_lost())
      node.not_weighed.push_back(line.name);
    else
      add(node, line, Fraction(1));
  }
  grow_by_last_batch(node);
  node.is_dough = find_dough(node);
  for (const Take& take : node.takes) nodes_[take.node].in_dough = nodes_[take.node].in_dough || node.is_dough;
}

void FormulaMerge::open_up(Node& node, FormulaLine& line, const Node& other, const Fraction& times) {
  Fraction grams;
  for (FormulaLine inner : other.merged) {
    if (other.recipe != node.recipe) inner.line = kNone;
    add(node, inner, times);
    grams += inner.grams * times, line.flour_grams += inner.flour_grams * times;
  }
  if (line.grams.is_lost() && other.not_weighed.empty()) line.grams = grams;
  const auto append = [](auto& to, const auto& from) { to.insert(to.end(), from.begin(), from.end()); };
  append(node.not_weighed, other.not_weighed);
  append(node.free, other.free);
}

// The last batch was made as this one is, so it only makes more of the same.
void FormulaMerge::grow_by_last_batch(Node& node) {
  Fraction rest;
  for (const FormulaLine& line : node.merged) rest += line.grams;
  if (node.last_batch.sign() <= 0 || rest.sign() <= 0) return;
  const Fraction times = (rest + node.last_batch) / rest;
  for (FormulaLine& line : node.merged) line.grams *= times, line.flour_grams *= times;
}

}  // namespace qtn
