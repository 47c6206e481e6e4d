// Take lines and their heads (grammar/README.md, "The list").
#pragma once
#include "grammar/amounts.hpp"

namespace qtn::grammar {

// ---- the head: what percentages, rates and parts are of ---------------------------------------------------------
struct line_rest : seq<not_at<eof>, star<not_one<'\n'>>> {};
struct head_name : line_rest {
  static constexpr Kind node = Kind::name;
};
struct head_of : sor<set, head_name> {};
struct by_parts : kw_parts {
  static constexpr Kind node = Kind::by_parts;
};
struct by_weight : keyword<'w', 'e', 'i', 'g', 'h', 't'> {
  static constexpr Kind node = Kind::by_weight;
};
struct by_volume : keyword<'v', 'o', 'l', 'u', 'm', 'e'> {
  static constexpr Kind node = Kind::by_volume;
};
struct take_head : sor<seq<percent, gap, kw_of, gap, head_of>, seq<per, gap, kw_of, gap, head_of>,
                       seq<by_parts, opt<gap, kw_by, gap, sor<by_weight, by_volume>>>> {
  static constexpr Kind node = Kind::take_head;
};
struct take_head_value : seq<take_head, shut> {};

// ---- tails --------------------------------------------------------------------------------------------------------
struct tail_end : at<ogap, sor<one<','>, eof>> {};
struct tail_name : name_words {
  static constexpr Kind node = Kind::name;
};
struct from_bought : seq<kw_from, gap, amt, opt<gap, tail_name>> {
  static constexpr Kind node = Kind::from;
};
struct taking_up : seq<keyword<'t', 'a', 'k', 'i', 'n', 'g'>, gap, kw_up, gap, amt> {
  static constexpr Kind node = Kind::taking_up;
};
struct start_with : seq<keyword<'s', 't', 'a', 'r', 't'>, gap, kw_with, gap, amt> {
  static constexpr Kind node = Kind::start_with;
};
struct giving_one : seq<amt, gap, opt<kw_of, gap>, tail_name> {};
struct giving_joint : sor<seq<gap, kw_and, gap>, seq<ogap, one<','>, gap, opt<kw_and, gap>>> {};
struct giving : seq<kw_giving, gap, giving_one, plus<giving_joint, giving_one>> {
  static constexpr Kind node = Kind::giving;
};
struct ppm_unit : table_unit {};
struct strength_body : seq<number, ogap, sor<percent, ppm_unit>, gap, tail_name> {};
struct strength : strength_body {
  static constexpr Kind node = Kind::strength;
};
struct trimmings : seq<kw_and, gap, amt, gap, kw_for, gap, tail_name> {
  static constexpr Kind node = Kind::trimmings;
};
struct clock : seq<digit, opt<digit>, one<':'>, digit, digit, word_end> {
  static constexpr Kind node = Kind::clock;
};
struct at_clock : seq<kw_at, gap, clock> {
  static constexpr Kind node = Kind::at_clock;
};
struct each_weight : seq<amt, gap, kw_each> {
  static constexpr Kind node = Kind::each_weight;
};
struct prep_text : plus<not_one<','>> {};
struct extra : seq<kw_plus, gap, kw_extra, opt<gap, prep_text>> {
  static constexpr Kind node = Kind::extra;
};
struct optional_tail : keyword<'o', 'p', 't', 'i', 'o', 'n', 'a', 'l'> {
  static constexpr Kind node = Kind::optional;
};
struct fixed_tail : keyword<'f', 'i', 'x', 'e', 'd'> {
  static constexpr Kind node = Kind::fixed;
};
struct gently_tail : keyword<'g', 'e', 'n', 't', 'l', 'y'> {
  static constexpr Kind node = Kind::gently;
};
struct unmeasured : sor<known<kUnmeasured>, seq<kw_for, gap, prep_text>> {
  static constexpr Kind node = Kind::unmeasured;
};
struct preparation : prep_text {
  static constexpr Kind node = Kind::preparation;
};
// The first letter says which tails are worth a try; most lines have none but preparation.
struct number_tail : seq<at_number, sor<each_weight, strength>> {};
struct word_tail
    : sor<seq<at<one<'f', 'F'>>, sor<from_bought, fixed_tail, unmeasured>>, seq<at<one<'t', 'T'>>, sor<taking_up, unmeasured>>,
          seq<at<one<'a', 'A'>>, sor<trimmings, at_clock, unmeasured, each_weight>>, seq<at<one<'g', 'G'>>, sor<giving, gently_tail>>,
          seq<at<one<'s', 'S'>>, start_with>, seq<at<one<'p', 'P'>>, extra>, seq<at<one<'o', 'O'>>, optional_tail>,
          seq<at<one<'e', 'E'>>, each_weight>> {};
struct known_tail : seq<sor<number_tail, word_tail>, tail_end> {};
struct tail : sor<known_tail, preparation> {};
struct tails : star<ogap, one<','>, ogap, opt<tail>> {};

// ---- the line -----------------------------------------------------------------------------------------------------
struct alternative : kw_or {
  static constexpr Kind node = Kind::alternative;
};
struct iname_start : at<sor<letter, string<'0', '0'>, seq<nat, one<'-'>, letter>>> {};
struct iname_word : word_run<' ', '\t', '\r', '\n', ',', '[', ':'> {};
// 6 portions of [Apple tart]: the word is no part of the name.
struct of_taken : seq<kw_of, ogap, one<'['>> {};
struct iname : seq<iname_start, iname_word, star<gap, not_at<of_taken>, iname_word>> {
  static constexpr Kind node = Kind::name;
};
// What is taken is one recipe or part, whatever words stand in its name: [Pot of white beans], [Fish, chips and peas].
struct taken_word : word_run<' ', '\t', '\r', '\n', '+', '[', ']'> {};
struct taken_name : seq<taken_word, star<gap, taken_word>> {
  static constexpr Kind node = Kind::ref;
};
struct taken : seq<one<'['>, ogap, taken_name, ogap, one<']'>> {
  static constexpr Kind node = Kind::set;
};
struct named : sor<seq<iname, opt<ogap, opt<kw_of, ogap>, taken>>, taken> {};
struct what : seq<opt<kw_of, gap>, named> {};
struct amount_extras
    : seq<opt<gap, pack>, opt<ogap, equivs>, opt<gap, per>, opt<gap, kw_of, gap, set, at<gap, sor<iname_start, one<'['>>>>> {};
struct in_parts : seq<gap, by_parts, opt<ogap, equivs>, gap, what> {};
struct extras_ahead : behind_blanks<'x', 'X', '\xC3', '(', 'p', 'P', 'o', 'O', 'e', 'E'> {};
struct measured : seq<opt<extras_ahead, amount_extras, opt<gap, each>>, gap, what> {};
struct measured_line : seq<amt, sor<in_parts, measured>> {};
struct take_line : seq<ogap, opt<alternative, gap>, sor<measured_line, named>, tails, shut> {};

}  // namespace qtn::grammar
