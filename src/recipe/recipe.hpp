// The checked recipe: the boundary of this room. Names resolved, amounts typed and exact, ingredients counted out.
// Flat arrays and indices; text is views into the source, which must outlive the recipe.
#pragma once
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/source.hpp"
#include "diag/diagnostic.hpp"
#include "larder/food.hpp"
#include "measure/quantity.hpp"
#include "measure/tin.hpp"
#include "syntax/field.hpp"
#include "syntax/tree.hpp"
#include "words/verbs.hpp"

namespace qtn {

using Index = std::uint32_t;
inline constexpr Index kNone = ~Index{0};

struct Slice {
  Index first = 0, count = 0;
  Index end() const { return first + count; }
  bool empty() const { return count == 0; }
};

// ---- heads --------------------------------------------------------------------------------------------------------
enum class OvenKind : std::uint8_t { unstated, conventional, fan, gas };
enum class WordsOf : std::uint8_t { unstated, british, american };
enum class KeepPlace : std::uint8_t { none, chilled, frozen, cool, room, sealed };

struct Made {
  Quantity amount;
  std::string_view thing;        // "tart"; empty for a weight or volume
  std::optional<Quantity> each;  // jars of 330 g
  bool by_product = false;
  bool damaged = false;  // could not be read, or is nothing: reported, and its amounts are lost
  Span span, amount_span;
};
struct Keep {
  Quantity length;
  KeepPlace place = KeepPlace::none;
  bool once_open = false;
  Span span, length_span;
};
struct Tin {
  TinSize size;
  Span span;  // the value, as written
};
struct Batch {  // at most: 1.5 kg oranges at a time
  Quantity amount;
  std::string_view thing;
  Span span;
};
struct TextFact {
  Field field;
  Span span;  // the value
};
struct Recipe;
struct Use {
  std::string_view name;  // what the other file calls it
  std::string_view as;    // what this one calls it
  std::string_view path;
  Span span, name_span, path_span;
  const Recipe* recipe = nullptr;  // null when it could not be had; then already reported
  Index part = kNone;              // of that recipe; kNone: the dish
};

// ---- the list -----------------------------------------------------------------------------------------------------
enum class Basis : std::uint8_t { amount, percent, rate, parts, unmeasured };
enum class TailKind : std::uint8_t {
  preparation, from, taking_up, start_with, strength, trimmings, at_clock, each, extra, optional, fixed, gently, unmeasured,
};
struct Tail {
  TailKind kind;
  Span span;                       // all of it
  std::optional<Quantity> amount;  // of from, taking up, start with, strength (% or ppm), trimmings, each; in 10 mm dice
  Span amount_span;
  std::string_view name;           // from 6 eggs: eggs; 5 % acid: acid; for trimmings: trimmings
};
struct Stated {  // one of several statements of one amount
  Quantity amount;
  Span span;
  bool each = false;
};

enum class TargetKind : std::uint8_t { none, line, part, use, product, aside, everything };
struct Target {
  TargetKind kind = TargetKind::none;
  Index index = kNone;  // of lines, parts, uses, makes (of the part `part`), asides
  Index part = kNone;
  Span span{};  // the words that name it
};

struct TakeLine {
  Span span, name_span, amount_span;  // amount_span: as written, equivalents left out; empty without an amount
  std::string_view name;
  Slice keys;         // of Recipe::name_keys: the name folded, word by word; by know_food()
  Basis basis = Basis::amount;
  Quantity written;   // what the list says: 220 g, 50 %, 3 parts
  Quantity amount;    // what goes in: solved; equal to written for a plain amount; lost while unsolved
  std::optional<Quantity> pack;  // size of one in 2 x 400 g tins
  std::string_view pack_noun;    // "tins"
  Slice stated;                  // of Recipe::stated
  Slice tails;
  Slice members;                 // of Recipe::set_members: the base of its own `of [ ... ]`
  std::optional<Quantity> per;   // 18 g per kg: the kg
  Target target;                 // a part or a recipe from another file, else none
  const Food* food = nullptr;    // what the larder knows of it
  FoodForms forms;                   // and of the form that its words choose: packed, chopped, large
  Index part = 0;
  Index parent = kNone;          // of an `or` line the line it replaces; of a given thing the line it comes out of
  bool alternative = false;      // an `or` line
  bool given = false;            // giving 250 g prawns: counted by itself, no row in the list
  bool splits = false;           // has given things: it is not counted itself
  bool house_measure = false;    // 2 ladles: kept as written, amount in ml
  bool each_of_several = false;  // 1/2 tsp each thyme and sage
  bool optional = false, fixed = false, gently = false;
  bool struck = false;           // this version leaves it out: mentions print struck and count nothing
  bool added = false;            // this version puts it in: never "unused"
  Index chosen = kNone;          // an alternative that a command picked: its name and amount stand for this line
  bool measured() const { return basis != Basis::unmeasured; }
};

// ---- the method ---------------------------------------------------------------------------------------------------
enum class TermRole : std::uint8_t {
  length,       // how long: 20 min, at least 2 h, overnight (then 8 h to 12 h)
  temperature,  // 180 °C alone or after `at`
  to,           // to 40 °C, to 2.5 l, down to
  reading,      // reads 78 °C
  hold,         // for 2 min, after a reading
  by,           // by 10 °C: a difference
  per,          // per 450 g (of a line)
  plus,         // plus 20 min
  within,       // use within 24 h
  every, between, load, times,
  use,          // 100 g of the cheddar
  share,        // 30 % of the milk, 3/4 of the milk: low = high = the share
  change,       // loses 14 %
  checkpoint,   // weigh 3.06 kg
  measure,      // 3 mm; 5 cm x 8 cm is two terms
  pieces, piece_weight,
  strength,     // at least 3 % acid
  equivalent,   // a stated equivalent of the term before it
};
struct Term {
  TermRole role;
  Quantity amount;
  Span span;
  bool overnight = false;
  bool changed = false;  // by a version: shown from the amount, its span stands elsewhere
  Span stood = {};       // of a changed one: its place in the clause
};

enum class Taking : std::uint8_t {
  mention,  // takes all that is left when nothing was taken, else is only a mention
  share, amount, rest,
  named,    // names a thing without taking: pot clauses, loses, per
};
struct Mention {
  Span span;
  Target target;
  Taking taking = Taking::mention;
  Index term = kNone;   // the amount asked
  Fraction share;       // the share asked, for Taking::share
  bool about = false;
  bool takes = false;   // counted out: something was taken here
  // What it takes, as a share of the whole line, by both ends of a range.
  Fraction part_low, part_high;
  bool whole = false;   // takes the whole line
};

enum class ClauseKind : std::uint8_t {
  use, keep_back, take_out, discard, strain_out, drain, drift, reduce, checkpoint, time, reading, temperature, measure,
  pieces, strength, taste, use_within, bad,
};
struct Clause {
  ClauseKind kind = ClauseKind::bad;
  Span span;   // with its brackets
  VerbId verb = kNoVerb;
  bool own_verb = false;   // the clause opens with it; else it is the nearest before in its sentence
  const Verb* house_verb = nullptr;
  Slice terms, mentions;
  Index step = 0, part = 0;
  Takes place = Takes::nothing;  // in the fridge, on the hob: rules over the verb's row
  bool explained = false;        // a bad clause that was already reported
  bool gains = false;            // of drift: gains, else loses
  bool the_rest = false;         // discard the rest
  bool each_side = false, if_needed = false, or_overnight = false;
  std::string_view thing;        // what pieces are called; of a strength, its word
  std::string_view until, of;    // until golden; of chilling
};

// What a time by weight goes by, at its place in the method: `20 min per 450 g of the lamb`.
struct Weighed {
  Index clause = kNone;
  Index line = kNone;  // the line that it grows with; kNone: the pot, a part
  Ends one{Fraction::lost(), Fraction::lost()};  // of one piece, in the base unit of its `per`
  bool counted = false;  // the line is so many pieces: more of them weigh no more each
};

// What the pot has where a step asks for a strength: `[at least 3 % acid]`.
struct FoundStrength {
  Index clause = kNone;
  Ends share{Fraction::lost(), Fraction::lost()};
  Index unweighed = kNone;  // a line in it that nobody can weigh
};

enum class PieceKind : std::uint8_t { prose, link, clause };
struct Piece {
  PieceKind kind;
  bool markup = false;
  bool line_start = false;  // begins a line of the source: a blank stands before it
  Span span;
  Index clause = kNone;
};
enum class StepKindOf : std::uint8_t { step, meanwhile, ahead, by_hand, by_machine, note };
enum class StepWay : std::uint8_t { by_hand, by_machine };
struct Step {
  StepKindOf kind = StepKindOf::step;
  Span span;
  Slice pieces, clauses;
  Index part = 0;
};

struct TakeHead {
  Basis basis = Basis::amount;     // percent, rate, parts
  std::optional<Quantity> per;     // of a rate
  Slice members;                   // of Recipe::set_members
  bool all_flour = false;          // % of all flour: that inside parts and recipes taken too
  bool by_volume = false;
  Span span;
};

// A share of a weight that is something: 5 % acid. `low` where what boils away takes its share along, `high` where it
// stays behind; amounts that are ranges widen both.
struct Strength {
  std::string_view name;
  Ends share;
};
struct Makeup {
  std::vector<Strength> strengths;
  Fraction meat, liquid;     // the share that is raw meat, and that pours; asked for only where there is nitrite
  bool known = true;         // false: of something in it nothing is known, which was reported
  bool unweighed = false;    // something in it could not be weighed, so that the shares are at most these
};

struct Part {
  std::string_view name;  // the recipe's own for the unnamed part
  Span span;              // its head line
  bool unnamed = false;
  std::vector<Made> makes;
  std::optional<Tin> tin;
  std::vector<Keep> keeps;
  std::optional<Quantity> ready_after;
  std::optional<Batch> batch;
  std::vector<TextFact> notes;
  TakeHead head;
  bool has_list = false, has_method = false;
  Slice lines;  // in the order of the page, alternatives and given things among them
  Slice steps;
  bool used = false;
  // Something in it could not be read, and was reported: nothing is said of what follows from it (one cause, one report).
  bool disturbed = false;
  bool in_ring = false;  // it needs itself to be made first; reported
  // The pot at its end (semantics part 9), in grams; lost when something in it cannot be weighed.
  Fraction weight_low = Fraction::lost(), weight_high = Fraction::lost();
  Makeup makeup;  // of that weight; empty where no line says a strength
};

struct AfterBlock {  // to keep, to freeze, to reheat, to finish
  Field field;
  Slice steps;
};

// ---- history and versions -----------------------------------------------------------------------------------------
enum class Counted : std::uint8_t { plain, parts, house };  // 3 parts; 2 ladles, whose amount is in ml
enum class ShareOf : std::uint8_t { nothing, meat, flour, whole };
// A changed amount as a share of what it goes into: of the raw meat or the flour of its part, else of all its part.
struct ChangeShare {
  ShareOf of = ShareOf::nothing;  // nothing: a step, or something in it cannot be weighed
  Fraction before, after;         // 0 for `none`; a range by its middle
};
// "0.6 % to 0.9 %"; with as many places as tell the two apart.
std::string shares_in_words(const ChangeShare& share);
std::string share_in_words(const Fraction& share);  // "0.9 %"
struct Change {
  Span span, name_span;
  std::string_view name;
  std::optional<Quantity> before, after;  // nullopt: none
  Counted before_as = Counted::plain, after_as = Counted::plain;
  Span before_span, after_span;
  std::string_view replacement;           // a name after the new amount
  std::string_view part;                  // [Shortcrust] in front
  Target target;                          // the line; none for a verb's clause
  Index clause = kNone;
  ChangeShare share;                      // of a trial, of the recipe as written
};
struct Log {  // a trial or a variant
  Field field;
  std::string_view name;  // the date, or the variant's name
  Span span;
  int day = 0;            // of a trial: days since 1970-01-01
  std::vector<Change> changes;
  std::vector<Span> notes;
};
// How far a recipe was tried: a draft has no trial; after three trials in a row without a change, none after them with one,
// it is standardized, as the trade's handbooks define it ("the same result every time", three like results).
enum class Tried : std::uint8_t { draft, tried, standardized };
struct TrialStanding {
  Tried tried = Tried::draft;
  int alike = 0;           // trials since the last change, each without one
  Index untasted = kNone;  // of Recipe::trials: the newest, where it changed something that nobody has tasted since
};
struct FilmMark {
  int seconds;
  Span clock, title;
};

// ---- the house ----------------------------------------------------------------------------------------------------
struct HouseMeasure {
  std::string_view name;
  Quantity amount;
};
struct HouseOven {  // one line of `ovens:`
  std::string_view name;
  OvenKind kind = OvenKind::unstated;
  int shelves = 0;                       // 0: not said
  int count = 1;                         // so many of these
  Fraction heats_in = Fraction::lost();  // minutes
};
struct HouseHob {
  std::string_view name;
  int rings = 0;  // 0: not said
  int count = 1;
};
struct HouseFridge {  // or a freezer, which stands below 0 °C
  std::string_view name;
  std::optional<Quantity> temperature;
};
struct Supplier {  // one line of `suppliers:`
  std::string_view name;
  std::vector<std::string_view> foods;  // as written: "flour"
  std::string_view when;                // as written: "every day but Sunday"; may be empty
  unsigned days = 0;                    // of it, where those are days of the week: bit 0 Monday ... bit 6 Sunday
  int ahead = 0;                        // ordered so many days before it comes; 0: not said
};
struct HousePrice {  // one line of `prices:`
  std::string_view name;
  Fraction money = Fraction::lost();    // for the pack, in the kitchen's currency
  Quantity pack;                        // 250 g, 12, 1 punnet
  bool loose = false;                   // per kg, per l, each: sold in any amount
  std::optional<int> day;               // it was asked, days since 1970-01-01
  Span span;                            // the name
};
struct Kitchen {
  std::string_view name;
  Dialect dialect = Dialect::unstated;
  WordsOf words = WordsOf::unstated;
  OvenKind oven = OvenKind::unstated;
  Fraction tolerance = Fraction::of(1, 20);  // rounding:
  bool standardized = false;                 // rounding: standardized, by the published guide
  Fraction finest = Fraction(1);             // scale:, in grams
  Quantity work;                             // what an unwritten length is shown as
  int cooks = 1;
  int night_from = 22 * 60, night_to = 6 * 60 + 30;
  bool gentle_seasoning = false;
  std::optional<StepWay> way;                    // which of two ways of a step this house takes
  std::string_view law, currency, zone;
  std::vector<HouseOven> ovens;
  std::vector<HouseHob> hobs;
  std::vector<HouseFridge> fridges;
  std::vector<HouseMeasure> measures;
  std::vector<std::pair<std::string_view, Tin>> tins;
  std::vector<std::pair<std::string_view, Verb>> verbs;
  std::vector<HouseFood> foods;
  std::vector<Supplier> suppliers;
  std::vector<HousePrice> prices;
  std::vector<std::pair<std::string_view, std::string_view>> words_of_house;
  struct Fact {
    Field block;
    Span name, value;
  };
  std::vector<Fact> facts;  // every line of every block, as read shows them
  const HouseFood* food(std::string_view listed) const;
  // The measure of the house that a text begins with, in one or several: "ladles of stock"; `size`: how much it covers.
  const HouseMeasure* measure_at(std::string_view text, std::size_t& size) const;
};

struct Recipe {
  const Source* source = nullptr;
  std::string_view text;
  FileKind kind = FileKind::recipe;
  std::string_view title;
  Dialect dialect = Dialect::unstated;  // the file's, else its kitchen's
  WordsOf words = WordsOf::unstated;
  OvenKind oven = OvenKind::unstated;
  std::shared_ptr<const Kitchen> kitchen;  // of the book; null without one
  std::vector<Made> makes;                 // of the head; the dish's part holds its own
  std::optional<Quantity> serves;
  Span serves_span;
  std::optional<Tin> tin;
  std::vector<Keep> keeps;
  std::optional<Quantity> ready_after;
  std::optional<Quantity> scales;
  std::optional<Batch> batch;
  std::vector<TextFact> facts;  // source, by, date, needs, photo, note, caution, guests, serve ...
  std::vector<Use> uses;
  std::vector<Part> parts;
  Index dish = 0;
  std::vector<TakeLine> lines;
  std::vector<WordKey> name_keys;
  std::vector<Tail> tails;
  std::vector<Stated> stated;
  std::vector<Target> set_members;
  std::vector<Step> steps;
  std::vector<Piece> pieces;
  std::vector<Clause> clauses;
  std::vector<Weighed> weighed;  // of clauses with a `per`, as far as the pot was walked through
  std::vector<FoundStrength> found_strengths;  // of strength clauses
  std::vector<Term> terms;
  std::vector<Mention> mentions;
  std::vector<AfterBlock> after;
  std::vector<Span> damaged;  // lines of lists that could not be read
  std::vector<Log> trials, variants;
  std::vector<FilmMark> film;
  TrialStanding standing;
  std::optional<int> as_of;  // the day whose amounts these are; of a version made by as_of()
  std::string_view version;  // the variant's name, or the alternative that was chosen
  Fraction factor = Fraction(1);  // what the written amounts have been multiplied by

  std::span<const WordKey> keys_of(const TakeLine& line) const { return {name_keys.data() + line.keys.first, line.keys.count}; }
  // An empty recipe that has the arrays of this one: reading file after file makes them once.
  Recipe emptied() &&;
  std::string_view slice(Span span) const { return text.substr(span.begin, span.size()); }
  const Fraction& tolerance() const {
    static const Fraction plain = Fraction::of(1, 20);
    return kitchen ? kitchen->tolerance : plain;
  }
};

// Grams per millilitre and grams of one for a listed line: the file, its book's kitchen, the built-in table.
struct Known {
  Fraction density = Fraction::lost();
  Fraction each = Fraction::lost();
  std::string_view density_source, each_source;
  bool remembered = false;
};
Known known_of(const Recipe& recipe, const TakeLine& line);
// Flour by its name: plain flour, rice flour, not cornflour.
bool is_flour(const TakeLine& line);
// Raw meat by its name: "pork shoulder", not "chicken stock".
bool is_raw_meat(const TakeLine& line);
// The lines that a name means, in the whole recipe, as a mention in a bracket would: none, one, or a tie of several.
std::vector<Index> lines_named(const Recipe& recipe, std::string_view name);
// The same for an amount of it that is measured in this unit: a spoon is filled otherwise than a cup.
Known known_of(const Recipe& recipe, const TakeLine& line, const Quantity& amount, UnitId measured_in);
// Whose figure that is where it is not its own: of "teff flour" only the flour may be known, and a figure of the plain
// row is used. Empty where the name is one of the row's, and where a form or the house's own file gave the figure.
std::string_view taken_for(const TakeLine& line, std::string_view source);
// The table's own figures for a line, of the form that its words choose; without a value where it has none.
const Figure& density_of(const TakeLine& line);
const Figure& spoon_density_of(const TakeLine& line);
const Figure& weight_of_one(const TakeLine& line);
// An amount of a line in grams, by both ends; lost where a figure is lacking.
Ends grams_of(const Recipe& recipe, const TakeLine& line, const Quantity& amount);

// ---- making one ---------------------------------------------------------------------------------------------------
struct Surroundings {
  std::shared_ptr<const Kitchen> kitchen;
  // For each `use:` of the file, in order: the recipe it names, or null when it was already reported.
  std::vector<const Recipe*> uses;
  int today = 0;  // days since 1970-01-01, for dates in the future; 0: not checked
};
// Total: a recipe comes out of any tree, as far as it could be understood; problems go to the report.
// `spare` is a recipe that is no longer wanted.
Recipe check(const Source& source, const Tree& tree, const Surroundings& around, Report& report, Recipe&& spare = {});
// What `use:` lines a tree has, before anything is checked.
std::vector<Use> uses_of(const Source& source, const Tree& tree);
// `today`: days since 1970-01-01, for prices asked on a day to come; 0: not checked.
Kitchen check_kitchen(const Source& source, const Tree& tree, Report& report, int today = 0);

// A version of a checked recipe: a variant's arrow lines applied, an `or` line chosen by name; checked again as a
// recipe of its own. nullopt when it has no such variant or alternative (nothing is reported then).
std::optional<Recipe> variant_of(const Recipe& recipe, std::string_view variant, Report& report);
std::optional<Recipe> with_alternative(const Recipe& recipe, std::string_view name, Report& report);
// The amounts as they stood behind the trials of a day: what later trials changed is undone, the newest first, and the
// whole is checked again. `day` as read_date counts it. nullopt after an error: there was no trial yet, or a later change
// cannot be undone. The versions of the file start from today's amounts and are left out.
std::optional<Recipe> as_of(const Recipe& recipe, int day, Report& report);
// Trials by their dates, the newest first; of one day the lowest on the page. Indices of Recipe::trials.
std::vector<Index> newest_first(const Recipe& recipe);
// `by hand:` and `by machine:` behind one another are two ways of one step: is this step of the way that is not taken? The
// first on the page is, unless the other is asked for.
bool is_other_way(const Recipe& recipe, Index step, std::optional<StepWay> way);

}  // namespace qtn
