#pragma once

#include "species-rules/rule.hpp"

#include <array>
#include <span>
#include <string_view>

namespace nightsow::species_rules {

/// What is to be known of a field besides its value. `lowest` and `highest` bound a number, both
/// included; they mean nothing for words.
struct Field {
  std::string_view key;  ///< in rule files, JSON and --rule
  std::string_view unit; ///< empty for words and plain counts
  double lowest = 0.0;
  double highest = 0.0;
  bool in_family = false; ///< every family must give it, so that no entry has to guess
  std::string_view meaning;
  std::span<const std::string_view> codes{}; ///< remarks of these codes only; empty: any sentence
};

inline constexpr std::array<std::string_view, 6> caution_codes{"sap_irritant",
                                                               "bulb_toxic",
                                                               "toxic_all_parts",
                                                               "spines",
                                                               "protected_species",
                                                               "weed_in_some_regions"};

/// The one key of a rule that is no field of the table: whether notes are inherited.
inline constexpr std::string_view only_own_notes_key = "only_own_notes";

// The one table of rule fields, in the order in which people read them. Reading, inheriting,
// overriding, explaining and checking are visitors: a new field is one line here and one in
// rule.hpp.

template <class GateRuleType, class Visitor>
void for_each_gate_field(GateRuleType& gate, Visitor& visit) {
  visit(Field{"growth", "", 0, 0, true, "the season in which it grows"}, gate.growth);
  visit(Field{"start", "", 0, 0, true, "what starts the seed"}, gate.start);
  visit(Field{"night_limit_c", "°C", -5, 30, false, "nights at or under this start it"},
        gate.night_limit_c);
  visit(Field{"night_limit_spread_k", "K", 0, 10, true, "how far single seeds stray from it"},
        gate.night_limit_spread_k);
  visit(Field{"indifferent_share", "share", 0, 1, true, "comes up without such nights"},
        gate.indifferent_share);
  visit(Field{"gate_nights", "nights", 1, 31, true, "so many cool nights"}, gate.nights);
  visit(Field{"gate_of", "nights", 1, 31, true, "of the last so many"}, gate.of);
  visit(Field{"day_limit_c", "°C", 5, 45, false, "mean of day maxima it should not pass"},
        gate.day_limit_c);
  visit(Field{"warm_night_c", "°C", 5, 35, false, "nights at or above this, mat counted"},
        gate.warm_night_c);
  visit(Field{"swing", "", 0, 0, true, "difference of day and night"}, gate.swing);
  visit(Field{"wake_above_limit_k", "K", -10, 15, true, "a resting plant wakes so far above it"},
        gate.wake_above_limit_k);
}

template <class SeedRuleType, class Visitor>
void for_each_seed_field(SeedRuleType& seed, Visitor& visit) {
  visit(Field{"seed_size", "", 0, 0, true, "size class of the seed"}, seed.size);
  visit(Field{"germination_share", "share", 0, 1, true, "of fresh ripe seed when all is right"},
        seed.germination_share);
  visit(Field{"half_life_years", "years", 0.01, 200, true, "at 20 °C, dry, to half alive"},
        seed.half_life_years);
  visit(Field{"after_ripening_c_d",
              "°C d",
              0,
              20000,
              true,
              "warm dry storage above its base that half the seed needs"},
        seed.after_ripening_c_d);
  visit(
      Field{
          "after_ripening_base_c", "°C", -10, 20, true, "a store ripens the seed only above this"},
      seed.after_ripening_base_c);
  visit(Field{"deferral_share", "share", 0, 1, true, "of ripe sound seed that waits a year longer"},
        seed.deferral_share);
  visit(Field{"deferral_treated_share", "share", 0, 1, false, "of it, treated as the rule tells"},
        seed.deferral_treated_share);
  visit(Field{"store", "", 0, 0, true, "how to keep it"}, seed.store);
}

template <class DevelopmentRuleType, class Visitor>
void for_each_development_field(DevelopmentRuleType& development, Visitor& visit) {
  visit(Field{"base_c", "°C", -5, 25, true, "no progress at or under this"}, development.base_c);
  visit(Field{"optimum_c", "°C", 0, 40, true, "fastest towards emergence"}, development.optimum_c);
  visit(Field{"ceiling_c", "°C", 5, 50, true, "no progress at or over this"},
        development.ceiling_c);
  visit(Field{"thermal_time_c_d", "°C d", 1, 5000, true, "from release to half the seedlings"},
        development.thermal_time_c_d);
  visit(Field{"thermal_time_spread", "", 0, 2, true, "of it between seeds, natural logarithm"},
        development.thermal_time_spread);
}

template <class LossRuleType, class Visitor>
void for_each_loss_field(LossRuleType& losses, Visitor& visit) {
  visit(Field{"wet_loss_per_day", "share", 0, 0.5, true, "of wet waiting seed at 20 °C"},
        losses.wet_loss_per_day);
  visit(Field{"rot_factor", "", 0, 20, true, "damping off against a usual kind"},
        losses.rot_factor);
  visit(Field{"dry_loss_share", "share", 0, 1, true, "dies, dried with the root just out"},
        losses.dry_loss_share);
}

template <class SowingRuleType, class Visitor>
void for_each_sowing_field(SowingRuleType& sowing, Visitor& visit) {
  visit(Field{"light", "", 0, 0, true, "light for germination"}, sowing.light);
  visit(Field{"cover", "", 0, 0, true, "how to cover the seed"}, sowing.cover);
  visit(Field{"cover_mm", "mm", 0, 100, false, "depth of the cover"}, sowing.cover_mm);
  visit(Field{"mat", "", 0, 0, true, "heat mat"}, sowing.mat);
  visit(Field{"mat_at_night", "", 0, 0, false, "the mat at night"}, sowing.mat_at_night);
  visit(Field{"humidity_cover", "", 0, 0, true, "bag or lid"}, sowing.humidity_cover);
  visit(Field{"pot_depth", "", 0, 0, true, "depth class of the pot"}, sowing.pot_depth);
  visit(Field{"pot_depth_mm", "mm", 20, 600, false, "depth of the pot"}, sowing.pot_depth_mm);
  visit(Field{"seeds_per_pot", "seeds", 1, 500, true, "in a pot 8 cm across"},
        sowing.seeds_per_pot);
  visit(Field{"mix_mineral_share", "share", 0, 1, true, "mineral part of the mix"},
        sowing.mix_mineral_share);
  visit(Field{"smoke", "", 0, 0, true, "smoke or smoke water"}, sowing.smoke);
  visit(Field{"leach", "", 0, 0, true, "soaking or rinsing first"}, sowing.leach);
  visit(Field{"scarify", "", 0, 0, true, "nicking or rubbing the coat"}, sowing.scarify);
}

template <class SeedlingRuleType, class Visitor>
void for_each_seedling_field(SeedlingRuleType& seedling, Visitor& visit) {
  visit(Field{"first_look_days", "days", 0, 1000, true, "first seedlings after first water"},
        seedling.first_look_days);
  visit(Field{"main_look_days", "days", 0, 1000, true, "most seedlings after first water"},
        seedling.main_look_days);
  visit(Field{"last_look_days", "days", 0, 1500, true, "then nothing more comes this season"},
        seedling.last_look_days);
  visit(Field{"growth_needed_days", "days", 0, 1000, true, "good days before its first rest"},
        seedling.growth_needed_days);
  visit(Field{"rest_sum", "", 1, 200, false, "warmth that begins its first rest"},
        seedling.rest_sum);
  visit(Field{"first_rest", "", 0, 0, true, "how it passes its first resting season"},
        seedling.first_rest);
  visit(Field{"seedling_frost_c", "°C", -20, 15, true, "coldest a young seedling stands"},
        seedling.seedling_frost_c);
  visit(Field{"older_seedling_frost_c", "°C", -25, 15, true, "coldest after sixty days"},
        seedling.older_seedling_frost_c);
  visit(Field{"seedling_heat_c", "°C", 20, 65, true, "hottest hours a young seedling stands"},
        seedling.seedling_heat_c);
  visit(Field{"shade_first_year", "share", 0, 1, true, "of the sun kept off in its first year"},
        seedling.shade_first_year);
  visit(Field{"shade_second_year", "share", 0, 1, true, "in its second"},
        seedling.shade_second_year);
  visit(Field{"shade_third_year", "share", 0, 1, true, "from its third on"},
        seedling.shade_third_year);
  visit(Field{"keep_seasons", "seasons", 1, 10, true, "before a pot may be emptied"},
        seedling.keep_seasons);
  visit(Field{"transplant", "", 0, 0, true, "pricking out"}, seedling.transplant);
}

/// Calls visit(Field, member) for every field; a member is std::optional<Estimate>,
/// std::optional<Choice<E>> or std::vector<Remark>.
template <class RuleType, class Visitor> void for_each_field(RuleType& rule, Visitor&& visit) {
  for_each_gate_field(rule.gate, visit);
  for_each_seed_field(rule.seed, visit);
  for_each_development_field(rule.development, visit);
  for_each_loss_field(rule.losses, visit);
  for_each_sowing_field(rule.sowing, visit);
  for_each_seedling_field(rule.seedling, visit);
  visit(Field{"cautions", "", 0, 0, false, "usual cautions", caution_codes}, rule.cautions);
  visit(Field{"notes", "", 0, 0, false, "where growers differ"}, rule.notes);
}

} // namespace nightsow::species_rules
