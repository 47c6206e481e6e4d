// Exit codes and streams, as `quartern --help` and docs/commands.md promise them: a row a call. And files that are
// written whole or not at all.
#include <set>
#include <sstream>

#include "suite/run.hpp"

using namespace qtn;

namespace {

constexpr const char* kGood = "recipe: Peas\nserves: 2\nmakes: 4 bowls\ntake:\n  500 g peas\n  or 500 g beans\nmethod:\n  Boil [the peas] [5 min].\n\nvariant: Short\n  peas  500 g -> 300 g\n";
constexpr const char* kWarned = "recipe: Peas\ntake:\n  500 g peas\n  20 g butter beans\nmethod:\n  Boil [the peas] with [the butter] [5 min].\n";
constexpr const char* kBad = "recipe: Peas\ntake:\n  1,5 kg peas\nmethod:\n  Boil [the peas] [5 min].\n";

constexpr const char* kTin = "recipe: Oat tray\ntin: 20 x 20 cm, 3 cm deep\ntake:\n  100 g oats\nmethod:\n  Press [the oats] in and [bake 20 min at 180 °C fan].\n";

struct Row {
  const char* what;
  const char* call;  // what stands behind `quartern`
  int code;
};

constexpr Row kRows[] = {
    {"nothing asked", "", 2},
    {"help", "--help", 0},
    {"version", "--version", 0},
    {"no such command", "boil good.qtn", 2},
    {"no such option", "--loud", 2},

    {"check: good", "check good.qtn", 0},
    {"check: good, from standard input", "check - < good.qtn", 0},
    {"check: a folder of good files", "check folder", 0},
    {"check: what the form lacks", "check --complete good.qtn", 0},
    {"check: what the form lacks, strictly", "check --complete --strict good.qtn", 1},
    {"check: what the form lacks, as JSON and SARIF", "check --complete good.qtn --as json && quartern check --complete good.qtn --as sarif", 0},
    {"check: warnings", "check warned.qtn", 0},
    {"check: warnings, strictly", "check warned.qtn --strict", 1},
    {"check: good, strictly", "check --strict good.qtn", 0},
    {"check: errors", "check bad.qtn", 1},
    {"check: errors beside good", "check good.qtn bad.qtn", 1},
    {"check: errors, from standard input", "check - < bad.qtn", 1},
    {"check: warnings from standard input, strictly", "check - --strict < warned.qtn", 1},
    {"check: errors as JSON", "check bad.qtn --as json", 1},
    {"check: errors as SARIF", "check bad.qtn --as sarif", 1},
    {"check: good as SARIF", "check good.qtn --as sarif", 0},
    {"check: as something else", "check good.qtn --as yaml", 2},
    {"check: help", "check --help", 0},
    {"check: no path", "check", 2},
    {"check: an empty path", "check ''", 2},
    {"check: missing", "check missing.qtn", 2},
    {"check: missing beside errors", "check bad.qtn missing.qtn", 2},
    {"check: a folder named like a file", "check folder.qtn", 2},
    {"check: unreadable", "check unreadable.qtn", 2},
    {"check: a folder as standard input", "check - < folder", 2},
    {"check: unknown option", "check good.qtn --loud", 2},
    {"check: output that cannot be written", "check bad.qtn > /dev/full", 2},

    {"read: good", "read good.qtn", 0},
    {"read: good, from standard input", "read - < good.qtn", 0},
    {"read: a folder", "read folder", 0},
    {"read: warnings", "read warned.qtn", 0},
    {"read: errors", "read bad.qtn", 1},
    {"read: a history", "read good.qtn --history peas", 0},
    {"read: a history in a folder", "read folder --history peas", 0},
    {"read: a history of nothing", "read good.qtn --history pease", 2},
    {"read: a history beside errors", "read bad.qtn --history peas", 1},
    {"read: help", "read --help", 0},
    {"read: no path", "read", 2},
    {"read: two paths", "read good.qtn bad.qtn", 2},
    {"read: missing", "read missing.qtn", 2},
    {"read: a folder named like a file", "read folder.qtn", 2},
    {"read: unreadable", "read unreadable.qtn", 2},
    {"read: a folder as standard input", "read - < folder", 2},
    {"read: unknown option", "read good.qtn --loud", 2},
    {"read: output that cannot be written", "read good.qtn > /dev/full", 2},

    {"day: good", "day good.qtn --past --serve '2026-12-05 18:30'", 0},
    {"day: good, from standard input", "day - --past --serve '2026-12-05 18:30' < good.qtn", 0},
    {"day: every output", "day good.qtn --past --serve '2026-12-05 18:30' --as text && quartern day good.qtn --past --serve '2026-12-05 18:30' --as markdown && quartern day good.qtn --past --serve '2026-12-05 18:30' --as html && quartern day good.qtn --past --serve '2026-12-05 18:30' --as json && quartern day good.qtn --past --serve '2026-12-05 18:30' --as ical", 0},
    {"day: sizes", "day good.qtn --past --serve '2026-12-05 18:30' --times 3 && quartern day good.qtn --past --serve '2026-12-05 18:30' --serves 6 && quartern day good.qtn --past --serve '2026-12-05 18:30' --makes '6 bowls'", 0},
    {"day: begun at an hour", "day good.qtn --past --start '2026-12-05 10:00'", 0},
    {"day: the house", "day good.qtn --past --serve '2026-12-05 18:30' --cooks 2 --ovens 2 --zone Europe/London --nights --way hand", 0},
    {"day: a pin", "day good.qtn --past --serve '2026-12-05 18:30' --pin 'boil = 17:00'", 0},
    {"day: versions", "day good.qtn --past --serve '2026-12-05 18:30' --variant Short && quartern day good.qtn --past --serve '2026-12-05 18:30' --with beans", 0},
    {"day: no such version", "day good.qtn --past --serve '2026-12-05 18:30' --variant Long", 2},
    {"day: a pin of nothing", "day good.qtn --past --serve '2026-12-05 18:30' --pin 'fry = 17:00'", 2},
    {"day: a pin without an hour", "day good.qtn --past --serve '2026-12-05 18:30' --pin boil", 2},
    {"day: an earlier sheet kept", "day good.qtn --past --serve '2026-12-05 18:30' --as json --out sheet.json && quartern day good.qtn --past --serve '2026-12-05 18:30' --keep sheet.json", 0},
    {"day: an earlier sheet that is none", "day good.qtn --past --serve '2026-12-05 18:30' --keep good.qtn", 2},
    {"day: written to a file", "day good.qtn --past --serve '2026-12-05 18:30' --out sheet.txt", 0},
    {"day: into a folder that is not there", "day good.qtn --past --serve '2026-12-05 18:30' --out nowhere/sheet.txt", 2},
    {"day: warnings", "day warned.qtn --past --serve '2026-12-05 18:30'", 0},
    {"day: errors", "day bad.qtn --past --serve '2026-12-05 18:30'", 1},
    {"day: nobody says when", "day good.qtn", 2},
    {"day: over", "day good.qtn --serve '2020-12-05 18:30'", 2},
    {"day: no hour", "day good.qtn --serve 'half past six'", 2},
    {"day: no beginning", "day good.qtn --start 'half past six'", 2},
    {"day: in a gap of the clock", "day good.qtn --past --zone Europe/London --serve '2026-03-29 01:30'", 2},
    {"day: no such zone", "day good.qtn --past --zone Middle/Earth --serve '2026-03-29 13:00'", 2},
    {"day: no cook", "day good.qtn --past --serve '2026-12-05 18:30' --cooks 0", 2},
    {"day: half an oven", "day good.qtn --past --serve '2026-12-05 18:30' --ovens 1/2", 2},
    {"day: no such way", "day good.qtn --past --serve '2026-12-05 18:30' --way foot", 2},
    {"day: no size", "day good.qtn --past --serve '2026-12-05 18:30' --times 0", 2},
    {"day: no such yield", "day good.qtn --past --serve '2026-12-05 18:30' --makes '6 tarts'", 2},
    {"day: no such day of the calendar", "day good.qtn --past --serve '2027-02-29 18:30'", 2},
    {"day: a pin in a gap of the clock", "day good.qtn --past --zone Europe/London --serve '2026-03-29 18:30' --pin 'boil = 01:30'", 2},
    {"day: no time for it", "day good.qtn --past --serve '2026-12-05 18:30' --start '2026-12-05 18:29'", 2},
    {"day: a folder with one recipe", "day folder --past --serve '2026-12-05 18:30'", 0},
    {"day: a kitchen", "day kitchen/kitchen.qtn --past --serve '2026-12-05 18:30'", 2},
    {"day: as something else", "day good.qtn --past --serve '2026-12-05 18:30' --as yaml", 2},
    {"day: help", "day --help", 0},
    {"day: no path", "day", 2},
    {"day: missing", "day missing.qtn --serve '2026-12-05 18:30'", 2},
    {"day: unreadable", "day unreadable.qtn --serve '2026-12-05 18:30'", 2},
    {"day: unknown option", "day good.qtn --loud", 2},
    {"day: output that cannot be written", "day good.qtn --past --serve '2026-12-05 18:30' > /dev/full", 2},

    {"ratios: good", "ratios good.qtn", 0},
    {"ratios: good, from standard input", "ratios - < good.qtn", 0},
    {"ratios: both outputs", "ratios good.qtn --as text && quartern ratios good.qtn --as json", 0},
    {"ratios: sizes", "ratios good.qtn --times '1 1/2' && quartern ratios good.qtn --serves 6 && quartern ratios good.qtn --makes '6 bowls'", 0},
    {"ratios: a version", "ratios good.qtn --variant short && quartern ratios good.qtn --with Beans --times 2", 0},
    {"ratios: no such version", "ratios good.qtn --variant long", 2},
    {"ratios: no such line", "ratios good.qtn --with lentils", 2},
    {"ratios: warnings", "ratios warned.qtn", 0},
    {"ratios: errors", "ratios bad.qtn", 1},
    {"ratios: errors, from standard input", "ratios - < bad.qtn", 1},
    {"ratios: errors beside good", "ratios good.qtn bad.qtn", 1},
    {"ratios: help", "ratios --help", 0},
    {"ratios: no path", "ratios", 2},
    {"ratios: missing", "ratios missing.qtn", 2},
    {"ratios: missing beside errors", "ratios bad.qtn missing.qtn", 2},
    {"ratios: a folder named like a file", "ratios folder.qtn", 2},
    {"allergens: a recipe", "allergens good.qtn", 0},
    {"allergens: a book as a page", "allergens folder --as html", 0},
    {"allergens: the other list", "allergens good.qtn --list american", 0},
    {"allergens: a recipe with errors", "allergens bad.qtn", 1},
    {"allergens: an unknown list", "allergens good.qtn --list moon", 2},
    {"allergens: an unknown form", "allergens good.qtn --as csv", 2},
    {"allergens: nothing there", "allergens none.qtn", 2},
    {"ratios: unreadable", "ratios unreadable.qtn", 2},
    {"ratios: a folder as standard input", "ratios - < folder", 2},
    {"ratios: a kitchen", "ratios kitchen/kitchen.qtn", 2},
    {"ratios: as something else", "ratios good.qtn --as yaml", 2},
    {"ratios: no size", "ratios good.qtn --times 0", 2},
    {"ratios: no such yield", "ratios good.qtn --makes '6 tarts'", 2},
    {"ratios: unknown option", "ratios good.qtn --loud", 2},
    {"ratios: output that cannot be written", "ratios good.qtn > /dev/full", 2},

    {"card: good", "card good.qtn", 0},
    {"card: good, from standard input", "card - < good.qtn", 0},
    {"card: every output", "card good.qtn --as html && quartern card good.qtn --as text && quartern card good.qtn --as json", 0},
    {"card: other measures", "card good.qtn --units metric --beside american", 0},
    {"card: other spoons", "card good.qtn --measures Australian --units metric", 0},
    {"card: no such spoons", "card good.qtn --measures Roman", 2},
    {"card: other words", "card good.qtn --words British && quartern card good.qtn --words american && quartern card good.qtn --words BOTH --as json", 0},
    {"card: no such words", "card good.qtn --words Welsh", 2},
    {"card: sizes", "card good.qtn --times '1 1/2' && quartern card good.qtn --serves 6 && quartern card good.qtn --makes '6 bowls'", 0},
    {"card: another tin, and what there is", "card tin.qtn --tin '20 x 30 cm, 3 cm deep' && quartern card tin.qtn --from '300 g oats'", 0},
    {"card: versions", "card good.qtn --variant Short && quartern card good.qtn --with beans", 0},
    {"card: an earlier day without a log", "card good.qtn --as-of 2026-01-05", 2},
    {"card: no day", "card good.qtn --as-of yesterday", 2},
    {"card: no such day", "card good.qtn --as-of 2026-02-30", 2},
    {"card: an earlier day of a version", "card good.qtn --as-of 2026-01-05 --variant Short", 2},
    {"card: one way", "card good.qtn --way machine && quartern card good.qtn --way hand", 0},
    {"card: no such way", "card good.qtn --way foot", 2},
    {"card: nothing to read", "card good.qtn --readings", 2},
    {"card: warnings", "card warned.qtn", 0},
    {"card: errors", "card bad.qtn", 1},
    {"card: errors, from standard input", "card - < bad.qtn", 1},
    {"card: errors beside good", "card good.qtn bad.qtn", 1},
    {"card: help", "card --help", 0},
    {"card: no path", "card", 2},
    {"card: missing", "card missing.qtn", 2},
    {"card: missing beside errors", "card bad.qtn missing.qtn", 2},
    {"card: a folder named like a file", "card folder.qtn", 2},
    {"card: unreadable", "card unreadable.qtn", 2},
    {"card: a folder as standard input", "card - < folder", 2},
    {"card: a kitchen", "card kitchen/kitchen.qtn", 2},
    {"card: unknown option", "card good.qtn --loud", 2},
    {"card: as something else", "card good.qtn --as yaml", 2},
    {"card: no such units", "card good.qtn --units roman", 2},
    {"card: no such second column", "card good.qtn --beside roman", 2},
    {"card: no times", "card good.qtn --times 0", 2},
    {"card: fewer times than none", "card good.qtn --times=-1", 2},
    {"card: times a word", "card good.qtn --times twice", 2},
    {"card: times over zero", "card good.qtn --times 1/0", 2},
    {"card: times a weight", "card good.qtn --times '2 kg'", 2},
    {"card: times without end", "card good.qtn --times 99999999999999999999", 2},
    {"card: times nothing", "card good.qtn --times", 2},
    {"card: serves a weight", "card good.qtn --serves '2 kg'", 2},
    {"card: serves where nothing is said of it", "card warned.qtn --serves 4", 2},
    {"card: makes what it does not make", "card good.qtn --makes '3 pies'", 2},
    {"card: two sizes at once", "card good.qtn --times 2 --serves 4", 2},
    {"card: a tin without depth", "card tin.qtn --tin '20 x 30 cm, 0 cm deep'", 2},
    {"card: no such tin", "card tin.qtn --tin 'the blue one'", 2},
    {"card: another tin where none is said", "card good.qtn --tin '20 x 30 cm'", 2},
    {"card: from what is not in it", "card tin.qtn --from '300 g lamb'", 2},
    {"card: from no amount", "card tin.qtn --from oats", 2},
    {"card: no such variant", "card good.qtn --variant Long", 2},
    {"card: no such alternative", "card good.qtn --with lentils", 2},
    {"card: several as HTML without a folder", "card good.qtn warned.qtn --as html", 2},
    {"card: out to a file", "card good.qtn --out card.md", 0},
    {"card: out to a folder", "card good.qtn warned.qtn --out cards", 0},
    {"card: out into nowhere", "card good.qtn --out nowhere/card.md", 2},
    {"card: out behind a file", "card good.qtn --out good.qtn/card.md", 2},
    {"card: several out into a file", "card good.qtn warned.qtn --out bad.qtn", 2},
    {"card: output that cannot be written", "card good.qtn > /dev/full", 2},

    {"order: a recipe", "order good.qtn", 0},
    {"order: two of one book", "order good.qtn warned.qtn", 0},
    {"order: from standard input", "order - < good.qtn", 0},
    {"order: for a day", "order good.qtn --for 2026-03-01", 0},
    {"order: for an hour", "order good.qtn --for '2026-03-01 13:00'", 0},
    {"order: for no day", "order good.qtn --for Sunday", 2},
    {"order: in columns", "order good.qtn --as csv", 0},
    {"order: as a calendar", "order good.qtn --as ical", 2},
    {"order: a size", "order good.qtn --serves 6", 0},
    {"order: two sizes", "order good.qtn --serves 6 --times 2", 2},
    {"order: a version", "order good.qtn --variant Short", 0},
    {"order: no such version", "order good.qtn --variant Long", 2},
    {"order: an or line", "order good.qtn --with beans", 0},
    {"order: a folder with one recipe", "order folder", 0},
    {"order: a folder with a kitchen alone", "order kitchen", 2},
    {"order: a kitchen", "order kitchen/kitchen.qtn", 2},
    {"order: a kitchen with errors", "order money/good.qtn", 1},
    {"order: errors", "order bad.qtn", 1},
    {"order: missing", "order missing.qtn", 2},
    {"order: out to a file", "order good.qtn --out order.csv --as csv", 0},
    {"order: out into nowhere", "order good.qtn --out nowhere/order.txt", 2},
    {"order: help", "order --help", 0},

    {"cost: a recipe", "cost good.qtn", 0},
    {"cost: with a food cost", "cost good.qtn --food-cost '28 %'", 0},
    {"cost: a food cost without its sign", "cost good.qtn --food-cost 28", 2},
    {"cost: a food cost of nothing", "cost good.qtn --food-cost '0 %'", 2},
    {"cost: a food cost over all", "cost good.qtn --food-cost '101 %'", 2},
    {"cost: an allowance", "cost good.qtn --allowance '5 %'", 0},
    {"cost: by another day", "cost good.qtn --today 2026-03-01", 0},
    {"cost: by no day", "cost good.qtn --today tomorrow", 2},
    {"cost: as columns", "cost good.qtn --as csv", 2},
    {"cost: two at once", "cost good.qtn warned.qtn", 2},
    {"cost: a folder with one recipe", "cost folder", 0},
    {"cost: a kitchen", "cost kitchen/kitchen.qtn", 2},
    {"cost: a kitchen with errors", "cost money/good.qtn", 1},
    {"cost: errors", "cost bad.qtn", 1},
    {"cost: out to a file", "cost good.qtn --out cost.txt", 0},
    {"cost: help", "cost --help", 0},

    {"ask: a sum", "ask '1 kg in lb'", 0},
    {"ask: a sum of several words", "ask 1 kg in lb", 0},
    {"ask: in somebody's measures", "ask '1 pint in ml' --measures British", 0},
    {"ask: in nobody's measures", "ask '1 pint in ml'", 2},
    {"ask: whose measures is not known", "ask '1 pint in ml' --measures French", 2},
    {"ask: no unit wanted", "ask '1 kg'", 2},
    {"ask: a number with a comma", "ask '1,5 kg in g'", 2},
    {"ask: nothing", "ask", 2},
    {"ask: help", "ask --help", 0},
    {"ask: unknown option", "ask '1 kg in lb' --loud", 2},

    {"explain: a code", "explain Q201", 0},
    {"explain: a code in small letters", "explain q201", 0},
    {"explain: no such code", "explain Q999", 2},
    {"explain: nothing", "explain", 2},
    {"explain: help", "explain --help", 0},
    {"explain: unknown option", "explain Q201 --loud", 2},
};

// A folder with the files that the rows name, and the program's name on the path.
struct Kitchen : tests::Folder {
  Kitchen() {
    file("good.qtn", kGood), file("warned.qtn", kWarned), file("bad.qtn", kBad), file("tin.qtn", kTin), file("folder/good.qtn", kGood);
    file("money/kitchen.qtn", "kitchen: Saltmarsh House\ncurrency: GBP\nprices:\n  peas  2.10 EUR per kg\n"), file("money/good.qtn", kGood);
    file("kitchen/kitchen.qtn", "kitchen: Saltmarsh House\nmeasures: British\n");
    std::filesystem::create_directory(path / "folder.qtn");
    std::filesystem::create_symlink("/proc/self/mem", path / "unreadable.qtn");  // opens, and reads no byte, for root too
    std::filesystem::create_directory(path / "bin");
    std::filesystem::copy_file(QTN_PROGRAM, path / "bin/quartern");
    std::filesystem::permissions(path, std::filesystem::perms(0755));
  }
  tests::Run call(const std::string& rest) const { return run("PATH=$PWD/bin:$PATH; export NO_COLOR=1; quartern " + rest); }
};

std::set<std::string> words_beginning(const std::string& text, const std::string& begin) {
  std::set<std::string> out;
  std::istringstream in(text);
  for (std::string word; in >> word;)
    if (word.rfind(begin, 0) == 0) out.insert(word.substr(0, word.find_first_of(",=")));
  return out;
}

}  // namespace

TEST_CASE("every call ends with the code that is promised, and says why on the right stream") {
  const Kitchen kitchen;
  for (const Row& row : kRows) {
    INFO(std::string(row.what) << ": quartern " << std::string(row.call));
    const std::string call = row.call;
    const tests::Run got = kitchen.call("2> said " + call);  // the shell takes a redirection anywhere
    const std::string said = tests::slurp(kitchen.path / "said");
    CHECK(got.code == row.code);
    CHECK_MESSAGE(got.out.find("quartern: ") == std::string::npos, "a complaint on standard output");
    const bool complained = said.find("quartern: ") != std::string::npos || said.find("--help") != std::string::npos;
    CHECK_MESSAGE(complained == (row.code == 2), said);
    const bool silent = call.find("check good") == 0 || call.find("--out") != std::string::npos || call.find("< good") != std::string::npos ||
                        call.find("check folder") == 0 || call.find("--strict good") != std::string::npos;
    if (row.code == 0 && !silent) CHECK_FALSE(got.out.empty());
    if (row.code == 1) CHECK((got.out + said).find("Q") != std::string::npos);
  }
}

TEST_CASE("the table calls every command with every option, and the document tells of each") {
  const Kitchen kitchen;
  std::string all;
  for (const Row& row : kRows) all += std::string(" ") + row.call + " ";
  const std::string page = tests::slurp(tests::root() / "docs/commands.md");
  int options = 0;
  for (const std::string command : {"check", "read", "card", "day", "ratios", "ask", "explain"}) {
    CHECK(kitchen.call("--help").out.find("  " + command) != std::string::npos);
    CHECK(page.find("\n## " + command + "\n") != std::string::npos);
    for (const std::string& option : words_beginning(kitchen.call(command + " --help").out, "--")) {
      ++options;
      CHECK_MESSAGE(all.find(option) != std::string::npos, command << " " << option);
      CHECK_MESSAGE(page.find(option) != std::string::npos, command << " " << option << " is not in docs/commands.md");
    }
  }
  CHECK(options >= 12);
  std::set<std::string> known;
  std::istringstream help(kitchen.call("--help").out);
  bool commands = false;
  for (std::string line; std::getline(help, line);) {
    if (commands && line.rfind("  ", 0) == 0 && line[2] != ' ') known.insert(line.substr(2, line.find(' ', 2) - 2));
    commands = commands || line.find("ubcommands") != std::string::npos;
  }
  CHECK(known == std::set<std::string>{"allergens", "ask", "card", "check", "cost", "day", "explain", "order", "ratios", "read"});
}

TEST_CASE("a file that this user may not read is told, and so is a folder that he may not write") {
  const Kitchen kitchen;
  std::filesystem::permissions(kitchen.path / "bad.qtn", std::filesystem::perms(0000));
  std::filesystem::permissions(kitchen.path / "folder", std::filesystem::perms(0555));
  // Root may do anything; nobody may not.
  const std::string who = geteuid() == 0 ? "setpriv --reuid=65534 --regid=65534 --clear-groups " : "";
  const auto call = [&](const std::string& rest) { return kitchen.run(who + "$PWD/bin/quartern " + rest + " 2>&1"); };
  for (const char* command : {"check", "read", "card", "day", "ratios"}) {
    const tests::Run got = call(std::string(command) + " bad.qtn");
    CHECK(got.code == 2);
    CHECK_MESSAGE(got.out.find("may not read") != std::string::npos, got.out);
  }
  CHECK(call("check good.qtn").code == 0);
  const tests::Run got = call("card good.qtn --out folder/card.md");
  CHECK(got.code == 2);
  CHECK_MESSAGE(got.out.find("could not be written") != std::string::npos, got.out);
  CHECK_FALSE(std::filesystem::exists(kitchen.path / "folder/card.md"));
}

TEST_CASE("an output file is written whole or not at all") {
  const Kitchen kitchen;
  const auto files = [&] {
    std::set<std::string> out;
    for (const auto& at : std::filesystem::directory_iterator(kitchen.path)) out.insert(at.path().filename().string());
    return out;
  };
  CHECK(kitchen.call("card good.qtn --out card.md").code == 0);
  const std::string old = tests::slurp(kitchen.path / "card.md");
  CHECK(old == kitchen.call("card good.qtn").out);
  const auto there = files();
  const auto untouched = [&](const std::string& why) {
    INFO(why);
    CHECK(tests::slurp(kitchen.path / "card.md") == old);
    CHECK(files() == there);
  };
  CHECK(kitchen.call("card bad.qtn --out card.md 2>&1").code == 1);
  untouched("errors");
  CHECK(kitchen.call("card good.qtn --variant Long --out card.md 2>&1").code == 2);
  untouched("no such version");
  CHECK(kitchen.call("card missing.qtn --out card.md 2>&1").code == 2);
  untouched("missing");
  // No file may grow beyond 512 bytes: the disk is full in the middle of the card.
  const tests::Run full = kitchen.run("ulimit -f 1; trap '' XFSZ; $PWD/bin/quartern card good.qtn --as html --out card.md 2>&1");
  CHECK(full.code == 2);
  CHECK_MESSAGE(full.out.find("could not be written") != std::string::npos, full.out);
  untouched("a full disk");
  // Killed in the middle: the old card stands.
  const tests::Run killed = kitchen.run("sh -c 'ulimit -f 1; exec $PWD/bin/quartern card good.qtn --as html --out card.md' 2>&1");
  CHECK(killed.code != 0);
  CHECK(tests::slurp(kitchen.path / "card.md") == old);
  CHECK(kitchen.call("card good.qtn --times 2 --out card.md").code == 0);
  CHECK(tests::slurp(kitchen.path / "card.md") == kitchen.call("card good.qtn --times 2").out);
}

TEST_CASE("cards of several recipes stay in the folder that was named") {
  const Kitchen kitchen;
  const std::string above = kitchen.path.string();
  CHECK(kitchen.run("cd folder && ../bin/quartern card good.qtn ../warned.qtn '" + above + "/kitchen/../good.qtn' --out ../cards 2>&1").code == 0);
  std::size_t count = 0;
  for (const auto& at : std::filesystem::recursive_directory_iterator(kitchen.path)) {
    if (at.path().extension() != ".md") continue;
    ++count;
    CHECK_MESSAGE(at.path().string().rfind(above + "/cards/", 0) == 0, at.path().string());
  }
  CHECK(count == 3);
}
