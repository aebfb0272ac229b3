#include "planner/garden/seed_age.hpp"

#include "climate/base/csv.hpp"
#include "planner/garden/packet_values.hpp"
#include "planner/garden/plain_text.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr double most_days = 200 * 365.25;

constexpr std::array<std::pair<std::string_view, double>, 14> units{{
    {"d", 1.0},
    {"day", 1.0},
    {"days", 1.0},
    {"w", 7.0},
    {"wk", 7.0},
    {"week", 7.0},
    {"weeks", 7.0},
    {"mo", 365.25 / 12},
    {"month", 365.25 / 12},
    {"months", 365.25 / 12},
    {"y", 365.25},
    {"yr", 365.25},
    {"year", 365.25},
    {"years", 365.25},
}};

} // namespace

std::optional<SeedAge> parse_seed_age(std::string_view text) {
  const std::string lower = lower_case(trimmed(text));
  const std::size_t end = std::min(lower.find_first_not_of("0123456789.,"), lower.size());
  const std::string_view figure = std::string_view{lower}.substr(0, end);
  const std::string_view word = trimmed(std::string_view{lower}.substr(end));
  const auto number = parse_decimal(figure);
  const auto* unit = std::find_if(
      units.begin(), units.end(), [&](const auto& entry) { return entry.first == word; });
  if (!number || unit == units.end() || *number * unit->second > most_days) {
    return std::nullopt;
  }
  const std::size_t point = figure.find_first_of(".,");
  const auto decimals = point == std::string_view::npos ? 0 : figure.size() - point - 1;
  const double last_place = unit->second / std::pow(10.0, static_cast<double>(decimals));
  return SeedAge{*number * unit->second, 0.5 * last_place};
}

DateRange harvest_of(const SeedAge& age, Date today) {
  const auto before = [&](double days) { return today - Days{std::max(0L, std::lround(days))}; };
  return {before(age.days + age.give_or_take_days), before(age.days - age.give_or_take_days)};
}

} // namespace nightsow::planner
