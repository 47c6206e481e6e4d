// The split, which cuts lines, fields, steps and brackets by hand, against the same rules as they are written in
// grammar/lines.hpp and grammar/step_words.hpp: both must cut every text at the same places.
#include <doctest/doctest.h>

#include "cases.hpp"
#include "grammar/lines.hpp"
#include "grammar/step_words.hpp"
#include "mutated.hpp"
#include "samples.hpp"
#include "syntax/tree.hpp"

using namespace qtn;
namespace g = qtn::grammar;
namespace pegtl = tao::pegtl;

namespace {

struct Cut {
  Kind kind;
  std::size_t begin, end, depth;
  bool operator==(const Cut&) const = default;
};

struct State {
  const char* origin;
  std::vector<Cut> cuts;
  std::size_t depth;
};

template <typename Rule>
concept HasNode = requires { Rule::node; };

struct Lookahead {
  template <typename... Rules>
  static std::true_type of(const pegtl::internal::at<Rules...>*);
  template <typename... Rules>
  static std::true_type of(const pegtl::internal::not_at<Rules...>*);
  static std::false_type of(...);
};

// A rule with `node` is a cut; what failed or only looked ahead is none.
template <typename Rule>
struct Cutting : pegtl::normal<Rule> {
  template <pegtl::apply_mode A, pegtl::rewind_mode M, template <typename...> class Action, template <typename...> class Control, typename Input>
  static bool match(Input& in, State& state) {
    const std::size_t before = state.cuts.size(), begin = static_cast<std::size_t>(in.current() - state.origin);
    if constexpr (HasNode<Rule>) state.cuts.push_back({Rule::node, begin, begin, state.depth++});
    const bool matched = pegtl::match<Rule, A, M, Action, Control>(in, state);
    if constexpr (HasNode<Rule>) --state.depth;
    if (!matched || decltype(Lookahead::of(static_cast<const Rule*>(nullptr)))::value) state.cuts.resize(before);
    else if constexpr (HasNode<Rule>) state.cuts[before].end = static_cast<std::size_t>(in.current() - state.origin);
    return matched;
  }
};

template <typename Rule>
std::vector<Cut> cut(std::string_view all, std::size_t begin, std::size_t end, std::size_t depth) {
  pegtl::memory_input<pegtl::tracking_mode::lazy, pegtl::eol::lf, const char*> in(all.data() + begin, all.data() + end, "");
  State state{all.data(), {}, depth};
  const bool whole = pegtl::parse<Rule, pegtl::nothing, Cutting>(in, state);
  CHECK_MESSAGE(whole, "the written grammar does not read all of it");
  return std::move(state.cuts);
}

// A block ends where its last line does, but whose the blanks and remarks behind it are does not matter: depth says
// what stands in it.
Cut plain(Cut one) {
  if (one.kind == Kind::block) one.end = one.begin;
  if (one.kind == Kind::take_line || one.kind == Kind::change || one.kind == Kind::fact) one.kind = Kind::bad_line;
  return one;
}

std::vector<Cut> by_grammar(std::string_view text) {
  std::vector<Cut> out;
  bool in_step = false;
  for (const Cut& one : cut<g::file>(text, 0, text.size(), 1)) {
    if (one.kind == Kind::text && in_step) {
      const auto words = cut<g::step_words>(text, one.begin, one.end, one.depth);
      out.insert(out.end(), words.begin(), words.end());
    } else {
      out.push_back(plain(one));
    }
    if (one.kind != Kind::word) in_step = one.kind == Kind::step;
  }
  return out;
}

class TreeCuts {
 public:
  TreeCuts(const Tree& tree, std::string_view text) : text_(text) { walk(View(tree, 0), 1); }
  std::vector<Cut> out;

 private:
  void add(Kind kind, std::size_t begin, std::size_t end, std::size_t depth) { out.push_back(plain({kind, begin, end, depth})); }

  void walk(View owner, std::size_t depth) {
    for (View child : owner) {
      switch (child.kind()) {
        case Kind::field: field(child, depth); break;
        case Kind::unknown_field:
        case Kind::block:
        case Kind::step:
          add(child.kind(), child->begin, child->end, depth);
          walk(child, depth + 1);
          break;
        case Kind::word:
        case Kind::block_name:
        case Kind::bracket:
        case Kind::link:
        case Kind::open_bracket:
        case Kind::note:
        case Kind::bad_line:
        case Kind::take_line:
        case Kind::change:
        case Kind::fact: add(child.kind(), child->begin, child->end, depth); break;
        default: break;  // prose, and what is read inside a take head
      }
    }
  }

  // A value that was read has no node of its own: it begins behind the colon.
  void field(View at, std::size_t depth) {
    add(Kind::field, at->begin, at->end, depth);
    const View word = at.first(Kind::word);
    add(Kind::word, word->begin, word->end, depth + 1);
    std::size_t begin = text_.find(':', word->end) + 1;
    while (begin < at->end && (text_[begin] == ' ' || text_[begin] == '\t')) ++begin;
    for (View child : at)
      if (child.kind() == Kind::text || child.kind() == Kind::bad_value) begin = child->begin;
    if (begin < at->end) add(Kind::text, begin, at->end, depth + 1);
  }

  std::string_view text_;
};

std::string written(const std::vector<Cut>& cuts, std::size_t at, std::string_view text) {
  if (at >= cuts.size()) return "nothing more";
  const Cut& one = cuts[at];
  return std::string(name_of(one.kind)) + " " + std::to_string(one.begin) + " to " + std::to_string(one.end) + " depth " + std::to_string(one.depth) + ": " +
         std::string(text.substr(one.begin, std::min<std::size_t>(one.end - one.begin, 60)));
}

std::size_t compare(const std::string& name, const std::string& all) {
  const Source source(name, all);
  const std::string_view text = source.text();
  const Tree tree = parse(source);
  const auto split = TreeCuts(tree, text).out, rules = by_grammar(text);
  if (split == rules) return split.size();
  std::size_t at = 0;
  while (at < split.size() && at < rules.size() && split[at] == rules[at]) ++at;
  FAIL_CHECK(name << "\nsplit:   " << written(split, at, text) << "\ngrammar: " << written(rules, at, text) << "\n" << text);
  return 0;
}

}  // namespace

TEST_CASE("split and written grammar cut the corpus, the example book and the samples of the documents at the same places") {
  std::size_t cuts = 0, texts = 0;
  const auto one = [&](const std::string& name, const std::string& text) { cuts += compare(name, text), ++texts; };
  for (const auto& path : tests::below("grammar/corpus", ".txt"))
    for (const tests::Case& each : tests::read_cases(tests::slurp(path))) one(each.title, each.text);
  for (const auto& path : tests::below("examples", ".qtn")) one(path.filename().string(), tests::slurp(path));
  for (const auto& path : tests::below("tests/golden", ".qtn")) one(path.filename().string(), tests::slurp(path));
  for (const auto& path : tests::documents())
    for (const tests::Sample& sample : tests::samples_of(tests::slurp(path))) one(path.filename().string(), sample.text);
  CHECK(texts >= 400);
  CHECK(cuts >= 5000);
}

TEST_CASE("split and written grammar cut damaged recipes at the same places") {
  const auto books = tests::seeds();
  std::mt19937 random(20260315);
  for (int round = 0; round < 3000; ++round) compare("mutated", tests::mutated(books, random));
}

TEST_CASE("split and written grammar cut any bytes at the same places") {
  std::mt19937 random(8);
  static const std::string pieces[] = {"[", "]", "](", ")", "`", "``", "\\", "\n", "\r\n", "\r", "\n\n", " ", "  ", "\t", "# ", "a", "take:", "method:", "note:", "meanwhile:", "serves:", "part: A",
                                       "trial: A", "film:", "menu:", "kitchen:", "ovens:", "foo:", "metohd:", "servs:", ":", "\xEF\xBB\xBF", "\xFF", "ahead :", "recipe: A\n", "5 g", "aaaaaaaaaaaaaaa", "bbbbbbbbbbbbbbbb:"};
  static const std::string heads[] = {"", "recipe: A\n", "recipe: A\ntake:\n", "recipe: A\nmethod:\n", "recipe: A\nmethod:\n  Stir ", "recipe: A\ntrial: B\n", "recipe: A\nfilm:\n", "kitchen: A\novens:\n", "menu: A\n"};
  for (int round = 0; round < 40000; ++round) {
    std::string text = heads[random() % std::size(heads)];
    for (std::size_t left = random() % 24; left > 0; --left) text += pieces[random() % std::size(pieces)];
    compare("pieces", text);
  }
}
