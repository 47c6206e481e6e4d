#include "words/lists.hpp"

#include <doctest/doctest.h>

#include <set>

#include "words/fold.hpp"
#include "words/verbs.hpp"

using namespace qtn;

TEST_CASE("shares and numbers have their values") {
  CHECK(list_word(WordList::share, "half")->value == Fraction::of(1, 2));
  CHECK(list_word(WordList::share, "thirds")->value == Fraction::of(1, 3));
  CHECK(list_word(WordList::share, "tenth")->value == Fraction::of(1, 10));
  CHECK(list_word(WordList::number, "a")->value == Fraction(1));
  CHECK(list_word(WordList::number, "twelve")->value == Fraction(12));
  CHECK(list_word(WordList::number, "half") == nullptr);
  CHECK(list_word(WordList::share, "") == nullptr);
}

TEST_CASE("places say what they take") {
  CHECK(list_word(WordList::place, "in the fridge")->value == Fraction(8));
  CHECK(list_word(WordList::place, "on the hob")->value == Fraction(4));
  CHECK(list_word(WordList::place, "in the oven")->value == Fraction(2));
  CHECK(list_word(WordList::place, "in the freezer")->value == Fraction(16));
  CHECK(list_word(WordList::place, "outside")->value == Fraction(0));
  CHECK(list_word(WordList::place, "at room temperature")->value == Fraction(0));
}

TEST_CASE("places to keep things, shapes, and amounts left open") {
  for (const auto text : {"chilled", "frozen", "cool", "room", "sealed"})
    CHECK(list_word(WordList::keep_place, text) != nullptr);
  for (const auto text : {"round", "square", "basin"}) CHECK(list_word(WordList::shape, text) != nullptr);
  for (const auto text : {"to taste", "to serve", "as needed", "for dusting", "for the tin"}) CHECK(is_unmeasured(text));
  CHECK(!is_unmeasured("for "));
  CHECK(!is_unmeasured("forced"));
  CHECK(!is_unmeasured("chopped"));
}

TEST_CASE("every list is lower case and says nothing twice; a thing is no verb") {
  for (int list = 0; list < 7; ++list) {
    std::set<std::string_view> seen;
    CHECK(!list_words(static_cast<WordList>(list)).empty());
    for (const ListWord& one : list_words(static_cast<WordList>(list))) {
      CHECK_MESSAGE(seen.insert(one.text).second, one.text);
      CHECK_MESSAGE(one.text == lower(one.text), one.text);
      CHECK(list_word(one.list, one.text) == &one);
    }
  }
  for (const VerbWord& word : verb_words()) CHECK_MESSAGE(list_word(WordList::thing, word.text) == nullptr, word.text);
}
