// Error recovery: single mistakes planted in the example book, 8 to a file, 320 in all. At least 99 % must be reported
// in one run, each on its own line, and nothing that is not there.
#include <doctest/doctest.h>

#include <functional>
#include <random>
#include <set>

#include "suite/book.hpp"

using namespace qtn;

namespace {

using Texts = std::vector<std::string>;

Texts split(const std::string& text) {
  Texts out{""};
  for (char c : text) {
    if (c == '\n') out.emplace_back();
    else out.back() += c;
  }
  return out;
}

std::string join(const Texts& lines) {
  std::string out;
  for (std::size_t i = 0; i < lines.size(); ++i) out += (i == 0 ? "" : "\n") + lines[i];
  return out;
}

// Which block a line stands in: "head", "take", "method", "log".
std::vector<std::string> places(const Texts& lines) {
  std::vector<std::string> out;
  std::string now = "head";
  for (const std::string& line : lines) {
    const std::string word = line.substr(0, line.find(':'));
    if (line.find(':') != std::string::npos && !line.empty() && line[0] != ' ') {
      if (word == "take") now = "take-head";
      else if (word == "method" || word.rfind("to ", 0) == 0) now = "method-head";
      else if (word == "trial" || word == "variant" || word == "film") now = "log-head";
      else if (word == "part") now = "head";
    }
    out.push_back(now);
    if (now.size() > 5 && now.ends_with("-head")) now.resize(now.size() - 5);
  }
  return out;
}

struct Mistake {
  const char* kind;
  // Changes one line; false where it does not fit.
  std::function<bool(std::string& line, const std::string& place)> plant;
};

bool replace(std::string& line, const std::string& from, const std::string& to) {
  const std::size_t at = line.find(from);
  if (at == std::string::npos) return false;
  line.replace(at, from.size(), to);
  return true;
}

bool plain_take(const std::string& line) {
  const std::size_t first = line.find_first_not_of(' ');
  return first != std::string::npos && line[first] >= '1' && line[first] <= '9' && line.find('[') == std::string::npos && line.find('(') == std::string::npos &&
         line.find("giving") == std::string::npos && line.find('%') == std::string::npos && line.find("part") == std::string::npos && line.find(" each ") == std::string::npos;
}

std::vector<Mistake> mistakes() {
  const auto in_take = [](const char* kind, std::function<bool(std::string&)> edit) {
    return Mistake{kind, [edit](std::string& line, const std::string& place) { return place == "take" && plain_take(line) && edit(line); }};
  };
  const auto in_method = [](const char* kind, std::function<bool(std::string&)> edit) {
    return Mistake{kind, [edit](std::string& line, const std::string& place) { return place == "method" && line.find('[') != std::string::npos && edit(line); }};
  };
  const auto in_head = [](const char* kind, std::function<bool(std::string&)> edit) {
    return Mistake{kind, [edit](std::string& line, const std::string& place) { return place == "head" && edit(line); }};
  };
  const auto first_digits = [](std::string& line, const std::function<std::string(const std::string&)>& change) {
    const std::size_t at = line.find_first_of("123456789");
    std::size_t end = at;
    while (end < line.size() && line[end] >= '0' && line[end] <= '9') ++end;
    if (end < line.size() && (line[end] == '/' || line[end] == '.' || line[end] == '-')) return false;
    line.replace(at, end - at, change(line.substr(at, end - at)));
    return true;
  };
  return {
      in_take("comma in a number", [=](std::string& l) { return first_digits(l, [](const std::string& d) { return d + ",5"; }); }),
      in_take("two strokes", [=](std::string& l) { return first_digits(l, [](const std::string& d) { return d + "/2/3"; }); }),
      in_take("over zero", [=](std::string& l) { return first_digits(l, [](const std::string& d) { return d + "/0"; }); }),
      in_take("number too long", [=](std::string& l) { return first_digits(l, [](const std::string& d) { return d + "0000000000000000000"; }); }),
      in_take("falling range", [=](std::string& l) { return first_digits(l, [](const std::string& d) { return d + "00 to " + d; }); }),
      in_take("grams as gm", [](std::string& l) { return replace(l, " g ", " gm "); }),
      in_take("tablespoon as T", [](std::string& l) { return replace(l, " tbsp ", " T "); }),
      in_take("teaspoon as t", [](std::string& l) { return replace(l, " tsp ", " t "); }),
      in_take("litre as L", [](std::string& l) { return replace(l, " l ", " L "); }),
      in_take("two units run together", [=](std::string& l) { return l.find(" g ") != std::string::npos && first_digits(l, [](const std::string& d) { return d + "kg" + d + "g and"; }); }),
      in_take("equivalent that is off", [](std::string& l) { return replace(l, "00 g ", "00 g (9 lb) "); }),
      in_take("a time for an amount", [](std::string& l) { return replace(l, " g ", " min "); }),
      in_take("colon in the name", [](std::string& l) { l += ": chopped"; return l.find(',') == std::string::npos; }),
      in_take("amount missing", [](std::string& l) {
        const std::size_t at = l.find(" g ");
        if (at == std::string::npos || l.find(',') != std::string::npos) return false;
        l = "  " + l.substr(l.find_first_not_of(' ', at + 3));
        return true;
      }),
      in_method("bracket not closed", [](std::string& l) { return std::count(l.begin(), l.end(), '[') == 1 && replace(l, "]", ""); }),
      in_method("name misspelt", [](std::string& l) { return replace(l, "[the b", "[the xb") || replace(l, "[the s", "[the xs") || replace(l, "[the m", "[the xm"); }),
      in_method("unknown verb", [](std::string& l) { return replace(l, "[bake ", "[bakke ") || replace(l, "[rest ", "[resst ") || replace(l, "[simmer ", "[simer "); }),
      in_method("weight for a time", [](std::string& l) { return replace(l, " min]", " kg]"); }),
      in_method("degrees of no scale", [](std::string& l) { return replace(l, " °C", "°"); }),
      in_method("hours without minutes", [](std::string& l) { return replace(l, " min]", ":30]"); }),
      in_method("share of more than all", [](std::string& l) { return replace(l, "[half the", "[three halves the"); }),
      in_method("two clauses in one", [](std::string& l) { return replace(l, " min]", " min, then 5 min]"); }),
      in_method("empty bracket", [](std::string& l) { l += " []"; return std::count(l.begin(), l.end(), '[') == std::count(l.begin(), l.end(), ']'); }),
      in_head("field misspelt", [](std::string& l) { return replace(l, "serves:", "servs:") || replace(l, "keeps:", "keps:") || replace(l, "source:", "sorce:"); }),
      in_head("unknown field", [](std::string& l) { return replace(l, "needs:", "apparatus:") || replace(l, "by:", "written-with:"); }),
      in_head("unknown choice", [](std::string& l) { return replace(l, "words: ", "words: Old "); }),
      in_head("no place for keeping", [](std::string& l) { return l.rfind("keeps: ", 0) == 0 && l.find(',') == std::string::npos && (replace(l, " chilled", "") || replace(l, " frozen", "") || replace(l, " cool", "")); }),
      in_head("serves a weight", [](std::string& l) { if (l.rfind("serves: ", 0) != 0) return false; l += " kg"; return true; }),
      in_head("tin without numbers", [](std::string& l) { if (l.rfind("tin: ", 0) != 0) return false; l = "tin: the round one"; return true; }),
      in_head("a field again", [](std::string& l) { if (l.rfind("words: ", 0) != 0) return false; l = "measures: British"; return true; }),
  };
}

struct Tally {
  int planted = 0, found = 0, spurious = 0;
  std::set<std::string> kinds;
  std::string missed;
};

void one_file(const std::string& path, std::mt19937& random, Tally& tally) {
  const std::string text = tests::slurp(tests::root() / "examples" / path);
  Texts lines = split(text);
  const auto where = places(lines);
  auto kinds = mistakes();
  std::shuffle(kinds.begin(), kinds.end(), random);
  std::map<std::uint32_t, std::string> planted;  // by line
  for (int round = 0; round < 4 && planted.size() < 8; ++round)
    for (const Mistake& kind : kinds) {
      if (planted.size() == 8) break;
      std::vector<std::size_t> order(lines.size());
      for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
      std::shuffle(order.begin(), order.end(), random);
      for (std::size_t i : order) {
        const auto line = static_cast<std::uint32_t>(i + 1);
        // Mistakes keep a line apart, so that each is one mistake.
        if (planted.count(line) != 0 || planted.count(line - 1) != 0 || planted.count(line + 1) != 0) continue;
        std::string changed = lines[i];
        if (!kind.plant(changed, where[i]) || changed == lines[i]) continue;
        lines[i] = changed;
        planted[line] = kind.kind;
        break;
      }
    }
  Book book = tests::example_book({{path, join(lines)}});
  const Checked* checked = book.file(path);
  const qtn::Lines at(checked->source.text());
  std::set<std::uint32_t> told;
  for (const Diagnostic& problem : checked->report.list()) {
    const std::uint32_t line = at.place(problem.span.begin).line;
    if (planted.count(line) != 0) {
      told.insert(line);
      continue;
    }
    ++tally.spurious;
    tally.missed += "not there: " + path + ":" + std::to_string(line) + " " + std::string(row(problem.code).code) + " " + problem.message + "\n";
  }
  for (const auto& [line, kind] : planted) {
    ++tally.planted;
    tally.kinds.insert(kind);
    if (told.count(line) != 0) ++tally.found;
    else tally.missed += "missed: " + path + ":" + std::to_string(line) + " " + kind + " | " + lines[line - 1] + "\n";
  }
}

}  // namespace

TEST_CASE("planted mistakes are reported in one run, and nothing else") {
  const auto files = tests::example_files();
  std::mt19937 random(1907);
  Tally tally;
  for (int i = 0; tally.planted < 320; ++i) one_file(files[static_cast<std::size_t>(i) % files.size()], random, tally);
  MESSAGE("planted " << tally.planted << " of " << tally.kinds.size() << " kinds, reported " << tally.found << ", not there " << tally.spurious);
  if (!tally.missed.empty()) MESSAGE(tally.missed);
  CHECK(tally.kinds.size() >= 20);
  CHECK(tally.found * 100 >= tally.planted * 99);
  CHECK(tally.spurious == 0);
}
