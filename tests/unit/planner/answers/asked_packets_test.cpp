#include "planner/answers/asked_packets.hpp"

#include "climate/base/problem.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace nightsow::planner {
namespace {

using Names = std::vector<std::string>;

PlanAnswer three_packets_in_two_trays() {
  PlanAnswer answer;
  answer.sowings.resize(2);
  answer.sowings[0].packet = "S01";
  answer.sowings[0].taxon = "Homeria elegans";
  answer.sowings[0].accepted = "Moraea elegans";
  answer.sowings[1].packet = "S02";
  answer.sowings[1].taxon = answer.sowings[1].accepted = "Bulbine annua";
  answer.not_now.resize(1);
  answer.not_now[0].packet = "S03";
  answer.not_now[0].taxon = answer.not_now[0].accepted = "Albuca spiralis";
  answer.lots.resize(2);
  answer.lots[0].packets = {{"S01", "Homeria elegans", "", {}, {}, "", "", {}}};
  answer.lots[1].packets = {{"S02", "Bulbine annua", "", {}, {}, "", "", {}}};
  answer.tasks.resize(2);
  answer.tasks[0].packets = {"S01"};
  answer.tasks[1].packets = {"S01", "S02"};
  answer.diary.resize(2);
  answer.diary[0].tasks = {answer.tasks[0]};
  answer.diary[1].tasks = answer.tasks;
  answer.shopping.items.resize(1);
  return answer;
}

Names packets_left(const Names& names) {
  PlanAnswer answer = three_packets_in_two_trays();
  keep_asked(names, answer);
  Names left;
  for (const Sowing& sowing : answer.sowings) {
    left.push_back(sowing.packet);
  }
  for (const NotNow& line : answer.not_now) {
    left.push_back(line.packet);
  }
  return left;
}

TEST(AskedPackets, AreCalledByIdOrByTheBeginningOfEitherName) {
  EXPECT_EQ(packets_left({"S02"}), Names{"S02"});
  EXPECT_EQ(packets_left({"homeria"}), Names{"S01"});
  EXPECT_EQ(packets_left({"Moraea"}), Names{"S01"});
  EXPECT_EQ(packets_left({"albuca", "S02"}), (Names{"S02", "S03"}));
  EXPECT_EQ(packets_left({}), (Names{"S01", "S02", "S03"}));
}

TEST(AskedPackets, KeepTheTraysAndTheWorkInWhichTheyTakePart) {
  PlanAnswer answer = three_packets_in_two_trays();
  keep_asked({"bulbine"}, answer);
  ASSERT_EQ(answer.lots.size(), 1U);
  EXPECT_EQ(answer.lots[0].packets.front().packet, "S02");
  EXPECT_EQ(answer.tasks.size(), 1U);
  ASSERT_EQ(answer.diary.size(), 1U);
  EXPECT_EQ(answer.diary[0].tasks.size(), 1U);
}

TEST(AskedPackets, LeaveNoShoppingListOfOthers) {
  PlanAnswer answer = three_packets_in_two_trays();
  keep_asked({"S02"}, answer);
  EXPECT_TRUE(answer.shopping.items.empty());
}

TEST(AskedPackets, OfANameNobodyHasTellTheNearest) {
  PlanAnswer answer = three_packets_in_two_trays();
  try {
    keep_asked({"Bulbine anua"}, answer);
    FAIL() << "a name that no packet has went by";
  } catch (const UsageError& error) {
    EXPECT_NE(std::string(error.what()).find("Bulbine annua"), std::string::npos);
  }
}

} // namespace
} // namespace nightsow::planner
