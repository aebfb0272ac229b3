#pragma once

#include "climate/daily_series.hpp"

#include <string_view>
#include <vector>

namespace nightsow::climate {

/// What may be wrong with a whole record, or odd about it. Only ever said, never mended: the person
/// who has the file can look.
enum class SuspicionKind {
  fahrenheit_as_celsius, ///< over 1 in 20 values is too high for °C, and hardly one for °F
  tenths_as_celsius,     ///< over 1 in 20 is too high for °F, too, and nearly all are whole
  a_tenth_of_celsius,    ///< nearly all maxima, of a year or more, lie within 6 K of freezing
  swapped,               ///< nights lie above days on most dates that have both
  days_a_day_late,       ///< maxima seem to stand one date too late against the minima
  whole_fahrenheit,      ///< nearly all values are whole (or half) degrees Fahrenheit
  whole_celsius,         ///< nearly all values are whole degrees Celsius
  uneven_hundredths,     ///< few figures stand in the hundredths: converted or corrected before
  computed,              ///< five years without a gap, and every hundredth alike: not measured
};

/// What it means, for the person who has the file: a sentence without its full stop.
[[nodiscard]] std::string_view words_for(SuspicionKind kind);

/// Whether every answer made from such a record would be wrong: its unit or its columns are not
/// what they were taken for.
[[nodiscard]] bool spoils_every_answer(SuspicionKind kind);

struct Suspicion {
  SuspicionKind kind{};
  /// Of the values (or maxima, or dates) that show it; one where it is about the whole record.
  double share = 0.0;

  bool operator==(const Suspicion&) const = default;
};

/// Takes the readings before screening, which would remove the evidence. In the order of the
/// enumeration. Fewer than 60 values, nights and days together, tell nothing; nor do fewer than 60
/// dates with both of swapped columns, or fewer than 300 pairs of steps of days a day late.
/// The limits are common practice without a source; they were set so that none of some forty
/// archive series is accused of a fault in unit, order or date.
[[nodiscard]] std::vector<Suspicion> suspicions(const DailySeries& unscreened);

} // namespace nightsow::climate
