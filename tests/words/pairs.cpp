// Words of Britain and America: the table itself, published rows (tests/published/words/pairs.tsv), case, number, articles.
#include "words/pairs.hpp"

#include <doctest/doctest.h>

#include <fstream>
#include <map>
#include <set>

#include "words/fold.hpp"

using namespace qtn;

namespace {

std::string said(std::string_view text, Side to, WordPlace place = WordPlace::prose, bool stated = true) {
  std::vector<PlaceOfPair> found = WordPairs::standard().find(text, {to, place, stated});
  for (PlaceOfPair& one : found)
    if (!one.pair->note.empty()) one.instead = both_words(text.substr(one.begin, one.end - one.begin), one.instead);
  return with_words(text, found);
}
std::string american(std::string_view text, WordPlace place = WordPlace::prose) { return said(text, Side::american, place); }
std::string british(std::string_view text, WordPlace place = WordPlace::prose) { return said(text, Side::british, place); }

std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells;
  for (std::size_t at = 0; at <= line.size();) {
    const std::size_t end = std::min(line.find('\t', at), line.size());
    cells.push_back(line.substr(at, end - at));
    at = end + 1;
  }
  return cells;
}

}  // namespace

TEST_CASE("published pairs") {
  const std::map<std::string, WordPlace> places{{"list", WordPlace::name}, {"prose", WordPlace::prose}, {"verb", WordPlace::verb}, {"count", WordPlace::count}};
  std::ifstream in(QTN_SOURCE_DIR "/tests/published/words/pairs.tsv");
  std::set<std::string> ids;
  int rows = 0, notes = 0, traps = 0;
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] == '#') continue;
    INFO(line);
    const auto cells = cells_of(line);
    REQUIRE(cells.size() >= 4);
    CHECK(ids.insert(cells[0]).second);
    CHECK(!cells[3].empty());
    const std::size_t blank = cells[1].find(' '), colon = cells[1].find(": ");
    REQUIRE(colon != std::string::npos);
    const std::string side = cells[1].substr(blank + 1, colon - blank - 1), text = cells[1].substr(colon + 2);
    REQUIRE((side == "American" || side == "British"));
    const Side to = side == "American" ? Side::american : Side::british;
    const WordPlace place = places.at(cells[1].substr(0, blank));
    CHECK(said(text, to, place) == cells[2]);
    const std::string remark = cells.size() > 4 ? cells[4] : std::string();
    bool noted = false;
    for (const PlaceOfPair& one : WordPairs::standard().find(text, {to, place})) noted = noted || !one.pair->note.empty();
    if (remark.starts_with("NOTE")) {
      CHECK(noted);
      ++notes;
    }
    if (remark.starts_with("TRAP")) ++traps;
    ++rows;
  }
  CHECK(rows >= 150);
  CHECK(notes >= 20);
  CHECK(traps >= 20);
}

TEST_CASE("the table: at least 120 pairs, each with its source, none twice, and a note or a reason where there must be one") {
  std::set<std::string> seen;
  int changing = 0;
  for (const WordPair& pair : WordPairs::standard().all()) {
    INFO(pair.british << " | " << pair.american);
    CHECK(!pair.source.empty());
    CHECK(!pair.british.empty());
    CHECK(!pair.american.empty());
    CHECK((pair.to_british || pair.to_american));
    CHECK(seen.insert(std::string(pair.british) + "|" + std::string(pair.american) + (pair.kind == PairKind::verb ? "v" : pair.kind == PairKind::count ? "c" : "")).second);
    changing += pair.changes();
    if (!pair.note.empty()) CHECK((pair.note.back() == '.' && pair.note.front() >= 'A' && pair.note.front() <= 'Z'));
  }
  CHECK(changing >= 120);
}

// What changes without a word must come back as what it was, or at least stay what it became.
TEST_CASE("there and back") {
  for (const WordPair& pair : WordPairs::standard().all()) {
    if (!pair.changes() || !pair.note.empty() || pair.kind == PairKind::count || pair.with_tin) continue;
    const WordPlace place = pair.kind == PairKind::verb ? WordPlace::verb : pair.kind == PairKind::equipment || pair.kind == PairKind::spelling ? WordPlace::prose : WordPlace::name;
    INFO(pair.british << " | " << pair.american);
    if (pair.to_american && pair.to_british) {
      const std::string there = american(pair.said(Side::british), place);
      CHECK(there != pair.said(Side::british));
      CHECK(american(british(there, place), place) == there);
    }
    if (pair.to_american && pair.kind != PairKind::verb) {  // an American grill is not a British one
      const std::string there = american(pair.said(Side::british), place);
      CHECK(american(there, place) == there);
    }
  }
}

TEST_CASE("case and number are kept, and whole words only") {
  CHECK(american("Aubergines, and aubergine") == "Eggplants, and eggplant");
  CHECK(american("Spring Onions") == "Scallions");
  CHECK(american("Cook the French beans. French beans are best.") == "Cook the green beans. Green beans are best.");
  CHECK(american("courgettey") == "courgettey");
  CHECK(american("the swede-and-carrot mash") == "the swede-and-carrot mash");
  CHECK(american("spring, onions") == "spring, onions");
  CHECK(american("spring\n  onions") == "scallions");
  CHECK(american("icing sugar; ICING SUGAR") == "confectioners' sugar; CONFECTIONERS' SUGAR");
  CHECK(british("confectioners' sugar and confectioners’ sugar") == "icing sugar and icing sugar");
  CHECK(american("coloured, colourless, discoloured") == "colored, colorless, discoloured");
  CHECK(american("Knocking back, knocked back") == "Punching down, punched down");
}

TEST_CASE("an article follows its word") {
  CHECK(american("an aubergine, a courgette, A spring onion") == "an eggplant, a zucchini, A scallion");
  CHECK(british("a zucchini. An eggplant") == "a courgette. An aubergine");
  CHECK(british("a blood sausage, an arugula leaf") == "a black pudding, a rocket leaf");
  CHECK(american("a rocket leaf, banana rocket") == "an arugula leaf, banana arugula");
}

TEST_CASE("the longest words go first, and what does not change keeps its shorter words") {
  CHECK(american("beef mince and mince pies", WordPlace::name) == "ground beef and mince pies");
  CHECK(american("red pepper", WordPlace::name) == "red bell pepper");
  CHECK(american("red pepper") == "red pepper");
  CHECK(american("slow cooker and cooker") == "slow cooker and stove");
  CHECK(british("red pepper flakes", WordPlace::name) == "chilli flakes");
  CHECK(american("red pepper flakes", WordPlace::name) == "red pepper flakes");
  CHECK(american("apple cider vinegar", WordPlace::name) == "apple cider vinegar");
  CHECK(american("king prawns") == "jumbo shrimp");
  CHECK(american("Chips", WordPlace::name) == "French fries");
  CHECK(american("oven chips", WordPlace::name) == "oven chips");
}

TEST_CASE("of a page that does not say whose words it has only what nobody doubts changes") {
  CHECK(said("aubergine and cornflour", Side::american, WordPlace::name, false) == "eggplant and cornstarch");
  CHECK(said("prawns", Side::american, WordPlace::name, false) == "prawns");
  CHECK(said("shrimp", Side::british, WordPlace::name, false) == "shrimp");
  CHECK(said("red pepper", Side::american, WordPlace::name, false) == "red pepper");
}

TEST_CASE("a tin is a pan only in a recipe that has one, and never one of food") {
  const auto with_tin = [](std::string_view text) {
    WordsRead how;
    how.has_tin = true;
    return with_words(text, WordPairs::standard().find(text, how));
  };
  CHECK(with_tin("Butter the tin. Open the tin of beans.") == "Butter the pan. Open the tin of beans.");
  CHECK(american("Butter the tin.") == "Butter the tin.");
}

TEST_CASE("both words, what they share said once") {
  CHECK(both_words("minced beef", "ground beef") == "minced (ground) beef");
  CHECK(both_words("aubergines", "eggplants") == "aubergines (eggplants)");
  CHECK(both_words("cake tin", "cake pan") == "cake tin (cake pan)");
  CHECK(both_words("best end of neck", "rack of lamb") == "best end of neck (rack of lamb)");
  CHECK(both_words("fan oven", "convection oven") == "fan (convection) oven");
}

TEST_CASE("pairs of a house") {
  const WordPairs house({[] {
    WordPair pair{"chestnut mushroom", "brown cap / brown caps"};
    pair.checked = pair.prose = pair.sure = true;
    return pair;
  }()});
  const auto in_house = [&](std::string_view text) { return with_words(text, house.find(text, {})); };
  CHECK(in_house("Chestnut mushrooms; a chestnut mushroom") == "Brown caps; a brown cap");
}
