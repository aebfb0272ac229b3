#include "species-rules/drawn_parameters.hpp"

#include "species-rules/normal.hpp"
#include "species-rules/rule_fields.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numeric>
#include <string>

namespace nightsow::species_rules {

namespace {

// The standard normal quantile of 90 %: a tenth of cases lies beyond each end of a range.
constexpr double z_of_range_end = 1.2815515655446004;

// Numbers whose errors are factors.
constexpr std::array<std::string_view, 8> factor_keys{"half_life_years",
                                                      "after_ripening_c_d",
                                                      "thermal_time_c_d",
                                                      "thermal_time_spread",
                                                      "wet_loss_per_day",
                                                      "rot_factor",
                                                      "growth_needed_days",
                                                      "rest_sum"};

// FNV-1a, 64 bits.
std::uint64_t hash_of(std::string_view text) {
  std::uint64_t hash = 0xcbf29ce484222325U;
  for (const char c : text) {
    hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3U;
  }
  return hash;
}

// The mixing step of SplitMix64 (Steele, Lea & Flood 2014).
std::uint64_t mixed(std::uint64_t x) {
  x += 0x9e3779b97f4a7c15U;
  x = (x ^ (x >> 30U)) * 0xbf58476d1ce4e5b9U;
  x = (x ^ (x >> 27U)) * 0x94d049bb133111ebU;
  return x ^ (x >> 31U);
}

template <class Less> std::vector<std::size_t> order_by(std::size_t count, Less less) {
  std::vector<std::size_t> order(count);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), less);
  return order;
}

// Gives the draw that stands at each place of the order the normal quantile of that place.
std::vector<double> quantiles_in(const std::vector<std::size_t>& order) {
  std::vector<double> z(order.size());
  for (std::size_t place = 0; place < order.size(); ++place) {
    z[order[place]] =
        normal_quantile((static_cast<double>(place) + 0.5) / static_cast<double>(order.size()));
  }
  return z;
}

std::vector<double> level_z(std::string_view level,
                            std::string_view name,
                            std::string_view key,
                            std::size_t draws) {
  std::string text{level};
  text.append("/").append(name).append("/").append(key);
  const std::uint64_t seed = hash_of(text);
  std::vector<std::uint64_t> rank(draws);
  for (std::size_t draw = 0; draw < draws; ++draw) {
    rank[draw] = mixed(seed ^ mixed(draw));
  }
  return quantiles_in(
      order_by(draws, [&](std::size_t a, std::size_t b) { return rank[a] < rank[b]; }));
}

std::string genus_of(const RuleFor& kind) {
  return kind.accepted.substr(0, kind.accepted.find(' '));
}

bool errs_by_factors(std::string_view key) {
  return std::find(factor_keys.begin(), factor_keys.end(), key) != factor_keys.end();
}

// One value a draw; empty where there is nothing to draw.
std::vector<double> draws_of(const RuleFor& kind,
                             const Field& field,
                             const std::optional<Estimate>& estimate,
                             int draws) {
  if (!estimate || estimate->low == estimate->high) {
    return {};
  }
  std::vector<double> values = drawn_z(kind, field.key, draws);
  for (double& value : values) {
    value = std::clamp(
        drawn_value(*estimate, value, errs_by_factors(field.key)), field.lowest, field.highest);
  }
  return values;
}

template <class Word>
std::vector<double> draws_of(const RuleFor& /*kind*/,
                             const Field& /*field*/,
                             const Word& /*word*/,
                             int /*draws*/) {
  return {};
}

void put(std::optional<Estimate>& estimate, double value) {
  estimate->value = value;
}

template <class Word> void put(Word& /*word*/, double /*value*/) {}

} // namespace

std::vector<double> drawn_z(const RuleFor& kind, std::string_view key, int draws) {
  const auto count = static_cast<std::size_t>(draws);
  const std::vector<double> family = level_z("family", kind.family, key, count);
  const std::vector<double> genus = level_z("genus", genus_of(kind), key, count);
  const std::vector<double> species = level_z("species", kind.accepted, key, count);
  std::vector<double> sum(count);
  for (std::size_t i = 0; i < count; ++i) {
    sum[i] = std::sqrt(family_weight) * family[i] + std::sqrt(genus_weight) * genus[i] +
             std::sqrt(species_weight) * species[i];
  }
  // So few draws leave the sum a little too wide or too narrow; its ranks mend that.
  return quantiles_in(
      order_by(count, [&](std::size_t a, std::size_t b) { return sum[a] < sum[b]; }));
}

double drawn_value(const Estimate& estimate, double z, bool in_logarithms) {
  const double end = z < 0.0 ? estimate.low : estimate.high;
  const double part = std::abs(z) / z_of_range_end;
  if (in_logarithms && estimate.low > 0.0) {
    return estimate.value * std::pow(end / estimate.value, part);
  }
  return estimate.value + part * (end - estimate.value);
}

std::vector<SeedParameters> drawn_parameters(const RuleFor& kind, int draws) {
  std::vector<std::vector<double>> values; // of each field in turn
  for_each_field(kind.rule, [&](const Field& field, const auto& member) {
    values.push_back(draws_of(kind, field, member, draws));
  });
  std::vector<SeedParameters> drawn;
  Rule rule = kind.rule; // each draw puts all of its values
  for (std::size_t draw = 0; draw < static_cast<std::size_t>(draws); ++draw) {
    std::size_t place = 0;
    for_each_field(rule, [&](const Field& /*field*/, auto& member) {
      const std::vector<double>& own = values[place++];
      if (!own.empty()) {
        put(member, own[draw]);
      }
    });
    drawn.push_back(seed_parameters(rule));
  }
  return drawn;
}

} // namespace nightsow::species_rules
