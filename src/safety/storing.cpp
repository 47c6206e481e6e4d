#include "safety/storing.hpp"

#include <algorithm>

#include "safety/say.hpp"

namespace qtn {
namespace {

constexpr double kRoomWarmth = 30;  // °C: what is kept above is kept hot, below it cold
// Food under oil in the cold: a week, as for chilled food that is dated (FDA Food Code); common practice is less.
constexpr double kOilHours = 7 * 24;

class Storing {
 public:
  Storing(const Recipe& recipe, Law law, const PotTale& tale, Report& report) : recipe_(recipe), law_(law), tale_(tale), report_(report) {}

  void run() {
    for (const PotEvent& event : tale_.waits) wait(event);
    reheated();
    for (const Keep& keep : recipe_.keeps)
      if (keep.place == KeepPlace::chilled && !keep.once_open && !keep.length.is_lost()) kept(worst_of(tale_.end), in_base(keep.length, recipe_.dialect).high.approx() / 60, keep.span);
    if (is_flavoured_oil(recipe_)) oil();
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

  std::optional<double> heat_of(const Clause& clause) const {
    for (Index t = clause.terms.first; t < clause.terms.end(); ++t)
      if (recipe_.terms[t].role == TermRole::temperature && !recipe_.terms[t].amount.is_lost()) return in_base(recipe_.terms[t].amount, recipe_.dialect).high.approx();
    return std::nullopt;
  }

  void wait(const PotEvent& event) {
    const Clause& clause = recipe_.clauses[event.clause];
    const Verb& verb = verb_of(clause);
    const std::string_view words = recipe_.slice(clause.span);
    if (verb.name == "thaw") return thaw(event, clause, words);
    const RawItem* const cooked = worst_of(event.items);
    const std::optional<double> heat = heat_of(clause);
    if (cooked == nullptr) return raw_wait(event, clause, heat);
    if (heat && verb.name != "freeze") held(*cooked, clause, *heat);
    if (in_cold(clause)) {
      if (verb.name == "keep" && clause.place != Takes::freezer) kept(cooked, most_minutes(recipe_, clause) / 60, clause.span);
      return;
    }
    if (heat && (*heat >= kRoomWarmth || *heat <= cold_limit(law_).value)) return;
    double aimed = kRoomWarmth;  // the sign that ends it
    for (Index t = clause.terms.first; t < clause.terms.end(); ++t)
      if (recipe_.terms[t].role == TermRole::to && recipe_.terms[t].amount.dimension() == Dimension::temperature) aimed = in_base(recipe_.terms[t].amount, recipe_.dialect).high.approx();
    const bool to_cold = aimed <= cool_limit(law_).celsius + 0.1;
    const Limit& limit = to_cold ? cool_limit(law_) : stand_limit(law_);
    const double minutes = to_cold ? most_minutes(recipe_, clause) : std::max(least_minutes(recipe_, clause), only_most(clause));
    if (minutes <= limit.value) return;
    report_.add(Code::cooled_slowly, clause.span, "The " + std::string(cooked->name) + (plural(cooked->name) ? " are" : " is") + " cooked and then warm for longer than the figure.")
        .find(quoted(words)).expect(std::string(limit.words) + " (" + source_of(law_, limit.source) + ")" + other_law(to_cold))
        .also(cooked->place, "this is what spoils");
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

  // Raw food that is kept: only how cold.
  void raw_wait(const PotEvent& event, const Clause& clause, const std::optional<double>& heat) {
    const auto raw = std::find_if(event.items.begin(), event.items.end(), [](const RawItem& item) { return spoils(item.kind) && item.kind != Hazard::rice && !item.heated; });
    if (raw == event.items.end() || !heat || !in_cold(clause)) return;
    if (*heat > cold_limit(law_).value + 0.1 && *heat < kRoomWarmth) too_warm(*raw, clause, cold_limit(law_), "colder");
  }

  void held(const RawItem& item, const Clause& clause, double heat) {
    const Verb& verb = verb_of(clause);
    if (heat >= kRoomWarmth && heat < hot_limit(law_).value - 0.1 && verb.name != "cool") too_warm(item, clause, hot_limit(law_), "hotter");
    if (heat < kRoomWarmth && heat > cold_limit(law_).value + 0.1 && in_cold(clause)) too_warm(item, clause, cold_limit(law_), "colder");
  }

  void too_warm(const RawItem& item, const Clause& clause, const Limit& limit, const char* which) {
    report_.add(Code::kept_warm, clause.span, "The " + std::string(item.name) + (plural(item.name) ? " want" : " wants") + " it " + which + " than that.")
        .find(quoted(recipe_.slice(clause.span))).expect(std::string(limit.words) + " or " + which + " (" + source_of(law_, limit.source) + ")");
  }

  // Over the law's own figure it is said on the card; over the longest that any law here has, it is a warning.
  void kept(const RawItem* item, double hours, Span where) {
    if (item == nullptr) return;
    const Limit& own = keep_limit(law_, item->kind);
    const Law other = law_ == Law::US ? Law::UK : Law::US;
    const Limit& far = keep_limit(other, item->kind);
    const bool rice = item->kind == Hazard::rice || item->kind == Hazard::cooked_rice;
    if (hours <= (rice ? own.value : std::max(own.value, far.value))) return;
    report_.add(Code::kept_long, where, "The " + std::string(item->name) + (plural(item->name) ? " are" : " is") + " kept for longer than either figure that is held here.")
        .find(quoted(recipe_.slice(where))).expect(std::string(own.words) + " (" + source_of(law_, own.source) + "); " + std::string(name_of(other)) + ": " + std::string(far.words));
  }

  void thaw(const PotEvent& event, const Clause& clause, std::string_view words) {
    const auto raw = std::find_if(event.items.begin(), event.items.end(), [](const RawItem& item) { return spoils(item.kind) && item.kind != Hazard::rice; });
    if (raw == event.items.end()) return;
    for (const std::string_view room : {"room temperature", "kitchen temperature", "worktop", "counter", "warm place"})
      if (words.find(room) != std::string_view::npos) {
        report_.add(Code::thawed_warm, clause.span, "The " + std::string(raw->name) + (plural(raw->name) ? " thaw" : " thaws") + " in the warm.")
            .find(quoted(words)).expect("`in the fridge`, or cold water that is changed (common practice; foodsafety.gov)");
        return;
      }
  }

  // A block that heats something again says how hot it gets, or boils it.
  void reheated() {
    const RawItem* const worst = worst_of(tale_.end);
    if (worst == nullptr || tale_.reheats.empty()) return;
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
    if (hot) return;
    const PotEvent& last = low != nullptr ? *low : tale_.reheats.back();
    const Clause& clause = recipe_.clauses[last.clause];
    auto& problem = report_.add(Code::reheated_cool, clause.span, low != nullptr ? "This is not hot enough to heat it again." : "Nothing says how hot it gets when it is heated again.")
                        .find(quoted(recipe_.slice(clause.span))).expect("a reading of " + std::string(rule->words) + " in the middle (" + source_of(law_, rule->source) + ")")
                        .also(worst->place, "this is what spoils");
    if (low == nullptr)
      problem.offer({clause.span.end, clause.span.end}, " until the middle [reads " + std::string(rule->write) + "]", "ask for a reading of " + std::string(rule->write));
  }

  void oil() {
    for (const Keep& keep : recipe_.keeps) {
      const bool cold = keep.place == KeepPlace::chilled || keep.place == KeepPlace::frozen;
      const double hours = keep.length.is_lost() ? 0 : in_base(keep.length, recipe_.dialect).high.approx() / 60;
      if (keep.place == KeepPlace::frozen || (cold && hours <= kOilHours)) continue;
      report_.add(Code::oil_keeps_garlic, keep.span, cold ? "That is long for garlic or herbs in oil." : "Garlic or herbs in oil are kept out of the cold here.")
          .find(quoted(recipe_.slice(keep.span))).expect("chilled, for a week at most, and thrown away after (common practice, no source)");
    }
  }

  const Recipe& recipe_;
  Law law_;
  const PotTale& tale_;
  Report& report_;
};

}  // namespace

bool is_flavoured_oil(const Recipe& recipe) {
  bool oil = false, flavour = false;
  for (const TakeLine& line : recipe.lines) {
    if (line.struck || line.alternative) continue;
    const std::string_view name = line.food == nullptr ? std::string_view() : line.food->name;
    if (name.ends_with("oil")) {
      oil = true;
      continue;
    }
    const bool fresh = grows_in_oil(line.food);
    flavour = flavour || fresh;
    const bool dry = line.food != nullptr && (line.food->seasoning || name == "salt" || name == "sea salt flakes");
    if (!fresh && !dry) return false;  // something else is in it: a dish, a dressing
  }
  return oil && flavour;
}

void check_storing(const Recipe& recipe, Law law, const PotTale& tale, Report& report) { Storing(recipe, law, tale, report).run(); }

}  // namespace qtn
