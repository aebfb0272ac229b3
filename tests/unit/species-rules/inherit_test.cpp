#include "species-rules/inherit.hpp"

#include "species-rules/rule_fields.hpp"

#include <gtest/gtest.h>

namespace nightsow::species_rules {
namespace {

Estimate about(double value, Origin origin) {
  return {value, value - 1, value + 1, {Evidence::memory, {}, origin}};
}

Remark remark(std::string text, Origin origin) {
  return {std::move(text), {Evidence::memory, {}, origin}};
}

TEST(Inherit, AFieldOfTheChildReplacesThatOfTheParent) {
  Rule family;
  Rule genus;
  family.gate.night_limit_c = about(14, Origin::family);
  genus.gate.night_limit_c = about(17, Origin::genus);
  EXPECT_EQ(inherit(family, genus).gate.night_limit_c, about(17, Origin::genus));
}

TEST(Inherit, WhatTheChildDoesNotGiveStaysWithItsOrigin) {
  Rule family;
  family.seed.half_life_years = about(10, Origin::family);
  family.gate.start = Choice<Start>{Start::hot, {Evidence::memory, {}, Origin::family}};
  const Rule rule = inherit(family, Rule{});
  EXPECT_EQ(rule.seed.half_life_years, about(10, Origin::family));
  EXPECT_EQ(rule.gate.start, family.gate.start);
}

TEST(Inherit, TheRangeGoesWithItsValue) {
  Rule family;
  Rule genus;
  family.seed.half_life_years = Estimate{10, 2, 20, {}};
  genus.seed.half_life_years = Estimate{3, 2.5, 3.5, {}};
  EXPECT_EQ(inherit(family, genus).seed.half_life_years->high, 3.5);
}

TEST(Inherit, RemarksAddUpFromFamilyToSpecies) {
  Rule family;
  Rule genus;
  family.notes = {remark("of all", Origin::family)};
  genus.notes = {remark("of some", Origin::genus)};
  genus.cautions = {remark("spines", Origin::genus)};
  const Rule rule = inherit(family, genus);
  EXPECT_EQ(rule.notes,
            (std::vector{remark("of all", Origin::family), remark("of some", Origin::genus)}));
  EXPECT_EQ(rule.cautions.size(), 1U);
}

TEST(Inherit, AChildMayLeaveOutTheNotesAboveItButNotTheCautions) {
  Rule family;
  family.notes = {remark("of winter growers", Origin::family)};
  family.cautions = {remark("bulb_toxic", Origin::family)};
  Rule summer;
  summer.only_own_notes = true;
  summer.notes = {remark("of summer growers", Origin::genus)};
  const Rule rule = inherit(family, summer);
  EXPECT_EQ(rule.notes, (std::vector{remark("of summer growers", Origin::genus)}));
  EXPECT_EQ(rule.cautions.size(), 1U);
  EXPECT_EQ(inherit(rule, Rule{}).notes.size(), 1U) << "a child of it has its notes";
}

TEST(Inherit, WhatCouldNotBeReadIsNotKnownThoughTheParentGivesIt) {
  Rule family;
  family.development.base_c = about(3, Origin::family);
  Rule genus;
  genus.unread = {"base_c"};
  const Rule rule = inherit(family, genus);
  EXPECT_FALSE(rule.development.base_c);
  Rule species;
  species.development.base_c = about(5, Origin::species);
  EXPECT_TRUE(inherit(rule, species).unread.empty());
}

TEST(Inherit, EveryFieldOfTheTableIsHandedDown) {
  Rule full;
  for_each_field(full, [](const Field& /*field*/, auto& member) {
    if constexpr (requires { member.emplace(); }) {
      member.emplace();
    }
  });
  const Rule inherited = inherit(full, Rule{});
  for_each_field(inherited, [](const Field& field, const auto& member) {
    if constexpr (requires { member.has_value(); }) {
      EXPECT_TRUE(member.has_value()) << field.key;
    }
  });
}

TEST(GivesAnything, AnEmptyRuleGivesNothingAndASingleNoteIsSomething) {
  Rule rule;
  EXPECT_FALSE(gives_anything(rule));
  rule.notes = {remark("slow", Origin::species)};
  EXPECT_TRUE(gives_anything(rule));
  Rule word;
  word.sowing.cover = Choice<Cover>{};
  EXPECT_TRUE(gives_anything(word));
}

} // namespace
} // namespace nightsow::species_rules
