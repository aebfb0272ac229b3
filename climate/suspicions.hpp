#pragma once

#include "climate/daily_series.hpp"

#include <string_view>
#include <vector>

namespace nightsow::climate {

/// What may be wrong with a whole record, or odd about it. Only ever said, never mended: the person
/// who has the file can look.
enum class SuspicionKind {
  fahrenheit_as_celsius, ///< many values are far too high for °C and right for °F
  tenths_as_celsius,     ///< values look like tenths of a degree
  a_tenth_of_celsius,    ///< values look like a tenth of what they should be
  swapped,               ///< nights lie above days on most dates
  days_a_day_late,       ///< maxima seem to stand one date too late against the minima
  whole_fahrenheit,      ///< all values are whole (or half) degrees Fahrenheit
  whole_celsius,         ///< nearly all values are whole degrees Celsius
  uneven_hundredths,     ///< few figures stand in the hundredths: converted or corrected before
  computed,              ///< no gap in years and every hundredth alike: computed, not measured
};

/// What it means, for the person who has the file: a sentence without its full stop.
[[nodiscard]] std::string_view words_for(SuspicionKind kind);

/// Whether every answer made from such a record would be wrong: its unit or its columns are not
/// what they were taken for.
[[nodiscard]] bool spoils_every_answer(SuspicionKind kind);

struct Suspicion {
  SuspicionKind kind{};
  double share = 0.0; ///< of the values (or dates, or years of the record) that show it

  bool operator==(const Suspicion&) const = default;
};

/// Takes the readings before screening, which would remove the evidence. In the order of the
/// enumeration; fewer than 60 values of an element tell nothing about it.
/// The limits are common practice without a source; they were set so that none of some forty
/// archive series is accused of a fault in unit, order or date.
[[nodiscard]] std::vector<Suspicion> suspicions(const DailySeries& unscreened);

} // namespace nightsow::climate
