// Problems for programs: one JSON object a line.
#include <nlohmann/json.hpp>

#include "diag/json_text.hpp"
#include "diag/print_parts.hpp"

namespace qtn {
namespace {

using Json = nlohmann::ordered_json;

// Lines and columns from 1, columns in code points; begin and end in bytes from 0, end past the last one.
void put_region(Json& object, const Places::Region& region) {
  object["line"] = region.from.line;
  object["column"] = region.from.column;
  object["endLine"] = region.to.line;
  object["endColumn"] = region.to.column;
  object["begin"] = region.span.begin;
  object["end"] = region.span.end;
}

Json other(const Label& label, const Source& home, Places& places) {
  Json object;
  const Source* source = places.find(label, home);
  object["file"] = source != nullptr ? source->name() : label.file;
  if (source != nullptr) {
    put_region(object, places.region(*source, label.span));
  } else {
    for (const char* name : {"line", "column", "endLine", "endColumn"}) object[name] = nullptr;
    object["begin"] = label.span.begin;
    object["end"] = label.span.end;
  }
  object["text"] = label.text;
  return object;
}

Json mend(const Fix& fix, const Source& home, Places& places) {
  Json object;
  object["title"] = fix.title;
  object["certainty"] = word(fix.certainty);
  put_region(object, places.region(home, fix.span));
  object["text"] = fix.text;
  return object;
}

Json whole(const Diagnostic& problem, const Source& home, Places& places) {
  Json object;
  object["code"] = row(problem.code).code;
  object["severity"] = word(problem.severity);
  object["title"] = row(problem.code).title;
  object["file"] = home.name();
  put_region(object, places.region(home, problem.span));
  object["message"] = problem.message;
  object["expected"] = problem.expected;
  object["found"] = problem.found;
  object["why"] = why(problem);
  Json& others = object["others"] = Json::array();
  for (const Label& label : problem.labels) others.push_back(other(label, home, places));
  Json& fixes = object["fixes"] = Json::array();
  for (const Fix& fix : problem.fixes) fixes.push_back(mend(fix, home, places));
  return object;
}

}  // namespace

std::string print_json(std::span<const Judged> files) {
  Places places(files);
  std::string out;
  for (const Judged& file : files)
    for (const Diagnostic& problem : file.report->list()) {
      out += json_text(whole(problem, *file.source, places), -1);
      out += '\n';
    }
  return out;
}

}  // namespace qtn
