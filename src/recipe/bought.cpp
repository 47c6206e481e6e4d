// What is bought against what goes in: trimming, peeling and boning only take away (`400 g leeks, from 550 g`).
#include <algorithm>

#include "recipe/makes.hpp"
#include "recipe/phases.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

// What has taken up water weighs more than what was bought. Common practice, no source.
constexpr std::string_view kSwollen[] = {"cooked", "boiled",     "soaked",   "steamed", "poached",  "braised", "stewed",
                                         "plumped", "rehydrated", "hydrated", "popped",  "sprouted", "whipped", "brined", "dried",  "dry",      "uncooked"};

bool has_word(std::string_view text, std::string_view word) {
  const std::string folded = lower(text);
  const auto letter = [&](std::size_t at) { return at < folded.size() && folded[at] >= 'a' && folded[at] <= 'z'; };
  for (std::size_t at = folded.find(word); at != std::string::npos; at = folded.find(word, at + 1))
    if ((at == 0 || !letter(at - 1)) && !letter(at + word.size())) return true;
  return false;
}

std::string last_word(std::string_view name) {
  const std::vector<std::string> words = fold_name(name);
  return words.empty() ? std::string() : words.back();
}

class Bought {
 public:
  Bought(const Recipe& recipe, Report& report) : recipe_(recipe), report_(report) {}

  void run() {
    for (const TakeLine& line : recipe_.lines) {
      const Tail* const from = tail_of(recipe_, line, TailKind::from);
      if (from == nullptr || !from->amount || from->amount->is_lost() || line.amount.is_lost()) continue;
      if (is_short(line, *from)) say(line, *from);
    }
  }

 private:
  // Another thing than what is bought may weigh more: rice from dried rice. Each egg has one yolk.
  bool is_short(const TakeLine& line, const Tail& from) const {
    const Quantity& bought = *from.amount;
    const Dimension dimension = bought.dimension();
    if (dimension != line.amount.dimension()) return false;
    const std::string name = last_word(line.name), of = last_word(from.name);
    if (dimension == Dimension::count) {
      const bool of_an_egg = of == "egg" && (name == "yolk" || name == "white");
      return of_an_egg && bought.high < line.amount.low;
    }
    if (!from.name.empty() && name != of) return false;
    const std::string_view text = recipe_.slice(line.span);
    if (std::any_of(std::begin(kSwollen), std::end(kSwollen), [&](std::string_view one) { return has_word(text, one); }))
      return false;
    const Manner loose = bought.manner == Manner::about ? Manner::about : line.amount.manner;
    const Fraction room = loose == Manner::about ? tolerance(loose, recipe_.tolerance()) : Fraction(0);
    return in_base(bought, recipe_.dialect).high < in_base(line.amount, recipe_.dialect).low * (Fraction(1) - room);
  }

  void say(const TakeLine& line, const Tail& from) {
    const auto quoted = [&](Span span) { return "`" + std::string(recipe_.slice(span)) + "`"; };
    const Span bought = from.amount_span.empty() ? from.span : from.amount_span;
    const bool eggs = from.amount->dimension() == Dimension::count;
    const std::string name(line.name);
    auto& problem = report_.add(Code::bought_under_weight, bought,
                                eggs ? "More " + plural_of(name) + " go in than there are eggs."
                                     : "More of the " + name + " goes in than is bought.");
    problem.expect("as much as goes in, or more: what is bought stands behind `from`").find(quoted(bought));
    if (!line.amount_span.empty()) problem.also(line.amount_span, "so much goes in");
  }

  const Recipe& recipe_;
  Report& report_;
};

}  // namespace

void check_bought(const Recipe& recipe, Report& report) {
  if (recipe.tails.empty()) return;
  Bought(recipe, report).run();
}

}  // namespace qtn
