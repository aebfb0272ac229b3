#include "climate/readers/sub_daily.hpp"

#include "climate/daily_series.hpp"
#include "climate/readers/row_faults.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace nightsow::climate {

namespace {

using date::sys_seconds;
using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;

constexpr double needed_share = 0.8;
constexpr hours longest_hole{3};
constexpr hours noon{12};
constexpr Days around{7};

[[noreturn]] void refuse(const Readings& readings,
                         std::string found,
                         std::string expected,
                         std::string remedy) {
  throw InputError({Severity::error,
                    readings.file,
                    0,
                    0,
                    std::move(found),
                    std::move(expected),
                    std::move(remedy)});
}

std::string offset_name(seconds offset) {
  const auto whole = std::chrono::duration_cast<minutes>(std::chrono::abs(offset)).count();
  const std::string rest = whole % 60 == 0 ? "" : ":" + std::to_string(whole % 60);
  return "UTC" + std::string(offset < seconds{0} ? "-" : "+") + std::to_string(whole / 60) + rest;
}

// ---- which clock ----------------------------------------------------------------------------

CivilClock clock_of(const TimedSeries& series, const ReadingChoices& choices, Readings& readings) {
  if (!choices.time_zone.empty()) {
    if (auto clock = CivilClock::in_zone(choices.time_zone)) {
      readings.because.push_back(
          series.in_utc ? "times tell their distance from UTC; nights and days are those of " +
                              choices.time_zone
                        : "times are taken as those of " + choices.time_zone);
      return *clock;
    }
  }
  if (!series.time_zone.empty()) {
    if (auto clock = CivilClock::in_zone(series.time_zone)) {
      readings.because.push_back("the file names the time zone " + series.time_zone);
      return *clock;
    }
  }
  if (series.offset) {
    readings.because.push_back("nights and days are those of the file's own clock, " +
                               offset_name(*series.offset));
    return CivilClock::at_offset(*series.offset);
  }
  refuse(readings,
         series.in_utc ? "the times are in UTC, and the garden names no time zone"
                       : "the times tell no distance from UTC, and the garden names no time zone",
         "the time zone of the place",
         "in which time zone is it? Write \"time_zone\": \"Africa/Johannesburg\" or the like into "
         "garden.json (`nightsow start` takes --time-zone)");
}

// ---- times ----------------------------------------------------------------------------------

bool runs_backwards(const std::vector<TimedReading>& readings) {
  std::ptrdiff_t balance = 0;
  for (std::size_t i = 1; i < readings.size(); ++i) {
    balance += readings[i].clock > readings[i - 1].clock   ? 1
               : readings[i].clock < readings[i - 1].clock ? -1
                                                           : 0;
  }
  return balance < 0;
}

bool is_first_of_year(date::local_seconds clock) {
  const date::year_month_day day{date::floor<Days>(clock)};
  return day.month() == date::month{1} && day.day() == date::day{1};
}

// A logger whose battery was changed begins anew on the first day of some early year; when it is
// really nobody knows. So do its readings until the clock is set right again.
std::vector<bool> of_restarted_clock(const std::vector<TimedReading>& in_order) {
  constexpr Days long_leap{5 * 365};
  std::vector<bool> lost(in_order.size(), false);
  std::size_t start = 0;
  for (std::size_t i = 1; i < in_order.size(); ++i) {
    lost[i] = lost[i - 1];
    const auto leap = in_order[i].clock - in_order[i - 1].clock;
    if (leap < -long_leap && is_first_of_year(in_order[i].clock)) {
      lost[i] = true;
      start = i;
    } else if (leap > long_leap) {
      if (start == 0 && is_first_of_year(in_order[0].clock)) {
        std::fill(lost.begin(), lost.begin() + static_cast<std::ptrdiff_t>(i), true);
      }
      lost[i] = false;
    }
  }
  return lost;
}

void drop_restarted_clock(TimedSeries& series, bool backwards, Readings& readings) {
  std::vector<TimedReading>& all = series.readings;
  if (backwards) {
    std::reverse(all.begin(), all.end());
  }
  const std::vector<bool> lost = of_restarted_clock(all);
  const auto first = std::find(lost.begin(), lost.end(), true);
  if (first != lost.end()) {
    const auto count = static_cast<std::size_t>(std::count(lost.begin(), lost.end(), true));
    report_fault(readings,
                 all[static_cast<std::size_t>(first - lost.begin())].line,
                 0,
                 "from here the logger's clock runs anew from the first day of a year; " +
                     std::to_string(count) + " readings have no true time",
                 "a clock that runs on",
                 "they are left out; set the clock after a change of battery");
    readings.rows_faulty += count;
    std::vector<TimedReading> kept;
    for (std::size_t i = 0; i < all.size(); ++i) {
      if (!lost[i]) {
        kept.push_back(all[i]);
      }
    }
    all = std::move(kept);
  }
  if (backwards) {
    std::reverse(all.begin(), all.end());
  }
}

struct Timed {
  sys_seconds instant{};
  float value = 0.0F;
  std::uint32_t line = 0;
};

std::vector<Timed> on_the_time_axis(const TimedSeries& series,
                                    const CivilClock& clock,
                                    bool backwards,
                                    Readings& readings) {
  std::vector<date::local_seconds> clocks;
  for (const TimedReading& reading : series.readings) {
    clocks.push_back(reading.clock);
  }
  const CivilClock utc = CivilClock::at_offset(seconds{0});
  const Instants found = instants_of(clocks, series.in_utc ? utc : clock, backwards);
  if (found.skipped > 0) {
    readings.problems.push_back(
        {Severity::warning,
         readings.file,
         series.readings[found.first_skipped].line,
         0,
         "a time that the clocks of this zone leap over in spring (" +
             std::to_string(found.skipped) +
             " such times): the logger seems to keep one time all year",
         "the zone's civil time",
         "name the logger's distance from UTC in the column, such as 'Time, UTC+2'"});
  }
  std::vector<Timed> timed;
  for (std::size_t i = 0; i < clocks.size(); ++i) {
    timed.push_back({found.instants[i], series.readings[i].value, series.readings[i].line});
  }
  std::stable_sort(timed.begin(), timed.end(), [](const Timed& a, const Timed& b) {
    return a.instant < b.instant;
  });
  return timed;
}

// Equal readings of one instant count once; of unequal ones nobody can tell which is right.
void settle_doubles(std::vector<Timed>& timed, Readings& readings) {
  std::vector<Timed> kept;
  kept.reserve(timed.size());
  std::size_t equal = 0;
  for (std::size_t i = 0; i < timed.size();) {
    std::size_t end = i + 1;
    bool differ = false;
    while (end < timed.size() && timed[end].instant == timed[i].instant) {
      differ = differ || timed[end].value != timed[i].value;
      ++end;
    }
    if (differ) {
      report_fault(readings,
                   timed[end - 1].line,
                   0,
                   "another reading for the time of line " + std::to_string(timed[i].line),
                   "one reading a time",
                   "neither is used; remove the wrong one");
      readings.rows_faulty += end - i;
    } else {
      kept.push_back(timed[i]);
      equal += end - i - 1;
    }
    i = end;
  }
  if (equal > 0) {
    add_note(
        readings, std::to_string(equal) + " readings stand there twice and were counted once", "");
  }
  timed = std::move(kept);
}

// ---- nights and days ------------------------------------------------------------------------

// What is known of one night or day: its window, and the hours in which no hole may lie.
struct Window {
  sys_seconds begin{};
  sys_seconds end{};
  sys_seconds watch_begin{};
  sys_seconds watch_end{};
};

Window night_window(const CivilClock& clock, Date date) {
  const date::local_seconds midnight{date};
  return {clock.first_reaches(midnight - noon),
          clock.first_reaches(midnight + noon),
          clock.first_reaches(midnight),
          clock.first_reaches(midnight + hours{9})};
}

Window day_window(const CivilClock& clock, Date date) {
  const date::local_seconds midnight{date};
  return {clock.first_reaches(midnight),
          clock.first_reaches(midnight + hours{24}),
          clock.first_reaches(midnight + hours{9}),
          clock.first_reaches(midnight + hours{18})};
}

using Stretch = std::pair<std::vector<Timed>::const_iterator, std::vector<Timed>::const_iterator>;

Stretch between(const std::vector<Timed>& timed, sys_seconds begin, sys_seconds end) {
  const auto earlier = [](const Timed& reading, sys_seconds instant) {
    return reading.instant < instant;
  };
  return {std::lower_bound(timed.begin(), timed.end(), begin, earlier),
          std::lower_bound(timed.begin(), timed.end(), end, earlier)};
}

seconds middle_step(const Stretch& stretch) {
  std::vector<seconds> steps;
  for (auto reading = stretch.first; reading != stretch.second; ++reading) {
    if (reading != stretch.first) {
      steps.push_back(reading->instant - std::prev(reading)->instant);
    }
  }
  if (steps.empty()) {
    return seconds{0};
  }
  const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
  std::nth_element(steps.begin(), middle, steps.end());
  return *middle;
}

bool is_covered(const Stretch& stretch, const Window& window, seconds step) {
  const auto readings = static_cast<double>(std::distance(stretch.first, stretch.second));
  const double usual =
      static_cast<double>((window.end - window.begin).count()) / static_cast<double>(step.count());
  if (readings < needed_share * usual) {
    return false;
  }
  sys_seconds seen = window.watch_begin;
  for (auto reading = stretch.first; reading != stretch.second; ++reading) {
    const sys_seconds instant = std::min(reading->instant, window.watch_end);
    if (instant - seen > longest_hole) {
      return false;
    }
    seen = std::max(seen, instant);
  }
  return window.watch_end - seen <= longest_hole;
}

bool colder(const Timed& a, const Timed& b) {
  return a.value < b.value;
}

// Dates left out, for the note. Those at the ends of a record are no news.
struct LeftOut {
  sys_seconds record_begin{};
  sys_seconds record_end{};
  std::size_t nights = 0;
  std::size_t days = 0;
  std::optional<Date> first;

  void count(std::size_t& which, const Window& window, Date date) {
    if (window.begin >= record_begin && window.end <= record_end) {
      ++which;
      first = first.value_or(date);
    }
  }
};

Reading row_of(const std::vector<Timed>& timed,
               const CivilClock& clock,
               Date date,
               LeftOut& left_out) {
  constexpr seconds moment{1};
  Reading row{date, missing_c, missing_c, 0};
  const seconds step =
      middle_step(between(timed,
                          clock.first_reaches(date::local_seconds{date - around}),
                          clock.first_reaches(date::local_seconds{date + around + Days{1}})));
  const Window day = day_window(clock, date);
  if (day.begin == day.end) {
    return row; // a date that this place skipped
  }
  // A night begins behind noon and ends with it: hence the moment.
  const Window night = night_window(clock, date);
  const Stretch of_night = between(timed, night.begin + moment, night.end + moment);
  const Stretch of_day = between(timed, day.begin, day.end);
  if (of_day.first != of_day.second) {
    if (is_covered(of_day, day, step)) {
      const auto highest = std::max_element(of_day.first, of_day.second, colder);
      row.day_c = highest->value;
      row.line = highest->line;
    } else {
      left_out.count(left_out.days, day, date);
    }
  }
  if (of_night.first != of_night.second) {
    if (is_covered(of_night, night, step)) {
      const auto lowest = std::min_element(of_night.first, of_night.second, colder);
      row.night_c = lowest->value;
      row.line = lowest->line;
    } else {
      left_out.count(left_out.nights, night, date);
    }
  }
  return row;
}

std::string step_name(seconds step) {
  return step % minutes{1} == seconds{0}
             ? std::to_string(std::chrono::duration_cast<minutes>(step).count()) + " minutes"
             : std::to_string(step.count()) + " seconds";
}

void say_left_out(const LeftOut& left_out, const std::string& step, Readings& readings) {
  if (readings.rows.empty()) {
    refuse(readings,
           "not one night or day is covered by its readings (there are " +
               std::to_string(readings.rows_read) + ", mostly every " + step + ")",
           "readings at least every three hours, 80 % of the usual number a day",
           "bring a longer piece of the logger's record, or set it to a shorter interval");
  }
  if (left_out.first) {
    add_note(readings,
             "not covered by their readings and left out: nights " +
                 std::to_string(left_out.nights) + ", days " + std::to_string(left_out.days) +
                 " (the first on " + format_iso_date(*left_out.first) + ")",
             "");
  }
}

} // namespace

void add_nights_and_days(TimedSeries series, const ReadingChoices& choices, Readings& readings) {
  const CivilClock clock = clock_of(series, choices, readings);
  if (series.readings.empty()) {
    return;
  }
  const bool backwards = runs_backwards(series.readings);
  drop_restarted_clock(series, backwards, readings);
  std::vector<Timed> timed = on_the_time_axis(series, clock, backwards, readings);
  settle_doubles(timed, readings);
  LeftOut left_out;
  std::string step = "few hours";
  if (!timed.empty()) {
    left_out.record_begin = timed.front().instant;
    left_out.record_end = timed.back().instant;
    step = step_name(middle_step({timed.cbegin(), timed.cend()}));
    const Date last = date::floor<Days>(clock.civil(timed.back().instant)) + Days{1};
    for (Date date = date::floor<Days>(clock.civil(timed.front().instant)); date <= last;
         date += Days{1}) {
      const Reading row = row_of(timed, clock, date, left_out);
      if (!std::isnan(row.night_c) || !std::isnan(row.day_c)) {
        readings.rows.push_back(row);
      }
    }
  }
  readings.because.push_back("readings within the day, mostly every " + step);
  say_left_out(left_out, step, readings);
}

} // namespace nightsow::climate
