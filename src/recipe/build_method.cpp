// Steps: openers, prose between clauses, and what prose says that a plan would miss.
#include <algorithm>

#include "base/scan.hpp"
#include "recipe/builder.hpp"
#include "recipe/sentences.hpp"
#include "words/lexicon.hpp"

namespace qtn {

void Builder::method_block(View block) {
  const Field which = field_of(block.value());
  const Index part_before = part_;
  AfterBlock after{which, {static_cast<Index>(recipe_.steps.size()), 0}};
  if (in_after_) part_ = kNone;
  else part().has_method = true;
  bool any = false;
  std::vector<Opened> opened;
  for (View at : block) {
    if (at.kind() == Kind::step) {
      step(at);
      any = true;
      opened.push_back({recipe_.steps.back().kind, at.first(Kind::word).span()});
    }
    if (at.kind() == Kind::note) {
      Step note;
      note.kind = StepKindOf::note;
      note.span = at.span();
      note.part = part_;
      note.pieces = {static_cast<Index>(recipe_.pieces.size()), 1};
      recipe_.pieces.push_back({PieceKind::prose, true, true, at.span(), kNone});
      recipe_.steps.push_back(note);
      any = true;
      if (part_ != kNone) ++part().steps.count;
    }
  }
  if (!any)
    report_.add(Code::empty_block, block.first(Kind::word).span(), "There is nothing under `" + std::string(row(which).word) + ":`.")
        .expect("at least one step in words");
  if (!any && !in_after_) part().disturbed = true;  // that no step takes the list is no second fault
  openers(opened);
  after.steps.count = static_cast<Index>(recipe_.steps.size()) - after.steps.first;
  if (in_after_) recipe_.after.push_back(after);
  part_ = part_before;
}

// `ahead:` ends when the next step begins, so there must be one; two ways of one step stand behind one another (H2).
void Builder::openers(const std::vector<Opened>& opened) {
  if (!opened.empty() && opened.back().kind == StepKindOf::ahead)
    report_.add(Code::opener_out_of_place, opened.back().word, "There is no step behind this one that it could be ready for.")
        .expect("`ahead:` before the step that it must be done by");
  const auto way = [&](std::size_t i) { return opened[i].kind == StepKindOf::by_hand || opened[i].kind == StepKindOf::by_machine; };
  for (std::size_t first = 0; first < opened.size(); ++first) {
    if (!way(first)) continue;
    std::size_t end = first;
    bool both = false;
    for (; end < opened.size() && way(end); ++end) both = both || opened[end].kind != opened[first].kind;
    const bool hand = opened[first].kind == StepKindOf::by_hand;
    if (!both)
      report_.add(Code::one_way_only, opened[first].word, "The other way of this step is not here.")
          .find(hand ? "`by hand:` alone" : "`by machine:` alone")
          .expect(hand ? "a step `by machine:` right behind it or before it" : "a step `by hand:` right behind it or before it");
    first = end - 1;
  }
}

void Builder::step(View at) {
  Step one;
  one.kind = static_cast<StepKindOf>(at.value() & 0xFF);
  one.span = at.span();
  one.part = part_;
  one.pieces.first = static_cast<Index>(recipe_.pieces.size());
  one.clauses.first = static_cast<Index>(recipe_.clauses.size());
  if ((at.value() & kMisspelt) != 0) {
    constexpr Field kOpeners[] = {Field::none, Field::meanwhile, Field::ahead, Field::by_hand, Field::by_machine};
    const Span word = at.first(Kind::word).span();
    const std::string meant(row(kOpeners[static_cast<std::size_t>(one.kind)]).word);
    report_.add(Code::unknown_field, word, "`" + std::string(in_.slice(word)) + ":` is not a field; did you mean `" + meant + ":`?")
        .fix(word, meant, "write `" + meant + ":`");
  }
  std::uint32_t last = one.span.begin;
  for (View child : at) {
    const bool new_line = in_.slice({last, child->begin}).find('\n') != std::string_view::npos;
    last = child->end;
    switch (child.kind()) {
      case Kind::prose: recipe_.pieces.push_back({PieceKind::prose, child.value() != 0, new_line, child.span(), kNone}); break;
      case Kind::link: {
        recipe_.pieces.push_back({PieceKind::link, true, new_line, child.span(), kNone});
        const std::string_view text = in_.slice(child.span());
        const std::string_view target = text.substr(text.find("](") + 2);
        if (target.find_first_of("/.#:") == std::string_view::npos)
          report_.add(Code::reads_as_link, child.span(), "A bracket with a `(` right behind it reads as a link.")
              .find("`" + std::string(text) + "`").expect("a blank before the `(` if the bracket is a clause")
              .fix({child->begin + static_cast<std::uint32_t>(text.find("](")) + 1, child->begin + static_cast<std::uint32_t>(text.find("](")) + 1}, " ", "put a blank before `(`");
        break;
      }
      case Kind::bracket:
        recipe_.pieces.push_back({PieceKind::clause, false, new_line, child.span(), static_cast<Index>(recipe_.clauses.size())});
        clause(child);
        break;
      case Kind::open_bracket:
        report_.add(Code::open_bracket, child.span(), "This bracket is not closed.")
            .find("`[` without its `]`").expect("a `]` on this line or the next, before another `[`")
            .offer(child.span(), "\\[", "write `\\[` for a plain bracket");
        recipe_.pieces.push_back({PieceKind::prose, true, new_line, child.span(), kNone});
        if (part_ != kNone) part().disturbed = true;
        break;
      default: break;
    }
  }
  one.pieces.count = static_cast<Index>(recipe_.pieces.size()) - one.pieces.first;
  one.clauses.count = static_cast<Index>(recipe_.clauses.size()) - one.clauses.first;
  const Index index = static_cast<Index>(recipe_.steps.size());
  for (Index i = one.clauses.first; i < one.clauses.end(); ++i) recipe_.clauses[i].step = index;
  const bool by_hand_number = one.pieces.count != 0 && recipe_.pieces[one.pieces.first].kind == PieceKind::prose;
  if (by_hand_number) {
    const Span first = recipe_.pieces[one.pieces.first].span;
    const std::string_view text = in_.slice(first);
    std::size_t digits = 0;
    while (digits < text.size() && text[digits] >= '0' && text[digits] <= '9') ++digits;
    if (digits != 0 && digits < 4 && digits + 1 < text.size() && (text[digits] == '.' || text[digits] == ')') && text[digits + 1] == ' ')
      report_.add(Code::numbered_by_hand, {first.begin, first.begin + static_cast<std::uint32_t>(digits) + 1}, "The card numbers its steps itself.")
          .find("`" + std::string(text.substr(0, digits + 1)) + "`").expect("the step's words alone; a blank line parts two steps")
          .fix({first.begin, first.begin + static_cast<std::uint32_t>(digits) + 2}, "", "leave the number out");
  }
  // Where a bracket lost its end nobody can tell what was meant to stand outside, nor where its end turns up.
  const std::string_view whole = in_.slice(one.span);
  const bool goes_on = left_open_ && whole.find(']') < whole.find('[');
  left_open_ = at.has(Kind::open_bracket);
  if (!left_open_ && !goes_on && !heads_among_steps(one.span)) prose_measures(one), places_outside(one);
  recipe_.steps.push_back(one);
  if (part_ != kNone) {
    Part& mine = part();
    if (one.kind == StepKindOf::meanwhile && mine.steps.count == 0)
      report_.add(Code::opener_out_of_place, at.first(Kind::word).span(), "There is no step before this one that it could stand beside.")
          .expect("`meanwhile:` after the step that it goes on beside");
    ++mine.steps.count;
  }
}

// The nearest listed verb before a clause in its sentence (semantics part 11); "work" when there is none.
void Builder::nearest_verb(Clause& clause) {
  std::uint32_t begin = clause.span.begin;
  for (Index i = static_cast<Index>(recipe_.pieces.size()); i-- > 0;) {
    const Piece& piece = recipe_.pieces[i];
    if (piece.span.begin > clause.span.begin) continue;
    begin = piece.span.begin;
    if (clause.span.begin - begin > 600) break;
    if (i == 0 || recipe_.pieces[i - 1].span.end + 400 < piece.span.begin) break;
    const std::string_view between = in_.slice({recipe_.pieces[i - 1].span.end, piece.span.begin});
    if (between.find(':') != std::string_view::npos || std::count(between.begin(), between.end(), '\n') > 1) break;
  }
  const std::string_view text = in_.slice({begin, clause.span.begin});
  std::size_t sentence = 0;
  for (std::size_t i = 0; i + 1 < text.size(); ++i)
    if (ends_sentence(text, i)) sentence = i + 1;
  bool word_start = true, may_be_noun_verb = true;
  for (std::size_t i = sentence; i < text.size(); ++i) {
    const bool letter = letter_at(text, i) != 0;
    if (letter && word_start) {
      const Found found = Lexicon::standard().longest(text.substr(i), kVerbForm | kVerbWord);
      if (found && (!found.row->noun || may_be_noun_verb)) clause.verb = found.row->verb;
      std::size_t end = i;
      while (end < text.size() && (letter_at(text, end) != 0 || text[end] == '-' || text[end] == '\'')) ++end;
      const std::string word = lower(text.substr(i, end - i));
      may_be_noun_verb = word == "and" || word == "or" || word == "then" || word == "to" || word == "is" || word == "are";
      i = end;
      if (i < text.size() && (text[i] == ',' || text[i] == '[' || text[i] == ';')) may_be_noun_verb = true;
      word_start = true;
      continue;
    }
    if (text[i] == ',' || text[i] == '[' || text[i] == ';' || text[i] == ':') may_be_noun_verb = true;
    word_start = !letter;
  }
}

}  // namespace qtn
