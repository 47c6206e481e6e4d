#include "recipe/formula.hpp"

#include <algorithm>

#include "recipe/formula_merge.hpp"
#include "recipe/makes.hpp"
#include "recipe/ratio_system.hpp"

namespace qtn {
namespace {

using Node = FormulaMerge::Node;

const Fraction& inside(const Composition& row, Inside which) {
  switch (which) {
    case Inside::water:
      return row.water;
    case Inside::fat:
      return row.fat;
    case Inside::sugars:
      return row.sugars;
    default:
      return row.salt;
  }
}

void add_totals(Formula& out, const std::vector<FormulaLine>& lines) {
  out.has_totals = true;
  for (std::size_t i = 0; i < kInsides; ++i) {
    const auto which = static_cast<Inside>(i);
    for (const FormulaLine& line : lines) {
      if (line.grams.is_lost() || line.grams.is_zero()) continue;
      if (which == Inside::water && line.flour) continue;  // its own moisture is part of the hundred
      const Composition* const row = line.food == nullptr ? nullptr : composition_of(*line.food);
      const Fraction share = row == nullptr ? Fraction::lost() : inside(*row, which);
      if (share.is_lost())
        out.totals[i].left_out.push_back(line.name);
      else
        out.totals[i].grams += share * line.grams;
    }
  }
}

void add_sums(Formula& out) {
  for (const FormulaLine& line : out.lines) {
    if (line.grams.is_lost()) continue;
    out.whole += line.grams;
    out.flour += line.flour_grams;
  }
}

void by_flour(Formula& out) {
  if (out.flour.sign() <= 0) return;
  out.base = FormulaBase::flour;
  out.base_grams = out.flour;
}

class Parts {
 public:
  explicit Parts(const Recipe& recipe) : recipe_(recipe), merge_(recipe) {}

  std::vector<Formula> all() const {
    std::vector<Formula> out;
    for (const Node& node : own()) {
      if (!has_own_line(node)) continue;
      Formula one = part_of(node);
      if (one.whole.sign() > 0) out.push_back(std::move(one));
    }
    for (const Node& node : own()) {
      if (!is_overall(node)) continue;
      Formula one = overall_of(node);
      if (one.whole.sign() > 0) out.push_back(std::move(one));
    }
    return out;
  }

  std::vector<Formula> finished() const {
    std::vector<Formula> out;
    for (const Node& node : own())
      if (node.is_dough && !node.in_dough) out.push_back(finished_of(node));
    return out;
  }

 private:
  std::span<const Node> own() const {
    const std::vector<Node>& nodes = merge_.nodes();
    return std::span(nodes).first(std::min(nodes.size(), recipe_.parts.size()));
  }
  static bool has_own_line(const Node& node) {
    return std::any_of(node.of.begin(), node.of.end(), [](Index line) { return line != kNone; });
  }
  // The dish, and each dough that no other dough takes, where they are made of several.
  bool is_overall(const Node& node) const {
    return !node.takes.empty() && (node.part == recipe_.dish || (node.is_dough && !node.in_dough));
  }

  Formula part_of(const Node& node) const {
    const Part& part = recipe_.parts[node.part];
    Formula out;
    out.name = part.name;
    out.unnamed = part.unnamed;
    out.lines = node.lines;
    for (const FormulaLine& line : out.lines)
      if (line.grams.is_lost()) out.not_weighed.push_back(line.name);
    out.not_measured = node.not_measured;
    add_sums(out);
    if (!by_head(out, node) && node.is_dough) by_flour(out);
    if (!is_overall(node) && !node.in_dough) add_totals(out, node.merged);
    else if (node.takes.empty()) add_totals(out, node.lines);
    return out;
  }

  // `take: % of ...`: what the list itself measures by.
  bool by_head(Formula& out, const Node& node) const {
    const TakeHead& head = recipe_.parts[node.part].head;
    if (head.basis != Basis::percent && head.basis != Basis::rate) return false;
    if (head.all_flour) {
      by_flour(out);
      return out.base != FormulaBase::none;
    }
    Fraction sum, flour;
    for (Index m = head.members.first; m < head.members.end(); ++m) {
      const Target& member = recipe_.set_members[m];
      const FormulaLine* line = nullptr;
      for (std::size_t i = 0; i < node.lines.size(); ++i)
        if (node.of[i] != kNone && is_of(node.of[i], member)) line = &node.lines[i];
      if (line == nullptr || line->grams.is_lost()) return false;
      sum += line->grams;
      if (line->flour) flour += line->grams;
      out.base_names.push_back(line->name);
    }
    if (sum.sign() <= 0) return false;
    const bool all_the_flour = sum == flour && flour == out.flour;
    out.base = all_the_flour ? FormulaBase::flour : FormulaBase::named;
    out.base_grams = sum;
    return true;
  }
  bool is_of(Index line, const Target& member) const {
    if (member.kind == TargetKind::line) return line == member.index;
    const Target& target = recipe_.lines[line].target;
    return target.kind == member.kind && target.index == member.index;
  }

  // What is for the top or for the water that it is boiled in is no part of the mixture.
  Formula finished_of(const Node& node) const {
    Formula out = merged_of(node);
    std::erase_if(out.lines, [](const FormulaLine& line) { return line.aside; });
    add_sums(out);
    out.not_measured = node.free;
    return out;
  }

  Formula overall_of(const Node& node) const {
    Formula out = merged_of(node);
    std::stable_partition(out.lines.begin(), out.lines.end(), [](const FormulaLine& line) { return line.flour; });
    add_sums(out);
    if (node.is_dough) by_flour(out);
    add_totals(out, node.merged);
    return out;
  }

  Formula merged_of(const Node& node) const {
    Formula out;
    const Part& part = recipe_.parts[node.part];
    out.name = node.part == recipe_.dish ? recipe_.title : part.name;
    out.overall = true;
    out.lines = node.merged;
    out.not_weighed = node.not_weighed;
    return out;
  }

  const Recipe& recipe_;
  FormulaMerge merge_;
};

}  // namespace

std::vector<Formula> formulas_of(const Recipe& recipe) {
  return Parts(recipe).all();
}

std::vector<Formula> whole_formulas_of(const Recipe& recipe) {
  return Parts(recipe).finished();
}

}  // namespace qtn
