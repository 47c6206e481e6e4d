#include "words/fold.hpp"

#include <doctest/doctest.h>

#include <string>

#include "data/tables.hpp"
#include "words/rows.hpp"

using namespace qtn;

namespace {
std::vector<WordKey> keys(std::string_view name) {
  std::vector<WordKey> out;
  fold_keys(name, out);
  return out;
}
}  // namespace

TEST_CASE("a word folds to lower case and singular") {
  struct Case {
    std::string_view from, to;
  };
  for (const Case& one : {Case{"Leaves", "leaf"}, {"loaves", "loaf"}, {"halves", "half"}, {"knives", "knife"},
                                 {"tomatoes", "tomato"}, {"Potatoes", "potato"}, {"mangos", "mango"}, {"eggs", "egg"},
                                 {"berries", "berry"}, {"pies", "pie"}, {"radishes", "radish"}, {"boxes", "box"},
                                 {"peaches", "peach"}, {"glasses", "glass"}, {"cheeses", "cheese"}, {"quiches", "quiche"},
                                 {"olives", "olive"}, {"cloves", "clove"}, {"chillies", "chilli"}, {"chillis", "chilli"},
                                 {"geese", "goose"}, {"mice", "mouse"}, {"teeth", "tooth"}, {"juices", "juice"},
                                 {"sauces", "sauce"}, {"shoes", "shoe"}, {"avocados", "avocado"}, {"peas", "pea"},
                                 {"pulses", "pulse"}, {"gateaux", "gateau"}, {"octopuses", "octopus"}})
    CHECK_MESSAGE(fold_word(one.from) == one.to, one.from);
}

TEST_CASE("words that only look like plurals stay") {
  for (const std::string_view word : {"molasses", "asparagus", "couscous", "hummus", "swiss", "gas", "cos", "haggis",
                                      "glass", "bass", "citrus", "roux", "fish", "coulis", "00", "as", "s", ""})
    CHECK_MESSAGE(fold_word(word) == word, word);
}

TEST_CASE("folding twice is folding once, for every row of the table") {
  for (Rows rows(data::plurals()); rows.next();) {
    CHECK_MESSAGE(rows.size() == 2, rows[0]);
    CHECK_MESSAGE(fold_word(rows[0]) == rows[0], rows[0]);
    CHECK_MESSAGE(fold_word(rows[1]) == rows[0], rows[1]);
    CHECK_MESSAGE(plural_of(rows[0]) == rows[1], rows[0]);
    CHECK_MESSAGE(singular_of(rows[1]) == rows[0], rows[1]);
  }
}

TEST_CASE("letters with accents fold by case and keep the accent") {
  CHECK(fold_word("CRÈME") == "crème");
  CHECK(fold_word("ÉCLAIRS") == "éclair");
  CHECK(fold_word("Œufs") == "œuf");
  CHECK(fold_word("ŽITO") == "žito");
  CHECK(fold_word("ŁOSOŚ") == "łosoś");
  CHECK(fold_word("Ÿ") == "ÿ");
  CHECK(fold_word("×") == "×");
  CHECK(fold_word("creme") != fold_word("crème"));
  CHECK(lower("Fl Oz ÉÀ") == "fl oz éà");
}

TEST_CASE("a letter and a combining accent are one letter") {
  CHECK(fold_word("Cre\xCC\x80me") == "crème");
  CHECK(fold_word("fraI\xCC\x82" "che") == "fraîche");
  CHECK(fold_word("jalapen\xCC\x83os") == "jalapeño");
  CHECK(fold_word("Fac\xCC\xA7on") == "façon");
  CHECK(fold_word("A\xCC\x8Angstro\xCC\x88m") == "ångström");
  CHECK(fold_word("\xCC\x81x") == "\xCC\x81x");  // an accent with nothing before it
}

TEST_CASE("a typographic apostrophe is a plain one") {
  CHECK(fold_word("goats’") == "goats'");
  CHECK(keys("confectioners’ sugar") == keys("confectioners' sugar"));
}

TEST_CASE("names are cut at every kind of blank, and hyphens join") {
  CHECK(fold_name("Crème Fraîche") == std::vector<std::string>{"crème", "fraîche"});
  CHECK(fold_name(" plain \xC2\xA0 flour\t") == std::vector<std::string>{"plain", "flour"});
  CHECK(fold_name("bay\xE2\x80\xAFleaves") == std::vector<std::string>{"bay", "leaf"});
  CHECK(fold_name("Self-Raising flour") == std::vector<std::string>{"self-raising", "flour"});
  CHECK(fold_name("- all-purpose- flour -") == std::vector<std::string>{"all-purpose", "flour"});
  CHECK(fold_name("The all THE butter") == std::vector<std::string>{"butter"});
  CHECK(fold_name("all") == std::vector<std::string>{"all"});
  CHECK(fold_name("butter the dish").size() == 3);
  CHECK(fold_name(" \t ").empty());
}

TEST_CASE("keys agree exactly when folded words do") {
  CHECK(keys("The Large Eggs") == keys("large egg"));
  CHECK(keys("plain flour") != keys("flour plain"));
  CHECK(keys("a") != keys("b"));
  CHECK(keys("tomatoes")[0] == fold_key("Tomato"));
  const std::string hundred(100, 'X');
  CHECK(fold_word(hundred + "s") == std::string(100, 'x'));
  CHECK(fold_key(hundred + "s") == fold_key(hundred));
  for (std::size_t size = 1; size < 70; ++size) {
    const std::string one(size, 'q'), other = one.substr(1) + "w";
    CHECK(fold_key(one) != fold_key(other));
    CHECK(fold_key(one) != fold_key(one + "q"));
  }
  std::vector<WordKey> grown{1};
  fold_keys("eggs", grown);
  CHECK(grown.size() == 2);  // added, not replaced
}

TEST_CASE("any bytes fold without harm") {
  std::string bytes;
  unsigned state = 1;
  for (int i = 0; i < 2000; ++i) {
    state = state * 1664525u + 1013904223u;
    bytes.push_back(static_cast<char>(state >> 24));
    if (bytes.size() > 70) bytes.erase(0, 40);
    const std::string once = fold_word(bytes);
    CHECK(once.size() <= bytes.size() + 1);
    CHECK(fold_name(bytes).size() == keys(bytes).size());
    CHECK(trim(bytes).size() <= bytes.size());
  }
}

TEST_CASE("plurals as they are shown") {
  CHECK(plural_of("egg") == "eggs");
  CHECK(plural_of("bay leaf") == "bay leaves");
  CHECK(plural_of("Loaf") == "Loaves");
  CHECK(plural_of("cherry") == "cherries");
  CHECK(plural_of("turkey") == "turkeys");
  CHECK(plural_of("dish") == "dishes");
  CHECK(plural_of("tomato") == "tomatoes");
  CHECK(plural_of("avocado") == "avocados");
  CHECK(plural_of("leg of lamb") == "legs of lamb");
  CHECK(plural_of("chop on the bone") == "chops on the bone");
  CHECK(plural_of("eggs") == "eggs");
  CHECK(plural_of("asparagus") == "asparagus");
  CHECK(plural_of("crème brûlée") == "crème brûlées");
  CHECK(plural_of("flour type 00") == "flour type 00");
  CHECK(plural_of("") == "");
  CHECK(singular_of("bay leaves") == "bay leaf");
  CHECK(singular_of("Legs of lamb") == "Leg of lamb");
  CHECK(singular_of("Éclairs") == "Éclair");
  CHECK(singular_of("molasses") == "molasses");
  CHECK(singular_of("slices") == "slice");
}

TEST_CASE("trimming knows every blank") {
  CHECK(trim(" \xC2\xA0\tx y\xE2\x80\xAF\r") == "x y");
  CHECK(trim("\xC2\xA0") == "");
  CHECK(blank_at("a b", 1) == 1);
  CHECK(blank_at("a", 5) == 0);
}
