#include "planner/answers/reason.hpp"

#include <array>
#include <utility>

namespace nightsow::planner {

namespace {

using Code = ReasonCode;

// In the order of the enumeration. A table and not a switch, so that it fits one screen.
constexpr std::array<std::pair<ReasonCode, std::string_view>, 89> names{{
    {Code::gate_binds, "gate_binds"},
    {Code::gate_open, "gate_open"},
    {Code::gate_waits, "gate_waits"},
    {Code::gate_does_not_bind, "gate_does_not_bind"},
    {Code::start_without_gate, "start_without_gate"},
    {Code::stirs_before_holds, "stirs_before_holds"},
    {Code::nights_never_cool, "nights_never_cool"},
    {Code::no_cooling_limb, "no_cooling_limb"},
    {Code::cooling_could_help, "cooling_could_help"},
    {Code::nights_unknown, "nights_unknown"},
    {Code::day_limit_left_out, "day_limit_left_out"},
    {Code::hot_days, "hot_days"},
    {Code::freezing_nights, "freezing_nights"},
    {Code::frost_ahead, "frost_ahead"},
    {Code::frost_on_bench, "frost_on_bench"},
    {Code::relapse_likely, "relapse_likely"},
    {Code::readings_stale, "readings_stale"},
    {Code::readings_suspect, "readings_suspect"},
    {Code::few_seasons, "few_seasons"},
    {Code::leans_on_normals, "leans_on_normals"},
    {Code::highs_missing, "highs_missing"},
    {Code::backtest_too_short, "backtest_too_short"},
    {Code::bench_by_offset, "bench_by_offset"},
    {Code::bench_by_logger, "bench_by_logger"},
    {Code::bench_by_shelter, "bench_by_shelter"},
    {Code::bench_fixed, "bench_fixed"},
    {Code::bench_out_of_use, "bench_out_of_use"},
    {Code::logger_in_sun, "logger_in_sun"},
    {Code::station_height, "station_height"},
    {Code::one_kelvin_matters, "one_kelvin_matters"},
    {Code::latitude_doubtful, "latitude_doubtful"},
    {Code::file_problem, "file_problem"},
    {Code::starts_hot, "starts_hot"},
    {Code::warm_enough, "warm_enough"},
    {Code::mat_reaches, "mat_reaches"},
    {Code::mat_needed, "mat_needed"},
    {Code::mat_still_cool, "mat_still_cool"},
    {Code::mat_gives, "mat_gives"},
    {Code::growth_before_rest, "growth_before_rest"},
    {Code::no_rest_by_heat, "no_rest_by_heat"},
    {Code::season_too_short, "season_too_short"},
    {Code::seed_fading, "seed_fading"},
    {Code::seed_fades_first, "seed_fades_first"},
    {Code::seed_keeps, "seed_keeps"},
    {Code::seed_alive, "seed_alive"},
    {Code::seed_age_unknown, "seed_age_unknown"},
    {Code::harvest_guessed, "harvest_guessed"},
    {Code::store_unknown, "store_unknown"},
    {Code::seed_tested, "seed_tested"},
    {Code::test_says_little, "test_says_little"},
    {Code::seed_not_ripe, "seed_not_ripe"},
    {Code::fleshy_at_once, "fleshy_at_once"},
    {Code::defers, "defers"},
    {Code::defers_whole, "defers_whole"},
    {Code::wish_out_of_reach, "wish_out_of_reach"},
    {Code::pots_a_day_short, "pots_a_day_short"},
    {Code::bench_full, "bench_full"},
    {Code::mat_full, "mat_full"},
    {Code::window_passed, "window_passed"},
    {Code::last_chance, "last_chance"},
    {Code::window_begins, "window_begins"},
    {Code::best_before_holds, "best_before_holds"},
    {Code::late_for_it, "late_for_it"},
    {Code::better_next_season, "better_next_season"},
    {Code::sow_now_loses_least, "sow_now_loses_least"},
    {Code::keep_otherwise, "keep_otherwise"},
    {Code::keep_some_back, "keep_some_back"},
    {Code::day_held, "day_held"},
    {Code::latest_held, "latest_held"},
    {Code::route_held, "route_held"},
    {Code::season_held, "season_held"},
    {Code::chilled_gives, "chilled_gives"},
    {Code::not_yet_in_hand, "not_yet_in_hand"},
    {Code::next_window, "next_window"},
    {Code::season_over, "season_over"},
    {Code::no_packets, "no_packets"},
    {Code::sown_dry, "sown_dry"},
    {Code::rests_from, "rests_from"},
    {Code::wakes_when_cool, "wakes_when_cool"},
    {Code::wakes_in_warmth, "wakes_in_warmth"},
    {Code::wake_due, "wake_due"},
    {Code::seed_in_pot, "seed_in_pot"},
    {Code::pot_kept, "pot_kept"},
    {Code::press_before_emptying, "press_before_emptying"},
    {Code::water_not_recorded, "water_not_recorded"},
    {Code::count_not_recorded, "count_not_recorded"},
    {Code::synonym, "synonym"},
    {Code::spelling, "spelling"},
    {Code::unknown_taxon, "unknown_taxon"},
}};

} // namespace

std::string_view name_of(ReasonCode code) {
  for (const auto& [known, name] : names) {
    if (known == code) {
      return name;
    }
  }
  return {};
}

} // namespace nightsow::planner
