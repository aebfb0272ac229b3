#include "species-rules/estimate.hpp"

#include "species-rules/rule.hpp"

#include <gtest/gtest.h>

namespace nightsow::species_rules {
namespace {

template <class E> void expect_words_to_lead_back() {
  for (const auto& [value, word] : Words<E>::table) {
    EXPECT_EQ(from_word<E>(word_of(value)), value) << word;
    EXPECT_FALSE(word.empty());
  }
}

TEST(EstimateWords, EveryWordLeadsBackToItsValue) {
  expect_words_to_lead_back<Evidence>();
  expect_words_to_lead_back<Origin>();
  expect_words_to_lead_back<Growth>();
  expect_words_to_lead_back<Start>();
  expect_words_to_lead_back<Light>();
  expect_words_to_lead_back<Cover>();
  expect_words_to_lead_back<SeedSize>();
  expect_words_to_lead_back<Store>();
  expect_words_to_lead_back<Mat>();
  expect_words_to_lead_back<MatAtNight>();
  expect_words_to_lead_back<PotDepth>();
  expect_words_to_lead_back<Transplant>();
  expect_words_to_lead_back<HumidityCover>();
  expect_words_to_lead_back<Swing>();
}

TEST(EstimateWords, AnUnknownWordIsNoValue) {
  EXPECT_FALSE(from_word<Start>("warm"));
  EXPECT_FALSE(from_word<Start>("Cool"));
  EXPECT_FALSE(from_word<Start>(""));
}

TEST(EstimateWords, AGrowersOwnValueIsCalledYours) {
  EXPECT_EQ(word_of(Origin::grower), "yours");
  EXPECT_EQ(word_of(Evidence::grower), "grower");
}

TEST(Evidence, OnlyWhatSomeoneDidMustNameASource) {
  EXPECT_TRUE(needs_source(Evidence::experiment));
  EXPECT_TRUE(needs_source(Evidence::institution));
  EXPECT_TRUE(needs_source(Evidence::grower));
  EXPECT_FALSE(needs_source(Evidence::common_practice));
  EXPECT_FALSE(needs_source(Evidence::relatives));
  EXPECT_FALSE(needs_source(Evidence::memory));
}

TEST(Evidence, AGroundThatIsNotGivenIsTheWeakest) {
  EXPECT_EQ(Ground{}.evidence, Evidence::memory);
}

} // namespace
} // namespace nightsow::species_rules
