// The verb table: what each kitchen verb takes, whether it is a wait, and whose range it is (semantics 5.3).
// Rows live in data/verbs.txt; a house adds its own in `verbs:` of its kitchen file.
#pragma once
#include <cstdint>
#include <span>
#include <string>
#include <string_view>

namespace qtn {

using VerbId = std::uint16_t;
inline constexpr VerbId kNoVerb = 0;  // row 0: "work", what a step without a listed verb is; no word names it

enum class Takes : std::uint8_t { nothing = 0, hands = 1, oven = 2, hob = 4, fridge = 8, freezer = 16 };
enum class Attention : std::uint8_t { none, ends, start, throughout };  // hands: never, at both ends, at the start, all along
enum class Range : std::uint8_t { food, cook };

// What a clause that opens with the verb does beyond taking time.
enum class Deed : std::uint8_t {
  timed,      // an ordinary activity
  reading,    // reads: a sign, checked against safety tables
  tasting,    // taste
  weighing,   // weigh: a checkpoint
  use_within, // use, serve (within D)
  reducing,   // reduce to, down to: the pot is A from here
  keep_back, take_out, discard, strain_out, drain,  // pot clauses (part 9)
};

struct Verb {
  std::string_view name;      // "bake"; may be several words: "keep back"
  std::uint8_t takes = 0;     // bits of Takes; hands exactly where attention is not none
  Attention attention = Attention::throughout;
  bool wait = false;
  bool spoils = false;        // a wait that a pause behind it makes longer: dough goes on rising
  bool heats = false;         // a heat verb: it cooks what is in the pot
  bool moist = false;         // of those: by boiling liquid or steam, so that its heat goes all through
  bool cools = false;         // what was hot comes to table cold behind it
  bool heats_oven = false;    // it brings the oven to its heat
  Range range = Range::food;
  Deed deed = Deed::timed;
};

const Verb& verb(VerbId id);
VerbId verb_count();

enum class VerbForm : std::uint8_t { plain, third, ing, past };

struct VerbWord {
  std::string_view text;  // lower case: "bake", "bakes", "baking", "baked"
  VerbId verb;
  VerbForm form = VerbForm::plain;  // a clause opens with `plain`; `[baked beans]` is a name
  // As often a thing or its description ("a high heat", "the slices", "chopped onion"): in prose such a word is the
  // verb only where it opens a sentence or stands after a comma, "and", "or", "then" or a form of "be" or "have".
  bool noun = false;
};
// Every written form: the imperative as in a clause, and the forms prose uses before a bare duration ("baking").
// Sorted by text, so that of two that fit at one place the longer stands later.
std::span<const VerbWord> verb_words();

// "hob" -> its bit of Takes; 0 for anything else. For the `verbs:` of a kitchen file too.
std::uint8_t takes_named(std::string_view word);
// The regular form of a verb; in one of several words the first changes: "keeping back".
std::string verb_form(std::string_view verb, VerbForm form);

}  // namespace qtn
