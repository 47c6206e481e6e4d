// What stands in a bracket of a method (grammar/README.md, "Clauses"). A form counts only if it reaches the bracket's end.
#pragma once
#include "grammar/take.hpp"

namespace qtn::grammar {

// ---- uses ---------------------------------------------------------------------------------------------------------
struct share_word : known<kShareWord> {
  static constexpr Kind node = Kind::share_word;
};
struct rest_of : sor<seq<kw_the, gap, kw_rest, gap, kw_of>, seq<kw_the, gap, kw_remaining>, kw_remaining> {
  static constexpr Kind node = Kind::rest;
};
struct all_of : seq<kw_all, gap, kw_of> {
  static constexpr Kind node = Kind::all;
};
struct share_count : sor<number_word, number, article> {};
struct share_size : seq<opt<share_count, gap>, share_word, opt<gap, kw_of>> {};
struct share_ahead : sor<at<sor<digit, vulgar, kw_about, kw_a, kw_an, kw_all, kw_remaining, seq<kw_the, gap, one<'r', 'R'>>>>,
                         word_ahead<kNumberWord | kShareWord>> {};
struct share_body : seq<share_ahead, opt<about, gap>, sor<share_size, rest_of, all_of>, gap, ref_list> {};
struct share : share_body {
  static constexpr Kind node = Kind::share;
};

// ---- the pot ------------------------------------------------------------------------------------------------------
struct pot_verb : known<kPotVerb> {
  static constexpr Kind node = Kind::verb;
};
struct pot_rest : seq<kw_the, gap, kw_rest, shut> {
  static constexpr Kind node = Kind::pot_rest;
};
struct pot_amount : seq<amt, opt<ogap, equivs>, gap, opt<kw_of, gap>, ref_list> {};
struct pot_object : sor<pot_rest, share, pot_amount, ref_list> {};
struct pot : seq<pot_verb, opt<gap, pot_object>, shut> {
  static constexpr Kind node = Kind::pot;
};
struct loses : kw_loses {
  static constexpr Kind node = Kind::loses;
};
struct gains : kw_gains {
  static constexpr Kind node = Kind::gains;
};
struct drift_ahead : sor<letters_ahead<'l', 'o', 's', 'e', 's'>, letters_ahead<'g', 'a', 'i', 'n', 's'>> {};
struct drift : seq<drift_ahead, opt<ref_list, gap>, sor<loses, gains>, gap, amt, shut> {
  static constexpr Kind node = Kind::drift;
};

// ---- tails of times and actions -----------------------------------------------------------------------------------
struct place : known<kPlaceWord> {
  static constexpr Kind node = Kind::place;
};
struct some_name : name_words {
  static constexpr Kind node = Kind::name;
};
struct in_place : seq<sor<kw_in, keyword<'o', 'n'>>, gap, some_name> {
  static constexpr Kind node = Kind::in_place;
};
struct per_word : plain_word {
  static constexpr Kind node = Kind::word;
};
// 12 h per kg of the turkey in the fridge: a place is no part of the name.
struct per_ref_stop : sor<ref_stop, kw_in, seq<keyword<'o', 'n'>, gap, kw_the>> {};
struct per_ref : seq<not_at<per_ref_stop>, plain_word, star<gap, not_at<per_ref_stop>, plain_word>> {
  static constexpr Kind node = Kind::ref;
};
struct per_tail_of : seq<gap, kw_of, gap, per_ref> {};
struct per_tail : seq<kw_per, gap, sor<item, per_unit, per_word>, opt<per_tail_of>> {
  static constexpr Kind node = Kind::per;
};
struct each_side : seq<kw_each, gap, kw_side> {
  static constexpr Kind node = Kind::each_side;
};
struct of_word : seq<kw_of, gap, per_word> {
  static constexpr Kind node = Kind::of_word;
};
struct plus_amount : seq<kw_plus, gap, amt> {
  static constexpr Kind node = Kind::plus_amount;
};
struct at_amount : seq<kw_at, gap, amt, opt<ogap, equivs>> {
  static constexpr Kind node = Kind::at_amount;
};
struct to_amount : seq<kw_to, gap, amt, opt<ogap, equivs>> {
  static constexpr Kind node = Kind::to_amount;
};
struct by_amount : seq<kw_by, gap, sor<share_word, amt>> {
  static constexpr Kind node = Kind::by_amount;
};
struct for_amount : seq<kw_for, gap, amt> {
  static constexpr Kind node = Kind::for_amount;
};
struct load : seq<sor<number_word, item>, gap, kw_at, gap, kw_a, gap, kw_time> {
  static constexpr Kind node = Kind::load;
};
struct if_needed : seq<keyword<'i', 'f'>, gap, keyword<'n', 'e', 'e', 'd', 'e', 'd'>> {
  static constexpr Kind node = Kind::if_needed;
};
struct minimum : sor<keyword<'m', 'i', 'n', 'i', 'm', 'u', 'm'>, keyword<'m', 'a', 'x', 'i', 'm', 'u', 'm'>> {
  static constexpr Kind node = Kind::minimum;
};
struct or_overnight : seq<kw_or, gap, kw_overnight> {
  static constexpr Kind node = Kind::or_overnight;
};
struct until : seq<kw_until, gap, star<any>> {
  static constexpr Kind node = Kind::until;
};
struct step_verb : known<kVerbWord> {
  static constexpr Kind node = Kind::verb;
};
struct every : seq<kw_every, gap, sor<amt, per_unit>> {
  static constexpr Kind node = Kind::every;
};
struct between : seq<step_verb, gap, amt, gap, keyword<'b', 'e', 't', 'w', 'e', 'e', 'n'>> {
  static constexpr Kind node = Kind::between;
};
struct one_tail : sor<at_amount, place, in_place, for_amount, per_tail, plus_amount, to_amount, by_amount, until, of_word,
                      each_side, or_overnight, every, between, load, if_needed, minimum> {};
struct tail_joint : sor<seq<ogap, one<','>, ogap>, gap> {};
struct clause_tail : sor<seq<ogap, equivs>, seq<tail_joint, one_tail>> {};
struct clause_tails : star<not_at<shut>, clause_tail> {};

// ---- actions ------------------------------------------------------------------------------------------------------
struct time_ahead : letters_ahead<'t', 'i', 'm', 'e'> {};
struct times : seq<time_ahead, sor<number, number_word>, gap, kw_times> {
  static constexpr Kind node = Kind::times;
};
struct each_unit : seq<kw_each, gap, table_unit> {
  static constexpr Kind node = Kind::each_unit;
};
struct overnight : kw_overnight {
  static constexpr Kind node = Kind::overnight;
};
struct within : seq<kw_within, gap, amt> {
  static constexpr Kind node = Kind::within;
};
// "6 at a time" after a verb is a load, not a length.
struct not_load : not_at<time_ahead, load> {};
struct action_length : sor<times, each_unit, overnight, within, seq<opt<kw_for, gap>, not_load, amt, opt<gap, or_overnight>>> {};
struct action_rest : seq<opt<gap, action_length>, clause_tails, shut> {};
struct action : seq<step_verb, action_rest> {
  static constexpr Kind node = Kind::action;
};
struct heat : seq<kw_to, gap, amt, opt<ogap, equivs>, shut> {
  static constexpr Kind node = Kind::heat;
};
struct wait : seq<sor<overnight, within>, clause_tails, shut> {
  static constexpr Kind node = Kind::wait;
};

// ---- clauses led by an amount -------------------------------------------------------------------------------------
struct by_size : seq<gap, times_sign, gap, item> {
  static constexpr Kind node = Kind::by_size;
};
struct measure_rest : seq<plus<by_size>, shut> {};
struct of_refs : seq<gap, kw_of, gap, ref_list> {
  static constexpr Kind node = Kind::of_refs;
};
struct use_rest : seq<opt<ogap, equivs>, of_refs, shut> {};
struct of_amount : seq<gap, kw_of, gap, amt> {
  static constexpr Kind node = Kind::of_amount;
};
struct thing_rest : seq<opt<ogap, equivs>, gap, some_name, opt<of_amount>, shut> {};
struct time_rest : seq<clause_tails, shut> {};
struct led_rest : sor<shut, measure_rest, use_rest, time_rest, thing_rest> {};
struct led : seq<sor<amt, number_word>, led_rest> {
  static constexpr Kind node = Kind::led;
};

struct only_refs : seq<not_at<step_verb>, ref_list, shut> {
  static constexpr Kind node = Kind::refs;
};
struct bad_clause : star<any> {
  static constexpr Kind node = Kind::bad_clause;
};
// The ordered list of the written grammar; a digit or "the" in front says at once which can match.
struct digit_clause : seq<at<sor<digit, vulgar>>, sor<led, share, bad_clause>> {};
struct the_clause : seq<at<kw_the>, sor<seq<share, shut>, drift, only_refs, bad_clause>> {};
struct word_clause : sor<seq<share, shut>, pot, drift, action, heat, wait, led, only_refs, bad_clause> {};
struct clause : seq<ogap, sor<digit_clause, the_clause, word_clause>> {};

}  // namespace qtn::grammar
