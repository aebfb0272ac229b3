#pragma once

#include "climate/base/date.hpp"
#include "climate/base/problem.hpp"
#include "climate/finding.hpp"
#include "climate/station.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace nightsow::climate {

/// One dated row of a file, °C; NaN where the row gives no such element. One date may have several
/// rows (long formats, one-element files, repeated dates).
struct Reading {
  Date date{};
  float night_c = 0.0F;
  float day_c = 0.0F;
  std::uint32_t line = 0;
};

/// What was read from one file, before any screening: the rows that give a temperature, in the
/// file's order.
struct Readings {
  std::string file;                 ///< as the person named it
  std::string format;               ///< name of the format, for people
  std::vector<std::string> because; ///< why this format: what was recognised
  std::string unit;                 ///< "°C", "°F", "tenths of °C": as it stood in the file
  StationFacts station;
  std::vector<Reading> rows;
  std::size_t rows_read = 0;   ///< data rows seen, faulty and empty ones included
  std::size_t rows_faulty = 0; ///< those with something that could not be read
  /// What could not be read, each with line and column (warnings; the first thousand of them), and
  /// what had to be guessed (notes).
  std::vector<Problem> problems;
  std::vector<Finding> findings; ///< values that the source itself had flagged; they are not used
};

} // namespace nightsow::climate
