#include <doctest/doctest.h>

#include "safety/figures.hpp"

using namespace qtn;

TEST_CASE("every kind of raw meat and fish has a core figure under every law") {
  for (const Law law : {Law::UK, Law::EU, Law::US})
    for (const Hazard kind : {Hazard::poultry, Hazard::minced, Hazard::offal, Hazard::beef, Hazard::pork, Hazard::bacon, Hazard::fish, Hazard::shellfish, Hazard::molluscs,
                              Hazard::egg, Hazard::cooked}) {
      const CoreRule* const rule = core_rule(law, kind);
      REQUIRE_MESSAGE(rule != nullptr, name_of(kind));
      CHECK_FALSE(rule->source.empty());
      CHECK_FALSE(rule->write.empty());
    }
}
