#include "recipe/sentences.hpp"

namespace qtn {
namespace {

bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

}  // namespace

bool ends_sentence(std::string_view text, std::size_t at) {
  if (text[at] != '.' && text[at] != '!' && text[at] != '?') return false;
  std::size_t next = at + 1;
  if (next >= text.size()) return true;
  if (text[next] != ' ' && text[next] != '\n' && text[next] != '\r') return false;
  while (next < text.size() && (text[next] == ' ' || text[next] == '\n' || text[next] == '\r')) ++next;
  return next >= text.size() || text[next] == '[' || (text[next] >= 'A' && text[next] <= 'Z');
}

std::vector<Sentence> sentences_of(const Recipe& recipe, const Step& step) {
  std::vector<Sentence> out;
  if (step.pieces.empty()) return out;
  // The words of the step, without its opener; up to the end of what was written, so that a look ahead stays inside.
  const Piece &first = recipe.pieces[step.pieces.first], &last = recipe.pieces[step.pieces.end() - 1];
  const std::string_view text = recipe.text.substr(0, last.span.end);
  Sentence now{{first.span.begin, first.span.begin}, {step.clauses.first, 0}};
  const auto close = [&](std::uint32_t end) {
    now.span.end = end;
    while (now.span.begin < now.span.end && is_blank(text[now.span.begin])) ++now.span.begin;
    while (now.span.end > now.span.begin && is_blank(text[now.span.end - 1])) --now.span.end;
    if (now.span.end > now.span.begin) out.push_back(now);
    now = {{end, end}, {now.clauses.end(), 0}};
  };
  for (Index p = step.pieces.first; p < step.pieces.end(); ++p) {
    const Piece& piece = recipe.pieces[p];
    if (piece.kind == PieceKind::clause) {
      ++now.clauses.count;
      continue;
    }
    for (std::uint32_t at = piece.span.begin; at < piece.span.end; ++at)
      if (ends_sentence(text, at)) close(at + 1);
  }
  close(last.span.end);
  return out;
}

}  // namespace qtn
