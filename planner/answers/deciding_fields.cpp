#include "planner/answers/deciding_fields.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace nightsow::planner {

namespace {

using species_rules::Evidence;
using species_rules::Start;

constexpr double openness_of_words = 0.5;

constexpr std::array<DecidingField, 26> fields{{
    {"start",
     "what starts the seed",
     5,
     1,
     false,
     Concerns::all,
     "Wrong, the whole packet is sown in the wrong half of the year.",
     "Sow half in cool nights and half in the warmth of summer; keep a pot in which nothing came "
     "for the other season."},
    {"after_ripening_c_d",
     "how long the seed ripens",
     5,
     10,
     true,
     Concerns::without_fleshy_seed,
     "Unripe seed sits wet for a whole season, and kinds differ twentyfold.",
     "Split one harvest in three: sow a part fresh, a part after one warm dry season, a part a "
     "year later, each as nights turn cool, and count."},
    {"half_life_years",
     "how long the seed lives",
     5,
     8,
     true,
     Concerns::all,
     "It says which packets die if they wait, and how many seeds to sow of an old one.",
     "Test 20 seeds of one harvest on wet paper at an age of {low}, and 20 more at {high}."},
    {"night_limit_c",
     "the night limit",
     4,
     8,
     false,
     Concerns::cool_starters,
     "One kelvin moves the day of first water by 4 to 19 days.",
     "Sow half in nights of about {low} and half in nights of about {high}, same seed, same day, "
     "and count every week."},
    {"warm_night_c",
     "the warmth of nights",
     4,
     10,
     false,
     Concerns::hot_starters,
     "It says whether a mat is needed, and how long the season for sowing is.",
     "Sow half in nights of about {low} and half in nights of about {high}, on a mat where need "
     "be, same seed, same day."},
    {"growth",
     "the season in which it grows",
     4,
     1,
     false,
     Concerns::all,
     "Seedlings rested in the season in which they grow are lost.",
     "Go on watering a few seedlings through the season in which they should rest, and see "
     "whether they grow."},
    {"first_rest",
     "how it passes its first rest",
     4,
     1,
     false,
     Concerns::all,
     "Evergreens that are dried off are lost, and bulbs that are kept wet rot.",
     "Let half of the seedlings of a sowing go dry in their resting season and keep the others "
     "barely moist, pot by pot, and count what is back."},
    {"deferral_share",
     "the share that waits a year longer",
     4,
     0.6,
     false,
     Concerns::all,
     "It says whether a pot in which nothing came may be emptied.",
     "Keep the pot, dry through its rest, for two more seasons, and count what comes in each."},
    {"growth_needed_days",
     "growth before the first rest",
     4,
     4,
     true,
     Concerns::all,
     "It says how late is too late, and how many live through the first rest.",
     "Sow three lots, three weeks apart, and count what is alive after the first rest."},
    {"store",
     "how to keep the seed",
     4,
     1,
     false,
     Concerns::without_fleshy_seed,
     "The wrong shelf leaves seed unripe, or dead.",
     "Share one harvest between a warm dry shelf and the fridge; sow both side by side next "
     "season."},
    {"germination_share",
     "how much of good seed comes up",
     3,
     0.7,
     false,
     Concerns::all,
     "It says how much to sow for the plants that are wanted.",
     "Count the seeds you sow and those that come, fresh and ripe, 40 or more."},
    {"day_limit_c",
     "how warm days may be",
     3,
     10,
     false,
     Concerns::without_fleshy_seed,
     "Warm days hold cool starters back even when nights are cool.",
     "Sow half where days reach about {low} and half where they reach about {high}, nights "
     "alike."},
    {"mat",
     "the heat mat",
     3,
     1,
     false,
     Concerns::all,
     "A mat under seed that waits for cool loses the season.",
     "Stand one pot on the mat and one beside it, same seed, same day."},
    {"light",
     "light",
     3,
     1,
     false,
     Concerns::all,
     "Seed that needs light and is covered does not come.",
     "Wrap one pot in foil and leave its twin beside it in the light; look once a week."},
    {"cover",
     "the cover",
     3,
     1,
     false,
     Concerns::all,
     "Fine seed drowns under a cover, large seed dries out without one.",
     "Cover half of one pot by the seed's own thickness, and leave the other half bare."},
    {"scarify",
     "nicking the coat",
     3,
     1,
     false,
     Concerns::without_fleshy_seed,
     "A hard coat keeps most of the seed back for years.",
     "Nick or rub half of the seeds, and sow the other half beside them as they are."},
    {"smoke",
     "smoke",
     3,
     1,
     false,
     Concerns::without_fleshy_seed,
     "Some kinds of burnt ground hardly come without it, for others it is wasted.",
     "Water one pot the first time with smoke water, and its twin with plain water."},
    {"seedling_frost_c",
     "the frost seedlings stand",
     3,
     5,
     false,
     Concerns::all,
     "It says on which nights pots must come in.",
     "Put a few spare seedlings out to {high} first, later to {low}, with a thermometer among "
     "them, and note what lives."},
    {"seedling_heat_c",
     "the heat seedlings stand",
     3,
     10,
     false,
     Concerns::all,
     "One hot afternoon can take a whole tray.",
     "Put a thermometer into the pot, and note its hottest hours and what lived: {low} and {high} "
     "are the ends to tell apart."},
    {"last_look_days",
     "how long to go on looking",
     2,
     4,
     true,
     Concerns::all,
     "Given up too soon, a pot is rested before the last seedlings came.",
     "Keep one pot wet beyond its last look, and note the day of the last seedling."},
    {"leach",
     "soaking or rinsing first",
     2,
     1,
     false,
     Concerns::without_fleshy_seed,
     "Where something in the coat holds seed back, it costs weeks.",
     "Rinse half of the seeds in several waters, and sow the other half as they are."},
    {"pot_depth",
     "the depth of the pot",
     2,
     1,
     false,
     Concerns::all,
     "Tubers and taproots in a shallow pot stay small and dry out.",
     "Sow one shallow and one deep pot, and compare what is in them at the first rest."},
    {"transplant",
     "pricking out",
     2,
     1,
     false,
     Concerns::all,
     "Some fine roots do not bear it.",
     "Prick out half in their first season and the others after their first rest; count both a "
     "year later."},
    {"indifferent_share",
     "the share that needs no cool nights",
     2,
     0.6,
     false,
     Concerns::cool_starters,
     "It says how much is lost or won by sowing early.",
     "Sow ten seeds while nights are still warm, and count before they turn cool."},
    {"swing",
     "the difference of day and night",
     2,
     1,
     false,
     Concerns::all,
     "It slows or speeds all of it, and for a few kinds decides.",
     "Keep one pot where days are much warmer than nights, and its twin at their mean."},
    {"shade_first_year",
     "shade in the first year",
     2,
     0.8,
     false,
     Concerns::all,
     "Too little scorches, too much draws seedlings out.",
     "Shade one half of a tray twice as much as the other, and count after the first rest."},
}};

bool concerns_start(Concerns concerns, Start start) {
  switch (concerns) {
  case Concerns::cool_starters:
    return start == Start::cool;
  case Concerns::hot_starters:
    return start == Start::hot;
  case Concerns::without_fleshy_seed:
    return start != Start::at_once;
  case Concerns::all:
    break;
  }
  return true;
}

} // namespace

std::span<const DecidingField> deciding_fields() {
  return fields;
}

const DecidingField* deciding_field(std::string_view key, Start start) {
  const auto* const found = std::find_if(
      fields.begin(), fields.end(), [&](const auto& field) { return field.key == key; });
  return found != fields.end() && concerns_start(found->concerns, start) ? found : nullptr;
}

// Steps by judgement (no source): a single grower is half way, relatives are nearly a guess.
double weakness(Evidence evidence) {
  switch (evidence) {
  case Evidence::experiment:
    return 0.1;
  case Evidence::institution:
    return 0.25;
  case Evidence::grower:
    return 0.5;
  case Evidence::common_practice:
    return 0.6;
  case Evidence::relatives:
    return 0.8;
  case Evidence::memory:
    break;
  }
  return 1.0;
}

double openness(const DecidingField& field, const species_rules::ExplainedValue& value) {
  if (!value.number) {
    return openness_of_words;
  }
  if (!field.by_ratio) {
    return std::min(1.0, (value.high - value.low) / field.as_good_as_unknown);
  }
  if (value.high <= 0.0) {
    return 0.0;
  }
  if (value.low <= 0.0) {
    return 1.0;
  }
  return std::min(1.0, std::log(value.high / value.low) / std::log(field.as_good_as_unknown));
}

double gap_score(const DecidingField& field, const species_rules::ExplainedValue& value) {
  const auto evidence = species_rules::from_word<Evidence>(value.evidence);
  return field.weight * weakness(evidence.value_or(Evidence::memory)) *
         (0.25 + 0.75 * openness(field, value));
}

} // namespace nightsow::planner
