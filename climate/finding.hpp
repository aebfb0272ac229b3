#pragma once

#include "climate/base/date.hpp"

#include <cstddef>
#include <string>

namespace nightsow::climate {

/// What screening can find wrong with a reading.
enum class FindingKind {
  impossible,         ///< colder or hotter than was ever measured on Earth
  night_above_day,    ///< the minimum lies above the maximum of the same date
  repeated_equal,     ///< the same date twice in one file with equal values
  repeated_different, ///< the same date twice in one file with different values
  files_differ,       ///< two files give the same element and date more than 1 K apart
  flagged,            ///< the source's own quality flag says it failed a check
  naught,       ///< night and day both 0 °C (or both 0 °F): a missing value written as naught
  streak,       ///< the same value many days in a row
  gap,          ///< far from all other values of its calendar month
  outlier,      ///< far outside the spread of its time of year
  spike,        ///< far from both the day before and the day after
  lagged_range, ///< day and the nights beside it (or night and days) impossibly far apart
};

/// The verdict: whether the reading is used all the same.
enum class Verdict { used, ignored };

struct Finding {
  FindingKind kind = FindingKind::impossible;
  Verdict verdict = Verdict::ignored;
  Date date{};
  std::string file;
  std::size_t line = 0;
  double value_c = 0.0; ///< the doubtful value; NaN when the file gave none that can be read
  double other_c = 0.0; ///< what it disagrees with; NaN where there is no other value
  int days = 1;         ///< how many days it covers; `date` is the last of them, `line` its line
};

/// Whether somebody should look at the reading before trusting it: those left out, and streaks even
/// where they are used, since a stuck thermometer looks just like one. Where two files differ the
/// first one's value stands, and is sound.
[[nodiscard]] constexpr bool is_doubtful(const Finding& finding) {
  return finding.kind == FindingKind::streak ||
         (finding.verdict == Verdict::ignored && finding.kind != FindingKind::files_differ);
}

} // namespace nightsow::climate
