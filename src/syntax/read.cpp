// The one file that includes PEGTL: the grammar run over short spans, its rules' nodes written into the flat tree.
#include "syntax/read.hpp"

#include "grammar/heads.hpp"
#include "syntax/first_bytes.hpp"

namespace qtn::syntax {
namespace {

namespace pegtl = tao::pegtl;
using Input = pegtl::memory_input<pegtl::tracking_mode::lazy, pegtl::eol::lf, const char*>;

// What the rules write into. `last` is what the latest look into the lexicon found.
struct State {
  std::vector<Node>& nodes;
  const char* origin;
  std::uint16_t last = 0;
  // The latest look is kept: several alternatives at one place ask for one word.
  const char* looked_at = nullptr;
  Lexicon::Words words{};
  const Lexicon& lexicon = Lexicon::standard();
  Found look(std::string_view text, unsigned classes) {
    if (text.data() != looked_at) {
      words = lexicon.words(text);
      looked_at = text.data();
    }
    return (words.classes & classes) == 0 ? Found{} : lexicon.longest(text, words, classes);
  }
  // Blanks likewise.
  const char* blank_from = nullptr;
  std::size_t blank_size = 0;
  std::size_t blanks(const char* at, const char* end) {
    if (at != blank_from) {
      blank_from = at;
      blank_size = grammar::blanks_at(at, end);
    }
    return blank_size;
  }
  // Was the latest thing read a whole number above one?
  bool after_several() const {
    if (nodes.empty() || nodes.back().kind != Kind::number) return false;
    const std::string_view digits{origin + nodes.back().begin, nodes.back().end - nodes.back().begin};
    return digits.find_first_not_of("0123456789") == std::string_view::npos && digits != "1" && digits != "0";
  }
  void found(std::uint16_t id) { last = id; }
  std::uint32_t offset(const Input& in) const { return static_cast<std::uint32_t>(in.current() - origin); }
};

template <typename Rule>
concept HasNode = requires { Rule::node; };

// Has a rule, or a part of it at any depth, a node? Most have none, and are matched without looking at the nodes.
template <typename Rule, typename Parts = typename Rule::subs_t>
struct Writes;
template <typename Rule, typename... Parts>
struct Writes<Rule, pegtl::type_list<Parts...>> {
  static constexpr bool below = (Writes<Parts>::below || ...) || (HasNode<Parts> || ...);
  static constexpr bool any = below || HasNode<Rule>;
};

struct Lookahead {
  template <typename... Rules>
  static std::true_type of(const pegtl::internal::at<Rules...>*);
  template <typename... Rules>
  static std::true_type of(const pegtl::internal::not_at<Rules...>*);
  static std::false_type of(...);
};

// A rule with `node` opens one and closes it; every rule that fails takes back what it and its parts wrote, and so
// does one that only looked ahead.
template <typename Rule>
struct Writing : pegtl::normal<Rule> {
  static constexpr bool kLooks = decltype(Lookahead::of(static_cast<const Rule*>(nullptr)))::value;

  template <pegtl::apply_mode A, pegtl::rewind_mode M, template <typename...> class Action,
            template <typename...> class Control>
  static bool match(Input& in, State& state) {
    if constexpr (!Writes<Rule>::any) {
      return pegtl::match<Rule, A, M, Action, pegtl::normal>(in, state);
    } else if constexpr (!Writes<Rule>::below) {  // no node stands in its node, which is written when it has matched
      const std::uint32_t begin = state.offset(in);
      if (!pegtl::match<Rule, A, M, Action, pegtl::normal>(in, state)) return false;
      leaf(state.nodes, Rule::node, {begin, state.offset(in)}, state.last);
      state.last = 0;
      return true;
    } else {
      if constexpr (kFirst<Rule>.tells() && !kLooks)
        if (in.empty() || !kFirst<Rule>.may[static_cast<unsigned char>(*in.current())]) return false;
      const std::size_t before = state.nodes.size();
      if constexpr (HasNode<Rule>) open(state.nodes, Rule::node, state.offset(in));
      const bool matched = pegtl::match<Rule, A, M, Action, Control>(in, state);
      if (!matched || kLooks) {
        if (state.nodes.size() != before) state.nodes.resize(before);
        return matched;
      }
      if constexpr (HasNode<Rule>) {
        const auto at = static_cast<std::uint32_t>(before);
        state.nodes[at].value = state.last;
        state.last = 0;
        close(state.nodes, at, state.offset(in));
      }
      return true;
    }
  }
};

template <typename Rule>
bool read(std::string_view all, Span span, std::vector<Node>& nodes) {
  Input in(all.data() + span.begin, all.data() + span.end, "");
  State state{nodes, all.data()};
  const std::size_t before = nodes.size();
  if (pegtl::parse<Rule, pegtl::nothing, Writing>(in, state)) return true;
  nodes.resize(before);
  return false;
}

}  // namespace

bool read_take_line(std::string_view all, Span span, std::vector<Node>& nodes) {
  return read<grammar::take_line>(all, span, nodes);
}

bool read_take_head(std::string_view all, Span span, std::vector<Node>& nodes) {
  return read<grammar::take_head_value>(all, span, nodes);
}

void read_clause(std::string_view all, Span span, std::vector<Node>& nodes) {
  if (!read<grammar::clause>(all, span, nodes)) leaf(nodes, Kind::bad_clause, span);
}

bool read_action(std::string_view all, Span span, std::vector<Node>& nodes) {
  return read<grammar::action_rest>(all, span, nodes);
}

bool read_value(Field field, std::string_view all, Span span, std::vector<Node>& nodes) {
  switch (field) {
    case Field::makes: return read<grammar::makes_value>(all, span, nodes);
    case Field::serves:
    case Field::cooks:
    case Field::work:
    case Field::scale: return read<grammar::amount_value>(all, span, nodes);
    case Field::rounding: return read<grammar::rounding_value>(all, span, nodes);
    case Field::keeps: return read<grammar::keeps_value>(all, span, nodes);
    case Field::ready: return read<grammar::ready_value>(all, span, nodes);
    case Field::scales: return read<grammar::scales_value>(all, span, nodes);
    case Field::at_most: return read<grammar::at_most_value>(all, span, nodes);
    case Field::tin: return read<grammar::tin_value>(all, span, nodes);
    case Field::use: return read<grammar::use_value>(all, span, nodes);
    default: return false;
  }
}

bool read_change(std::string_view all, Span span, std::vector<Node>& nodes) {
  return read<grammar::change_line>(all, span, nodes);
}

bool read_fact(Field block, std::string_view all, Span span, std::vector<Node>& nodes) {
  return block == Field::film ? read<grammar::film_line>(all, span, nodes) : read<grammar::fact_line>(all, span, nodes);
}

}  // namespace qtn::syntax
