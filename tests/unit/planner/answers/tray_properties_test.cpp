#include "planner/answers/plan.hpp"
#include "planner/answers/tasks.hpp"
#include "planner/model/sowing_days.hpp"
#include "planner/render/dates.hpp"
#include "planner/render/plan_files.hpp"
#include "planner/render/to_json.hpp"
#include "tests/support/invented_garden.hpp"
#include "tests/support/numbers.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace nightsow::planner {
namespace {

// What must hold of trays, their work and the files made of them, whatever the garden.

using support::Numbers;

// Of every start, with and without bags and mats.
constexpr std::array<std::string_view, 14> kinds{"Bulbine annua",
                                                 "Lachenalia mutabilis",
                                                 "Albuca spiralis",
                                                 "Conophytum bilobum",
                                                 "Haworthia truncata",
                                                 "Pachypodium namaquanum",
                                                 "Aloidendron pillansii",
                                                 "Brunsvigia josephinae",
                                                 "Monsonia crassicaulis",
                                                 "Pelargonium triste",
                                                 "Crocosmia aurea",
                                                 "Moraea villosa",
                                                 "Dioscorea elephantipes",
                                                 "Romulea rosea"};

LoadedGarden some_garden(unsigned seed) {
  Numbers numbers{seed * 15485863U};
  support::InventedGarden invented;
  invented.climate.hottest_day_of_year =
      seed % 2 == 0 ? support::hottest_in_the_south : support::hottest_in_the_north;
  invented.days_after_hottest = numbers.upto(300) - 60;
  invented.benches = {support::open_bench(), support::bench_with("frame", 2.0, 4.0)};
  invented.mats = {support::mat_with(8.0, 28.0)};
  if (numbers.upto(2) > 0) {
    invented.sowing_days = {"sat", "sun"};
  }
  for (int packet = 0; packet < 14; ++packet) {
    invented.packets.push_back(
        fmt::format("{}, {} seeds, harvested {} days ago, as P{:02}{}",
                    kinds.at(static_cast<std::size_t>(numbers.upto(kinds.size() - 1))),
                    4 + numbers.upto(60),
                    20 + numbers.upto(600),
                    packet,
                    numbers.upto(1) == 0 ? ", on frame" : ""));
  }
  const Date today = support::today_of(invented);
  if (numbers.upto(1) == 0) {
    const Date from = today + Days{numbers.upto(60)};
    invented.away = {{from, from + Days{numbers.upto(20)}}};
  }
  LoadedGarden garden = support::garden_of(invented);
  if (numbers.upto(3) > 0) {
    garden.garden.pots_per_day = 4 + numbers.upto(8);
  }
  if (numbers.upto(1) == 0) {
    garden.garden.benches.front().pots = 10 + numbers.upto(20);
  }
  garden.garden.mats.front().pots = 4 + numbers.upto(8);
  for (Packet& packet : garden.packets) {
    packet.irreplaceable = numbers.upto(3) == 0;
    if (numbers.upto(2) == 0) {
      packet.wanted_plants = 1 + numbers.upto(10);
    }
  }
  return garden;
}

class AnyTrays : public testing::TestWithParam<unsigned> {
protected:
  void SetUp() override {
    garden_ = some_garden(GetParam());
    answer_ = plan(garden_, {});
    for (const Sowing& sowing : answer_.sowings) {
      sowings_[sowing.packet] = &sowing;
    }
  }

  LoadedGarden garden_;
  PlanAnswer answer_;
  std::map<std::string, const Sowing*> sowings_;
};

// Packet and day as each file and the list of work tell them.
using SowingDays = std::map<std::string, std::string>;

SowingDays days_of_tasks(const PlanAnswer& answer) {
  SowingDays days;
  for (const Task& task : answer.tasks) {
    if (is_sowing(task.kind)) {
      for (const std::string& packet : task.packets) {
        EXPECT_TRUE(days.emplace(packet, format_iso_date(task.on)).second) << packet;
      }
    }
  }
  return days;
}

SowingDays days_of_table(const PlanAnswer& answer) {
  SowingDays days;
  std::istringstream lines{plan_csv(answer)};
  std::string line;
  std::getline(lines, line);
  while (std::getline(lines, line)) {
    std::vector<std::string> cells;
    std::istringstream row{line};
    for (std::string cell; std::getline(row, cell, ',');) {
      cells.push_back(cell);
    }
    const bool in_tray = !cells.at(6).empty();
    if (in_tray) {
      days[cells.at(0)] = cells.at(9);
    }
  }
  return days;
}

SowingDays days_of_labels(const PlanAnswer& answer) {
  SowingDays days;
  const std::string page = plan_labels(answer);
  constexpr std::string_view packet_begins = "<span class=\"packet\">";
  constexpr std::string_view day_begins = "<p>sown ";
  for (std::size_t at = page.find(packet_begins); at != std::string::npos;
       at = page.find(packet_begins, at)) {
    at += packet_begins.size();
    const std::string packet = page.substr(at, page.find('<', at) - at);
    at = page.find(day_begins, at) + day_begins.size();
    days[packet] = page.substr(at, page.find('<', at) - at);
  }
  return days;
}

SowingDays days_of_sheet(const PlanAnswer& answer) {
  SowingDays days;
  std::istringstream lines{bench_sheet(answer, {})};
  std::string day;
  for (std::string line; std::getline(lines, line);) {
    if (line.starts_with("  sow ")) {
      day = line.substr(6, line.find(',') - 6);
    } else if (line.starts_with("No day yet")) {
      day.clear();
    } else if (line.starts_with('P') && !line.starts_with("Packet") && !day.empty()) {
      days[line.substr(0, line.find(' '))] = day;
    }
  }
  return days;
}

TEST_P(AnyTrays, AreSownOnTheSameDayInTheWorkTheTableTheSheetAndOnLabels) {
  const SowingDays tasks = days_of_tasks(answer_);
  EXPECT_EQ(days_of_table(answer_), tasks);
  const SowingDays labels = days_of_labels(answer_);
  const SowingDays sheet = days_of_sheet(answer_);
  EXPECT_EQ(sheet.size(), tasks.size());
  for (const auto& [packet, on] : tasks) {
    const Date day = *sowings_.at(packet)->sow_on;
    EXPECT_EQ(on, format_iso_date(day)) << packet;
    EXPECT_EQ(labels.at(packet), date_text(day)) << packet;
    EXPECT_EQ(sheet.at(packet), day_text(day, answer_.today)) << packet;
  }
}

TEST_P(AnyTrays, OfSeedThatDiesDryAreWateredOnTheDayOnWhichAllOfThemIsSown) {
  std::set<std::string> at_once;
  for (const Lot& lot : answer_.lots) {
    if (lot.start == "at_once") {
      at_once.insert(lot.id);
      for (const LotPacket& packet : lot.packets) {
        EXPECT_EQ(packet.sow_on, lot.waters) << lot.id << ' ' << packet.packet;
      }
    }
  }
  for (const Task& task : answer_.tasks) {
    if (is_sowing(task.kind)) {
      EXPECT_EQ(task.kind, at_once.contains(task.lot) ? TaskKind::sow_wet : TaskKind::sow_dry)
          << task.lot;
    }
  }
}

TEST_P(AnyTrays, HoldWhatHasADayOnceAndNothingElse) {
  std::map<std::string, int> times;
  for (const Lot& lot : answer_.lots) {
    for (const LotPacket& packet : lot.packets) {
      ++times[packet.packet];
    }
  }
  for (const LotPacket& packet : answer_.no_day) {
    times[packet.packet] += 100;
  }
  for (const Sowing& sowing : answer_.sowings) {
    const bool has_day =
        sowing.sow_on && day_of_water(sowing.verdict, sowing.first_water, answer_.today);
    EXPECT_EQ(times[sowing.packet], has_day ? 1 : 100) << sowing.packet;
  }
  EXPECT_EQ(times.size(), answer_.sowings.size());
}

TEST_P(AnyTrays, AreWateredWithinTheWindowOfEachPacketOnceAllAreSown) {
  for (const Lot& lot : answer_.lots) {
    for (const LotPacket& packet : lot.packets) {
      const Sowing& sowing = *sowings_.at(packet.packet);
      EXPECT_LE(*sowing.sow_on, lot.waters) << packet.packet;
      EXPECT_GE(lot.waters, sowing.first_water.not_before.value_or(*lot.waters)) << packet.packet;
      const Date latest = sowing.first_water.no_later_than.value_or(*lot.waters);
      EXPECT_LE(lot.waters_if_there.value_or(*lot.waters), latest) << packet.packet;
      // Later only where the grower is away all the time until then.
      for (Date day = latest; lot.waters > latest && day >= *lot.waters_if_there; day -= Days{1}) {
        EXPECT_TRUE(is_away(garden_.garden.away, day)) << packet.packet;
      }
    }
    EXPECT_FALSE(is_away(garden_.garden.away, *lot.waters)) << lot.id;
  }
}

TEST_P(AnyTrays, AreFirstWateredWhenTheirWorkSaysSo) {
  std::map<std::string, Date> water;
  for (const Task& task : answer_.tasks) {
    if (task.kind == TaskKind::first_water) {
      water[task.lot] = task.on;
    }
  }
  for (const Lot& lot : answer_.lots) {
    EXPECT_EQ(water.at(lot.id), lot.waters) << lot.id;
  }
}

TEST_P(AnyTrays, HoldNoMorePotsADayThanTheGrowerCanSow) {
  const std::optional<int> most = garden_.garden.pots_per_day;
  std::map<Date, std::vector<int>> pots;
  for (const Lot& lot : answer_.lots) {
    for (const LotPacket& packet : lot.packets) {
      // What has no free day in time keeps a day of its own, and is no sowing that was laid.
      if (is_sowing_day(garden_.garden, *packet.sow_on)) {
        pots[*packet.sow_on].push_back(packet.pots.value_or(1));
      }
    }
  }
  for (const auto& [day, of_packets] : pots) {
    int sum = 0;
    for (const int one : of_packets) {
      sum += one;
    }
    EXPECT_TRUE(!most || of_packets.size() == 1 || sum <= *most) << format_iso_date(day);
  }
}

TEST_P(AnyTrays, AreSownWithNoMoreSeedThanThereIs) {
  for (const Sowing& sowing : answer_.sowings) {
    EXPECT_LE(sowing.keep_back.value_or(0) + sowing.how.seeds_to_sow.value_or(0),
              std::lround(*sowing.seeds))
        << sowing.packet;
  }
}

TEST_P(AnyTrays, AreTheSameWhateverTheOrderOfThePackets) {
  const std::string before = to_json(answer_);
  const std::string calendar = plan_calendar(answer_);
  std::reverse(garden_.packets.begin(), garden_.packets.end());
  const PlanAnswer after = plan(garden_, {});
  EXPECT_EQ(to_json(after), before);
  EXPECT_EQ(plan_calendar(after), calendar);
}

TEST_P(AnyTrays, HaveNoLastDayForWaterInThePast) {
  for (const Sowing& sowing : answer_.sowings) {
    EXPECT_GE(sowing.first_water.no_later_than.value_or(answer_.today), answer_.today)
        << sowing.packet << ' ' << sowing.taxon;
  }
}

TEST_P(AnyTrays, WarnWheneverSomethingIsLeftOver) {
  const int left_over = answer_.free_days ? answer_.free_days->left_over : 0;
  const bool warned =
      std::any_of(answer_.warnings.begin(), answer_.warnings.end(), [](const Reason& warning) {
        return warning.code == ReasonCode::bench_full || warning.code == ReasonCode::mat_full ||
               warning.code == ReasonCode::pots_a_day_short;
      });
  EXPECT_EQ(warned, left_over > 0);
}

INSTANTIATE_TEST_SUITE_P(InGardensOfAllSorts, AnyTrays, testing::Range(1U, 6U));

} // namespace
} // namespace nightsow::planner
