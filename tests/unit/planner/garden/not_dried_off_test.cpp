#include "planner/garden/not_dried_off.hpp"

#include "tests/support/invented_journal.hpp"

#include <gtest/gtest.h>

#include <string_view>

namespace nightsow::planner {
namespace {

using support::on;

bool is_told(std::string_view taxon, std::string_view sown, std::string_view day) {
  static const species_rules::Catalogue catalogue = species_rules::Catalogue::embedded();
  Records records;
  RecordedSowing sowing = support::invented_sowing();
  sowing.id = 7;
  sowing.taxon = taxon;
  sowing.on = on(sown);
  records.sowings.push_back(sowing);
  const std::vector<NotDriedOff> told = not_dried_off(records, catalogue, on(day));
  EXPECT_TRUE(told.empty() || (told.front().sowing == 7 && !told.front().why.empty()));
  return !told.empty();
}

TEST(NotDriedOff, TellsEvergreensAtAnyAgeAndKindsThatRestBarelyMoistInTheirFirstRest) {
  struct Case {
    std::string_view taxon;
    std::string_view day;
    bool told;
  };

  for (const Case& one : {Case{"Gasteria", "2026-11-01", true},
                          Case{"Gasteria", "2028-11-01", true},
                          Case{"Haemanthus coccineus", "2026-11-01", true},
                          Case{"Haemanthus coccineus", "2028-11-01", false},
                          Case{"Lachenalia", "2026-11-01", false},
                          Case{"Nemesia", "2026-11-01", false},
                          Case{"Notaplant", "2026-11-01", false}}) {
    EXPECT_EQ(is_told(one.taxon, "2026-04-01", one.day), one.told) << one.taxon << ' ' << one.day;
  }
}

} // namespace
} // namespace nightsow::planner
