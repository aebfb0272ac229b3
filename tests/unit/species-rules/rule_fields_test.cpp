#include "species-rules/rule_fields.hpp"

#include <gtest/gtest.h>

#include <set>
#include <string>

namespace nightsow::species_rules {
namespace {

template <class Visitor> void visit_table(Visitor&& visit) {
  const Rule any;
  for_each_field(any, visit);
}

TEST(RuleFields, EveryKeyStandsOnceAndSaysWhatItMeans) {
  std::set<std::string_view> keys;
  visit_table([&keys](const Field& field, const auto& /*member*/) {
    EXPECT_TRUE(keys.insert(field.key).second) << field.key;
    EXPECT_FALSE(field.meaning.empty()) << field.key;
  });
  EXPECT_GE(keys.size(), 30U);
}

TEST(RuleFields, NumbersHaveBoundsAndWordsHaveNone) {
  visit_table([](const Field& field, const auto& member) {
    using Member = std::remove_cvref_t<decltype(member)>;
    if constexpr (std::is_same_v<Member, std::optional<Estimate>>) {
      EXPECT_LT(field.lowest, field.highest) << field.key;
    } else {
      EXPECT_EQ(field.lowest, field.highest) << field.key;
      EXPECT_TRUE(field.unit.empty()) << field.key;
    }
  });
}

TEST(RuleFields, OnlyCautionsAreCodes) {
  visit_table([](const Field& field, const auto& /*member*/) {
    EXPECT_EQ(!field.codes.empty(), field.key == "cautions") << field.key;
  });
}

TEST(RuleFields, NoNameSpeaksOfAMonthOrAHemisphere) {
  for (const std::string_view word : {"month", "hemisphere", "north", "south"}) {
    visit_table([word](const Field& field, const auto& /*member*/) {
      EXPECT_EQ(field.key.find(word), std::string_view::npos) << field.key;
      EXPECT_EQ(field.meaning.find(word), std::string_view::npos) << field.key;
    });
  }
}

} // namespace
} // namespace nightsow::species_rules
