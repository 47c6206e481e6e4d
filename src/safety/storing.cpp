#include "safety/storing.hpp"

#include <algorithm>

#include "recipe/sentences.hpp"
#include "safety/say.hpp"

namespace qtn {
namespace {

constexpr double kHair = 0.1;        // °C, of a figure in the other scale
constexpr double kRoomWarmth = 30;  // °C: what is kept above is kept hot, below it cold

class Storing {
 public:
  Storing(const Recipe& recipe, Law law, const PotTale& tale, Report& report) : recipe_(recipe), law_(law), tale_(tale), report_(report) {}

  void run() {
    for (const PotEvent& event : tale_.waits) wait(event);
    reheated();
    for (const Keep& keep : recipe_.keeps)
      if (keep.place == KeepPlace::chilled && !keep.once_open && !keep.length.is_lost()) kept(worst_of(tale_.end), in_base(keep.length, recipe_.dialect).high.approx() / 60, keep.span, keep.length_span);
    if (keeps_under_oil(recipe_)) check_oil(recipe_, report_);
  }

 private:
  // What in the pot spoils soonest once it is cooked; null where nothing does.
  const RawItem* worst_of(const std::vector<RawItem>& items) const {
    const RawItem* worst = nullptr;
    for (const RawItem& item : items)
      if (spoils(item.kind) && (item.heated || item.done || item.kind == Hazard::cooked || item.kind == Hazard::cooked_rice) &&
          (worst == nullptr || keep_limit(law_, item.kind).value < keep_limit(law_, worst->kind).value))
        worst = &item;
    return worst;
  }

  bool in_cold(const Clause& clause) const {
    const Verb& verb = verb_of(clause);
    const auto cold = static_cast<std::uint8_t>(Takes::fridge) | static_cast<std::uint8_t>(Takes::freezer);
    return clause.place == Takes::fridge || clause.place == Takes::freezer || ((verb.takes & cold) != 0 && clause.place == Takes::nothing);
  }

  void wait(const PotEvent& event) {
    const Clause& clause = recipe_.clauses[event.clause];
    const Verb& verb = verb_of(clause);
    const std::string_view words = recipe_.slice(clause.span);
    if (verb.name == "thaw") return thaw(event, clause);
    const RawItem* const cooked = worst_of(event.items);
    const std::optional<double> heat = heat_of(recipe_, clause);
    if (cooked == nullptr) return raw_wait(event, clause, heat);
    if (heat && verb.name != "freeze") held(*cooked, clause, *heat);
    if (half_cool(law_) != nullptr && halfway(*cooked, clause)) return;
    if (in_cold(clause)) {
      if (verb.name == "keep" && clause.place != Takes::freezer) kept(cooked, most_minutes(recipe_, clause) / 60, clause.span, term(clause, TermRole::length) != nullptr ? term(clause, TermRole::length)->span : clause.span);
      return;
    }
    if (heat && (*heat >= kRoomWarmth || *heat <= cold_limit(law_).value)) return;
    const bool to_cold = aimed_at(clause) <= cool_limit(law_).celsius + kHair;
    const Limit& limit = to_cold ? cool_limit(law_) : stand_limit(law_);
    const double minutes = to_cold ? most_minutes(recipe_, clause) : std::max(least_minutes(recipe_, clause), only_most(clause));
    if (minutes <= limit.value) return;
    auto& problem = report_.add(Code::cooled_slowly, clause.span, "The " + std::string(cooked->name) + (plural(cooked->name) ? " are" : " is") + " cooked and then warm for longer than the figure.")
                        .find(quoted(words)).expect(std::string(limit.words) + " (" + source_of(law_, limit.source) + ")" + other_law(to_cold))
                        .also(cooked->place, "this is what spoils");
    if (const Term* const length = term(clause, TermRole::length)) {
      const std::string most = "at most " + std::to_string(static_cast<int>(limit.value / 60)) + " h";
      problem.offer(length->span, most, "let it be `" + most + "`");
    }
  }

  const Term* term(const Clause& clause, TermRole role) const {
    for (Index t = clause.terms.first; t < clause.terms.end(); ++t)
      if (recipe_.terms[t].role == role && !recipe_.terms[t].amount.is_lost()) return &recipe_.terms[t];
    return nullptr;
  }

  // The sign that ends it, in °C; warm where none does.
  double aimed_at(const Clause& clause) const {
    const Term* const to = term(clause, TermRole::to);
    return to != nullptr && to->amount.dimension() == Dimension::temperature ? in_base(to->amount, recipe_.dialect).high.approx() : kRoomWarmth;
  }

  // Where the law has two steps: a time to the cold that is longer than the first of them has to say when that was reached.
  bool halfway(const RawItem& cooked, const Clause& clause) {
    const Limit &half = *half_cool(law_), &whole = cool_limit(law_);
    if (cooling_since_ != cooked.heat) cooling_since_ = cooked.heat, gone_ = 0, half_done_ = false;
    gone_ += most_minutes(recipe_, clause);
    const double aimed = aimed_at(clause);
    if (gone_ <= half.value) half_done_ = half_done_ || aimed <= half.celsius + kHair;
    if (aimed > whole.celsius + kHair || gone_ <= half.value) return false;
    if (half_done_ && gone_ <= whole.value) return true;
    auto& problem = report_.add(Code::cooled_slowly, clause.span, half_done_ ? "With what went before, this is longer than the figure." : "Nothing says how warm the " + std::string(cooked.name) + (plural(cooked.name) ? " are" : " is") + " after 2 h.")
                        .find(quoted(recipe_.slice(clause.span))).expect(std::string(whole.words) + " (" + source_of(law_, whole.source) + ")" + other_law(true))
                        .also(cooked.place, "this is what spoils");
    if (!half_done_ && gone_ <= whole.value)
      problem.offer(clause.span, "[cool at most 2 h to 70 °F], then [cool at most 4 h to 41 °F]", "say when it is at 70 °F").offer(clause.span, "[cool at most 2 h to 41 °F]", "cool it faster");
    return true;
  }

  // `[cool at most 3 h]` lets it be three hours.
  double only_most(const Clause& clause) const {
    for (Index t = clause.terms.first; t < clause.terms.end(); ++t)
      if (recipe_.terms[t].role == TermRole::length && recipe_.terms[t].amount.manner == Manner::at_most) return most_minutes(recipe_, clause);
    return 0;
  }

  std::string other_law(bool to_cold) const {
    const Law other = law_ == Law::US ? Law::UK : Law::US;
    const Limit& limit = to_cold ? cool_limit(other) : stand_limit(other);
    return "; " + std::string(name_of(other)) + ": " + std::string(limit.words);
  }

  // Raw food that is kept: how cold, and how long out of the cold.
  void raw_wait(const PotEvent& event, const Clause& clause, const std::optional<double>& heat) {
    const auto raw = std::find_if(event.items.begin(), event.items.end(), [](const RawItem& item) { return spoils(item.kind) && item.kind != Hazard::rice && !item.heated; });
    if (raw == event.items.end()) return;
    if (!in_cold(clause)) return left_out(*raw, event, clause, heat);
    if (heat && *heat > cold_limit(law_).value + kHair && *heat < kRoomWarmth) too_warm(*raw, clause, cold_limit(law_), "colder");
  }

  // For longer than a rest that takes the chill off. What is cured, dried or fermented is another craft.
  void left_out(const RawItem& raw, const PotEvent& event, const Clause& clause, const std::optional<double>& heat) {
    const std::string_view verb = verb_of(clause).name;
    if (raw.kind == Hazard::bacon || verb == "cure" || verb == "dry" || verb == "ferment" || verb == "mature") return;
    if (std::any_of(event.items.begin(), event.items.end(), [](const RawItem& item) { return item.kind == Hazard::curing_salt; })) return;
    const Limit& limit = out_limit(law_);
    const Span room = in_room(clause);
    if (std::max(least_minutes(recipe_, clause), only_most(clause)) <= limit.value || (room.empty() && !is_warm(heat))) return;
    auto& problem = report_.add(Code::raw_left_out, clause.span, "The " + std::string(raw.name) + (plural(raw.name) ? " are" : " is") + " raw and out of the cold for longer than the figure.")
                        .find(quoted(recipe_.slice(both(clause.span, room))))
                        .expect(std::string(limit.words) + " (" + source_of(law_, limit.source) + ")").also(raw.place, "this is what spoils");
    offer_fridge(problem, clause, room, "let it stand in the fridge");
  }

  bool is_warm(const std::optional<double>& heat) const { return heat && *heat > cold_limit(law_).value + kHair && *heat < kRoomWarmth; }

  // Where a clause says that it stands in the room, or the words of its sentence from the time before to the next; empty where
  // something cold is said.
  Span in_room(const Clause& clause) const {
    Span all = clause.span;
    const auto own = static_cast<Index>(&clause - recipe_.clauses.data());
    for (const Sentence& sentence : sentences_of(recipe_, recipe_.steps[clause.step])) {
      if (own < sentence.clauses.first || own >= sentence.clauses.end()) continue;
      all = {std::min(all.begin, sentence.span.begin), std::max(all.end, sentence.span.end)};
      for (Index c = sentence.clauses.first; c < own; ++c)
        if (recipe_.clauses[c].kind == ClauseKind::time) all.begin = recipe_.clauses[c].span.end;
      for (Index c = sentence.clauses.end(); c-- > own + 1;)
        if (recipe_.clauses[c].kind == ClauseKind::time) all.end = recipe_.clauses[c].span.begin;
    }
    const std::string_view text = recipe_.slice(all);
    for (const std::string_view cold : {"fridge", "refrigerator", "freezer", "cold water", "iced water", " not ", "never"})
      if (text.find(cold) != std::string_view::npos) return {};
    Span found;
    for (const std::string_view words : room_words())
      if (const std::size_t at = text.find(words); at != std::string_view::npos && words.size() > found.size())
        found = {all.begin + static_cast<std::uint32_t>(at), all.begin + static_cast<std::uint32_t>(at + words.size())};
    return found;
  }

  static Span both(Span clause, Span room) { return room.empty() ? clause : Span{std::min(clause.begin, room.begin), std::max(clause.end, room.end)}; }

  // In place of the room, of the heat, or into the bracket where the room stands behind it.
  void offer_fridge(Diagnostic& problem, const Clause& clause, Span room, const char* title) const {
    const std::string fridge = "in the fridge";
    if (room.empty()) {
      const Term* const heat = term(clause, TermRole::temperature);
      if (heat == nullptr) return;
      const bool at = recipe_.slice({heat->span.begin - 3, heat->span.begin}) == "at ";
      problem.offer({heat->span.begin - (at ? 3 : 0), heat->span.end}, fridge, title);
    } else if (room.end <= clause.span.end) {
      problem.offer(room, fridge, title);
    } else {
      std::string_view between = recipe_.slice({clause.span.end - 1, room.begin});
      while (between.ends_with(' ') || between.ends_with('\n')) between.remove_suffix(1);
      problem.offer({clause.span.end - 1, room.end}, " " + fridge + std::string(between), title);
    }
  }

  void held(const RawItem& item, const Clause& clause, double heat) {
    const Verb& verb = verb_of(clause);
    if (heat >= kRoomWarmth && heat < hot_limit(law_).value - 0.1 && verb.name != "cool") too_warm(item, clause, hot_limit(law_), "hotter");
    if (heat < kRoomWarmth && heat > cold_limit(law_).value + 0.1 && in_cold(clause)) too_warm(item, clause, cold_limit(law_), "colder");
  }

  void too_warm(const RawItem& item, const Clause& clause, const Limit& limit, const char* which) {
    const Term& heat = *term(clause, TermRole::temperature);
    const std::string figure = write_plain(limit.heat);
    report_.add(Code::kept_warm, clause.span, "The " + std::string(item.name) + (plural(item.name) ? " want" : " wants") + " it " + which + " than that.")
        .find(quoted(recipe_.slice(clause.span))).expect(std::string(limit.words) + " or " + which + " (" + source_of(law_, limit.source) + ")")
        .offer(heat.span, figure, "keep it at " + figure);
  }

  // Over the law's own figure it is said on the card; over the longest that any law here has, it is a warning.
  // `length`: of the place, the words that say how long.
  void kept(const RawItem* item, double hours, Span where, Span length) {
    if (item == nullptr) return;
    const Limit& own = keep_limit(law_, item->kind);
    const Law other = law_ == Law::US ? Law::UK : Law::US;
    const Limit& far = keep_limit(other, item->kind);
    const bool rice = item->kind == Hazard::rice || item->kind == Hazard::cooked_rice;
    if (hours <= (rice ? own.value : std::max(own.value, far.value))) return;
    const std::string days = own.value == 24 ? "1 day" : std::to_string(static_cast<int>(own.value / 24)) + " days";
    auto& problem = report_.add(Code::kept_long, where, "The " + std::string(item->name) + (plural(item->name) ? " are" : " is") + " kept for longer than either figure that is held here.")
        .find(quoted(recipe_.slice(where))).expect(std::string(own.words) + " (" + source_of(law_, own.source) + "); " + std::string(name_of(other)) + ": " + std::string(far.words));
    problem.offer(length, days, "keep it for " + days);
  }

  void thaw(const PotEvent& event, const Clause& clause) {
    const auto raw = std::find_if(event.items.begin(), event.items.end(), [](const RawItem& item) { return spoils(item.kind) && item.kind != Hazard::rice; });
    if (raw == event.items.end() || in_cold(clause)) return;
    const Span room = in_room(clause);
    if (room.empty() && !is_warm(heat_of(recipe_, clause))) return;
    auto& problem = report_.add(Code::thawed_warm, clause.span, "The " + std::string(raw->name) + (plural(raw->name) ? " thaw" : " thaws") + " in the warm.")
                        .find(quoted(recipe_.slice(both(clause.span, room)))).expect("`in the fridge`, or cold water that is changed (common practice; foodsafety.gov)");
    offer_fridge(problem, clause, room, "thaw it in the fridge");
  }

  // A block that heats something again says how hot it gets, or boils it.
  void reheated() {
    const RawItem* const worst = worst_of(tale_.end);
    if (worst == nullptr || (tale_.reheats.empty() && !is_warmed())) return;
    constexpr double kBoiled = 3;  // minutes at a simmer that heat a potful through: common practice, no source
    bool hot = false;
    const PotEvent* low = nullptr;
    const CoreRule* const rule = core_rule(law_, Hazard::cooked);
    for (const PotEvent& event : tale_.reheats) {
      const Clause& clause = recipe_.clauses[event.clause];
      const Verb& verb = verb_of(clause);
      if (const auto reading = reading_of(recipe_, clause)) {
        const bool enough = seconds_wanted(*rule, reading->celsius) <= reading->seconds;
        hot = hot || enough;
        if (!enough) low = &event;
      } else if (verb.moist && least_minutes(recipe_, clause) >= kBoiled) {
        hot = true;
      }
    }
    if (hot || (low == nullptr && says_piping_hot())) return;
    const Span place = low != nullptr ? recipe_.clauses[low->clause].span : tale_.reheats.empty() ? warmed_ : recipe_.clauses[tale_.reheats.back().clause].span;
    auto& problem = report_.add(Code::reheated_cool, place, low != nullptr ? "This is not hot enough to heat it again." : "Nothing says how hot it gets when it is heated again.")
                        .find(quoted(recipe_.slice(place))).expect("a reading of " + std::string(rule->words) + " in the middle (" + source_of(law_, rule->source) + ")")
                        .also(worst->place, "this is what spoils");
    if (low == nullptr)
      problem.offer({place.end, place.end}, " until the middle [reads " + std::string(rule->write) + "]", "ask for a reading of " + std::string(rule->write));
  }

  template <class Ask>
  void each_reheating(Ask ask) const {
    for (const AfterBlock& block : recipe_.after)
      for (Index s = block.steps.first; s < block.steps.end() && block.field == Field::to_reheat; ++s)
        for (const Sentence& sentence : sentences_of(recipe_, recipe_.steps[s])) ask(sentence, lower(recipe_.slice(sentence.span)));
  }

  // Warmed, with or without a time; where is kept in warmed_.
  bool is_warmed() {
    each_reheating([&](const Sentence& sentence, const std::string& text) {
      for (const std::string_view other : {"not ", "never", "plate", "the oven", "the grill"})  // what is warmed is no food
        if (text.find(other) != std::string::npos) return;
      bool gentle = false;
      for (const std::string_view open : {"warm ", "gently warm", "slowly warm", "heat ", "gently heat", "reheat", "microwave"}) gentle = gentle || text.starts_with(open);
      Span time;
      for (Index c = sentence.clauses.first; c < sentence.clauses.end(); ++c) {
        const Clause& clause = recipe_.clauses[c];
        if (clause.kind != ClauseKind::time || verb_of(clause).wait) continue;
        time = clause.span;
        gentle = gentle || verb_of(clause).name == "warm";
      }
      if (!gentle) return;
      warmed_ = time.empty() ? sentence.span : time;
      if (time.empty() && text.ends_with('.')) --warmed_.end;
    });
    return !warmed_.empty();
  }

  // "Steaming hot all the way through": the Food Standards Agency's own words, from memory.
  bool says_piping_hot() const {
    bool said = false;
    each_reheating([&](const Sentence&, const std::string& text) {
      for (const std::string_view words : {"piping", "steaming", "bubbling", "boil", "simmer", "hot all the way", "hot through", "hot right through"})
        said = said || text.find(words) != std::string::npos;
    });
    return said;
  }

  const Recipe& recipe_;
  Law law_;
  const PotTale& tale_;
  Report& report_;
  Span warmed_;  // where `to reheat:` warms without a word of how hot
  // Of the food that cools: since which heat, for how many minutes at the most, and whether the first step was said.
  Index cooling_since_ = kNone;
  double gone_ = 0;
  bool half_done_ = false;
};

}  // namespace

void check_storing(const Recipe& recipe, Law law, const PotTale& tale, Report& report) { Storing(recipe, law, tale, report).run(); }

}  // namespace qtn
