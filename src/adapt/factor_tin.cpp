#include "adapt/factor.hpp"
#include "words/fold.hpp"

namespace qtn {

const Tin* tin_of(const Recipe& recipe) {
  if (recipe.tin) return &*recipe.tin;
  if (recipe.dish < recipe.parts.size() && recipe.parts[recipe.dish].tin) return &*recipe.parts[recipe.dish].tin;
  const Tin* only = nullptr;
  for (const Part& part : recipe.parts) {
    if (!part.tin) continue;
    if (only != nullptr) return nullptr;
    only = &*part.tin;
  }
  return only;
}

const Tin* tin_asked(const Recipe& recipe, const Request& request) {
  if (request.tin) return &*request.tin;
  if (!recipe.kitchen) return nullptr;
  for (const auto& [name, tin] : recipe.kitchen->tins)
    if (fold_name(name) == fold_name(request.tin_text)) return &tin;
  return nullptr;
}

Fraction factor_for_tin(const Recipe& recipe, const Request& request, Report& report) {
  const Tin* const asked = tin_asked(recipe, request);
  if (asked == nullptr)
    return refuse(report, {}, "`" + request.tin_text + "` is no size of a tin and no tin of the kitchen's file.",
                  "a size, `26 cm round, 3 cm deep`, or a name that stands under `tins:`");
  const Tin* const own = tin_of(recipe);
  if (own == nullptr)
    return refuse(report, {}, "This recipe does not say which tin it is for, so it cannot be made for another.",
                  "a line `tin: 23 cm round, 3 cm deep` in the head, or another way to say how much");
  const TinFactor found = tin_factor(own->size, asked->size);
  if (found.factor.is_lost())
    return refuse(report, own->span, "The two tins cannot be compared: of one of them it is not known what it holds.",
                  "a width and a shape, and a depth for a tin that is no plain round, square or oblong; or what it holds: `1.2 l basin`");
  return found.factor;
}

}  // namespace qtn
