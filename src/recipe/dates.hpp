// Dates of logs and prices: ISO 8601, year-month-day.
#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "diag/diagnostic.hpp"

namespace qtn {

// Days since 1970-01-01. nullopt after a diagnostic: not of that form, or no day of the calendar.
std::optional<int> read_date(std::string_view text, Span span, Report& report);
// "2026-02-11"; of a day as read_date counts it.
std::string write_date(int day);

}  // namespace qtn
