#include <doctest/doctest.h>

#include <map>
#include <string>

#include "larder/food.hpp"
#include "words/verbs.hpp"

using namespace qtn;

namespace {

const Larder& larder() { return Larder::standard(); }
const Food& food(std::string_view name) {
  const Food* found = larder().find(name);
  REQUIRE_MESSAGE(found != nullptr, name);
  return *found;
}
std::string folded(std::string_view name) {
  std::string out;
  for (const std::string& word : fold_name(name)) out += word + " ";
  return out;
}
// Grams of so many US cups, as density.
Fraction per_cup(std::int64_t grams, std::int64_t over = 1) { return Fraction::of(grams * 2000000, over * 473176473); }
template <typename Use>
void each_name(Use use) {
  for (const Food& one : larder().all()) {
    use(one.name, one);
    for (const std::string_view name : larder().other_names(one)) use(name, one);
  }
}

}  // namespace

TEST_CASE("the larder is well filled") {
  CHECK(larder().all().size() >= 300);
  std::size_t dense = 0, counted = 0;
  for (const Food& one : larder().all()) dense += one.density.known(), counted += one.each.known();
  CHECK(dense >= 300);
  CHECK(counted >= 100);
}

TEST_CASE("no name stands for two foods, and each is found") {
  std::map<std::string, std::string_view> seen;
  each_name([&](std::string_view name, const Food& one) {
    CHECK(!name.empty());
    CHECK_MESSAGE(seen.emplace(folded(name), one.name).second, name);
    CHECK_MESSAGE(larder().find(name) == &one, name);
    CHECK_MESSAGE(larder().find("the best " + std::string(name)) == &one, name);
  });
}

TEST_CASE("names survive being made plural and singular") {
  each_name([&](std::string_view name, const Food& one) {
    const std::string many = plural_of(name), single = singular_of(name);
    CHECK_MESSAGE(folded(many) == folded(name), name);
    CHECK_MESSAGE(folded(single) == folded(name), name);
    CHECK_MESSAGE(plural_of(many) == many, name);
    CHECK_MESSAGE(singular_of(single) == single, name);
    CHECK_MESSAGE(singular_of(many) == single, name);
    CHECK_MESSAGE(larder().find(many) == &one, name);
  });
}

TEST_CASE("no name is a verb, which would open an action") {
  std::map<std::string_view, VerbId> verbs;
  for (const VerbWord& word : verb_words()) verbs.emplace(word.text, word.verb);
  each_name([&](std::string_view name, const Food&) {
    CHECK_MESSAGE(!verbs.contains(lower(name)), name);
    CHECK_MESSAGE(!verbs.contains(plural_of(lower(name))), name);
  });
}

TEST_CASE("every figure has a source and a sensible size") {
  for (const Food& one : larder().all()) {
    for (const Figure* figure : {&one.density, &one.density_small, &one.each}) {
      CHECK_MESSAGE(figure->known() == !figure->source.empty(), one.name);
      CHECK_MESSAGE(figure->remembered == figure->source.starts_with("from memory: "), one.name);
      if (figure->known() && !figure->remembered) {
        const bool named = figure->source.starts_with("USDA SR28 ") || figure->source.starts_with("common practice, no source: ") ||
                           figure->source.starts_with("GNU Units 2.22: ");
        CHECK_MESSAGE(named, one.name);
      }
    }
    for (const Figure* figure : {&one.density, &one.density_small})
      if (figure->known()) {
        CHECK_MESSAGE(figure->value > Fraction::of(3, 100), one.name);
        CHECK_MESSAGE(figure->value < Fraction(3), one.name);
        const bool leafy = one.name == "dill";  // a cup of sprigs is mostly air
        if (!leafy) CHECK_MESSAGE(figure->value >= Fraction::of(1, 20), one.name);
      }
    if (one.each.known()) {
      CHECK_MESSAGE(one.each.value > Fraction::of(1, 100), one.name);
      CHECK_MESSAGE(one.each.value < Fraction(1200), one.name);
    }
    CHECK_MESSAGE((one.density.known() || !one.density_small.known()), one.name);
    CHECK_MESSAGE(!(one.liquid && one.raw_risk), one.name);
    CHECK_MESSAGE(!(one.seasoning && (one.liquid || one.raw_risk)), one.name);
  }
}

TEST_CASE("published rows are kept exactly") {
  CHECK(food("plain flour").density.value == per_cup(125));
  CHECK(food("plain flour").density.source == "USDA SR28 20081: 1 cup = 125 g");
  CHECK(!food("plain flour").density.remembered);
  CHECK(food("butter").density.value == per_cup(227));
  CHECK(food("butter").density_small.value == per_cup(142 * 16, 10));
  CHECK(food("granulated sugar").density.value == per_cup(200));
  CHECK(food("granulated sugar").density_small.value == per_cup(42 * 48, 10));
  CHECK(food("salt").density.value == per_cup(6 * 48));
  CHECK(food("whole milk").density.value == per_cup(244));
  CHECK(food("honey").density.value == per_cup(339));
  CHECK(food("potato").density.value == per_cup(75 * 2));
  CHECK(food("red wine").density.value == per_cup(294 * 8, 10));
  CHECK(food("raspberries").each.value == Fraction::of(19, 10));
  CHECK(food("onion").each.value == Fraction(110));
  CHECK(food("water").density.value == Fraction(1));
  CHECK(food("caster sugar").density.value == Fraction::of(9, 10));
  CHECK(food("caster sugar").density.remembered);
  CHECK(food("leaf gelatine").each.remembered);
}

TEST_CASE("the longest run of words that ends a name decides") {
  CHECK(food("cold unsalted butter").name == "unsalted butter");
  CHECK(food("Butter").name == "butter");
  CHECK(food("peanut butter").name == "peanut butter");
  CHECK(food("very finely ground black pepper").name == "ground black pepper");
  CHECK(food("yellow peppers").name == "red pepper");
  CHECK(food("the LARGE Eggs").name == "egg");
  CHECK(food("all-purpose flour").name == "plain flour");
  CHECK(food("confectioners’ sugar").name == "icing sugar");
  CHECK(food("Crème\xC2\xA0" "Fraîche").name == "crème fraîche");
  CHECK(food("fresh bay leaves").name == "bay leaf");
  CHECK(food("cold roast beef").raw_risk == false);
  CHECK(larder().find("butter knife") == nullptr);
  CHECK(larder().find("") == nullptr);
  CHECK(larder().find("the") == nullptr);
  CHECK(larder().find("one two three four five six seven eight nine ten flour") != nullptr);
}

TEST_CASE("flags") {
  for (const auto name : {"milk", "chicken stock", "olive oil", "red wine", "double cream", "cider vinegar", "water"})
    CHECK_MESSAGE(food(name).liquid, name);
  for (const auto name : {"minced beef", "chicken thigh", "cod", "mussels", "eggs", "egg yolk", "plain flour",
                          "dried kidney beans", "pork shoulder", "sausage meat"})
    CHECK_MESSAGE(food(name).raw_risk, name);
  for (const auto name : {"cooked ham", "smoked salmon", "tinned tuna", "butter", "cooked prawns", "tinned kidney beans",
                          "cornflour", "hard-boiled eggs"})
    CHECK_MESSAGE(!food(name).raw_risk, name);
  for (const auto name : {"ground cinnamon", "dried sage", "parsley", "black pepper"})
    CHECK_MESSAGE(food(name).seasoning, name);
  CHECK(!food("salt").seasoning);
}

TEST_CASE("British and American names") {
  const Food& flour = food("bread flour");
  CHECK(flour.name == "strong white flour");
  CHECK(larder().american_name(flour) == "bread flour");
  CHECK(larder().american_name(food("cornstarch")) == "cornstarch");
  CHECK(larder().american_name(food("butter")).empty());
  bool listed = false;
  for (const std::string_view name : larder().other_names(food("courgette"))) listed = listed || name == "zucchini";
  CHECK(listed);
}

TEST_CASE("an egg weighs what its country's table says") {
  const Figure* british = larder().egg("large", Dialect::british);
  REQUIRE(british != nullptr);
  CHECK(british->value == Fraction::of(68 * 87, 100));
  CHECK(british->source == "band 63 to 73 g in shell [EGG-UK], less 13 % shell [FJ]");
  CHECK(larder().egg("medium", Dialect::british)->value == Fraction::of(58 * 87, 100));
  CHECK(larder().egg("Large", Dialect::american)->value == Fraction(50));
  CHECK(larder().egg("extra large", Dialect::american)->value == Fraction(56));
  CHECK(larder().egg("large", Dialect::australian)->value == Fraction::of(541 * 87, 1000));
  CHECK(larder().egg("large", Dialect::unstated) == nullptr);
  CHECK(larder().egg("small", Dialect::british) == nullptr);
  CHECK(larder().egg("enormous", Dialect::american) == nullptr);
}
