// Values of head fields, lines of logs, facts of a kitchen (grammar/README.md, "Heads", "Logs", "Facts").
#pragma once
#include "grammar/clause.hpp"

namespace qtn::grammar {

// ---- makes, serves, keeps ... -------------------------------------------------------------------------------------
struct made_thing : name_words {
  static constexpr Kind node = Kind::name;
};
struct made_of : seq<gap, kw_of, gap, amt> {};
struct made : seq<amt, opt<gap, made_thing, opt<made_of>>> {
  static constexpr Kind node = Kind::made;
};
struct by_product : seq<kw_and, gap, amt, gap, opt<kw_of, gap>, made_thing> {
  static constexpr Kind node = Kind::by_product;
};
struct makes_value : seq<made, star<ogap, one<','>, gap, sor<by_product, made>>, shut> {};
struct amount_value : seq<amt, opt<gap, made_thing>, shut> {};

struct keep_place : known<kKeepPlace> {
  static constexpr Kind node = Kind::keep_place;
};
struct once_open : seq<keyword<'o', 'n', 'c', 'e'>, gap, keyword<'o', 'p', 'e', 'n'>> {
  static constexpr Kind node = Kind::once_open;
};
struct kept : seq<amt, opt<gap, keep_place>, opt<gap, once_open>> {
  static constexpr Kind node = Kind::kept;
};
struct keeps_value : seq<list<kept, seq<ogap, one<','>, gap>>, shut> {};
struct ready_value : seq<keyword<'a', 'f', 't', 'e', 'r'>, gap, amt, shut> {};
struct scales_value : seq<amt, shut> {};
struct at_a_time : seq<gap, kw_at, gap, kw_a, gap, kw_time> {};
// A dish's or a line's name, whatever is in it: `1 leg of lamb at a time`.
struct limit_word : plus<not_one<' ', '\t', '\r', '\n'>> {};
struct limit_thing : seq<at<letter>, limit_word, star<not_at<at_a_time>, gap, limit_word>> {
  static constexpr Kind node = Kind::name;
};
struct at_most_value : seq<amt, opt<not_at<at_a_time>, gap, opt<kw_of, gap>, limit_thing>, at_a_time, shut> {};

// ---- rounding -----------------------------------------------------------------------------------------------------
struct by_guide : keyword<'s', 't', 'a', 'n', 'd', 'a', 'r', 'd', 'i', 'z', 'e', 'd'> {
  static constexpr Kind node = Kind::by_guide;
};
struct rounding_value : sor<seq<by_guide, shut>, amount_value> {};

// ---- tin ----------------------------------------------------------------------------------------------------------
struct tin_count : seq<number, gap, times_sign, gap, at<digit>> {
  static constexpr Kind node = Kind::tin_count;
};
struct shape : known<kShapeWord> {
  static constexpr Kind node = Kind::shape;
};
struct tin_item : seq<number, opt<item_unit>> {};
struct tin_across : seq<tin_item, star<gap, times_sign, gap, tin_item>> {
  static constexpr Kind node = Kind::tin_size;
};
struct deep : seq<tin_item, gap, kw_deep> {
  static constexpr Kind node = Kind::deep;
};
// "19 x 9 cm at the base": the sides slope.
struct tin_base
    : seq<tin_item, star<gap, times_sign, gap, tin_item>, gap, kw_at, gap, opt<kw_the, gap>, kw_base> {
  static constexpr Kind node = Kind::tin_base;
};
struct tin_hole : seq<tin_item, gap, kw_hole> {
  static constexpr Kind node = Kind::tin_hole;
};
struct tin_more : seq<ogap, one<','>, ogap, sor<deep, tin_base, tin_hole>> {};
struct tin_thing : name_words {
  static constexpr Kind node = Kind::name;
};
// "2 x 20 cm round" is two tins; "20 x 30 cm" and "21 x 11 cm loaf" are one.
struct several_tins : seq<tin_count, tin_item, gap, sor<times_sign, known<kOneWidth>>> {};
struct tin_value : seq<opt<at<several_tins>, tin_count>, tin_across, opt<gap, shape>, opt<gap, tin_thing>,
                       rep_max<3, tin_more>, shut> {};

// ---- use ----------------------------------------------------------------------------------------------------------
struct value_char : not_one<' ', '\t', '\r', '\n'> {};
struct value_word : plus<value_char> {};
struct use_stop : seq<gap, kw_from, gap> {};
struct use_name : seq<value_word, star<not_at<use_stop>, gap, value_word>> {
  static constexpr Kind node = Kind::use_name;
};
struct as_stop : seq<gap, kw_as, gap> {};
struct path : seq<value_word, star<not_at<as_stop>, gap, value_word>> {
  static constexpr Kind node = Kind::path;
};
struct use_as : seq<value_word, star<gap, value_word>> {
  static constexpr Kind node = Kind::use_as;
};
struct use_value : seq<use_name, use_stop, path, opt<as_stop, use_as>, shut> {};

// ---- logs ---------------------------------------------------------------------------------------------------------
struct none : kw_none {
  static constexpr Kind node = Kind::none;
};
struct arrow : sor<string<'-', '>'>, string<'\xE2', '\x86', '\x92'>> {
  static constexpr Kind node = Kind::arrow;
};
// In a log a number stands alone, so that its noun ends the amount: `2 cloves -> 3 cloves`, `3 parts`, `a clove`.
struct lone_article : seq<article, at<gap, letter>> {
  static constexpr Kind node = Kind::amt;
};
struct change_value : sor<none, amt, lone_article> {};
struct noun_word : seq<at<letter>, value_word> {};
struct old_noun : seq<noun_word, rep_opt<2, gap, noun_word>> {  // three words, so that each is looked at a few times only
  static constexpr Kind node = Kind::name;
};
struct old_value : sor<none, seq<sor<amt, lone_article>, opt<gap, old_noun>>> {};
struct change_stop : seq<gap, old_value, gap, arrow, gap> {};
struct change_name : seq<value_word, star<not_at<change_stop>, gap, value_word>> {
  static constexpr Kind node = Kind::change_name;
};
struct new_name : seq<value_word, star<gap, value_word>> {
  static constexpr Kind node = Kind::name;
};
struct change_line : seq<ogap, opt<set, gap>, change_name, gap, old_value, gap, arrow, gap, change_value, opt<gap, new_name>, shut> {};

// ---- facts --------------------------------------------------------------------------------------------------------
struct fact_gap : sor<one<'\t'>, seq<thin_blank, sor<one<'\t'>, thin_blank>>> {};
struct fact_char : not_one<'\n', '\r'> {};
struct fact_name : seq<not_at<fact_gap>, plus<not_at<fact_gap>, fact_char>> {
  static constexpr Kind node = Kind::fact_name;
};
struct cell_text : plus<not_one<',', ';', '\n', '\r'>> {};
struct cell : cell_text {
  static constexpr Kind node = Kind::cell;
};
struct cells : list<cell, seq<one<',', ';'>, star<thin_blank>>> {};
struct film_clock : seq<digit, opt<digit>, one<':'>, digit, digit, opt<one<':'>, digit, digit>> {
  static constexpr Kind node = Kind::clock;
};
struct film_line : seq<star<thin_blank>, film_clock, gap, cell_text, shut> {};
struct fact_line : seq<star<thin_blank>, fact_name, plus<fact_gap>, star<thin_blank>, cells, shut> {};

}  // namespace qtn::grammar
