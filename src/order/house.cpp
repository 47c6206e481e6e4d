// Who brings a thing and what it costs, by the kitchen's own lines.
#include "order/goods.hpp"
#include "order/order.hpp"

namespace qtn {

const Supplier* supplier_of(const Kitchen* kitchen, std::string_view name) {
  if (kitchen == nullptr) return nullptr;
  const Supplier* best = nullptr;
  std::size_t most = 0;
  for (const Supplier& supplier : kitchen->suppliers)
    for (const std::string_view food : supplier.foods)
      if (const std::size_t words = brings(food, name); words > most) best = &supplier, most = words;
  return best;
}

// A price is of the thing itself, or of what the built-in table holds to be the same food under a longer name: chicken
// thighs, not of another flour.
const HousePrice* price_of(const Kitchen* kitchen, std::string_view name) {
  if (kitchen == nullptr) return nullptr;
  const HousePrice* best = nullptr;
  std::size_t most = 0;
  const Food* const food = Larder::standard().find(name);
  for (const HousePrice& price : kitchen->prices) {
    const std::size_t words = brings(price.name, name);
    if (words <= most) continue;
    const bool itself = goods_key(price.name) == goods_key(name);
    if (itself || Larder::standard().find(price.name) == food) best = &price, most = words;
  }
  return best;
}

Measure pack_of(const HousePrice& price, Dialect dialect) {
  const Dimension dimension = price.pack.dimension();
  return {in_base(price.pack, dialect).low, dimension, noun_of(price.pack)};
}

}  // namespace qtn
