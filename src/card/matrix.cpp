#include "card/matrix.hpp"

#include <algorithm>

#include "card/words.hpp"
#include "card/writer.hpp"

namespace qtn {
namespace {

// "cereals containing gluten (wheat)" is of the group before the bracket; the kinds stand in the cell.
std::string_view group_of(std::string_view words) { return words.substr(0, words.find(" (")); }
std::string_view kinds_of(std::string_view words) {
  const std::size_t at = words.find(" (");
  return at == std::string_view::npos ? std::string_view() : words.substr(at + 2, words.size() - at - 3);
}

}  // namespace

Card make_matrix(std::string_view title, std::span<const Recipe* const> recipes, AllergenList list) {
  Card card;
  Writer out(card);
  const auto plain = [&](std::string_view text) { return out.line(text); };
  std::vector<AllergenSheet> sheets;
  AllergenSet any = 0;
  bool unknown = false;
  for (const Recipe* recipe : recipes) {
    sheets.push_back(allergens_of(*recipe));
    any |= sheets.back().contains() | sheets.back().label();
    unknown = unknown || !sheets.back().all_known();
  }
  const Words words = recipes.empty() ? Words{} : words_of(*recipes.front());
  if (!recipes.empty()) card.language = words.language;
  card.title = plain(title);
  card.edition = plain(list == AllergenList::american ? "Allergens, by the list of the United States" : "Allergens, by the list of the EU and the UK");
  Grid grid;
  grid.heads.push_back(plain("Dish"));
  const std::vector<std::string> groups = groups_of(any, list);
  for (const std::string& group : groups) grid.heads.push_back(plain(group_of(group)));
  if (unknown) grid.heads.push_back(plain("Not known, or see the label"));
  for (std::size_t r = 0; r < recipes.size(); ++r) {
    std::vector<Range32> row{plain(recipes[r]->title)};
    const auto sure = groups_of(sheets[r].contains(), list), label = groups_of(sheets[r].label(), list);
    for (const std::string& group : groups) {
      const auto same = [&](const std::string& mine) { return group_of(mine) == group_of(group); };
      const auto yes = std::find_if(sure.begin(), sure.end(), same);
      const bool look = std::any_of(label.begin(), label.end(), same);
      row.push_back(plain(yes != sure.end() ? "yes" + (kinds_of(*yes).empty() ? "" : ": " + std::string(kinds_of(*yes))) : look ? "label" : ""));
    }
    if (unknown) {
      std::string names;
      for (const Bringer& one : sheets[r].bringers)
        if (!one.known || one.see_label) names += (names.empty() ? "" : ", ") + one.name;
      row.push_back(plain(names));
    }
    grid.rows.push_back(std::move(row));
  }
  card.grids.push_back(std::move(grid));
  Section section;
  section.grids = {0, 1};
  card.parts.push_back(section);
  card.notes_heading = plain("Notes");
  card.remarks.push_back({Remark::Kind::note, plain("yes: an ingredient brings it; label: the label of an ingredient decides. A blank says that the list shows none. It is no promise: "
                                                    "kitchens share boards, and your local rules decide what is told to guests.")});
  clean(card);
  return card;
}

}  // namespace qtn
