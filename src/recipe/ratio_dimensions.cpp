// By weight or by volume: which dimension the amount of each line is worked out in.
#include "recipe/ratio_system.hpp"

namespace qtn {
namespace {

Dimension weighed_as(Dimension dimension) {
  return dimension == Dimension::volume ? Dimension::volume : Dimension::mass;
}

}  // namespace

// Parts take the dimension of what anchors them.
Dimension RatioSystem::parts_dimension(Index part) const {
  const Part& one = recipe_.parts[part];
  if (one.head.by_volume) return Dimension::volume;
  for (Index i = one.lines.first; i < one.lines.end(); ++i) {
    const TakeLine& line = recipe_.lines[i];
    if (line.basis != Basis::parts) continue;
    for (Index s = line.stated.first; s < line.stated.end(); ++s)
      if (!recipe_.stated[s].each) return weighed_as(recipe_.stated[s].amount.dimension());
  }
  for (const Yield& yield : yields_of(recipe_, part))
    if (!yield.by_product && yield.dimension != Dimension::count) return weighed_as(yield.dimension);
  for (const Index asker : askers_[part])
    if (recipe_.lines[asker].basis == Basis::amount) return weighed_as(recipe_.lines[asker].amount.dimension());
  return Dimension::mass;
}

// A percentage is by weight. By volume only where nobody knows the weight of the one nor of the other: a share of what has
// no weight is no weight, and millilitres of flour are no baker's per cent of anything.
bool RatioSystem::by_volume_only(Index i, const Slice& members) const {
  const TakeLine& line = recipe_.lines[i];
  if (!line.members.empty() || !recipe_.parts[line.part].head.by_volume) {
    if (!convert(i, Dimension::mass, Dimension::volume).is_lost()) return false;
  }
  bool volume = false;
  for (Index m = members.first; m < members.end(); ++m) {
    const Target& member = recipe_.set_members[m];
    if (member.kind != TargetKind::line) continue;
    const Index of = standing_index(member.index);
    const TakeLine& base = recipe_.lines[of];
    if (has(of)) {
      volume = volume || (dim_[of] == Dimension::volume && of != i && convert(of, Dimension::volume, Dimension::mass).is_lost());
    } else if (base.basis == Basis::amount && base.amount.dimension() == Dimension::mass) {
      return false;  // weights and volumes do not add up
    } else if (base.basis == Basis::amount && base.amount.dimension() == Dimension::volume) {
      volume = volume || grams_of(recipe_, base, kept_amount(recipe_, base)).low.is_lost();
    }
  }
  if (volume) return true;
  if (!line.members.empty() || !recipe_.parts[line.part].head.by_volume) return false;
  return true;
}

void RatioSystem::choose_dimensions() {
  std::vector<Index> percents;
  for (Index p = 0; p < recipe_.parts.size(); ++p)
    if (size_[p] != Linear::kNobody) parts_dim_[p] = parts_dimension(p);
  for (Index i = 0; i < recipe_.lines.size(); ++i) {
    if (!has(i)) continue;
    const TakeLine& line = recipe_.lines[i];
    if (line.basis == Basis::parts) dim_[i] = parts_dim_[line.part];
    if (line.basis == Basis::rate) dim_[i] = line.written.dimension();
    if (line.basis == Basis::percent) percents.push_back(i);
  }
  // A list whose `makes:` is a volume, with a line that has no weight by volume, is by volume throughout.
  for (Index p = 0; p < recipe_.parts.size(); ++p) {
    bool volume = false, mass = false, unweighable = false;
    for (const Yield& yield : yields_of(recipe_, p))
      (yield.dimension == Dimension::volume ? volume : mass) |= yield.dimension != Dimension::count;
    if (!volume || mass) continue;
    const Slice lines = recipe_.parts[p].lines;
    for (Index i = lines.first; i < lines.end(); ++i) {
      if (!in_sums(recipe_.lines[i])) continue;
      if (!has(i))
        mass = mass || recipe_.lines[i].amount.dimension() != Dimension::volume;
      else
        unweighable = unweighable || convert(i, Dimension::mass, Dimension::volume).is_lost();
    }
    if (mass || !unweighable) continue;
    for (const Index i : percents)
      if (recipe_.lines[i].part == p) dim_[i] = Dimension::volume;
  }
  bool changed = true;
  for (int pass = 0; changed && pass < 8; ++pass) {
    changed = false;
    for (const Index i : percents) {
      const TakeLine& line = recipe_.lines[i];
      if (dim_[i] == Dimension::volume) continue;
      if (!by_volume_only(i, line.members.empty() ? recipe_.parts[line.part].head.members : line.members)) continue;
      dim_[i] = Dimension::volume;
      changed = true;
    }
  }
}

}  // namespace qtn
