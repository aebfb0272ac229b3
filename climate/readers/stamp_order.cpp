#include "climate/base/problem.hpp"
#include "climate/readers/clock_stamp.hpp"
#include "climate/readers/column_name.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace nightsow::climate {

namespace {

// How the stamps look under one order.
struct Attempt {
  StampOrder order = StampOrder::year_first;
  std::size_t impossible = 0;      ///< stamps that are no day of the calendar
  std::size_t leaps = 0;           ///< steps of over a day, forward or back
  std::size_t impossible_line = 0; ///< of the first of them
};

std::string_view order_name(StampOrder order) {
  switch (order) {
  case StampOrder::day_first:
    return "day/month/year";
  case StampOrder::month_first:
    return "month/day/year";
  case StampOrder::year_first:
    break;
  }
  return "year/month/day";
}

bool is_open(const ClockStamp& stamp) {
  return !stamp.year_leads && !stamp.points;
}

bool may_be_year_first(const PlacedStamp& placed) {
  return placed.stamp.year_leads || !placed.stamp.year_follows;
}

Attempt read_as(std::span<const PlacedStamp> stamps, StampOrder order) {
  Attempt attempt{order};
  std::optional<date::local_seconds> before;
  for (const PlacedStamp& placed : stamps) {
    const auto clock = clock_time(placed.stamp, order);
    if (!clock) {
      ++attempt.impossible;
      attempt.impossible_line =
          attempt.impossible_line == 0 ? placed.line : attempt.impossible_line;
      continue;
    }
    if (before && (*clock - *before > Days{1} || *before - *clock > Days{1})) {
      ++attempt.leaps;
    }
    before = clock;
  }
  return attempt;
}

std::optional<StampOrder> order_in_name(std::string_view name) {
  const std::vector<std::string> words = words_of(name);
  const auto place = [&](std::initializer_list<std::string_view> spellings) {
    return std::find_if(words.begin(), words.end(), [&](const std::string& word) {
      return std::find(spellings.begin(), spellings.end(), word) != spellings.end();
    });
  };
  const auto day = place({"dd", "d"});
  const auto month = place({"mm", "m"});
  const auto year = place({"yy", "yyyy"});
  if (day == words.end() || month == words.end()) {
    return std::nullopt;
  }
  if (year != words.end() && year < month && month < day) {
    return StampOrder::year_first;
  }
  return day < month ? StampOrder::day_first : StampOrder::month_first;
}

[[noreturn]] void refuse(std::string_view file,
                         std::size_t line,
                         std::string found,
                         std::string remedy) {
  throw InputError({Severity::error,
                    std::string(file),
                    line,
                    0,
                    std::move(found),
                    "dates of one order, such as 2024-03-31 21:30",
                    std::move(remedy)});
}

// The attempts that can still be meant: those with fewest impossible dates, then fewest leaps.
std::vector<Attempt> likeliest(std::vector<Attempt> attempts, std::size_t Attempt::*fewest) {
  const auto least =
      std::min_element(attempts.begin(), attempts.end(), [&](const Attempt& a, const Attempt& b) {
        return a.*fewest < b.*fewest;
      });
  const std::size_t count = (*least).*fewest;
  std::erase_if(attempts, [&](const Attempt& attempt) { return attempt.*fewest != count; });
  return attempts;
}

} // namespace

StampsOrder find_stamp_order(std::span<const PlacedStamp> stamps,
                             std::string_view column_name,
                             std::string_view file) {
  const auto open = std::find_if(stamps.begin(), stamps.end(), [](const PlacedStamp& placed) {
    return is_open(placed.stamp);
  });
  if (open == stamps.end()) {
    return {StampOrder::year_first, ""};
  }
  std::vector<Attempt> attempts{read_as(stamps, StampOrder::day_first),
                                read_as(stamps, StampOrder::month_first)};
  if (std::all_of(stamps.begin(), stamps.end(), may_be_year_first)) {
    attempts.push_back(read_as(stamps, StampOrder::year_first));
  }
  attempts = likeliest(std::move(attempts), &Attempt::impossible);
  constexpr std::size_t slips_are_one_in = 100;
  if (attempts.front().impossible * slips_are_one_in > stamps.size()) {
    refuse(file,
           attempts.front().impossible_line,
           "no order of day, month and year fits this date and the others",
           "write the dates as YYYY-MM-DD");
  }
  const std::string told = attempts.size() == 1 ? "some can be read in no other way" : "";
  if (const auto named = order_in_name(column_name); named && told.empty()) {
    return {*named, "the order of day and month stands in the column's name"};
  }
  attempts = likeliest(std::move(attempts), &Attempt::leaps);
  if (attempts.size() > 1) {
    refuse(file,
           open->line,
           "no date of the file tells the order of day, month and year",
           "is it day/month, month/day or year first? Name the column 'Time (dd/mm/yy)', "
           "'Time (mm/dd/yy)' or 'Time (yy-mm-dd)'");
  }
  return {attempts.front().order,
          "dates are " + std::string(order_name(attempts.front().order)) + ": " +
              (told.empty() ? "only so the clock runs on without leaps" : told)};
}

} // namespace nightsow::climate
