#include "planner/render/json_parts.hpp"
#include "planner/render/to_json.hpp"
#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <limits>
#include <stdexcept>

namespace nightsow::planner {
namespace {

Json plan_json(const PlanAnswer& plan = small_plan()) {
  return Json::parse(to_json(plan));
}

std::vector<std::string> keys(const Json& json) {
  std::vector<std::string> result;
  for (const auto& item : json.items()) {
    result.push_back(item.key());
  }
  return result;
}

TEST(PlanJson, NamesStandInTheOrderOfTheInterface) {
  EXPECT_EQ(keys(plan_json()),
            (std::vector<std::string>{
                "schema",    "nightsow", "garden",  "today",    "season", "preview",    "phases",
                "readings",  "sowings",  "carried", "not_now",  "lots",   "no_day",     "tasks",
                "free_days", "shopping", "amounts", "warnings", "saves",  "since_saved"}));
}

TEST(PlanJson, WhatLaterVersionsFillIsThereAndEmpty) {
  const Json plan = plan_json();
  const Json& line = plan["sowings"][1];
  EXPECT_TRUE(line.at("route").is_null());
  EXPECT_TRUE(line.at("routes").empty());
  EXPECT_TRUE(line.at("keep").at("then").is_null());
  EXPECT_EQ(line.at("how").at("water"), "from_below_by_need");
  for (const auto* name : {"carried", "lots", "tasks", "shopping"}) {
    EXPECT_EQ(plan.at(name), Json::array()) << name;
  }
}

TEST(PlanJson, WhatToExpectIsTold) {
  const Json line = plan_json()["sowings"][1];
  EXPECT_EQ(line["seedlings"].dump(),
            R"({"mean":17.2,"p10":9,"p90":25,"first":"2026-05-03","half":"2026-05-20"})");
  EXPECT_EQ(line["plants"].dump(), R"({"mean":12.4,"p10":5,"p90":19})");
  EXPECT_EQ(line["losses"]["dead"], 3.1);
  EXPECT_EQ(line["losses"]["rest"], 8.6);
  EXPECT_EQ(line["first_water"]["week_costs"], 0.05);
}

TEST(PlanJson, WithoutCountedSeedNothingIsExpected) {
  const Json line = plan_json()["sowings"][0];
  for (const auto* name : {"seedlings", "plants", "losses"}) {
    EXPECT_TRUE(line.at(name).is_null()) << name;
  }
  EXPECT_TRUE(line["first_water"].at("week_costs").is_null());
}

TEST(PlanJson, WhatHasNoMeaningIsNullAndNeverLeftOut) {
  const Json line = plan_json()["sowings"][0];
  for (const auto* name : {"rule", "seeds", "bench", "gate"}) {
    EXPECT_TRUE(line.at(name).is_null()) << name;
  }
  EXPECT_TRUE(line.at("first_water").at("when").is_null());
  EXPECT_TRUE(plan_json()["not_now"][0].at("when").is_null());
}

TEST(PlanJson, FiguresArePrintedAsTheAnswerHasThem) {
  const Json line = plan_json()["sowings"][1];
  EXPECT_EQ(line["gate"]["limit_c"].dump(), "13");
  EXPECT_EQ(line["seed"]["lost_by_waiting"].dump(), "0.3");
  EXPECT_EQ(line["gate"]["holds"]["p50"], "2026-04-12");
}

TEST(PlanJson, AReasonHasCodeValuesAndItsSentence) {
  const Json reason = plan_json()["sowings"][1]["reasons"][0];
  EXPECT_EQ(reason["code"], "gate_waits");
  EXPECT_EQ(reason["values"]["limit_c"], 13);
  EXPECT_EQ(reason["values"]["bench"], "cold frame");
  EXPECT_NE(reason["text"].get<std::string>().find("13 °C"), std::string::npos);
}

TEST(PlanJson, ValuesOfEveryKindAreTold) {
  Reason reason{ReasonCode::seed_fading,
                {{"alive", Share{0.5}}, {"age_years", 1.3}, {"expect", 7}}};
  EXPECT_EQ(json_reasons({reason})[0]["values"].dump(),
            R"({"alive":0.5,"age_years":1.3,"expect":7})");
  reason = {ReasonCode::readings_stale, {{"last", day("2026-02-19")}, {"days", 12}}};
  EXPECT_EQ(json_reasons({reason})[0]["values"].dump(), R"({"last":"2026-02-19","days":12})");
}

TEST(PlanJson, AFigureThatIsNoNumberNeverLeavesTheHouse) {
  PlanAnswer plan = small_plan();
  plan.sowings[1].gate->limit_c = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THROW(static_cast<void>(to_json(plan)), std::logic_error);
}

TEST(PlanJson, BytesThatAreNoTextStopNobody) {
  PlanAnswer plan = small_plan();
  plan.sowings[0].taxon = "Dr\xf4me";
  EXPECT_EQ(plan_json(plan)["sowings"][0]["taxon"], "Dr\xef\xbf\xbdme");
}

TEST(PlanJson, TheSameAnswerTwiceIsTheSameBytes) {
  EXPECT_EQ(to_json(small_plan()), to_json(small_plan()));
}

TEST(NightsJson, AGenusIsToldInFull) {
  const Json genus = Json::parse(to_json(small_nights()))["genera"][0];
  EXPECT_EQ(keys(genus),
            (std::vector<std::string>{"genus",
                                      "bench",
                                      "limit_c",
                                      "day_limit_c",
                                      "nights",
                                      "of",
                                      "counted",
                                      "counted_of_14",
                                      "binds",
                                      "open",
                                      "stirs",
                                      "holds",
                                      "relapse",
                                      "relapse_after_today",
                                      "forecast",
                                      "recent",
                                      "reasons"}));
  EXPECT_EQ(genus["open"], "no");
}

TEST(PastNightsJson, AWordThatNeverCameIsNull) {
  PastNightsAnswer past;
  past.gates = {PastGate{
      "", 13.0, {}, 5, 7, true, 1, 1, {{2011, true, day("2011-04-01"), {}, {}, {"settles"}}}}};
  const Json gate = Json::parse(to_json(past))["gates"][0];
  EXPECT_TRUE(gate["genus"].is_null());
  EXPECT_EQ(
      gate["seasons"][0].dump(),
      R"({"season":2011,"usable":true,"stirs":"2011-04-01","holds":null,"settles":null,"unknown":["settles"]})");
}

TEST(WhatIfJson, BothSidesAreTold) {
  const Json json = Json::parse(to_json(small_whatif()));
  EXPECT_EQ(json["changes"].dump(), R"([{"change":"warmer","kelvin":2,"what":null}])");
  EXPECT_EQ(json["sowings"][0]["moved_days"], 12);
  EXPECT_EQ(json["sowings"][0]["before"]["plants"], 12.4);
  EXPECT_EQ(json["sowings"][0]["plants_change"], -3.1);
  EXPECT_EQ(json["sowings"][0]["before"]["expected"]["p50"], "2026-04-12");
}

TEST(ClimateJson, APlaceWithoutPhasesSaysWhy) {
  ClimateAnswer climate = small_climate();
  climate.phases.reset();
  climate.no_phases = {{ReasonCode::no_cooling_limb,
                        {{"swing_k", CelsiusDelta{3.0}}, {"why", std::string{"swing_too_small"}}}}};
  const Json json = Json::parse(to_json(climate));
  EXPECT_TRUE(json["phases"].is_null());
  EXPECT_EQ(json["no_phases"][0]["values"]["why"], "swing_too_small");
}

TEST(ClimateJson, AForecastIsToldFromReadings) {
  ClimateAnswer climate = small_climate();
  climate.files.push_back({"coming.json", "JSON", "°C", "", {}, true});
  const Json files = Json::parse(to_json(climate))["files"];
  EXPECT_EQ(files[0]["kind"], "readings");
  EXPECT_EQ(files[1]["kind"], "forecast");
}

TEST(ClimateJson, ALoggersRecordStandsUnderItsBench) {
  ClimateAnswer climate = small_climate();
  LoggerRecord record;
  record.bench = "frame";
  record.counts = {{"spike", 0, 1}};
  record.findings = {{"spike", "ignored", day("2025-07-14"), "frame.csv", 17, 31.0, {}}};
  record.suspicions = {{"swapped", 0.8, "Nights above their days"}};
  climate.loggers = {record};
  const Json logger = Json::parse(to_json(climate))["loggers"].at(0);
  EXPECT_EQ(logger["bench"], "frame");
  EXPECT_TRUE(logger["from"].is_null());
  EXPECT_EQ(logger["nights"], 0);
  EXPECT_EQ(logger["counts"].dump(), R"([{"kind":"spike","used":0,"ignored":1}])");
  EXPECT_EQ(logger["findings"][0]["line"], 17);
  EXPECT_EQ(logger["suspicions"].dump(),
            R"([{"kind":"swapped","share":0.8,"text":"Nights above their days"}])");
}

TEST(RulesJson, ANumberHasItsRangeAndAWordHasNone) {
  const Json json = Json::parse(to_json(small_rule()));
  EXPECT_EQ(json["values"][1]["low"], 9.5);
  EXPECT_EQ(json["values"][0]["value"], "cool");
  EXPECT_TRUE(json["values"][0]["low"].is_null());
  EXPECT_TRUE(json["read_as"].is_null());
}

TEST(RulesJson, ThePacketBackStandsThereAsItIsShown) {
  RuleShowAnswer rule = small_rule();
  const Json json = Json::parse(to_json(rule));
  ASSERT_FALSE(json["packet_back"].empty());
  EXPECT_EQ(json["packet_back"][0]["about"], "when");
  EXPECT_EQ(json["packet_back"][0]["text"],
            "Cool nights start it: sow for the time when nights lie at or under 12 °C (9.5 to "
            "14.5).");
  EXPECT_TRUE(json["half_ripe"].is_null());
  rule.half_ripe = RipeningDays{80, 40, 160, 20};
  EXPECT_EQ(Json::parse(to_json(rule))["half_ripe"]["days"], 80);
}

TEST(RulesJson, AGapHasItsTrialWithTheEndsOfItsRange) {
  const Json json = Json::parse(to_json(small_gaps()));
  EXPECT_EQ(json["fields"][0]["gaps"][0]["trial"], "Sow half at 9.5 °C and half at 14.5 °C.");
  EXPECT_EQ(json["fields"][0]["gaps"][0]["value"]["low"], 9.5);
  EXPECT_TRUE(json["family"].is_null());
}

} // namespace
} // namespace nightsow::planner
