// The words of one step as rules: prose, brackets, links, code (grammar/README.md, "Lines"). What stands in a bracket is
// `clause`. Run over the span of one step; src/syntax/split_step.cpp is the program's own way.
#pragma once
#include "grammar/base.hpp"

namespace qtn::grammar {

struct step_comment : seq<star<one<' ', '\t'>>, one<'#'>, star<not_one<'\n'>>, sor<one<'\n'>, eof>> {};
struct escape : seq<one<'\\'>, opt<any>> {};

// A run of fewer than 64 ticks, up to the next run of that length; OverLines: with a line end in between.
template <bool OverLines>
struct code {
  using rule_t = code;
  using subs_t = empty_list;
  template <typename Input>
  static bool match(Input& in) {
    const std::string_view text(in.current(), in.size());
    const std::size_t run = std::min(text.find_first_not_of('`'), text.size());
    if (run == 0 || run >= 64) return false;
    for (std::size_t at = text.find('`', run), end = 0; at != std::string_view::npos; at = text.find('`', end)) {
      end = std::min(text.find_first_not_of('`', at), text.size());
      if (end - at != run) continue;
      if ((text.substr(0, end).find('\n') != std::string_view::npos) != OverLines) return false;
      in.bump_in_this_line(end);
      return true;
    }
    return false;
  }
};

struct bracket_char : not_one<'[', ']', '\n'> {};
struct bracket_inside : seq<star<bracket_char>, opt<one<'\n'>, star<bracket_char>>> {};
struct bracket : seq<one<'['>, bracket_inside, one<']'>> {
  static constexpr Kind node = Kind::bracket;
};
struct link : seq<one<'['>, bracket_inside, string<']', '('>, star<not_one<')', '\n', '['>>, one<')'>> {
  static constexpr Kind node = Kind::link;
};
struct open_bracket : one<'['> {
  static constexpr Kind node = Kind::open_bracket;
};
struct piece : seq<not_at<code<true>>, sor<escape, code<false>, plus<one<'`'>>, link, bracket, not_one<'[', '\n'>>> {};
// One bracket a line that is not closed is told; the others are prose.
struct words_of_line : seq<star<piece>, opt<open_bracket, star<sor<piece, one<'['>>>>> {};
struct step_words : seq<words_of_line, star<sor<seq<one<'\n'>, star<step_comment>, words_of_line>, seq<code<true>, words_of_line>>>, eof> {};

}  // namespace qtn::grammar
