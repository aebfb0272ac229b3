#include "planner/answers/climate_report.hpp"

#include "climate/sun.hpp"
#include "planner/answers/bench_report.hpp"
#include "planner/answers/climate_detail.hpp"
#include "planner/answers/figures.hpp"
#include "planner/answers/make_heads.hpp"
#include "planner/garden/drawn_station.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <tuple>

namespace nightsow::planner {

namespace {

using climate::Finding;
using climate::FindingKind;

constexpr std::size_t worst_findings = 10;
constexpr int months_a_year = 12;
constexpr double years_a_decade = 10.0;

std::string kind_name(FindingKind kind) {
  switch (kind) {
  case FindingKind::impossible:
    return "impossible";
  case FindingKind::night_above_day:
    return "night_above_day";
  case FindingKind::repeated_equal:
    return "repeated_equal";
  case FindingKind::repeated_different:
    return "repeated_different";
  case FindingKind::files_differ:
    return "files_differ";
  case FindingKind::flagged:
    return "flagged";
  case FindingKind::naught:
    return "naught";
  case FindingKind::streak:
    return "streak";
  case FindingKind::gap:
    return "gap";
  case FindingKind::outlier:
    return "outlier";
  case FindingKind::spike:
    return "spike";
  case FindingKind::lagged_range:
    return "lagged_range";
  }
  return "";
}

std::vector<FindingCount> counts_of(const std::vector<Finding>& findings) {
  std::map<FindingKind, FindingCount> counts;
  for (const Finding& finding : findings) {
    FindingCount& count = counts[finding.kind];
    count.kind = kind_name(finding.kind);
    (finding.verdict == climate::Verdict::used ? count.used : count.ignored) += finding.days;
  }
  std::vector<FindingCount> list;
  list.reserve(counts.size());
  for (const auto& [kind, count] : counts) {
    list.push_back(count);
  }
  return list;
}

// Ignored before used, then the kinds in the order of the enumeration, then the latest: what may
// spoil today's answer stands first.
std::vector<FindingLine> finding_lines(std::vector<Finding> findings, bool all) {
  const auto key = [](const Finding& finding) {
    return std::tuple{finding.verdict == climate::Verdict::used,
                      finding.kind,
                      Date{} - finding.date,
                      finding.file,
                      finding.line};
  };
  std::stable_sort(findings.begin(), findings.end(), [&](const Finding& a, const Finding& b) {
    return key(a) < key(b);
  });
  if (!all && findings.size() > worst_findings) {
    findings.resize(worst_findings);
  }
  const auto figure = [](double value_c) {
    return std::isnan(value_c) ? std::nullopt : std::optional{rounded_tenth(value_c)};
  };
  std::vector<FindingLine> lines;
  lines.reserve(findings.size());
  for (const Finding& finding : findings) {
    lines.push_back({kind_name(finding.kind),
                     finding.verdict == climate::Verdict::used ? "used" : "ignored",
                     finding.date,
                     finding.file,
                     finding.line,
                     figure(finding.value_c),
                     figure(finding.other_c),
                     finding.days});
  }
  return lines;
}

std::vector<LoggerRecord> logger_records(const LoadedGarden& garden, bool all) {
  std::vector<LoggerRecord> records;
  for (const auto& [bench, logger] : garden.bench_loggers) {
    LoggerRecord record;
    record.bench = bench;
    const std::span<const float> nights = logger.night_c();
    record.nights = static_cast<int>(std::count_if(
        nights.begin(), nights.end(), [](float night_c) { return !std::isnan(night_c); }));
    if (!logger.empty()) {
      record.from = logger.first();
      record.to = logger.last();
    }
    if (const auto doubts = garden.logger_doubts.find(bench);
        doubts != garden.logger_doubts.end()) {
      record.counts = counts_of(doubts->second.findings);
      record.findings = finding_lines(doubts->second.findings, all);
      record.suspicions = suspicion_lines(doubts->second.suspicions);
    }
    records.push_back(std::move(record));
  }
  return records;
}

struct MonthSums {
  double sum = 0.0;
  int count = 0;

  [[nodiscard]] std::optional<double> mean() const {
    return count > 0 ? std::optional{rounded_tenth(sum / count)} : std::nullopt;
  }
};

std::array<MonthSums, months_a_year> month_sums(const climate::DailySeries& series,
                                                std::span<const float> values) {
  std::array<MonthSums, months_a_year> sums{};
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (!std::isnan(values[i])) {
      const date::year_month_day day{series.date_of(i)};
      MonthSums& month = sums[static_cast<unsigned>(day.month()) - 1];
      month.sum += static_cast<double>(values[i]);
      ++month.count;
    }
  }
  return sums;
}

// Mean of the smooth curve over the days of a month in the present year.
double smooth_month_c(const climate::SmoothCurve& curve, int year, unsigned month) {
  const date::year_month_day_last last{date::year{year} / date::month{month} / date::last};
  const auto days = static_cast<unsigned>(last.day());
  double sum = 0.0;
  for (unsigned day = 1; day <= days; ++day) {
    sum += curve.value_c(*make_date(year, month, day));
  }
  return rounded_tenth(sum / days);
}

std::vector<MonthLine> month_lines(const LoadedGarden& garden, const climate::SmoothYear& smooth) {
  constexpr unsigned middle_of_month = 15;
  const auto nights = month_sums(garden.station, garden.station.night_c());
  const auto days = month_sums(garden.station, garden.station.day_c());
  const int year = year_of(garden.today);
  std::vector<MonthLine> lines;
  for (unsigned month = 1; month <= months_a_year; ++month) {
    MonthLine line;
    line.month = static_cast<int>(month);
    line.night_c = nights[month - 1].mean();
    line.nights = nights[month - 1].count;
    line.day_c = days[month - 1].mean();
    if (knows_normals_only(garden.garden)) {
      line.night_c = rounded_tenth(garden.garden.monthly_normals->night_c.at(month - 1));
      line.nights = 0;
      line.day_c = rounded_tenth(garden.garden.monthly_normals->day_c.at(month - 1));
    }
    line.smooth_night_c = smooth_month_c(smooth.night, year, month);
    if (smooth.day) {
      line.smooth_day_c = smooth_month_c(*smooth.day, year, month);
    }
    line.day_length_hours = rounded_tenth(climate::day_length_hours(
        garden.garden.latitude, *make_date(year, month, middle_of_month)));
    lines.push_back(line);
  }
  return lines;
}

void set_holes(const climate::DailySeries& series, ClimateAnswer& answer) {
  int hole = 0;
  for (const float night : series.night_c()) {
    hole = std::isnan(night) ? hole + 1 : 0;
    answer.days_without_night += hole > 0 ? 1 : 0;
    answer.longest_hole_days = std::max(answer.longest_hole_days, hole);
  }
}

PhasesLine phases_line(const climate::Phases& phases, const climate::Season& season) {
  PhasesLine line;
  line.planning_begins = season.planning_begins;
  line.hot_season_begins = climate::last_on_or_before(season.hottest, phases.hot_season_begins);
  line.hottest_night = season.hottest;
  line.hot_season_ends = season.limb_begins - Days{1};
  line.cooling_limb_begins = season.limb_begins;
  line.coldest_night = season.coldest;
  line.hottest_c = rounded_tenth(phases.hottest_night.degrees());
  line.coldest_c = rounded_tenth(phases.coldest_night.degrees());
  return line;
}

std::optional<TrendLine> trend_line(const climate::SmoothCurve& night) {
  if (!night.trend_fitted) {
    return std::nullopt;
  }
  constexpr double hundredths = 100.0;
  const auto a_decade = [](double a_year) {
    return std::round(a_year * years_a_decade * hundredths) / hundredths + 0.0;
  };
  return TrendLine{a_decade(night.trend_c_per_year),
                   a_decade(night.trend_standard_error),
                   a_decade(night.shrunk_trend_c_per_year())};
}

} // namespace

ClimateAnswer climate_report(const LoadedGarden& garden, const ClimateRequest& request) {
  BenchSeasons seasons{garden};
  const StationClimate& station = seasons.station();
  const std::optional<climate::Season> season =
      chosen_season(station, garden.today, request.season);
  const int usable = usable_seasons(station, season);
  ClimateAnswer answer;
  answer.garden = garden_head(garden.garden);
  answer.today = garden.today;
  answer.season = season ? season->name : year_of(garden.today);
  answer.readings = readings_head(garden, usable);
  if (season) {
    answer.phases = phases_line(*station.turning.phases, *season);
  } else {
    answer.no_phases.push_back(no_cooling_limb_reason(station));
  }
  answer.swing_k = rounded_tenth(station.turning.swing.kelvin());
  answer.night_sd_c = rounded_tenth(station.smooth.night.residual_sd_c);
  for (const ReadingsFile& file : garden.files) {
    answer.files.push_back(
        {file.file, file.format, file.unit, file.bench, file.because, file.forecast});
  }
  answer.months = month_lines(garden, station.smooth);
  answer.benches = bench_lines(garden, seasons);
  if (season && usable > 0) {
    answer.kelvin = kelvin_lines(garden, seasons, *season);
  }
  answer.counts = counts_of(garden.findings);
  answer.findings = finding_lines(garden.findings, request.all_findings);
  answer.loggers = logger_records(garden, request.all_findings);
  // Of drawn years there is nothing to be told that was not put in.
  if (!knows_normals_only(garden.garden)) {
    set_holes(garden.station, answer);
    answer.trend = trend_line(station.smooth.night);
    answer.record = record_detail(garden);
    answer.usual = usual_detail(garden, station, season);
  }
  answer.warnings = warnings_of(garden, station, usable);
  return answer;
}

} // namespace nightsow::planner
