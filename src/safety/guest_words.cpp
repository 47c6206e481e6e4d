#include "safety/guest_words.hpp"

#include <algorithm>
#include <span>
#include <string>

#include "words/fold.hpp"
#include "words/lists.hpp"

namespace qtn {
namespace {

bool among(std::string_view word, std::span<const std::string_view> words) { return std::find(words.begin(), words.end(), word) != words.end(); }

// Words that say who they are, not what they eat.
constexpr std::string_view kWho[] = {"guests", "guest", "people", "persons", "person", "adults", "adult", "children", "child", "kids", "kid", "friends", "friend",
                     "covers", "cover", "places", "place", "of", "them", "us", "these", "those", "whom", "which", "who", "is", "are", "has", "have",
                     "with", "a", "an", "the", "one", "more", "other", "others", "another", "each", "in", "all", "total", "at", "table", "for", "about",
                     "including", "plus", "also", "x", "lunch", "dinner", "supper", "must", "eat", "eats", "can", "to", "from", "any", "please", "strict", "only"};
// Words that say that something is not eaten, before its name and behind it.
constexpr std::string_view kBefore[] = {"without", "no", "not", "never", "avoids", "avoid", "avoiding", "allergic", "allergy", "allergies", "intolerant", "intolerance", "free",
                        "cannot", "can't", "doesn't", "don't"};
constexpr std::string_view kTurn[] = {"without", "no", "not", "avoids", "cannot", "can't", "allergic"};
constexpr std::string_view kBehind[] = {"free", "allergic", "allergy", "allergies", "intolerant", "intolerance", "sufferer", "sufferers"};
constexpr std::string_view kJoin[] = {"and", "or", "nor", "but", "&", "+"};
constexpr std::string_view kCoeliac[] = {"coeliac", "coeliacs", "celiac", "celiacs"};
constexpr std::string_view kVegan[] = {"vegan", "vegans", "plant-based"};
constexpr std::string_view kVegetarian[] = {"vegetarian", "vegetarians", "veggie", "veggies"};
constexpr std::string_view kOtherDiet[] = {"pescatarian", "pescatarians", "pescetarian", "pescetarians", "halal", "kosher"};

struct Token {
  std::string word;  // lower case
  Span span;
  bool joined = false;  // a comma, a bracket or "and" before it: another item
};

bool ends_word(char c) { return c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == ',' || c == ';' || c == '(' || c == ')' || c == ':' || c == '.'; }

std::vector<Token> tokens_of(const Recipe& menu, Span span) {
  std::vector<Token> out;
  const std::string_view text = menu.slice(span);
  bool joined = true;
  for (std::size_t at = 0; at < text.size();) {
    if (ends_word(text[at])) {
      joined = joined || text[at] == ',' || text[at] == ';' || text[at] == '(' || text[at] == ')' || text[at] == ':';
      ++at;
      continue;
    }
    std::size_t end = at;
    while (end < text.size() && !ends_word(text[end])) ++end;
    Token token{lower(text.substr(at, end - at)), {static_cast<std::uint32_t>(span.begin + at), static_cast<std::uint32_t>(span.begin + end)}, joined};
    at = end;
    if (const std::size_t curled = token.word.find("\u2019"); curled != std::string::npos) token.word.replace(curled, 3, "'");
    joined = among(token.word, kJoin);
    if (joined) continue;
    out.push_back(std::move(token));
  }
  return out;
}

// "3"; "three" only where an item begins.
bool counts(const Token& token) {
  if (token.word[0] >= '0' && token.word[0] <= '9') return true;
  return token.joined && list_word(WordList::number, token.word) != nullptr;
}

class Reader {
 public:
  Reader(const Recipe& menu, Report* report) : menu_(menu), report_(report) {}

  std::vector<GuestNeed> run(Span span) {
    const std::vector<Token> tokens = tokens_of(menu_, span);
    for (std::size_t at = 0; at < tokens.size();) {
      std::size_t end = at + 1;
      while (end < tokens.size() && !counts(tokens[end])) ++end;
      guest(std::span(tokens).subspan(at, end - at));
      at = end;
    }
    return std::move(out_);
  }

 private:
  void guest(std::span<const Token> tokens) {
    need_ = {};
    need_.place = {tokens.front().span.begin, tokens.back().span.end};
    need_.who = menu_.slice(need_.place);
    without_ = found_ = false;
    if (counts(tokens.front())) tokens = tokens.subspan(1);
    while (!tokens.empty()) {
      std::size_t size = 1;
      while (size < tokens.size() && !tokens[size].joined) ++size;
      item(tokens.first(size));
      tokens = tokens.subspan(size);
    }
    if (found_) out_.push_back(need_);
  }

  void item(std::span<const Token> tokens) {
    const Span all{tokens.front().span.begin, tokens.back().span.end};
    const bool nothing = tokens.front().word == "no";  // "no allergies"
    bool said = false;
    for (; !tokens.empty(); tokens = tokens.subspan(1)) {
      const std::string& word = tokens.front().word;
      if (among(word, kBefore)) without_ = true, said = false;
      else if (among(word, kCoeliac)) said = avoid(allergens_meant("gluten"));
      else if (among(word, kVegan)) said = diet(tokens.front(), allergens_meant("milk") | allergens_meant("eggs") | allergens_meant("seafood"));
      else if (among(word, kVegetarian)) said = diet(tokens.front(), allergens_meant("seafood"));
      else if (among(word, kOtherDiet)) said = diet(tokens.front(), 0);
      else if (!among(word, kWho) && !(said && word == "disease")) break;
    }
    // "a friend of Ann without nuts": what stands before is not read, what follows is.
    for (std::size_t k = 1; !without_ && k + 1 < tokens.size(); ++k)
      if (among(tokens[k].word, kTurn)) {
        not_read({tokens.front().span.begin, tokens[k - 1].span.end});
        return item(tokens.subspan(k));
      }
    for (; !tokens.empty(); tokens = tokens.first(tokens.size() - 1)) {
      if (among(tokens.back().word, kBehind)) without_ = true;
      else if (!among(tokens.back().word, kWho)) break;
    }
    if (tokens.empty()) {
      if (without_ && !found_ && !said && !nothing) not_read(all);
      return;
    }
    Span name{tokens.front().span.begin, tokens.back().span.end};
    const std::string& last = tokens.back().word;
    for (const std::string_view end : {"-free", "-allergic", "-intolerant"})
      if (last.size() > end.size() && last.ends_with(end)) without_ = true, name.end -= static_cast<std::uint32_t>(end.size());
    if (!without_) return not_read(all);
    found_ = true;
    need_.avoids |= promised(menu_, name, report_);
  }

  bool avoid(AllergenSet set) {
    need_.avoids |= set;
    return found_ = true;
  }

  bool diet(const Token& token, AllergenSet set) {
    need_.more = true;
    if (report_ != nullptr)
      report_->add(Code::diet_not_checked, token.span, quoted(menu_.slice(token.span)) + " asks for more than the lists of allergens can tell" + (set != 0 ? "; they say only which dishes it surely is not." : "."))
          .expect("a look at every dish by somebody who knows");
    return avoid(set);
  }

  void not_read(Span item) {
    need_.more = found_ = true;
    if (report_ != nullptr)
      report_->add(Code::guests_not_read, item, "Nobody can tell from these words what a guest does without.")
          .find(quoted(menu_.slice(item))).expect("`2 coeliac`, `1 without milk`, `1 allergic to nuts` or `1 nut-free`; what is not about food in a line `note:`");
  }

  const Recipe& menu_;
  Report* report_;
  std::vector<GuestNeed> out_;
  GuestNeed need_;
  bool without_ = false;  // an item before said so: "without milk, eggs"
  bool found_ = false;
};

}  // namespace

std::vector<GuestNeed> read_guests(const Recipe& menu, Span guests, Report* report) { return Reader(menu, report).run(guests); }

}  // namespace qtn
