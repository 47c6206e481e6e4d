#include "card/cost_sheet.hpp"

#include <algorithm>
#include <array>

#include "card/listed.hpp"
#include "formula/price.hpp"
#include "measure/money.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

constexpr std::array<Column, 5> kColumns{{{Caption::what}, {Caption::amount, true}, {Caption::cost, true}, {Caption::share, true}, {Caption::details}}};

std::string per_cent(const Fraction& share) { return (share * Fraction(100)).decimal(1) + " %"; }

class CostWriter : SheetWriter {
 public:
  CostWriter(const Costing& all, std::span<const CostVersion> versions, const Recipe& recipe, const Board& board, const CostWish& wish, const Words& words)
      : SheetWriter(words), all_(all), versions_(versions), recipe_(recipe), board_(board), wish_(wish), cost_(with_all(all.cost)) {}

  Card run() {
    card_.title = plain(board_.title);
    card_.edition = plain(std::string(words_[Caption::cost_sheet]) + (recipe_.version.empty() ? "" : ", " + std::string(recipe_.version)) + size());
    card_.notes_heading = caption(Caption::notes);
    card_.list_heading = caption(Caption::line_by_line);
    card_.columns = {"part", "item", "amount", "unit", "cost", "exact", "currency", "share", "priced"};
    head();
    for (const CostPart& part : all_.parts) this->part(part);
    versions();
    notes();
    clean(card_);
    return std::move(card_);
  }

 private:
  std::string_view currency() const { return board_.kitchen != nullptr ? board_.kitchen->currency : std::string_view(); }
  std::string money(const Fraction& value) const { return write_money(value, currency()); }

  std::string size() const {
    if (recipe_.kind == FileKind::menu || board_.order.makings.empty()) return {};
    const Fraction& factor = board_.order.makings.front().recipe->factor;
    return factor == Fraction(1) ? std::string() : ", " + write_times(factor) + std::string(words_[Caption::times_the_recipe]);
  }

  // What it is divided by: so many helpings, or the things that it makes; nothing where it is one thing.
  struct Portions {
    Fraction fewest, most;
    std::string words;  // " for each of 6"
  };
  std::optional<Portions> portions() const {
    if (all_.serves && all_.serves->low.sign() > 0) return Portions{all_.serves->low, all_.serves->high, " for each of " + in_print(write_plain(*all_.serves))};
    for (const Made& made : all_.makes) {
      if (made.by_product || made.amount.is_lost() || made.amount.dimension() != Dimension::count || made.amount.low <= Fraction(1) || made.thing.empty()) continue;
      return Portions{made.amount.low, made.amount.high, " for each of " + in_print(write_plain(made.amount)) + " " + std::string(made.thing)};
    }
    return std::nullopt;
  }
  Fraction with_all(const Fraction& cost) const { return wish_.allowance ? with_allowance(cost, *wish_.allowance) : cost; }
  // "£0.90 to £1.20", where a helping is larger or smaller; the whole where nobody says how many it is for.
  std::string shared(const Fraction& whole, const std::optional<Portions>& among) const {
    if (!among) return money(whole);
    const std::string least = money(whole / among->most), most = money(whole / among->fewest);
    return least != most ? least + " to " + most : most;
  }

  // Is there nothing at all to add up?
  bool priceless() const {
    return std::all_of(all_.parts.begin(), all_.parts.end(), [](const CostPart& part) {
      return part.cost.is_zero() && std::any_of(part.lines.begin(), part.lines.end(), [](const CostLine& line) { return line.cost.is_lost() || line.taken; });
    }) && !all_.no_price.empty();
  }

  void head() {
    if (priceless()) return fact(FactKind::cost, Caption::cost, "not known: nothing of it has a price");
    std::string whole = money(cost_);
    if (wish_.allowance) whole += ", " + money(all_.cost) + " and " + per_cent(*wish_.allowance) + " on top";
    if (!all_.no_price.empty()) whole += ", without what has no price";
    fact(FactKind::cost, Caption::cost, whole);
    const std::optional<Portions> among = portions();
    const std::string each = among ? among->words : std::string();
    if (among) fact(FactKind::portion, Caption::portion, shared(cost_, among) + each);
    if (wish_.food_cost)
      fact(FactKind::price, Caption::price, shared(price_for(cost_, *wish_.food_cost), among) + each + ", at a food cost of " + per_cent(*wish_.food_cost));
  }

  static std::vector<std::string> without(const std::vector<std::string>& names, const std::vector<std::string>& others) {
    std::vector<std::string> left;
    for (const std::string& name : names)
      if (std::find(others.begin(), others.end(), name) == others.end()) left.push_back(name);
    return left;
  }

  // Versions that cost another sum, or lack another price, beside the recipe as written.
  void versions() {
    const std::optional<Portions> among = portions();
    const auto portion = [&](const Fraction& whole) { return among ? amount(shared(whole, among)) : Range32{}; };
    Rows rows{{plain("as written"), amount(money(cost_)), portion(cost_), {}, {}}};
    for (const CostVersion& one : versions_) {
      const Fraction cost = with_all(one.costing.cost), difference = as_shown(cost) - as_shown(cost_);
      const std::vector<std::string> lacking = without(one.costing.no_price, all_.no_price), settled = without(all_.no_price, one.costing.no_price);
      const bool known = lacking.empty() && settled.empty();
      if (known && difference.is_zero()) continue;
      rows.push_back({plain((one.other_line ? "with " : "") + one.name), amount(money(cost)), portion(cost),
                      amount(known ? (difference.sign() < 0 ? "−" : "+") + money(difference.abs()) : "?"),
                      plain(!lacking.empty() ? "without the price of " + in_words(lacking) : known ? "" : "the recipe as written lacks the price of " + in_words(settled))});
    }
    if (rows.size() < 2) return;
    section(caption(Caption::versions));
    constexpr Column kOf[] = {{Caption::version}, {Caption::cost, true}, {Caption::portion, true}, {Caption::difference, true}, {Caption::details}};
    table(kOf, rows, false);
  }
  // The difference is that of the sums that are read beside it.
  Fraction as_shown(const Fraction& value) const {
    Fraction digits(1);
    for (int i = money_digits(currency()); i > 0; --i) digits *= Fraction(10);
    return Fraction::of((value * digits).nearest(), 1) / digits;
  }

  void part(const CostPart& part) {
    const bool alone = all_.parts.size() == 1;
    section(alone ? Range32{} : plain(part.name));
    Rows rows;
    for (const CostLine& line : part.lines) rows.push_back(row(line)), record(part, line);
    const bool summed = part.lines.size() > 1 && !priceless();
    if (summed) rows.push_back({caption(Caption::together), {}, amount(money(part.cost)), amount(share(part.cost)), {}});
    table(kColumns, rows, summed);
  }

  std::string share(const Fraction& cost) const { return cost.is_lost() || all_.cost.sign() <= 0 ? std::string() : per_cent(cost / all_.cost); }

  std::vector<Range32> row(const CostLine& line) {
    const bool known = !line.cost.is_lost(), measured = !line.measure.amount.is_lost();
    return {plain(line.name), amount(measured ? size_of(line) : std::string()), amount(known ? money(line.cost) : "?"), amount(share(line.cost)), details(line)};
  }

  std::string size_of(const CostLine& line) const { return in_house(line.measure, line.spoonful, board_.kitchen); }

  Range32 details(const CostLine& line) {
    out_.begin();
    const auto add = [&](std::string_view text) {
      if (!out_.empty()) out_.put("; ");
      out_.put(text);
    };
    if (line.trimmed) add(std::string(trim(words_[Caption::as_bought])) + (line.into.empty() ? "" : " for " + line.into));
    if (line.price != nullptr) {
      add(line.cost.is_lost() ? "the price is " : "at ");
      out_.add(say_price(*line.price, *board_.kitchen), Role::amount);
      if (line.cost.is_lost()) out_.put(", and no source says how that is brought to " + size_of(line));
      else if (!goes_by(line)) out_.put(" of " + std::string(line.price->name));
    } else if (line.cost.is_lost()) {
      add("no price");
    }
    if (line.optional) add(words_[Caption::optional]);
    if (!line.cost.is_lost() && !line.through.empty()) add("weighed by " + line.through);
    return out_.end();
  }

  // Is the price one of just that name?
  static bool goes_by(const CostLine& line) { return fold_name(line.price->name) == fold_name(line.name); }

  void record(const CostPart& part, const CostLine& line) {
    const bool known = !line.cost.is_lost(), amount = !line.measure.amount.is_lost();
    Entry one;
    one.cells = {part.name, line.name, amount ? line.measure.amount.decimal(3) : "", amount ? std::string(unit(quantity_of(line.measure).unit).symbol) : "",
                 known ? money_number(line.cost, currency()) : "", known ? line.cost.exact() : "", known ? std::string(currency()) : "",
                 known && all_.cost.sign() > 0 ? (line.cost / all_.cost * Fraction(100)).decimal(1) : "", line.price != nullptr && line.price->day ? say_day(*line.price->day) : ""};
    card_.records.push_back(std::move(one));
  }

  void notes() {
    if (board_.kitchen == nullptr || board_.kitchen->prices.empty())
      remark(Remark::Kind::lacking, "This book has no prices. They stand in its kitchen file under `prices:`, a line each: the name, two blanks or more, then `1.95 per 250 g, 2026-01-05`.");
    if (!all_.stale.empty()) {
      std::vector<std::string> names;
      for (const HousePrice* price : all_.stale) names.push_back(std::string(price->name) + " (" + say_day(*price->day) + ")");
      remark(Remark::Kind::watch, "These prices are more than a year old: " + in_words(names) + ".");
    }
    if (!all_.no_price.empty() && !priceless()) remark(Remark::Kind::lacking, "What these cost, so the real cost is higher: " + in_words(all_.no_price) + ".");
    if (!all_.undated.empty()) {
      std::vector<std::string> names;
      for (const HousePrice* price : all_.undated) names.emplace_back(price->name);
      remark(Remark::Kind::lacking, "On which day these prices were asked: " + in_words(names) + ".");
    }
    if (!all_.unmeasured.empty()) remark(Remark::Kind::note, "Without an amount, so not counted: " + in_words(all_.unmeasured) + ".");
    std::string basis = "Costs are of what is bought, at the larger end of a range";
    basis += all_.untrimmed ? "; where a recipe does not say what it is cut from, nothing is added for trimming. " : ". ";
    remark(Remark::Kind::note, basis + "What is left of a pack is not counted. Labour, fuel and rent are not in it.");
    if (priceless()) return;
    const int digits = money_digits(currency());
    remark(Remark::Kind::note, "Every line is worked out exactly and rounded once, where it is shown. A total is the exact sum, rounded once, so it may differ from the sum of the lines shown by up to half of " +
                                   std::string(digits == 0 ? "1" : digits == 3 ? "0.001" : "0.01") + " a line.");
    for (const std::string& one : board_.unsized)
      remark(Remark::Kind::lacking, "How much of " + one + " is needed; it is counted at the size that it is written in.");
  }

  const Costing& all_;
  std::span<const CostVersion> versions_;
  const Recipe& recipe_;
  const Board& board_;
  const CostWish& wish_;
  Fraction cost_;  // with the allowance
};

}  // namespace

Card make_costs(const Costing& all, std::span<const CostVersion> versions, const Recipe& recipe, const Board& board, const CostWish& wish, const Words& words) {
  return CostWriter(all, versions, recipe, board, wish, words).run();
}

}  // namespace qtn
