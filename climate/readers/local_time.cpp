#include "climate/readers/local_time.hpp"

#include "climate/base/problem.hpp"

#include <date/tz.h>

#include <algorithm>
#include <stdexcept>

namespace nightsow::climate {

// Asked first, so that missing data is told from an unknown zone.
void need_zone_data() {
  try {
    static_cast<void>(date::get_tzdb());
  } catch (const std::runtime_error& error) {
    throw StorageError(
        {Severity::error,
         "time_zone",
         0,
         0,
         "this machine's time zone data cannot be read: " + std::string(error.what()),
         "the tz database, usually in /usr/share/zoneinfo",
         "install the package tzdata"});
  }
}

std::optional<CivilClock> CivilClock::in_zone(std::string_view name) {
  need_zone_data();
  try {
    CivilClock clock;
    clock.zone_ = date::locate_zone(name);
    return clock;
  } catch (const std::runtime_error&) {
    return std::nullopt;
  }
}

CivilClock CivilClock::at_offset(std::chrono::seconds east_of_utc) {
  CivilClock clock;
  clock.offset_ = east_of_utc;
  return clock;
}

date::local_seconds CivilClock::civil(date::sys_seconds instant) const {
  const std::chrono::seconds offset = zone_ != nullptr ? zone_->get_info(instant).offset : offset_;
  return date::local_seconds{instant.time_since_epoch() + offset};
}

date::sys_seconds CivilClock::first_reaches(date::local_seconds civil) const {
  if (zone_ == nullptr) {
    return instant(civil);
  }
  const date::local_info info = zone_->get_info(civil);
  return info.result == date::local_info::nonexistent ? info.first.end : instant(civil);
}

int CivilClock::times_shown(date::local_seconds civil) const {
  if (zone_ == nullptr) {
    return 1;
  }
  switch (zone_->get_info(civil).result) {
  case date::local_info::nonexistent:
    return 0;
  case date::local_info::ambiguous:
    return 2;
  default:
    return 1;
  }
}

date::sys_seconds CivilClock::instant(date::local_seconds civil, bool later) const {
  if (zone_ == nullptr) {
    return date::sys_seconds{civil.time_since_epoch() - offset_};
  }
  const date::local_info info = zone_->get_info(civil);
  const bool second = later && info.result == date::local_info::ambiguous;
  return date::sys_seconds{civil.time_since_epoch() -
                           (second ? info.second.offset : info.first.offset)};
}

namespace {

// Which of a run of doubled times, in the order of time, are the later ones.
std::vector<bool> later_of(std::span<const date::local_seconds> run) {
  std::vector<bool> later(run.size(), false);
  const auto back = std::is_sorted_until(run.begin(), run.end());
  if (back != run.end()) {
    std::fill(later.begin() + (back - run.begin()), later.end(), true);
    return later;
  }
  for (std::size_t i = 1; i < run.size(); ++i) {
    later[i] = run[i] == run[i - 1] && !later[i - 1];
  }
  return later;
}

} // namespace

Instants instants_of(std::span<const date::local_seconds> clock,
                     const CivilClock& civil,
                     bool descending) {
  std::vector<date::local_seconds> ordered(clock.begin(), clock.end());
  if (descending) {
    std::reverse(ordered.begin(), ordered.end());
  }
  Instants found;
  found.instants.reserve(ordered.size());
  for (std::size_t i = 0; i < ordered.size();) {
    const int shown = civil.times_shown(ordered[i]);
    if (shown != 2) {
      if (shown == 0) {
        found.first_skipped = found.skipped == 0 || descending
                                  ? (descending ? ordered.size() - 1 - i : i)
                                  : found.first_skipped;
        ++found.skipped;
      }
      found.instants.push_back(civil.instant(ordered[i]));
      ++i;
      continue;
    }
    // The run of doubled times ends with the change it belongs to: at the latest a day on.
    std::size_t end = i;
    while (end < ordered.size() && civil.times_shown(ordered[end]) == 2 &&
           ordered[end] - ordered[i] < Days{1} && ordered[i] - ordered[end] < Days{1}) {
      ++end;
    }
    const std::span<const date::local_seconds> run{ordered.data() + i, end - i};
    const std::vector<bool> later = later_of(run);
    for (std::size_t k = 0; k < run.size(); ++k) {
      found.instants.push_back(civil.instant(run[k], later[k]));
    }
    i = end;
  }
  if (descending) {
    std::reverse(found.instants.begin(), found.instants.end());
  }
  return found;
}

} // namespace nightsow::climate
