#pragma once

#include "climate/base/date.hpp"
#include "planner/answers/amounts_answer.hpp"
#include "planner/answers/carried_answer.hpp"
#include "planner/answers/first_water_answer.hpp"
#include "planner/answers/heads.hpp"
#include "planner/answers/reason.hpp"
#include "planner/answers/route_answer.hpp"
#include "planner/answers/saved_answer.hpp"
#include "planner/answers/sown_answer.hpp"
#include "planner/answers/spread.hpp"
#include "planner/answers/work_answer.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

struct GateAnswer {
  double limit_c = 0.0;
  std::optional<double> day_limit_c;
  int nights = 0;
  int of = 0;
  int counted = 0; ///< of the last 14 nights, at or under the limit
  int counted_of = 0;
  int needed = 0; ///< of the last 14
  bool binds = false;
  Spread stirs;
  Spread holds;
  Spread settles;
};

/// A germination test, and the share of living seed that could have come up in it.
struct TestAnswer {
  int sprouted = 0;
  int of = 0;
  std::optional<Date> on;
  double fit = 0.0;
};

/// What is known of the seed in the packet.
struct SeedAnswer {
  std::optional<double> age_years;
  bool store_known = true;
  std::optional<TestAnswer> tested;  ///< empty: none, or none that can be used
  std::optional<NumberSpread> alive; ///< share
  std::optional<NumberSpread> ripe;  ///< share; empty: age not known
  std::optional<Date> ripe_on;       ///< half of it ripe, kept as it is; empty: already, or unknown
  bool fading = false;
  double lost_by_waiting = 0.0; ///< share of today's living seed that dies within the coming year
};

/// The tray that a packet stands in. It is watered as one, so its day may be later than the
/// packet's own.
struct TrayPlace {
  std::string tray;
  std::optional<Date> first_water; ///< planned for; empty: the grower is away all that time
};

struct Sowing {
  std::string packet;
  std::string taxon; ///< as written
  std::string accepted;
  std::string rule;
  std::optional<double> seeds;
  std::string bench;
  std::string start; ///< cool, hot, any, at_once
  Verdict verdict = Verdict::wait;
  std::optional<GateAnswer> gate;
  std::string route;               ///< the one advised; empty: nothing could be compared
  std::vector<RouteAnswer> routes; ///< all that were compared, most plants first
  Keep keep;
  std::optional<Date> sow_on;
  std::optional<Date> in_hand_from; ///< it is harvested or received after today
  FirstWater first_water;
  std::optional<TrayPlace> tray; ///< empty: it has no day to be sown on, or none for first water
  SeedAnswer seed;
  std::optional<Expected> expected; ///< empty: seeds not counted, or no day of first water
  std::optional<int> keep_back; ///< of an irreplaceable packet: seeds to keep for another season
  How how;
  std::optional<Wish> wish; ///< empty: no number of plants is wanted, or nothing is expected
  WorkFacts work;
  std::vector<Reason> reasons; ///< the first of them is the `because` of the line
  std::vector<Reason> risks;
  std::vector<std::string> cautions;
};

/// A packet that is not for this season, or for no season here.
struct NotNow {
  std::string packet;
  std::string taxon;
  std::string accepted;
  std::string start;        ///< empty when the taxon is not known
  std::optional<Date> when; ///< empty: never here, or not known
  SeedAnswer seed;
  std::vector<Reason> reasons;
};

/// A packet in its tray.
struct LotPacket {
  std::string packet;
  std::string taxon;    ///< as written
  std::string accepted; ///< may be empty
  std::optional<double> seeds;
  std::optional<int> pots;
  std::string number; ///< as in packets.csv; may be empty, as the next
  std::string provenance;
  std::optional<Date> sow_on; ///< in a tray always there
};

/// Pots that are worked on together: one bench, first water on one condition and one day, one kind
/// of cover, bag and mat. One tray or several. Packets are sown dry on their own days and stand
/// until the last of them is in; seed that is sown at once stands only with what is sown on its
/// day.
struct Lot {
  bool carried = false; ///< pots that have been sown
  std::string id;       ///< made of what its packets share; other trays do not change it
  std::string group;    ///< of the trays that get first water together
  std::string bench;
  std::string start;
  Verdict verdict = Verdict::wait;
  std::string cover; ///< surface, thin, deep
  bool bag = false;
  bool mat = false;
  bool mat_off_at_night = false;
  std::optional<int> pots;    ///< of the packets that tell; empty: none does
  Date sow_on{};              ///< the first of its packets
  Date sown_by{};             ///< the last
  FirstWater first_water;     ///< of the packet that waits longest; the strictest limits of all
  std::optional<Date> waters; ///< the day on which that is planned for, the same in all of its
                              ///< group; empty: pots that grow, and wait for no first water
  std::optional<Date> waters_if_there; ///< the day it would be, were the grower not away
  std::optional<double> shade;    ///< share of the sun kept off in the first year, the most of them
  std::vector<LotPacket> packets; ///< by the day they are sown, then by packet
};

struct PlanAnswer {
  GardenHead garden;
  Date today{};
  int season = 0;
  bool preview = false; ///< every window of the season asked for has passed; this is the next one
  std::optional<PhasesHead> phases;
  ReadingsHead readings;
  std::vector<Sowing> sowings;     ///< what dies if it waits first
  std::vector<CarriedPot> carried; ///< what is due first
  std::vector<NotNow> not_now;
  std::optional<FreeDaysAnswer> free_days; ///< empty: nothing to lay
  Shopping shopping;
  std::vector<Lot> lots;         ///< what is watered first comes first
  std::vector<LotPacket> no_day; ///< sowings without a day, and so without a tray, by packet
  std::vector<Task> tasks;       ///< by date
  std::vector<DiaryEntry> diary; ///< the tasks again, drawn together, by date
  std::vector<Reason> warnings;
  int saves = 0;                         ///< how often a plan of this season has been saved
  std::optional<SinceSaved> since_saved; ///< empty: none was
};

} // namespace nightsow::planner
