#include "climate/daily_series.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace nightsow::climate {

namespace {

constexpr std::size_t longest_filled_hole = 3; // definitions: holes of up to three nights

std::vector<float> part_of(std::span<const float> row, std::ptrdiff_t from, int count) {
  std::vector<float> part(static_cast<std::size_t>(std::max(count, 0)), missing_c);
  const auto wanted = static_cast<std::ptrdiff_t>(part.size());
  const auto have = static_cast<std::ptrdiff_t>(row.size());
  const std::ptrdiff_t begin = std::clamp<std::ptrdiff_t>(-from, 0, wanted);
  const std::ptrdiff_t end = std::clamp<std::ptrdiff_t>(have - from, begin, wanted);
  for (std::ptrdiff_t i = begin; i < end; ++i) {
    part[static_cast<std::size_t>(i)] = row[static_cast<std::size_t>(from + i)];
  }
  return part;
}

// Both neighbours are there; the hole lies strictly between them.
void fill_between(DailySeries& series, std::size_t before, std::size_t after) {
  const auto low = static_cast<double>(series.night_c()[before]);
  const auto high = static_cast<double>(series.night_c()[after]);
  const auto steps = static_cast<double>(after - before);
  for (std::size_t i = before + 1; i < after; ++i) {
    const double share = static_cast<double>(i - before) / steps;
    series.set_night(i, static_cast<float>(low + share * (high - low)), Mark::filled);
  }
}

} // namespace

DailySeries::DailySeries(Date first, std::size_t size)
    : first_(first), night_c_(size, missing_c), day_c_(size, missing_c),
      night_mark_(size, Mark::observed) {}

std::optional<std::size_t> DailySeries::index_of(Date day) const {
  const auto index = (day - first_).count();
  if (index < 0 || static_cast<std::size_t>(index) >= size()) {
    return std::nullopt;
  }
  return static_cast<std::size_t>(index);
}

void DailySeries::set_night(std::size_t index, float night_c, Mark mark) {
  assert(index < size());
  night_c_[index] = night_c;
  night_mark_[index] = mark;
}

void DailySeries::set_day(std::size_t index, float day_c) {
  assert(index < size());
  day_c_[index] = day_c;
}

std::vector<float> DailySeries::nights_from(Date from, int count) const {
  return part_of(night_c_, (from - first_).count(), count);
}

std::vector<float> DailySeries::days_from(Date from, int count) const {
  return part_of(day_c_, (from - first_).count(), count);
}

DailySeries DailySeries::part(Date from, int count) const {
  DailySeries part{from, static_cast<std::size_t>(count)};
  for (std::size_t i = 0; i < part.size(); ++i) {
    if (const std::optional<std::size_t> at = index_of(part.date_of(i))) {
      part.set_night(i, night_c_[*at], night_mark_[*at]);
      part.set_day(i, day_c_[*at]);
    }
  }
  return part;
}

int fill_short_holes(DailySeries& series) {
  int filled = 0;
  std::optional<std::size_t> before;
  for (std::size_t i = 0; i < series.size(); ++i) {
    if (std::isnan(series.night_c()[i])) {
      continue;
    }
    const std::size_t hole = before ? i - *before - 1 : 0;
    if (hole > 0 && hole <= longest_filled_hole) {
      fill_between(series, *before, i);
      filled += static_cast<int>(hole);
    }
    before = i;
  }
  return filled;
}

std::optional<Date> last_night(const DailySeries& series) {
  for (std::size_t i = series.size(); i > 0; --i) {
    if (!std::isnan(series.night_c()[i - 1])) {
      return series.date_of(i - 1);
    }
  }
  return std::nullopt;
}

} // namespace nightsow::climate
