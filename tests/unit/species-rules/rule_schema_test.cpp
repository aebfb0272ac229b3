#include "species-rules/rule_schema.hpp"

#include "climate/base/file.hpp"
#include "species-rules/rule_fields.hpp"
#include "tests/support/source_folder.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace nightsow::species_rules {

namespace {

nlohmann::json schema() {
  return nlohmann::json::parse(rule_schema());
}

TEST(RuleSchema, ThePublishedFileIsWhatTheTableOfFieldsGives) {
  const std::string published = read_whole_file(
      support::source_folder() / "species-rules/rule.schema.json", "the rules' schema");
  EXPECT_TRUE(published == rule_schema())
      << "write it anew: nightsow rules schema > species-rules/rule.schema.json";
}

TEST(RuleSchema, EveryFieldStandsInItWithItsMeaning) {
  const auto properties = schema()["$defs"]["rule"]["properties"];
  std::size_t count = 0;
  const Rule any;
  for_each_field(any, [&](const Field& field, const auto& /*member*/) {
    ++count;
    const auto& described = properties.at(std::string{field.key}).at("description");
    EXPECT_EQ(described.get<std::string>().rfind(field.meaning, 0), 0U) << field.key;
  });
  EXPECT_TRUE(properties.contains("only_own_notes"));
  EXPECT_EQ(properties.size(), count + 1) << "the fields, and whose notes it has";
}

TEST(RuleSchema, ANumberKeepsTheBoundsOfItsFieldAndAWordItsWords) {
  const auto properties = schema()["$defs"]["rule"]["properties"];
  const auto& bounds = properties["night_limit_c"]["patternProperties"]["^(value|low|high)$"];
  EXPECT_EQ(bounds["minimum"], -5);
  EXPECT_EQ(bounds["maximum"], 30);
  EXPECT_EQ(properties["mat_at_night"]["properties"]["value"]["enum"],
            nlohmann::json({"on", "off"}));
  EXPECT_EQ(properties["cautions"]["items"]["properties"]["value"]["enum"].size(),
            caution_codes.size());
}

TEST(RuleSchema, TheCatalogueGivesItsDefaultsAndAGrowerNeedNot) {
  const auto whole = schema();
  const auto& required = whole["$defs"]["catalogue_file"]["properties"]["rule"]["required"];
  EXPECT_NE(std::find(required.begin(), required.end(), "half_life_years"), required.end());
  EXPECT_EQ(std::find(required.begin(), required.end(), "cover_mm"), required.end());
  EXPECT_FALSE(whole["$defs"]["rule"].contains("required"));
}

} // namespace

} // namespace nightsow::species_rules
