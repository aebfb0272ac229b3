#include "tests/reference/planner/plain_course.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

// Written without a look at climate and species-rules: FAO Irrigation and Drainage Paper 56 for the
// sun, Linvill (1990) for the air of an hour, the rest as the model is written down.
namespace nightsow::planner {

namespace {

constexpr double pi = std::numbers::pi;

double limited(double x, double low, double high) {
  return x < low ? low : x > high ? high : x;
}

/// The sun of one date.
struct PlainSun {
  double up_h = 0.0;
  double down_h = 0.0;
  double above_mj = 0.0;
};

PlainSun sun_on(Date date, double latitude) {
  const int j = day_of_year(date);
  const double phi = latitude * pi / 180.0;
  const double delta = 0.409 * std::sin(2.0 * pi * j / 365.0 - 1.39);
  const double dr = 1.0 + 0.033 * std::cos(2.0 * pi * j / 365.0);
  const double ws = std::acos(limited(-std::tan(phi) * std::tan(delta), -1.0, 1.0));
  PlainSun sun;
  sun.up_h = 12.0 - 12.0 * ws / pi;
  sun.down_h = 12.0 + 12.0 * ws / pi;
  sun.above_mj =
      24.0 * 60.0 / pi * 0.0820 * dr *
      (ws * std::sin(phi) * std::sin(delta) + std::cos(phi) * std::cos(delta) * std::sin(ws));
  return sun;
}

/// One date and what its pots meet, hour by hour.
class PlainDay {
public:
  PlainDay(const PlainAir& air, const PlainBench& bench, int day)
      : air_(air), bench_(bench), day_(day), sun_(sun_on(air.first + Days{day}, bench.latitude)) {
    range_k_ =
        std::max(0.0, (day_c(day) - bench.day_offset_k) - (night_c(day) - bench.night_offset_k));
    const double clear_mj = (0.75 + 2e-5 * bench.elevation_m) * sun_.above_mj;
    ground_mj_ = std::min(0.16 * std::sqrt(range_k_) * sun_.above_mj, clear_mj);
    clear_share_ = limited(ground_mj_ / clear_mj, 0.3, 1.0);
  }

  bool dark(int hour) const { return hour < sun_.up_h || hour > sun_.down_h; }

  // Where seed would come to if it followed at once.
  double goal_c(int hour, bool on_mat) const {
    double c = air_c(hour);
    const bool cold_house = bench_.under_glass && c < 10.0;
    if (on_mat) {
      c = std::max(c, std::min(c + *bench_.mat_rise_k, bench_.mat_thermostat_c));
    }
    if (dark(hour)) {
      return c -
             (cold_house ? std::min(1.5, bench_.night_loss_k) : bench_.night_loss_k) * clear_share_;
    }
    const double length_h = sun_.down_h - sun_.up_h;
    const double noon_w = ground_mj_ * 1e6 / (length_h * 3600.0) * pi / 2.0;
    const double w = noon_w * std::sin(pi * (hour - sun_.up_h) / length_h);
    return c + (1.0 - bench_.shade) * bench_.sun * bench_.k_per_w * w;
  }

  double length_h() const { return sun_.down_h - sun_.up_h; }

  double pots_mj() const {
    return ground_mj_ * bench_.sun * (1.0 - bench_.shade) * (bench_.under_glass ? 0.7 : 1.0);
  }

  // Hargreaves, and what shade leaves of it.
  double evaporation_mm() const {
    const double mean_c = 0.5 * (night_c(day_) + day_c(day_));
    const double et0 = 0.0023 * (mean_c + 17.8) * std::sqrt(range_k_) * 0.408 * sun_.above_mj;
    const double open = bench_.sun * (1.0 - bench_.shade);
    return std::max(0.0, et0) * std::max(0.1, open);
  }

private:
  double night_c(int day) const {
    const int last = static_cast<int>(air_.night_c.size()) - 1;
    return air_.night_c[static_cast<std::size_t>(std::clamp(day, 0, last))];
  }

  double day_c(int day) const {
    const int last = static_cast<int>(air_.day_c.size()) - 1;
    return air_.day_c[static_cast<std::size_t>(std::clamp(day, 0, last))];
  }

  double by_day_c(int day, const PlainSun& sun, double hour) const {
    return night_c(day) + (day_c(day) - night_c(day)) *
                              std::sin(pi * (hour - sun.up_h) / (sun.down_h - sun.up_h + 4.0));
  }

  double through_night_c(int evening, double since_sunset_h) const {
    const PlainSun before = sun_on(air_.first + Days{evening}, bench_.latitude);
    const PlainSun after = sun_on(air_.first + Days{evening + 1}, bench_.latitude);
    const double dusk_c = by_day_c(evening, before, before.down_h);
    const double night_h = 24.0 - before.down_h + after.up_h;
    const double part = std::log(since_sunset_h + 1.0) / std::log(night_h + 1.0);
    return dusk_c + (night_c(evening + 1) - dusk_c) * part;
  }

  double air_c(int hour) const {
    if (hour < sun_.up_h) {
      const PlainSun before = sun_on(air_.first + Days{day_ - 1}, bench_.latitude);
      return through_night_c(day_ - 1, 24.0 - before.down_h + hour);
    }
    if (hour > sun_.down_h) {
      return through_night_c(day_, hour - sun_.down_h);
    }
    return by_day_c(day_, sun_, hour);
  }

  const PlainAir& air_;
  const PlainBench& bench_;
  int day_;
  PlainSun sun_;
  double range_k_ = 0.0;
  double ground_mj_ = 0.0;
  double clear_share_ = 1.0;
};

void lay_fleece(const std::vector<PlainDay>& days, std::vector<double>& hours) {
  for (std::size_t i = 0; i < hours.size();) {
    std::size_t end = i;
    while (end < hours.size() && days[end / 24].dark(static_cast<int>(end % 24))) {
      ++end;
    }
    if (end == i) {
      ++i;
      continue;
    }
    if (*std::min_element(hours.begin() + static_cast<int>(i),
                          hours.begin() + static_cast<int>(end)) < 2.0) {
      for (std::size_t at = i; at < end; ++at) {
        hours[at] += 4.0;
      }
    }
    i = end;
  }
}

std::vector<double> hours_at_pots(const std::vector<PlainDay>& days,
                                  const PlainBench& bench,
                                  bool on_mat) {
  std::vector<double> hours;
  const double follows = 1.0 - std::exp(-1.0 / 0.7);
  for (const PlainDay& day : days) {
    for (int hour = 0; hour < 24; ++hour) {
      const double goal = day.goal_c(hour, on_mat);
      hours.push_back(hours.empty() ? goal : hours.back() + (goal - hours.back()) * follows);
    }
  }
  if (bench.carried_in) {
    for (double& c : hours) {
      c = std::max(c, 2.0);
    }
  } else if (bench.fleece) {
    lay_fleece(days, hours);
  }
  return hours;
}

/// The hours of one day.
struct Hours {
  const double* begin;

  double mean() const {
    double sum = 0.0;
    for (int i = 0; i < 24; ++i) {
      sum += begin[i];
    }
    return sum / 24.0;
  }

  double lowest() const { return *std::min_element(begin, begin + 24); }

  double highest() const { return *std::max_element(begin, begin + 24); }
};

double six_hottest_of_two_days_c(const std::vector<double>& hours, std::size_t day) {
  const std::size_t from = day == 0 ? 0 : (day - 1) * 24;
  std::vector<double> both(hours.begin() + static_cast<int>(from),
                           hours.begin() + static_cast<int>((day + 1) * 24));
  std::sort(both.rbegin(), both.rend());
  return (both[0] + both[1] + both[2] + both[3] + both[4] + both[5]) / 6.0;
}

double heat_spent(const Hours& day) {
  double spent = 0.0;
  for (int i = 0; i < 24; ++i) {
    const double c = day.begin[i];
    spent += c >= 40.0 ? 1.0 / (60.0 * std::pow(10.0, -0.18 * (c - 45.0))) : 0.0;
  }
  return spent;
}

double winter_growth(double c) {
  return c <= 10.0 ? limited((c - 3.0) / 7.0, 0.0, 1.0) : limited((27.0 - c) / 10.0, 0.0, 1.0);
}

double summer_growth(double c) {
  return c <= 20.0 ? limited((c - 12.0) / 8.0, 0.0, 1.0) : limited((42.0 - c) / 12.0, 0.0, 1.0);
}

double grown(const Hours& day, double (*rate)(double), double pots_mj) {
  double sum = 0.0;
  for (int i = 0; i < 24; ++i) {
    sum += rate(day.begin[i]);
  }
  return sum / 24.0 * limited(pots_mj / 5.0, 0.2, 1.0);
}

double week_mean_c(const PlainAir& air, std::size_t day) {
  double sum = 0.0;
  double count = 0.0;
  for (std::size_t i = day < 6 ? 0 : day - 6; i <= day; ++i) {
    sum += 0.5 * (air.night_c[i] + air.day_c[i]);
    count += 1.0;
  }
  return sum / count;
}

} // namespace

SeedCourse plain_course(const PlainAir& air, const PlainBench& bench) {
  const std::size_t size = air.night_c.size();
  std::vector<PlainDay> days;
  for (std::size_t day = 0; day < size; ++day) {
    days.emplace_back(air, bench, static_cast<int>(day));
  }
  const std::vector<double> seed = hours_at_pots(days, bench, bench.mat_rise_k.has_value());
  const std::vector<double> seedlings = hours_at_pots(days, bench, false);
  SeedCourse course;
  course.first = air.first;
  course.hour_c.assign(seed.begin(), seed.end());
  for (std::size_t day = 0; day < size; ++day) {
    const Hours below{&seed[day * 24]};
    const Hours above{&seedlings[day * 24]};
    const double night_c = air.night_c[day];
    course.night_c.push_back(
        bench.mat_rise_k
            ? std::max(night_c, std::min(night_c + *bench.mat_rise_k, bench.mat_thermostat_c))
            : night_c);
    course.mean_c.push_back(below.mean());
    course.swing_k.push_back(below.highest() - below.lowest());
    course.heat_half_lives.push_back(heat_spent(below));
    course.seedling_mean_c.push_back(above.mean());
    course.coldest_c.push_back(above.lowest());
    course.hottest_c.push_back(six_hottest_of_two_days_c(seedlings, day));
    course.evaporation_mm.push_back(days[day].evaporation_mm());
    course.winter_growth.push_back(grown(above, winter_growth, days[day].pots_mj()));
    course.summer_growth.push_back(grown(above, summer_growth, days[day].pots_mj()));
    const double week_c = week_mean_c(air, day);
    course.seven_day_mean_c.push_back(week_c);
    course.rest_rate.push_back(
        limited((week_c - 10.0) / 12.0, 0.0, 1.0) *
        (0.2 + 0.8 * limited((days[day].length_h() - 11.0) / 3.0, 0.0, 1.0)));
  }
  return course;
}

} // namespace nightsow::planner
