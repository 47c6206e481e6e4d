#include "words/pairs.hpp"

#include <algorithm>
#include <unordered_map>

#include "data/tables.hpp"
#include "words/fold.hpp"
#include "words/lexicon.hpp"
#include "words/rows.hpp"
#include "words/verbs.hpp"

namespace qtn {
namespace {

// Cells of a row of data/word_pairs.txt.
enum Cell : std::size_t { kBritish, kAmerican, kKind, kFlags, kSource, kNote };

constexpr std::string_view kKinds[] = {"ingredient", "cut", "dairy", "equipment", "verb", "count", "wording", "spelling"};

WordPair pair_of(const Rows& row) {
  WordPair pair{row[kBritish], row[kAmerican]};
  for (std::size_t i = 0; i < std::size(kKinds); ++i)
    if (kKinds[i] == row[kKind]) pair.kind = static_cast<PairKind>(i);
  for (std::string_view flags = row[kFlags]; !flags.empty();) {
    const std::string_view flag = next_item(flags, ',');
    if (flag == "prose") pair.prose = pair.checked = true;
    if (flag == "list") pair.checked = true;
    if (flag == "note") pair.checked = true, pair.note = row[kNote];
    if (flag == "alone") pair.alone = true;
    if (flag == "with a tin") pair.with_tin = true;
    if (flag == "sure") pair.sure = true;
    if (flag == "to American") pair.to_british = false;
    if (flag == "to British") pair.to_american = false;
  }
  pair.source = row[kSource];
  return pair;
}

// "shrimp / shrimp": one and several, where the second is not the plural of the rule.
struct Forms {
  std::string_view one, many;
};
Forms forms_of(std::string_view item) {
  const std::string_view one = next_item(item, '/');
  return {one, trim(item)};
}

bool capital(char c) { return c >= 'A' && c <= 'Z'; }
bool small(char c) { return c >= 'a' && c <= 'z'; }
char raised(char c) { return small(c) ? static_cast<char>(c - 'a' + 'A') : c; }
bool is_digit(char c) { return c >= '0' && c <= '9'; }

struct Token {
  std::size_t begin, end;
  std::string folded, lower;
  bool joined = false;  // only a blank stands between it and the token before
};

std::vector<Token> tokens_of(std::string_view text) {
  std::vector<Token> out;
  const auto letter = [&](std::size_t at) { return at < text.size() && is_digit(text[at]) ? 1 : letter_at(text, at); };
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t begin = at;
    for (int size = letter(at); size != 0;) {
      at += static_cast<std::size_t>(size);
      size = letter(at);
      if (size != 0 || at >= text.size()) continue;
      // An apostrophe or a hyphen between two letters belongs to the word.
      const std::size_t mark = text[at] == '-' || text[at] == '\'' ? 1 : text.substr(at, 3) == "’" ? 3 : 0;
      if (mark != 0 && letter_at(text, at + mark) != 0) at += mark, size = letter_at(text, at);
    }
    if (at == begin) {
      ++at;
      continue;
    }
    const std::string_view word = text.substr(begin, at - begin);
    bool joined = !out.empty();
    for (std::size_t between = out.empty() ? begin : out.back().end; between < begin && joined;) {
      const int blank = text[between] == '\n' ? 1 : blank_at(text, between);
      // "confectioners' sugar": what ends the word in front
      const std::size_t mark = between != out.back().end ? 0 : text[between] == '\'' ? 1 : text.substr(between, 3) == "’" ? 3 : 0;
      joined = blank != 0 || (mark != 0 && between + mark < begin);
      between += blank != 0 ? static_cast<std::size_t>(blank) : std::max<std::size_t>(mark, 1);
    }
    out.push_back({begin, at, fold_word(word), lower(word), joined});
  }
  return out;
}

// "the shrimp are": several; "shrimp soup": one. Where a word has one form for both.
bool several_here(std::string_view text, std::size_t end) {
  std::string_view rest = text.substr(end);
  if (rest.empty() || blank_at(rest, 0) == 0) return true;
  rest = trim(rest);
  const std::string next = lower(rest.substr(0, rest.find_first_of(" ,.;:)\n")));
  for (const std::string_view word : {"and", "or", "with", "in", "into", "to", "are", "until", "from", "for", "over", "on", "at", "then", "through", "when", "as", "go", "turn", ""})
    if (next == word) return true;
  return false;
}

bool sentence_before(std::string_view text, std::size_t begin, bool begins_sentence) {
  while (begin > 0 && (text[begin - 1] == ' ' || text[begin - 1] == '\n')) --begin;
  return begin == 0 ? begins_sentence : std::string_view(".!?").find(text[begin - 1]) != std::string_view::npos;
}

// In the case of what it stands for. `own` is the table's word for that: a capital of its own says nothing.
std::string in_case(std::string_view was, std::string_view own, std::string said, bool sentence) {
  std::size_t letters = 0;
  bool all = true;
  for (char c : was) letters += capital(c) || small(c) ? 1u : 0u, all = all && !small(c);
  if (all && letters > 1) {
    for (char& c : said) c = raised(c);
  } else if (capital(was.front()) && (!capital(own.front()) || sentence)) {
    said.front() = raised(said.front());
  }
  return said;
}

std::string collapsed(std::string_view text) {
  std::string out;
  for (const Token& token : tokens_of(text)) out += (out.empty() ? "" : " ") + std::string(text.substr(token.begin, token.end - token.begin));
  return out;
}

}  // namespace

std::string_view WordPair::said(Side side) const {
  std::string_view list = side == Side::british ? british : american;
  return forms_of(next_item(list, ',')).one;
}

struct WordPairs::Impl {
  struct Entry {
    std::vector<std::string> words;
    const WordPair* pair;
    Forms own;
    VerbForm form = VerbForm::plain;
    bool whole_letters = false;  // compared letter by letter, not folded
    bool many = false;           // the table's own word is a plural: "sprinkles", which is not "sprinkle"
  };
  std::vector<WordPair> pairs;
  std::unordered_map<std::string, std::vector<Entry>> by_first[2];
  std::vector<std::pair<std::string, const WordPair*>> fronts[2];  // of spellings

  explicit Impl(std::vector<WordPair> given) : pairs(std::move(given)) {
    for (const WordPair& pair : pairs)
      for (const Side side : {Side::british, Side::american}) add(pair, side);
  }

  void add(const WordPair& pair, Side side) {
    std::string_view list = side == Side::british ? pair.british : pair.american;
    while (!list.empty()) {
      const Forms own = forms_of(next_item(list, ','));
      if (pair.kind == PairKind::spelling) {
        fronts[static_cast<std::size_t>(side)].emplace_back(own.one, &pair);
        continue;
      }
      if (pair.kind != PairKind::verb) {
        Entry entry{{}, &pair, own};
        entry.many = own.many.empty() && singular_of(own.one) != own.one;
        for (Token& token : tokens_of(own.one)) entry.words.push_back(std::move(token.folded));
        put(side, std::move(entry));
        continue;
      }
      for (const VerbForm form : {VerbForm::plain, VerbForm::third, VerbForm::ing, VerbForm::past}) {
        Entry entry{{}, &pair, own, form, true};
        for (Token& token : tokens_of(verb_form(own.one, form))) entry.words.push_back(std::move(token.lower));
        put(side, std::move(entry));
      }
    }
  }

  void put(Side side, Entry&& entry) {
    if (entry.words.empty()) return;
    auto& same = by_first[static_cast<std::size_t>(side)][entry.words.front()];
    same.push_back(std::move(entry));
  }

  static bool may(const WordPair& pair, const WordsRead& how) {
    if (!(how.to == Side::american ? pair.to_american : pair.to_british)) return false;
    if ((!how.stated && !pair.sure) || (pair.with_tin && !how.has_tin)) return false;
    switch (how.place) {
      case WordPlace::name:
        return pair.checked && pair.kind != PairKind::equipment && pair.kind != PairKind::verb && pair.kind != PairKind::count;
      case WordPlace::prose:
        return pair.prose && pair.kind != PairKind::count;
      case WordPlace::verb:
        return pair.checked && pair.kind == PairKind::verb;
      case WordPlace::count:
        return pair.checked && pair.kind == PairKind::count;
    }
    return false;
  }

  // The entry at a token: the longest, of those the first that may change here; `changes` says whether one may.
  struct Best {
    const Entry* entry = nullptr;
    bool changes = false;
  };
  Best best(std::string_view text, const std::vector<Token>& tokens, std::size_t at, const WordsRead& how) const {
    Best out;
    const auto look = [&](Side side, const std::string& first, bool letters) {
      const auto& index = by_first[static_cast<std::size_t>(side)];
      const auto found = index.find(first);
      if (found == index.end()) return;
      for (const Entry& entry : found->second) {
        if (entry.whole_letters != letters || !stands(text, tokens, at, entry)) continue;
        const bool whole = tokens.size() == entry.words.size() || (tokens.size() == entry.words.size() + 1 && tokens[0].lower == "the");
        const bool may_here = side != how.to && may(*entry.pair, how) && (!entry.pair->alone || whole);
        const std::size_t size = entry.words.size(), most = out.entry == nullptr ? 0 : out.entry->words.size();
        if (size > most || (size == most && may_here && !out.changes)) out = {&entry, may_here};
      }
    };
    look(across(how.to), tokens[at].folded, false);
    look(across(how.to), tokens[at].lower, true);
    look(how.to, tokens[at].folded, false);  // "red pepper flakes" are said already, and hold no red pepper
    return out;
  }

  static bool stands(std::string_view text, const std::vector<Token>& tokens, std::size_t at, const Entry& entry) {
    if (at + entry.words.size() > tokens.size()) return false;
    for (std::size_t i = 0; i < entry.words.size(); ++i) {
      const Token& token = tokens[at + i];
      if ((i != 0 && !token.joined) || (entry.whole_letters ? token.lower : token.folded) != entry.words[i]) return false;
    }
    if (!entry.many) return true;
    const std::string words = collapsed(text.substr(tokens[at].begin, tokens[at + entry.words.size() - 1].end - tokens[at].begin));
    return singular_of(words) != words;
  }

  PlaceOfPair said(std::string_view text, std::size_t begin, std::size_t end, const Entry& entry, const WordsRead& how) const {
    std::string_view list = how.to == Side::british ? entry.pair->british : entry.pair->american;
    const Forms other = forms_of(next_item(list, ','));
    const std::string_view was = text.substr(begin, end - begin);
    std::string instead(other.one);
    if (entry.pair->kind == PairKind::verb) {
      instead = verb_form(other.one, entry.form);
    } else if (!entry.many) {
      const bool one_form = entry.own.many == entry.own.one;
      const std::string words = collapsed(was);
      if (one_form ? several_here(text, end) : singular_of(words) != words)
        instead = other.many.empty() ? plural_of(other.one) : std::string(other.many);
    }
    return {entry.pair, begin, end, in_case(was, entry.own.one, std::move(instead), sentence_before(text, begin, how.begins_sentence))};
  }
};

WordPairs::WordPairs(std::vector<WordPair> pairs) : impl_(new Impl(std::move(pairs))) {}
WordPairs::~WordPairs() { delete impl_; }

const WordPairs& WordPairs::standard() {
  static const WordPairs only = [] {
    std::vector<WordPair> pairs;
    for (Rows rows(data::word_pairs()); rows.next();) pairs.push_back(pair_of(rows));
    return WordPairs(std::move(pairs));
  }();
  return only;
}

std::span<const WordPair> WordPairs::all() const { return impl_->pairs; }

std::vector<PlaceOfPair> WordPairs::find(std::string_view text, const WordsRead& how) const {
  std::vector<PlaceOfPair> out;
  const std::vector<Token> tokens = tokens_of(text);
  for (std::size_t at = 0; at < tokens.size();) {
    const Impl::Best best = impl_->best(text, tokens, at, how);
    if (best.entry != nullptr) {
      const std::size_t last = at + best.entry->words.size() - 1;
      if (best.changes) out.push_back(impl_->said(text, tokens[at].begin, tokens[last].end, *best.entry, how));
      at = last + 1;
      continue;
    }
    for (const auto& [front, pair] : impl_->fronts[static_cast<std::size_t>(across(how.to))]) {
      if (!tokens[at].lower.starts_with(front) || !Impl::may(*pair, how)) continue;
      const std::size_t begin = tokens[at].begin, end = begin + front.size();
      out.push_back({pair, begin, end, in_case(text.substr(begin, end - begin), front, std::string(pair->said(how.to)), false)});
      break;
    }
    ++at;
  }
  return out;
}

std::string with_words(std::string_view text, std::span<const PlaceOfPair> places) {
  const auto vowel = [](char c) { return std::string_view("aeiouAEIOU").find(c) != std::string_view::npos; };
  std::string out;
  std::size_t from = 0;
  for (const PlaceOfPair& place : places) {
    out += text.substr(from, place.begin - from);
    from = place.end;
    // The article in front: "an aubergine", "a courgette".
    const bool was = vowel(text[place.begin]), is = vowel(place.instead.front());
    const std::string_view article = was ? "an " : "a ";
    const std::size_t at = out.size() - std::min(out.size(), article.size());
    if (was != is && lower(std::string_view(out).substr(at)) == article && (at == 0 || letter_at(out, at - 1) == 0))
      was ? out.erase(out.size() - 2, 1) : out.insert(out.size() - 1, "n");
    out += place.instead;
    // "the prawns' shells", "the shrimp's shells".
    for (const std::string_view mark : {"'", "’"}) {
      const std::string_view rest = text.substr(from);
      if (!rest.starts_with(mark) || rest.substr(mark.size()).starts_with('s') || text[from - 1] != 's' || place.instead.ends_with('s')) continue;
      out += mark, out += 's';
      from += mark.size();
    }
  }
  return out += text.substr(from);
}

std::string both_words(std::string_view own, std::string_view other) {
  const auto last_word = [](std::string_view text) { return text.substr(text.rfind(' ') + 1); };
  std::string_view tail = own.substr(own.size());
  for (std::string_view a = own, b = other;;) {
    if (a.find(' ') == std::string_view::npos || b.find(' ') == std::string_view::npos || last_word(a) != last_word(b)) break;
    a.remove_suffix(last_word(a).size() + 1), b.remove_suffix(last_word(b).size() + 1);
    tail = own.substr(a.size());
  }
  std::string out(own.substr(0, own.size() - tail.size()));
  return out.append(" (").append(other.substr(0, other.size() - tail.size())).append(")").append(tail);
}

}  // namespace qtn
