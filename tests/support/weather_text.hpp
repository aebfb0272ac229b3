#pragma once

#include "climate/base/date.hpp"
#include "climate/base/problem.hpp"
#include "climate/readers/read_readings.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <sstream>
#include <string>
#include <string_view>

namespace nightsow::climate {

/// Reads a weather file that a test has written down.
inline Readings read(std::string_view text) {
  return read_readings(text, "file.csv");
}

/// The problem for which a weather file is refused; the test fails when it is read.
inline Problem refusal(std::string_view text) {
  try {
    static_cast<void>(read(text));
  } catch (const InputError& error) {
    return error.problem();
  }
  ADD_FAILURE() << "this was read:\n" << text;
  return {};
}

/// Whether a text holds another.
inline bool says(std::string_view text, std::string_view words) {
  return text.find(words) != std::string_view::npos;
}

/// "2024-03-31 5.1/18.2" for each row, rows parted by "; ", "-" for a missing value.
inline std::string rows_of(const Readings& readings) {
  const auto figure = [](float value) {
    std::ostringstream text;
    text << value;
    return std::isnan(value) ? "-" : text.str();
  };
  std::string text;
  for (const Reading& row : readings.rows) {
    text += (text.empty() ? "" : "; ") + format_iso_date(row.date) + ' ' + figure(row.night_c) +
            '/' + figure(row.day_c);
  }
  return text;
}

} // namespace nightsow::climate
