#pragma once

#include "species-rules/estimate.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::species_rules {

enum class Growth { winter, summer, opportunist };
enum class Start {
  cool,    ///< waits for cool nights
  hot,     ///< sown in the hot season, warm
  any,     ///< comes up whenever it is neither hot nor cold
  at_once, ///< fleshy seed that cannot wait
};
enum class Light { needed, helpful, indifferent, dark };
enum class Cover { none, dusting, thin, own_thickness, deep, half_buried };
enum class SeedSize { dust, fine, small, medium, large, fleshy };
enum class Store { warm_dry, cool_dry, warm_then_cool, sow_at_once };
enum class Mat { needed, helpful, useless, harmful };
enum class MatAtNight { on, off };
enum class PotDepth { shallow, standard, deep, very_deep };
enum class Transplant { easy, after_first_rest, late, never };
/// How the plant passes its first resting season: the hot one of winter growers, the cool one of
/// summer growers.
enum class FirstRestWay {
  dry,          ///< let go dry, shaded, with a sip now and then
  barely_moist, ///< rests or nearly so, and is not dried off
  none,         ///< evergreen: goes on being watered
  dies,         ///< annual: sets seed and dies
};
enum class HumidityCover { useful, useless, harmful };
enum class Swing { needed, helpful, indifferent };
enum class Treatment { needed, helpful, useless, harmful };

/// When the seed starts. Temperatures in °C of bench air.
struct GateRule {
  std::optional<Choice<Growth>> growth;
  std::optional<Choice<Start>> start;
  std::optional<Estimate> night_limit_c; ///< nights at or under this start half of the seed
  /// How far single seeds stray from the night limit, or from the warm night: one standard
  /// deviation.
  std::optional<Estimate> night_limit_spread_k;
  std::optional<Estimate> indifferent_share; ///< needs no such night
  std::optional<Estimate> nights;            ///< so many …
  std::optional<Estimate> of;                ///< … of the last so many
  std::optional<Estimate> day_limit_c;
  std::optional<Estimate> warm_night_c; ///< hot starters: nights at or above, mat counted
  std::optional<Choice<Swing>> swing;
  std::optional<Estimate> wake_above_limit_k; ///< a resting plant wakes so far above the limit
};

struct SeedRule {
  std::optional<Choice<SeedSize>> size;
  std::optional<Estimate> germination_share;
  std::optional<Estimate> half_life_years;
  std::optional<Estimate> after_ripening_c_d;
  std::optional<Estimate> after_ripening_base_c; ///< no after-ripening at or under this
  std::optional<Estimate> deferral_share;        ///< of seed left whole
  /// The same once it was smoked, leached or scarified as the rule tells; empty: not counted.
  std::optional<Estimate> deferral_treated_share;
  std::optional<Choice<Store>> store;
};

/// From release to emergence: thermal time of the seed's own temperature.
struct DevelopmentRule {
  std::optional<Estimate> base_c;    ///< no progress at or under this
  std::optional<Estimate> optimum_c; ///< fastest
  std::optional<Estimate> ceiling_c; ///< no progress at or over this
  std::optional<Estimate> thermal_time_c_d;
  std::optional<Estimate> thermal_time_spread; ///< between seeds, of the natural logarithm
};

struct LossRule {
  std::optional<Estimate> wet_loss_per_day; ///< of wet, waiting, sound seed at 20 °C
  std::optional<Estimate> rot_factor;       ///< damping off, against a usual kind
  std::optional<Estimate> dry_loss_share;   ///< of those that dry out with the root just out
};

struct SowingRule {
  std::optional<Choice<Light>> light;
  std::optional<Choice<Cover>> cover;
  std::optional<Estimate> cover_mm;
  std::optional<Choice<Mat>> mat;
  std::optional<Choice<MatAtNight>> mat_at_night;
  std::optional<Choice<HumidityCover>> humidity_cover;
  std::optional<Choice<PotDepth>> pot_depth;
  std::optional<Estimate> pot_depth_mm;
  std::optional<Estimate> seeds_per_pot;
  std::optional<Estimate> mix_mineral_share;
  std::optional<Choice<Treatment>> smoke;
  std::optional<Choice<Treatment>> leach;   ///< rinsing or soaking inhibitors out
  std::optional<Choice<Treatment>> scarify; ///< nicking or rubbing the coat
};

struct SeedlingRule {
  std::optional<Estimate> first_look_days;
  std::optional<Estimate> main_look_days;
  std::optional<Estimate> last_look_days;
  std::optional<Estimate> growth_needed_days;
  std::optional<Estimate> rest_sum;
  std::optional<Choice<FirstRestWay>> first_rest;
  std::optional<Estimate> seedling_frost_c;       ///< under sixty days old
  std::optional<Estimate> older_seedling_frost_c; ///< later
  std::optional<Estimate> seedling_heat_c;        ///< under thirty days old
  std::optional<Estimate> shade_first_year;
  std::optional<Estimate> shade_second_year;
  std::optional<Estimate> shade_third_year;
  std::optional<Estimate> keep_seasons;
  std::optional<Choice<Transplant>> transplant;
};

/// What a kind of seed does, each value with its range, evidence and source. An empty field is not
/// known. `notes` and `cautions` add up from family to species; every other field is replaced.
struct Rule {
  GateRule gate;
  SeedRule seed;
  DevelopmentRule development;
  LossRule losses;
  SowingRule sowing;
  SeedlingRule seedling;
  std::vector<Remark> cautions; ///< codes: see caution_codes in rule_fields.hpp
  std::vector<Remark> notes;    ///< where growers differ, what matters
  /// The notes of genus and family are not for this entry: those of its own are all. For a summer
  /// grower among winter growers, and the other way round.
  bool only_own_notes = false;
  /// Keys of fields that stand in the file and could not be read: not known, and not inherited.
  std::vector<std::string_view> unread;
};

template <> struct Words<Growth> {
  static constexpr std::array<std::pair<Growth, std::string_view>, 3> table{{
      {Growth::winter, "winter"},
      {Growth::summer, "summer"},
      {Growth::opportunist, "opportunist"},
  }};
};

template <> struct Words<Start> {
  static constexpr std::array<std::pair<Start, std::string_view>, 4> table{{
      {Start::cool, "cool"},
      {Start::hot, "hot"},
      {Start::any, "any"},
      {Start::at_once, "at_once"},
  }};
};

template <> struct Words<Light> {
  static constexpr std::array<std::pair<Light, std::string_view>, 4> table{{
      {Light::needed, "needed"},
      {Light::helpful, "helpful"},
      {Light::indifferent, "indifferent"},
      {Light::dark, "dark"},
  }};
};

template <> struct Words<Cover> {
  static constexpr std::array<std::pair<Cover, std::string_view>, 6> table{{
      {Cover::none, "none"},
      {Cover::dusting, "dusting"},
      {Cover::thin, "thin"},
      {Cover::own_thickness, "own_thickness"},
      {Cover::deep, "deep"},
      {Cover::half_buried, "half_buried"},
  }};
};

template <> struct Words<SeedSize> {
  static constexpr std::array<std::pair<SeedSize, std::string_view>, 6> table{{
      {SeedSize::dust, "dust"},
      {SeedSize::fine, "fine"},
      {SeedSize::small, "small"},
      {SeedSize::medium, "medium"},
      {SeedSize::large, "large"},
      {SeedSize::fleshy, "fleshy"},
  }};
};

template <> struct Words<Store> {
  static constexpr std::array<std::pair<Store, std::string_view>, 4> table{{
      {Store::warm_dry, "warm_dry"},
      {Store::cool_dry, "cool_dry"},
      {Store::warm_then_cool, "warm_then_cool"},
      {Store::sow_at_once, "sow_at_once"},
  }};
};

template <> struct Words<Mat> {
  static constexpr std::array<std::pair<Mat, std::string_view>, 4> table{{
      {Mat::needed, "needed"},
      {Mat::helpful, "helpful"},
      {Mat::useless, "useless"},
      {Mat::harmful, "harmful"},
  }};
};

template <> struct Words<MatAtNight> {
  static constexpr std::array<std::pair<MatAtNight, std::string_view>, 2> table{{
      {MatAtNight::on, "on"},
      {MatAtNight::off, "off"},
  }};
};

template <> struct Words<PotDepth> {
  static constexpr std::array<std::pair<PotDepth, std::string_view>, 4> table{{
      {PotDepth::shallow, "shallow"},
      {PotDepth::standard, "standard"},
      {PotDepth::deep, "deep"},
      {PotDepth::very_deep, "very_deep"},
  }};
};

template <> struct Words<Transplant> {
  static constexpr std::array<std::pair<Transplant, std::string_view>, 4> table{{
      {Transplant::easy, "easy"},
      {Transplant::after_first_rest, "after_first_rest"},
      {Transplant::late, "late"},
      {Transplant::never, "never"},
  }};
};

template <> struct Words<FirstRestWay> {
  static constexpr std::array<std::pair<FirstRestWay, std::string_view>, 4> table{{
      {FirstRestWay::dry, "dry"},
      {FirstRestWay::barely_moist, "barely_moist"},
      {FirstRestWay::none, "none"},
      {FirstRestWay::dies, "dies"},
  }};
};

template <> struct Words<HumidityCover> {
  static constexpr std::array<std::pair<HumidityCover, std::string_view>, 3> table{{
      {HumidityCover::useful, "useful"},
      {HumidityCover::useless, "useless"},
      {HumidityCover::harmful, "harmful"},
  }};
};

template <> struct Words<Swing> {
  static constexpr std::array<std::pair<Swing, std::string_view>, 3> table{{
      {Swing::needed, "needed"},
      {Swing::helpful, "helpful"},
      {Swing::indifferent, "indifferent"},
  }};
};

template <> struct Words<Treatment> {
  static constexpr std::array<std::pair<Treatment, std::string_view>, 4> table{{
      {Treatment::needed, "needed"},
      {Treatment::helpful, "helpful"},
      {Treatment::useless, "useless"},
      {Treatment::harmful, "harmful"},
  }};
};

} // namespace nightsow::species_rules
