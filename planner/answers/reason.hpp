#pragma once

#include "planner/answers/reason_value.hpp"

#include <string_view>
#include <vector>

namespace nightsow::planner {

/// Why something is as it is, made where it is decided. render/words alone turns it into a
/// sentence; the names of its values are listed with each code.
enum class ReasonCode {
  // Nights.
  gate_binds,         ///< late, seasons, limit_c, day_limit_c (may be left out)
  gate_open,          ///< cool, of, limit_c, bench, since
  gate_waits,         ///< cool, of, needed, limit_c, bench
  gate_lost,          ///< cool, of, limit_c, bench, since, again (may be left out): a warm spell
  gate_does_not_bind, ///< limit_c, late, seasons, day_limit_c (may be left out)
  start_without_gate, ///< day_limit_c, limb_begins: what decides where nights do not
  stirs_before_holds, ///< stirs, holds, limit_c: a first cool week is mostly a false start
  nights_never_cool,  ///< limit_c, never, seasons
  no_cooling_limb,    ///< swing_k, why: the year has no single cooling limb
  cooling_could_help, ///< no value: what to do where nights stay warm
  nights_unknown,     ///< missing, of
  day_limit_left_out, ///< day_limit_c
  hot_days,           ///< mean_c, day_limit_c
  freezing_nights,    ///< mean_c
  frost_ahead,        ///< coldest_c, limit_c, bench: of one kind
  frost_on_bench,     ///< coldest_c, bench, kinds: of the whole plan
  relapse_likely,     ///< share
  // Readings.
  readings_stale,     ///< last, days
  readings_suspect,   ///< findings, nights; bench, logger (may be left out): so many by its logger
  few_seasons,        ///< seasons
  leans_on_normals,   ///< years: of nights read; the usual year leans on monthly normals
  highs_missing,      ///< of, least: too few highs among the last days for a limit of days
  backtest_too_short, ///< seasons, needed: too few seasons to test the outlook on
  bench_by_offset,    ///< bench, night_k, day_k
  bench_by_logger,    ///< bench, pairs, night_k, stray_k
  bench_by_shelter,   ///< bench, shelter, night_k, doubt_k
  bench_fixed,        ///< bench, night_c
  bench_out_of_use,   ///< bench, from, to, when: its time of use and first water do not meet
  logger_in_sun,      ///< bench, days, rise_k: maxima far above the station's, left out
  station_height,     ///< station_m, garden_m, height_k (what the heights make), km_k
  one_kelvin_matters, ///< no value
  latitude_doubtful,  ///< latitude, hottest
  file_problem,       ///< text
  // Warm starters.
  starts_hot,         ///< begins, ends
  warm_enough,        ///< night_c, limit_c
  mat_reaches,        ///< night_c, mat_night_c, limit_c
  mat_needed,         ///< night_c, limit_c: no mat in the garden
  mat_still_cool,     ///< mat_night_c, limit_c
  mat_gives,          ///< plants, other (without it), kwh, price (the last two may be left out)
  mat_gives_alike,    ///< plants, with it or without; kwh, price (may be left out)
  mat_left_off,       ///< plants, other (with it): the line is planned without
  growth_before_rest, ///< days, and when it has to be grown: as growth_end_value
  no_rest_by_heat,    ///< no value
  season_too_short,   ///< the same
  // Seed.
  seed_fading,      ///< alive, age_years
  seed_fades_first, ///< alive, age_years: it waits for another season all the same
  seed_keeps,       ///< alive, age_years
  seed_alive,       ///< alive, age_years
  seed_age_unknown, ///< no value
  harvest_guessed,  ///< first, last
  store_unknown,    ///< no value: how it was kept is not written
  seed_tested,      ///< sprouted, of, alive, on (may be left out)
  ripe_by_test,     ///< ripe: share taken to be ripe then by age and store; its test says more
  test_says_little, ///< at_c (may be left out): it suited little of the seed
  seed_not_ripe,    ///< ripe_on (as it is kept), on_shelf (moved); either may be left out
  fleshy_at_once,   ///< no value
  defers,           ///< share
  defers_whole,     ///< share: of seed whose coat is left whole; treated (may be left out)
  // How much, and on which day.
  wish_out_of_reach, ///< wanted, share, needed (seeds; may be left out)
  wish_not_this_way, ///< wanted, seeds, one_in (of how many seeds one lives; may be left out)
  pots_a_day_short,  ///< sowings, pots, on: so many more on that day would do
  bench_full,        ///< sowings, pots, bench
  mat_full,          ///< sowings, pots, bench (may be left out)
  // The season.
  window_passed, ///< no_later_than
  last_chance,   ///< no_later_than: no free day before it
  window_begins, ///< when, plants, other: plants from water then, and from when nights allow it;
                 ///< the two here and below may be left out
  best_before_holds,   ///< when, plants, other: the best time is over when nights allow it
  holds_after_best,    ///< when, no_later_than: in a late season nights hold only then
  hardly_any_lives,    ///< lost_to: what takes most of the seedlings
  late_for_it,         ///< no_later_than, share: of the plants lost by being late
  better_next_season,  ///< when, plants, now
  sow_now_loses_least, ///< plants, waiting: seed that dies fast
  keep_otherwise,  ///< store (a route), until (may be left out), plants, other: as it is kept now
  keep_some_back,  ///< seeds, keep: of an irreplaceable packet
  day_held,        ///< when, would_be: a saved plan's day of first water is kept
  latest_held,     ///< no_later_than, would_be: the same of the last day
  route_held,      ///< store (a route), plants, other (kept otherwise): the same of the route
  season_held,     ///< no value: the same of this season or the next
  chilled_gives,   ///< bench, plants, other: a chilled place in place of its own bench
  not_yet_in_hand, ///< on: harvested or received after today
  next_window,     ///< when
  season_over,     ///< season, next
  no_packets,      ///< no value
  // Pots that have been sown.
  sown_dry,              ///< on: no first water is written down
  rests_from,            ///< rest, moist (rests barely moist), evergreen, or annual: from then on
  not_dried_off,         ///< no value: until it wakes it is kept barely moist
  annual_over,           ///< no value: its plants have set seed and died
  wakes_when_cool,       ///< limit_c, bench
  wakes_in_warmth,       ///< when
  wake_due,              ///< since: nights hold, and no water since is written down
  seed_in_pot,           ///< missing, waiting: seeds not up, and of them alive
  pot_kept,              ///< seasons, keep: cool seasons past, and before it may be emptied
  press_before_emptying, ///< seasons
  water_not_recorded,    ///< on: the day taken instead
  count_not_recorded,    ///< no value
  behind_expected,       ///< up, seeds, on, low, high, sowing: up by a count; 8 in 10 cases
  synonym,               ///< written, accepted; it and the next two are of names
  spelling,              ///< written, read_as
  unknown_taxon,         ///< written, suggestion (may be empty)
  // The account of a sowing.
  account_likely, ///< cause, share, low, high, missing: seeds not up; low, high: so many of them
  nights_short, ///< cool, of, needed, limit_c, short_k: since first water; short_k may be left out
  warm_nights_short,   ///< cool, of, needed, limit_c, short_k: of hot starters; `cool` counts the
                       ///< warm ones
  nights_came,         ///< limit_c, when
  account_too_early,   ///< until: until may be left out
  account_wait,        ///< more, until: until may be left out
  account_look_again,  ///< last, days
  account_count_first, ///< sowing
  account_water_again, ///< seeds
  account_water_first, ///< sowing
  account_cool_it,     ///< seeds, limit_c
  account_warm_it,     ///< seeds, limit_c
  account_keep, ///< seeds, and when it is watered again: dry, or moist (kept barely moist until
                ///< then)
  account_sow_again,        ///< seeds
  account_stop,             ///< no value
  account_all_up,           ///< no value
  account_how_sure,         ///< sure, share
  account_unlike_rule,      ///< up, low, high, rule
  account_press,            ///< sowing
  account_nothing_reckoned, ///< no value
  account_closed,           ///< on, closed: what became of the pot; closed may be left out
  first_water_taken,        ///< on
  watered_again_taken,      ///< when
  sown_bench_gone,          ///< text, bench
  sown_mat_gone,            ///< text
  sown_without_packet,      ///< no value
  moves_left_out,           ///< no value
  counted_fell,             ///< fell
  counted_more_than_sown,   ///< up, seeds
  nights_unread,            ///< missing
  readings_begin_late,      ///< on
};

/// The code as it stands in JSON.
[[nodiscard]] std::string_view name_of(ReasonCode code);

struct Reason {
  ReasonCode code{};
  std::vector<NamedValue> values;
};

} // namespace nightsow::planner
