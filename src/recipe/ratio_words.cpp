// What went wrong with percentages, rates and parts, in a cook's words.
#include "recipe/ratio_system.hpp"

namespace qtn {
namespace {

// "flour, butter and water"; after six it says how many more.
std::string listed(const Recipe& recipe, const std::vector<Index>& lines) {
  constexpr std::size_t kMost = 6;
  const std::size_t shown = lines.size() > kMost + 1 ? kMost : lines.size();
  std::string text;
  for (std::size_t i = 0; i < shown; ++i) {
    if (i != 0) text += i + 1 == lines.size() ? " and " : ", ";
    text += recipe.lines[lines[i]].name;
  }
  if (shown != lines.size()) text += " and " + std::to_string(lines.size() - shown) + " more";
  return text;
}

Span amount_place(const TakeLine& line) {
  return line.amount_span.empty() ? line.name_span : line.amount_span;
}

std::string written(const Recipe& recipe, Index line) {
  const TakeLine& one = recipe.lines[line];
  const std::string_view amount = recipe.slice(one.amount_span);
  return quoted(amount.empty() ? one.name : amount);
}

Span stated_place(const Recipe& recipe, Index line) {
  const TakeLine& one = recipe.lines[line];
  for (Index i = one.stated.first; i < one.stated.end(); ++i)
    if (!recipe.stated[i].each && !recipe.stated[i].span.empty()) return recipe.stated[i].span;
  return amount_place(one);
}

std::string why_not_makes(MakesFails makes) {
  switch (makes) {
    case MakesFails::a_count:
      return "`makes:` gives a number of things, which fixes no weight";
    case MakesFails::a_range:
      return "`makes:` gives a range, which fixes no one amount";
    case MakesFails::taken_out:
      return "`makes:` fixes nothing here, since something leaves the pot or its weight is set on the way";
    case MakesFails::by_product:
      return "`makes:` fixes nothing here, since something else comes off";
    default:
      return {};
  }
}

// The line that, given an amount, fixes the rest: one that the others are shares of.
Index leading(const Recipe& recipe, const RatioTrouble& trouble) {
  std::vector<Index> all{trouble.line};
  all.insert(all.end(), trouble.lines.begin(), trouble.lines.end());
  for (const Index i : all) {
    const TakeLine& line = recipe.lines[i];
    const Slice base = line.members.empty() ? recipe.parts[line.part].head.members : line.members;
    for (Index m = base.first; m < base.end(); ++m)
      for (const Index other : all)
        if (recipe.set_members[m].kind == TargetKind::line && recipe.set_members[m].index == other) return other;
  }
  return trouble.line;
}

class Saying {
 public:
  Saying(const Recipe& recipe, const RatioTrouble& trouble, Report& report)
      : recipe_(recipe), trouble_(trouble), report_(report), line_(recipe.lines[trouble.line]) {}

  void run() {
    switch (trouble_.kind) {
      case RatioTrouble::open:
        return open();
      case RatioTrouble::clash:
        return trouble_.other != kNone || !trouble_.wanted.is_zero() ? stated_clash() : clash();
      case RatioTrouble::base_range:
        return base_range();
      case RatioTrouble::base_unweighed:
        return base_unweighed();
      case RatioTrouble::makes_unweighed:
        return makes_unweighed();
      case RatioTrouble::of_itself:
        return of_itself();
      case RatioTrouble::only_zero:
        return only_zero();
      case RatioTrouble::below_zero:
        return below_zero();
      case RatioTrouble::too_long:
        return too_long();
    }
  }

 private:
  std::vector<Index> all() const {
    std::vector<Index> lines{trouble_.line};
    lines.insert(lines.end(), trouble_.lines.begin(), trouble_.lines.end());
    return lines;
  }
  void label_others(Diagnostic& problem, const std::string& text) const {
    std::size_t shown = 0;
    for (const Index i : trouble_.lines)
      if (i != trouble_.line && ++shown <= 6) problem.also(recipe_.lines[i].span, text);
  }

  void open() {
    auto& problem = report_.add(Code::ratios_open, amount_place(line_),
                                "Nothing says how much there is of " + listed(recipe_, all()) + ".");
    const std::string first(recipe_.lines[leading(recipe_, trouble_)].name);
    const Part& part = recipe_.parts[trouble_.part];
    std::string expected = "an amount for the " + first + ", or `makes:` with a weight";
    if (!part.unnamed && trouble_.part != recipe_.dish)
      expected += ", or a line that takes so much of it, such as `450 g [" + std::string(part.name) + "]`";
    problem.expect(std::move(expected)).find(why_not_makes(trouble_.makes));
    label_others(problem, "this hangs on it too");
  }

  void clash() {
    auto& problem = report_.add(Code::ratios_clash, line_.span,
                                written(recipe_, trouble_.line) + " " + std::string(line_.name) +
                                    " cannot hold together with what the other lines say.");
    problem.expect("ratios that one bowl can meet")
        .find(written(recipe_, trouble_.line) + " of a sum that holds this line itself");
    label_others(problem, "together with this line");
  }

  // "3 parts (300 ml) makes one part 100 ml, 1 part (150 ml) makes it 150 ml"
  void stated_clash() {
    const Dimension dimension = trouble_.dimension;
    const std::string wanted = say_amount(trouble_.wanted, dimension), found = say_amount(trouble_.found, dimension);
    const bool parts =
        line_.basis == Basis::parts && trouble_.other != kNone && recipe_.lines[trouble_.other].basis == Basis::parts;
    std::string message =
        "The " + std::string(line_.name) + " is said to be " + wanted + ", and by the other lines it is " + found + ".";
    if (parts && !line_.written.low.is_zero())
      message = "One part is " + say_amount(trouble_.found / line_.written.low, dimension) + " by the " +
                std::string(recipe_.lines[trouble_.other].name) + ", and " +
                say_amount(trouble_.wanted / line_.written.low, dimension) + " by the " + std::string(line_.name) + ".";
    const Span at = stated_place(recipe_, trouble_.line);
    auto& problem = report_.add(Code::ratios_clash, at, std::move(message));
    problem.expect(quoted(found)).find(quoted(recipe_.slice(at)));
    if (trouble_.other != kNone && trouble_.other != trouble_.line)
      problem.also(recipe_.lines[trouble_.other].span, "this line fixes the size");
  }

  void base_range() {
    const TakeLine& base = recipe_.lines[trouble_.other];
    auto& problem =
        report_.add(Code::range_as_base, amount_place(base),
                    "The " + std::string(base.name) + " is a range, and other amounts are worked out from it.");
    problem.expect("one amount").find(written(recipe_, trouble_.other));
    if (trouble_.other != trouble_.line) problem.also(line_.span, "this line is worked out from it");
  }

  void base_unweighed() {
    const TakeLine& base = recipe_.lines[trouble_.other];
    auto& problem = report_.add(Code::base_without_weight, amount_place(line_),
                                "The " + std::string(line_.name) + " is a share of the " + std::string(base.name) +
                                    ", and nobody says what that weighs.");
    problem.expect("a weight for the " + std::string(base.name) +
                   ", or what one or 1 ml of it weighs, in its line or in the kitchen's file");
    problem.find(base.measured() ? written(recipe_, trouble_.other) : "no amount")
        .also(base.span, "this has no weight");
  }

  void makes_unweighed() {
    const TakeLine& other = recipe_.lines[trouble_.other];
    auto& problem =
        report_.add(Code::makes_without_weight, amount_place(line_),
                    "The amounts of " + listed(recipe_, all()) + " hang on `makes:`, and nobody says what the " +
                        std::string(other.name) + " weighs.");
    problem.expect("a weight for the " + std::string(other.name) + ", or an amount for the " +
                   std::string(recipe_.lines[leading(recipe_, trouble_)].name));
    problem.also(other.span, "this cannot be weighed");
  }

  // Shares of a base that are all of them shares themselves must add up to the whole of it.
  std::string adds_up_to() const {
    const Fraction sum = trouble_.adds_up * Fraction(100);
    if (sum.is_lost() || sum.is_zero() || sum == Fraction(100)) return {};
    const bool taken = recipe_.parts[trouble_.part].head.all_flour;
    return "what the shares are of adds up to " + sum.decimal(2) + " %, and should to 100 %" +
           (taken ? "; the flour inside what is taken counts too" : "");
  }

  void of_itself() {
    report_
        .add(Code::share_of_itself, amount_place(line_), "The " + std::string(line_.name) + " is a share of itself.")
        .expect("an amount, or a share of another line")
        .find(quoted(recipe_.slice(line_.amount_span)) + " of " + quoted(line_.name));
  }

  void only_zero() {
    auto& problem = report_.add(Code::only_zero_fits, line_.span,
                                "Only an amount of nothing fits for " + listed(recipe_, all()) + ".");
    problem.expect("an amount for the " + std::string(recipe_.lines[leading(recipe_, trouble_)].name))
        .find(adds_up_to());
    if (!problem.found.empty()) problem.expect("shares of the whole that add up to 100 %");
    label_others(problem, "and this hangs on it");
  }

  void below_zero() {
    report_
        .add(Code::only_zero_fits, line_.span,
             "The " + std::string(line_.name) + " would have to be less than nothing.")
        .expect("ratios that leave something of it")
        .find(say_amount(trouble_.found, trouble_.dimension));
  }

  void too_long() {
    report_
        .add(Code::ratios_too_long, amount_place(line_),
             "The amounts of this list hang together in numbers too long to work out.")
        .expect("shorter numbers, or amounts in place of some of the ratios");
  }

  const Recipe& recipe_;
  const RatioTrouble& trouble_;
  Report& report_;
  const TakeLine& line_;
};

}  // namespace

void say_trouble(const Recipe& recipe, const RatioTrouble& trouble, Report& report) {
  Saying(recipe, trouble, report).run();
}

}  // namespace qtn
