#include "planner/render/account_chart.hpp"
#include "planner/render/answer_text.hpp"
#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

using support::day;

CurvePoint point(std::string_view on, NumberSpread expected, std::optional<int> counted = {}) {
  return {day(on), expected, counted};
}

SowingAccount small_account() {
  SowingAccount account;
  account.sowing = 3;
  account.taxon = "Bulbine annua";
  account.rule = "Bulbine";
  account.bench = "open bench";
  account.sown = day("2026-03-02");
  account.first_water = day("2026-03-09");
  account.seeds = 20;
  account.counted_on = day("2026-04-02");
  account.up = 5;
  account.alive = 4;
  account.died = 1;
  account.expected_up = NumberSpread{8.2, 4, 13};
  account.missing = {{"dead", 0.2, 0.0, 0.4, 0, 6},
                     {"nights_too_warm", 0.8, 0.6, 1.0, 9, 15},
                     {"heat", 0.0, 0.0, 0.0, 0, 0}};
  account.step = "wait";
  account.until = day("2026-05-01");
  return account;
}

AccountAnswer answer_of(std::vector<SowingAccount> accounts) {
  AccountAnswer answer;
  answer.garden = {"Invented slope", -33.0, 19.0};
  answer.today = day("2026-04-02");
  answer.accounts = std::move(accounts);
  return answer;
}

TEST(AccountChart, DrawsTheRangeItsMeanAndTheCount) {
  EXPECT_EQ(account_chart({point("2026-03-09", {2, 0, 4}), point("2026-03-16", {5, 3, 8}, 9)}, 10),
            "                0                  10\n"
            "   9 Mar 2026  |----+----            |\n"
            "  16 Mar 2026  |      ----+------ o  | 9 counted\n");
}

TEST(AccountText, TellsCountsAndTheLossesThatMayBe) {
  const std::string text = account_text(answer_of({small_account()}), {});
  EXPECT_NE(text.find("Sowing 3: Bulbine annua, rule Bulbine"), std::string::npos) << text;
  EXPECT_NE(text.find("sown 2 Mar 2026, first water 9 Mar 2026"), std::string::npos) << text;
  EXPECT_NE(text.find("5 of 20 up, 1 of them gone since"), std::string::npos) << text;
  EXPECT_NE(text.find("Waits for its nights"), std::string::npos) << text;
  EXPECT_EQ(text.find("Killed by heat"), std::string::npos) << text;
}

TEST(AccountText, GroupsWhatPressedSeedWouldLeadTo) {
  SowingAccount account = small_account();
  account.press = PressToDecide{{"stop", "stop", "cool_it", "cool_it", "cool_it", "cool_it"}};
  account.advice.push_back({ReasonCode::account_press, {{"sowing", 3}}});
  const std::string text = account_text(answer_of({account}), {});
  EXPECT_NE(text.find("0 to 1 firm: stop; 2 to 5 firm: cool it"), std::string::npos) << text;
}

TEST(AccountText, OfSeveralOpenSowingsALineEachIsEnough) {
  AccountAnswer answer = answer_of({small_account(), small_account()});
  answer.overview = true;
  answer.closed = 2;
  const std::string text = account_text(answer, {});
  EXPECT_NE(text.find("Wait, 1 May"), std::string::npos) << text;
  EXPECT_NE(text.find("2 sowings left out"), std::string::npos) << text;
  EXPECT_EQ(text.find("Sowing 3:"), std::string::npos) << text;
}

TEST(AccountText, SaysHowToBeginWhereNothingIsSown) {
  EXPECT_NE(account_text(answer_of({}), {}).find("nightsow sow NAME SEEDS"), std::string::npos);
}

} // namespace
} // namespace nightsow::planner
