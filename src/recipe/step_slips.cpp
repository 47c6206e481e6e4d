// What stands among the steps and belongs elsewhere: a head word in column 1, a place behind its bracket.
#include <algorithm>

#include "recipe/builder.hpp"
#include "words/lexicon.hpp"
#include "words/lists.hpp"

namespace qtn {
namespace {

// Does this line read as the field that it opens with? Prose that happens to begin so does not.
const FieldRow* head_field(std::string_view line) {
  const std::size_t colon = line.substr(0, 32).find(':');
  if (colon == std::string_view::npos || colon == 0) return nullptr;
  const FieldRow* const row = find_field(trim(line.substr(0, colon)));
  if (row == nullptr || (row->where & (kRecipe | kPart)) == 0) return nullptr;
  const bool choice = row->field == Field::measures || row->field == Field::words || row->field == Field::oven;
  if (row->shape != Shape::value && !choice) return nullptr;
  const std::string value = lower(trim(line.substr(colon + 1)));
  if (choice) {
    for (std::string_view known : {"british", "american", "australian", "conventional", "fan", "convection", "gas"})
      if (value == known) return row;
    return nullptr;
  }
  const Source alone("", "recipe: X\n" + std::string(line) + "\n");
  const Tree tree = parse(alone);
  for (View at : View(tree, 0))
    if (at.kind() == Kind::field && field_of(at.value()) == row->field) return at.has(Kind::bad_value) || at->size == 2 ? nullptr : row;
  return nullptr;
}

bool begins_with_amount(std::string_view line) {
  std::size_t at = 0;
  while (blank_at(line, at) != 0) at += static_cast<std::size_t>(blank_at(line, at));
  if (at < line.size() && (line[at] == '-' || line[at] == '*')) ++at;
  while (blank_at(line, at) != 0) at += static_cast<std::size_t>(blank_at(line, at));
  return at < line.size() && line[at] >= '0' && line[at] <= '9';
}

}  // namespace

// A head word in column 1 of a method whose line reads as that field (L2). True where one was reported.
bool Builder::heads_among_steps(Span step) {
  const std::string_view text = in_.source.text();
  bool any = false;
  for (std::uint32_t at = step.begin; at < step.end;) {
    auto end = static_cast<std::uint32_t>(std::min<std::size_t>(text.find('\n', at), text.size()));
    while (end > at && text[end - 1] == '\r') --end;
    const bool column_one = at == 0 || text[at - 1] == '\n';
    const FieldRow* const row = column_one && letter_at(text, at) != 0 ? head_field(text.substr(at, end - at)) : nullptr;
    if (row != nullptr) {
      any = true;
      const Span line{at, end};
      const auto colon = static_cast<std::uint32_t>(text.find(':', at));
      auto& problem = report_.add(Code::head_in_method, {at, colon + 1}, "`" + std::string(row->word) + ":` stands among the steps and is read as words.");
      problem.find("`" + std::string(in_.slice(line)) + "`").expect("the line above `take:`, with the other heads");
      const bool said = std::any_of(recipe_.facts.begin(), recipe_.facts.end(), [&](const TextFact& one) { return one.field == row->field; }) ||
                        !seen_[static_cast<std::size_t>(row->field)].empty();
      const auto head = static_cast<std::uint32_t>(text.find('\n'));
      if (!said && part_ != kNone && part().unnamed && head < at) {
        const std::string between(text.substr(head + 1, at - head - 1));
        problem.fix({head + 1, end}, std::string(in_.slice(line)) + "\n" + between, "move it up");
      }
    }
    const auto next = static_cast<std::uint32_t>(std::min<std::size_t>(text.find('\n', at), text.size())) + 1;
    if (row == nullptr && column_one && end > at + 1 && text[end - 1] == ':' && next < step.end && begins_with_amount(text.substr(next))) {
      any = true;
      std::string name(trim(text.substr(at, end - at - 1)));
      for (std::string_view lead : {"for the ", "for "})
        if (lower(name).substr(0, lead.size()) == lead) name.erase(0, lead.size());
      if (!name.empty() && name[0] >= 'a' && name[0] <= 'z') name[0] = static_cast<char>(name[0] - 'a' + 'A');
      report_.add(Code::head_in_method, {at, end}, "A list stands among the steps and is read as words.")
          .find("`" + std::string(text.substr(at, end - at)) + "`")
          .expect("a part of its own: `part: " + name + "`, `take:` above its list and `method:` above its steps")
          .offer({at, end}, "part: " + name + "\ntake:", "write `part: " + name + "` and `take:`");
      recipe_.damaged.push_back(step);  // what is listed here was read by nobody
    }
    at = next;
  }
  return any;
}

// "[rest 1 h] in the fridge": nobody reads the place there, so no plan keeps it free (T14).
void Builder::places_outside(const Step& step) {
  for (Index i = step.pieces.first; i + 1 < step.pieces.end(); ++i) {
    const Piece &bracket = recipe_.pieces[i], &prose = recipe_.pieces[i + 1];
    if (bracket.kind != PieceKind::clause || prose.kind != PieceKind::prose || bracket.span.end != prose.span.begin) continue;
    const Clause& clause = recipe_.clauses[bracket.clause];
    if (clause.kind != ClauseKind::time || clause.place != Takes::nothing || clause.house_verb != nullptr || !clause.until.empty()) continue;
    const std::string_view text = in_.slice(prose.span);
    if (text.empty() || text.front() != ' ') continue;
    const Found found = Lexicon::standard().longest(text.substr(1), kPlaceWord);
    if (!found) continue;
    const ListWord* const word = list_word(WordList::place, found.row->text);
    const auto takes = static_cast<std::uint8_t>(word == nullptr ? 0 : word->value.over());
    constexpr unsigned kRooms = static_cast<unsigned>(Takes::oven) | static_cast<unsigned>(Takes::fridge) | static_cast<unsigned>(Takes::freezer);
    if ((takes & kRooms) == 0 || (verb(clause.verb).takes & takes) != 0) continue;  // a bake is in the oven as it is
    const std::string place(text.substr(1, found.size));
    const std::string mended = std::string(in_.slice({clause.span.begin, clause.span.end - 1})) + " " + place + "]";
    report_.add(Code::place_outside, {prose.span.begin + 1, prose.span.begin + 1 + found.size}, "The place stands behind its bracket, where no plan sees it.")
        .find("`" + place + "`").expect("`" + mended + "`")
        .fix({clause.span.end - 1, prose.span.begin + 1 + found.size}, " " + place + "]", "bring it in");
  }
}

}  // namespace qtn
