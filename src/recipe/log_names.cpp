// What the name of a change means: a line of the list, or the clauses of a verb.
#include "recipe/logs.hpp"

#include <algorithm>

#include "diag/nearest.hpp"
#include "recipe/names.hpp"
#include "words/fold.hpp"
#include "words/verbs.hpp"

namespace qtn {
namespace {

bool holds_all(std::span<const WordKey> keys, std::span<const WordKey> wanted) {
  return std::all_of(wanted.begin(), wanted.end(),
                     [&](WordKey key) { return std::find(keys.begin(), keys.end(), key) != keys.end(); });
}

VerbId listed_verb(std::string_view name) {
  const std::string word = lower(name);
  const auto words = verb_words();
  auto at = std::lower_bound(words.begin(), words.end(), word,
                             [](const VerbWord& row, const std::string& wanted) { return row.text < wanted; });
  for (; at != words.end() && at->text == word; ++at)
    if (at->form == VerbForm::plain || verb(at->verb).deed == Deed::reading) return at->verb;
  return kNoVerb;
}

const Verb* house_verb(const Recipe& recipe, std::string_view name) {
  if (!recipe.kitchen) return nullptr;
  for (const auto& [text, row] : recipe.kitchen->verbs)
    if (same_letters(text, name)) return &row;
  return nullptr;
}

bool counts(Dimension dimension) {
  return dimension == Dimension::mass || dimension == Dimension::volume || dimension == Dimension::count ||
         dimension == Dimension::ratio;
}

}  // namespace

Index part_named(const Recipe& recipe, std::string_view name) {
  const auto wanted = fold_name(name);
  for (Index i = 0; i < recipe.parts.size(); ++i)
    if (fold_name(recipe.parts[i].name) == wanted) return i;
  return kNone;
}

LineMatch lines_named(const Recipe& recipe, Index part, std::string_view name) {
  std::vector<WordKey> wanted;
  fold_keys(name, wanted);
  LineMatch match;
  if (wanted.empty()) return match;
  int best = 0;
  for (Index i = 0; i < recipe.lines.size(); ++i) {
    const TakeLine& line = recipe.lines[i];
    if (part != kNone && line.part != part) continue;
    const auto keys = recipe.keys_of(line);
    if (keys.empty() || !holds_all(keys, wanted)) continue;
    const int rank = keys.size() == wanted.size() ? 3 : is_head(keys, wanted.back()) ? 2 : 1;
    if (rank < best) continue;
    if (rank > best) match.lines.clear();
    best = rank;
    match.lines.push_back(i);
  }
  match.exact = best == 3;
  // `50 g butter` beside `butter, for greasing`: a change of an amount means the line that has one.
  const auto measured = [&](Index i) { return recipe.lines[i].measured(); };
  if (match.lines.size() > 1 && std::any_of(match.lines.begin(), match.lines.end(), measured))
    match.lines.erase(std::remove_if(match.lines.begin(), match.lines.end(), [&](Index i) { return !measured(i); }),
                      match.lines.end());
  return match;
}

bool is_verb_word(const Recipe& recipe, std::string_view name) {
  return listed_verb(name) != kNoVerb || house_verb(recipe, name) != nullptr;
}

std::vector<Index> clauses_of(const Recipe& recipe, Index part, std::string_view name) {
  std::vector<Index> found;
  const VerbId id = listed_verb(name);
  const Verb* const own = house_verb(recipe, name);
  for (Index i = 0; i < recipe.clauses.size(); ++i) {
    const Clause& clause = recipe.clauses[i];
    if (part != kNone && clause.part != part) continue;
    const bool of_house = own != nullptr && clause.house_verb != nullptr && clause.house_verb->name == own->name;
    if (of_house || (id != kNoVerb && clause.verb == id)) found.push_back(i);
  }
  return found;
}

Index term_of(const Recipe& recipe, const Clause& clause, Dimension dimension) {
  for (Index i = clause.terms.first; i < clause.terms.end(); ++i) {
    const Term& term = recipe.terms[i];
    if (term.role != TermRole::equivalent && term.amount.dimension() == dimension) return i;
  }
  return kNone;
}

bool same_amount(const Quantity& a, const Quantity& b, Dialect dialect) {
  if (a.dimension() != b.dimension() || a.fan != b.fan) return false;
  if (a.unit == b.unit) return a.low == b.low && a.high == b.high;
  const auto noun = [](const Quantity& q) {  // a dozen is a number, and a bare number may be of anything
    return q.dimension() == Dimension::count && q.unit != kNoUnit && unit(q.unit).size[0] == Fraction(1);
  };
  if (noun(a) && noun(b)) return false;
  const Ends x = in_base(a, dialect), y = in_base(b, dialect);
  // A size that nobody knows accuses nobody.
  if (x.low.is_lost() || x.high.is_lost() || y.low.is_lost() || y.high.is_lost()) return true;
  return x.low == y.low && x.high == y.high;
}

bool list_has(const Recipe& recipe, const TakeLine& line, const std::optional<Quantity>& amount, Counted as) {
  if (!amount || !line.measured()) return !amount && !line.measured();
  const Dialect dialect = recipe.dialect;
  if (as == Counted::parts) return line.basis == Basis::parts && (line.written.is_lost() || same_amount(*amount, line.written, dialect));
  if (line.basis == Basis::parts && amount->unit != kNoUnit && amount->dimension() == Dimension::count) return false;
  if (line.house_measure && amount->unit != kNoUnit) return line.amount.is_lost() || same_amount(*amount, line.amount, dialect);
  if (line.written.is_lost() || same_amount(*amount, line.written, dialect)) return true;
  if (line.basis != Basis::amount && !line.amount.is_lost() && same_amount(*amount, line.amount, dialect)) return true;
  for (Index i = line.stated.first; i < line.stated.end(); ++i)
    if (!recipe.stated[i].each && same_amount(*amount, recipe.stated[i].amount, dialect)) return true;
  if (!line.pack || amount->dimension() != Dimension::count) return false;
  // 2 -> 3 tins of 400 g, where the list says 3 x 400 g tins.
  const Ends all = in_base(line.written, dialect), one = in_base(*line.pack, dialect);
  return line.written.dimension() == line.pack->dimension() && all.low / one.low == amount->low;
}

void report_unknown(const Recipe& recipe, const Change& change, Report& report) {
  std::vector<std::string_view> known;
  for (const TakeLine& line : recipe.lines) known.push_back(line.name);
  for (const Clause& clause : recipe.clauses)
    if (clause.own_verb) known.push_back(clause.house_verb != nullptr ? clause.house_verb->name : verb(clause.verb).name);
  std::sort(known.begin(), known.end());
  known.erase(std::unique(known.begin(), known.end()), known.end());
  const auto near = nearest(change.name, known);
  const std::string name(change.name);
  auto& problem = report.add(Code::change_of_nothing, change.name_span,
                             "`" + name + "` is no line of the list and no verb of the method." +
                                 (near.empty() ? "" : " " + did_you_mean(near)));
  problem.find("`" + name + "`").expect("a name as the list has it, or the verb of a clause");
  for (std::string_view one : near) problem.offer(change.name_span, std::string(one), "write `" + std::string(one) + "`");
}

void report_no_part(const Recipe& recipe, const Change& change, Report& report) {
  std::vector<std::string_view> known;
  for (const Part& part : recipe.parts) known.push_back(part.name);
  const auto near = nearest(change.part, known);
  const Span span = span_of(recipe, change.part);
  auto& problem = report.add(Code::change_of_nothing, span,
                             "No part is called `" + std::string(change.part) + "`." +
                                 (near.empty() ? "" : " " + did_you_mean(near)));
  problem.find("`" + std::string(change.part) + "`").expect("the name of a part of this recipe");
  for (std::string_view one : near) problem.offer(span, std::string(one), "write `" + std::string(one) + "`");
}

void report_several(const Recipe& recipe, const Change& change, const std::vector<Index>& lines, Report& report) {
  bool parts_differ = false;
  for (Index i : lines) parts_differ = parts_differ || recipe.lines[i].part != recipe.lines[lines[0]].part;
  auto& problem = report.add(Code::change_of_several, change.name_span,
                             "`" + std::string(change.name) + "` could be " + std::to_string(lines.size()) + " lines.");
  problem.find("`" + std::string(change.name) + "`");
  problem.expect(parts_differ ? "its part in brackets in front: `[" + std::string(recipe.parts[recipe.lines[lines[0]].part].name) +
                                    "] " + std::string(change.name) + "`"
                              : "the whole name, as the list has it");
  for (Index i : lines) problem.also(recipe.lines[i].name_span, "this one");
}

bool kinds_fit(const Recipe& recipe, const Change& change, bool of_clause, Report& report) {
  for (const auto* side : {&change.before, &change.after}) {
    if (!*side) continue;
    const Dimension dimension = (*side)->dimension();
    if (counts(dimension) != of_clause) continue;
    const Span span = side == &change.before ? change.before_span : change.after_span;
    report.add(Code::change_of_kind, span,
               "`" + std::string(recipe.slice(span)) + "` is a " + std::string(name_of(dimension)) + ", and `" +
                   std::string(change.name) + "` is " + (of_clause ? "a step." : "in the list."))
        .find("a " + std::string(name_of(dimension)))
        .expect(of_clause ? "a time, a temperature or a length" : "a weight, a volume, a count or a share");
    return false;
  }
  return true;
}

}  // namespace qtn
