#include "planner/render/dates.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <string_view>

namespace nightsow::planner {

namespace {

constexpr std::array<std::string_view, 12> months{
    "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

int month_of(Date day) {
  return static_cast<int>(static_cast<unsigned>(date::year_month_day{day}.month()));
}

unsigned day_of(Date day) {
  return static_cast<unsigned>(date::year_month_day{day}.day());
}

std::string day_and_month(Date day) {
  return fmt::format("{} {}", day_of(day), month_text(month_of(day)));
}

bool same_month(Date a, Date b) {
  return month_of(a) == month_of(b) && year_of(a) == year_of(b);
}

// What stands in brackets behind the middle date: both ends, or the one that is known.
std::string ends_text(const Spread& spread) {
  if (spread.p10 && spread.p90) {
    return fmt::format(" ({})", range_text(*spread.p10, *spread.p90));
  }
  if (spread.p10) {
    return fmt::format(" (1 in 10 before {})", day_and_month(*spread.p10));
  }
  return {};
}

std::string expected_text(const Spread& spread, Date near) {
  if (spread.p50) {
    if (spread.p10 == spread.p50 && spread.p90 == spread.p50) {
      return day_text(*spread.p50, near);
    }
    return fmt::format("{}{}", day_text(*spread.p50, near), ends_text(spread));
  }
  if (spread.p10) {
    return fmt::format("in 1 of 10 years by {}", day_text(*spread.p10, near));
  }
  return {};
}

} // namespace

std::string month_text(int month) {
  return std::string{months.at(static_cast<std::size_t>(month - 1))};
}

std::string date_text(Date day) {
  return fmt::format("{} {}", day_and_month(day), year_of(day));
}

std::string day_text(Date day, Date near) {
  return year_of(day) == year_of(near) ? day_and_month(day) : date_text(day);
}

std::string range_text(Date first, Date last) {
  if (first == last) {
    return day_and_month(first);
  }
  if (same_month(first, last)) {
    return fmt::format("{}-{}", day_of(first), day_and_month(last));
  }
  return fmt::format("{}-{}", day_and_month(first), day_and_month(last));
}

std::string never_text(double never) {
  if (never <= 0.0) {
    return {};
  }
  if (never >= 0.95) {
    return "not at all in nearly every year";
  }
  const double tenths = std::round(never * 10.0);
  if (tenths < 1.0) {
    return fmt::format("not at all in 1 of {:.0f} years", 1.0 / never);
  }
  return fmt::format("not at all in {:.0f} of 10 years", tenths);
}

std::string spread_text(const Spread& spread, Date near) {
  const std::string expected = expected_text(spread, near);
  const std::string never = never_text(spread.never);
  if (expected.empty()) {
    return never.empty() ? "not known" : never;
  }
  return never.empty() ? expected : fmt::format("{}, {}", expected, never);
}

} // namespace nightsow::planner
