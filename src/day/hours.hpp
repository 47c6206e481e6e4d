// Hours of a place: minutes of a clock on the wall, and minutes that go by. They differ where clocks are put forward or
// back; without a zone they are the same. The rules of zones are the system's (the IANA database).
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace qtn {

using Minute = std::int64_t;  // since 1970-01-01 00:00

class Hours {
 public:
  Hours() = default;
  // nullopt: no zone of that name, or the system has no zones.
  static std::optional<Hours> of(const std::string& zone);

  enum class Fit : std::uint8_t {
    once,
    never,  // the clocks were put forward over it
    twice,  // they were put back over it; the first of the two is meant
  };
  // Minutes that have gone by at an hour of the wall; for `never` what they are after the gap.
  Minute gone(Minute wall, Fit* fit = nullptr) const;
  Minute wall(Minute gone) const;
  const std::string& zone() const { return zone_; }

 private:
  std::string zone_;             // empty: none
  const void* rules_ = nullptr;  // of the zone, kept by the library
};

// "2026-02-15 13:00": ISO 8601 date and 24-hour time, T or a blank between. nullopt when it is not of that form or no
// day of the calendar.
std::optional<Minute> read_wall(std::string_view text);
// "13:00" or "1:00": minutes of the day; nullopt when it is none.
std::optional<int> read_clock(std::string_view text);
std::string write_wall(Minute wall);              // "2026-02-15 13:00"
std::string write_clock(Minute wall);             // "13:00"
std::string write_day(Minute wall);               // "Sunday 15 February 2026"
Minute day_begin(Minute wall);                    // 00:00 of its day

}  // namespace qtn
