// Allergens of a whole recipe: what its list brings, through parts and the recipes that it uses, with the way it came. What the
// table does not know is listed as not known, never as free.
#pragma once
#include <string>
#include <vector>

#include "larder/allergens.hpp"
#include "recipe/recipe.hpp"

namespace qtn {

struct Bringer {
  AllergenSet contains = 0, label = 0;
  AllergenSet absent = 0;  // its name promises that they are not in it
  bool known = true;       // false: the table does not know it
  bool see_label = false;
  bool instead = false;    // an `or` line: only where it is taken
  bool optional = false;
  std::string name;        // "celery"
  std::string way;         // "Chicken stock"; empty where it stands on the recipe's own list
  Span place;              // in the file at hand: its line, or the line that brings in what has it
};

struct AllergenSheet {
  std::vector<Bringer> bringers;  // those that bring something, or are not known; in the order of the page
  AllergenSet contains() const;   // by the lines that are not alternatives
  AllergenSet label() const;      // of those, what only a label can tell, and nothing else brings for certain
  bool all_known() const;
};
AllergenSheet allergens_of(const Recipe& recipe);

enum class AllergenList : std::uint8_t { european, american };
// The groups of a set, each once, as that list calls them: "cereals containing gluten (wheat, rye)".
std::vector<std::string> groups_of(AllergenSet set, AllergenList list);

// `without:` against the list: an ingredient that brings it is an error, with both places; one of which nobody can say, a warning.
void check_promises(const Recipe& recipe, Report& report);
// The keys of one such word, `milk`; what no list knows is reported where a report is given.
AllergenSet promised(const Recipe& recipe, Span word, Report* report);

// "3 without gluten" of a menu's guests, against its dishes.
struct GuestNeed {
  std::string who;          // "3 without gluten"
  Span place;
  AllergenSet avoids = 0;
  bool more = false;        // "1 vegan": more than the lists of allergens can tell, so no dish is a plain yes
  std::vector<std::string> can, label, open, cannot;  // dishes; `open`: nobody can say
};
std::vector<GuestNeed> guests_of(const Recipe& menu, Report* report);

}  // namespace qtn
