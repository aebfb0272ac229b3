#include "climate/season_trends.hpp"

#include <cmath>
#include <map>
#include <vector>

namespace nightsow::climate {

namespace {

constexpr double least_share = 0.8;

struct Sum {
  double sum = 0.0;
  int count = 0;

  void add(double value) {
    sum += value;
    ++count;
  }
};

using SumsByYear = std::map<int, Sum>;

std::optional<YearlyTrend> trend_of(const std::vector<double>& years,
                                    const std::vector<double>& values) {
  if (values.size() < least_values_for_theil_sen) {
    return std::nullopt;
  }
  const std::optional<TheilSen> slope = theil_sen(years, values);
  if (!slope) {
    return std::nullopt;
  }
  return YearlyTrend{static_cast<int>(values.size()), *slope, mann_kendall(values)};
}

std::optional<YearlyTrend> trend_of(const SumsByYear& sums, double days) {
  std::vector<double> years;
  std::vector<double> means;
  for (const auto& [year, sum] : sums) {
    if (sum.count >= least_share * days) {
      years.push_back(year);
      means.push_back(sum.sum / sum.count);
    }
  }
  return trend_of(years, means);
}

// `word` picks the day of the one or the other.
template <class Word>
std::optional<YearlyTrend> trend_of_word(std::span<const PastSeason> seasons, Word word) {
  std::vector<double> years;
  std::vector<double> days;
  for (const PastSeason& past : seasons) {
    const std::optional<int> day = word(past.words).day;
    if (past.usable && day) {
      years.push_back(past.season.name);
      days.push_back(*day);
    }
  }
  return trend_of(years, days);
}

} // namespace

SeasonTrends season_trends(Date first,
                           std::span<const float> values_c,
                           const SmoothCurve& curve,
                           date::month_day hottest) {
  SumsByYear whole;
  std::array<SumsByYear, quarters_a_year> quarters;
  for (std::size_t i = 0; i < values_c.size(); ++i) {
    if (std::isnan(values_c[i])) {
      continue;
    }
    const Date day = first + Days{static_cast<int>(i)};
    const double departure_k = static_cast<double>(values_c[i]) - curve.season_c(day);
    const SiteQuarter site = site_quarter(day, hottest);
    whole[site.year].add(departure_k);
    quarters.at(static_cast<std::size_t>(site.quarter))[site.year].add(departure_k);
  }
  SeasonTrends trends;
  trends.year = trend_of(whole, days_a_year);
  for (std::size_t quarter = 0; quarter < quarters.size(); ++quarter) {
    trends.quarter.at(quarter) = trend_of(quarters.at(quarter), days_a_year / quarters_a_year);
  }
  return trends;
}

GateTrend gate_trend(std::span<const PastSeason> seasons) {
  GateTrend trend;
  for (const PastSeason& past : seasons) {
    trend.never += past.usable && !past.words.holds.day ? 1 : 0;
  }
  trend.stirs = trend_of_word(seasons, [](const NightWords& words) { return words.stirs; });
  trend.holds = trend_of_word(seasons, [](const NightWords& words) { return words.holds; });
  return trend;
}

} // namespace nightsow::climate
