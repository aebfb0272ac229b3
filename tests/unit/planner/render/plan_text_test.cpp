#include "planner/render/answer_text.hpp"
#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

bool holds(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

TEST(PlanText, ASmallPlanReadsLikeThis) {
  EXPECT_EQ(plan_text(small_plan(), {}),
            R"(Invented slope (33.0° S, 19.0° E), 20 Feb 2026, season 2026
Nights: hottest about 10 Feb, the cooling limb begins 20 Mar, coldest about 20 Jul, 10.5 K apart
Readings: 1 Mar 1981 to 19 Feb 2026, 44 full past seasons, 99.8 % of the nights, 3 readings in doubt

First of all
  Full past seasons in the readings: only 4, so dates are rough.

Now: sow, and give first water
  Packet  Taxon                   Seeds  First water (8 in 10)  Best by
  S01     Boophone haemanthoides   some  21 Feb                 no date
      if it waits: about 9 in 10 of its living seed dies within a year
      because: Seed that dies when dried cannot wait: sow it at once, as cool as can be but free of
               frost. If it has to wait some days, keep it cool and barely moist.

Waiting for cool nights
  Packet  Taxon          Seeds  Cool nights so far  First water (8 in 10)                    Best by
  S09     Bulbine annua     40  13 °C: 3 of 10      12 Apr (1-26 Apr), not at all in 1 of    20 Jul
                                                    10 years
      because: Waits for cool nights on the cold frame: 3 of the last 14 at or under 13 °C, 10 are
               needed.
      expect: about 17 seedlings (likely 9 to 25), the first near 3 May; about 12 alive after the
              first rest (likely 5 to 19)

In the hot season
  Packet  Taxon                   Seeds  First water (8 in 10)  Best by
  S20     Pachypodium namaquanum      8  from 3 Nov             10 Jan 2027
      because: It wants heat: first water in the hot season, from 3 Nov 2026 to 10 Jan 2027 here;
               later leaves too little time to grow.

Not this season, or not here
  Packet  Taxon        Next
  S16     Lachenallia  no date
      because: No rule is known for Lachenallia. Did you mean Lachenalia?

Cautions
  The bulbs are poisonous when eaten: keep them from children and animals. Packets: S01.
  Spines: mind your hands and eyes. Packets: S20.
  Protected, or in controlled trade, in some places: ask the authorities there which permits seed
  and plants need before they are collected, bought, sent or carried across a border. Packets: S20.
  Heat mats are mains electricity near water: use a residual-current device, keep plugs and
  thermostat dry, put the probe into a pot, and follow your local rules. Packets: S20.
  Dry mineral mixes give off dust that harms the lungs: wet the mix before you stir it, wear a mask,
  and follow the supplier's sheet and your local rules.

All reasons, risks and how to sow: --why; trays and the season's work: --work
)");
}

TEST(PlanText, WhyTellsAllReasonsRisksAndHowToSow) {
  TextStyle style;
  style.why = true;
  const std::string text = plan_text(small_plan(), style);
  EXPECT_TRUE(holds(text, "and: Of its good seed"));
  EXPECT_TRUE(holds(text, "risk: Cool nights may not last"));
  EXPECT_TRUE(holds(text, "water when: 10 of 14 nights lie at or under 13 °C on the cold frame"));
  EXPECT_TRUE(holds(text, "losses: 9 in the first rest, 8 rotted or damped off, 4 waiting a year"));
  EXPECT_TRUE(holds(text, "keep: warm and dry first, then cool, until 12 Apr"));
  EXPECT_TRUE(holds(text, "sow: 5 pots, at most 8 seeds in each; cover: as thick as the seed"));
  EXPECT_TRUE(holds(text, "look: first seedlings after 14 days"));
}

TEST(PlanText, WhereNothingComesUpThatIsAllThatIsExpected) {
  PlanAnswer plan = small_plan();
  plan.sowings.at(1).expected->seedlings = {0.1, 0.0, 0.0};
  const std::string text = plan_text(plan, {});
  EXPECT_TRUE(holds(text, "expect: hardly any seedlings\n"));
  EXPECT_FALSE(holds(text, "alive after the first"));
}

TEST(PlanText, EveryPlanFitsAHundredColumns) {
  PlanAnswer plan = small_plan();
  for (Sowing& line : plan.sowings) {
    line.packet = "a-packet-with-a-name-that-nobody-would-write-in-full";
    line.taxon = "Sarcocaulon multifidum subsp. of a name without an end";
    line.accepted = "Monsonia multifida, the name that it goes by at present";
    line.first_water.expected.never = 0.2;
  }
  TextStyle style;
  style.why = true;
  EXPECT_EQ(first_line_too_wide(plan_text(plan, style)), "");
}

TEST(PlanText, TheAcceptedNameFollowsWhereItIsAnother) {
  PlanAnswer plan = small_plan();
  plan.sowings.at(1).taxon = "Bulbine old";
  EXPECT_TRUE(holds(plan_text(plan, {}), "Bulbine old (Bulbine annua)"));
}

TEST(PlanText, FahrenheitReachesEveryTemperature) {
  TextStyle style;
  style.why = true;
  style.fahrenheit = true;
  const std::string text = plan_text(small_plan(), style);
  EXPECT_TRUE(holds(text, "55 °F: 3 of 10"));
  EXPECT_TRUE(holds(text, "18.9 °F apart"));
  EXPECT_FALSE(holds(text, "°C"));
}

TEST(PlanText, ANightLimitThatDoesNotDecideHereIsSaidSo) {
  PlanAnswer plan = small_plan();
  plan.sowings.at(1).gate->binds = false;
  const std::string text = plan_text(plan, {});
  EXPECT_TRUE(holds(text, "13 °C: do not decide"));
  EXPECT_TRUE(holds(text, "Waiting for milder days"));
}

TEST(PlanText, WhatIsUnknownStandsByItself) {
  PlanAnswer plan = small_plan();
  plan.sowings.at(1).verdict = Verdict::unknown;
  EXPECT_TRUE(holds(plan_text(plan, {}), "Unknown, until the readings say more\n"));
}

TEST(PlanText, ALookAheadIsSaidToBeOne) {
  PlanAnswer plan = small_plan();
  plan.preview = true;
  EXPECT_TRUE(holds(plan_text(plan, {}), "A look ahead"));
}

TEST(PlanText, AnEmptyPlanIsAnAnswer) {
  PlanAnswer plan = small_plan();
  plan.sowings.clear();
  plan.not_now.clear();
  EXPECT_TRUE(holds(plan_text(plan, {}), "Nothing to sow this season."));
  EXPECT_FALSE(holds(plan_text(plan, {}), "Cautions"));
}

TEST(PlanText, AGardenWithoutNamePhasesAndReadingsStillHasAHead) {
  PlanAnswer plan = small_plan();
  plan.garden.name = "";
  plan.phases.reset();
  plan.readings = {};
  const std::string text = plan_text(plan, {});
  EXPECT_TRUE(
      text.starts_with("Garden (33.0° S, 19.0° E), 20 Feb 2026, season 2026\nReadings: none\n"));
}

TEST(PlanText, ColourIsNeverTheOnlyCarrier) {
  TextStyle colour;
  colour.colour = true;
  std::string text = plan_text(small_plan(), colour);
  for (const std::string_view code : {"\x1b[1m", "\x1b[2m", "\x1b[0m"}) {
    for (std::size_t at = text.find(code); at != std::string::npos; at = text.find(code)) {
      text.erase(at, code.size());
    }
  }
  EXPECT_EQ(text, plan_text(small_plan(), {}));
}

} // namespace
} // namespace nightsow::planner
