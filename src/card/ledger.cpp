#include "card/ledger.hpp"

#include <algorithm>

namespace qtn {
namespace {

// As many places as the finest figure of a column needs, two at most.
int places_for(const std::vector<Fraction>& column) {
  for (const int places : {0, 1}) {
    const Fraction unit(places == 0 ? 1 : 10);
    if (std::all_of(column.begin(), column.end(),
                    [&](const Fraction& one) { return one.is_lost() || (one * unit).is_whole(); }))
      return places;
  }
  return 2;
}

// "12.50": the places of a column are the same in every line of it.
std::string fixed(const Fraction& value, int places) {
  if (value.is_lost()) return {};
  std::string text = value.decimal(places);
  if (places == 0) return text;
  std::size_t point = text.find('.');
  if (point == std::string::npos) point = text.size(), text += '.';
  text.append(static_cast<std::size_t>(places) - (text.size() - point - 1), '0');
  return text;
}

Fraction per_cent(const Fraction& part, const Fraction& whole) {
  return part / whole * Fraction(100);
}

// "salt, butter and milk"; a name that stands twice is said once.
std::string listed(const std::vector<std::string_view>& names) {
  std::vector<std::string_view> once;
  for (const std::string_view name : names)
    if (std::find(once.begin(), once.end(), name) == once.end()) once.push_back(name);
  std::string text;
  for (std::size_t i = 0; i < once.size(); ++i) {
    if (i != 0) text += i + 1 == once.size() ? " and " : ", ";
    text += once[i];
  }
  return text;
}

constexpr std::string_view kInPart = " (in part)";  // something is left out of it

std::string_view name_of(Inside which) {
  constexpr std::string_view kNames[] = {"hydration", "fat", "sugars", "salt"};
  return kNames[static_cast<std::size_t>(which)];
}

class Maker {
 public:
  explicit Maker(const Formula& formula) : formula_(formula) {}

  LedgerTable run() {
    out_.title = formula_.overall ? "Overall formula" : formula_.unnamed ? "Formula" : std::string(formula_.name);
    out_.overall = formula_.overall;
    out_.base = formula_.base;
    if (formula_.base == FormulaBase::flour) out_.base_name = "flour";
    if (formula_.base == FormulaBase::named) out_.base_name = listed(formula_.base_names);
    rows();
    if (formula_.has_totals) totals();
    notes();
    return std::move(out_);
  }

 private:
  LedgerRow row(std::string_view name, const Fraction& grams) const {
    LedgerRow out;
    out.name = name;
    out.grams.exact = grams;
    out.of_base.exact = formula_.base == FormulaBase::none ? Fraction::lost() : per_cent(grams, formula_.base_grams);
    out.of_whole.exact = per_cent(grams, formula_.whole);
    return out;
  }

  void rows() {
    for (const FormulaLine& line : formula_.lines) {
      out_.rows.push_back(row(line.name, line.grams));
      out_.rows.back().taken = line.taken;
    }
    out_.together = row("together", formula_.whole);
    for (LedgerFigure LedgerRow::* column : {&LedgerRow::grams, &LedgerRow::of_base, &LedgerRow::of_whole}) {
      std::vector<Fraction> figures;
      for (const LedgerRow& one : out_.rows) figures.push_back((one.*column).exact);
      const int places = places_for(figures);
      for (LedgerRow& one : out_.rows) (one.*column).text = fixed((one.*column).exact, places);
      (out_.together.*column).text = fixed((out_.together.*column).exact, places);
    }
  }

  void totals() {
    for (std::size_t i = 0; i < kInsides; ++i) {
      const FormulaTotal& total = formula_.totals[i];
      const bool by_flour = formula_.base == FormulaBase::flour;
      LedgerTotal out;
      out.name = i == 0 && !by_flour ? "water" : name_of(static_cast<Inside>(i));
      out.grams.exact = total.grams;
      out.of_flour.exact = by_flour ? per_cent(total.grams, formula_.flour) : Fraction::lost();
      out.of_whole.exact = per_cent(total.grams, formula_.whole);
      for (const std::string_view name : total.left_out) out.left_out.emplace_back(name);
      if (!out.left_out.empty()) out.name += kInPart;
      out_.totals.push_back(std::move(out));
    }
    for (LedgerTotal& one : out_.totals)
      for (LedgerFigure* figure : {&one.grams, &one.of_flour, &one.of_whole})
        figure->text = fixed(figure->exact, 1);  // the figures of the table of composition bear no more
  }

  std::string_view bare_name(std::size_t total) const {
    return std::string_view(out_.totals[total].name).substr(0, out_.totals[total].name.find(kInPart));
  }

  void notes() {
    const auto say = [&](const std::string& text) { out_.notes.push_back(text); };
    if (!formula_.not_weighed.empty())
      say("Left out of all of it, since nobody says what it weighs: " + listed(formula_.not_weighed) + ".");
    std::vector<std::string_view> ranged;
    for (const FormulaLine& line : formula_.lines)
      if (line.ranged) ranged.push_back(line.name);
    if (!ranged.empty()) say("Counted at the middle of its range: " + listed(ranged) + ".");
    if (!formula_.not_measured.empty()) say("Without an amount: " + listed(formula_.not_measured) + ".");
    if (!formula_.has_totals) return;
    // Totals that lack the same ingredients are told in one sentence.
    std::vector<bool> told(kInsides, false);
    for (std::size_t i = 0; i < kInsides; ++i) {
      const std::vector<std::string_view>& lacking = formula_.totals[i].left_out;
      if (told[i] || lacking.empty()) continue;
      std::vector<std::string_view> of;
      for (std::size_t j = i; j < kInsides; ++j)
        if (formula_.totals[j].left_out == lacking) of.push_back(bare_name(j)), told[j] = true;
      say("Left out of the " + listed(of) + ", for want of a figure: " + listed(lacking) + ".");
    }
  }

  const Formula& formula_;
  LedgerTable out_;
};

}  // namespace

Ledger make_ledger(const Recipe& recipe) {
  Ledger out;
  out.title = recipe.title;
  out.edition = recipe.version;
  if (!(recipe.factor == Fraction(1))) {
    const bool whole = recipe.factor.is_whole();
    if (!out.edition.empty()) out.edition += ", ";
    out.edition += (whole ? recipe.factor.exact() : recipe.factor.decimal(3)) + " times as written";
  }
  const std::vector<Formula> formulas = formulas_of(recipe);
  const auto several = std::count_if(formulas.begin(), formulas.end(), [](const Formula& one) { return one.overall; });
  for (const Formula& formula : formulas) {
    out.tables.push_back(Maker(formula).run());
    if (formula.overall && several > 1) out.tables.back().title += " of " + std::string(formula.name);
  }
  return out;
}

}  // namespace qtn
