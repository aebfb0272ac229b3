#include "planner/render/plain_words.hpp"

#include <algorithm>
#include <array>

namespace nightsow::planner {

namespace {

struct Phrase {
  std::string_view key;
  std::string_view word;
  std::string_view phrase;
};

// Only the words that would not be understood as they stand.
constexpr std::array<Phrase, 146> phrases{{
    {"growth", "winter", "in winter"},
    {"growth", "summer", "in summer"},
    {"growth", "opportunist", "whenever it is mild"},
    {"start", "cool", "cool nights"},
    {"start", "hot", "the heat of summer"},
    {"start", "any", "any time that is neither hot nor cold"},
    {"start", "at_once", "at once, it cannot wait"},
    {"store", "warm_dry", "warm and dry"},
    {"store", "cool_dry", "cool and dry"},
    {"store", "warm_then_cool", "warm and dry first, then cool"},
    {"store", "keep_warm", "warm and dry"},
    {"store", "fridge", "dry in the fridge"},
    {"store", "warm_then_fridge", "warm and dry first, then dry in the fridge"},
    {"store", "as_it_is", "as it is"},
    {"store", "sow_at_once", "do not store it, sow it at once"},
    {"lost_to", "frost", "to frost"},
    {"lost_to", "heat", "to heat"},
    {"lost_to", "lost_wet", "to rot and damping off"},
    {"lost_to", "too_late", "because they come up too late or stay too small"},
    {"lost_to", "rest", "in their first rest"},
    {"wait", "cool_moist", "in the fridge, barely moist"},
    {"wait", "cool_dry", "in the fridge, dry"},
    {"wait", "warm_dry", "in a dry room"},
    {"treated", "smoke", "smoked"},
    {"treated", "leach", "soaked"},
    {"treated", "scarify", "nicked"},
    {"route", "sow_now", "sown today"},
    {"route", "keep_warm", "kept warm and dry"},
    {"route", "fridge", "kept in the fridge"},
    {"route", "warm_then_fridge", "kept warm until ripe, then in the fridge"},
    {"route", "as_it_is", "kept as it is"},
    {"route", "next_season", "left for next season"},
    {"route", "chilled", "in the chilled place"},
    {"verdict", "water_now", "due: sow, and water"},
    {"verdict", "wait", "waiting"},
    {"verdict", "unknown", "unknown until the readings say more"},
    {"cause", "seeds_sown", "seed of it was sown"},
    {"cause", "packet_changed", "its row in packets.csv"},
    {"cause", "rule_changed", "its rule"},
    {"cause", "garden_changed", "benches, mats or free days"},
    {"cause", "readings", "nights read since"},
    {"cause", "days_passed", "days went by"},
    {"cover", "none", "none, leave it on the surface"},
    {"cover", "dusting", "a dusting"},
    {"cover", "thin", "a thin layer"},
    {"cover", "own_thickness", "as thick as the seed"},
    {"cover", "deep", "a deep layer"},
    {"lot_cover", "surface", "on the surface or a dusting"},
    {"lot_cover", "thin", "a thin layer or as thick as the seed"},
    {"lot_cover", "deep", "a deep layer or half buried"},
    {"light", "needed", "needed, do not bury it"},
    {"light", "indifferent", "makes no difference"},
    {"light", "dark", "better dark"},
    {"swing", "indifferent", "makes no difference"},
    {"humidity_cover", "harmful", "harmful, leave it off"},
    {"humidity_cover", "useless", "not needed"},
    {"mat", "useless", "not needed"},
    {"mat", "harmful", "harmful, no mat"},
    {"smoke", "useless", "makes no difference"},
    {"smoke", "harmful", "harmful, no smoke"},
    {"leach", "useless", "not needed"},
    {"leach", "harmful", "harmful, sow it as it is"},
    {"scarify", "useless", "not needed"},
    {"scarify", "harmful", "harmful, leave the coat whole"},
    {"transplant", "easy", "easy at any time"},
    {"transplant", "after_first_rest", "after its first resting season"},
    {"transplant", "late", "late, once it is large"},
    {"first_rest", "dry", "dry and shaded, with a sip now and then"},
    {"first_rest", "barely_moist", "barely moist, not dried off"},
    {"first_rest", "none", "none: evergreen, keep watering"},
    {"first_rest", "dies", "annual: sets seed and dies"},
    {"why", "several_peaks", "the year has more than one warm time"},
    {"why", "swing_too_small", "the year is too even"},
    {"change", "mirror", "the other hemisphere"},
    {"kind", "impossible", "colder or hotter than was ever measured on Earth"},
    {"kind", "night_above_day", "night warmer than its day"},
    {"kind", "repeated_equal", "same date twice, equal values"},
    {"kind", "repeated_different", "same date twice, different values"},
    {"kind", "files_differ", "two files more than 1 K apart"},
    {"kind", "flagged", "flagged by its source"},
    {"kind", "naught", "night and day both naught"},
    {"kind", "streak", "the same value day after day"},
    {"kind", "gap", "far from all others of its month"},
    {"kind", "outlier", "far outside its time of year"},
    {"kind", "spike", "far from the days beside it"},
    {"kind", "lagged_range", "night and day too far apart"},
    {"weekday", "mon", "Monday"},
    {"weekday", "tue", "Tuesday"},
    {"weekday", "wed", "Wednesday"},
    {"weekday", "thu", "Thursday"},
    {"weekday", "fri", "Friday"},
    {"weekday", "sat", "Saturday"},
    {"weekday", "sun", "Sunday"},
    {"quarter", "hottest", "about the hottest night"},
    {"quarter", "cooling", "as nights cool"},
    {"quarter", "coldest", "the cold quarter"},
    {"quarter", "warming", "as nights warm"},
    {"source", "fixed_temperature", "the temperature it is kept at"},
    {"source", "written_offset", "the offset written"},
    {"source", "fitted_transfer", "its logger beside the station"},
    {"source", "shelter_default", "what is usual under its shelter"},
    {"source", "station_as_is", "the station as it is"},
    {"cause", "dead", "were dead or empty before they were sown"},
    {"cause", "not_ripe", "were not ripe yet"},
    {"cause", "nights_too_warm", "still wait for the nights they need"},
    {"cause", "to_come", "are on their way"},
    {"cause", "deferred", "wait another year, as part of such seed does"},
    {"cause", "too_late", "were too late for the season"},
    {"cause", "heat", "were killed by heat in the wet pot"},
    {"cause", "lost_wet", "rotted in the wet pot"},
    {"cause", "dried", "dried out once they had begun"},
    {"field", "night_limit_c", "how cool its nights must be"},
    {"field", "warm_night_c", "how warm its nights must be"},
    {"field", "indifferent_share", "how much of it waits for no nights"},
    {"field", "germination_share", "how much of sound seed comes up"},
    {"field", "half_life_years", "how long half of it lives dry"},
    {"field", "after_ripening_c_d", "how much warmth ripens it"},
    {"field", "deferral_share", "how much of it waits another year"},
    {"field", "thermal_time_c_d", "how long it takes to come up"},
    {"field", "wet_loss_per_day", "how fast it dies waiting wet"},
    {"loss", "dead", "dead or empty when sown"},
    {"loss", "nights_too_warm", "waits for its nights"},
    {"loss", "to_come", "still to come"},
    {"loss", "deferred", "waits another year"},
    {"loss", "too_late", "too late for the season"},
    {"loss", "heat", "killed by heat"},
    {"loss", "lost_wet", "rotted wet"},
    {"step", "nothing_missing", "all up"},
    {"step", "too_early", "too early to tell"},
    {"step", "keep_for_next_limb", "keep it for its next season"},
    {"step", "look_again", "count again"},
    {"step", "count_first", "count it"},
    {"step", "water_again", "water it again"},
    {"step", "water_first", "still dry"},
    {"step", "nothing_reckoned", "cannot be reckoned"},
    {"closed", "emptied", "the pot was emptied"},
    {"closed", "given_away", "it was given away"},
    {"closed", "moved_on", "the plants moved on"},
    {"sure", "quite", "quite sure"},
    {"sure", "fairly", "fairly sure"},
    {"sure", "not", "not sure"},
    {"evidence", "experiment", "published experiment"},
    {"evidence", "institution", "practice of an institution"},
    {"evidence", "grower", "one grower"},
    {"evidence", "relatives", "estimated from relatives"},
    {"evidence", "memory", "from memory, unchecked"},
}};

bool is_code_word(std::string_view word) {
  return std::all_of(
      word.begin(), word.end(), [](char c) { return (c >= 'a' && c <= 'z') || c == '_'; });
}

} // namespace

std::string plain_word(std::string_view key, std::string_view word) {
  for (const auto& entry : phrases) {
    if (entry.key == key && entry.word == word) {
      return std::string{entry.phrase};
    }
  }
  std::string text{word};
  if (is_code_word(word)) {
    std::replace(text.begin(), text.end(), '_', ' ');
  }
  return text;
}

std::string with_capital(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z') {
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  }
  return text;
}

} // namespace nightsow::planner
