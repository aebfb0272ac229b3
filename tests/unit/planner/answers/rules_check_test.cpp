#include "planner/answers/rules_check.hpp"

#include <gtest/gtest.h>

#include <memory>
#include <string>
#include <vector>

namespace nightsow::planner {
namespace {

using species_rules::RuleText;

RulesCheckAnswer checked(const std::vector<RuleText>& files) {
  static const auto catalogue =
      std::make_shared<const species_rules::Catalogue>(species_rules::Catalogue::embedded());
  return check_rule_files(catalogue, files, std::nullopt);
}

std::string moraea(std::string_view limit, std::string_view key = "night_limit_c") {
  return R"({"schema": 1, "family": "Iridaceae", "genera": [{"genus": "Moraea", "rule": {)"
         "\n\"" +
         std::string{key} + "\": " + std::string{limit} +
         R"(, "seeds_per_pot": {"value": 5, "low": 4, "high": 6, "evidence": "grower"}},
            "species": [{"species": "inventa"}]}]})";
}

constexpr std::string_view eleven = R"({"value": 11, "low": 10, "high": 12, "evidence": "grower"})";

TEST(RulesCheck, OfAGoodFileTellsWhatItHolds) {
  const RulesCheckAnswer answer = checked({{"mine.json", moraea(eleven)}});
  EXPECT_TRUE(answer.faults.empty());
  ASSERT_EQ(answer.files.size(), 1U);
  EXPECT_EQ(answer.files.front().file, "mine.json");
  EXPECT_EQ(answer.files.front().family, "Iridaceae");
  EXPECT_EQ(answer.files.front().genera, 1);
  EXPECT_EQ(answer.files.front().species, 1);
  EXPECT_EQ(answer.files.front().values, 2);
}

TEST(RulesCheck, OfAFaultTellsFileLinePointerAndWhatWasMeant) {
  const RulesCheckAnswer answer = checked({{"mine.json", moraea(eleven, "night_limt_c")}});
  ASSERT_EQ(answer.faults.size(), 1U);
  EXPECT_EQ(answer.faults.front().file, "mine.json");
  EXPECT_EQ(answer.faults.front().line, 2);
  EXPECT_EQ(answer.faults.front().pointer, "/genera/0/rule/night_limt_c");
  EXPECT_NE(answer.faults.front().expected.find("night_limit_c"), std::string::npos);
}

TEST(RulesCheck, TellsEveryFaultOfEveryFile) {
  const RulesCheckAnswer answer =
      checked({{"a.json", moraea("11")}, {"b.json", "{"}, {"c.json", moraea("null")}});
  ASSERT_EQ(answer.faults.size(), 3U);
  EXPECT_EQ(answer.faults[0].file, "a.json");
  EXPECT_EQ(answer.faults[1].file, "b.json");
  EXPECT_EQ(answer.faults[2].file, "c.json");
}

TEST(RulesCheck, OfAFileThatIsNoJsonCountsNothing) {
  const RulesCheckAnswer answer = checked({{"b.json", "{"}});
  ASSERT_EQ(answer.files.size(), 1U);
  EXPECT_EQ(answer.files.front().values, 0);
  EXPECT_TRUE(answer.files.front().family.empty());
}

TEST(RulesCheck, ChecksFilesBesideEachOther) {
  const RulesCheckAnswer answer = checked({{"a.json", moraea(eleven)}, {"b.json", moraea(eleven)}});
  ASSERT_FALSE(answer.faults.empty());
  for (const auto& fault : answer.faults) {
    EXPECT_EQ(fault.file, "b.json");
  }
}

} // namespace
} // namespace nightsow::planner
