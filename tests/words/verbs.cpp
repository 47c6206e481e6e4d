#include "words/verbs.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string>

#include "words/fold.hpp"

using namespace qtn;

namespace {

const VerbWord* word(std::string_view text) {
  for (const VerbWord& one : verb_words())
    if (one.text == text) return &one;
  return nullptr;
}
const Verb& named(std::string_view text) {
  const VerbWord* one = word(text);
  REQUIRE_MESSAGE(one != nullptr, text);
  return verb(one->verb);
}
bool takes(const Verb& verb, Takes what) { return (verb.takes & static_cast<std::uint8_t>(what)) != 0; }

}  // namespace

TEST_CASE("the table is large, and no word stands for two verbs") {
  CHECK(verb_count() > 140);
  std::set<std::string_view> seen;
  for (const VerbWord& one : verb_words()) {
    CHECK_MESSAGE(seen.insert(one.text).second, one.text);
    CHECK_MESSAGE(one.text == lower(one.text), one.text);
    CHECK(one.verb != kNoVerb);
    CHECK(one.verb < verb_count());
  }
  const auto words = verb_words();
  CHECK(std::is_sorted(words.begin(), words.end(), [](auto& a, auto& b) { return a.text < b.text; }));
  CHECK(verb(kNoVerb).name == "work");
  CHECK(takes(verb(kNoVerb), Takes::hands));
}

TEST_CASE("every verb is whole: hands and attention agree, a wait has no hands and no heat") {
  for (VerbId id = 0; id < verb_count(); ++id) {
    const Verb& one = verb(id);
    CHECK_MESSAGE(takes(one, Takes::hands) == (one.attention != Attention::none), one.name);
    if (one.wait) CHECK_MESSAGE(one.attention == Attention::none, one.name);
    if (one.wait) CHECK_MESSAGE(!one.heats, one.name);
    if (one.range == Range::cook) CHECK_MESSAGE((one.wait || one.deed != Deed::timed), one.name);
    if (!one.wait && one.deed == Deed::timed) CHECK_MESSAGE(one.attention != Attention::none, one.name);
    const auto words = verb_words();
    const auto plain = std::count_if(words.begin(), words.end(), [&](const VerbWord& w) {
      return w.verb == id && w.form == VerbForm::plain && w.text == one.name;
    });
    if (id != kNoVerb) CHECK_MESSAGE(plain == 1, one.name);
  }
}

TEST_CASE("the base table of the language") {
  for (const auto text : {"rub", "mix", "beat", "whisk", "knead", "roll", "cut", "stir", "fill", "fold", "turn", "shape",
                          "work"}) {
    CHECK_MESSAGE(named(text).attention == Attention::throughout, text);
    CHECK_MESSAGE(named(text).takes == static_cast<std::uint8_t>(Takes::hands), text);
    CHECK_MESSAGE(named(text).range == Range::food, text);
  }
  for (const auto text : {"bake", "roast", "grill", "heat"}) {
    CHECK_MESSAGE(takes(named(text), Takes::oven), text);
    CHECK_MESSAGE(named(text).attention == Attention::ends, text);
    CHECK_MESSAGE(named(text).heats, text);
  }
  CHECK(named("churn").attention == Attention::ends);
  CHECK(named("churn").takes == static_cast<std::uint8_t>(Takes::hands));
  for (const auto text : {"boil", "simmer", "poach", "steam", "soften"}) {
    CHECK_MESSAGE(takes(named(text), Takes::hob), text);
    CHECK_MESSAGE(named(text).attention == Attention::start, text);
  }
  for (const auto text : {"fry", "sweat", "melt", "bring", "reduce"}) {
    CHECK_MESSAGE(takes(named(text), Takes::hob), text);
    CHECK_MESSAGE(named(text).attention == Attention::throughout, text);
  }
  for (const auto text : {"prove", "thaw"}) {
    CHECK_MESSAGE(named(text).wait, text);
    CHECK_MESSAGE(named(text).range == Range::food, text);
  }
  CHECK(takes(named("chill"), Takes::fridge));
  CHECK(takes(named("freeze"), Takes::freezer));
  for (const auto text : {"chill", "freeze", "rest", "stand", "cool", "soak", "marinate", "brine", "cure", "press",
                          "mature", "keep"}) {
    CHECK_MESSAGE(named(text).wait, text);
    CHECK_MESSAGE(named(text).range == Range::cook, text);
  }
}

TEST_CASE("clauses with a meaning of their own") {
  CHECK(named("reads").deed == Deed::reading);
  CHECK(named("taste").deed == Deed::tasting);
  CHECK(named("weigh").deed == Deed::weighing);
  CHECK(named("use").deed == Deed::use_within);
  CHECK(named("reduce").deed == Deed::reducing);
  CHECK(named("down").deed == Deed::reducing);
  CHECK(named("keep back").deed == Deed::keep_back);
  CHECK(named("kept back").deed == Deed::keep_back);
  CHECK(named("take out").deed == Deed::take_out);
  CHECK(named("discard").deed == Deed::discard);
  CHECK(named("strain out").deed == Deed::strain_out);
  CHECK(named("drain").deed == Deed::drain);
  CHECK(named("strain").deed == Deed::timed);
}

TEST_CASE("forms are made by rule and listed where the rule fails") {
  struct Case {
    std::string_view plain, third, ing, past;
  };
  for (const auto& [plain, third, ing, past] :
       {Case{"bake", "bakes", "baking", "baked"}, {"chop", "chops", "chopping", "chopped"},
        {"stir", "stirs", "stirring", "stirred"}, {"fry", "fries", "frying", "fried"}, {"mix", "mixes", "mixing", "mixed"},
        {"simmer", "simmers", "simmering", "simmered"}, {"cook", "cooks", "cooking", "cooked"},
        {"poach", "poaches", "poaching", "poached"}, {"tie", "ties", "tying", "tied"}, {"stew", "stews", "stewing", "stewed"},
        {"sauté", "sautés", "sautéing", "sautéed"}, {"stir-fry", "stir-fries", "stir-frying", "stir-fried"},
        {"knock back", "knocks back", "knocking back", "knocked back"}, {"squeeze", "squeezes", "squeezing", "squeezed"},
        {"strain out", "strains out", "straining out", "strained out"}, {"season", "seasons", "seasoning", "seasoned"}}) {
    CHECK(verb_form(plain, VerbForm::plain) == plain);
    CHECK(verb_form(plain, VerbForm::third) == third);
    CHECK(verb_form(plain, VerbForm::ing) == ing);
    CHECK(verb_form(plain, VerbForm::past) == past);
  }
  CHECK(named("beaten").name == "beat");
  CHECK(named("frozen").name == "freeze");
  CHECK(named("broil").name == "grill");
  CHECK(named("proofing").name == "prove");
  CHECK(word("filling") == nullptr);  // nearly always the thing
  CHECK(word("leaves") == nullptr);
  CHECK(word("baking")->form == VerbForm::ing);
  CHECK(!word("baking")->noun);
  CHECK(word("chopped")->noun);
  CHECK(word("heat")->noun);
  CHECK(!word("bake")->noun);
}

TEST_CASE("places are named as in a kitchen file") {
  CHECK(takes_named("oven") == 2);
  CHECK(takes_named("freezer") == 16);
  CHECK(takes_named("ceiling") == 0);
}
