#include "diag/diagnostic.hpp"

#include <algorithm>
#include <array>
#include <tuple>

namespace qtn {
namespace {

constexpr CatalogueRow kRows[] = {
#define QTN_PROBLEM(code, name, severity, title, why) {#code, #name, Severity::severity, title, why},
#include "diag/catalogue.def"
#undef QTN_PROBLEM
};

}  // namespace

std::string quoted(std::string_view text) { return "`" + std::string(text) + "`"; }

const CatalogueRow& row(Code code) { return kRows[static_cast<std::size_t>(code)]; }

const CatalogueRow* find_row(std::string_view code) {
  const auto same = [&](std::string_view known) {
    return code.size() == known.size() && std::equal(code.begin(), code.end(), known.begin(), [](char a, char b) {
             return a == b || (a >= 'a' && a <= 'z' && a - 'a' + 'A' == b);
           });
  };
  for (const auto& known : kRows)
    if (same(known.code)) return &known;
  return nullptr;
}

std::vector<Code> all_codes() {
  std::vector<Code> codes;
  for (std::size_t i = 0; i < std::size(kRows); ++i) codes.push_back(static_cast<Code>(i));
  return codes;
}

Diagnostic& Diagnostic::expect(std::string what) {
  expected = std::move(what);
  return *this;
}

// The place is shown above it: a line of ten million letters is not said a second time.
Diagnostic& Diagnostic::find(std::string what) {
  constexpr std::size_t kLongest = 300;
  if (what.size() > kLongest) {
    std::size_t cut = kLongest - 10;
    while (cut > 0 && (static_cast<unsigned char>(what[cut]) & 0xC0) == 0x80) --cut;
    what = what.substr(0, cut) + (what.back() == '`' ? "…`" : "…");
  }
  found = std::move(what);
  return *this;
}

Diagnostic& Diagnostic::because(std::string what) {
  why = std::move(what);
  return *this;
}

Diagnostic& Diagnostic::also(Span where, std::string what, std::string file) {
  labels.push_back({where, std::move(what), std::move(file)});
  return *this;
}

Diagnostic& Diagnostic::fix(Span where, std::string replacement, std::string title) {
  fixes.push_back({where, std::move(replacement), std::move(title), Certainty::safe});
  return *this;
}

Diagnostic& Diagnostic::offer(Span where, std::string replacement, std::string title) {
  fixes.push_back({where, std::move(replacement), std::move(title), Certainty::choice});
  return *this;
}

Diagnostic& Report::add(Code code, Span span, std::string message) {
  return add(code, row(code).severity, span, std::move(message));
}

Diagnostic& Report::add(Code code, Severity severity, Span span, std::string message) {
  if (severity == Severity::error) ++errors_;
  list_.push_back({code, severity, span, std::move(message), {}, {}, {}, {}, {}});
  return list_.back();
}

std::size_t Report::warnings() const {
  return static_cast<std::size_t>(
      std::count_if(list_.begin(), list_.end(), [](const auto& d) { return d.severity == Severity::warning; }));
}

void Report::sort() {
  const auto key = [](const Diagnostic& d) { return std::make_tuple(d.span.begin, d.span.end, d.code); };
  std::stable_sort(list_.begin(), list_.end(), [&](const auto& a, const auto& b) { return key(a) < key(b); });
  const auto same = [&](const auto& a, const auto& b) { return key(a) == key(b) && a.message == b.message; };
  list_.erase(std::unique(list_.begin(), list_.end(), same), list_.end());
  errors_ = static_cast<std::size_t>(
      std::count_if(list_.begin(), list_.end(), [](const auto& d) { return d.severity == Severity::error; }));
}

void Report::append(const Report& other) {
  list_.insert(list_.end(), other.list_.begin(), other.list_.end());
  errors_ += other.errors_;
}

}  // namespace qtn
