// Problems for review tools: a SARIF 2.1.0 log with one run (OASIS, Static Analysis Results Interchange Format).
#include <algorithm>
#include <nlohmann/json.hpp>
#include <vector>

#include "diag/json_text.hpp"
#include "diag/print_parts.hpp"

namespace qtn {
namespace {

using Json = nlohmann::ordered_json;
constexpr std::string_view kSchema =
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

Json said(std::string_view text) {
  return Json{{"text", text}};
}

// A file name as a URI reference (RFC 3986): an absolute path gets its scheme, all but the unreserved is escaped.
std::string uri(std::string_view name) {
  constexpr std::string_view kPlain = "-._~/";
  constexpr char kDigits[] = "0123456789ABCDEF";
  std::string out = name.starts_with('/') ? "file://" : "";
  for (const char c : name) {
    const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    if (letter || kPlain.find(c) != kPlain.npos) {
      out += c;
    } else {
      const auto byte = static_cast<unsigned char>(c);
      out += {'%', kDigits[byte >> 4], kDigits[byte & 15]};
    }
  }
  return out;
}

// "unknown_unit" as rule names are written: "UnknownUnit".
std::string rule_name(std::string_view name) {
  std::string out;
  bool capital = true;
  for (const char c : name) {
    if (c != '_') out += capital && c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    capital = c == '_';
  }
  return out;
}

class SarifPrinter {
 public:
  explicit SarifPrinter(std::span<const Judged> files) : files_(files), places_(files) {}
  Json log(std::string_view version);

 private:
  void collect_codes();
  Json rule(Code code) const;
  Json result(const Diagnostic& problem, const Source& home);
  Json region(const Source& source, Span span);
  Json artifact(std::string_view name) const { return Json{{"uri", uri(name)}}; }
  Json location(const Source& source, Span span);
  Json related(const Label& label, const Source& home, std::size_t id);
  Json mend(const Fix& fix, const Source& home);

  std::span<const Judged> files_;
  Places places_;
  std::vector<Code> codes_;  // those used, in the order of the catalogue
};

void SarifPrinter::collect_codes() {
  for (const Judged& file : files_)
    for (const Diagnostic& problem : file.report->list()) codes_.push_back(problem.code);
  std::sort(codes_.begin(), codes_.end());
  codes_.erase(std::unique(codes_.begin(), codes_.end()), codes_.end());
}

Json SarifPrinter::rule(Code code) const {
  const CatalogueRow& known = row(code);
  const std::string_view page = explain(known.code);
  Json rule;
  rule["id"] = known.code;
  rule["name"] = rule_name(known.name);
  rule["shortDescription"] = said(known.title);
  rule["fullDescription"] = said(known.why);
  rule["help"] = said(page.empty() ? known.why : page);
  if (!page.empty()) rule["help"]["markdown"] = page;
  rule["defaultConfiguration"]["level"] = word(known.severity);
  return rule;
}

Json SarifPrinter::region(const Source& source, Span span) {
  const auto at = places_.region(source, span);
  return Json{{"startLine", at.from.line}, {"startColumn", at.from.column}, {"endLine", at.to.line},
              {"endColumn", at.to.column}, {"byteOffset", at.span.begin},   {"byteLength", at.span.size()}};
}

Json SarifPrinter::location(const Source& source, Span span) {
  return Json{{"artifactLocation", artifact(source.name())}, {"region", region(source, span)}};
}

Json SarifPrinter::related(const Label& label, const Source& home, std::size_t id) {
  const Source* source = places_.find(label, home);
  Json place;
  place["id"] = id;
  // The text of a file that is not here cannot be counted in lines; its bytes can be named.
  place["physicalLocation"] =
      source != nullptr ? location(*source, label.span)
                        : Json{{"artifactLocation", artifact(label.file)},
                               {"region", {{"byteOffset", label.span.begin}, {"byteLength", label.span.size()}}}};
  place["message"] = said(label.text);
  return place;
}

Json SarifPrinter::mend(const Fix& fix, const Source& home) {
  Json replacement;
  replacement["deletedRegion"] = region(home, fix.span);
  replacement["insertedContent"] = said(fix.text);
  Json change;
  change["artifactLocation"] = artifact(home.name());
  change["replacements"] = Json::array({replacement});
  Json object;
  object["description"] = said(fix.title.empty() ? fix.text : fix.title);
  object["artifactChanges"] = Json::array({change});
  object["properties"]["certainty"] = word(fix.certainty);
  return object;
}

Json SarifPrinter::result(const Diagnostic& problem, const Source& home) {
  Json result;
  result["ruleId"] = row(problem.code).code;
  result["ruleIndex"] = std::lower_bound(codes_.begin(), codes_.end(), problem.code) - codes_.begin();
  result["level"] = word(problem.severity);
  result["message"] = said(problem.message);
  Json place;
  place["physicalLocation"] = location(home, problem.span);
  result["locations"] = Json::array({place});
  for (std::size_t i = 0; i < problem.labels.size(); ++i)
    result["relatedLocations"].push_back(related(problem.labels[i], home, i + 1));
  for (const Fix& fix : problem.fixes) result["fixes"].push_back(mend(fix, home));
  Json& more = result["properties"];
  if (!problem.expected.empty()) more["expected"] = problem.expected;
  if (!problem.found.empty()) more["found"] = problem.found;
  more["why"] = why(problem);
  return result;
}

Json SarifPrinter::log(std::string_view version) {
  collect_codes();
  Json run;
  Json& driver = run["tool"]["driver"];
  driver["name"] = "Quartern";
  driver["version"] = version;
  Json& rules = driver["rules"] = Json::array();
  for (const Code code : codes_) rules.push_back(rule(code));
  run["columnKind"] = "unicodeCodePoints";
  Json& results = run["results"] = Json::array();
  for (const Judged& file : files_)
    for (const Diagnostic& problem : file.report->list()) results.push_back(result(problem, *file.source));
  Json log;
  log["$schema"] = kSchema;
  log["version"] = "2.1.0";
  log["runs"] = Json::array({run});
  return log;
}

}  // namespace

std::string print_sarif(std::span<const Judged> files, std::string_view version) {
  return json_text(SarifPrinter(files).log(version), 2) + '\n';
}

}  // namespace qtn
