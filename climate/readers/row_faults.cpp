#include "climate/readers/row_faults.hpp"

#include "climate/base/csv.hpp"
#include "climate/readers/check_text.hpp"

#include <utility>

namespace nightsow::climate {

namespace {

constexpr std::size_t most_stations_listed = 10;

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

void add_note(Readings& readings, std::string found, std::string remedy) {
  readings.problems.push_back(
      {Severity::note, readings.file, 0, 0, std::move(found), "", std::move(remedy)});
}

void OneStation::meet_other(std::string_view id) {
  const std::string_view name = trimmed(id);
  if (name.empty() || name == first_) {
    return;
  }
  if (!met_) {
    first_ = name;
    met_ = true;
  } else if (!hopeless()) {
    others_.emplace(name);
  }
}

bool OneStation::hopeless() const {
  return others_.size() >= most_stations_listed;
}

void OneStation::refuse_several(std::string_view file) const {
  if (others_.empty()) {
    return;
  }
  std::string list = printable(first_);
  for (const std::string& other : others_) {
    list += ", " + printable(other);
  }
  if (hopeless()) {
    list += " and perhaps more";
  }
  throw InputError({Severity::error,
                    std::string(file),
                    0,
                    0,
                    "several stations are mixed in this file: " + list,
                    "one station a file",
                    "keep the header and the rows of the one station you want"});
}

} // namespace nightsow::climate
