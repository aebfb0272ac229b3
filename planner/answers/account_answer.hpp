#pragma once

#include "planner/answers/heads.hpp"
#include "planner/answers/reason.hpp"
#include "planner/answers/spread.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// Of the seeds not up, the share that went one way; ranges hold 8 in 10 cases, and count seeds.
struct MissingShare {
  std::string cause; ///< dead, not_ripe, nights_too_warm …
  double share = 0.0;
  double p10 = 0.0;
  double p90 = 0.0;
  int seeds_p10 = 0;
  int seeds_p90 = 0;
};

/// The nights since the pot was watered, against those its seed waits for.
struct NightsSoFar {
  bool warm = false; ///< it waits for nights at or above the limit
  double limit_c = 0.0;
  int needed = 0;
  int of = 0;
  int met = 0;                   ///< at best in a row of `of`
  std::optional<double> short_k; ///< what the deciding night misses the limit by; empty: reached,
                                 ///< or too few nights yet
  std::optional<Date> came;      ///< when so many had come
  int unread = 0;                ///< nights since first water that nobody read
};

/// A look, or a day between, against what the rule expected before anything was counted.
struct CurvePoint {
  Date on{};
  NumberSpread expected;      ///< seedlings up in all
  std::optional<int> counted; ///< up in all by the last look since the point before
};

/// What the other end of a rule's value would change.
struct DecidingValue {
  std::string field;
  std::string unit;
  double low = 0.0;
  double high = 0.0;
  std::string step_low; ///< the step, were the value there
  std::string step_high;
  std::string cause;  ///< whose share it moves most
  double moves = 0.0; ///< that share, from one end to the other
};

/// The step by how many of five pressed seeds are firm.
struct PressToDecide {
  std::vector<std::string> step_by_firm; ///< of 0, 1 … 5 firm
};

struct SowingAccount {
  std::int64_t sowing = 0;
  std::string packet; ///< empty: of none
  std::string taxon;  ///< as written
  std::string rule;   ///< empty: none is known
  std::string bench;
  Date sown{};
  std::optional<Date> first_water;
  int seeds = 0;
  int pots = 1;
  std::optional<Date> counted_on;
  int up = 0;          ///< have come up in all, at most `seeds`
  int alive = 0;       ///< by the last count
  int died = 0;        ///< of those up
  bool closed = false; ///< the grower closed it, all is up, or the pot has had all the seasons its
                       ///< rule asks for
  std::optional<Date> closed_on; ///< by the grower: all below stands as on that day
  std::string closed_why;        ///< thrown_out, emptied, given_away, moved_on, other; empty: open
  int firm = 0;                  ///< pressed
  int soft = 0;
  std::optional<NumberSpread> expected_up; ///< by the last count, or by today where there is none
  std::vector<MissingShare> missing;       ///< empty: all up, or nothing can be told
  std::optional<NightsSoFar> nights;
  std::optional<double> more_to_come;
  std::string step; ///< see account_steps
  std::optional<Date> until;
  std::optional<double> how_sure; ///< share of what is possible that leads to this step
  std::optional<PressToDecide> press;
  std::vector<DecidingValue> deciding; ///< most deciding first
  std::vector<CurvePoint> curve;
  std::vector<Reason> advice; ///< what most likely happened, what to do, how sure
  std::vector<Reason> notes;  ///< what was taken for granted
};

/// What an account can come to.
inline constexpr std::array<std::string_view, 13> account_steps{"nothing_missing",
                                                                "too_early",
                                                                "wait",
                                                                "cool_it",
                                                                "keep_for_next_limb",
                                                                "sow_again",
                                                                "stop",
                                                                "look_again",
                                                                "count_first",
                                                                "water_again",
                                                                "water_first",
                                                                "nothing_reckoned",
                                                                "closed"};

struct AccountAnswer {
  GardenHead garden;
  Date today{};
  std::vector<SowingAccount> accounts; ///< in the order asked for
  bool overview = false;               ///< none was named: a line each says enough
  int closed = 0; ///< sowings left out: closed, all up, or all their seasons over
  std::vector<Reason> warnings;
};

} // namespace nightsow::planner
