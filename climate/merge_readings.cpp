#include "climate/merge_readings.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace nightsow::climate {

namespace {

constexpr double notable_difference_k = 1.0; // definitions: differences over 1 K are a finding
constexpr double rounding_k = 0.0005;        // tenths pass through binary numbers

// One element of one date in one file. A disputed cell keeps the value met first, for the findings.
struct Cell {
  float value_c = missing_c;
  std::uint32_t line = 0;
  bool disputed = false;

  [[nodiscard]] bool usable() const { return !disputed && !std::isnan(value_c); }
};

enum class Met { nothing, first, equal, different };

Met put(Cell& cell, float value_c, std::uint32_t line) {
  if (std::isnan(value_c)) {
    return Met::nothing;
  }
  if (std::isnan(cell.value_c)) {
    cell.value_c = value_c;
    cell.line = line;
    return Met::first;
  }
  if (!cell.disputed && cell.value_c == value_c) {
    return Met::equal;
  }
  cell.disputed = true;
  return Met::different;
}

// One file spread over its own dates.
struct FileDays {
  Date first{};
  std::vector<Cell> nights;
  std::vector<Cell> days;
};

Finding repeated(
    FindingKind kind, const Readings& file, const Reading& row, float value, float other) {
  const Verdict verdict = kind == FindingKind::repeated_equal ? Verdict::used : Verdict::ignored;
  return {kind,
          verdict,
          row.date,
          file.file,
          row.line,
          static_cast<double>(value),
          static_cast<double>(other)};
}

// A repeated row is one finding when its values are equal, else one for each element that differs.
void put_row(FileDays& spread,
             const Readings& file,
             const Reading& row,
             std::vector<Finding>& findings) {
  const auto index = static_cast<std::size_t>((row.date - spread.first).count());
  Cell& night = spread.nights[index];
  Cell& day = spread.days[index];
  const Met night_met = put(night, row.night_c, row.line);
  const Met day_met = put(day, row.day_c, row.line);
  if (night_met == Met::different) {
    findings.push_back(
        repeated(FindingKind::repeated_different, file, row, row.night_c, night.value_c));
  }
  if (day_met == Met::different) {
    findings.push_back(
        repeated(FindingKind::repeated_different, file, row, row.day_c, day.value_c));
  }
  const bool differs = night_met == Met::different || day_met == Met::different;
  if (!differs && (night_met == Met::equal || day_met == Met::equal)) {
    const float value = night_met == Met::equal ? row.night_c : row.day_c;
    findings.push_back(repeated(FindingKind::repeated_equal, file, row, value, value));
  }
}

FileDays spread_over_dates(const Readings& file, std::vector<Finding>& findings) {
  FileDays spread;
  if (file.rows.empty()) {
    return spread;
  }
  const auto by_date = [](const Reading& a, const Reading& b) { return a.date < b.date; };
  const auto [first, last] = std::minmax_element(file.rows.begin(), file.rows.end(), by_date);
  spread.first = first->date;
  const auto size = static_cast<std::size_t>((last->date - first->date).count()) + 1;
  spread.nights.resize(size);
  spread.days.resize(size);
  for (const Reading& row : file.rows) {
    put_row(spread, file, row, findings);
  }
  return spread;
}

DailySeries series_around(std::span<const FileDays> files) {
  std::optional<Date> first;
  std::optional<Date> last;
  for (const FileDays& file : files) {
    if (!file.nights.empty()) {
      const Date end = file.first + Days{static_cast<int>(file.nights.size()) - 1};
      first = first ? std::min(*first, file.first) : file.first;
      last = last ? std::max(*last, end) : end;
    }
  }
  return first ? DailySeries(*first, static_cast<std::size_t>((*last - *first).count()) + 1)
               : DailySeries();
}

// The file listed first has the word: what is there stays, and a notable difference is reported.
bool joins(const Cell& cell,
           float present_c,
           Date date,
           const std::string& file,
           std::vector<Finding>& findings) {
  if (!cell.usable()) {
    return false;
  }
  if (std::isnan(present_c)) {
    return true;
  }
  const auto value = static_cast<double>(cell.value_c);
  const auto present = static_cast<double>(present_c);
  if (std::abs(value - present) > notable_difference_k + rounding_k) {
    findings.push_back(
        {FindingKind::files_differ, Verdict::ignored, date, file, cell.line, value, present});
  }
  return false;
}

void join_file(MergedReadings& merged, const FileDays& file, std::uint32_t number) {
  const std::string& name = merged.files[number];
  for (std::size_t i = 0; i < file.nights.size(); ++i) {
    const Date date = file.first + Days{static_cast<int>(i)};
    const std::size_t index = *merged.series.index_of(date);
    const Cell& night = file.nights[i];
    if (joins(night, merged.series.night_c()[index], date, name, merged.findings)) {
      merged.series.set_night(index, night.value_c);
      merged.night_place[index] = {number, night.line};
    }
    const Cell& day = file.days[i];
    if (joins(day, merged.series.day_c()[index], date, name, merged.findings)) {
      merged.series.set_day(index, day.value_c);
      merged.day_place[index] = {number, day.line};
    }
  }
}

} // namespace

MergedReadings merge_readings(std::span<const Readings> files) {
  MergedReadings merged;
  for (const Readings& file : files) {
    merged.files.push_back(file.file);
    merged.findings.insert(merged.findings.end(), file.findings.begin(), file.findings.end());
  }
  std::vector<FileDays> spread;
  spread.reserve(files.size());
  for (const Readings& file : files) {
    spread.push_back(spread_over_dates(file, merged.findings));
  }
  merged.series = series_around(spread);
  merged.night_place.resize(merged.series.size());
  merged.day_place.resize(merged.series.size());
  for (std::uint32_t number = 0; number < spread.size(); ++number) {
    join_file(merged, spread[number], number);
  }
  return merged;
}

} // namespace nightsow::climate
