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
  for (Index i = steps.first; i < steps.end(); ++i)
    if (!adapted_.way || !is_other_way(recipe_, i, adapted_.way)) step(recipe_.steps[i]), step_cautions(i);
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
      const bool line_start = piece.line_start && i != step.pieces.first;
      fragments_.push_back({recipe_.slice(piece.span), piece.kind == PieceKind::clause, line_start, piece.markup});
      owned_.push_back(i);
    }
    prose_.write(fragments_, *this);
    full_stop(step);
  }
  out.runs = out_.end();
  card_.steps.push_back(out);
}

void Maker::write_own(std::size_t fragment) {
  const Piece& piece = recipe_.pieces[owned_[fragment]];
  if (piece.clause != kNone) clause(recipe_.clauses[piece.clause]);
}

void Maker::find_places(const Clause& clause) {
  std::vector<Place>& places = places_;
  places.clear();
  for (Index t = clause.terms.first; t < clause.terms.end(); ++t) {
    const Span span = recipe_.terms[t].changed ? recipe_.terms[t].stood : recipe_.terms[t].span;
    if (span.begin >= clause.span.begin && span.end <= clause.span.end) places.push_back({span, true, t});
  }
  for (Index m = clause.mentions.first; m < clause.mentions.end(); ++m)
    places.push_back({recipe_.mentions[m].span, false, m});
  std::sort(places.begin(), places.end(), [](const Place& a, const Place& b) { return a.span.begin < b.span.begin; });
}

// The clause's own words, with each amount and each name in its role; a version's amount in the place of the old one.
void Maker::clause(const Clause& clause) {
  find_places(clause);
  const std::vector<Place>& places = places_;
  const std::size_t written = card_.text.size();
  if (wording_ && clause.verb != kNoVerb) checked_.push_back({CheckedWords::Kind::verb, static_cast<std::uint32_t>(written), static_cast<Index>(&clause - recipe_.clauses.data())});
  std::uint32_t at = clause.span.begin + 1;
  const std::uint32_t end = clause.span.end - 1;
  const auto index = static_cast<Index>(&clause - recipe_.clauses.data());
  const auto sum = std::find_if(adapted_.by_weight.begin(), adapted_.by_weight.end(),
                                [&](const ByWeight& one) { return one.clause == index; });
  const bool own_pieces = clause.kind == ClauseKind::use && cuts(recipe_, clause);
  std::size_t last = places.size();  // of the rule that a total stands behind
  for (std::size_t i = 0; i < places.size() && sum != adapted_.by_weight.end(); ++i) {
    const TermRole role = places[i].term ? recipe_.terms[places[i].index].role : TermRole::per;
    if (role == TermRole::per || role == TermRole::plus) last = i;
  }
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (places[i].span.begin < at) continue;
    if (restated_before(i)) {
      at = places[i].span.end;
      continue;
    }
    out_.collapsed(recipe_.slice({at, places[i].span.begin}), Role::text);
    at = places[i].span.end;
    if (!places[i].term) {
      mention(clause, places[i].index);
    } else if (recipe_.terms[places[i].index].role == TermRole::pieces || (own_pieces && i == 0)) {
      at = pieces(clause, places[i].index, at);
    } else {
      term(clause, places[i].index);
      if (recipe_.terms[places[i].index].role == TermRole::load) at = load(clause, places[i].index, at);
    }
    const bool leave_out = places[i].term && (recipe_.terms[places[i].index].changed || adapted_.terms[places[i].index].changed || adapted_.beside);
    if (leave_out && i + 1 < places.size()) at = without_equivalent(clause, places[i + 1], at);
    if (i == last) total(*sum);
  }
  if (at < end) out_.collapsed(recipe_.slice({at, end}), Role::text);
  if (begins_sentence(card_.text, written, step_at_, clause.own_verb))
    card_.text[written] = static_cast<char>(card_.text[written] - 'a' + 'A');
}

// "180 °C (350 °F, gas 4)", where the gas mark is said in °F as well: once is enough.
bool Maker::restated_before(std::size_t place) const {
  const auto stated = [&](std::size_t i) { return places_[i].term && recipe_.terms[places_[i].index].role == TermRole::equivalent; };
  if (adapted_.words != AskedWords::american || !stated(place)) return false;
  for (std::size_t i = place; i-- > 0;) {
    if (places_[i].term && adapted_.terms[places_[i].index].text == adapted_.terms[places_[place].index].text) return true;
    if (!stated(i)) return false;
  }
  return false;
}

// What was stated beside an amount no longer holds when that was changed, and has its own place when a second measure
// is shown: its parenthesis is left out.
std::uint32_t Maker::without_equivalent(const Clause& clause, const Place& next, std::uint32_t from) const {
  if (!next.term || recipe_.terms[next.index].role != TermRole::equivalent) return from;
  const std::uint32_t end = clause.span.end - 1;
  const std::string_view text = recipe_.text.substr(0, end);
  const std::size_t open = text.find_first_not_of(" \t\r\n", from), shut = text.find(')', next.span.end);
  if (open >= end || text[open] != '(' || shut >= end) return from;
  return static_cast<std::uint32_t>(shut) + 1;
}

// "(1 h 45 min for 1.9 kg)": what the rule before it comes to here.
void Maker::total(const ByWeight& total) {
  out_.put(" (");
  out_.add(total.time.text, Role::time, total.time.exact);
  out_.put(words_[total.each ? Caption::for_each_of : Caption::for_weight]);
  out_.add(total.weight.text, Role::amount, total.weight.exact);
  if (adapted_.beside && total.weight_beside.text != total.weight.text) {
    out_.put(", ");
    out_.add(total.weight_beside.text, Role::second, total.weight_beside.exact);
  }
  out_.put(")");
}

// "12 at a time (2 rounds)". Returns where the text goes on.
std::uint32_t Maker::load(const Clause& clause, Index term, std::uint32_t at) {
  const auto here = std::find_if(adapted_.loads.begin(), adapted_.loads.end(),
                                 [&](const Rounds& one) { return one.term == term; });
  if (here == adapted_.loads.end()) return at;
  constexpr std::string_view kWords = "at a time";
  const std::size_t found = recipe_.text.substr(0, clause.span.end - 1).find(kWords, at);
  if (found == std::string_view::npos) return at;
  const auto behind = static_cast<std::uint32_t>(found + kWords.size());
  out_.collapsed(recipe_.slice({at, behind}), Role::text);
  out_.put(" (");
  rounds(*here, Caption::rounds, !here->full);
  out_.put(")");
  return behind;
}

void Maker::term(const Clause&, Index index) {
  const Term& term = recipe_.terms[index];
  const Shown& shown = adapted_.terms[index];
  const bool amount = term.amount.dimension() != Dimension::temperature && role_of(term.role) == Role::temperature;
  const Role role = amount ? Role::amount : role_of(term.role);  // reduce to 2.5 l
  if (shown.changed) out_.add(shown.text, role, shown.exact);
  else if (shown.text.empty()) out_.collapsed(recipe_.slice(term.span), role);
  else out_.add(shown.text, role, shown.exact);
  if (adapted_.beside) {
    const Shown& beside = adapted_.terms_beside[index];
    if (!beside.text.empty() && beside.text != shown.text) {
      std::string text = beside.text;  // 220 °C (fan 200 °C), itself in parentheses
      const std::size_t open = text.find(" (");
      if (open != std::string::npos && text.back() == ')') text.replace(open, 2, ", "), text.pop_back();
      out_.put(" ");
      out_.add("(" + text + ")", Role::second, beside.exact);
    }
  }
}

// "8 slices" is one thing to read; "[1 slice]" three times over is "3 slices". Returns where the text goes on.
std::uint32_t Maker::pieces(const Clause& clause, Index index, std::uint32_t at) {
  const bool own = clause.kind == ClauseKind::use && clause.mentions.count == 1;  // the dish's own name
  const std::string_view thing = own ? recipe_.slice(recipe_.mentions[clause.mentions.first].span) : clause.thing;
  const Shown& shown = adapted_.terms[index];
  const std::uint32_t begin = at + 1;
  if (thing.empty() || shown.exact.unit != kNoUnit || recipe_.text.substr(begin, thing.size()) != thing) {
    term(clause, index);
    return at;
  }
  std::string text = shown.text + " ";
  if (!shown.changed) text += thing;
  else text += shown.text == "1" ? singular_of(thing) : plural_of(thing);
  out_.add(text, Role::pieces, shown.exact);
  return begin + static_cast<std::uint32_t>(thing.size());
}

// The one egg of the page is "the eggs" when this card has three, and the other way round.
std::string Maker::mentioned(const Mention& mention) const {
  const std::string_view text = recipe_.slice(mention.span);
  const TakeLine& line = recipe_.lines[mention.target.index];
  const bool same = recipe_.factor == Fraction(1) || mention.taking != Taking::mention;
  if (same || line.given || !line.measured() || line.amount.is_lost() || line.amount.unit != kNoUnit ||
      line.target.kind != TargetKind::none)
    return std::string(text);
  const bool one_written = singular_of(line.name) == line.name;
  if (line.amount.high > Fraction(1)) return one_written ? plural_of(text) : std::string(text);
  return one_written ? std::string(text) : singular_of(text);
}

void Maker::mention(const Clause&, Index index) {
  const Mention& mention = recipe_.mentions[index];
  const bool line = mention.target.kind == TargetKind::line;
  const TakeLine* const target = line ? &recipe_.lines[mention.target.index] : nullptr;
  const bool struck = target != nullptr && target->struck;
  const std::string_view words = recipe_.slice(mention.span);
  if (wording_) {
    const bool thing = target != nullptr && target->target.kind == TargetKind::none;
    checked_.push_back({CheckedWords::Kind::mention, static_cast<std::uint32_t>(card_.runs.size()), thing ? mention.target.index : kNone});
  }
  if (target != nullptr && target->chosen != kNone) {
    if (lower(words.substr(0, 4)) == "the ") out_.add(words.substr(0, 4), Role::name);
    out_.add(recipe_.lines[target->chosen].name, Role::name);
  } else {
    out_.collapsed(line ? mentioned(mention) : std::string(words), struck ? Role::struck : Role::name);
  }
  const Shown& shown = adapted_.mentions[index];
  if (shown.text.empty()) return;
  out_.put(" ");
  std::string text = "(" + shown.text;
  const std::string beside = adapted_.beside ? adapted_.mentions_beside[index].text : std::string();
  if (!beside.empty() && beside != shown.text) text += ", " + beside;
  out_.add(text + ")", Role::spent, shown.exact);
}

// A step that ends in a clause may lack its full stop, since the brackets stood for it.
void Maker::full_stop(const Step& step) {
  if (step.pieces.empty() || out_.empty() || recipe_.pieces[step.pieces.end() - 1].kind != PieceKind::clause) return;
  if (std::string_view(".!?:;,").find(card_.text.back()) == std::string_view::npos) out_.put(".");
}

}  // namespace qtn
