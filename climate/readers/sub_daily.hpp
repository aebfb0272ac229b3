#pragma once

#include "climate/readers/local_time.hpp"
#include "climate/readers/reading_choices.hpp"
#include "climate/readers/readings.hpp"

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace nightsow::climate {

/// One temperature within a day, in °C, or as the file has it where nothing names its unit; never
/// NaN.
struct TimedReading {
  date::local_seconds clock{}; ///< as the file has it; of UTC when the series says so
  float value = 0.0F;
  std::uint32_t line = 0;
};

/// A file of readings within the day, in the file's order.
struct TimedSeries {
  std::vector<TimedReading> readings;
  bool in_utc = false; ///< the file told its offset, and it is taken off already
  std::optional<std::chrono::seconds> offset; ///< the file's own, if it is one for all
  std::string time_zone;                      ///< a zone that the file itself names; may be empty
};

/// Nights and days out of readings within the day, added to `readings` as rows, one a date.
///
/// The night of D is the lowest reading after noon of the day before up to noon of D, the day of D
/// the highest from midnight to midnight, in civil time. A night or day counts when it has 80 % of
/// its usual readings and no stretch over three hours without one in 00-09 (night) or 09-18 (day)
/// (common practice, no source). What is usual follows from the middle one of the steps between the
/// readings of the date and a week to either side; the hours of a day are those it really had when
/// clocks changed.
///
/// Civil time is that of the garden's zone; without one that of the file's zone, then its offset. A
/// file whose clock tells no offset is read in the garden's zone.
///
/// Left out, and counted as faulty: readings whose clock fell back over five years to a 1 January
/// (a change of battery), until it leaps forward as far, or from the file's first row on when that
/// is a 1 January before such a leap; and unequal readings of one time. Equal ones count once.
/// These are said, and so are times that the zone's clocks leap over, and nights and days that have
/// readings, but too few.
///
/// Throws InputError, with the question, when there is neither a zone nor an offset (UTC, nobody's
/// clock, is none), and when not one night or day is covered. No readings at all give no rows.
void add_nights_and_days(TimedSeries series, const ReadingChoices& choices, Readings& readings);

} // namespace nightsow::climate
