#pragma once

#include "climate/base/date.hpp"

#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <vector>

namespace nightsow::climate {

/// The missing mark in every series of temperatures: missing stays missing until someone names how
/// it was filled.
inline constexpr float missing_c = std::numeric_limits<float>::quiet_NaN();

/// Where a night's figure comes from.
enum class Mark : std::uint8_t { observed, filled, forecast };

/// Nights (daily minima) and days (daily maxima) in °C of contiguous dates, from first() to last(),
/// both included. The three rows have the same length, always.
class DailySeries {
public:
  DailySeries() = default;
  /// `size` days from `first` on, all missing.
  DailySeries(Date first, std::size_t size);

  [[nodiscard]] Date first() const { return first_; }

  /// Requires: not empty.
  [[nodiscard]] Date last() const { return date_of(night_c_.size() - 1); }

  [[nodiscard]] std::size_t size() const { return night_c_.size(); }

  [[nodiscard]] bool empty() const { return night_c_.empty(); }

  [[nodiscard]] Date date_of(std::size_t index) const {
    return first_ + Days{static_cast<int>(index)};
  }

  /// Empty when the date lies outside.
  [[nodiscard]] std::optional<std::size_t> index_of(Date day) const;

  [[nodiscard]] std::span<const float> night_c() const { return night_c_; }

  [[nodiscard]] std::span<const float> day_c() const { return day_c_; }

  [[nodiscard]] std::span<const Mark> night_mark() const { return night_mark_; }

  /// Requires: index < size().
  void set_night(std::size_t index, float night_c, Mark mark = Mark::observed);
  void set_day(std::size_t index, float day_c);

  /// The nights or days of `count` dates from `from` on; dates outside the series are missing.
  [[nodiscard]] std::vector<float> nights_from(Date from, int count) const;
  [[nodiscard]] std::vector<float> days_from(Date from, int count) const;

  /// The series of `count` dates from `from` on, marks kept; dates outside are missing.
  [[nodiscard]] DailySeries part(Date from, int count) const;

private:
  Date first_{};
  std::vector<float> night_c_;
  std::vector<float> day_c_;
  std::vector<Mark> night_mark_;
};

/// Fills holes of up to three nights linearly between their neighbours and marks them; longer holes
/// stay missing. For night words only, never for normals. Returns how many nights were filled.
int fill_short_holes(DailySeries& series);

/// The date of the last night that is not missing; empty when there is none.
[[nodiscard]] std::optional<Date> last_night(const DailySeries& series);

} // namespace nightsow::climate
