// A kitchen and a recipe from memory, and what is bought for it.
#pragma once
#include <memory>
#include <string>
#include <vector>

#include "order/cost.hpp"
#include "order/order.hpp"

namespace qtn {

struct Ordered {
  // `kitchen`: lines behind `kitchen: K`; `text`: a whole recipe.
  Ordered(std::string kitchen, std::string text, const Fraction& times = Fraction(1))
      : house(std::make_unique<Source>("kitchen.qtn", "kitchen: Saltmarsh House\n" + std::move(kitchen))),
        source(std::make_unique<Source>("test.qtn", std::move(text))), house_tree(parse(*house)), tree(parse(*source)) {
    Surroundings around;
    around.kitchen = std::make_shared<const Kitchen>(check_kitchen(*house, house_tree, report));
    recipe = std::make_unique<Recipe>(check(*source, tree, around, report));
    Request request;
    request.times = times;
    boards.push_back(board_of(*recipe, request, report));
  }
  Purchases bought(const std::optional<Minute>& serve = {}) const { return purchases_of(boards, serve, {}); }
  Costing costs(int today = 0) const { return costing_of(*recipe, boards.front(), today); }

  Report report;
  std::unique_ptr<Source> house, source;
  Tree house_tree, tree;
  std::unique_ptr<Recipe> recipe;
  std::vector<Board> boards;
};

// "leeks 700 g; butter 60 g": all that is bought, in the order of the list.
inline std::string told(const Purchases& all) {
  std::string out;
  for (const Delivery& delivery : all.deliveries)
    for (const Purchase& line : delivery.lines) out += (out.empty() ? "" : "; ") + line.name + " " + write_measure(line.measure);
  return out;
}
inline std::string list(const std::string& lines) {
  return "recipe: Dish\nserves: 2\nmeasures: British\ntake:\n  " + lines + "\nmethod:\n  Mix [everything].\n";
}

}  // namespace qtn
