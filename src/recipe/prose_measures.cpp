// A measure outside the brackets is printed as written, and no plan or conversion sees it (T13).
#include <algorithm>

#include "recipe/builder.hpp"
#include "words/lexicon.hpp"

namespace qtn {
namespace {

// Reads "1 1/2 to 2 h", "1½ tsp", "20–25 minutes", "1 h 30 min", "gas 4" out of running words; no node is made.
class ProseMeasure {
 public:
  explicit ProseMeasure(std::string_view text) : text_(text) {}

  // The measure that begins here: where it ends, or 0.
  std::size_t at(std::size_t begin) {
    if (const std::size_t behind = keyword(begin, "gas"); behind != 0) {
      const std::size_t mark = keyword(blanks(behind), "mark");
      const std::size_t end = range(blanks(mark != 0 ? mark : behind));
      dimension_ = Dimension::temperature;
      return end;
    }
    std::size_t end = 0;
    for (std::size_t next = begin; (next = range(next)) != 0;) {
      const std::size_t unit = unit_end(blanks(next));
      if (unit == 0) break;
      end = unit;
      next = blanks(unit);
    }
    return end;
  }
  Dimension dimension() const { return dimension_; }

 private:
  bool digit(std::size_t at) const { return at < text_.size() && text_[at] >= '0' && text_[at] <= '9'; }
  std::size_t blanks(std::size_t at) const {
    while (at < text_.size() && text_[at] == ' ') ++at;
    return at;
  }
  std::size_t nat(std::size_t at) const {
    while (digit(at)) ++at;
    return at;
  }
  bool ends_word(std::size_t at) const { return at >= text_.size() || (letter_at(text_, at) == 0 && !digit(at)); }
  std::size_t keyword(std::size_t at, std::string_view word) const {
    if (at + word.size() > text_.size() || lower(text_.substr(at, word.size())) != word) return 0;
    return ends_word(at + word.size()) ? at + word.size() : 0;
  }
  std::size_t vulgar(std::size_t at) const {
    if (at >= text_.size() || static_cast<unsigned char>(text_[at]) < 0xC2) return 0;
    for (std::string_view sign : {"¼", "½", "¾", "⅐", "⅑", "⅒", "⅓", "⅔", "⅕", "⅖", "⅗", "⅘", "⅙", "⅚", "⅛", "⅜", "⅝", "⅞"})
      if (text_.substr(at, sign.size()) == sign) return at + sign.size();
    return 0;
  }
  std::size_t fraction(std::size_t at) const {
    const std::size_t stroke = nat(at);
    return stroke != at && stroke < text_.size() && text_[stroke] == '/' && digit(stroke + 1) ? nat(stroke + 1) : 0;
  }
  std::size_t number(std::size_t at) const {
    if (const std::size_t end = vulgar(at)) return end;
    if (!digit(at)) return 0;
    if (const std::size_t end = fraction(at)) return end;
    const std::size_t whole = nat(at);
    if (whole < text_.size() && text_[whole] == '.' && digit(whole + 1)) return nat(whole + 1);
    if (const std::size_t end = vulgar(blanks(whole))) return end;
    if (const std::size_t end = blanks(whole) == whole ? 0 : fraction(blanks(whole))) return end;
    return whole;
  }
  std::size_t range(std::size_t at) const {
    const std::size_t low = number(at);
    if (low == 0) return 0;
    std::size_t joint = keyword(blanks(low), "to");
    for (std::string_view dash : {"-", "–", "—"})
      if (text_.substr(std::min(blanks(low), text_.size()), dash.size()) == dash) joint = blanks(low) + dash.size();
    const std::size_t high = joint == 0 ? 0 : number(blanks(joint));
    return high != 0 ? high : low;
  }
  std::size_t unit_end(std::size_t at) {
    if (at >= text_.size()) return 0;
    const std::size_t scale = text_.substr(at, 2) == "°" ? blanks(at + 2) : at;
    if (scale < text_.size() && (text_[scale] == 'C' || text_[scale] == 'F') && ends_word(scale + 1)) {
      dimension_ = Dimension::temperature;
      for (const std::string_view word : {"fan", "convection"})
        if (const std::size_t end = keyword(blanks(scale + 1), word); end != 0) return end;
      return scale + 1;
    }
    const Found found = Lexicon::standard().longest(text_.substr(at), kUnitWord);
    if (!found) return 0;
    dimension_ = unit(found.row->unit).dimension;
    return at + found.size;
  }

  std::string_view text_;
  Dimension dimension_ = Dimension::count;
};

// "until it is 3 cm high": a sign that the cook looks for.
bool is_sign(std::string_view text, std::size_t at) {
  constexpr std::size_t kReach = 200;  // no sentence of a recipe is longer, and a long text stays linear
  const std::string_view said = text.substr(at > kReach ? at - kReach : 0, std::min(at, kReach));
  const std::size_t before = said.rfind("until ");
  return before != std::string_view::npos && said.find(". ", before) == std::string_view::npos;
}

// "about 20 minutes": the manner belongs to the amount.
std::size_t with_manner(std::string_view text, std::size_t at) {
  for (std::string_view manner : {"about ", "at least ", "at most ", "exactly "})
    if (at >= manner.size() && lower(text.substr(at - manner.size(), manner.size())) == manner &&
        (at == manner.size() || text[at - manner.size() - 1] == ' '))
      return at - manner.size();
  return at;
}

}  // namespace

void Builder::prose_measures(const Step& one) {
  for (Index i = one.pieces.first; i < one.pieces.end(); ++i) {
    if (recipe_.pieces[i].kind != PieceKind::prose) continue;
    const Span span = recipe_.pieces[i].span;
    const std::string_view text = in_.slice(span);
    for (std::size_t at = 0; at < text.size(); ++at) {
      const auto c = static_cast<unsigned char>(text[at]);
      if (!((c >= '0' && c <= '9') || c == 0xC2 || c == 0xE2 || (c | 32) == 'g') || (at > 0 && text[at - 1] != ' ' && text[at - 1] != '(')) continue;
      ProseMeasure measure(text);
      const std::size_t end = measure.at(at);
      if (end == 0) continue;
      const Dimension dimension = measure.dimension();
      if (!is_sign(text, at) && dimension != Dimension::count && dimension != Dimension::ratio) {
        const std::size_t begin = with_manner(text, at);
        measure_outside({span.begin + static_cast<std::uint32_t>(begin), span.begin + static_cast<std::uint32_t>(end)}, dimension);
      }
      at = end - 1;
    }
  }
}

// In 10 mm dice, at 20 °C, in pieces of 50 g: it converts on a card and never scales (T15).
void Builder::measure_in(Tail& preparation) {
  const std::string_view text = in_.slice(preparation.span);
  if (text.find_first_of("0123456789") == std::string_view::npos) return;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (at > 0 && text[at - 1] != ' ' && text[at - 1] != '(') continue;
    ProseMeasure measure(text);
    const std::size_t end = text[at] >= '0' && text[at] <= '9' ? measure.at(at) : 0;
    if (end == 0) continue;
    const Dimension dimension = measure.dimension();
    if (dimension != Dimension::length && dimension != Dimension::temperature && dimension != Dimension::mass) continue;
    const Span span{preparation.span.begin + static_cast<std::uint32_t>(at), preparation.span.begin + static_cast<std::uint32_t>(end)};
    Tree alone;
    if (in_.source.text()[span.begin - 1] != ' ') return;  // the words behind a verb begin with their blank
    if (!parse_action(in_.source.text(), {span.begin - 1, span.end}, alone) || !View(alone, 0).has(Kind::amt)) return;
    Report unsaid;
    Reading in{in_.source, unsaid, in_.dialect, {}};
    const ReadAmount read = read_amount(in, View(alone, 0).first(Kind::amt), Place::clause);
    if (!read.damaged && !unsaid.has_errors()) preparation.amount = read.amount, preparation.amount_span = span;
    return;
  }
}

// A time, a temperature or a length is a clause of its own; an amount wants the name of what it is of, which only the writer knows.
void Builder::measure_outside(Span found, Dimension dimension) {
  const std::string words(in_.slice(found));
  const bool timed = dimension == Dimension::duration || dimension == Dimension::temperature;
  auto& problem = report_.add(Code::measure_in_prose, timed ? Severity::warning : Severity::note, found, "This measure stands outside the brackets.");
  problem.find("`" + words + "`");
  if (!timed && dimension != Dimension::length) {
    problem.expect("a bracket with the name of what it is of: `[" + words + " of the milk]`");
    return;
  }
  problem.expect("`[" + words + "]`, so that it is checked, converted and planned with").fix(found, "[" + words + "]", "bracket it");
}

}  // namespace qtn
