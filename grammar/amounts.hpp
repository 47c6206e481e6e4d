// Amounts (grammar/README.md, "Amounts"). Left-factored: nothing is read twice.
#pragma once
#include "grammar/base.hpp"

namespace qtn::grammar {

struct at_clause_end;  // clause.hpp

// ---- numbers ------------------------------------------------------------------------------------------------------
struct nat : plus<digit> {};
struct slash : sor<one<'/'>, string<'\xE2', '\x81', '\x84'>> {};
struct frac : seq<nat, slash, nat> {};
// 1/4 1/2 3/4, then 1/7 1/9 1/10 1/3 2/3 1/5 .. 7/8, 0/3
struct vulgar : sor<seq<one<'\xC2'>, one<'\xBC', '\xBD', '\xBE'>>,
                    seq<string<'\xE2', '\x85'>, range<'\x90', '\x9E'>>, string<'\xE2', '\x86', '\x89'>> {};
struct number_end : not_at<sor<one<'.', '/'>, digit, seq<one<','>, digit>>> {};
struct more_of_number : behind_blanks<'/', '.', '-', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '\xC2', '\xE2'> {};
struct number_after_nat
    : sor<seq<more_of_number, sor<seq<slash, nat>, seq<one<'.'>, nat>, seq<one<'-'>, frac>, seq<star<thin_blank>, vulgar>, seq<gap, frac>>>,
          success> {};
// A full stop that ends a sentence is no decimal point, and the number still ends there.
struct number_stop : sor<number_end, at<one<'.'>, sor<blank, eof>>> {};
struct number : seq<sor<seq<nat, number_after_nat>, vulgar>, number_stop> {
  static constexpr Kind node = Kind::number;
};
struct number_word : known<kNumberWord> {
  static constexpr Kind node = Kind::number_word;
};
struct at_number : at<sor<digit, vulgar>> {};

// ---- units --------------------------------------------------------------------------------------------------------
struct table_unit : known<kUnitWord> {
  static constexpr Kind node = Kind::unit;
};
struct count_noun : known<kCountNoun> {
  static constexpr Kind node = Kind::count_noun;
};
struct look_alike : known<kLookAlike> {
  static constexpr Kind node = Kind::look_alike;
};
struct inch_word : sor<kw_in, one<'"'>, string<'\xE2', '\x80', '\xB3'>> {
  static constexpr Kind node = Kind::inch_word;
};
struct percent : one<'%'> {
  static constexpr Kind node = Kind::percent;
};
struct degree : sor<string<'\xC2', '\xB0'>, string<'\xC2', '\xBA'>, kw_degrees> {};
struct celsius : seq<sor<string<'\xE2', '\x84', '\x83'>, seq<opt<degree, star<thin_blank>>, one<'C'>>>, word_end> {
  static constexpr Kind node = Kind::celsius;
};
struct fahrenheit : seq<sor<string<'\xE2', '\x84', '\x89'>, seq<opt<degree, star<thin_blank>>, one<'F'>>>, word_end> {
  static constexpr Kind node = Kind::fahrenheit;
};
struct bare_degree : degree {
  static constexpr Kind node = Kind::bare_degree;
};
struct fan : kw_fan {
  static constexpr Kind node = Kind::fan;
};
struct scale_unit : seq<sor<celsius, fahrenheit, bare_degree>, opt<gap, fan>> {};
struct real_unit : sor<seq<table_unit, opt<one<'.'>>>, percent, scale_unit> {};
// 2 rib steaks: a noun that only describes what is counted. It looks ahead, and back at the number.
struct describing_noun {
  using rule_t = describing_noun;
  using subs_t = empty_list;
  template <apply_mode A, rewind_mode M, template <typename...> class Action, template <typename...> class Control,
            typename Input, typename State>
  static bool match(Input& in, State& state) {
    if (!state.after_several()) return false;
    const std::string_view text{in.current(), in.size()};
    const Found noun = state.look(text, kCountNoun);
    return noun && describes(*noun.row, text.substr(noun.size));
  }
};
struct noun_unit : seq<not_at<describing_noun>, count_noun, at<gap, opt<kw_of, gap>, letter>> {};
struct suspect_unit : sor<look_alike, inch_word> {};
// What may stand after a number: one question before the alternatives are tried in vain.
struct unit_ahead : at<sor<letter, one<'%', '"', '\xC2', '\xE2'>>> {};
struct unit_after_blank : sor<real_unit, noun_unit, suspect_unit> {};
struct item_unit : sor<seq<one<'-'>, sor<table_unit, inch_word>>, seq<ogap, unit_ahead, unit_after_blank>> {};
struct item : seq<number, opt<item_unit>> {};
struct unit_item : seq<number, sor<seq<one<'-'>, table_unit>, seq<ogap, unit_ahead, sor<real_unit, noun_unit>>>> {};

// ---- quantities ---------------------------------------------------------------------------------------------------
struct minus : seq<sor<one<'-'>, string<'\xE2', '\x88', '\x92'>>, at<digit>> {
  static constexpr Kind node = Kind::minus;
};
struct joint : sor<seq<gap, sor<one<'+'>, kw_plus>, gap>, ogap> {};
struct unit_goes_on : behind_blanks<'+', 'p', 'P', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '\xC2', '\xE2'> {};
struct more_units : star<unit_goes_on, joint, at_number, unit_item> {};
struct compound : seq<opt<minus>, number, opt<item_unit, more_units>> {};
struct dash : sor<one<'-'>, string<'\xE2', '\x80', '\x93'>, string<'\xE2', '\x80', '\x94'>> {};
struct to : sor<seq<gap, kw_to, gap>, seq<ogap, dash, ogap>> {
  static constexpr Kind node = Kind::to;
};
struct gas : seq<kw_gas, opt<gap, kw_mark>, gap> {
  static constexpr Kind node = Kind::gas;
};
struct clock_length : seq<nat, one<'h'>, digit, digit, word_end> {
  static constexpr Kind node = Kind::clock_length;
};
struct half_a : seq<kw_half, gap, sor<kw_an, kw_a>> {
  static constexpr Kind node = Kind::half;
};
struct article : sor<kw_an, kw_a> {
  static constexpr Kind node = Kind::article;
};
struct high_end : seq<behind_blanks<'t', 'T', '-', '\xE2'>, to, sor<at_number, at<minus>>, compound> {};
struct quantity
    : sor<seq<at<sor<digit, vulgar, minus>>, sor<seq<at<nat, one<'h'>, digit>, clock_length>, seq<compound, opt<high_end>>>>,
          seq<gas, number, opt<to, number>>, seq<half_a, opt<gap, noun_unit>>, seq<article, gap, noun_unit>> {};

struct about : kw_about {
  static constexpr Kind node = Kind::about;
};
struct exactly : kw_exactly {
  static constexpr Kind node = Kind::exactly;
};
struct at_least : seq<kw_at, gap, keyword<'l', 'e', 'a', 's', 't'>> {
  static constexpr Kind node = Kind::at_least;
};
struct at_most : sor<seq<kw_at, gap, keyword<'m', 'o', 's', 't'>>, seq<kw_up, gap, kw_to>> {
  static constexpr Kind node = Kind::at_most;
};
struct and_at_most : seq<sor<seq<ogap, one<','>, gap, opt<kw_and, gap>>, seq<gap, kw_and, gap>>, at_most, gap, quantity> {};
struct amt_body : sor<seq<at_number, quantity>, seq<at_least, gap, quantity, opt<and_at_most>>,
                      seq<sor<about, exactly, at_most>, gap, quantity>, quantity> {};
struct amt : amt_body {
  static constexpr Kind node = Kind::amt;
};

// ---- what an amount in a list may carry -----------------------------------------------------------------------------
struct each : kw_each {
  static constexpr Kind node = Kind::each;
};
struct equiv_joint : sor<seq<ogap, one<',', ';', '/'>, ogap>, seq<gap, kw_or, gap>> {};
struct equiv : seq<amt, opt<gap, each>> {};
struct equivs : seq<one<'('>, ogap, list<equiv, equiv_joint>, ogap, one<')'>> {
  static constexpr Kind node = Kind::equivs;
};
struct pack_noun : seq<gap, count_noun, at<gap, opt<kw_of, gap>, letter>> {};
// 2 x 12 portions [Apple tart]: no unit, but a dish behind it.
struct pack_of_dish : seq<number, at<gap, plus<not_one<'[', ',', '\r', '\n'>>, one<'['>>> {};
struct pack : seq<times_sign, gap, sor<seq<unit_item, opt<pack_noun>>, pack_of_dish>> {
  static constexpr Kind node = Kind::pack;
};

// ---- names --------------------------------------------------------------------------------------------------------
// A run of anything but blanks and , ; + [ ] ( ) :
struct plain_word : word_run<' ', '\t', '\r', '\n', ',', ';', '+', '[', ']', '(', ')', ':'> {};
struct name_stop : seq<sor<kw_and, kw_of, kw_per, kw_at, kw_to, kw_in, kw_for, kw_plus, kw_until, kw_or, kw_every, kw_each>> {};
struct name_words : seq<not_at<name_stop>, not_at<digit>, plain_word, star<gap, not_at<name_stop>, plain_word>> {};
struct name : name_words {
  static constexpr Kind node = Kind::name;
};
struct ref_stop : sor<seq<kw_and, gap, kw_the>, seq<sor<kw_of, kw_per, kw_at, kw_plus, kw_loses, kw_gains>>> {};
struct ref : seq<not_at<ref_stop>, plain_word, star<gap, not_at<ref_stop>, plain_word>> {
  static constexpr Kind node = Kind::ref;
};
struct ref_joint : sor<seq<ogap, one<'+', ','>, ogap, opt<kw_and, gap>>, seq<gap, kw_and, gap>> {};
struct ref_list : list<ref, ref_joint> {};
struct set : seq<one<'['>, ogap, ref_list, ogap, one<']'>> {
  static constexpr Kind node = Kind::set;
};
struct per_unit : table_unit {};
struct per : seq<kw_per, gap, sor<item, per_unit>> {
  static constexpr Kind node = Kind::per;
};

}  // namespace qtn::grammar
