// Blocks of the log as values (semantics part 8, Trials; part 9, variants).
#include "recipe/logs.hpp"

#include <algorithm>

#include "recipe/amounts.hpp"
#include "recipe/dates.hpp"
#include "words/lexicon.hpp"

namespace qtn {
namespace {

class LogBuilder {
 public:
  LogBuilder(const Source& source, Recipe& recipe, Report& report)
      : in_{source, report, recipe.dialect, {}}, recipe_(recipe), report_(report) {
    // The list has already said that its `tbsp` has more than one size; a log that says it again would only nag.
    for (const TakeLine& line : recipe.lines) in_.warned.push_back(line.written.unit);
    for (const Stated& stated : recipe.stated) in_.warned.push_back(stated.amount.unit);
    for (const Term& term : recipe.terms) in_.warned.push_back(term.amount.unit);
    for (const auto* logs : {&recipe.trials, &recipe.variants})
      for (const Log& log : *logs)
        for (const Change& change : log.changes)
          for (const auto& amount : {change.before, change.after})
            if (amount) in_.warned.push_back(amount->unit);
  }

  void run(View block) {
    log_.field = field_of(block.value());
    log_.span = block.span();
    bool damaged = false;
    for (View child : block) {
      if (child.kind() == Kind::note) log_.notes.push_back(child.span());
      if (child.kind() == Kind::bad_line) bad_line(child.span()), damaged = true;
      if (child.kind() == Kind::change) damaged = !change(child) || damaged;
    }
    name(block);
    if (is_variant() && log_.changes.empty() && !damaged)
      report_.add(Code::empty_variant, block.first(Kind::word).span(), "This version changes nothing.")
          .expect("lines such as `large eggs  3 -> none`");
    (is_variant() ? recipe_.variants : recipe_.trials).push_back(std::move(log_));
  }

 private:
  bool is_variant() const { return log_.field == Field::variant; }

  void name(View block) {
    if (!block.has(Kind::block_name)) {
      log_.day = kNoDay;
      report_.add(Code::log_without_name, block.first(Kind::word).span(),
                  is_variant() ? "This version has no name." : "This trial has no date.")
          .expect(is_variant() ? "a name, such as `variant: Egg-free`" : "a date, such as `trial: 2026-02-11`");
      return;
    }
    const Span span = block.first(Kind::block_name).span();
    log_.name = trim(in_.slice(span));
    if (!is_variant()) {
      log_.day = read_date(log_.name, span, report_).value_or(kNoDay);
      return;
    }
    for (const Log& other : recipe_.variants)
      if (lower(other.name) == lower(log_.name))
        report_.add(Code::repeated_variant, span, "There is already a version called `" + std::string(other.name) + "`.")
            .also(span_of(recipe_, other.name), "the first is here").expect("a name that no other version has");
  }

  // False when the line could not be read whole; then it is left out, so that nothing follows from half a change.
  bool change(View at) {
    Change made;
    made.span = at.span();
    bool arrow = false, damaged = false;
    std::vector<View> refs;
    Span noun{};
    for (View child : at) {
      switch (child.kind()) {
        case Kind::set:
          for (View ref : child) refs.push_back(ref);
          break;
        case Kind::change_name:
          made.name_span = child.span();
          made.name = trim(in_.slice(child.span()));
          break;
        case Kind::arrow: arrow = true; break;
        case Kind::none: (arrow ? made.after_span : made.before_span) = child.span(); break;
        case Kind::amt: {
          const bool of_step = lines_named(recipe_, kNone, made.name).lines.empty() && is_verb_word(recipe_, made.name);
          const ReadAmount read = read_amount(in_, child, of_step ? Place::clause : Place::list);
          damaged = damaged || read.damaged;
          (arrow ? made.after : made.before) = read.amount;
          (arrow ? made.after_span : made.before_span) = read.span;
          break;
        }
        case Kind::name:
          if (arrow) made.replacement = trim(in_.slice(child.span()));
          else noun = child.span();
          break;
        default: break;
      }
    }
    if (refs.size() > 1) {
      report_.add(Code::bad_change, {refs.front()->begin, refs.back()->end}, "A change belongs to one part.")
          .expect("one part's name in brackets, and a line for each part");
      return false;
    }
    if (!refs.empty()) made.part = trim(in_.slice(refs.front().span()));
    if (!damaged) damaged = !old_noun(made, noun);
    if (damaged) return false;
    new_noun(made);
    if (!made.before && !made.after) {
      report_.add(Code::none_to_none, {made.before_span.begin, made.after_span.end}, "Nothing was there and nothing came.")
          .expect("an amount on one side of the arrow");
      return false;
    }
    log_.changes.push_back(made);
    return true;
  }

  // What a number of a change counts: `2 cloves`, `3 parts`, `2 ladles`. Returns how much of the text that was.
  std::size_t counted(std::string_view text, Quantity& amount, Counted& as) const {
    if (amount.unit != kNoUnit) return 0;
    const std::size_t word = text.find(' ');
    const std::string first = lower(text.substr(0, word));
    if (first == "parts" || first == "part") {
      as = Counted::parts;
      return first.size();
    }
    if (const Found found = Lexicon::standard().longest(text, kCountNoun)) {
      amount.unit = found.row->unit;
      return found.size;
    }
    std::size_t size = 0;
    const HouseMeasure* const house = recipe_.kitchen ? recipe_.kitchen->measure_at(text, size) : nullptr;
    if (house == nullptr) return 0;
    as = Counted::house;
    amount.low *= house->amount.low, amount.high *= house->amount.low;
    amount.unit = house->amount.unit;
    return size;
  }

  static std::string_view behind(std::string_view text, std::size_t size) {
    text = trim(text.substr(size));
    return size != 0 && lower(text.substr(0, 3)) == "of " ? trim(text.substr(3)) : text;
  }

  // Before the arrow nothing may stand behind the amount but what it counts, and the name of the thing itself.
  bool old_noun(Change& made, Span noun) {
    if (noun.empty() || !made.before) return true;
    const std::string_view text = in_.slice(noun);
    const std::size_t size = counted(text, *made.before, made.before_as);
    if (size != 0) made.before_span.end = noun.begin + static_cast<std::uint32_t>(size);
    if (is_itself(behind(text, size), made, false)) return true;
    const std::string found = "`" + std::string(in_.slice({made.before_span.begin, noun.end})) + "`";
    report_.add(Code::bad_change, noun, "`" + std::string(text) + "` is nothing that an amount is counted in.").find(found)
        .expect("a number alone or with a unit, a count noun such as `cloves`, `parts`, or a measure of the house");
    return false;
  }

  // In `garlic 2 -> 3 cloves` the last word is what is counted, not another ingredient; nor is the thing's own name.
  void new_noun(Change& made) const {
    if (!made.after || made.replacement.empty()) return;
    const std::size_t size = counted(made.replacement, *made.after, made.after_as);
    const Span text = span_of(recipe_, made.replacement);
    if (size != 0) made.after_span.end = text.begin + static_cast<std::uint32_t>(size);
    made.replacement = behind(made.replacement, size);
    if (is_itself(made.replacement, made, true)) made.replacement = {};
  }

  // Words behind an amount that only say again what is changed: `eggs  3 large eggs -> 4 large eggs`. Behind the new
  // amount fewer words are another thing: `peanut butter  50 g -> 40 g butter`.
  bool is_itself(std::string_view text, const Change& made, bool whole) const {
    const std::vector<std::string> said = fold_name(text), name = fold_name(made.name);
    if (said == name) return true;
    if (!whole && said.size() < name.size() && std::equal(said.rbegin(), said.rend(), name.rbegin())) return true;
    const LineMatch here = lines_named(recipe_, kNone, text);
    return here.exact && here.lines.size() == 1 && here.lines == lines_named(recipe_, kNone, made.name).lines;
  }

  void bad_line(Span span) {
    const std::string_view text = in_.slice(span);
    const std::string form = "a change, such as `fine salt  1/4 tsp -> 1/2 tsp`";
    const std::size_t arrow = std::min(text.find("->"), text.find("→"));
    if (arrow != std::string_view::npos) {
      report_.add(Code::bad_change, span, "This change cannot be read.").find("`" + std::string(text) + "`")
          .expect("a name, then an amount (`1/4 tsp`, `2 cloves`, `3 parts`), or `none`, on each side of the arrow");
      return;
    }
    for (std::string_view slip : {"=>", "–>", ">"}) {
      const std::size_t found = text.find(slip);
      if (found == std::string_view::npos) continue;
      const auto begin = span.begin + static_cast<std::uint32_t>(found);
      const Span at{begin, begin + static_cast<std::uint32_t>(slip.size())};
      report_.add(Code::bad_change, at, "The arrow of a change is written `->`.").find("`" + std::string(slip) + "`")
          .expect("`->`").fix(at, "->", "write `->`");
      return;
    }
    auto& problem = report_.add(Code::bad_change, span, "This line is no change.");
    problem.find("`" + std::string(text) + "`").expect(form + ", or `note:` before a remark");
    problem.offer({span.begin, span.begin}, "note: ", "make it a note");
  }

  Reading in_;
  Recipe& recipe_;
  Report& report_;
  Log log_;
};

}  // namespace

Span span_of(const Recipe& recipe, std::string_view view) {
  const auto begin = static_cast<std::uint32_t>(view.data() - recipe.text.data());
  return {begin, begin + static_cast<std::uint32_t>(view.size())};
}

void build_log(const Source& source, View block, Recipe& recipe, Report& report) {
  LogBuilder(source, recipe, report).run(block);
}

}  // namespace qtn
