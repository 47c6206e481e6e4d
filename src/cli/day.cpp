// The command `day`.
#include <nlohmann/json.hpp>

#include <ctime>

#include "app/pipeline.hpp"
#include "cli/arguments.hpp"
#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "cli/library.hpp"
#include "cli/output.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

bool read_hour(const std::string& what, const std::string& text, std::optional<Minute>& out) {
  if (text.empty()) return true;
  out = read_wall(text);
  const bool in_form = text.size() >= 15 && text[4] == '-' && text[7] == '-';
  if (!out && in_form) {
    complain(what + " " + text + ": there is no such day, or no such hour of a 24-hour clock");
    return false;
  }
  return out || wrong(what, text, "a day and an hour: \"2026-12-05 18:30\"");
}

bool read_count(const std::string& what, const std::string& text, std::optional<int>& out) {
  if (text.empty()) return true;
  const auto read = read_amount_argument(text, Dialect::british);
  const bool whole = read && read->thing.empty() && read->quantity.unit == kNoUnit && read->quantity.low.is_whole() && !read->quantity.is_range();
  if (!whole || read->quantity.low < Fraction(1) || read->quantity.low > Fraction(99)) return wrong(what, text, "a whole number from 1 to 99");
  out = static_cast<int>(read->quantity.low.floor());
  return true;
}

// "Tart: bake = 17:00" or "Tart: bake = 2026-12-05 17:00"; a bare hour is on the day of serving.
bool read_pin(const std::string& text, const std::optional<Minute>& serve, std::vector<Pin>& out) {
  const std::size_t equals = text.rfind('=');
  if (equals != std::string::npos) {
    const std::string words(trim(std::string_view(text).substr(0, equals))), when(trim(std::string_view(text).substr(equals + 1)));
    if (const auto wall = read_wall(when); wall && !words.empty()) return out.push_back({words, *wall}), true;
    if (const auto clock = read_clock(when); clock && serve && !words.empty()) return out.push_back({words, day_begin(*serve) + *clock}), true;
  }
  return wrong("--pin", text, "a step and its hour: \"Tart: bake = 17:00\"");
}

bool read_earlier(const std::string& path, std::vector<Settled>& out, int& revision) {
  const ReadFile read = read_file(path);
  if (!read.text) {
    complain(path + " could not be read: " + read.problem);
    return false;
  }
  const nlohmann::json sheet = nlohmann::json::parse(*read.text, nullptr, false);
  if (sheet.is_object() && sheet.contains("revision") && sheet["revision"].is_number_unsigned() && sheet["revision"] < 1'000'000) revision = sheet["revision"].get<int>();
  ++revision;
  if (sheet.is_object() && sheet.contains("parts") && sheet["parts"].is_array())
    for (const auto& part : sheet["parts"])
      if (part.is_object() && part.contains("hours") && part["hours"].is_array())
        for (const auto& hour : part["hours"]) {
          if (!hour.is_object() || !hour.contains("key") || !hour.contains("from") || !hour["key"].is_string() || !hour["from"].is_string()) continue;
          if (const auto wall = read_wall(hour["from"].get<std::string>())) out.push_back({hour["key"].get<std::string>(), *wall});
        }
  if (out.empty()) return wrong("--keep", path, "an earlier run sheet, printed with --as json");
  return true;
}

// The machine's own clock, in its own zone.
Minute now_on_the_wall() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  char text[32];
  std::strftime(text, sizeof text, "%Y-%m-%d %H:%M", &local);
  return read_wall(text).value_or(0);
}

std::optional<DayAsk> ask_of(const DayOptions& options, const Recipe& recipe) {
  DayAsk ask;
  std::optional<Minute> own;
  for (const TextFact& fact : recipe.facts)
    if (fact.field == Field::serve) own = read_wall(trim(recipe.slice(fact.span)));
  if (!read_hour("--serve", options.serve, ask.serve) || !read_hour("--start", options.start, ask.start)) return std::nullopt;
  if (!read_count("--cooks", options.cooks, ask.cooks) || !read_count("--ovens", options.ovens, ask.ovens)) return std::nullopt;
  if (!read_way(options.way, ask.way)) return std::nullopt;
  for (const std::string& pin : options.pins)
    if (!read_pin(pin, ask.serve ? ask.serve : own ? own : ask.start, ask.pins)) return std::nullopt;
  if (!options.keep.empty() && !read_earlier(options.keep, ask.settled, ask.revision)) return std::nullopt;
  if (!read_size(options.times, options.serves, options.makes, ask.request)) return std::nullopt;
  ask.variant = options.variant, ask.with = options.with;
  ask.zone = options.zone;
  ask.nights = options.nights;
  if (!options.past) ask.now = now_on_the_wall();
  return ask;
}

// What stands in the file at its place, the rest in a line.
void tell(const Named& asked, const Report& report) {
  for (const Diagnostic& problem : report.list()) {
    if (problem.span.size() == 0) {
      complain(asked.path + ": " + problem.message + (problem.expected.empty() ? "" : " Expected: " + problem.expected + "."));
      continue;
    }
    Report one;
    one.add(problem.code, problem.severity, problem.span, problem.message) = problem;
    show_problems({{&asked.checked->source, &one}}, false);
  }
}

}  // namespace

int run_day(const DayOptions& options) {
  const FormatRow* const format = find_format(options.as, Paper::day);
  if (format == nullptr) return wrong("--as", options.as, format_names(Paper::day)), kNotServed;
  const Library library({options.path});
  const Named* asked = nullptr;
  for (const Named& file : library.files()) {
    if (!file.asked) {
      // Cooks, ovens and nights that cannot be read would be passed over by the plan.
      if (!file.checked->report.has_errors()) continue;
      show_problems({{&file.checked->source, &file.checked->report}}, false);
      return kRecipeErrors;
    }
    if (asked != nullptr) {
      complain("one table at a time: name one recipe or one menu, not a folder");
      return kNotServed;
    }
    asked = &file;
  }
  if (!library.served() || asked == nullptr) return kNotServed;
  if (asked->checked->report.has_errors()) {
    show_problems({{&asked->checked->source, &asked->checked->report}}, false);
    return kRecipeErrors;
  }
  if (!asked->checked->recipe) {
    complain(asked->path + ": a kitchen has no day of its own; name a recipe or a menu");
    return kNotServed;
  }
  const auto ask = ask_of(options, *asked->checked->recipe);
  if (!ask) return kNotServed;
  Report report;
  std::string sheet;
  const bool printed = print_day(*asked->checked->recipe, *ask, format->format, sheet, report);
  tell(*asked, report);
  if (!printed) {
    complain(asked->path + ": no run sheet was made");
    return kNotServed;
  }
  return deliver(options.out, sheet) ? kFine : kNotServed;
}

}  // namespace qtn
