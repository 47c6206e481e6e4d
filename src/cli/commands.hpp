// The commands of the program, one function each: what the command table in main.cpp calls.
#pragma once
#include <string>
#include <vector>

namespace qtn {

// Exit codes: what was asked was done; the recipe has errors; the call or a file could not be served.
enum Exit : int { kFine = 0, kRecipeErrors = 1, kNotServed = 2 };

struct CheckOptions {
  std::vector<std::string> paths;
  std::string as = "text";  // text, json, sarif
  bool strict = false;      // warnings count as errors, and so do the notes of `complete`
  bool complete = false;    // say what the standardized-recipe form lacks
};
int run_check(const CheckOptions& options);

// `history`: of one thing of the log; empty: the whole table.
int run_read(const std::string& path, const std::string& history);

struct CardOptions {
  std::vector<std::string> paths;
  std::string as = "markdown";
  std::string units = "written", beside, measures, words;
  std::string times, serves, makes, tin, from, variant, with, out;
  std::string way, as_of;
  bool readings = false;
};
int run_card(const CardOptions& options);

struct RatiosOptions {
  std::vector<std::string> paths;
  std::string as = "text";
  std::string times, serves, makes, variant, with;
};
int run_ratios(const RatiosOptions& options);

struct AllergensOptions {
  std::vector<std::string> paths;
  std::string as = "text", list, out;
};
int run_allergens(const AllergensOptions& options);

struct DayOptions {
  std::string path;
  std::string as = "text", out;
  std::string serve, start, zone, way, keep, variant, with;
  std::string times, serves, makes;
  std::string cooks, ovens;
  std::vector<std::string> pins;
  bool nights = false, past = false;
};
int run_day(const DayOptions& options);

struct OrderOptions {
  std::vector<std::string> paths;
  std::string as = "text", out, serve;
  std::string times, serves, makes, variant, with;
};
int run_order(const OrderOptions& options);

struct CostOptions {
  std::string path;
  std::string as = "text", out, food_cost, allowance, today;
  std::string times, serves, makes, variant, with;
};
int run_cost(const CostOptions& options);

int run_ask(const std::vector<std::string>& words, const std::string& measures);
int run_explain(const std::string& code);

}  // namespace qtn
