#include "climate/base/nearest_name.hpp"

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

namespace nightsow {
namespace {

const std::vector<std::string>& genera() {
  static const std::vector<std::string> names{
      "Lachenalia", "Lapeirousia", "Bulbine", "Bulbinella", "Conophytum"};
  return names;
}

std::string suggestion(std::string_view typed) {
  const auto nearest = nearest_name(typed, genera());
  return nearest ? nearest->name : "";
}

TEST(NearestName, CountsInsertedDeletedReplacedAndSwappedLetters) {
  EXPECT_EQ(edit_distance("", "abc"), 3U);
  EXPECT_EQ(edit_distance("bulbine", "bulbin"), 1U);
  EXPECT_EQ(edit_distance("bulbine", "bulbane"), 1U);
  EXPECT_EQ(edit_distance("bulbine", "bubline"), 1U);
  EXPECT_EQ(edit_distance("kitten", "sitting"), 3U);
}

TEST(NearestName, ASwapIsNotUsedTwiceOnTheSameLetters) {
  EXPECT_EQ(edit_distance("ca", "abc"), 3U);
}

TEST(NearestName, CaseDoesNotCount) {
  EXPECT_EQ(edit_distance("BULBINE", "bulbine"), 0U);
}

TEST(NearestName, AWordBeginsANameWhateverItsCase) {
  EXPECT_TRUE(begins_as("Lachenalia mutabilis", "lachen"));
  EXPECT_TRUE(begins_as("Lachenalia", "Lachenalia"));
  EXPECT_FALSE(begins_as("Lachenalia", "Lachenalia mutabilis"));
  EXPECT_FALSE(begins_as("Lachenalia", "mutabilis"));
}

TEST(NearestName, SuggestsTheNearestName) {
  EXPECT_EQ(suggestion("lachanelia"), "Lachenalia");
  EXPECT_EQ(suggestion("Bulbinela"), "Bulbinella");
  EXPECT_EQ(suggestion("conopytum"), "Conophytum");
}

TEST(NearestName, SuggestsNothingFarAway) {
  EXPECT_EQ(suggestion("Rose"), "");
  EXPECT_EQ(suggestion(""), "");
}

TEST(NearestName, SaysWhenAnotherNameIsAsNear) {
  const std::vector<std::string> names{"night", "might", "sight"};
  const auto tied = nearest_name("tight", names);
  ASSERT_TRUE(tied);
  EXPECT_EQ(tied->name, "night");
  EXPECT_FALSE(tied->only);
  EXPECT_TRUE(nearest_name("nightt", names)->only);
}

TEST(NearestName, NoNamesGiveNoSuggestion) {
  EXPECT_FALSE(nearest_name("plan", {}));
}

} // namespace
} // namespace nightsow
