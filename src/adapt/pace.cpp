#include "adapt/pace.hpp"

namespace qtn {
namespace {

// A thing that comes out of a line, and a choice in place of one, keep its pace where they have none of their own.
const TakeLine* above(const Recipe& recipe, const TakeLine& line) {
  return line.parent < recipe.lines.size() ? &recipe.lines[line.parent] : nullptr;
}

bool is_measure(const Term& term) {
  const Dimension dimension = term.amount.dimension();
  return dimension == Dimension::mass || dimension == Dimension::volume;
}

}  // namespace

Fraction gentle(const Fraction& k) {
  return k <= Fraction(2) ? k : Fraction(2) + (k - Fraction(2)) / Fraction(2);
}

Pace pace_of(const Recipe& recipe, const TakeLine& line) {
  const TakeLine* const over = above(recipe, line);
  if (line.fixed || (over != nullptr && over->fixed)) return Pace::still;
  if (line.gently || (over != nullptr && over->gently)) return Pace::gentle;
  const bool seasoning = line.food != nullptr && line.food->seasoning;
  return seasoning && recipe.kitchen && recipe.kitchen->gentle_seasoning ? Pace::gentle : Pace::plain;
}

Index restated_by(const Recipe& recipe, const Clause& clause, Index term) {
  Index at = term;
  while (recipe.terms[at].role == TermRole::equivalent && at > clause.terms.first) --at;
  return at;
}

const TakeLine* line_of(const Recipe& recipe, const Clause& clause, Index term) {
  const Index asked = restated_by(recipe, clause, term);
  for (Index m = clause.mentions.first; m < clause.mentions.end(); ++m) {
    const Mention& mention = recipe.mentions[m];
    if (mention.term != asked && clause.mentions.count != 1) continue;
    const bool line = mention.target.kind == TargetKind::line || mention.target.kind == TargetKind::aside;
    return line ? &recipe.lines[mention.target.index] : nullptr;
  }
  return nullptr;
}

Pace pace_of(const Recipe& recipe, const Clause& clause, Index index) {
  const Term& term = recipe.terms[restated_by(recipe, clause, index)];
  switch (term.role) {
    case TermRole::use: {
      const TakeLine* const line = line_of(recipe, clause, index);
      return line != nullptr ? pace_of(recipe, *line) : Pace::plain;
    }
    case TermRole::pieces:
      return Pace::plain;
    case TermRole::checkpoint:
    case TermRole::to:
    case TermRole::change:  // loses 200 g; a percentage stands
      return is_measure(term) ? Pace::plain : Pace::still;
    default:
      return Pace::still;
  }
}

}  // namespace qtn
