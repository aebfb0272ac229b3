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

/// One temperature within a day, in the file's unit; never NaN.
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
/// (common practice, no source). "Usual" is the middle step between readings in the fortnight
/// around; the hours of a day are those it really had when clocks changed.
///
/// Civil time is that of the garden's zone; without one that of the file's zone or offset. A file
/// whose clock tells no offset is read in the garden's zone. Readings behind a clock that started
/// anew (1 January after a change of battery) have no true time and are left out; that is said, and
/// so are doubled and contradicting times, and nights and days left out.
/// Throws InputError when there is neither an offset nor a zone, with the question, and when not
/// one night or day is covered.
void add_nights_and_days(TimedSeries series, const ReadingChoices& choices, Readings& readings);

} // namespace nightsow::climate
