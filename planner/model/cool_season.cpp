#include "planner/model/cool_season.hpp"

#include "climate/seed_level.hpp"
#include "planner/model/readings_guard.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace nightsow::planner {

namespace {

climate::NightCount count_last(std::span<const float> night_c,
                               const climate::NightLimit& limit,
                               int of) {
  return night_c.empty()
             ? climate::NightCount{}
             : climate::count_nights(night_c, night_c.size() - 1, limit.at_or_under, of);
}

} // namespace

GateOutlook gate_outlook(const BenchClimate& climate,
                         const BenchSeason& season,
                         const climate::NightLimit& limit) {
  const int allowed = climate::first_allowed_day(season.season);
  GateOutlook gate;
  gate.limit = limit;
  gate.binding =
      climate::binding(climate::past_seasons(climate.bench, *climate.turning.phases, limit));
  gate.words = climate::outlook_words(season.outlook, limit, allowed);
  const std::span<const float> nights = season.outlook.observed_night_c;
  gate.last_7 = count_last(nights, limit, limit.of);
  gate.last_14 = count_last(nights, limit, climate::holds_of);
  gate.opened = gate.words.observed.holds.day.has_value();
  gate.cool_now = gate.opened && gate.last_14.cool >= climate::holds_nights;
  // Missing nights matter when, had they been cool, first water would be due today.
  gate.doubtful = !gate.cool_now && gate.last_14.missing > 0 &&
                  gate.last_14.cool + gate.last_14.missing >= climate::holds_nights &&
                  (gate.opened || gate.words.observed.holds.unknown);
  if (gate.opened && !gate.cool_now) {
    gate.again = climate::outlook_words(
                     season.outlook, limit, std::max(allowed, season.outlook.observed_days))
                     .holds;
  }
  return gate;
}

std::optional<double> usual_coldest_night_c(const climate::Outlook& outlook, bool fleece) {
  std::vector<double> coldest;
  for (int member = 0; member < outlook.members; ++member) {
    std::optional<double> lowest_c;
    for (const float night :
         outlook.night_of(member).subspan(static_cast<std::size_t>(outlook.observed_days))) {
      if (!std::isnan(night)) {
        lowest_c =
            std::min(lowest_c.value_or(static_cast<double>(night)), static_cast<double>(night));
      }
    }
    if (lowest_c) {
      coldest.push_back(*lowest_c +
                        (fleece && *lowest_c < climate::frost_near_c ? climate::fleece_k : 0.0));
    }
  }
  if (coldest.empty()) {
    return std::nullopt;
  }
  const auto middle = coldest.begin() + static_cast<std::ptrdiff_t>(coldest.size() / 2);
  std::nth_element(coldest.begin(), middle, coldest.end());
  return *middle;
}

MildOutlook mild_outlook(const BenchSeason& season, std::optional<Celsius> day_limit) {
  const climate::Outlook& outlook = season.outlook;
  const int allowed = climate::first_allowed_day(season.season);
  MildOutlook mild;
  mild.days = climate::outlook_mild_days(outlook, day_limit, allowed);
  const int last = outlook.observed_days - 1;
  if (outlook.members > 0 && last >= allowed) {
    const std::span<const float> seen = outlook.observed_day_c;
    mild.mild_now = climate::first_mild_day(seen, day_limit, last).has_value();
    const auto window = std::min(seen.size(), static_cast<std::size_t>(climate::holds_of));
    mild.day_limit_left_out =
        day_limit && !climate::mean_of_those_there(seen.last(window), climate::holds_least_maxima);
  }
  return mild;
}

climate::DateSpread mild_again(const BenchSeason& season, Celsius day_limit) {
  const climate::Outlook& outlook = season.outlook;
  const int first = std::max(climate::first_allowed_day(season.season), outlook.observed_days);
  const int searched = std::min(outlook.days, climate::nights_searched);
  std::vector<std::optional<int>> days;
  for (int member = 0; member < outlook.members; ++member) {
    std::optional<int>& mild = days.emplace_back();
    for (int day = std::max(first, hot_window_days - 1); day < searched && !mild; ++day) {
      const std::span<const float> week = outlook.day_of(member).subspan(
          static_cast<std::size_t>(day + 1 - hot_window_days), hot_window_days);
      if (!too_hot(climate::mean_of_those_there(week, least_recent_highs), day_limit)) {
        mild = day;
      }
    }
  }
  return climate::date_spread(outlook.first, std::move(days));
}

} // namespace nightsow::planner
