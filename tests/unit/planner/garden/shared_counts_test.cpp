#include "planner/garden/shared_counts.hpp"

#include "climate/base/problem.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

SharedCounts counts() {
  SharedCounts counts;
  counts.climate = SharedClimate{17, 6, 29};
  counts.sowings = {
      {"Lachenalia mutabilis", 40, 22, 1, 0.5, "cold frame", false, {{14, 3}, {30, 22}}},
      {"Albuca spiralis", 10, 0, 2, {}, "", true, {}}};
  counts.rules = {{"Lachenalia mutabilis", 13.5, 0.7}, {"Albuca spiralis", {}, {}}};
  return counts;
}

TEST(SharedCounts, ComeBackAsTheyWereWritten) {
  const SharedCounts back = read_shared_counts(shared_counts_text(counts()), "others.json");
  ASSERT_EQ(back.sowings.size(), 2U);
  EXPECT_EQ(back.sowings[0].taxon, "Lachenalia mutabilis");
  EXPECT_EQ(back.sowings[0].came, 22);
  EXPECT_EQ(back.sowings[0].age_years, 0.5);
  EXPECT_EQ(back.sowings[0].looks, counts().sowings[0].looks);
  EXPECT_TRUE(back.sowings[1].trial);
  EXPECT_FALSE(back.sowings[1].age_years);
  ASSERT_TRUE(back.climate);
  EXPECT_EQ(back.climate->coldest_nights_c, 6);
  EXPECT_EQ(back.rules[0].night_limit_c, 13.5);
  EXPECT_EQ(shared_counts_text(back), shared_counts_text(counts()));
}

TEST(SharedCounts, AreRefusedWithThePlaceOfTheFault) {
  try {
    static_cast<void>(read_shared_counts("{\n  \"schema\": 1,\n  \"kind\": \"nightsow counts\",\n"
                                         "  \"sowings\": [{\"taxon\": \"Albuca\", \"seeds\": 5,\n"
                                         "    \"came\": 6}]\n}",
                                         "others.json"));
    FAIL() << "more seedlings than seeds were taken";
  } catch (const InputError& error) {
    EXPECT_EQ(error.problem().where, "others.json");
    EXPECT_EQ(error.problem().line, 5U);
  }
  EXPECT_THROW(static_cast<void>(read_shared_counts("{}", "others.json")), InputError);
  EXPECT_THROW(static_cast<void>(read_shared_counts("taxon,seeds\n", "others.json")), InputError);
}

} // namespace
} // namespace nightsow::planner
