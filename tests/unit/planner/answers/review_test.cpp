#include "planner/answers/review.hpp"

#include "climate/seasons.hpp"
#include "planner/answers/lessons.hpp"
#include "planner/model/bench_seasons.hpp"
#include "planner/render/review.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace nightsow::planner {
namespace {

/// A garden in which sowings of the season before can be reviewed.
struct Reviewed {
  GardenFolder folder;
  Date today{};
  climate::Season season; ///< the one before

  [[nodiscard]] ReviewAnswer review(std::optional<int> asked = {}) const {
    return planner::review(folder, as_of(folder, today), {asked, {}});
  }

  void sow(EntryId id, const std::string& taxon, int after_hottest, int seeds) {
    RecordedSowing sowing;
    sowing.id = id;
    sowing.taxon = taxon;
    sowing.on = season.hottest + Days{after_hottest};
    sowing.first_water = sowing.on;
    sowing.seeds = seeds;
    sowing.bench = "open bench";
    sowing.packet.taxon = taxon;
    sowing.packet.harvested = DateRange{sowing.on - Days{200}, sowing.on - Days{200}};
    folder.records.sowings.push_back(sowing);
  }

  void count(EntryId sowing, int after_hottest, int seen, int dead = 0) {
    SeedlingCount count;
    count.id = 100 + static_cast<EntryId>(folder.records.counts.size());
    count.sowing = sowing;
    count.on = season.hottest + Days{after_hottest};
    count.seen = seen;
    count.dead = dead;
    count.why = dead > 0 ? DeathCause::damping_off : DeathCause::unknown;
    folder.records.counts.push_back(count);
  }
};

Reviewed reviewed(int hottest) {
  support::InventedGarden garden;
  garden.climate.hottest_day_of_year = hottest;
  Reviewed result{support::folder_of(garden), support::today_of(garden), {}};
  const LoadedGarden known = as_of(result.folder, result.today);
  const BenchSeasons seasons(known);
  result.season =
      climate::season_named(*seasons.station().turning.phases, year_of(result.today) - 1);
  return result;
}

const ReviewLine& line_of(const ReviewAnswer& answer, std::int64_t sowing) {
  return *std::find_if(answer.lines.begin(), answer.lines.end(), [&](const ReviewLine& line) {
    return line.sowing == sowing;
  });
}

bool teaches(const ReviewAnswer& answer, const std::string& kind) {
  return std::any_of(answer.lessons.begin(), answer.lessons.end(), [&](const Lesson& lesson) {
    return lesson.kind == kind;
  });
}

class ReviewOnBothHalves : public testing::TestWithParam<int> {
protected:
  Reviewed here_ = reviewed(GetParam());
};

TEST_P(ReviewOnBothHalves, HoldsWhatCameAgainstWhatWasPromised) {
  here_.sow(1, "Lachenalia mutabilis", 75, 40);
  here_.count(1, 110, 10);
  here_.count(1, 200, 18);
  const ReviewAnswer answer = here_.review();
  EXPECT_EQ(answer.season, here_.season.name);
  const ReviewLine& line = line_of(answer, 1);
  ASSERT_TRUE(line.promised);
  EXPECT_GT(line.promised->seedlings.mean, 5.0);
  EXPECT_LT(line.promised->plants.mean, line.promised->seedlings.mean);
  EXPECT_EQ(line.came, 18);
  EXPECT_EQ(line.outcome, "as_promised");
  EXPECT_EQ(answer.seedlings_held.within, 1);
}

TEST_P(ReviewOnBothHalves, APromiseKnowsOnlyWhatWasKnownOnItsDay) {
  here_.sow(1, "Lachenalia mutabilis", 75, 40);
  const NumberSpread before = line_of(here_.review(), 1).promised->seedlings;
  here_.today = here_.season.hottest + Days{80};
  const NumberSpread then = line_of(here_.review(here_.season.name), 1).promised->seedlings;
  EXPECT_EQ(before.mean, then.mean);
  EXPECT_EQ(before.p10, then.p10);
}

TEST_P(ReviewOnBothHalves, SaysWhyNothingCameWhereItIsKnown) {
  here_.sow(1, "Lachenalia mutabilis", 75, 40);
  here_.sow(2, "Lachenalia mutabilis", 75, 40);
  here_.sow(3, "Lachenalia mutabilis", 75, 40);
  for (const EntryId id : {1, 2, 3}) {
    here_.count(id, 230, 0);
  }
  here_.folder.records.press_tests = {{7, 1, here_.season.hottest + Days{235}, 0, 5},
                                      {8, 2, here_.season.hottest + Days{235}, 5, 0}};
  const ReviewAnswer answer = here_.review();
  EXPECT_EQ(line_of(answer, 1).outcome, "nothing");
  EXPECT_EQ(line_of(answer, 1).why, "seed_was_dead");
  EXPECT_EQ(line_of(answer, 2).why, "seed_is_sound");
  EXPECT_EQ(line_of(answer, 3).why, "");
  EXPECT_TRUE(teaches(answer, "seed_was_dead"));
  EXPECT_TRUE(teaches(answer, "keep_the_pot"));
  EXPECT_TRUE(teaches(answer, "press_them"));
}

TEST_P(ReviewOnBothHalves, IsJudgedByThePlantsBackAfterTheRest) {
  here_.sow(1, "Lachenalia mutabilis", 75, 60);
  here_.count(1, 110, 30);
  here_.count(1, 200, 20, 10);
  here_.count(1, 400, 2);
  here_.folder.records.counts.back().phase = CountPhase::back_after_rest;
  const ReviewAnswer answer = here_.review();
  EXPECT_EQ(answer.back, 2);
  EXPECT_EQ(answer.judged, 1);
  EXPECT_EQ(answer.plants_held.below, 1);
  EXPECT_EQ(answer.deaths.front().of, "damping_off");
  EXPECT_EQ(answer.deaths.front().seedlings, 10);
  EXPECT_TRUE(teaches(answer, "lost_in_rest"));
  EXPECT_TRUE(teaches(answer, "deaths"));
}

TEST_P(ReviewOnBothHalves, APotCarriedOverStandsWithTheSeasonInWhichItCame) {
  here_.sow(1, "Monsonia crassicaulis", 75, 12);
  here_.count(1, 200, 1);
  here_.count(1, 365 + 50, 6);
  const int next = here_.season.name + 1;
  const ReviewAnswer answer = here_.review(next);
  ASSERT_EQ(answer.carried.size(), 1U);
  EXPECT_EQ(answer.carried.front().came_before, 1);
  EXPECT_EQ(answer.carried.front().came_now, 5);
  EXPECT_TRUE(answer.lines.empty());
}

TEST_P(ReviewOnBothHalves, ACountOfItsRestStillTellsOfItsSeason) {
  here_.sow(1, "Lachenalia mutabilis", 75, 40);
  here_.count(1, 200, 3);
  here_.count(1, 330, 20); // behind the middle of the warming limb
  EXPECT_EQ(line_of(here_.review(), 1).came, 20);
  EXPECT_TRUE(here_.review(here_.season.name + 1).carried.empty());
}

TEST_P(ReviewOnBothHalves, JudgesThePromiseThatASavedPlanMade) {
  here_.sow(1, "Lachenalia mutabilis", 75, 40);
  here_.count(1, 200, 18);
  RecordedSowing& sown = here_.folder.records.sowings.front();
  sown.packet_id = "p1";
  SavedPlan saved;
  saved.season = here_.season.name;
  saved.on = sown.on - Days{10};
  SavedLine line;
  line.packet = "p1";
  line.seeds = 40.0;
  line.seedlings = SavedRange{30.0, 25.0, 36.0};
  line.plants = SavedRange{12.0, 3.0, 20.0};
  line.not_before = sown.on - Days{5};
  line.bench = here_.folder.garden.benches.front().name;
  saved.lines = {line};
  const auto judged = [&] {
    return line_of(
        planner::review(here_.folder, as_of(here_.folder, here_.today), {std::nullopt, {saved}}),
        1);
  };
  EXPECT_EQ(judged().promised_on, saved.on);
  EXPECT_EQ(judged().promised->seedlings.p90, 36.0);
  EXPECT_EQ(judged().outcome, "fewer");
  saved.on = sown.on + Days{1}; // it knew that it was sown
  EXPECT_FALSE(judged().promised_on);
  EXPECT_TRUE(judged().promised);
  saved.on = sown.on - Days{10};
  saved.lines.front().seeds = 60.0;
  EXPECT_FALSE(judged().promised_on);
  saved.lines.front().seeds = 40.0;
  saved.lines.front().not_before = sown.on + Days{1}; // watered before the day it was given
  EXPECT_FALSE(judged().promised_on);
  saved.lines.front().not_before.reset();
  EXPECT_TRUE(judged().promised_on);
  saved.lines.front().bench = "another bench";
  EXPECT_FALSE(judged().promised_on);
}

TEST_P(ReviewOnBothHalves, AClosedSowingIsSaidAndNotJudgedTooEarly) {
  here_.sow(1, "Lachenalia mutabilis", 75, 40);
  here_.count(1, 90, 0);
  here_.folder.records.closings = {
      {50, 1, here_.season.hottest + Days{95}, ClosingReason::thrown_out}};
  const ReviewAnswer answer = here_.review();
  const ReviewLine& line = line_of(answer, 1);
  EXPECT_EQ(line.outcome, "closed_early");
  EXPECT_EQ(line.closed_why, "thrown_out");
  EXPECT_EQ(answer.seedlings_held.told, 0);
  EXPECT_FALSE(teaches(answer, "press_them"));
}

INSTANTIATE_TEST_SUITE_P(South, ReviewOnBothHalves, testing::Values(support::hottest_in_the_south));
INSTANTIATE_TEST_SUITE_P(North, ReviewOnBothHalves, testing::Values(support::hottest_in_the_north));

TEST(Review, AnEmptyRecordAndASeasonWithoutSowingsAreAnswers) {
  Reviewed here = reviewed(support::hottest_in_the_south);
  EXPECT_TRUE(here.review().seasons.empty());
  here.sow(1, "Lachenalia mutabilis", 75, 40);
  const ReviewAnswer other = here.review(here.season.name - 3);
  EXPECT_TRUE(other.lines.empty());
  EXPECT_EQ(other.seasons, std::vector{here.season.name});
}

TEST(Review, ASowingThatNobodyCountedIsSaidAndInNoRange) {
  Reviewed here = reviewed(support::hottest_in_the_south);
  here.sow(1, "Lachenalia mutabilis", 75, 60);
  const ReviewAnswer answer = here.review();
  EXPECT_EQ(line_of(answer, 1).outcome, "not_counted");
  EXPECT_EQ(answer.seedlings_held.told, 0);
  EXPECT_TRUE(teaches(answer, "never_counted"));
}

TEST(Lessons, AreThreeAtMostAndTheCostliestStandsFirst) {
  ReviewAnswer review;
  for (const int seedlings : {3, 40, 12, 9}) {
    review.deaths.push_back({"damping_off", seedlings, 2});
  }
  const std::vector<Lesson> lessons = lessons_of(review, {});
  ASSERT_EQ(lessons.size(), 3U);
  EXPECT_EQ(lessons.front().count, 40);
  EXPECT_EQ(lessons.back().count, 9);
}

TEST(Lessons, AskForACountAfterTheRestOnlyWhereThereIsOne) {
  for (const auto& [annual, evergreen] : {std::pair{false, false}, {true, false}, {false, true}}) {
    ReviewAnswer review;
    review.rest_is_over = true;
    ReviewLine line;
    line.seeds = 40;
    line.came = 30;
    line.annual = annual;
    line.evergreen = evergreen;
    line.outcome = "as_promised";
    review.lines = {line};
    EXPECT_EQ(lessons_of(review, {}).size(), annual || evergreen ? 0U : 1U);
  }
}

TEST(Lessons, EachIsASentence) {
  for (const char* kind : {"deaths",
                           "seed_was_dead",
                           "keep_the_pot",
                           "press_them",
                           "promised_too_much",
                           "promised_too_little",
                           "trial_settled",
                           "trial_open",
                           "never_counted",
                           "count_after_rest",
                           "lost_in_rest",
                           "watered_early"}) {
    Lesson lesson;
    lesson.kind = kind;
    lesson.of = lesson.kind == "deaths" ? "frost" : "Albuca spiralis";
    lesson.count = 4;
    lesson.sowings = 2;
    const std::string text = lesson_text(lesson);
    EXPECT_TRUE(text.size() > 20 && text.back() == '.') << kind << ": " << text;
  }
}

} // namespace
} // namespace nightsow::planner
