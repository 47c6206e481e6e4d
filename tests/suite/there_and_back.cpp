// Words change no meaning: the names of every example file put into the other country's words, and back again, check to
// the same recipe. So does a book whose vocabulary is all of the pair table.
#include <doctest/doctest.h>

#include <algorithm>

#include "card/wording.hpp"
#include "suite/book.hpp"

using namespace qtn;

namespace {

struct Edit {
  Span span;
  std::string text;
};

// The names of the list and every name that means one of them, in the words of `to`.
std::string reworded(const Recipe& recipe, Side to) {
  std::vector<Edit> edits;
  WordsRead how;
  how.to = to, how.place = WordPlace::name;
  const auto name = [&](Span span, const Target& target) {
    const bool line = target.kind == TargetKind::line && recipe.lines[target.index].target.kind == TargetKind::none;
    if (line && !span.empty()) edits.push_back({span, name_in(recipe.slice(span), recipe.lines[target.index].name, how)});
  };
  for (Index i = 0; i < recipe.lines.size(); ++i)
    if (recipe.lines[i].target.kind == TargetKind::none) name(recipe.lines[i].name_span, {TargetKind::line, i});
  for (const Mention& mention : recipe.mentions) name(mention.span, mention.target);
  for (const Target& member : recipe.set_members) name(member.span, member);
  const auto batch = [&](const std::optional<Batch>& most) {
    if (!most || most->thing.empty()) return;
    const auto begin = static_cast<std::uint32_t>(most->thing.data() - recipe.text.data());
    edits.push_back({{begin, begin + static_cast<std::uint32_t>(most->thing.size())}, name_in(most->thing, most->thing, how)});
  };
  batch(recipe.batch);
  for (const Part& part : recipe.parts) batch(part.batch);
  for (const auto* logs : {&recipe.trials, &recipe.variants})
    for (const Log& log : *logs)
      for (const Change& change : log.changes) name(change.name_span, change.target);
  std::sort(edits.begin(), edits.end(), [](const Edit& a, const Edit& b) { return a.span.begin < b.span.begin; });
  std::string out;
  std::uint32_t from = 0;
  for (const Edit& edit : edits) {
    if (edit.span.begin < from) continue;
    out.append(recipe.slice({from, edit.span.begin})).append(edit.text);
    from = edit.span.end;
  }
  return out.append(recipe.text.substr(from));
}

void same(const Recipe& a, const Recipe& b) {
  REQUIRE(a.lines.size() == b.lines.size());
  REQUIRE(a.mentions.size() == b.mentions.size());
  REQUIRE(a.clauses.size() == b.clauses.size());
  for (std::size_t i = 0; i < a.lines.size(); ++i) {
    INFO(a.lines[i].name << " / " << b.lines[i].name);
    const TakeLine &x = a.lines[i], &y = b.lines[i];
    CHECK(x.food == y.food);
    CHECK(x.amount == y.amount);
    CHECK(x.basis == y.basis);
    CHECK((x.target.kind == y.target.kind && x.target.index == y.target.index));
  }
  // In the order of the page: a name with an "of" in it is understood later than others.
  const auto ordered = [](std::vector<Mention> mentions) {
    std::sort(mentions.begin(), mentions.end(), [](const Mention& x, const Mention& y) { return x.span.begin < y.span.begin; });
    return mentions;
  };
  const std::vector<Mention> mine = ordered(a.mentions), theirs = ordered(b.mentions);
  for (std::size_t i = 0; i < mine.size(); ++i) {
    const Mention &x = mine[i], &y = theirs[i];
    INFO(a.slice(x.span) << " / " << b.slice(y.span));
    CHECK((x.target.kind == y.target.kind && x.target.index == y.target.index && x.target.part == y.target.part));
    CHECK((x.taking == y.taking && x.part_low == y.part_low && x.part_high == y.part_high && x.whole == y.whole));
  }
  for (std::size_t i = 0; i < a.clauses.size(); ++i) CHECK((a.clauses[i].kind == b.clauses[i].kind && a.clauses[i].verb == b.clauses[i].verb));
  for (std::size_t i = 0; i < a.parts.size(); ++i) CHECK((a.parts[i].weight_low == b.parts[i].weight_low && a.parts[i].weight_high == b.parts[i].weight_high));
}

// Every file of the book in the words of a side.
std::map<std::string, std::string> all_in(Book& book, Side to) {
  std::map<std::string, std::string> out;
  for (const std::string& path : tests::example_files()) out[path] = reworded(*book.file(path)->recipe, to);
  return out;
}

std::string codes(const Report& report) {
  std::string out;
  for (const Diagnostic& one : report.list()) out += std::string(row(one.code).code) + " ";
  return out;
}

}  // namespace

TEST_CASE("the example book there and back: the same foods, amounts and mentions, and nothing to complain of") {
  Book own = tests::example_book();
  const auto american = all_in(own, Side::american);
  Book abroad = tests::example_book(american);
  Book back = tests::example_book(all_in(abroad, Side::british));
  int changed = 0;
  for (const auto& page : american) {
    const std::string& path = page.first;
    INFO(path);
    const Recipe& written = *own.file(path)->recipe;
    changed += page.second != written.text;
    for (Book* book : {&abroad, &back}) {
      const Checked& entry = *book->file(path);
      CHECK(codes(entry.report) == "");
      same(written, *entry.recipe);
    }
    CHECK(page.second.find("self-rising") == std::string::npos);  // what is not the same thing changes nothing without a word
  }
  CHECK(changed >= 12);
}

TEST_CASE("every food of the pair table there and back, one small recipe each") {
  Book book = tests::example_book();
  int pairs = 0, changed = 0;
  for (const WordPair& pair : WordPairs::standard().all()) {
    const bool food = pair.kind == PairKind::ingredient || pair.kind == PairKind::cut || pair.kind == PairKind::dairy;
    if (!food || !pair.changes()) continue;
    const std::string name(pair.said(Side::british)), number = std::to_string(pairs++);
    INFO(name);
    const Checked& own = book.text("own" + number, "recipe: All\ntake:\n  100 g " + name + "\n  50 g water\nmethod:\n  Put [the " + name + "] into [the water], [boil 10 min] and [simmer 2 h].\n");
    REQUIRE(codes(own.report) == "");
    const Checked& abroad = book.text("abroad" + number, reworded(*own.recipe, Side::american));
    CHECK(codes(abroad.report) == "");
    same(*own.recipe, *abroad.recipe);
    const Checked& back = book.text("back" + number, reworded(*abroad.recipe, Side::british));
    CHECK(codes(back.report) == "");
    same(*own.recipe, *back.recipe);
    changed += abroad.recipe->text != own.recipe->text;
    CHECK((pair.note.empty() || abroad.recipe->text == own.recipe->text));
  }
  CHECK(pairs >= 120);
  CHECK(changed >= 90);
}
