// What can be said of a take line once its ingredient is known: measures and eggs of several sizes, what is done first.
#include <algorithm>

#include "recipe/builder.hpp"
#include "recipe/phases.hpp"

namespace qtn {
namespace {

std::string grams(const Fraction& value) { return value.decimal(value < Fraction(10) ? 1 : 0) + " g"; }

constexpr Dialect kStated[] = {Dialect::british, Dialect::american, Dialect::australian};

bool inside(Span inner, Span outer) { return inner.begin >= outer.begin && inner.end <= outer.end; }

}  // namespace

// A unit of several sizes was pointed at before the name was read: now say what each reading weighs.
void Builder::weigh_readings(const TakeLine& line) {
  for (const UnsureUnit& unsure : in_.unsure) {
    if (!inside(unsure.span, line.span) || line.written.unit != unsure.unit || line.written.is_range()) continue;
    const Known known = known_of(recipe_, line, line.written, unsure.unit);
    if (known.density.is_lost()) continue;
    std::string readings;
    for (const Dialect dialect : kStated) {
      const Fraction ml = line.written.low * unit(unsure.unit).size[static_cast<int>(dialect)];
      if (!ml.is_lost()) readings += (readings.empty() ? "" : ", ") + grams(ml * known.density) + " " + std::string(name_of(dialect));
    }
    in_.report.at(unsure.report).find(quoted(in_.slice(line.amount_span)) + " of " + std::string(line.name) + " is " + readings);
  }
  in_.unsure.clear();
}

// Large, medium, small: another egg in each country (A22). Said once a file.
void Builder::check_sizes(const TakeLine& line) {
  if (egg_size_told_ || recipe_.dialect != Dialect::unstated || line.food == nullptr || line.food->name != "egg") return;
  if (line.written.dimension() != Dimension::count || line.basis != Basis::amount) return;
  const std::string name = lower(line.name);
  for (const std::string_view size : {"extra large", "jumbo", "large", "medium", "small"}) {
    const std::size_t at = name.find(size);
    if (at == std::string::npos) continue;
    std::string readings;
    for (const Dialect dialect : kStated)
      if (const Figure* egg = Larder::standard().egg(size, dialect); egg != nullptr)
        readings += (readings.empty() ? "" : ", ") + grams(egg->value) + " " + std::string(name_of(dialect));
    const auto begin = line.name_span.begin + static_cast<std::uint32_t>(at);
    egg_size_told_ = true;
    report_.add(Code::ambiguous_unit, {begin, begin + static_cast<std::uint32_t>(size.size())},
                "Eggs are sorted otherwise in each country, and this file does not say whose measures it uses.")
        .expect("a line `measures: British`, `measures: American` or `measures: Australian` in the head")
        .find("one " + std::string(size) + " egg without its shell is " + readings)
        .because("A large American egg is a medium one in Britain.");
    return;
  }
}

// `1 cup plain flour, sifted` and `1 cup sifted plain flour` are two weights (data/forms.txt, "in front").
void Builder::check_order(const TakeLine& line) {
  if (line.food == nullptr || line.basis != Basis::amount || line.amount.dimension() != Dimension::volume) return;
  for (Index i = line.tails.first; i < line.tails.end(); ++i) {
    const Tail& tail = recipe_.tails[i];
    if (tail.kind != TailKind::preparation) continue;
    const std::string_view word = in_.slice(tail.span);
    const FoodForm* const first = Larder::standard().forms(*line.food, {word, {}, {}}).by_volume;
    if (first == nullptr || !first->in_front || first == line.forms.by_volume) continue;
    const Ends now = grams_of(recipe_, line, line.amount), base = in_base(line.amount, recipe_.dialect);
    if (now.low.is_lost() || line.amount.is_range()) continue;
    const std::string amount(in_.slice(line.amount_span)), name(line.name);
    report_.add(Code::done_after_measuring, tail.span, "This is measured first, and " + std::string(word) + " afterwards: " + grams(now.low) + ".")
        .find(quoted(amount + " " + name + ", " + std::string(word)))
        .expect("nothing else if that is meant; " + quoted(amount + " " + std::string(word) + " " + name) + " is " + grams(base.low * first->density.value));
    return;
  }
}

}  // namespace qtn
