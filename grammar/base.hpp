// PEGTL rules that everything else is built of: blanks, words, looks into the word lists. Rules only, no actions.
// A rule with a member `node` becomes a node of that kind in the tree.
#pragma once
#include <algorithm>
#include <tao/pegtl.hpp>

#include "syntax/kind.hpp"
#include "words/lexicon.hpp"

namespace qtn::grammar {

using namespace tao::pegtl;  // NOLINT: a grammar reads as rules, not as names of a library

// ---- blanks. A value or a bracket may run over a line end; a comment line there is a blank (L1, L7, L8) ----------
struct thin_blank : sor<one<' ', '\t'>, string<'\xC2', '\xA0'>, string<'\xE2', '\x80', '\xAF'>> {};
// blank <- thin_blank / "\r"? "\n" (thin_blank* "#" (!"\n" .)* "\n")*, written as one scan since it is met at every word.
inline std::size_t all_blanks_at(const char* at, const char* end) {
  const char* const begin = at;
  while (at != end) {
    while (at != end && *at == ' ') ++at;
    if (at == end) break;
    const auto c = static_cast<unsigned char>(*at);
    if (c == ' ' || c == '\t') { ++at; continue; }
    if (c == 0xC2 && end - at > 1 && static_cast<unsigned char>(at[1]) == 0xA0) { at += 2; continue; }
    if (c == 0xE2 && end - at > 2 && static_cast<unsigned char>(at[1]) == 0x80 && static_cast<unsigned char>(at[2]) == 0xAF) { at += 3; continue; }
    if (c != '\n' && !(c == '\r' && end - at > 1 && at[1] == '\n')) break;
    at += c == '\n' ? 1 : 2;
    const char* mark = at;
    while (mark != end && (*mark == ' ' || *mark == '\t')) ++mark;
    while (mark != end && *mark == '#') {
      const char* line = mark;
      while (line != end && *line != '\n') ++line;
      if (line == end) break;
      at = mark = line + 1;
      while (mark != end && (*mark == ' ' || *mark == '\t')) ++mark;
    }
  }
  return static_cast<std::size_t>(at - begin);
}
// The same; nearly every place is no blank, or one before a plain letter.
inline std::size_t blanks_at(const char* at, const char* end) {
  if (at == end) return 0;
  const auto c = static_cast<unsigned char>(*at);
  if (c > ' ' && c < 0xC2) return 0;
  if (c == ' ' && end - at > 1 && at[1] > ' ' && at[1] <= '~') return 1;
  return all_blanks_at(at, end);
}
struct gap {  // one blank or more
  using rule_t = gap;
  using subs_t = empty_list;
  template <apply_mode A, rewind_mode M, template <typename...> class Action, template <typename...> class Control,
            typename Input, typename State>
  static bool match(Input& in, State& state) {
    const std::size_t size = state.blanks(in.current(), in.end());
    in.bump_in_this_line(size);
    return size != 0;
  }
};
struct ogap {  // any number of blanks
  using rule_t = ogap;
  using subs_t = empty_list;
  template <apply_mode A, rewind_mode M, template <typename...> class Action, template <typename...> class Control,
            typename Input, typename State>
  static bool match(Input& in, State& state) {
    in.bump_in_this_line(state.blanks(in.current(), in.end()));
    return true;
  }
};
// Is one of these the first character behind the blanks here? A question asked before alternatives are tried in vain.
template <char... Cs>
struct behind_blanks : at<ogap, one<Cs...>> {};
struct blank : gap {};
struct shut : seq<ogap, eof> {};

// ---- words --------------------------------------------------------------------------------------------------------
// One letter, of any script. analyze() is told that it consumes.
struct letter {
  using rule_t = letter;
  using subs_t = empty_list;
  template <typename Input>
  static bool match(Input& in) {
    const int size = letter_at({in.current(), in.size()}, 0);
    if (size == 0) return false;
    in.bump_in_this_line(static_cast<std::size_t>(size));
    return true;
  }
};
struct word_end : not_at<sor<letter, digit>> {};
template <char... Cs>
struct keyword : seq<istring<Cs...>, word_end> {};

// The longest word of the lists that belongs to one of the classes.
template <unsigned Classes>
struct known {
  using rule_t = known;
  using subs_t = empty_list;
  template <apply_mode A, rewind_mode M, template <typename...> class Action, template <typename...> class Control,
            typename Input, typename State>
  static bool match(Input& in, State& state) {
    const Found found = state.look({in.current(), in.size()}, Classes);
    if (!found) return false;
    state.found(found.id);
    in.bump_in_this_line(found.size);
    return true;
  }
};

// Questions asked before an alternative is tried in vain; they read nothing.
// Is the word here one of these classes?
template <unsigned Classes>
struct word_ahead {
  using rule_t = word_ahead;
  using subs_t = empty_list;
  template <apply_mode A, rewind_mode M, template <typename...> class Action, template <typename...> class Control,
            typename Input, typename State>
  static bool match(Input& in, State& state) {
    return bool(state.look({in.current(), in.size()}, Classes));
  }
};
// Do these letters, in either case, stand anywhere ahead?
template <char First, char... Rest>
struct letters_ahead {
  using rule_t = letters_ahead;
  using subs_t = empty_list;
  template <typename Input>
  static bool match(Input& in) {
    constexpr char kRest[] = {Rest...};
    const char* const last = in.end() - std::min(sizeof kRest, in.size());
    for (const char* at = in.current(); at < last; ++at) {
      if ((*at | 0x20) != First) continue;
      if (std::equal(kRest, kRest + sizeof kRest, at + 1, [](char small, char c) { return small == (c | 0x20); })) return true;
    }
    return false;
  }
};

// One character or more, up to a blank or one of the characters named.
template <char... Stops>
struct word_run {
  using rule_t = word_run;
  using subs_t = empty_list;
  template <typename Input>
  static bool match(Input& in) {
    const char* at = in.current();
    for (; at != in.end(); ++at) {
      if (((*at == Stops) || ...)) break;
      if (static_cast<unsigned char>(*at) >= 0xC2 && blanks_at(at, in.end()) != 0) break;
    }
    const auto size = static_cast<std::size_t>(at - in.current());
    in.bump_in_this_line(size);
    return size != 0;
  }
};

struct kw_a : keyword<'a'> {};
struct kw_about : keyword<'a', 'b', 'o', 'u', 't'> {};
struct kw_all : keyword<'a', 'l', 'l'> {};
struct kw_an : keyword<'a', 'n'> {};
struct kw_and : keyword<'a', 'n', 'd'> {};
struct kw_as : keyword<'a', 's'> {};
struct kw_at : keyword<'a', 't'> {};
struct kw_base : keyword<'b', 'a', 's', 'e'> {};
struct kw_by : keyword<'b', 'y'> {};
struct kw_deep : keyword<'d', 'e', 'e', 'p'> {};
struct kw_degrees : sor<keyword<'d', 'e', 'g', 'r', 'e', 'e', 's'>, keyword<'d', 'e', 'g', 'r', 'e', 'e'>> {};
struct kw_each : keyword<'e', 'a', 'c', 'h'> {};
struct kw_every : keyword<'e', 'v', 'e', 'r', 'y'> {};
struct kw_exactly : keyword<'e', 'x', 'a', 'c', 't', 'l', 'y'> {};
struct kw_extra : keyword<'e', 'x', 't', 'r', 'a'> {};
// Convection is the American word for a fan oven.
struct kw_fan : sor<keyword<'f', 'a', 'n'>, keyword<'c', 'o', 'n', 'v', 'e', 'c', 't', 'i', 'o', 'n'>> {};
struct kw_for : keyword<'f', 'o', 'r'> {};
struct kw_from : keyword<'f', 'r', 'o', 'm'> {};
struct kw_gains : keyword<'g', 'a', 'i', 'n', 's'> {};
struct kw_gas : keyword<'g', 'a', 's'> {};
struct kw_giving : keyword<'g', 'i', 'v', 'i', 'n', 'g'> {};
struct kw_half : keyword<'h', 'a', 'l', 'f'> {};
struct kw_hole : keyword<'h', 'o', 'l', 'e'> {};
struct kw_in : keyword<'i', 'n'> {};
struct kw_loses : keyword<'l', 'o', 's', 'e', 's'> {};
struct kw_mark : keyword<'m', 'a', 'r', 'k'> {};
struct kw_none : sor<keyword<'n', 'o', 'n', 'e'>, keyword<'n', 'o', 't', 'h', 'i', 'n', 'g'>> {};
struct kw_of : keyword<'o', 'f'> {};
struct kw_or : keyword<'o', 'r'> {};
struct kw_overnight : keyword<'o', 'v', 'e', 'r', 'n', 'i', 'g', 'h', 't'> {};
struct kw_parts : sor<keyword<'p', 'a', 'r', 't', 's'>, keyword<'p', 'a', 'r', 't'>> {};
struct kw_per : keyword<'p', 'e', 'r'> {};
struct kw_plus : keyword<'p', 'l', 'u', 's'> {};
struct kw_remaining : keyword<'r', 'e', 'm', 'a', 'i', 'n', 'i', 'n', 'g'> {};
struct kw_rest : keyword<'r', 'e', 's', 't'> {};
struct kw_side : keyword<'s', 'i', 'd', 'e'> {};
struct kw_the : keyword<'t', 'h', 'e'> {};
struct kw_time : keyword<'t', 'i', 'm', 'e'> {};
struct kw_times : sor<keyword<'t', 'i', 'm', 'e', 's'>, kw_time> {};
struct kw_to : keyword<'t', 'o'> {};
struct kw_until : keyword<'u', 'n', 't', 'i', 'l'> {};
struct kw_up : keyword<'u', 'p'> {};
struct kw_with : keyword<'w', 'i', 't', 'h'> {};
struct kw_within : keyword<'w', 'i', 't', 'h', 'i', 'n'> {};
struct times_sign : sor<seq<one<'x', 'X'>, word_end>, string<'\xC3', '\x97'>> {};

}  // namespace qtn::grammar
