#include "card/wording.hpp"

#include <algorithm>
#include <set>

#include "card/make.hpp"
#include "words/fold.hpp"
#include "words/lexicon.hpp"
#include "words/pairs.hpp"

namespace qtn {
namespace {

// The house's own words as pairs: the standard word, the house's. In prose a word changes only where it is no word that
// may mean something else there.
std::vector<WordPair> pairs_of(const Kitchen& house, std::vector<std::string>& texts) {
  std::vector<WordPair> pairs;
  texts.reserve(house.words_of_house.size() * 2);
  for (const auto& [word, own] : house.words_of_house) {
    const std::string one = singular_of(word);
    const bool several = one != word;
    const std::string said = several ? singular_of(own) + " / " + std::string(own) : std::string(own);
    WordPair pair{texts.emplace_back(one), texts.emplace_back(said)};
    pair.checked = pair.sure = pair.prose = true;
    for (const Side to : {Side::british, Side::american})
      for (const PlaceOfPair& place : WordPairs::standard().find(word, {to, WordPlace::name}))
        pair.prose = pair.prose && place.pair->prose && place.pair->note.empty();
    if (const Found verb = Lexicon::standard().longest(word, kVerbWord | kVerbForm); verb && verb.size == word.size()) pair.prose = false;
    pairs.push_back(pair);
  }
  return pairs;
}

// Does any word of the house stand in the page? Its first word without its ends, so that case and number do not count.
bool house_word_stands(const Recipe& recipe) {
  if (!recipe.kitchen) return false;
  for (const auto& [word, own] : recipe.kitchen->words_of_house) {
    const std::string_view first = word.substr(0, word.find(' '));
    const std::string_view middle = first.size() < 5 ? first.substr(1) : first.substr(1, first.size() - 4);
    if (recipe.text.find(middle) != std::string_view::npos) return true;
  }
  return false;
}

// "the bicarbonate", where the list now says "baking soda".
std::string follow(std::string_view text, std::string_view name, const std::string& now) {
  if (now == name) return std::string(text);
  const std::vector<std::string> before = fold_name(name), after = fold_name(now), words = fold_name(text);
  const auto all_in = [&](const std::vector<std::string>& list) {
    return std::all_of(words.begin(), words.end(), [&](const std::string& word) { return std::find(list.begin(), list.end(), word) != list.end(); });
  };
  if (words.empty() || !all_in(before) || all_in(after)) return std::string(text);
  const std::string_view front = text.substr(0, 4);
  return std::string(lower(front) == "the " ? front : std::string_view()) + now;
}

// Pairs that are not the same thing change nothing without a word.
std::vector<PlaceOfPair> silent(std::string_view text, const WordsRead& how) {
  std::vector<PlaceOfPair> found = WordPairs::standard().find(text, how);
  std::erase_if(found, [](const PlaceOfPair& place) { return !place.pair->note.empty(); });
  return found;
}

// How the page is to be read; false where it stays in its own words.
bool read_for(const Adapted& adapted, WordsRead& how) {
  const WordsOf own = words_written(*adapted.recipe);
  how.stated = own != WordsOf::unstated;
  how.has_tin = tin_of(*adapted.recipe) != nullptr;
  how.to = adapted.words == AskedWords::british || (adapted.words == AskedWords::both && own == WordsOf::american) ? Side::british : Side::american;
  return adapted.words != AskedWords::as_written && own != (how.to == Side::british ? WordsOf::british : WordsOf::american);
}

class Wording {
 public:
  Wording(Card& card, const Adapted& adapted, const std::vector<CheckedWords>& places)
      : card_(card), recipe_(*adapted.recipe), asked_(adapted.words), places_(places), of_run_(card.runs.size(), nullptr), title_(card.runs.size(), false), begins_(card.runs.size(), false) {
    asks_ = read_for(adapted, how_);
    const bool abroad = asked_ == AskedWords::both || asks_;
    if (!abroad && house_word_stands(recipe_)) house_.emplace(pairs_of(*recipe_.kitchen, texts_));
    for (const CheckedWords& place : places_)
      if (place.kind != CheckedWords::Kind::verb && place.at < of_run_.size()) of_run_[place.at] = &place;
    if (asks_) find_alike();
    const auto title = [&](Range32 range) {
      for (std::uint32_t i = 0; i < range.count; ++i) title_[range.first + i] = true;
    };
    title(card_.title);
    for (const Section& section : card_.parts) title(section.title);
    // What is said of allergens and of heat stands before the list, which is where a thing is named first.
    for (const Fact& fact : card_.facts)
      if (fact.kind >= static_cast<std::uint16_t>(FactKind::contains) && fact.kind <= static_cast<std::uint16_t>(FactKind::checked)) title(fact.value);
    for (const CardStep& step : card_.steps)
      if (!step.runs.empty()) begins_[step.runs.first] = true;
    for (const Remark& remark : card_.remarks)
      if (!remark.runs.empty()) begins_[remark.runs.first] = true;
    for (const CheckedWords& place : places_)
      if (place.kind == CheckedWords::Kind::verb && asks_) find_verb(place);
  }

  // The runs stand in the order in which they are read.
  void run() {
    std::string& text = text_;
    text.reserve(card_.text.size() + 256);
    for (std::size_t r = 0; r < card_.runs.size(); ++r) {
      Run& run = card_.runs[r];
      const std::string said = said_of(r);
      run.begin = static_cast<std::uint32_t>(text.size());
      run.size = static_cast<std::uint32_t>(said.size());
      text += said;
    }
    card_.text = std::move(text);
    for (const WordPair* pair : noted_) add_note(card_, pair->note);
  }

 private:
  std::string said_of(std::size_t r) {
    const Run& run = card_.runs[r];
    const std::string_view text = card_.view(run);
    switch (run.role) {
      case Role::name:
      case Role::struck:
        return of_run_[r] != nullptr ? checked(text, *of_run_[r]) : worded(text, run.role == Role::name ? WordPlace::name : WordPlace::prose, title_[r]);
      case Role::text:
        return (run.style & kCode) != 0 ? std::string(text) : prose(r, text);
      case Role::amount:
      case Role::spent:
        return worded(text, WordPlace::count, false);
      case Role::temperature:
        return oven(text);
      default:
        return std::string(text);
    }
  }

  // Does the text before a run end a sentence, or does a block begin with it?
  bool sentence_before(std::size_t r) const {
    const std::size_t last = text_.find_last_not_of(' ');
    return begins_[r] || last == std::string::npos || std::string_view(".!?").find(text_[last]) != std::string_view::npos;
  }

  std::string prose(std::size_t r, std::string_view text) {
    how_.begins_sentence = sentence_before(r);
    std::vector<PlaceOfPair> found;
    if (asks_) {
      how_.place = WordPlace::prose;
      found = WordPairs::standard().find(text, how_);
      verbs(card_.runs[r], text, found);
    }
    std::string said = put(text, found, title_[r]);
    how_.begins_sentence = false;
    return house(std::move(said), WordPlace::prose);
  }

  // Where in the card's text the verb of a clause stands: at the front of the clause where it is its own, and the last
  // before it in its step: "Grill the haddock, grill 8 min".
  void find_verb(const CheckedWords& place) {
    if (recipe_.clauses[place.index].own_verb) find_verb(place, true);
    find_verb(place, false);
  }
  void find_verb(const CheckedWords& place, bool own) {
    const Clause& clause = recipe_.clauses[place.index];
    WordsRead how = how_;
    how.place = WordPlace::verb;
    const auto after = std::upper_bound(card_.runs.begin(), card_.runs.end(), place.at, [](std::uint32_t at, const Run& run) { return at < run.begin; });
    for (auto run = after; run != card_.runs.begin();) {
      --run;
      const std::string_view text = card_.view(*run);
      const std::size_t end = std::min<std::size_t>(text.size(), place.at - run->begin);
      const auto verbs = run->role != Role::text ? std::vector<PlaceOfPair>() : WordPairs::standard().find(own ? text : text.substr(0, end), how);
      for (auto verb = verbs.rbegin(); verb != verbs.rend(); ++verb) {
        const Found word = Lexicon::standard().longest(lower(text.substr(verb->begin, verb->end - verb->begin)), kVerbWord | kVerbForm);
        if (!word || word.row->verb != clause.verb || (own && verb->begin != end)) continue;
        verbs_.push_back(run->begin + static_cast<std::uint32_t>(verb->begin));
        return;
      }
      if (own || begins_[static_cast<std::size_t>(run - card_.runs.begin())]) return;
    }
  }

  void verbs(const Run& run, std::string_view text, std::vector<PlaceOfPair>& found) {
    const auto here = [&](std::uint32_t at) { return at >= run.begin && at < run.begin + run.size; };
    if (std::none_of(verbs_.begin(), verbs_.end(), here)) return;
    how_.place = WordPlace::verb;
    for (PlaceOfPair& verb : WordPairs::standard().find(text, how_)) {
      const bool checked = std::find(verbs_.begin(), verbs_.end(), run.begin + verb.begin) != verbs_.end();
      const bool clash = std::any_of(found.begin(), found.end(), [&](const PlaceOfPair& other) { return other.begin < verb.end && verb.begin < other.end; });
      if (checked && !clash) found.push_back(std::move(verb));
    }
    std::sort(found.begin(), found.end(), [](const PlaceOfPair& a, const PlaceOfPair& b) { return a.begin < b.begin; });
  }

  std::string worded(std::string_view text, WordPlace place, bool title) {
    how_.place = place;
    std::string said = asks_ ? put(text, WordPairs::standard().find(text, how_), title) : std::string(text);
    return place == WordPlace::count ? said : house(std::move(said), place);
  }

  std::string house(std::string text, WordPlace place) const {
    if (!house_) return text;
    const std::vector<PlaceOfPair> found = house_->find(text, {Side::american, place, true, false, how_.begins_sentence});
    return found.empty() ? text : with_words(text, found);
  }

  // One word for the other; both where that was asked for, or where they are not the same thing; that once a card.
  std::string put(std::string_view text, std::vector<PlaceOfPair> found, bool title) {
    std::erase_if(found, [&](const PlaceOfPair& place) {
      const bool both = asked_ == AskedWords::both || !place.pair->note.empty();
      if (!both) return false;
      if (title || place.pair->kind == PairKind::spelling || !said_.insert(place.pair).second) return true;
      if (!place.pair->note.empty()) noted_.push_back(place.pair);
      return false;
    });
    for (PlaceOfPair& place : found)
      if (asked_ == AskedWords::both || !place.pair->note.empty())
        place.instead = both_words(text.substr(place.begin, place.end - place.begin), lower_again(place));
    return found.empty() ? std::string(text) : with_words(text, found);
  }

  // In parentheses it begins no sentence.
  static std::string lower_again(const PlaceOfPair& place) {
    std::string word = place.instead;
    const std::string_view own = place.pair->said(Side::american), other = place.pair->said(Side::british);
    const bool name = own.starts_with(word.front()) || other.starts_with(word.front());
    if (!name && word.size() > 1 && word[0] >= 'A' && word[0] <= 'Z' && !(word[1] >= 'A' && word[1] <= 'Z')) word[0] = static_cast<char>(word[0] - 'A' + 'a');
    return word;
  }

  // Two foods of one part that have one name abroad keep their own, with the other beside it in the list.
  void find_alike() {
    how_.place = WordPlace::name;
    for (const Part& part : recipe_.parts) {
      std::vector<std::string> said;
      for (Index l = part.lines.first; l < part.lines.end(); ++l) said.push_back(lower(with_words(recipe_.lines[l].name, silent(recipe_.lines[l].name, how_))));
      for (std::size_t a = 0; a < said.size(); ++a)
        for (std::size_t b = 0; b < a; ++b) {
          const auto first = part.lines.first + static_cast<Index>(b), second = part.lines.first + static_cast<Index>(a);
          if (said[a].empty() || said[a] != said[b] || same_letters(recipe_.lines[first].name, recipe_.lines[second].name)) continue;
          if (recipe_.lines[first].given || recipe_.lines[second].given) continue;  // one comes out of another
          alike_.insert({first, second});
        }
    }
  }

  std::string beside(std::string_view text) {
    how_.place = WordPlace::name;
    std::vector<PlaceOfPair> found = silent(text, how_);
    for (PlaceOfPair& place : found) place.instead = both_words(text.substr(place.begin, place.end - place.begin), lower_again(place));
    return with_words(text, found);
  }

  // A name of the list, or a mention of one; what names a part or another recipe goes as titles do.
  std::string checked(std::string_view text, const CheckedWords& place) {
    const bool line = place.index != kNone;
    if (line && alike_.contains(place.index) && asked_ != AskedWords::both) return place.kind == CheckedWords::Kind::name ? beside(text) : std::string(text);
    std::string said = worded(text, line ? WordPlace::name : WordPlace::prose, !line);
    if (!line || place.kind != CheckedWords::Kind::mention || said != text) return said;
    return following(text, recipe_.lines[place.index].name);
  }

  // A mention keeps to the words of its line.
  std::string following(std::string_view text, std::string_view name) {
    if (asked_ == AskedWords::both) return std::string(text);
    how_.place = WordPlace::name;
    std::vector<PlaceOfPair> found;
    if (asks_) found = silent(name, how_);
    return follow(text, name, house(with_words(name, found), WordPlace::name));
  }

  // A fan's figure is one where adapt wrote it or the page did; there alone the word changes.
  std::string oven(std::string_view text) const {
    std::string said(text);
    if (asked_ != AskedWords::american && asked_ != AskedWords::british) return said;
    constexpr std::string_view kWords[] = {"fan", "convection"};
    const std::string_view from = kWords[asked_ == AskedWords::british ? 1 : 0], to = kWords[asked_ == AskedWords::british ? 0 : 1];
    for (std::size_t at = said.find(from); at != std::string::npos; at = said.find(from, at + 1)) {
      const bool word = (at == 0 || letter_at(said, at - 1) == 0) && letter_at(said, at + from.size()) == 0;
      if (word) said.replace(at, from.size(), to);
    }
    return said;
  }

  Card& card_;
  const Recipe& recipe_;
  AskedWords asked_;
  const std::vector<CheckedWords>& places_;
  std::vector<const CheckedWords*> of_run_;
  std::vector<bool> title_, begins_;  // by run: of a title; the first of a step or a remark
  std::vector<std::uint32_t> verbs_;  // of clauses, where they stand in the text as it was
  std::string text_;                  // of the card, as far as it is written anew
  WordsRead how_;
  bool asks_ = false;
  std::vector<std::string> texts_;  // of the house's pairs
  std::optional<WordPairs> house_;
  std::set<Index> alike_;           // lines that would bear one name
  std::set<const WordPair*> said_;
  std::vector<const WordPair*> noted_;
};

}  // namespace

WordsOf words_written(const Recipe& recipe) {
  if (recipe.words != WordsOf::unstated) return recipe.words;
  if (recipe.kitchen && recipe.kitchen->words != WordsOf::unstated) return recipe.kitchen->words;
  if (recipe.dialect == Dialect::american) return WordsOf::american;
  return recipe.dialect == Dialect::british ? WordsOf::british : WordsOf::unstated;
}

std::string name_in(std::string_view text, std::string_view listed, const WordsRead& how) {
  const std::string said = with_words(text, silent(text, how));
  return said != text ? said : follow(text, listed, with_words(listed, silent(listed, how)));
}

std::string name_in(std::string_view name, const Adapted& adapted) {
  WordsRead how;
  const bool asks = read_for(adapted, how) && adapted.words != AskedWords::both;
  how.place = WordPlace::name;
  return asks ? name_in(name, name, how) : std::string(name);
}

bool wants_wording(const Adapted& adapted) { return adapted.words != AskedWords::as_written || house_word_stands(*adapted.recipe); }

void reword(Card& card, const Adapted& adapted, const std::vector<CheckedWords>& places) { Wording(card, adapted, places).run(); }

}  // namespace qtn
