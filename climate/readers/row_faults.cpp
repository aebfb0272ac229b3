#include "climate/readers/row_faults.hpp"

#include "climate/base/csv.hpp"
#include "climate/daily_series.hpp"
#include "climate/readers/check_text.hpp"

#include <cmath>
#include <utility>

namespace nightsow::climate {

namespace {

constexpr std::size_t most_stations_listed = 40;

} // namespace

void report_fault(Readings& readings,
                  std::size_t line,
                  std::size_t column,
                  std::string found,
                  std::string expected,
                  std::string remedy) {
  if (readings.problems.size() < most_faults_listed) {
    readings.problems.push_back({Severity::warning,
                                 readings.file,
                                 line,
                                 column,
                                 std::move(found),
                                 std::move(expected),
                                 std::move(remedy)});
  }
}

void refuse_file(std::string_view name,
                 std::size_t line,
                 std::string found,
                 std::string expected,
                 std::string remedy) {
  throw InputError({Severity::error,
                    std::string(name),
                    line,
                    0,
                    std::move(found),
                    std::move(expected),
                    std::move(remedy)});
}

void add_note(Readings& readings, std::string found, std::string remedy) {
  readings.problems.push_back(
      {Severity::note, readings.file, 0, 0, std::move(found), "", std::move(remedy)});
}

float unless_flagged(
    Readings& readings, float value, std::string_view quality_flag, Date date, std::size_t line) {
  if (std::isnan(value) || trimmed(quality_flag).empty()) {
    return value;
  }
  readings.findings.push_back({FindingKind::flagged,
                               Verdict::ignored,
                               date,
                               readings.file,
                               line,
                               static_cast<double>(value),
                               static_cast<double>(missing_c)});
  return missing_c;
}

bool OneStation::meet_other(std::string_view id, std::string_view name) {
  const std::string_view trimmed_id = trimmed(id);
  if (trimmed_id.empty()) {
    return wanted_.empty() || !met_ || last_is_wanted_;
  }
  const bool first = !met_;
  met_ = true;
  last_ = id;
  last_is_wanted_ = wanted_.empty() || trimmed_id == wanted_ || trimmed(name) == wanted_;
  if (!ids_.contains(trimmed_id)) {
    ids_.emplace(trimmed_id);
    if (labels_.size() <= most_stations_listed) {
      labels_.push_back(printable(trimmed_id) +
                        (trimmed(name).empty() ? "" : " (" + printable(trimmed(name)) + ")"));
    }
  }
  if (wanted_.empty() ? first : last_is_wanted_) {
    id_ = trimmed_id;
  }
  return last_is_wanted_;
}

bool OneStation::hopeless() const {
  return wanted_.empty() && labels_.size() > most_stations_listed;
}

void OneStation::refuse_several(std::string_view file) const {
  const bool found = wanted_.empty() ? labels_.size() <= 1 : !id_.empty() || !met_;
  if (found) {
    return;
  }
  std::string list;
  for (const std::string& label : labels_) {
    list += (list.empty() ? "" : ", ") + label;
  }
  if (labels_.size() > most_stations_listed) {
    list += " and perhaps more";
  }
  throw InputError({Severity::error,
                    std::string(file),
                    0,
                    0,
                    wanted_.empty()
                        ? "several stations are mixed in this file: " + list
                        : "station '" + printable(wanted_) + "' is not in this file: " + list,
                    "one station of them",
                    R"(name it in garden.json, beside the file, as "station": ")" +
                        printable(*ids_.begin()) + R"(", or keep only its rows)"});
}

} // namespace nightsow::climate
