#include "climate/outlook.hpp"

#include "climate/past_seasons.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace nightsow::climate {

namespace {

// A past season as it may stand for the coming one.
struct Source {
  Season season;
  int shift_days = 0;
  double shift_k = 0.0; ///< nights and days
  double doubt_k = 0.0; ///< nights alone
};

constexpr std::array wide_days{-10, 0, 10};
constexpr std::array wide_kelvin{-1.0, 0.0, 1.0};

std::vector<Season> usable_before(const BenchAir& bench,
                                  const Phases& phases,
                                  const Season& target) {
  std::vector<Season> seasons;
  for (const SearchedSeason& searched : searched_seasons(bench, phases)) {
    if (searched.season.hottest < target.hottest && searched.few_missing()) {
      seasons.push_back(searched.season);
    }
  }
  return seasons;
}

// Each source three times, lower and higher by what the bench's nights are in doubt.
std::vector<Source> doubted(const std::vector<Source>& sources, CelsiusDelta doubt) {
  if (doubt.kelvin() <= 0.0) {
    return sources;
  }
  std::vector<Source> all;
  all.reserve(3 * sources.size());
  for (const Source& source : sources) {
    for (const double side : {-1.0, 0.0, 1.0}) {
      all.push_back(source);
      all.back().doubt_k = side * doubt.kelvin();
    }
  }
  return all;
}

std::vector<Source> sources_of(const std::vector<Season>& seasons) {
  std::vector<Source> sources;
  const bool few = seasons.size() < static_cast<std::size_t>(few_seasons);
  for (const Season& season : seasons) {
    if (!few) {
      sources.push_back({season});
      continue;
    }
    for (const int days : wide_days) {
      for (const double kelvin : wide_kelvin) {
        sources.push_back({season, days, kelvin});
      }
    }
  }
  return sources;
}

void raise(std::vector<float>& values, double by_k) {
  for (float& value : values) {
    value = static_cast<float>(static_cast<double>(value) + by_k);
  }
}

void copy_observed(const std::vector<float>& observed, int count, std::vector<float>& member) {
  std::copy_n(observed.begin(), count, member.begin());
}

int observed_days(const BenchAir& bench, const Outlook& outlook) {
  const std::optional<Date> last = last_night(bench.air);
  if (!last) {
    return 0;
  }
  return std::clamp(days_between(outlook.first, *last) + 1, 0, outlook.days);
}

} // namespace

std::span<const float> Outlook::night_of(int member) const {
  return std::span<const float>(night_c).subspan(static_cast<std::size_t>(member) *
                                                     static_cast<std::size_t>(days),
                                                 static_cast<std::size_t>(days));
}

std::span<const float> Outlook::day_of(int member) const {
  return std::span<const float>(day_c).subspan(static_cast<std::size_t>(member) *
                                                   static_cast<std::size_t>(days),
                                               static_cast<std::size_t>(days));
}

Outlook season_outlook(const BenchAir& bench,
                       const SmoothYear& smooth,
                       const Phases& phases,
                       const Season& season) {
  Outlook outlook;
  outlook.first = season.hottest;
  outlook.days = days_between(season.hottest, season.next_hottest);
  outlook.observed_days = observed_days(bench, outlook);
  const std::vector<Season> past = usable_before(bench, phases, season);
  outlook.past_seasons = static_cast<int>(past.size());

  const double night_trend = smooth.night.shrunk_trend_c_per_year();
  const double day_trend = smooth.day ? smooth.day->shrunk_trend_c_per_year() : 0.0;
  const std::vector<float> night_seen = bench.air.nights_from(outlook.first, outlook.days);
  const std::vector<float> day_seen = bench.air.days_from(outlook.first, outlook.days);
  for (const Source& source : doubted(sources_of(past), bench.night_doubt)) {
    const Date from = source.season.hottest + Days{source.shift_days};
    const double years = years_since_2000(season.hottest) - years_since_2000(source.season.hottest);
    std::vector<float> night_c = bench.air.nights_from(from, outlook.days);
    std::vector<float> day_c = bench.air.days_from(from, outlook.days);
    raise(night_c, years * night_trend + source.shift_k + source.doubt_k);
    raise(day_c, years * day_trend + source.shift_k);
    copy_observed(night_seen, outlook.observed_days, night_c);
    copy_observed(day_seen, outlook.observed_days, day_c);
    outlook.night_c.insert(outlook.night_c.end(), night_c.begin(), night_c.end());
    outlook.day_c.insert(outlook.day_c.end(), day_c.begin(), day_c.end());
    ++outlook.members;
  }
  return outlook;
}

DateSpread date_spread(Date first, std::vector<std::optional<int>> days) {
  DateSpread spread;
  if (days.empty()) {
    spread.never = 1.0;
    return spread;
  }
  // Never sorts behind every day.
  std::sort(
      days.begin(), days.end(), [](const auto& a, const auto& b) { return a && (!b || *a < *b); });
  const auto n = static_cast<double>(days.size());
  const auto percentile = [&](double p) -> std::optional<Date> {
    const auto rank = static_cast<std::size_t>(std::max(1.0, std::ceil(p * n - 1e-9)));
    const std::optional<int>& day = days[rank - 1];
    return day ? std::optional<Date>{first + Days{*day}} : std::nullopt;
  };
  spread.p10 = percentile(0.1);
  spread.p50 = percentile(0.5);
  spread.p90 = percentile(0.9);
  spread.never = static_cast<double>(std::count(days.begin(), days.end(), std::nullopt)) / n;
  return spread;
}

DateSpread outlook_mild_days(const Outlook& outlook,
                             std::optional<Celsius> day_limit,
                             int first_allowed) {
  const auto searched = static_cast<std::size_t>(std::min(outlook.days, nights_searched));
  std::vector<std::optional<int>> mild;
  mild.reserve(static_cast<std::size_t>(outlook.members));
  for (int member = 0; member < outlook.members; ++member) {
    mild.push_back(
        first_mild_day(outlook.day_of(member).first(searched), day_limit, first_allowed));
  }
  return date_spread(outlook.first, std::move(mild));
}

OutlookWords outlook_words(const Outlook& outlook, const NightLimit& limit, int first_allowed) {
  const auto searched = static_cast<std::size_t>(std::min(outlook.days, nights_searched));
  std::vector<std::optional<int>> stirs;
  std::vector<std::optional<int>> settles;
  OutlookWords words;
  int relapsing = 0;
  for (int member = 0; member < outlook.members; ++member) {
    const std::span<const float> night_c = outlook.night_of(member);
    const NightWords season = night_words(
        night_c.first(searched), outlook.day_of(member).first(searched), limit, first_allowed);
    stirs.push_back(season.stirs.day);
    settles.push_back(season.settles.day);
    words.holds_day.push_back(season.holds.day);
    if (season.holds.day) {
      // Where it holds already, what matters is a relapse after watering now.
      const int after = std::max(*season.holds.day, outlook.observed_days - 1);
      relapsing += relapses(night_c, limit, after) ? 1 : 0;
    }
  }
  words.stirs = date_spread(outlook.first, std::move(stirs));
  words.settles = date_spread(outlook.first, std::move(settles));
  words.holds = date_spread(outlook.first, words.holds_day);
  words.relapse = outlook.members > 0 ? static_cast<double>(relapsing) / outlook.members : 0.0;
  if (outlook.members > 0) {
    const auto seen = std::min(searched, static_cast<std::size_t>(outlook.observed_days));
    words.observed = night_words(
        outlook.night_of(0).first(seen), outlook.day_of(0).first(seen), limit, first_allowed);
  }
  return words;
}

} // namespace nightsow::climate
