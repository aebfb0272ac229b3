#include "planner/cli/command_line.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <sstream>

namespace nightsow::planner {
namespace {

using support::day;
using support::fault;

/// The words of a line, parted by blanks.
CommandLine typed(const std::string& line) {
  std::istringstream in(line);
  std::vector<std::string> words;
  for (std::string word; in >> word;) {
    words.push_back(word);
  }
  return read_command_line(words);
}

template <class T> T command(const std::string& line) {
  return std::get<T>(typed(line).command);
}

std::string refusal(const std::string& line) {
  return fault<UsageError>([&] { return typed(line); });
}

TEST(CommandLine, CommonOptionsStandBeforeOrBehindTheCommand) {
  for (const char* line : {"--json --garden my --today 2026-02-20 --season 2026 --strict plan",
                           "plan --json --garden my --today 2026-02-20 --season 2026 --strict"}) {
    const CommonOptions common = typed(line).common;
    EXPECT_EQ(common.garden, "my");
    EXPECT_EQ(common.today, day("2026-02-20"));
    EXPECT_EQ(common.season, 2026);
    EXPECT_TRUE(common.json);
    EXPECT_TRUE(common.strict);
    EXPECT_FALSE(common.quiet);
    EXPECT_FALSE(common.fahrenheit);
  }
}

TEST(CommandLine, TheGardenIsThePresentFolderAndTodayIsLeftOpen) {
  const CommonOptions common = typed("plan").common;
  EXPECT_EQ(common.garden, "");
  EXPECT_FALSE(common.today);
  EXPECT_FALSE(common.season);
  EXPECT_EQ(typed("plan --garden .").common.garden, "");
}

TEST(CommandLine, TheNearestStationIsFetchedUnlessAnotherSourceIsNamed) {
  EXPECT_EQ(command<FetchCommand>("fetch").archive, climate::Archive::station);
  EXPECT_EQ(command<FetchCommand>("fetch --nearest").station, "");
  EXPECT_EQ(command<FetchCommand>("fetch --station XX000000001").station, "XX000000001");
  EXPECT_EQ(command<FetchCommand>("fetch --archive").archive, climate::Archive::reanalysis);
  EXPECT_EQ(command<FetchCommand>("fetch --forecast").archive, climate::Archive::forecast);
  EXPECT_EQ(command<FetchCommand>("fetch --power --from 2001-02-03").from, day("2001-02-03"));
  EXPECT_NE(refusal("fetch --archive --power").find("more than one source"), std::string::npos);
  EXPECT_NE(refusal("fetch --latitude 5").find("both or neither"), std::string::npos);
}

TEST(CommandLine, APlanIsOfAllUnlessOneHalfIsAskedFor) {
  EXPECT_EQ(command<PlanCommand>("plan").request.only, PlanRequest::Only::all);
  EXPECT_EQ(command<PlanCommand>("plan --only cool").request.only, PlanRequest::Only::cool);
  EXPECT_EQ(command<PlanCommand>("plan --only=hot").request.only, PlanRequest::Only::hot);
  EXPECT_TRUE(command<PlanCommand>("plan --why").why);
}

TEST(CommandLine, TheSeasonReachesTheRequest) {
  EXPECT_EQ(command<PlanCommand>("--season 2025 plan").request.season, 2025);
  EXPECT_EQ(command<NightsCommand>("nights --season 2025").request.season, 2025);
  EXPECT_EQ(command<ClimateCommand>("climate --season 2025").request.season, 2025);
  EXPECT_EQ(command<WhatIfCommand>("whatif --mirror --season 2025").request.plan.season, 2025);
}

TEST(CommandLine, GeneraFollowNights) {
  const auto nights = command<NightsCommand>("nights Bulbine Lachenalia --exit-code");
  EXPECT_EQ(nights.request.genera, (std::vector<std::string>{"Bulbine", "Lachenalia"}));
  EXPECT_TRUE(nights.exit_code);
}

TEST(CommandLine, PastNightsTakeALimitInPlaceOfGenera) {
  const auto past = command<PastNightsCommand>("nights --past --limit 13 --day-limit -2.5").request;
  EXPECT_EQ(past.limit_c, 13.0);
  EXPECT_EQ(past.day_limit_c, -2.5);
  EXPECT_NE(refusal("nights Bulbine --past --limit 13"), "");
}

TEST(CommandLine, SeveralChangesAtOnce) {
  const auto changes = command<WhatIfCommand>("whatif --warmer -2 --mirror").request.changes;
  ASSERT_EQ(changes.size(), 2U);
  EXPECT_TRUE(std::holds_alternative<Mirror>(changes[0]));
  EXPECT_EQ(std::get<Warmer>(changes[1]).by, CelsiusDelta{-2.0});
}

TEST(CommandLine, WarmerGoesFromTenBelowToTenAbove) {
  EXPECT_EQ(refusal("whatif --warmer 10"), "");
  EXPECT_EQ(refusal("whatif --warmer -10"), "");
  EXPECT_NE(refusal("whatif --warmer 10.01"), "");
  EXPECT_NE(refusal("whatif --warmer -10.01"), "");
  EXPECT_NE(refusal("whatif --warmer nan"), "");
  EXPECT_NE(refusal("whatif --warmer inf"), "");
}

TEST(CommandLine, ATaxonMayBeSeveralWords) {
  EXPECT_EQ(command<RulesShowCommand>("rules show Bulbine annua --json").taxon, "Bulbine annua");
}

TEST(CommandLine, TheListOfRulesTakesTheWordsOfRuleFiles) {
  const auto list = command<RulesListCommand>(
      "rules list old name --family Iridaceae --start at_once --growth opportunist --mat useless "
      "--seed-size dust --evidence-below grower --in-hand");
  EXPECT_EQ(list.request.text, "old name");
  EXPECT_EQ(list.request.family, "Iridaceae");
  EXPECT_EQ(list.request.start, species_rules::Start::at_once);
  EXPECT_EQ(list.request.growth, species_rules::Growth::opportunist);
  EXPECT_EQ(list.request.mat, species_rules::Mat::useless);
  EXPECT_EQ(list.request.seed_size, species_rules::SeedSize::dust);
  EXPECT_EQ(list.request.evidence_below, species_rules::Evidence::grower);
  EXPECT_TRUE(list.in_hand);
}

TEST(CommandLine, AWordThatNoRuleUsesIsAnsweredWithTheNearest) {
  for (const auto& [line, right] : std::vector<std::pair<std::string, std::string>>{
           {"rules list --start at-once", "at_once"},
           {"rules list --growth sumer", "summer"},
           {"rules list --mat harmfull", "harmful"},
           {"rules list --seed-size midium", "medium"},
           {"rules list --evidence-below grovers", "grower"},
           {"rules gaps --famly X", "--family"},
           {"rules gasp", "gaps"}}) {
    EXPECT_NE(refusal(line).find(right + (right.starts_with('-') || right == "gaps" ? "?" : "\"?")),
              std::string::npos)
        << refusal(line);
  }
}

TEST(CommandLine, GapsOfRulesMayBeAskedOfAFamilyOrOfWhatIsInHand) {
  const auto gaps = command<RulesGapsCommand>("rules gaps --family Aizoaceae --in-hand --all");
  EXPECT_EQ(gaps.request.family, "Aizoaceae");
  EXPECT_TRUE(gaps.request.all);
  EXPECT_TRUE(gaps.in_hand);
  EXPECT_TRUE(command<RulesShowCommand>("rules show Bulbine --why").why);
}

TEST(CommandLine, AGardenStartsFromPlaceAndReadings) {
  const auto start = command<StartCommand>("start my --latitude -33.1 --longitude +19.2 "
                                           "--readings a/station.csv --elevation 240");
  EXPECT_EQ(start.folder, "my");
  EXPECT_EQ(start.readings, "a/station.csv");
  EXPECT_EQ(start.garden.latitude, -33.1);
  EXPECT_EQ(start.garden.longitude, 19.2);
  EXPECT_EQ(start.garden.elevation_m, 240.0);
}

TEST(CommandLine, LatitudesEndAtThePoles) {
  const std::string rest = " --longitude 180 --readings f";
  EXPECT_EQ(refusal("start --latitude 90" + rest), "");
  EXPECT_NE(refusal("start --latitude 90.001" + rest), "");
}

TEST(CommandLine, ASowingIsANameInSeveralWordsAndANumber) {
  const QuickSowing sowing =
      command<SowCommand>("sow Albuca spiralis 25 --on 2026-03-02 --pots 2 --dry --trial t --arm a")
          .typed;
  EXPECT_EQ(sowing.what, "Albuca spiralis");
  EXPECT_EQ(sowing.seeds, 25);
  EXPECT_EQ(sowing.on, day("2026-03-02"));
  EXPECT_EQ(sowing.pots, 2);
  EXPECT_TRUE(sowing.dry);
  EXPECT_EQ(sowing.trial, "t");
  EXPECT_EQ(sowing.arm, "a");
}

TEST(CommandLine, ACountIsANameAndANumberThatMayBeNone) {
  const QuickCount count =
      command<CountCommand>("count 12 0 --dead 2 --of damping-off --phase back-after-rest").typed;
  EXPECT_EQ(count.what, "12");
  EXPECT_EQ(count.seen, 0);
  EXPECT_EQ(count.dead, 2);
  EXPECT_EQ(count.why, DeathCause::damping_off);
  EXPECT_EQ(count.phase, CountPhase::back_after_rest);
  EXPECT_EQ(command<CountCommand>("count albuca 7").typed.why, DeathCause::unknown);
}

TEST(CommandLine, AnUndoNamesItsEntry) {
  EXPECT_EQ(command<JournalUndoCommand>("journal undo 12").first, 12);
  EXPECT_EQ(command<JournalUndoCommand>("journal undo 12").last, 12);
}

TEST(CommandLine, AMistypedWordIsAnsweredWithTheNearest) {
  EXPECT_NE(refusal("nihgts").find("did you mean nights?"), std::string::npos);
  EXPECT_NE(refusal("plan --fahrenhiet").find("did you mean --fahrenheit?"), std::string::npos);
  EXPECT_NE(refusal("rules lsit").find("did you mean list?"), std::string::npos);
}

TEST(CommandLine, WhatIsUnknownOrHalfTypedIsRefused) {
  for (const char* line : {"serve",
                           "packet",
                           "check",
                           "water",
                           "note",
                           "sow",
                           "sow albuca",
                           "sow albuca 0",
                           "sow albuca 2.5",
                           "sow albuca 5 --arm a",
                           "count 7",
                           "count albuca -1",
                           "count albuca 7 --of gnats",
                           "count albuca 7 --dead 1 --of fairies",
                           "journal undo",
                           "journal undo x",
                           "plan --page f"}) {
    EXPECT_NE(refusal(line), "") << line;
  }
}

TEST(CommandLine, ASweepHoldsBothItsEnds) {
  EXPECT_EQ(command<WhatIfCommand>("whatif --sweep warmer=-2..1").sweep_k,
            (std::vector<double>{-2.0, -1.0, 0.0, 1.0}));
  EXPECT_EQ(command<WhatIfCommand>("whatif --sweep warmer=0..0.3:0.1").sweep_k,
            (std::vector<double>{0.0, 0.1, 0.2, 0.3}));
}

TEST(CommandLine, ChangesOfOneWhatIfStandTogether) {
  const auto command_typed =
      command<WhatIfCommand>("whatif --place there --rule Bulbine.night_limit_c=11 --bench b");
  EXPECT_EQ(command_typed.place, "there");
  ASSERT_EQ(command_typed.request.changes.size(), 2U);
  const auto rule = std::get<OneRuleValue>(command_typed.request.changes[0]);
  EXPECT_EQ(rule.taxon, "Bulbine");
  EXPECT_EQ(rule.field, "night_limit_c");
  EXPECT_EQ(rule.value, "11");
}

TEST(CommandLine, HelpAndVersionNeedNothingElse) {
  EXPECT_NE(command<ShowText>("--version").text.find("nightsow "), std::string::npos);
  EXPECT_NE(command<ShowText>("start --help").text.find("--latitude"), std::string::npos);
}

} // namespace
} // namespace nightsow::planner
