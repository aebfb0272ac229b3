#pragma once

#include "climate/base/date.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// What the work on a packet needs to know, besides how it is sown.
struct WorkFacts {
  std::string number; ///< as in packets.csv, for the label; the same of the next
  std::string provenance;
  std::vector<std::string> treatments; ///< of leach, scarify, smoke: those that help
  bool on_mat = false;                 ///< its pots stand on a mat of the garden
  bool mat_off_at_night = false;
  std::optional<double> shade_first_year; ///< share of the sun kept off; the same below
  std::optional<double> shade_second_year;
  std::optional<double> shade_third_year;
  std::optional<int> water_every_days;  ///< usually, from first water until the first look
  std::optional<int> waters_later_days; ///< usually, from the main look on, without a bag
  std::optional<int> keep_seasons;      ///< before a pot may be emptied
  bool defers = false;                  ///< enough of it waits a year longer to keep the pots
  bool may_go_dry = true;               ///< pots in which nothing came up
  /// First resting season, in a usual year, whatever the kind makes of it; empty: the place has no
  /// phases.
  std::optional<Date> rests;
  bool too_small_to_rest = false; ///< usually not grown enough by then: better carried on
  std::optional<Date> wakes;      ///< after that season, in a usual year
};

/// A piece of dated work on a tray.
enum class TaskKind {
  get_ready,   ///< mix, pots, labels, and treating the seed
  sow_dry,     ///< into the pots, without water
  sow_wet,     ///< the same of seed that dies dry: watered the same day
  first_water, ///< on its condition; `on` is when that is expected
  mat_on,
  water_by_need, ///< number 1: from first water on; 2: from the main look on
  first_look,
  bag_off,
  main_look,
  mat_off,
  shade,         ///< number 1, 2, 3: from the first, second, third year on
  dry_rest,      ///< pots in which nothing came
  re_wet,        ///< those pots again
  prick_out,     ///< what may be; number 1: annuals, young; 2: in the second season
  leave,         ///< in their pots: what may not, or not yet
  rest,          ///< let it go dry
  rest_moist,    ///< it rests, and is kept barely moist
  keep_watering, ///< evergreen: it is watered through its resting season
  gather_seed,   ///< annuals: they set seed and die
  carry_on,      ///< too small to rest: cool, shaded and watered
  carry_over,    ///< keep pots for another cooling limb
  wake,
  pot_on, ///< number 3: in the third year
};

/// The task as it stands in JSON and in a calendar's ids.
[[nodiscard]] std::string_view name_of(TaskKind kind);

/// Packets whose seed gains by a treatment.
struct TreatedPackets {
  std::string treatment; ///< leach, scarify, smoke
  std::vector<std::string> packets;
};

struct Task {
  Date on{};
  std::optional<Date> moved_from; ///< the grower is away on that day
  std::string lot;
  TaskKind kind{};
  int number = 1;                        ///< of its kind in the lot
  std::vector<std::string> packets;      ///< those of the lot that it concerns
  std::vector<TreatedPackets> treated{}; ///< of get_ready
  std::optional<double> share{};         ///< of shade: of the sun kept off, the most of the packets
  std::optional<int> seasons{};          ///< of carry_over: cool seasons, the most of the packets
  std::optional<bool> moist{};           ///< of carry_over: kept barely moist, since it may not dry
  std::optional<int> pots{};             ///< of get_ready: of the packets that tell
  std::optional<int> every_days{};       ///< of water_by_need: usually, the fewest of the packets
  std::optional<Date> done_on{};         ///< as the record has it; `on` is that day
  std::optional<Date> overdue_since{};   ///< it was due then, and nobody wrote of it
};

/// A piece of work on one sowing of the record.
struct PotTask {
  TaskKind kind{};
  Date on{};                        ///< due; done ones: the day it was done
  bool done = false;                ///< it was written down
  std::optional<double> share = {}; ///< of shade
  std::optional<int> every_days{};  ///< of water_by_need, while it is open: usually
};

/// Tasks that a calendar shows as one: of all trays that get first water together, what is done at
/// about the same time.
struct DiaryEntry {
  Date on{};         ///< of the earliest open one of its main kind; of the last where all are done
  std::string group; ///< as in Lot; what of its trays is shared where they are of several
  TaskKind kind{};   ///< the main one
  int number = 1;    ///< of sowing: the day, as 20260411
  std::optional<int> alarm_days; ///< so many days ahead something has to be made ready
  std::vector<Task> tasks;       ///< by date; done ones too

  /// All of it was written down as done.
  [[nodiscard]] bool done() const;
  /// Since when the oldest of its open tasks is overdue; empty: none is.
  [[nodiscard]] std::optional<Date> overdue_since() const;
};

} // namespace nightsow::planner
