// Steps: the writer's prose with its clauses, brackets left out, amounts as they are shown.
#include <algorithm>

#include "card/maker.hpp"

namespace qtn {
namespace {

Role role_of(TermRole role) {
  switch (role) {
    case TermRole::length:
    case TermRole::hold:
    case TermRole::plus:
    case TermRole::within:
    case TermRole::every:
    case TermRole::between: return Role::time;
    case TermRole::temperature:
    case TermRole::to:
    case TermRole::by: return Role::temperature;
    case TermRole::reading: return Role::reading;
    case TermRole::measure: return Role::measure;
    case TermRole::pieces:
    case TermRole::piece_weight: return Role::pieces;
    case TermRole::equivalent: return Role::second;
    case TermRole::times:
    case TermRole::load:
    case TermRole::per: return Role::text;
    default: return Role::amount;
  }
}

// The brackets are not printed, so that a verb may come to stand first in its sentence.
bool begins_sentence(std::string_view text, std::size_t at, std::size_t step, bool verb) {
  if (!verb || at >= text.size() || text[at] < 'a' || text[at] > 'z') return false;
  while (at > 0 && at != step && text[at - 1] == ' ') --at;
  return at == step || at == 0 || text[at - 1] == '.' || text[at - 1] == '!' || text[at - 1] == '?';
}

}  // namespace

void Maker::steps(Slice steps) {
  for (Index i = steps.first; i < steps.end(); ++i) step(recipe_.steps[i]);
}

void Maker::step(const Step& step) {
  CardStep out;
  out.kind = static_cast<StepKind>(step.kind);
  switch (step.kind) {
    case StepKindOf::meanwhile: out.label = plain(words_[Caption::meanwhile]); break;
    case StepKindOf::ahead: out.label = plain(words_[Caption::ahead]); break;
    case StepKindOf::by_hand: out.label = plain(words_[Caption::by_hand]); break;
    case StepKindOf::by_machine: out.label = plain(words_[Caption::by_machine]); break;
    case StepKindOf::note: out.label = plain(words_[Caption::note]); break;
    default: break;
  }
  out_.begin();
  // A step with an opener goes on behind it; any other begins a sentence.
  step_at_ = out.label.empty() ? card_.text.size() : std::string::npos;
  if (step.kind == StepKindOf::note) {
    prose_.write(recipe_.slice(step.span));
  } else {
    fragments_.clear();
    owned_.clear();
    for (Index i = step.pieces.first; i < step.pieces.end(); ++i) {
      const Piece& piece = recipe_.pieces[i];
      fragments_.push_back({recipe_.slice(piece.span), piece.kind == PieceKind::clause, piece.line_start && i != step.pieces.first, piece.markup});
      owned_.push_back(i);
    }
    prose_.write(fragments_, *this);
  }
  out.runs = out_.end();
  card_.steps.push_back(out);
}

void Maker::write_own(std::size_t fragment) {
  const Piece& piece = recipe_.pieces[owned_[fragment]];
  if (piece.clause != kNone) clause(recipe_.clauses[piece.clause]);
}

// The clause's own words, with each amount and each name in its role.
void Maker::clause(const Clause& clause) {
  struct Place {
    Span span;
    bool term;
    Index index;
  };
  Place places[24];
  std::size_t count = 0;
  for (Index t = clause.terms.first; t < clause.terms.end() && count < std::size(places); ++t) {
    const Term& term = recipe_.terms[t];
    if (term.changed ? false : term.span.begin >= clause.span.begin && term.span.end <= clause.span.end) places[count++] = {term.span, true, t};
  }
  for (Index m = clause.mentions.first; m < clause.mentions.end() && count < std::size(places); ++m)
    places[count++] = {recipe_.mentions[m].span, false, m};
  std::sort(places, places + count, [](const Place& a, const Place& b) { return a.span.begin < b.span.begin; });
  const std::size_t written = card_.text.size();
  std::uint32_t at = clause.span.begin + 1;
  const std::uint32_t end = clause.span.end - 1;
  const bool versioned = std::any_of(recipe_.terms.begin() + clause.terms.first, recipe_.terms.begin() + clause.terms.end(), [](const Term& t) { return t.changed; });
  if (versioned) {  // a version's amount stands for the words of the clause
    out_.put(clause.own_verb ? verb(clause.verb).name : std::string_view());
    for (Index t = clause.terms.first; t < clause.terms.end(); ++t) {
      if (t != clause.terms.first || clause.own_verb) out_.put(recipe_.terms[t].role == TermRole::temperature ? " at " : " ");
      term(clause, t);
    }
    return;
  }
  // What was stated beside an amount no longer holds when that was changed, and has its own place when a second measure
  // is shown: its parenthesis is left out.
  const auto after_equivalents = [&](std::size_t next, std::uint32_t from) {
    if (next >= count || !places[next].term || recipe_.terms[places[next].index].role != TermRole::equivalent) return from;
    const std::string_view text = recipe_.text.substr(0, end);
    const std::size_t open = text.find_first_not_of(" \t\r\n", from), shut = text.find(')', places[next].span.end);
    if (open >= end || text[open] != '(' || shut >= end) return from;
    return static_cast<std::uint32_t>(shut) + 1;
  };
  for (std::size_t i = 0; i < count; ++i) {
    if (places[i].span.begin < at) continue;
    out_.collapsed(recipe_.slice({at, places[i].span.begin}), Role::text);
    places[i].term ? term(clause, places[i].index) : mention(clause, places[i].index);
    at = places[i].span.end;
    if (!places[i].term) continue;
    const Shown& shown = adapted_.terms[places[i].index];
    if (shown.changed || adapted_.beside) at = after_equivalents(i + 1, at);
    if (shown.changed && recipe_.terms[places[i].index].role == TermRole::pieces) at = piece_name(clause, shown, at);
  }
  if (at < end) out_.collapsed(recipe_.slice({at, end}), Role::text);
  if (begins_sentence(card_.text, written, step_at_, clause.own_verb)) card_.text[written] = static_cast<char>(card_.text[written] - 'a' + 'A');
}

void Maker::term(const Clause&, Index index) {
  const Term& term = recipe_.terms[index];
  const Shown& shown = adapted_.terms[index];
  const Role role = role_of(term.role);
  if (shown.changed) out_.add(shown.text, role, shown.exact);
  else if (shown.text.empty()) out_.collapsed(recipe_.slice(term.span), role);
  else out_.add(shown.text, role, shown.exact);
  if (adapted_.beside) {
    const Shown& beside = adapted_.terms_beside[index];
    if (!beside.text.empty() && beside.text != shown.text) {
      out_.add(" (", Role::second);
      out_.add(beside.text, Role::second, beside.exact);
      out_.add(")", Role::second);
    }
  }
}

// "[1 slice]" three times over is "3 slices". Returns where the text goes on.
std::uint32_t Maker::piece_name(const Clause& clause, const Shown& shown, std::uint32_t at) {
  const std::string_view thing = clause.thing;
  const std::uint32_t begin = at + 1;
  if (thing.empty() || shown.exact.unit != kNoUnit || recipe_.text.substr(begin, thing.size()) != thing) return at;
  out_.put(" ");
  out_.put(shown.text == "1" ? singular_of(thing) : plural_of(thing));
  return begin + static_cast<std::uint32_t>(thing.size());
}

void Maker::mention(const Clause&, Index index) {
  const Mention& mention = recipe_.mentions[index];
  const bool line = mention.target.kind == TargetKind::line;
  const TakeLine* const target = line ? &recipe_.lines[mention.target.index] : nullptr;
  const bool struck = target != nullptr && target->struck;
  if (target != nullptr && target->chosen != kNone) {
    if (lower(recipe_.slice(mention.span).substr(0, 4)) == "the ") out_.add(recipe_.slice(mention.span).substr(0, 4), Role::name);
    out_.add(recipe_.lines[target->chosen].name, Role::name);
  } else out_.collapsed(recipe_.slice(mention.span), struck ? Role::struck : Role::name);
  const Shown& shown = adapted_.mentions[index];
  if (shown.text.empty()) return;
  out_.put(" ");
  out_.add("(" + shown.text, Role::spent, shown.exact);
  if (adapted_.beside && !adapted_.mentions_beside[index].text.empty() && adapted_.mentions_beside[index].text != shown.text)
    out_.add(", " + adapted_.mentions_beside[index].text, Role::second, adapted_.mentions_beside[index].exact);
  out_.add(")", Role::spent);
}

}  // namespace qtn
