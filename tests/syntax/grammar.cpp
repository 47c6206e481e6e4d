// The grammar itself: PEGTL's own analysis finds rules that could loop without eating anything.
#include <doctest/doctest.h>

#include "grammar/heads.hpp"
#include "grammar/lines.hpp"
#include "grammar/step_words.hpp"

#include <tao/pegtl/contrib/analyze.hpp>

namespace tao::pegtl {
template <typename Name>
struct analyze_traits<Name, qtn::grammar::gap> : analyze_any_traits<> {};
template <typename Name>
struct analyze_traits<Name, qtn::grammar::ogap> : analyze_opt_traits<> {};
template <typename Name>
struct analyze_traits<Name, qtn::grammar::describing_noun> : analyze_opt_traits<> {};
template <typename Name>
struct analyze_traits<Name, qtn::grammar::letter> : analyze_any_traits<> {};
template <typename Name, unsigned Classes>
struct analyze_traits<Name, qtn::grammar::known<Classes>> : analyze_any_traits<> {};
template <typename Name, unsigned Classes>
struct analyze_traits<Name, qtn::grammar::word_ahead<Classes>> : analyze_opt_traits<> {};
template <typename Name, char... Letters>
struct analyze_traits<Name, qtn::grammar::letters_ahead<Letters...>> : analyze_opt_traits<> {};
template <typename Name, char... Stops>
struct analyze_traits<Name, qtn::grammar::word_run<Stops...>> : analyze_any_traits<> {};
template <typename Name, typename Place, unsigned What, bool Near>
struct analyze_traits<Name, qtn::grammar::field_word<Place, What, Near>> : analyze_any_traits<> {};
template <typename Name, bool OverLines>
struct analyze_traits<Name, qtn::grammar::code<OverLines>> : analyze_any_traits<> {};
}  // namespace tao::pegtl

namespace g = qtn::grammar;

TEST_CASE("no rule of the grammar can loop without eating anything") {
  CHECK(tao::pegtl::analyze<g::file>() == 0);
  CHECK(tao::pegtl::analyze<g::step_words>() == 0);
  CHECK(tao::pegtl::analyze<g::take_line>() == 0);
  CHECK(tao::pegtl::analyze<g::take_head_value>() == 0);
  CHECK(tao::pegtl::analyze<g::clause>() == 0);
  CHECK(tao::pegtl::analyze<g::action_rest>() == 0);
  CHECK(tao::pegtl::analyze<g::makes_value>() == 0);
  CHECK(tao::pegtl::analyze<g::amount_value>() == 0);
  CHECK(tao::pegtl::analyze<g::keeps_value>() == 0);
  CHECK(tao::pegtl::analyze<g::ready_value>() == 0);
  CHECK(tao::pegtl::analyze<g::scales_value>() == 0);
  CHECK(tao::pegtl::analyze<g::at_most_value>() == 0);
  CHECK(tao::pegtl::analyze<g::tin_value>() == 0);
  CHECK(tao::pegtl::analyze<g::use_value>() == 0);
  CHECK(tao::pegtl::analyze<g::change_line>() == 0);
  CHECK(tao::pegtl::analyze<g::film_line>() == 0);
  CHECK(tao::pegtl::analyze<g::fact_line>() == 0);
}
