#include "day/board.hpp"

#include <algorithm>

#include "day/say.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

constexpr std::size_t kMost = 300;  // recipes on one board

bool is_portions(std::string_view name) {
  const std::string word = lower(name);
  return word == "portions" || word == "portion";
}

std::vector<MadeOnce> shared_of(const std::vector<Demand>& asked) {
  std::vector<MadeOnce> out;
  for (const Demand& one : asked)
    if (one.portions.size() > 1)
      out.push_back({std::string(one.part != kNone ? one.page->parts[one.part].name : one.page->title), one.portions, one.over});
  return out;
}

class Boarder {
 public:
  Boarder(const Recipe& recipe, const Request& request, Report& report) : recipe_(recipe), request_(request), report_(report) {}

  Board run() {
    out_.title = recipe_.title;
    out_.kitchen = recipe_.kitchen.get();
    if (recipe_.kind == FileKind::menu) out_.serves = recipe_.serves, out_.factor = recipe_.factor, menu();
    else dish(recipe_, kNone, out_.factor = factor_of(recipe_, request_, report_));
    if (report_.has_errors()) return std::move(out_);
    out_.order.dishes = wanted_.size();
    reach();
    sizes();
    makings();
    return std::move(out_);
  }

 private:
  struct Wanted {
    const Recipe* recipe;
    Index part;
    Fraction factor{0};
    std::vector<std::size_t> uses;  // by `use:` of the recipe, where it stands in wanted_
    std::vector<std::string> portions;  // "363 g for Egg custard tart"
    std::string over;                   // "33 g for trimmings"
    std::vector<Taken> taken;
    int users = 0;                  // that have not asked yet
  };

  void dish(const Recipe& recipe, Index part, const Fraction& factor) { wanted_.push_back({&recipe, part, factor, {}, {}, {}, {}, 0}); }

  void menu() {
    const std::optional<Minute> hour = serve_field();
    cooks_field();
    std::vector<std::pair<const Recipe*, Span>> seen;
    for (const TakeLine& line : recipe_.lines) {
      if (line.target.kind != TargetKind::use || line.target.index >= recipe_.uses.size()) continue;
      const Use& use = recipe_.uses[line.target.index];
      if (use.recipe == nullptr) continue;
      for (const auto& [other, span] : seen)
        if (other == use.recipe)
          report_.add(Code::dish_twice, line.span, "`" + std::string(use.as) + "` stands on this table twice, so it is made twice.")
              .also(span, "the first is here").expect("one line, with all that is wanted of it");
      seen.push_back({use.recipe, line.span});
      dish(*use.recipe, use.part, asked_of(line, *use.recipe));
      const std::string amount = line.measured() ? in_print(recipe_.factor == Fraction(1) ? std::string(recipe_.slice(line.amount_span)) : write_plain(line.amount)) + " " + std::string(line.name) : "as written";
      wanted_.back().portions.push_back(amount + " for the table");
      out_.serve_places.push_back(serve_place_);
      out_.serve.push_back(hour_of(line, hour));
    }
    if (wanted_.empty() && !report_.has_errors())
      report_.add(Code::nothing_to_plan, title_span(), "This menu has no dishes.").expect("under `take:` a line for each: `8 portions [Green bean salad]`");
  }

  Span title_span() const {
    const auto at = recipe_.title.empty() ? 0 : recipe_.title.data() - recipe_.text.data();
    return {static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(at) + static_cast<std::uint32_t>(recipe_.title.size())};
  }

  Fraction asked_of(const TakeLine& line, const Recipe& recipe) {
    Request request;
    if (is_portions(line.name)) {
      request.serves = line.amount;
      if (!recipe.serves) {
        report_.add(Code::portions_of_nothing, line.span, "`" + std::string(recipe.title) + "` does not say how many it serves.")
            .expect("a line `serves: 6` in that recipe, or here a number of what it makes");
        return Fraction(1);
      }
    } else {
      request.makes = line.amount, request.makes_thing = line.name;
    }
    if (!line.measured() || line.amount.is_lost()) return Fraction(1);
    Report unsaid;
    const Fraction factor = factor_of(recipe, request, unsaid);
    if (!unsaid.has_errors()) return factor;
    const Fraction by_weight = share_of(recipe, kNone, line);
    if (!by_weight.is_lost()) return by_weight;
    out_.unsized.push_back(std::string(recipe.title));
    return Fraction(1);
  }

  std::optional<Minute> serve_field() {
    for (const TextFact& fact : recipe_.facts) {
      if (fact.field != Field::serve) continue;
      const std::string_view text = trim(recipe_.slice(fact.span));
      if (const auto wall = read_wall(text)) return serve_place_ = fact.span, wall;
      report_.add(Code::serve_not_an_hour, fact.span, "This is no day and hour.").find("`" + std::string(text) + "`")
          .expect("a day and an hour: `2026-02-15 13:00`");
    }
    return std::nullopt;
  }

  void cooks_field() {
    for (const TextFact& fact : recipe_.facts) {
      if (fact.field != Field::cooks) continue;
      const std::string_view text = recipe_.slice(fact.span);
      const std::size_t digit = text.find_first_of("0123456789");
      int value = 0;
      for (std::size_t i = digit; i < text.size() && text[i] >= '0' && text[i] <= '9' && value < 100; ++i) value = value * 10 + (text[i] - '0');
      if (digit != std::string_view::npos && value >= 1 && value <= 99) out_.cooks = value;
      else report_.add(Code::kitchen_cooks, fact.span, "This is no number of cooks.").find("`" + std::string(trim(text)) + "`").expect("a whole number from 1 to 99");
    }
  }

  // `at 14:30`: on the menu's own day, or after its midnight where that would be more than half a day before it.
  std::optional<Minute> hour_of(const TakeLine& line, const std::optional<Minute>& menu) {
    for (Index t = line.tails.first; t < line.tails.end(); ++t) {
      const Tail& tail = recipe_.tails[t];
      if (tail.kind != TailKind::at_clock) continue;
      const std::string_view text = recipe_.slice(tail.span);
      const std::size_t digit = text.find_first_of("0123456789");
      const auto clock = digit == std::string_view::npos ? std::nullopt : read_clock(trim(text.substr(digit)));
      if (!clock) {
        report_.add(Code::serve_not_an_hour, tail.span, "This is no hour of a 24-hour clock.").find("`" + std::string(text) + "`").expect("`at 14:30`");
        return menu;
      }
      if (!menu) return menu;
      out_.serve_places.back() = tail.span;
      constexpr Minute kHalfDay = 12 * 60;
      const Minute wall = day_begin(*menu) + *clock;
      return wall < *menu - kHalfDay ? wall + 1440 : wall;
    }
    return menu;
  }

  // All that the dishes use, and what that uses; a dish of the table is made for the table, and apart from it for others.
  void reach() {
    for (std::size_t i = 0; i < wanted_.size(); ++i) {
      const Recipe& recipe = *wanted_[i].recipe;
      std::vector<std::size_t> uses(recipe.uses.size(), kMost);
      for (std::size_t u = 0; u < recipe.uses.size(); ++u) {
        const Use& use = recipe.uses[u];
        if (use.recipe == nullptr) continue;
        std::size_t found = out_.order.dishes;
        while (found < wanted_.size() && (wanted_[found].recipe != use.recipe || wanted_[found].part != use.part)) ++found;
        if (found == wanted_.size()) {
          if (found >= kMost) continue;
          wanted_.push_back({use.recipe, use.part, Fraction(0), {}, {}, {}, {}, 0});
        }
        uses[u] = found;
      }
      wanted_[i].uses = std::move(uses);
    }
    for (const Wanted& one : wanted_)
      for (const std::size_t use : one.uses)
        if (use < kMost) ++wanted_[use].users;
  }

  // How much of a used recipe a line takes, as a share of what it makes; lost where that cannot be weighed or counted.
  Fraction share_of(const Recipe& used, Index part, const TakeLine& line) const {
    const Index own = part != kNone ? part : used.dish;
    if (own >= used.parts.size() || line.amount.is_lost()) return Fraction::lost();
    const Ends need = in_base(line.amount, recipe_.dialect);
    for (const auto* all : {&used.parts[own].makes, part == kNone ? &used.makes : nullptr}) {
      if (all == nullptr) continue;
      for (const Made& made : *all)
        if (!made.by_product && !made.amount.is_lost() && made.amount.dimension() == line.amount.dimension() &&
            (made.amount.dimension() != Dimension::count || fold_name(singular_of(made.thing)) == fold_name(singular_of(line.name))))
          return need.high / in_base(made.amount, used.dialect).low;
    }
    if (line.amount.dimension() == Dimension::mass && !used.parts[own].weight_low.is_lost() && used.parts[own].weight_low.sign() > 0)
      return need.high / used.parts[own].weight_low;
    return Fraction::lost();
  }

  // Those that use before those that are used; each asks for its share at its own size.
  void sizes() {
    std::vector<std::size_t> ready;
    for (std::size_t i = 0; i < wanted_.size(); ++i)
      if (wanted_[i].users == 0) ready.push_back(i);
    for (std::size_t at = 0; at < ready.size(); ++at) {
      Wanted& one = wanted_[ready[at]];
      if (one.factor.is_zero() || one.factor.is_lost()) one.factor = Fraction(1);
      out_.recipes.push_back(one.factor == Fraction(1) ? *one.recipe : scale(*one.recipe, one.factor));
      const Recipe& scaled = out_.recipes.back();
      out_.adapted.push_back(show(scaled, {}));
      place_.push_back(ready[at]);
      for (std::size_t u = 0; u < one.uses.size(); ++u) {
        if (one.uses[u] >= kMost) continue;
        Wanted& used = wanted_[one.uses[u]];
        ask(scaled, static_cast<Index>(ready[at]), static_cast<Index>(u), used);
        if (--used.users == 0) ready.push_back(one.uses[u]);
      }
    }
  }

  void ask(const Recipe& user, Index making, Index use, Wanted& used) {
    bool any = false;
    for (const TakeLine& line : user.lines) {
      if (line.target.kind != TargetKind::use || line.target.index != use || line.struck) continue;
      Fraction share = share_of(*used.recipe, used.part, line);
      if (share.is_lost()) continue;
      const auto number = static_cast<std::size_t>(&line - user.lines.data());
      const bool counted = line.amount.dimension() == Dimension::count && line.amount.unit == kNoUnit;
      used.portions.push_back(out_.adapted.back().lines[number].text + (counted ? " " + std::string(line.name) : "") + " for " + std::string(user.title));
      for (Index t = line.tails.first; t < line.tails.end(); ++t) {
        const Tail& tail = user.tails[t];
        if (tail.kind != TailKind::trimmings || !tail.amount || tail.amount->is_lost()) continue;
        share *= Fraction(1) + in_base(*tail.amount, user.dialect).high;
        used.over += (used.over.empty() ? "" : ", ") + in_print(write_plain(*tail.amount)) + " more for trimmings";
      }
      used.factor += share;
      used.taken.push_back({making, static_cast<Index>(&line - user.lines.data()), share});
      any = true;
    }
    if (any) return;
    used.factor += Fraction(1);
    used.taken.push_back({making, kNone, Fraction(1)});
    out_.unsized.push_back(std::string(used.recipe->title));
  }

  void makings() {
    out_.order.makings.resize(wanted_.size());
    for (Wanted& one : wanted_) {
      out_.taken.push_back(std::move(one.taken));
      out_.asked.push_back({one.recipe, one.part, one.factor, std::move(one.portions), std::move(one.over)});
    }
    out_.shared = shared_of(out_.asked);
    for (std::size_t r = 0; r < out_.recipes.size(); ++r) {
      const Wanted& one = wanted_[place_[r]];
      Making& making = out_.order.makings[place_[r]];
      making = {&out_.recipes[r], &out_.adapted[r], one.part, {}};
      for (const std::size_t use : one.uses) making.uses.push_back(use < kMost ? static_cast<Index>(use) : kNone);
    }
    std::erase_if(out_.order.makings, [](const Making& making) { return making.recipe == nullptr; });
    std::sort(out_.unsized.begin(), out_.unsized.end());
    out_.unsized.erase(std::unique(out_.unsized.begin(), out_.unsized.end()), out_.unsized.end());
  }

  const Recipe& recipe_;
  const Request& request_;
  Report& report_;
  Board out_;
  std::vector<Wanted> wanted_;
  Span serve_place_{};              // of the menu's `serve:`
  std::vector<std::size_t> place_;  // of each scaled recipe, where it stands in wanted_
};

}  // namespace

bool make_once(Board& board, const std::vector<char>& hot) {
  bool any = false;
  std::vector<Making>& makings = board.order.makings;
  if (board.asked.size() != makings.size()) return false;  // recipes that go round in a circle: told elsewhere
  for (std::size_t d = 0; d < board.order.dishes; ++d)
    for (std::size_t m = board.order.dishes; m < makings.size(); ++m) {
      Demand &dish = board.asked[d], &other = board.asked[m];
      if (other.page != dish.page || other.part != dish.part) continue;
      if (hot[d] != 0) {
        board.apart.push_back(std::string(dish.page->title));
        continue;
      }
      dish.factor += other.factor;
      dish.portions.insert(dish.portions.end(), other.portions.begin(), other.portions.end());
      if (!other.over.empty()) dish.over += (dish.over.empty() ? "" : ", ") + other.over;
      board.recipes.push_back(scale(*dish.page, dish.factor));
      board.adapted.push_back(show(board.recipes.back(), {}));
      makings[d].recipe = &board.recipes.back(), makings[d].adapted = &board.adapted.back();
      const auto at = static_cast<std::ptrdiff_t>(m);
      makings.erase(makings.begin() + at), board.asked.erase(board.asked.begin() + at);
      for (Making& making : makings)
        for (Index& use : making.uses) {
          if (use == m) use = static_cast<Index>(d);
          else if (use != kNone && use > m) --use;
        }
      any = true;
      break;
    }
  if (any) board.taken.clear(), board.shared = shared_of(board.asked);
  return any;
}

Board board_of(const Recipe& recipe, const Request& request, Report& report) {
  if (recipe.kind != FileKind::menu) return Boarder(recipe, request, report).run();
  // A table of another size wants that much more of each dish.
  const Fraction factor = factor_of(recipe, request, report);
  if (report.has_errors()) return {};
  if (factor == Fraction(1)) return Boarder(recipe, request, report).run();
  const Recipe table = scale(recipe, factor);
  return Boarder(table, request, report).run();
}

}  // namespace qtn
