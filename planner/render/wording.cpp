#include "planner/render/wording.hpp"

#include "planner/render/account_wording.hpp"
#include "planner/render/pot_wording.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

namespace nightsow::planner {

namespace {

using Code = ReasonCode;

// Where a count could be one, the sentence is built so that it stays right: "only 1", "{days:day}".
constexpr std::array<Wording, 83> most{{
    // Nights.
    {Code::gate_binds,
     "late seasons limit_c day_limit_c",
     "Cool nights decide here: in {late} of {seasons} past seasons nights at or under {limit_c}[ "
     "with days no hotter than {day_limit_c}] had to be waited for."},
    {Code::gate_open,
     "cool of limit_c bench since",
     "Nights are cool enough on the {bench}[ since {since}]: {cool} of the last {of} at or under "
     "{limit_c}."},
    {Code::gate_waits,
     "cool of needed limit_c bench",
     "Waits for cool nights on the {bench}: {cool} of the last {of} at or under {limit_c}, "
     "{needed} "
     "are needed."},
    {Code::gate_lost,
     "cool of limit_c bench since again",
     "Nights on the {bench} held at or under {limit_c} from {since}, and a warm spell has ended "
     "that: of the last {of} only {cool} did[; they should hold again about {again}]."},
    {Code::gate_does_not_bind,
     "limit_c late seasons day_limit_c",
     "Cool nights do not decide here: nights at or under {limit_c}[ with days no hotter than "
     "{day_limit_c}] had to be waited for in only {late} of {seasons} past seasons."},
    {Code::start_without_gate,
     "day_limit_c limb_begins",
     "Where nights do not decide, it starts once nights grow cooler, from {limb_begins}[, and the "
     "highs of two weeks average {day_limit_c} or less]."},
    {Code::stirs_before_holds,
     "stirs holds limit_c",
     "A first cool week (about {stirs}) is mostly a false start; nights hold at or under {limit_c} "
     "from about {holds}."},
    {Code::nights_never_cool,
     "limit_c never seasons",
     "Nights may stay too warm here: in {never} of {seasons} past seasons they never held at or "
     "under {limit_c}."},
    {Code::no_cooling_limb,
     "swing_k why",
     "Nights here have no single time of growing cooler ({why}; they swing by {swing_k} over the "
     "year), so none can be waited for."},
    {Code::cooling_could_help,
     "",
     "Where nights stay warm, a chilled place can stand in for cool ones: a cool room or a growing "
     "cabinet, named as a bench in the garden."},
    {Code::nights_unknown,
     "missing of",
     "Missing among the last {of} nights: {missing}, enough to change the answer."},
    {Code::day_limit_left_out,
     "day_limit_c",
     "Readings of the days are missing, so the limit for days, {day_limit_c}, was left out."},
    {Code::hot_days,
     "mean_c day_limit_c",
     "Days are still too hot for wet seed: recent highs average {mean_c}, over its limit of "
     "{day_limit_c}."},
    {Code::freezing_nights,
     "mean_c",
     "Nights freeze now, {mean_c} on average over a week: give wet seed a frost-free place, or "
     "wait "
     "for milder nights."},
    {Code::frost_ahead,
     "coldest_c limit_c bench",
     "Cold ahead: in most seasons the coldest night to come on the {bench} has {coldest_c} or "
     "less, fleece counted in where it is laid, and young seedlings stand {limit_c}. Have a "
     "frost-free place ready."},
    {Code::frost_on_bench,
     "coldest_c bench kinds",
     "Cold ahead on the {bench}: {coldest_c} or less in most seasons, which young seedlings of "
     "some "
     "packets here do not stand ({kinds} of them; --why says which). Have cover or a frost-free "
     "place ready."},
    {Code::relapse_likely,
     "share",
     "Cool nights may not last: in {share} of the seasons that are possible now they turn warm "
     "again "
     "within four weeks of the day on which they hold."},
    // Readings.
    {Code::readings_stale,
     "last days",
     "The readings end on {last}, {days:day} ago: bring them up to date before you rely on today's "
     "advice."},
    {Code::readings_suspect,
     "findings nights bench logger",
     "Readings in doubt among the last {nights} nights[ on the {bench}]: {findings}[ (by the "
     "bench's own logger: {logger})]. Look at them before you water."},
    {Code::few_seasons,
     "seasons",
     "Full past seasons in the readings: only {seasons}, so dates are rough."},
    {Code::leans_on_normals,
     "years",
     "Readings of {years:year} do not tell the usual year by themselves: the monthly normals in "
     "garden.json count beside them, as much as three years of readings would."},
    {Code::highs_missing,
     "of least",
     "Among the last {of} days fewer than {least} have a high (the warmest of the day): limits for "
     "days are left out, and what is said of mild days is not known. Name a file with highs, too."},
    {Code::backtest_too_short,
     "seasons needed",
     "The outlook can be tested on past years from {needed} full seasons on, the later ones with "
     "98 "
     "% of their nights; full ones here: {seasons}."},
    {Code::bench_by_offset,
     "bench night_k day_k",
     "Air on the {bench} is reckoned from the station's[, {night_k:+} at night][, {day_k:+} by "
     "day]."},
    {Code::bench_by_logger,
     "bench pairs night_k stray_k",
     "Air on the {bench} is reckoned from its logger, {pairs:night} beside the station's: "
     "{night_k:+} at night in the mean; single nights stray by {stray_k}, and dates are that much "
     "wider."},
    {Code::bench_by_shelter,
     "bench shelter night_k doubt_k",
     "The {bench} is reckoned as a usual {shelter}, {night_k:+} at night, give or take {doubt_k}; "
     "a "
     "logger on it would tell."},
    {Code::bench_fixed, "bench night_c", "Nights on the {bench} are kept at {night_c}."},
    {Code::bench_out_of_use,
     "bench from to when",
     "First water is expected {when}, when the {bench} is not in use[; it is from {from} on][; it "
     "is "
     "until {to}]. Plan another bench, or change its dates in garden.json."},
    {Code::logger_in_sun,
     "bench days rise_k",
     "The logger on the {bench} stood in the sun: {days:day} more than {rise_k} above the station; "
     "their "
     "maxima are left out. Shade it, in moving air."},
    {Code::station_height,
     "station_m garden_m height_k km_k",
     "The station lies at {station_m} m, the garden at {garden_m} m: benches without an offset or "
     "a "
     "logger are reckoned {height_k:+} for it, {km_k} a kilometre."},
    {Code::one_kelvin_matters,
     "",
     "One kelvin (1.8 °F) more or less on the bench can move these dates by up to 19 days; "
     "`climate` shows by how many here. A logger on the bench is worth more than any forecast."},
    {Code::latitude_doubtful,
     "latitude hottest",
     "At the latitude given, {latitude}°, days are short on {hottest}, when these nights are "
     "hottest: "
     "check the sign of latitude in garden.json."},
    {Code::file_problem, "text", "{text}"},
    // Warm starters.
    {Code::starts_hot,
     "begins ends",
     "It wants heat: first water in the hot season, from {begins} to {ends} here; later leaves too "
     "little time to grow."},
    {Code::warm_enough,
     "night_c limit_c",
     "Nights are warm enough without a mat: about {night_c}, and it asks for {limit_c} or more."},
    {Code::mat_reaches,
     "night_c mat_night_c limit_c",
     "Nights of about {night_c} alone are too cool; on the mat pots reach {mat_night_c}, and it "
     "asks "
     "for {limit_c} or more."},
    {Code::mat_needed,
     "night_c limit_c",
     "Nights of about {night_c} are too cool: it asks for {limit_c} or more, and no mat warms it. "
     "Put one under it, or expect fewer seedlings, and later."},
    {Code::mat_still_cool,
     "mat_night_c limit_c",
     "Even on the mat nights reach only {mat_night_c}, and it asks for {limit_c} or more."},
    {Code::mat_gives,
     "plants other kwh price",
     "With the mat about {plants:plant}, without it {other}[; it takes at most {kwh} kWh "
     "until most are up][, {price} at your price]."},
    {Code::mat_gives_alike,
     "plants kwh price",
     "With the mat or without it about {plants:plant}[; it takes at most {kwh} kWh "
     "until most are up][, {price} at your price]."},
    {Code::mat_left_off,
     "plants other",
     "Off the mat it does as well: about {plants:plant}, on it {other}."},
    {Code::growth_before_rest,
     "days rest hot ends",
     "Seedlings need about {days:day} to grow before[ their first rest, near {rest}][ the height "
     "of "
     "the next hot season, near {hot}][ they end as annuals do, near {ends}]."},
    {Code::no_rest_by_heat,
     "",
     "Heat alone brings no rest within the season here: seedlings may grow on."},
    {Code::season_too_short,
     "days rest hot ends",
     "Too little time: seedlings need about {days:day} to grow before[ their first rest, near "
     "{rest}][ the height of the next hot season, near {hot}][ they end as annuals do, near "
     "{ends}]."},
    // Seed.
    {Code::seed_fading,
     "alive age_years",
     "This seed fades:[ at an age of {age_years:year},] {alive} of it is still alive. Sow all of "
     "it this season."},
    {Code::seed_fades_first,
     "alive age_years",
     "This seed fades while it waits:[ at an age of {age_years:year},] {alive} of it is still "
     "alive; keep it cool and dry, and sow all of it then."},
    {Code::seed_keeps,
     "alive age_years",
     "This seed keeps, so it can wait:[ at an age of {age_years:year},] {alive} of it is still "
     "alive."},
    {Code::seed_alive,
     "alive age_years",
     "Seed:[ at an age of {age_years:year},] {alive} of it is expected to be alive."},
    {Code::seed_age_unknown,
     "",
     "The age of the seed is not known: neither its harvest nor the day it was received is written "
     "down."},
    {Code::harvest_guessed,
     "first last",
     "Harvest not written down: taken to lie between {first} and {last}, from the day it was "
     "received."},
    {Code::store_unknown,
     "",
     "How this seed was kept is not written down: half is taken as kept warm, half as cool after "
     "two months. Of all that is not known of it, this matters most."},
    {Code::seed_tested,
     "sprouted of alive on",
     "{sprouted} of {of} came up when it was tried[ on {on}]: by that, {alive} of it was alive "
     "then."},
    {Code::ripe_by_test,
     "ripe",
     "Its test tells against waiting for it to ripen: by age and store {ripe} of it was ripe then, "
     "and more came up than that brings."},
    {Code::test_says_little,
     "at_c",
     "The germination test says little:[ at {at_c} and] as ripe as the seed was, few could come up "
     "however sound."},
    {Code::seed_not_ripe,
     "ripe_on on_shelf",
     "Not ripe yet: warm and dry storage ripens it[; kept as it is, half of it is ripe by about "
     "{ripe_on}][; on a warm dry shelf from today, half of it is by about {on_shelf}]."},
    {Code::fleshy_at_once,
     "",
     "Seed that dies when dried cannot wait: sow it at once, as cool as can be but free of frost. "
     "If "
     "it has to wait some days, keep it cool and barely moist."},
    {Code::defers,
     "share",
     "Of its good seed {share} usually waits for another season: keep the pots."},
    {Code::defers_whole,
     "share treated",
     "Of its good seed {share} waits for another season when the coat is left whole[, {treated} "
     "once it is nicked]: nick or rub it, and keep the pots all the same."},
    // How much, and on which day.
    {Code::wish_out_of_reach,
     "wanted share needed",
     "The packet is small for the {wanted:plant} wanted: of the possible seasons {share} bring so "
     "many[; to be sure in 9 of 10, sow {needed:seed}]."},
    {Code::wish_not_this_way,
     "wanted seeds one_in",
     "The packet cannot give the {wanted:plant} wanted this way: of {seeds:seed} too few live[, "
     "about one in {one_in}]."},
    {Code::pots_a_day_short,
     "sowings pots on",
     "The free days do not hold all: {sowings:sowing} left over. The cheapest way out: "
     "{pots:pot} more than your limit on {on}, or a free day more before it."},
    {Code::bench_full,
     "sowings pots bench",
     "The {bench} is full: {sowings:sowing} left over. The cheapest way out: {pots:place} more "
     "there, or another bench for them."},
    {Code::mat_full,
     "sowings pots bench",
     "The mat[ on the {bench}] is full while others are on it: {sowings:sowing} left over. The "
     "cheapest way out: {pots:place} more on a mat."},
    // The season.
    {Code::window_passed,
     "no_later_than",
     "This season's time for its first water has passed: no later than {no_later_than}."},
    {Code::last_chance,
     "no_later_than",
     "No free day comes before {no_later_than}, its last one for first water this season: make "
     "one, "
     "or put it off."},
    {Code::window_begins,
     "when plants other",
     "More of it lives with first water from {when} on[: about {plants:plant}, against "
     "{other} as soon as nights allow it]."},
    {Code::best_before_holds,
     "when plants other",
     "Its best time here lies before nights hold, near {when}[: about {plants:plant} then, "
     "{other} later]; a cooler place would let it start in time."},
    {Code::holds_after_best,
     "when no_later_than",
     "In a late season nights hold only near {when}, when its best time is over: give it first "
     "water then all the same, or by {no_later_than} in a cooler place."},
    {Code::hardly_any_lives,
     "lost_to",
     "Hardly a plant is likely to come of it here: most are lost {lost_to}. "
     "Find "
     "it a place that spares it that before you sow."},
    {Code::late_for_it,
     "no_later_than share",
     "It is late: its best time ended {no_later_than}, and {share} of the plants of a sowing in "
     "time are lost by that; another year in the packet would not give enough more."},
    {Code::better_next_season,
     "when plants now",
     "It does better in another season, from about {when}[: about {plants:plant}, against "
     "{now} in this one]."},
    {Code::sow_now_loses_least,
     "plants waiting",
     "Its seed will not wait for the nights it likes: water it now[, for about {plants:plant} "
     "against {waiting} if it waits]."},
    {Code::keep_otherwise,
     "store until plants other",
     "Until then keep it {store}[, the warmth until {until}][: about {plants:plant}, against "
     "{other} kept as it is]."},
    {Code::keep_some_back,
     "seeds keep",
     "It cannot be replaced: sow {seeds:seed} of it now and keep {keep} for another season."},
    {Code::day_held,
     "when would_be",
     "As saved: water about {when}. Readings since would make it {would_be}, which gains nothing "
     "worth a change."},
    {Code::latest_held,
     "no_later_than would_be",
     "As saved: no later than {no_later_than}. By the readings since it would be {would_be}, which "
     "hardly matters."},
    {Code::route_held,
     "store plants other",
     "As saved: it stays {store}[, for about {plants:plant} against {other} kept otherwise], too "
     "little to change it for."},
    {Code::season_held,
     "",
     "As saved: whether this season or another is better is too close to change it."},
    {Code::chilled_gives,
     "bench plants other",
     "A chilled place does what nights here do not: about {plants:plant} on the {bench}, {other} "
     "on its own bench."},
    {Code::not_yet_in_hand,
     "on",
     "The seed is not in hand before {on}: nothing to sow until then."},
    {Code::next_window, "when", "Its next time for first water begins about {when}."},
    {Code::season_over,
     "season next",
     "Every window asked about in season {season} has passed: this looks ahead at season {next}."},
    {Code::no_packets,
     "",
     "No packets are listed: write the seed in hand into packets.csv, a line for each."},
}};

// The sentences of pots and of the account stand in files of their own: one holds no more.
template <std::size_t A, std::size_t B>
constexpr std::array<Wording, A + B> joined(const std::array<Wording, A>& first,
                                            const std::array<Wording, B>& then) {
  std::array<Wording, A + B> all{};
  std::copy(first.begin(), first.end(), all.begin());
  std::copy(then.begin(), then.end(), all.begin() + A);
  return all;
}

constexpr std::array table = joined(joined(most, pot_wordings), account_wordings);

} // namespace

std::span<const Wording> wordings() {
  return table;
}

} // namespace nightsow::planner
