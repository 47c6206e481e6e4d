// Words that Britain and America call one thing by: data/word_pairs.txt. The home of words; other names of one food,
// by which the larder finds its figures, stand in data/foods.txt.
#pragma once
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace qtn {

enum class Side : std::uint8_t { british, american };
constexpr Side across(Side side) { return side == Side::british ? Side::american : Side::british; }

enum class PairKind : std::uint8_t {
  ingredient, cut, dairy,
  equipment,
  verb,      // changes in all its forms: knocking back, punching down
  count,     // stands behind a number: 2 tins
  wording,   // conditions, dishes, courses
  spelling,  // the front of a word: colour, coloured, colourless
};

struct WordPair {
  std::string_view british, american;  // lists; of each the first is said, all are found
  PairKind kind = PairKind::ingredient;
  // Where it changes. In prose only what can mean nothing else there; a name of the list, a mention in brackets and the
  // verb of a clause are checked, and may change more.
  bool prose = false, checked = false;
  bool alone = false;   // only where it is the whole name: "chips", not "chocolate chips"
  bool with_tin = false;  // only in a recipe that has a tin of its own
  bool sure = false;    // neither word means anything else abroad: changes on a page that does not say whose words it has
  bool to_british = true, to_american = true;
  std::string_view note = {};    // not the same thing: both words are said, and this
  std::string_view source = {};  // the published list, or "from memory"
  bool changes() const { return prose || checked; }
  std::string_view said(Side side) const;  // the first of its list, in the singular where that has one
};

// What is being read: each kind of place lets other pairs change.
enum class WordPlace : std::uint8_t { name, prose, verb, count };

struct PlaceOfPair {
  const WordPair* pair = nullptr;
  std::size_t begin = 0, end = 0;  // bytes of the text
  std::string instead;             // in the case and number of what stands there
};

// What is read, and how far it may be changed.
struct WordsRead {
  Side to = Side::american;
  WordPlace place = WordPlace::prose;
  bool stated = true;          // the page says whose words it has, or nobody doubts it
  bool has_tin = false;
  bool begins_sentence = false;  // the text does
};

class WordPairs {
 public:
  static const WordPairs& standard();
  // Pairs of a house: what is British in them is the standard word, what is American the house's own. The texts must
  // outlive this.
  explicit WordPairs(std::vector<WordPair> pairs);
  WordPairs(const WordPairs&) = delete;
  WordPairs& operator=(const WordPairs&) = delete;
  ~WordPairs();

  // Every place of a text where another word is to be said, in the order of the text. The longest words first; what
  // may not change also keeps the shorter words inside it from changing ("corn syrup" has no sweetcorn in it).
  std::vector<PlaceOfPair> find(std::string_view text, const WordsRead& how) const;
  std::span<const WordPair> all() const;

 private:
  struct Impl;
  const Impl* impl_;
};

// "a courgette" with its words changed; "a" and "an" follow the new word.
std::string with_words(std::string_view text, std::span<const PlaceOfPair> places);
// Both words, what they share said once: "minced (ground) beef", "aubergines (eggplants)".
std::string both_words(std::string_view own, std::string_view other);

}  // namespace qtn
