#include "planner/render/packet_back.hpp"

#include "species-rules/explain.hpp"
#include "species-rules/rule_fields.hpp"
#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace nightsow::planner {
namespace {

RuleValue word(const char* key, const char* value) {
  return {key, "", "", false, 0, 0, 0, value, "memory", "", "genus"};
}

RuleValue figure(const char* key, const char* unit, double value) {
  return {key, unit, "", true, value, value, value, "", "memory", "", "genus"};
}

/// The line about something, in °C; empty where there is none.
std::string line(const std::vector<RuleValue>& values, std::string_view about) {
  RuleShowAnswer answer;
  answer.values = values;
  for (const PacketBackLine& found : packet_back(answer, {})) {
    if (found.about == about) {
      return found.text;
    }
  }
  return {};
}

TEST(PacketBack, WhatStartsTheSeedIsSaidFirst) {
  EXPECT_EQ(line({word("start", "cool"),
                  figure("night_limit_c", "°C", 12),
                  figure("gate_nights", "nights", 5),
                  figure("gate_of", "nights", 7),
                  figure("day_limit_c", "°C", 25)},
                 "when"),
            "Cool nights start it: sow for the time when nights lie at or under 12 °C, 5 of 7, and "
            "days reach no more than 25 °C on average.");
  EXPECT_EQ(line({word("start", "hot"), figure("warm_night_c", "°C", 20)}, "when"),
            "Warmth starts it: sow in the hot season, when nights hold at or above 20 °C, a heat "
            "mat counted.");
  EXPECT_EQ(line({word("start", "any"), word("growth", "winter")}, "when"),
            "It waits for nothing: sow whenever it is neither hot nor cold. It grows in winter.");
  EXPECT_TRUE(line({word("start", "at_once")}, "when").starts_with("Sow it at once"));
}

TEST(PacketBack, EveryWordOfTheSowingHasItsSentence) {
  const auto every = [](const char* key, const auto& table) {
    for (const auto& [value, text] : table) {
      const std::string said{text};
      EXPECT_NE(
          line({word(key, said.c_str())}, key == std::string{"transplant"} ? "seedlings" : "how"),
          "")
          << key << ' ' << said;
    }
  };
  every("cover", species_rules::Words<species_rules::Cover>::table);
  every("pot_depth", species_rules::Words<species_rules::PotDepth>::table);
  every("mat", species_rules::Words<species_rules::Mat>::table);
  every("humidity_cover", species_rules::Words<species_rules::HumidityCover>::table);
  every("smoke", species_rules::Words<species_rules::Treatment>::table);
  every("leach", species_rules::Words<species_rules::Treatment>::table);
  every("scarify", species_rules::Words<species_rules::Treatment>::table);
  every("transplant", species_rules::Words<species_rules::Transplant>::table);
}

TEST(PacketBack, EveryStartAndStoreHasItsSentence) {
  for (const auto& [value, text] : species_rules::Words<species_rules::Start>::table) {
    EXPECT_NE(line({word("start", std::string{text}.c_str())}, "when"), "") << text;
  }
  for (const auto& [value, text] : species_rules::Words<species_rules::Store>::table) {
    EXPECT_NE(line({word("store", std::string{text}.c_str())}, "keep"), "") << text;
  }
}

TEST(PacketBack, ADustSeedIsLeftBareAndNoDepthIsSaid) {
  EXPECT_EQ(
      line({word("light", "needed"), word("cover", "none"), figure("cover_mm", "mm", 0.3)}, "how"),
      "Leave the seed on the surface; it needs light.");
}

TEST(PacketBack, TheMatAtNightIsSaidOnlyWhereOneIsUsed) {
  EXPECT_EQ(line({word("mat", "helpful"), word("mat_at_night", "off")}, "how"),
            "A heat mat helps, off at night.");
  EXPECT_EQ(line({word("mat", "harmful"), word("mat_at_night", "off")}, "how"),
            "No heat mat: it does harm.");
}

TEST(PacketBack, TreatmentsThatChangeNothingAreOneSentence) {
  EXPECT_EQ(line({word("smoke", "useless"), word("leach", "useless")}, "how"),
            "No smoke, soaking or nicking is needed.");
  EXPECT_EQ(line({word("smoke", "helpful"), word("leach", "useless")}, "how"), "Smoke helps.");
}

TEST(PacketBack, AShareThatWaitsKeepsThePot) {
  EXPECT_EQ(line({figure("deferral_share", "share", 0.2), figure("keep_seasons", "seasons", 3)},
                 "expect"),
            "About 1 in 5 of the sound seed waits a year longer: keep the pot for 3 seasons.");
  EXPECT_EQ(line({figure("deferral_share", "share", 0.01), figure("keep_seasons", "seasons", 1)},
                 "expect"),
            "Keep the pot for 1 season before you empty it.");
}

TEST(PacketBack, WhatStillWaitsOnceTreatedIsSaidBesideWhatWaitsLeftWhole) {
  EXPECT_EQ(
      line({figure("deferral_share", "share", 0.6), figure("deferral_treated_share", "share", 0.1)},
           "expect"),
      "About 6 in 10 of the sound seed waits a year longer, once treated about 1 in 10.");
}

TEST(PacketBack, SeedThatDiesDryIsKeptForDaysCoolAndBarelyMoistShortLivedSeedNot) {
  EXPECT_EQ(line({word("start", "at_once"), word("store", "sow_at_once")}, "keep"),
            "Do not keep it; if it has to wait some days or weeks, cool and barely moist.");
  EXPECT_EQ(line({word("start", "cool"), word("store", "sow_at_once")}, "keep"), "Do not keep it.");
}

TEST(PacketBack, SummerGrowersRestByCoolAndOthersByWarmth) {
  const RuleValue growth = figure("growth_needed_days", "days", 70);
  const RuleValue sum = figure("rest_sum", "", 20);
  EXPECT_EQ(line({word("growth", "summer"), growth, sum}, "rest"),
            "It needs 70 days of good growth before its first rest, which cool nights and days "
            "bring.");
  EXPECT_EQ(line({word("growth", "winter"), growth, sum}, "rest"),
            "It needs 70 days of good growth before its first rest. Some 20 days of full summer "
            "warmth and long light bring that rest; milder ones count in part.");
}

TEST(PacketBack, TheRestIsToldByHowTheKindPassesIt) {
  const RuleValue growth = figure("growth_needed_days", "days", 70);
  EXPECT_EQ(line({word("first_rest", "dry"), growth}, "rest"),
            "It needs 70 days of good growth before its first rest. In that rest let it go dry, "
            "shaded, with a sip now and then.");
  EXPECT_EQ(line({word("first_rest", "barely_moist"), word("growth", "summer"), growth}, "rest"),
            "It needs 70 days of good growth before its first rest, which cool nights and days "
            "bring. In that rest keep it barely moist: it is not dried off.");
  EXPECT_EQ(line({word("first_rest", "none"), growth}, "rest"),
            "Evergreen: it has no dry rest. Go on watering by need through its resting season, in "
            "shade. It needs 70 days of good growth before the next hot season is at its height.");
  EXPECT_EQ(line({word("first_rest", "dies"), growth}, "rest"),
            "Annual: it flowers, sets seed and dies, and has no rest to live through. It needs 70 "
            "days of good growth before that.");
}

TEST(PacketBack, ThePotGetsADryRestAfterTheLastLookOnlyWhereItMayGoDry) {
  const RuleValue last = figure("last_look_days", "days", 90);
  const std::string dry = "Last look after 90 days, then a dry rest.";
  const std::string moist = "Last look after 90 days.";
  EXPECT_EQ(line({last}, "expect"), dry);
  EXPECT_EQ(line({word("first_rest", "dry"), last}, "expect"), dry);
  EXPECT_EQ(line({word("first_rest", "dies"), last}, "expect"), dry);
  EXPECT_EQ(line({word("first_rest", "none"), last}, "expect"), moist);
  EXPECT_EQ(line({word("first_rest", "barely_moist"), last}, "expect"), moist);
  EXPECT_EQ(line({word("start", "at_once"), word("first_rest", "dry"), last}, "expect"), moist);
}

TEST(PacketBack, RipeningIsToldInDaysOnTheShelf) {
  RuleShowAnswer answer;
  answer.half_ripe = RipeningDays{80, 33.3, 166.7, 20};
  TextStyle style;
  style.fahrenheit = true;
  ASSERT_EQ(packet_back(answer, style).size(), 1U);
  EXPECT_EQ(packet_back(answer, style).front().text,
            "Half of it is ripe after 80 days (33 to 167) warm and dry at 68 °F.");
  answer.half_ripe = RipeningDays{0, 0, 0, 20};
  EXPECT_EQ(packet_back(answer, {}).front().text, "It needs no ripening.");
}

TEST(PacketBack, EveryCautionIsSaid) {
  for (const std::string_view code : species_rules::caution_codes) {
    EXPECT_NE(line({word("cautions", std::string{code}.c_str())}, "mind"), "") << code;
  }
}

TEST(PacketBack, ACautionOfGenusAndSpeciesIsSaidOnce) {
  RuleShowAnswer answer;
  answer.values = {word("cautions", "spines"), word("cautions", "spines")};
  EXPECT_EQ(packet_back(answer, {}).size(), 1U);
}

TEST(PacketBack, WhatIsNotKnownIsLeftOut) {
  EXPECT_TRUE(packet_back({}, {}).empty());
}

} // namespace
} // namespace nightsow::planner
