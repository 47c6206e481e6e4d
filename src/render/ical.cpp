// A run sheet as a calendar (RFC 5545): an event for each line, with an alarm as it begins. Lines end in CRLF and are
// folded at 75 octets; without a zone the times are floating, with one they are UTC. An entry is known by its step and its
// serving, never by its hour: a plan that moved takes the place of the earlier one when it is read in again.
#include "render/layout.hpp"
#include "render/render.hpp"

namespace qtn {
namespace {

std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '\\' || c == ';' || c == ',') out += '\\';
    if (c == '\n') out += "\\n";
    else if (static_cast<unsigned char>(c) >= 0x20) out += c;
  }
  return out;
}

// "2026-03-01T10:40" as "20260301T104000"; a Z at its end stays.
std::string stamp(std::string_view iso) {
  std::string out;
  for (const char c : iso)
    if (c != '-' && c != ':' && c != 'Z') out += c;
  out += "00";
  if (!iso.empty() && iso.back() == 'Z') out += 'Z';
  return out;
}

class Calendar {
 public:
  Calendar(const Card& card, std::string& out) : card_(card), out_(out) {}

  void write() {
    line("BEGIN:VCALENDAR");
    line("VERSION:2.0");
    line("PRODID:-//Quartern//Run sheet//EN");
    line("CALSCALE:GREGORIAN");
    line("NAME:" + escaped(words(card_.title)));
    for (const Section& section : card_.parts)
      for (const Hour& hour : hours_of(card_, section.hours)) event(hour);
    line("END:VCALENDAR");
  }

 private:
  std::string words(Range32 range) const {
    std::string text;
    for (const Run& run : runs_of(card_, range)) text += card_.view(run);
    return text;
  }

  void event(const Hour& hour) {
    const bool zoned = !hour.from_utc.empty();
    const std::string &from = zoned ? hour.from_utc : hour.from_wall, &until = zoned ? hour.until_utc : hour.until_wall;
    std::string summary = words(hour.name);
    if (!hour.words.empty()) summary += ": " + words(hour.words);
    line("BEGIN:VEVENT");
    const Serving& serving = card_.serving;
    line("UID:" + uid(words(card_.title) + "/" + hour.key + "/" + serving.wall));
    // A plan has no clock of its own, so that one input makes one file: the stamp is the serving's, and which of two plans
    // is the later one stands in the sequence (RFC 5545, 3.8.7.4).
    line("DTSTAMP:" + stamp(serving.utc.empty() ? serving.wall + "Z" : serving.utc));
    line("SEQUENCE:" + std::to_string(serving.revision));
    line("DTSTART:" + stamp(from));
    if (until != from) line("DTEND:" + stamp(until));  // an end must be later than its beginning (RFC 5545, 3.8.2.2)
    if (hour.times > 1) {
      const bool daily = hour.every % 1440 == 0;
      line("RRULE:FREQ=" + std::string(daily ? "DAILY" : "MINUTELY") + ";INTERVAL=" + std::to_string(daily ? hour.every / 1440 : hour.every) +
           ";COUNT=" + std::to_string(hour.times));
    }
    line("SUMMARY:" + escaped(summary));
    if (!hour.aside.empty()) line("DESCRIPTION:" + escaped(words(hour.aside)));
    if (hour.kind == Hour::Kind::waits) line("TRANSP:TRANSPARENT");
    line("BEGIN:VALARM");
    line("ACTION:DISPLAY");
    line("DESCRIPTION:" + escaped(summary));
    line("TRIGGER:PT0S");
    line("END:VALARM");
    line("END:VEVENT");
  }

  // Letters, digits and a few marks, so that every calendar takes it; two keys never come to one.
  static std::string uid(std::string_view key) {
    constexpr std::string_view kHex = "0123456789ABCDEF";
    std::string out;
    for (const char c : key) {
      const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '.';
      const auto byte = static_cast<unsigned char>(c);
      if (plain) out += c;
      else if (c == ' ') out += '-';
      else out += {'_', kHex[byte >> 4], kHex[byte & 15]};
    }
    return out + "@quartern";
  }

  // Never inside a letter of several bytes.
  void line(std::string_view text) {
    constexpr std::size_t kLongest = 75;
    std::size_t room = kLongest;
    while (text.size() > room) {
      std::size_t cut = room;
      while (cut > 0 && (static_cast<unsigned char>(text[cut]) & 0xC0) == 0x80) --cut;
      if (cut == 0) cut = room;
      out_ += text.substr(0, cut);
      out_ += "\r\n ";
      text.remove_prefix(cut);
      room = kLongest - 1;  // the blank counts
    }
    out_ += text;
    out_ += "\r\n";
  }

  const Card& card_;
  std::string& out_;
};

}  // namespace

void render_ical(const Card& card, std::string& out) { Calendar(card, out).write(); }

}  // namespace qtn
