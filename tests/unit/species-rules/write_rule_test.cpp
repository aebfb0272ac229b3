#include "species-rules/write_rule.hpp"

#include "species-rules/overrides.hpp"
#include "species-rules/rule_fields.hpp"

#include <gtest/gtest.h>

#include <any>
#include <string>
#include <vector>

namespace nightsow::species_rules {
namespace {

// Every value of a rule as text, its origin left out: that becomes the grower's.
std::vector<std::string> told(const Rule& rule) {
  std::vector<std::string> values;
  const auto ground = [](const Ground& of) {
    return std::string(word_of(of.evidence)) + '/' + of.source;
  };
  for_each_field(rule, [&](const Field& field, const auto& member) {
    const std::string key{field.key};
    using Member = std::remove_cvref_t<decltype(member)>;
    if constexpr (std::is_same_v<Member, std::optional<Estimate>>) {
      if (member) {
        values.push_back(key + ' ' + std::to_string(member->value) + ' ' +
                         std::to_string(member->low) + ' ' + std::to_string(member->high) + ' ' +
                         ground(member->ground));
      }
    } else if constexpr (std::is_same_v<Member, std::vector<Remark>>) {
      for (const Remark& remark : member) {
        values.push_back(key + ' ' + remark.value + ' ' + ground(remark.ground));
      }
    } else if (member) {
      values.push_back(key + ' ' + std::string(word_of(member->value)) + ' ' +
                       ground(member->ground));
    }
  });
  return values;
}

TEST(WriteRule, EveryRuleOfTheCatalogueComesBackUnchanged) {
  const auto catalogue = std::make_shared<const Catalogue>(Catalogue::embedded());
  std::vector<RuleText> files;
  for (const std::string& name : catalogue->rule_names()) {
    files.push_back({name + ".json", override_text(*catalogue->rule_for(name).found)});
  }
  // All at once: each is one taxon of its own.
  const Overlaid rules = overlaid(catalogue, files, std::nullopt);
  ASSERT_TRUE(rules.faults.empty()) << to_text(rules.faults.front());
  for (const std::string& name : catalogue->rule_names()) {
    const RuleFor back = *rules.catalogue->rule_for(name).found;
    EXPECT_EQ(told(back.rule), told(catalogue->rule_for(name).found->rule)) << name;
    EXPECT_EQ(back.rule.gate.growth->ground.origin, Origin::grower) << name;
  }
}

TEST(WriteRule, ASpeciesIsWrittenUnderItsGenus) {
  const Catalogue catalogue = Catalogue::embedded();
  const std::string text = override_text(*catalogue.rule_for("Crassula umbella").found);
  EXPECT_NE(text.find("\"family\": \"Crassulaceae\""), std::string::npos);
  EXPECT_NE(text.find("\"genus\": \"Crassula\""), std::string::npos);
  EXPECT_NE(text.find("\"species\": \"umbella\""), std::string::npos);
}

} // namespace
} // namespace nightsow::species_rules
