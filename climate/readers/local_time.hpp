#pragma once

#include "climate/base/date.hpp"

#include <chrono>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace date {
class time_zone;
}

namespace nightsow::climate {

/// Throws StorageError when this machine has no time zone data.
void need_zone_data();

/// Civil time somewhere: a zone of the tz database, or a fixed distance from UTC.
class CivilClock {
public:
  /// Empty when there is no such zone. Throws StorageError when this machine has no time zone data.
  [[nodiscard]] static std::optional<CivilClock> in_zone(std::string_view name);

  [[nodiscard]] static CivilClock at_offset(std::chrono::seconds east_of_utc);

  [[nodiscard]] date::local_seconds civil(date::sys_seconds instant) const;

  /// The instant at which the clock first shows that time or, where it leaps over it, leaps. So a
  /// day that a place skipped has no length.
  [[nodiscard]] date::sys_seconds first_reaches(date::local_seconds civil) const;

  /// The times at which the clock shows this time: 0 in a gap of spring, 2 in the doubled hour of
  /// autumn.
  [[nodiscard]] int times_shown(date::local_seconds civil) const;

  /// The instant of a time as somebody wrote it down. A time in a gap is counted with the offset
  /// before the gap; of a doubled time the earlier instant is meant, unless `later` (RFC 5545).
  [[nodiscard]] date::sys_seconds instant(date::local_seconds civil, bool later = false) const;

private:
  const date::time_zone* zone_ = nullptr;
  std::chrono::seconds offset_{0};
};

/// The instants of a column of clock times, in the file's order. In the doubled hour the clock is
/// followed: what stands after its step back is the later time; where the file is sorted by clock,
/// the second of two equal times is. `descending`: the newest time stands first.
struct Instants {
  std::vector<date::sys_seconds> instants;
  std::size_t skipped = 0;       ///< times that the clock never shows
  std::size_t first_skipped = 0; ///< index of the first of them
};

[[nodiscard]] Instants instants_of(std::span<const date::local_seconds> clock,
                                   const CivilClock& civil,
                                   bool descending);

} // namespace nightsow::climate
