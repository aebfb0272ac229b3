#include "climate/screen.hpp"

#include <string>
#include <utility>

namespace nightsow::climate {

namespace {

// The coldest and hottest air measured at the ground on Earth (WMO World Weather and Climate
// Extremes Archive): Vostok 1983-07-21 and Furnace Creek 1913-07-10.
constexpr double coldest_on_earth_c = -89.2;
constexpr double hottest_on_earth_c = 56.7;

// Not a judgement but binary rounding: 56.7 as a float is a little over 56.7.
constexpr double rounding_c = 0.005;

bool impossible(float value_c) {
  const auto value = static_cast<double>(value_c);
  return value < coldest_on_earth_c - rounding_c || value > hottest_on_earth_c + rounding_c;
}

Finding finding(const MergedReadings& merged,
                FindingKind kind,
                std::size_t index,
                const ReadingPlace& place,
                float value_c,
                float other_c) {
  const std::string file = place.file < merged.files.size() ? merged.files[place.file] : "";
  return {kind,
          Verdict::ignored,
          merged.series.date_of(index),
          file,
          place.line,
          static_cast<double>(value_c),
          static_cast<double>(other_c)};
}

void drop_impossible(MergedReadings& merged, std::vector<Finding>& findings) {
  constexpr auto kind = FindingKind::impossible;
  for (std::size_t i = 0; i < merged.series.size(); ++i) {
    const float night = merged.series.night_c()[i];
    const float day = merged.series.day_c()[i];
    if (impossible(night)) {
      findings.push_back(finding(merged, kind, i, merged.night_place[i], night, missing_c));
      merged.series.set_night(i, missing_c);
    }
    if (impossible(day)) {
      findings.push_back(finding(merged, kind, i, merged.day_place[i], day, missing_c));
      merged.series.set_day(i, missing_c);
    }
  }
}

void drop_night_above_day(MergedReadings& merged, std::vector<Finding>& findings) {
  constexpr auto kind = FindingKind::night_above_day;
  for (std::size_t i = 0; i < merged.series.size(); ++i) {
    const float night = merged.series.night_c()[i];
    const float day = merged.series.day_c()[i];
    if (night > day) {
      findings.push_back(finding(merged, kind, i, merged.night_place[i], night, day));
      merged.series.set_night(i, missing_c);
      merged.series.set_day(i, missing_c);
    }
  }
}

} // namespace

ScreenedReadings screen(MergedReadings merged) {
  std::vector<Finding> findings = std::move(merged.findings);
  drop_impossible(merged, findings);
  drop_night_above_day(merged, findings);
  return {std::move(merged.series), std::move(findings)};
}

} // namespace nightsow::climate
