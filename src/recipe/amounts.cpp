#include "recipe/amounts.hpp"

#include <algorithm>

#include "words/lexicon.hpp"

namespace qtn {
namespace {

using Token = AmountToken;

class AmountReader {
 public:
  AmountReader(Reading& in, Place place) : in_(in), place_(place), tokens_(in.tokens) { tokens_.clear(); }

  ReadAmount read(View amt) {
    result_.span = amt.span();
    for (View child : amt) token(child);
    finish();
    return result_;
  }

  ReadAmount read_from(View node) {
    bool begun = false;
    for (View child : node) {
      if (!begun && child.kind() != Kind::number && child.kind() != Kind::number_word) continue;
      if (!begun) result_.span = child.span();
      begun = true;
      if (!is_token(child.kind())) break;
      token(child);
      result_.span.end = child->end;
    }
    finish();
    return result_;
  }

 private:
  static bool is_token(Kind kind) { return kind >= Kind::number && kind <= Kind::to; }

  void token(View at) {
    switch (at.kind()) {
      case Kind::about: result_.amount.manner = Manner::about; break;
      case Kind::exactly: result_.amount.manner = Manner::exactly; break;
      case Kind::at_least: result_.amount.manner = Manner::at_least; break;
      case Kind::at_most:
        if (tokens_.empty()) result_.amount.manner = Manner::at_most;
        else between_ = true, begin_high();
        break;
      case Kind::number:
      case Kind::number_word:
      case Kind::half:
      case Kind::article:
      case Kind::clock_length: number(at); break;
      case Kind::minus: minus_ = at.span(); break;
      case Kind::to: begin_high(); break;
      case Kind::gas: gas_ = at.span(); break;
      case Kind::fan: if (begun()) tokens_.back().fan = true; break;
      case Kind::count_noun:
        if (begun() && tokens_.back().has_unit) break;  // 400 g tins: the noun of a pack, not its unit
        [[fallthrough]];
      case Kind::unit: unit(Lexicon::standard().row(at.value()).unit, at.span()); break;
      case Kind::celsius: scale(common().celsius, at); break;
      case Kind::fahrenheit: scale(common().fahrenheit, at); break;
      case Kind::percent: unit(common().percent, at.span()); break;
      case Kind::inch_word: inch(at); break;
      case Kind::bare_degree: bare_degree(at); break;
      case Kind::look_alike: look_alike(at); break;
      default: break;
    }
  }

  // The tokens of the low end stand first, those of the high end behind them.
  void begin_high() {
    if (!high_begun_) high_at_ = tokens_.size();
    high_begun_ = true;
  }
  bool begun() const { return tokens_.size() > (high_begun_ ? high_at_ : 0); }
  std::span<Token> lows() { return std::span(tokens_).first(high_begun_ ? high_at_ : tokens_.size()); }
  std::span<Token> highs() { return std::span(tokens_).subspan(high_begun_ ? high_at_ : tokens_.size()); }

  void number(View at) {
    Token token;
    token.span = at.span();
    token.value = read_number(in_, at);
    if (token.value.is_lost()) result_.damaged = true;
    if (at.kind() == Kind::clock_length) token.unit = common().minute, token.has_unit = true;
    if (minus_) token.value = -token.value, token.span.begin = minus_->begin;
    if (gas_) token.unit = common().gas, token.has_unit = true, token.unit_span = *gas_;
    if (minus_) negative_ = Span{minus_->begin, at->end};
    minus_.reset();
    tokens_.push_back(token);
  }

  void unit(UnitId id, Span span) {
    if (!begun()) return;
    Token& last = tokens_.back();
    last.unit = id;
    last.has_unit = true;
    last.unit_span = span;
    last.span.end = span.end;
  }

  void scale(UnitId id, View at) {
    const std::string_view text = in_.slice(at.span());
    if (text.size() == 1 && (place_ == Place::list || place_ == Place::tail)) return look_alike(at);
    unit(id, at.span());
  }

  void inch(View at) {
    unit(common().inch, at.span());
    if (in_.slice(at.span()) != "in" || place_ == Place::tin || place_ == Place::clause) return;
    in_.report.add(Code::inch_out_of_place, at.span(), "`in` after a number is read as inches only for tins and measures.")
        .find("`in`").expect("a unit such as g, ml or tbsp")
        .offer(at.span(), "inch", "write `inch` if a length is meant");
    result_.damaged = true;
  }

  void bare_degree(View at) {
    unit(common().celsius, at.span());
    result_.damaged = true;
    const Fraction value = begun() ? tokens_.back().value : Fraction();
    const std::string number = write_number(value, false, true);
    in_.report.add(Code::degree_without_scale, at.span(), number + "° does not say which scale it is in.")
        .expect(number + " °C (" + from_celsius(value, common().fahrenheit).decimal(0) + " °F) or " + number + " °F (" +
                to_celsius(value, common().fahrenheit).decimal(0) + " °C)")
        .offer(at.span(), " °C", "write `" + number + " °C`")
        .offer(at.span(), " °F", "write `" + number + " °F`");
  }

  bool heat_before_time(Dimension a, Dimension b, Span heat, Span time);
  void look_alike(View at);
  void finish();
  void fold(std::span<const Token> tokens, Quantity& out, bool high);
  void ambiguous(const Token& token);
  void check_range();

  Reading& in_;
  Place place_;
  ReadAmount result_;
  std::vector<Token>& tokens_;
  std::size_t high_at_ = 0;
  bool high_begun_ = false, between_ = false;
  std::optional<Span> minus_, gas_;
  std::optional<Span> negative_;
};

struct Candidate {
  std::string_view written, reading, spelling;
};
// What a one-letter or look-alike word could be; sizes are those of the unit table's sources.
constexpr Candidate kCandidates[] = {
    {"c", "a cup: 236.6 ml American, 250 ml Australian", "cup"},
    {"t", "a teaspoon: 5 ml British, 4.9 ml American", "tsp"},
    {"T", "a tablespoon: 15 ml British, 14.8 ml American, 20 ml Australian", "tbsp"},
    {"tb", "a tablespoon: 15 ml British, 14.8 ml American, 20 ml Australian", "tbsp"},
    {"tbs", "a tablespoon: 15 ml British, 14.8 ml American, 20 ml Australian", "tbsp"},
    {"tblsp", "a tablespoon: 15 ml British, 14.8 ml American, 20 ml Australian", "tbsp"},
    {"pts", "pints: 568 ml British, 473 ml American; or points, or parts", "pints"},
    {"ltr", "a litre", "l"},
    {"gr", "grams; or grains, of 0.065 g", "g"},
    {"gm", "grams", "g"},
    {"gms", "grams", "g"},
    {"ozs", "ounces", "oz"},
    {"L", "a litre, written `l`", "l"},
    {"G", "grams, written `g`", "g"},
    {"H", "hours, written `h`", "h"},
    {"S", "seconds, written `s`", "s"},
    {"m", "metres, minutes or millilitres", ""},
    {"M", "metres, minutes or millilitres", ""},
    {"F", "degrees Fahrenheit, which no ingredient is measured in", ""},
};

void AmountReader::look_alike(View at) {
  result_.damaged = true;
  std::string_view word = in_.slice(at.span());
  const Candidate* found = nullptr;
  for (const Candidate& row : kCandidates)
    if (row.written == word || (word.size() > 1 && same_letters(row.written, word))) found = &row;
  if (found == nullptr && word == "C") found = &kCandidates[0];
  unit(kNoUnit, at.span());
  const bool only_case = word.size() == 1 && (word == "L" || word == "G" || word == "H" || word == "S");
  auto& problem = in_.report.add(Code::look_alike_unit, at.span(),
                                 "`" + std::string(word) + "` after a number is not a unit that every reader takes for the same.");
  if (found == nullptr) return;
  problem.expect("a unit in full; it could be " + std::string(found->reading)).find("`" + std::string(word) + "`");
  if (found->spelling.empty()) return;
  const bool certain = only_case || word == "ltr" || word == "gm" || word == "gms" || word == "ozs";
  if (certain) problem.fix(at.span(), std::string(found->spelling), "write `" + std::string(found->spelling) + "`");
  else problem.offer(at.span(), std::string(found->spelling), "write `" + std::string(found->spelling) + "`");
}

void AmountReader::ambiguous(const Token& token) {
  const Unit& row = qtn::unit(token.unit);
  if (!size_of(token.unit, in_.dialect).is_lost() || row.dimension == Dimension::temperature) return;
  const std::string word = "`" + std::string(in_.slice(token.unit_span)) + "`";
  const bool anybodys = std::any_of(std::begin(row.size), std::end(row.size), [](const Fraction& size) { return !size.is_lost(); });
  if (in_.dialect == Dialect::unstated && anybodys) {
    if (std::find(in_.warned.begin(), in_.warned.end(), token.unit) != in_.warned.end()) return;
    in_.warned.push_back(token.unit);
    in_.unsure.push_back({token.unit, token.unit_span, in_.report.list().size()});
    in_.report.add(Code::ambiguous_unit, token.unit_span,
                   word + " has more than one size, and this file does not say whose measures it uses.")
        .expect("a line `measures: British`, `measures: American` or `measures: Australian` in the head")
        .find("one " + std::string(row.name) + " is " + readings_of(token.unit));
    return;
  }
  result_.damaged = true;
  const std::string where = anybodys ? " in " + std::string(name_of(in_.dialect)) + " measures." : "; books disagree on it.";
  in_.report.add(Code::no_such_measure, token.unit_span, word + " has no one size" + where)
      .expect("a weight, millilitres, or a measure with its country: `US cup`, `metric cup`")
      .find((anybodys ? "one " + std::string(row.name) + " is " : "it could be ") + readings_of(token.unit));
}

// Falling units of one dimension, folded into the first: 2 lb 3 oz is 2 3/16 lb.
void AmountReader::fold(std::span<const Token> tokens, Quantity& out, bool high) {
  const Token& first = tokens.front();
  Fraction sum = first.value;
  out.unit = first.unit;
  out.fan = out.fan || first.fan;
  const Fraction size = tokens.size() > 1 ? size_of(first.unit, in_.dialect) : Fraction(1);
  Fraction before = size;
  for (std::size_t i = 1; i < tokens.size(); ++i) {
    const Token& token = tokens[i];
    const Fraction one = size_of(token.unit, in_.dialect);
    const Dimension a = qtn::unit(first.unit).dimension, b = qtn::unit(token.unit).dimension;
    if (a != b || a == Dimension::temperature || (!one.is_lost() && !before.is_lost() && one >= before)) {
      result_.damaged = true;
      if (heat_before_time(a, b, first.span, token.span)) break;
      in_.report.add(Code::mixed_compound, {first.span.begin, token.span.end},
                     a != b ? "These two amounts cannot be added: one is a " + std::string(name_of(a)) + ", the other a " + std::string(name_of(b)) + "."
                     : a == Dimension::temperature ? "Temperatures cannot be added to one another."
                                                   : "In an amount of two units the larger comes first.")
          .find("`" + std::string(in_.slice({first.span.begin, token.span.end})) + "`")
          .expect("one unit, or two of one kind with the larger first, such as `2 lb 3 oz`");
      break;
    }
    before = one;
    sum += one.is_lost() || size.is_lost() ? Fraction::lost() : token.value * one / size;
  }
  (high ? out.high : out.low) = sum;
}

// [bake 180 °C 20 min]: which belongs together is plain, but a clause says the time first and the heat behind `at`.
bool AmountReader::heat_before_time(Dimension a, Dimension b, Span heat, Span time) {
  if (a != Dimension::temperature || b != Dimension::duration || place_ != Place::clause) return false;
  const Span both{heat.begin, time.end};
  const bool behind_at = heat.begin >= 3 && in_.slice({heat.begin - 3, heat.begin}) == "at ";
  const std::string mended = std::string(in_.slice(time)) + " at " + std::string(in_.slice(heat));
  const std::string_view before = in_.source.text().substr(0, heat.begin);
  if (before.find_first_of("0123456789", before.rfind('[')) != std::string_view::npos) {  // [bake 20 min at 180 °C 30 min]
    in_.report.add(Code::second_time, time, "A second time stands in one bracket.").find("`" + std::string(in_.slice(time)) + "`").expect("a bracket for each time");
    return true;
  }
  const Span whole{behind_at ? heat.begin - 3 : heat.begin, time.end};
  in_.report.add(Code::mixed_compound, both, "A heat and a time run into each other.").find("`" + std::string(in_.slice(both)) + "`")
      .expect("the time first, then `at` and the heat: `" + mended + "`").offer(whole, mended, "write `" + mended + "`");
  return true;
}

void AmountReader::check_range() {
  Quantity& q = result_.amount;
  const Ends ends = in_base(q, in_.dialect);
  if (ends.low.is_lost() || ends.high.is_lost()) return;
  const std::string_view text = in_.slice(result_.span);
  if (ends.high < ends.low) {
    auto& problem = in_.report.add(Code::falling_range, result_.span, "This range runs from the larger to the smaller.");
    problem.find("`" + std::string(text) + "`").expect("the smaller number first");
    const Token &a = lows().back(), &b = highs().back();
    if (lows().size() == 1 && highs().size() == 1 && !between_) {
      const auto number = [&](const Token& t) { return std::string(in_.slice({t.span.begin, t.has_unit && t.unit_span.begin > t.span.begin ? t.unit_span.begin : t.span.end})); };
      std::string left = number(b), right = number(a);
      while (!left.empty() && left.back() == ' ') left.pop_back();
      while (!right.empty() && right.back() == ' ') right.pop_back();
      const std::string unit_text = b.has_unit ? " " + std::string(in_.slice(b.unit_span)) : "";
      if (!a.has_unit || a.unit == b.unit) problem.fix({a.span.begin, b.span.end}, left + " to " + right + unit_text, "swap the two ends");
    }
    result_.damaged = true;  // which end is the slip only the writer knows
  } else if (ends.high == ends.low && !between_) {
    in_.report.add(Code::equal_range, result_.span, "Both ends of this range are the same.")
        .find("`" + std::string(text) + "`").expect("one number, or two that differ");
  }
}

void AmountReader::finish() {
  const std::span<Token> first = lows(), second = highs();
  if (first.empty()) {
    result_.damaged = true;
    return;
  }
  Quantity& q = result_.amount;
  for (const Token& token : tokens_)
    if (token.has_unit) ambiguous(token);
  if (second.empty()) {
    fold(first, q, false);
    q.high = q.low;
  } else {
    // The second end's unit serves both; ends of two kinds are a length and its sign (20 min to 40 °C).
    if (!first.back().has_unit && first.size() == 1) first.back().unit = second.front().unit;
    Quantity low, high;
    fold(first, low, false);
    fold(second, high, true);
    q.fan = low.fan || high.fan;
    q.unit = low.unit;
    q.low = low.low;
    const Dimension a = low.dimension(), b = high.dimension();
    if (a == Dimension::duration && b == Dimension::temperature && !between_) {
      q.high = q.low;
      Quantity sign = high;
      sign.low = sign.high;
      result_.sign = sign;
      result_.sign_span = {second.front().span.begin, second.back().span.end};
    } else if (a != b) {
      result_.damaged = true;
      in_.report.add(Code::mixed_range, result_.span,
                     "The two ends of this range are a " + std::string(name_of(a)) + " and a " + std::string(name_of(b)) + ".")
          .find("`" + std::string(in_.slice(result_.span)) + "`").expect("two amounts of one kind");
      q.high = q.low;
    } else {
      q.high = high.high;
      if (high.unit != low.unit) {
        const Fraction from = size_of(high.unit, in_.dialect), to = size_of(low.unit, in_.dialect);
        q.high = a == Dimension::temperature ? from_celsius(to_celsius(high.high, high.unit), low.unit)
                                             : high.high * from / to;
      }
      if (between_) q.manner = Manner::plain;
      if (!result_.damaged) check_range();
    }
  }
  if (negative_ && q.dimension() != Dimension::temperature) {
    result_.damaged = true;
    in_.report.add(Code::below_zero, *negative_, "Only a temperature can be below zero.")
        .find("`" + std::string(in_.slice(*negative_)) + "`").expect("an amount of 0 or more; a range is written with `to`");
  }
  if (q.is_lost() && !result_.damaged) {
    const bool unsized_unit = std::any_of(first.begin(), first.end(), [&](const Token& t) { return size_of(t.unit, in_.dialect).is_lost(); });
    result_.damaged = true;
    if (!unsized_unit) in_.report.add(Code::number_too_long, result_.span, "This amount is too large to be reckoned with exactly.")
        .find("`" + std::string(in_.slice(result_.span)) + "`").expect("a number of at most 18 digits");
  }
}

struct Digits {
  Fraction value;
  int count = 0;
};

Digits digits(std::string_view text, std::size_t& at) {
  Digits out;
  std::int64_t value = 0;
  while (at < text.size() && text[at] >= '0' && text[at] <= '9') {
    if (++out.count <= 18) value = value * 10 + (text[at] - '0');
    ++at;
  }
  out.value = out.count > 18 ? Fraction::lost() : Fraction(value);
  return out;
}

struct Vulgar {
  std::string_view sign;
  int over, under;
};
constexpr Vulgar kVulgars[] = {
    {"¼", 1, 4}, {"½", 1, 2}, {"¾", 3, 4}, {"⅐", 1, 7}, {"⅑", 1, 9}, {"⅒", 1, 10}, {"⅓", 1, 3}, {"⅔", 2, 3}, {"⅕", 1, 5},
    {"⅖", 2, 5}, {"⅗", 3, 5}, {"⅘", 4, 5}, {"⅙", 1, 6}, {"⅚", 5, 6}, {"⅛", 1, 8}, {"⅜", 3, 8}, {"⅝", 5, 8}, {"⅞", 7, 8}, {"↉", 0, 3}};

Fraction vulgar(std::string_view text, std::size_t at) {
  for (const Vulgar& row : kVulgars)
    if (text.substr(at, row.sign.size()) == row.sign) return Fraction::of(row.over, row.under);
  return Fraction::lost();
}

Fraction too_long(Reading& in, View number) {
  in.report.add(Code::number_too_long, number.span(), "This number is too long to be reckoned with exactly.")
      .expect("a number of at most 18 digits");
  return Fraction::lost();
}

Fraction over(Reading& in, View number, const Digits& top, const Digits& bottom) {
  if (top.value.is_lost() || bottom.value.is_lost()) return too_long(in, number);
  if (!bottom.value.is_zero()) return top.value / bottom.value;
  in.report.add(Code::over_zero, number.span(), "Nothing can be divided into 0 parts.")
      .find("`" + std::string(in.slice(number.span())) + "`").expect("a fraction such as 1/2");
  return Fraction::lost();
}

std::size_t slash_at(std::string_view text, std::size_t at) {
  if (text.substr(at, 1) == "/") return 1;
  return text.substr(at, 3) == "⁄" ? 3 : 0;
}

}  // namespace

Fraction read_number(Reading& in, View number) {
  const std::string_view text = in.slice(number.span());
  switch (number.kind()) {
    case Kind::half: return Fraction::of(1, 2);
    case Kind::article: return Fraction(1);
    case Kind::number_word: return Lexicon::standard().row(number.value()).value;
    default: break;
  }
  std::size_t at = 0;
  if (text[0] < '0' || text[0] > '9') return vulgar(text, 0);
  const Digits whole = digits(text, at);
  if (at == text.size()) return whole.value.is_lost() ? too_long(in, number) : whole.value;
  if (text[at] == 'h') {  // 1h30
    const Digits minutes = digits(text, ++at);
    return whole.value * Fraction(60) + minutes.value;
  }
  if (text[at] == '.') {
    const Digits part = digits(text, ++at);
    Fraction tens(1);
    for (int i = 0; i < part.count && i < 19; ++i) tens *= Fraction(10);
    return whole.count + part.count > 18 ? too_long(in, number) : whole.value + part.value / tens;
  }
  if (const std::size_t slash = slash_at(text, at); slash != 0) {
    at += slash;
    return over(in, number, whole, digits(text, at));
  }
  if (whole.value.is_lost()) return too_long(in, number);
  const bool hyphen = text[at] == '-';
  while (at < text.size() && (text[at] < '0' || text[at] > '9') && vulgar(text, at).is_lost()) ++at;
  if (at < text.size() && (text[at] < '0' || text[at] > '9')) return whole.value + vulgar(text, at);
  const std::size_t fraction_at = at;
  const Digits top = digits(text, at);
  at += slash_at(text, at);
  const Fraction part = over(in, number, top, digits(text, at));
  if (hyphen && !part.is_lost()) {
    const std::string mended = std::string(text.substr(0, text.find('-'))) + " " + std::string(text.substr(fraction_at));
    in.report.add(Code::mixed_with_hyphen, number.span(), "This is read as a mixed number, " + mended + ", not as a range.")
        .find("`" + std::string(text) + "`").expect("a blank between the whole number and the fraction")
        .fix(number.span(), mended, "write `" + mended + "`");
  }
  return whole.value + part;
}

std::string readings_of(UnitId id) {
  const Unit& row = unit(id);
  std::string readings;
  const auto add = [&](const std::string& one) { readings += (readings.empty() ? "" : ", ") + one; };
  for (Dialect dialect : {Dialect::british, Dialect::american, Dialect::australian}) {
    const Fraction size = row.size[static_cast<int>(dialect)];
    if (!size.is_lost()) add(size.decimal(1) + " ml " + std::string(name_of(dialect)));
  }
  if (!readings.empty()) return readings;
  const std::string end = " " + std::string(row.name);
  for (UnitId other = 1; other < unit_count(); ++other)
    if (unit(other).name.ends_with(end)) add("a `" + std::string(unit(other).name) + "`, " + unit(other).size[0].decimal(1) + " ml");
  return readings;
}

ReadAmount read_amount(Reading& in, View amt, Place place) { return AmountReader(in, place).read(amt); }
ReadAmount read_item(Reading& in, View node, Place place) { return AmountReader(in, place).read_from(node); }

bool expect_dimension(Reading& in, const Quantity& found, Span span, std::initializer_list<Dimension> wanted,
                      std::string_view where) {
  const Dimension dimension = found.dimension();
  if (std::find(wanted.begin(), wanted.end(), dimension) != wanted.end()) return true;
  std::string names;
  for (Dimension one : wanted) {
    names += (names.empty() ? "a " : " or a ") + std::string(name_of(one));
  }
  in.report.add(Code::wrong_dimension, span,
                "`" + std::string(in.slice(span)) + "` is a " + std::string(name_of(dimension)) + "; " + std::string(where) + " " + names + ".")
      .expect(names).find("a " + std::string(name_of(dimension)));
  return false;
}

}  // namespace qtn
