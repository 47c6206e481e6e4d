// Files that use files (semantics part 8, Uses), from texts in memory.
#include "book/book.hpp"

#include <doctest/doctest.h>

#include "book/path.hpp"

using namespace qtn;

namespace {

struct Shelf {
  std::map<std::string, std::string> files;
  std::map<std::string, int> reads;
  Book book{[this](const std::string& path) -> std::optional<std::string> {
    ++reads[path];
    const auto found = files.find(path);
    if (found == files.end()) return std::nullopt;
    return found->second;
  }};

  std::string codes(const std::string& path) {
    const Checked* const checked = book.file(path);
    if (checked == nullptr) return "no file";
    std::string out;
    for (const Diagnostic& one : checked->report.list()) out += (out.empty() ? "" : " ") + std::string(row(one.code).name);
    return out;
  }
};

const std::string kPaste =
    "recipe: Shortcrust\nmakes: 300 g\ntake:\n  200 g flour\n  100 g butter\nmethod:\n  Rub [the butter] into [the flour].\n";
const std::string kTart = "take:\n  300 g [Shortcrust]\n  200 g leeks\nmethod:\n  Line the tin with [the Shortcrust], fill with [the leeks] and [bake 30 min at 180 °C].\n";

std::string tart(const std::string& use) { return "recipe: Tart\noven: fan\n" + use + kTart; }

}  // namespace

TEST_CASE("paths from a file") {
  CHECK(resolve_path("tart.qtn", "paste.qtn") == "paste.qtn");
  CHECK(resolve_path("tarts/leek.qtn", "paste.qtn") == "tarts/paste.qtn");
  CHECK(resolve_path("tarts/leek.qtn", "../pastry/paste.qtn") == "pastry/paste.qtn");
  CHECK(resolve_path("a/b/c.qtn", "./.././d//e.qtn") == "a/d/e.qtn");
  CHECK_FALSE(resolve_path("tart.qtn", "../paste.qtn"));
  CHECK_FALSE(resolve_path("a/tart.qtn", "../../paste.qtn"));
  CHECK_FALSE(resolve_path("a/tart.qtn", ".."));
  for (std::string_view path : {"", "/etc/paste.qtn", "a\\b.qtn", "C:paste.qtn", "pastry/", "a\tb"}) CHECK_FALSE(is_plain_path(path));
  CHECK(path_from("tarts/leek.qtn", "pastry/paste.qtn") == "../pastry/paste.qtn");
  CHECK(path_from("leek.qtn", "pastry/paste.qtn") == "pastry/paste.qtn");
  CHECK(path_from("a/leek.qtn", "a/paste.qtn") == "paste.qtn");
}

TEST_CASE("a used recipe is read once, however many use it") {
  Shelf shelf;
  shelf.files["pastry/paste.qtn"] = kPaste;
  shelf.files["tarts/a.qtn"] = tart("use: Shortcrust from ../pastry/paste.qtn\n");
  shelf.files["tarts/b.qtn"] = tart("use: Shortcrust from ../pastry/../pastry/paste.qtn\n");
  CHECK(shelf.codes("tarts/a.qtn") == "");
  CHECK(shelf.codes("tarts/b.qtn") == "");
  CHECK(shelf.reads["pastry/paste.qtn"] == 1);
  const Recipe& a = *shelf.book.file("tarts/a.qtn")->recipe;
  REQUIRE(a.uses.size() == 1);
  CHECK(a.uses[0].recipe == shelf.book.file("pastry/paste.qtn")->recipe.get());
  CHECK(shelf.book.file("tarts/c.qtn") == nullptr);
}

TEST_CASE("a use line that leads nowhere") {
  const auto codes = [](const std::string& path) {
    Shelf shelf;
    shelf.files["paste.qtn"] = kPaste;
    shelf.files["kitchen.qtn"] = "kitchen: Saltmarsh House\n";
    shelf.files["bad.qtn"] = "recipe: Shortcrust\nmakse: 300 g\n";
    shelf.files["tart.qtn"] = tart("use: Shortcrust from " + path + "\n");
    return shelf.codes("tart.qtn");
  };
  CHECK(codes("paste.qtn") == "");
  CHECK(codes("nothing.qtn") == "use_file_missing");
  CHECK(codes("../paste.qtn") == "use_outside_book");
  CHECK(codes("/paste.qtn") == "use_path_form");
  CHECK(codes("pastry\\paste.qtn") == "use_path_form");
  CHECK(codes("kitchen.qtn") == "use_of_kitchen");
  CHECK(codes("bad.qtn") == "use_file_has_errors");
  CHECK(codes("tart.qtn") == "use_ring");
}

TEST_CASE("slips in a path are mended") {
  Shelf shelf;
  shelf.files["pastry/paste.qtn"] = kPaste;
  shelf.files["tarts/a.qtn"] = tart("use: Shortcrust from pastry/paste.qtn\n");
  shelf.files["tarts/b.qtn"] = tart("use: Shortcrust from ../pastry/paste\n");
  shelf.files["tarts/c.qtn"] = tart("use: Shortcrust from ..\\pastry\\paste.qtn\n");
  for (const char* path : {"tarts/a.qtn", "tarts/b.qtn", "tarts/c.qtn"}) {
    const Report& report = shelf.book.file(path)->report;
    REQUIRE(report.list().size() == 1);
    REQUIRE(report.list()[0].fixes.size() == 1);
    CHECK(report.list()[0].fixes[0].text == "../pastry/paste.qtn");
  }
}

TEST_CASE("names that a file does not have") {
  Shelf shelf;
  shelf.files["paste.qtn"] = kPaste;
  shelf.files["tart.qtn"] = tart("use: Shortcrusd from paste.qtn as Shortcrust\n");
  const Report& report = shelf.book.file("tart.qtn")->report;
  REQUIRE(report.list().size() == 1);
  CHECK(report.list()[0].code == Code::use_name_missing);
  REQUIRE(report.list()[0].fixes.size() == 1);
  CHECK(report.list()[0].fixes[0].text == "Shortcrust");
}

TEST_CASE("a part of another recipe, under another name") {
  Shelf shelf;
  shelf.files["pie.qtn"] = "recipe: Pie\npart: Shortcrust\n" + kPaste.substr(kPaste.find("makes")) +
                           "part: Pie\ntake:\n  500 g beef\nmethod:\n  Wrap [the beef] in [the Shortcrust] and [bake 1 h].\n";
  shelf.files["tart.qtn"] = "recipe: Tart\nuse: Shortcrust from pie.qtn as Paste\ntake:\n  300 g [Paste]\nmethod:\n  Bake [the Paste] [bake 10 min].\n";
  CHECK(shelf.codes("pie.qtn") == "");
  CHECK(shelf.codes("tart.qtn") == "");
  CHECK(shelf.book.file("tart.qtn")->recipe->uses[0].part == 0);
}

namespace {

// A recipe that needs others, each in the file of its own name.
std::string needing(const std::string& name, const std::vector<std::string>& others) {
  std::string uses, list, method;
  for (const std::string& other : others) {
    uses += "use: " + other + " from " + other + ".qtn\n";
    list += "  100 g [" + other + "]\n";
    method += "  Mix [the " + other + "].\n";
  }
  return "recipe: " + name + "\nmakes: " + std::to_string(100 * others.size()) + " g\n" + uses + "take:\n" + list + "method:\n" + method;
}

}  // namespace

TEST_CASE("a ring is told in every file of it, whole, and those outside it hear of errors only") {
  Shelf shelf;
  shelf.files["One.qtn"] = needing("One", {"Two"});
  shelf.files["Two.qtn"] = needing("Two", {"Three"});
  shelf.files["Three.qtn"] = needing("Three", {"Two"});
  CHECK(shelf.codes("One.qtn") == "use_file_has_errors");
  CHECK(shelf.codes("Two.qtn") == "use_ring");
  CHECK(shelf.codes("Three.qtn") == "use_ring");
  const auto told = [&](const char* path, const char* chain) {
    return shelf.book.file(path)->report.list()[0].message == "These recipes each need the other first: " + std::string(chain) + ".";
  };
  CHECK(told("Two.qtn", "Two.qtn → Three.qtn → Two.qtn"));
  CHECK(told("Three.qtn", "Three.qtn → Two.qtn → Three.qtn"));
}

TEST_CASE("rings that cross one another are told in every file, whichever is opened first") {
  const std::map<std::string, std::vector<std::string>> takes{
      {"Root", {"Tee", "Ex"}}, {"Tee", {"See", "Root"}}, {"See", {"Tee"}}, {"Ex", {"See", "Plain"}}, {"Plain", {}}};
  for (const auto& start : takes) {
    const std::string& first = start.first;
    Shelf shelf;
    for (const auto& [name, others] : takes) shelf.files[name + ".qtn"] = needing(name, others);
    shelf.files["Plain.qtn"] = "recipe: Plain\nmakes: 100 g\ntake:\n  100 g flour\nmethod:\n  Sift [the flour].\n";
    shelf.codes(first + ".qtn");
    CAPTURE(first);
    CHECK(shelf.codes("Root.qtn") == "use_ring use_ring");
    CHECK(shelf.codes("Tee.qtn") == "use_ring use_ring");
    CHECK(shelf.codes("See.qtn") == "use_ring");
    CHECK(shelf.codes("Ex.qtn") == "use_ring");
    CHECK(shelf.codes("Plain.qtn") == "");
  }
}

TEST_CASE("a long ring is told short, in every file") {
  Shelf shelf;
  constexpr int kFiles = 3000;
  for (int i = 0; i < kFiles; ++i)
    shelf.files["r" + std::to_string(i) + ".qtn"] = needing("r" + std::to_string(i), {"r" + std::to_string((i + 1) % kFiles)});
  for (int i = 0; i < kFiles; i += 500) {
    const std::string path = "r" + std::to_string(i) + ".qtn";
    CHECK(shelf.codes(path) == "use_ring");
    const std::string& message = shelf.book.file(path)->report.list()[0].message;
    CHECK_MESSAGE(message.find(path + " → ") != std::string::npos, message);
    CHECK_MESSAGE(message.ends_with(" → " + path + "."), message);
    CHECK(message.size() < 200);
  }
}

TEST_CASE("a chain may be as long as it likes") {
  Shelf shelf;
  constexpr int kFiles = 20000;
  for (int i = 0; i < kFiles; ++i) {
    const std::string next = std::to_string(i + 1);
    shelf.files["r" + std::to_string(i) + ".qtn"] =
        "recipe: R" + std::to_string(i) + "\nmakes: 100 g\n" +
        (i + 1 == kFiles ? "take:\n  100 g flour\nmethod:\n  Sift [the flour].\n"
                         : "use: R" + next + " from r" + next + ".qtn\ntake:\n  100 g [R" + next + "]\nmethod:\n  Sift [the R" + next + "].\n");
  }
  CHECK(shelf.codes("r0.qtn") == "");
}

TEST_CASE("the kitchen holds for every file") {
  Shelf shelf;
  shelf.files["kitchen.qtn"] = "kitchen: Saltmarsh House\nmeasures: British\nlaw: UK\n";
  shelf.files["soup.qtn"] = "recipe: Soup\ntake:\n  1 pint stock\nmethod:\n  Warm [the stock] [5 min].\n";
  REQUIRE(shelf.book.set_kitchen("kitchen.qtn"));
  const Checked* const soup = shelf.book.file("soup.qtn");
  CHECK(shelf.codes("soup.qtn") == "");
  CHECK(soup->recipe->dialect == Dialect::british);
  CHECK(soup->kitchen->law == "UK");
  CHECK(shelf.book.file("kitchen.qtn")->kitchen == soup->kitchen);
  CHECK(shelf.reads["kitchen.qtn"] == 1);
  CHECK(shelf.book.set_kitchen("soup.qtn")->kind == FileKind::recipe);
  CHECK(shelf.book.file("kitchen.qtn")->recipe == nullptr);
}

TEST_CASE("two kitchens are told at both, once, and in one folder by a code of their own") {
  for (const std::string other : {"annexe/rules.qtn", "rules.qtn"}) {
    const std::string code = other == "rules.qtn" ? "two_kitchens_in_folder" : "two_kitchens";
    Shelf shelf;
    shelf.files["kitchen.qtn"] = "kitchen: Saltmarsh House\n";
    shelf.files[other] = "kitchen: The Annexe\n";
    shelf.book.set_kitchen("kitchen.qtn");
    shelf.book.file(other);
    for (int i = 0; i < 2; ++i) shelf.book.two_kitchens("kitchen.qtn", other);
    CHECK(shelf.codes("kitchen.qtn") == code);
    CHECK(shelf.codes(other) == code);
    CHECK(shelf.book.file(other)->report.list()[0].labels[0].file == "kitchen.qtn");
  }
}

TEST_CASE("a text that is no file uses the files of the book") {
  Shelf shelf;
  shelf.files["paste.qtn"] = kPaste;
  const Checked& first = shelf.book.text("standard input", tart("use: Shortcrust from paste.qtn\n"));
  CHECK(first.report.list().empty());
  CHECK(shelf.book.text("standard input", "recipe: Toast\n").recipe->title == "Toast");
  CHECK(first.recipe->title == "Tart");
  CHECK(shelf.book.text("standard input", "kitchen: Saltmarsh House\n").kitchen->name == "Saltmarsh House");
}

TEST_CASE("menus are files of the book too") {
  Shelf shelf;
  shelf.files["paste.qtn"] = kPaste;
  shelf.files["menu.qtn"] = "menu: Supper\nuse: Shortcrust from paste.qtn\ntake:\n  600 g [Shortcrust]\n";
  CHECK(shelf.codes("menu.qtn") == "");
  CHECK(shelf.book.file("menu.qtn")->kind == FileKind::menu);
}

// Part 11: full names come first, whatever words of the language stand in them.
TEST_CASE("a dish is found by its whole name") {
  for (const std::string name : {"Pot of white beans", "Fish, chips and peas", "Ham and eggs", "Soup for Monday", "Leg at its best", "Beans per se", "Half and half"}) {
    Shelf shelf;
    shelf.files["dish.qtn"] = "recipe: " + name + "\nserves: 6\nmakes: 900 g\ntake:\n  900 g white beans\nmethod:\n  Serve [the white beans].\n";
    for (const std::string amount : {"6 portions", "6 portions of", "900 g", "900 g of"}) {
      const std::string path = "menu " + amount + ".qtn";
      shelf.files[path] = "menu: Supper\nserves: 6\nuse: " + name + " from dish.qtn\ntake:\n  " + amount + " [" + name + "], at 19:00\n";
      CHECK_MESSAGE(shelf.codes(path) == "", amount << " [" << name << "]");
      const Recipe& menu = *shelf.book.file(path)->recipe;
      REQUIRE(menu.lines.size() == 1);
      CHECK_MESSAGE(menu.lines[0].target.kind == TargetKind::use, amount << " [" << name << "]");
    }
  }
}

TEST_CASE("a book whose files count different ounces is told so once, with the files") {
  Shelf shelf;
  const auto weigh = [](const std::string& pair) { return "recipe: Loaf\ntake:\n  " + pair + " flour\nmethod:\n  Mix [the flour].\n"; };
  shelf.files["a.qtn"] = weigh("225 g (8 oz)");
  shelf.files["b.qtn"] = weigh("235 g (8 oz)");
  shelf.files["c.qtn"] = weigh("450 g (1 lb)");
  shelf.files["d.qtn"] = weigh("355 g (12 oz)");
  shelf.files["e.qtn"] = weigh("30 g (1 oz)");  // fits both
  const std::vector<std::string> all{"a.qtn", "b.qtn", "c.qtn", "d.qtn", "e.qtn", "gone.qtn"};
  for (const std::string& path : all) shelf.book.file(path);
  shelf.book.compare_ounces(all);
  CHECK(shelf.codes("a.qtn") == "");
  CHECK(shelf.codes("b.qtn") == "mixed_ounces");
  for (const char* path : {"c.qtn", "d.qtn", "e.qtn"}) CHECK(shelf.codes(path) == "");
  const Diagnostic& problem = shelf.book.file("b.qtn")->report.list()[0];
  CHECK(problem.message == "This file counts 30 g to the ounce; most of the book counts 28.35 g.");
  REQUIRE(problem.labels.size() == 3);
  CHECK(problem.labels[0].file == "a.qtn");
  CHECK(problem.labels[2].file == "d.qtn");
  CHECK(problem.labels[2].text == "30 g to the ounce here");

  Shelf even;
  even.files["a.qtn"] = weigh("225 g (8 oz)");
  even.files["c.qtn"] = weigh("450 g (1 lb)");
  for (const char* path : {"a.qtn", "c.qtn"}) even.book.file(path);
  even.book.compare_ounces({"a.qtn", "c.qtn"});
  CHECK(even.codes("a.qtn") == "");
  CHECK(even.codes("c.qtn") == "");
}

TEST_CASE("each version is checked as a recipe of its own, and told where it is one") {
  Shelf shelf;
  const std::string head = "recipe: Fry\ntake:\n  500 g tofu\n", method = "  20 ml sunflower oil\nmethod:\n  Fry [the tofu] in [the oil], [fry 4 min].\n";
  shelf.files["plain.qtn"] = head + method;
  shelf.files["or.qtn"] = head + "  or 500 g chicken thighs\n" + method;
  shelf.files["variant.qtn"] = head + method + "\nvariant: Meat\n  tofu  500 g -> 400 g minced beef\n";
  shelf.files["sound.qtn"] = head + "  or 500 g halloumi\n" + method;
  CHECK(shelf.codes("plain.qtn") == "");
  CHECK(shelf.codes("or.qtn") == "no_core_reading");
  CHECK(shelf.codes("variant.qtn") == "no_core_reading");
  CHECK(shelf.codes("sound.qtn") == "");
  const Diagnostic& said = shelf.book.file("variant.qtn")->report.list().front();
  CHECK(said.labels.back().text == "in this version");
  CHECK(said.fixes.empty());
}
