// The trade's table of a recipe in words and figures: what `ratios` prints. A renderer only lays it out.
#pragma once
#include <string>
#include <vector>

#include "recipe/formula.hpp"

namespace qtn {

struct LedgerFigure {
  std::string text;                    // "66.67"; empty where there is none
  Fraction exact = Fraction::lost();
};

struct LedgerRow {
  std::string name;
  LedgerFigure grams, of_base, of_whole;  // per cent
  bool taken = false;                     // a part or another recipe
};

struct LedgerTotal {
  std::string name;                        // "hydration"
  LedgerFigure grams, of_flour, of_whole;
  std::vector<std::string> left_out;
};

struct LedgerTable {
  std::string title;       // "Dough", "Overall formula"
  bool overall = false;
  FormulaBase base = FormulaBase::none;
  std::string base_name;   // "plain flour", "pork thighs and pork fat"
  std::vector<LedgerRow> rows;
  LedgerRow together;
  std::vector<LedgerTotal> totals;
  std::vector<std::string> notes;  // whole sentences
};

struct Ledger {
  std::string title;
  std::string edition;  // "3 times as written"; empty for the recipe as it stands
  std::vector<LedgerTable> tables;
};

// `recipe` is already scaled.
Ledger make_ledger(const Recipe& recipe);

}  // namespace qtn
