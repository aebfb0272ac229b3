#include "planner/garden/own_rules.hpp"

#include "tests/support/temporary_folder.hpp"

#include <gtest/gtest.h>

#include <filesystem>
#include <string>

namespace nightsow::planner {
namespace {

namespace fs = std::filesystem;
using support::TemporaryFolder;

TEST(OwnRules, AFolderOrALinkThatLeadsNowhereIsSaidAndTheOtherFilesHold) {
  const TemporaryFolder garden;
  garden.write("rules/mine.json",
               R"({"schema": 1, "family": "Iridaceae", "genera": [{"genus": "Moraea", "rule":
                   {"seeds_per_pot": {"value": 3, "low": 3, "high": 3, "evidence": "grower"}}}]})");
  fs::create_directories(garden.path() / "rules/folder.json");
  fs::create_symlink("nowhere.json", garden.path() / "rules/link.json");

  const RulesInGarden rules = rules_in_garden(garden.path());
  ASSERT_EQ(rules.problems.size(), 2U);
  EXPECT_EQ(rules.problems[0].where, "rules/folder.json");
  EXPECT_EQ(rules.problems[1].where, "rules/link.json");
  for (const Problem& problem : rules.problems) {
    EXPECT_EQ(problem.severity, Severity::warning);
    EXPECT_NE(problem.remedy.find("left aside"), std::string::npos) << problem.remedy;
  }
  const auto moraea = rules.catalogue->rule_for("Moraea").found;
  ASSERT_TRUE(moraea);
  EXPECT_EQ(moraea->rule.sowing.seeds_per_pot->value, 3.0);
}

TEST(OwnRules, OddEntriesAloneLeaveTheCatalogue) {
  const TemporaryFolder garden;
  fs::create_directories(garden.path() / "rules/folder.json");
  const RulesInGarden rules = rules_in_garden(garden.path());
  EXPECT_EQ(rules.problems.size(), 1U);
  EXPECT_TRUE(rules.catalogue->rule_for("Moraea").found);
}

} // namespace
} // namespace nightsow::planner
