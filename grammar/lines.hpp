// The outer level as rules: lines, fields, blocks, steps, and the brackets of a step (grammar/README.md, "Lines"). The
// program splits by hand, src/syntax/split*.cpp, in one pass; tests/syntax/split.cpp holds the two against each other.
//
// What a field word may be depends on where it stands, so the rules are a chain of states, head, list, steps, log, facts:
// each runs over its own lines and ends by saying which comes next.
#pragma once
#include "grammar/base.hpp"
#include "grammar/field_word.hpp"

namespace qtn::grammar {

// ---- lines --------------------------------------------------------------------------------------------------------
struct thin : one<' ', '\t'> {};
struct newline : seq<opt<one<'\r'>>, one<'\n'>> {};
struct line_end : sor<newline, seq<opt<one<'\r'>>, eof>> {};
struct line_char : seq<not_at<line_end>, any> {};
struct ink : seq<not_at<thin>, line_char> {};
struct words : seq<plus<ink>, star<plus<thin>, plus<ink>>> {};  // a line's text without the blanks around it
struct blank_line : sor<seq<star<thin>, newline>, seq<plus<thin>, opt<one<'\r'>>, eof>, seq<one<'\r'>, eof>> {};
struct comment_line : seq<star<thin>, one<'#'>, star<line_char>, line_end> {};
struct quiet_line : sor<blank_line, comment_line> {};

// A value goes on over lines that begin nothing else; comments in between do not end it.
template <typename Stop>
struct more : seq<star<thin>, newline, star<comment_line>, not_at<Stop>, star<thin>, words> {};
template <typename Stop>
struct value_text : sor<seq<words, star<more<Stop>>>, plus<more<Stop>>> {};
template <typename Stop>
struct value : value_text<Stop> {
  static constexpr Kind node = Kind::text;
};

// One line of a list, a log or facts, or one that fits nothing.
struct entry : words {
  static constexpr Kind node = Kind::bad_line;
};
struct entry_line : seq<star<thin>, entry, star<thin>, line_end> {};

// ---- places: which field words count. H is the head that the file is in, Head says whether this is one -------------
template <unsigned Where, bool Head, unsigned H, bool Start = false>
struct standing {
  static constexpr unsigned where = Where, head = H;
  static constexpr bool in_head = Head, start = Start;
};
using in_start = standing<kAnyHead, true, kRecipe, true>;
template <unsigned H>
using in_head = standing<H, true, H>;
template <unsigned H>
using in_list = standing<kEnds, false, H>;
template <unsigned H>
using in_steps = standing<kEnds | kSteps, false, H>;
template <unsigned H>
using in_log = standing<kEnds | kLog, false, H>;
template <unsigned H>
using in_facts = standing<H == kKitchen ? unsigned{kKitchen} : unsigned{kEnds | kRecipe}, false, H>;

// ---- field words --------------------------------------------------------------------------------------------------
template <typename P, unsigned Opens, bool Near>
struct field_name : field_word<P, Opens, Near> {
  static constexpr Kind node = Kind::word;
};
struct colon : seq<star<thin>, one<':'>, star<thin>> {};
template <typename P, unsigned Opens, bool Near>
struct opening : seq<field_name<P, Opens, Near>, colon> {};
// In a head a near miss counts wherever it stands, in a block only in column 1.
template <typename P, template <typename, bool> class Item>
struct on_line : sor<Item<P, true>, seq<plus<thin>, Item<P, P::in_head>>> {};
template <unsigned Opens>
struct words_that_open {
  template <typename P, bool Near>
  using item = seq<field_word<P, Opens, Near>, colon>;
};
template <typename P, unsigned Opens>
struct at_field : at<on_line<P, words_that_open<Opens>::template item>> {};

// ---- heads --------------------------------------------------------------------------------------------------------
struct head_stop : seq<star<thin>, colon_form> {};
template <typename P, unsigned Opens, bool Near>
struct head_field : seq<opening<P, Opens, Near>, opt<value<head_stop>>> {
  static constexpr Kind node = Kind::field;
};
template <typename P, bool Near>
using value_field = head_field<P, kOpensValue, Near>;
template <typename P, bool Near>
using part_field = head_field<P, kOpensPart, Near>;
template <typename P, bool Near>
using menu_field = head_field<P, kOpensMenu, Near>;
template <typename P, bool Near>
using kitchen_field = head_field<P, kOpensKitchen, Near>;
template <typename P, template <typename, bool> class Item>
struct field_line : seq<on_line<P, Item>, star<thin>, line_end> {};

struct unknown_word : seq<plus<word_char>, star<plus<thin>, plus<word_char>>> {
  static constexpr Kind node = Kind::word;
};
struct unknown_field : seq<at<colon_form>, unknown_word, star<thin>, one<':'>, opt<star<thin>, value_text<head_stop>>> {
  static constexpr Kind node = Kind::unknown_field;
};
struct unknown_line : seq<star<thin>, unknown_field, star<thin>, line_end> {};
template <typename P>
struct head_line : sor<quiet_line, field_line<P, value_field>, unknown_line, entry_line> {};

// ---- blocks -------------------------------------------------------------------------------------------------------
template <typename P, typename Line>
struct lines_until : star<not_at<at_field<P, kOpensOther>>, Line> {};

template <typename P, bool Near>
struct list_block : seq<opening<P, kOpensList, Near>, star<line_char>, line_end, lines_until<in_list<P::head>, sor<quiet_line, entry_line>>> {
  static constexpr Kind node = Kind::block;
};

template <typename P>
struct note_text : opt<value_text<at_field<P, kOpensAny>>> {
  static constexpr Kind node = Kind::note;
};
template <typename P, bool Near>
struct note_item : seq<field_word<P, kOpensNote, Near>, colon, note_text<P>> {};
template <typename P>
struct note_line : seq<on_line<P, note_item>, star<thin>, line_end> {};

struct block_name : words {
  static constexpr Kind node = Kind::block_name;
};
template <typename P>
struct log_lines : lines_until<P, sor<quiet_line, note_line<P>, entry_line>> {};
template <typename P, bool Near>
struct log_block : seq<opening<P, kOpensLog, Near>, opt<block_name>, star<thin>, line_end, log_lines<in_log<P::head>>> {
  static constexpr Kind node = Kind::block;
};

template <typename P, bool Near>
struct facts_block : seq<opening<P, kOpensFacts, Near>, opt<entry>, star<thin>, line_end, lines_until<in_facts<P::head>, sor<quiet_line, entry_line>>> {
  static constexpr Kind node = Kind::block;
};

// ---- steps: a paragraph, up to a blank line, an opener or another field ------------------------------------------------
template <typename P>
struct step_more : seq<newline, star<comment_line>, not_at<blank_line>, not_at<at_field<P, kOpensAny>>, star<thin>, ink, star<line_char>> {};
template <typename P>
struct step_text : seq<ink, star<line_char>, star<step_more<P>>> {
  static constexpr Kind node = Kind::text;
};
template <typename P>
struct opened_text : seq<star<line_char>, star<step_more<P>>> {  // an opener's words may begin on the next line
  static constexpr Kind node = Kind::text;
};
template <typename P>
struct step : seq<step_text<P>> {
  static constexpr Kind node = Kind::step;
};
template <typename P, bool Near>
struct opened_step : seq<opening<P, kOpensStep, Near>, opened_text<P>> {
  static constexpr Kind node = Kind::step;
};
template <typename P>
struct steps_line : sor<quiet_line, note_line<P>, seq<on_line<P, opened_step>, line_end>, seq<star<thin>, step<P>, line_end>> {};
template <typename P>
struct steps_lines : seq<opt<step<P>>, line_end, lines_until<P, steps_line<P>>> {};
template <typename P, bool Near>
struct steps_block : seq<opening<P, kOpensSteps, Near>, steps_lines<in_steps<P::head>>> {
  static constexpr Kind node = Kind::block;
};

// ---- the chain ----------------------------------------------------------------------------------------------------
template <unsigned H>
struct head_state;
template <typename P>
struct next : sor<seq<on_line<P, list_block>, opt<next<in_list<P::head>>>>, seq<on_line<P, steps_block>, opt<next<in_steps<P::head>>>>,
                  seq<on_line<P, log_block>, opt<next<in_log<P::head>>>>, seq<on_line<P, facts_block>, opt<next<in_facts<P::head>>>>,
                  seq<field_line<P, part_field>, head_state<kPart>>, seq<field_line<P, value_field>, head_state<P::head>>> {};
template <unsigned H>
struct head_state : seq<star<not_at<at_field<in_head<H>, kOpensBlock | kOpensPart>>, head_line<in_head<H>>>, opt<next<in_head<H>>>> {};
struct byte_order_mark : string<'\xEF', '\xBB', '\xBF'> {};
struct file : seq<opt<byte_order_mark>, star<quiet_line>,
                  sor<seq<field_line<in_start, menu_field>, head_state<kMenu>>, seq<field_line<in_start, kitchen_field>, head_state<kKitchen>>,
                      next<in_start>, seq<unknown_line, head_state<kRecipe>>, head_state<kRecipe>>,
                  eof> {};

}  // namespace qtn::grammar
