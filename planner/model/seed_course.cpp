#include "planner/model/seed_course.hpp"

#include "climate/sun.hpp"
#include "climate/sun_year.hpp"
#include "planner/model/hazards.hpp"
#include "planner/model/pot_dryness.hpp"
#include "planner/model/two_threads.hpp"
#include "species-rules/development.hpp"
#include "species-rules/growth.hpp"
#include "species-rules/seedling_limits.hpp"
#include "species-rules/wet_losses.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <memory>
#include <numbers>
#include <numeric>

namespace nightsow::planner {

namespace {

constexpr int hours_a_day = static_cast<int>(climate::SeedLevel::hours_a_day);
constexpr float day_above_night_k = 9.0F;
constexpr double glass_lets_through = 0.7;
constexpr int rest_mean_days = 7;
constexpr std::size_t worth_a_second_thread = 8; // courses

// What evaporation and growth ask of a day's sky.
struct Sun {
  double above_mj = 0.0; ///< at the top of the atmosphere
  double bench_mj = 0.0; ///< at the pots
  double range_k = 0.0;  ///< of the air outside; 0 where nothing tells it
};

std::size_t member_of(int course, int courses, int members) {
  return static_cast<std::size_t>((2 * course + 1) * members / (2 * courses));
}

// The members of the seasons one after the other, up to the day before the next season.
climate::DailySeries joined(std::span<const BenchSeason* const> seasons, int course, int courses) {
  const Date first = seasons.front()->outlook.first;
  const climate::Outlook& last = seasons.back()->outlook;
  const int size = days_between(first, last.first) + last.days;
  climate::DailySeries air{first, static_cast<std::size_t>(size)};
  for (const BenchSeason* season : seasons) {
    const climate::Outlook& outlook = season->outlook;
    const auto member = static_cast<int>(member_of(course, courses, outlook.members));
    const auto begin = static_cast<std::size_t>(days_between(first, outlook.first));
    for (std::size_t t = 0; t < static_cast<std::size_t>(outlook.days); ++t) {
      const float night_c = outlook.night_of(member)[t];
      const float day_c = outlook.day_of(member)[t];
      air.set_night(begin + t, night_c);
      air.set_day(begin + t, std::isnan(day_c) ? night_c + day_above_night_k : day_c);
    }
  }
  return air;
}

// The air outside, as far as it tells the sun.
climate::DailySeries outside_of(const climate::DailySeries& air, const BenchClimate& climate) {
  climate::DailySeries outside = air;
  const climate::BenchOffset& offset = climate.bench.offset;
  const bool kept = offset.source == climate::BenchSource::fixed_temperature;
  for (std::size_t i = 0; i < outside.size(); ++i) {
    const auto less = [&](float c, CelsiusDelta by) {
      return kept ? climate::missing_c : c - static_cast<float>(by.kelvin());
    };
    outside.set_night(i, less(air.night_c()[i], offset.night));
    outside.set_day(i, less(air.day_c()[i], offset.day));
  }
  return outside;
}

Sun sun_of(const climate::DailySeries& outside,
           std::size_t day,
           const climate::SeedPlace& place,
           const climate::SunYear& year) {
  Sun sun;
  sun.above_mj = year.on(outside.date_of(day)).above_mj;
  const double range_k =
      static_cast<double>(outside.day_c()[day]) - static_cast<double>(outside.night_c()[day]);
  sun.range_k = std::isnan(range_k) ? 0.0 : std::max(0.0, range_k);
  const double ground_mj = climate::ground_sun_mj(range_k, sun.above_mj, place);
  sun.bench_mj =
      ground_mj * place.sun * (1.0 - place.shade) * (place.glass ? glass_lets_through : 1.0);
  return sun;
}

double mean_of(std::span<const float> values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

/// The hottest hours of some days, from the hottest down.
struct HottestHours {
  std::array<float, species_rules::hottest_hours> c{};
  std::size_t count = 0;

  // A hotter one takes the place of the coolest.
  void meet(float hour_c) {
    if (count == c.size() && hour_c <= c.back()) {
      return;
    }
    count = std::min(count + 1, c.size());
    std::size_t place = count - 1;
    for (; place > 0 && c[place - 1] < hour_c; --place) {
      c[place] = c[place - 1];
    }
    c[place] = hour_c;
  }
};

HottestHours hottest_of(std::span<const float> hours) {
  HottestHours hottest;
  for (const float hour_c : hours) {
    hottest.meet(hour_c);
  }
  return hottest;
}

double mean_of_both(HottestHours yesterday, const HottestHours& today) {
  for (std::size_t i = 0; i < today.count; ++i) {
    yesterday.meet(today.c[i]);
  }
  return mean_of(std::span(yesterday.c).first(yesterday.count));
}

double mean_growth(std::span<const float> hours, double (*rate)(double)) {
  double sum = 0.0;
  for (const float hour_c : hours) {
    sum += rate(static_cast<double>(hour_c));
  }
  return sum / static_cast<double>(hours.size());
}

void add_seed(const climate::SeedLevel& level, SeedCourse& course) {
  for (std::size_t day = 0; day < level.size(); ++day) {
    const std::span<const float> hours = level.hours_of(day);
    course.hour_c.insert(course.hour_c.end(), hours.begin(), hours.end());
    course.mean_c.push_back(mean_of(hours));
    course.swing_k.push_back(level.swing_k(day));
    double half_lives = 0.0;
    for (const float hour_c : hours) {
      half_lives += species_rules::heat_dose_of_hour(static_cast<double>(hour_c));
    }
    course.heat_half_lives.push_back(half_lives);
  }
}

void add_seedlings(const climate::SeedLevel& level, SeedCourse& course) {
  static_assert(species_rules::hottest_of_hours == 2 * hours_a_day);
  HottestHours yesterday;
  for (std::size_t day = 0; day < level.size(); ++day) {
    const std::span<const float> hours = level.hours_of(day);
    course.seedling_mean_c.push_back(mean_of(hours));
    course.coldest_c.push_back(static_cast<double>(*std::min_element(hours.begin(), hours.end())));
    const HottestHours today = hottest_of(hours);
    course.hottest_c.push_back(mean_of_both(yesterday, today));
    yesterday = today;
  }
}

void add_light(const climate::DailySeries& air,
               const climate::DailySeries& outside,
               const climate::SeedLevel& seedlings,
               const climate::SeedPlace& place,
               const climate::SunYear& year,
               SeedCourse& course) {
  const double kept_off = 1.0 - place.sun * (1.0 - place.shade);
  const double drying = species_rules::evaporation_factor({.shade = kept_off});
  for (std::size_t day = 0; day < air.size(); ++day) {
    const Sun sun = sun_of(outside, day, place, year);
    const double mean_c =
        0.5 * (static_cast<double>(air.night_c()[day]) + static_cast<double>(air.day_c()[day]));
    course.evaporation_mm.push_back(
        drying * climate::hargreaves_evaporation_mm(mean_c, sun.range_k, sun.above_mj));
    const double light = species_rules::light_for_growth(sun.bench_mj);
    const std::span<const float> hours = seedlings.hours_of(day);
    course.winter_growth.push_back(light * mean_growth(hours, species_rules::winter_growth_rate));
    course.summer_growth.push_back(light * mean_growth(hours, species_rules::summer_growth_rate));
  }
}

void add_rest(const climate::DailySeries& air, const climate::SunYear& year, SeedCourse& course) {
  double sum = 0.0;
  std::vector<double> means;
  for (std::size_t day = 0; day < air.size(); ++day) {
    means.push_back(
        0.5 * (static_cast<double>(air.night_c()[day]) + static_cast<double>(air.day_c()[day])));
    sum += means.back();
    if (day >= rest_mean_days) {
      sum -= means[day - rest_mean_days];
    }
    const double mean_c = sum / static_cast<double>(std::min<std::size_t>(day + 1, rest_mean_days));
    course.seven_day_mean_c.push_back(mean_c);
    course.rest_rate.push_back(
        species_rules::heat_rest_rate(mean_c, year.on(air.date_of(day)).times.day_length_h()));
  }
}

SeedCourse seed_course(const climate::DailySeries& air,
                       const BenchClimate& climate,
                       const climate::SeedPlace& place,
                       const climate::SunYear& year) {
  SeedCourse course;
  course.first = air.first();
  for (const float night_c : air.night_c()) {
    const auto c = static_cast<double>(night_c);
    course.night_c.push_back(place.mat && place.mat->at_night
                                 ? climate::on_mat_c(c, place.mat->rise, place.mat->thermostat)
                                 : c);
  }
  course.hour_c.reserve(air.size() * static_cast<std::size_t>(hours_a_day));
  const climate::DailySeries outside = outside_of(air, climate);
  const climate::BenchAir bench = climate::to_bench(air, climate.bench.bench, {});
  climate::SeedPlace off_mat = place;
  off_mat.mat.reset();
  const climate::SeedLevel seedlings = climate::seed_level(outside, bench, off_mat, year);
  add_seed(place.mat ? climate::seed_level(outside, bench, place, year) : seedlings, course);
  add_seedlings(seedlings, course);
  add_light(air, outside, seedlings, off_mat, year, course);
  add_rest(air, year, course);
  course.felt = std::make_shared<const FeltDays>(felt_days(course));
  return course;
}

std::vector<double> less_than_nought(std::vector<double> values) {
  std::transform(values.begin(), values.end(), values.begin(), std::negate<>{});
  return values;
}

} // namespace

std::span<const float> SeedCourse::hours_of(int day) const {
  return std::span(hour_c).subspan(static_cast<std::size_t>(day) * hours_a_day, hours_a_day);
}

std::vector<double> gone_a_day_mm(const SeedCourse& course, const species_rules::PotTop& top) {
  const double factor = species_rules::evaporation_factor(top);
  std::vector<double> gone_mm = course.evaporation_mm;
  for (double& mm : gone_mm) {
    mm *= factor;
  }
  return gone_mm;
}

FeltDays felt_days(const SeedCourse& course) {
  FeltDays felt;
  felt.heat_sums = running_sums(course.heat_half_lives);
  for (double& heat : felt.heat_sums) {
    heat *= std::numbers::ln2;
  }
  felt.winter_growth_sums = running_sums(course.winter_growth);
  felt.summer_growth_sums = running_sums(course.summer_growth);
  felt.rest_sums = running_sums(course.rest_rate);
  felt.coldest_less_c = RangeMaximum{less_than_nought(course.coldest_c)};
  felt.hottest_c = RangeMaximum{course.hottest_c};
  for (const bool grit : {false, true}) {
    felt.since_water_mm.at(grit ? 1 : 0) = std::make_shared<const RangeMaximum>(since_water_mm(
        gone_a_day_mm(course, {.grit = grit}), species_rules::usual_watering_point_mm));
  }
  for (int day = 0; day < course.days(); ++day) {
    const auto entry = static_cast<std::size_t>(day);
    const std::span<const float> hours = course.hours_of(day);
    const auto [coldest, hottest] = std::minmax_element(hours.begin(), hours.end());
    felt.wet_ageing.push_back(species_rules::wet_ageing(course.mean_c[entry]));
    felt.fungus.push_back(species_rules::fungus_growth(course.mean_c[entry]));
    felt.seedling_fungus.push_back(species_rules::fungus_growth(course.seedling_mean_c[entry]));
    felt.swing.push_back(species_rules::swing_felt(course.swing_k[entry]));
    felt.coldest_hour_c.push_back(static_cast<double>(*coldest));
    felt.hottest_hour_c.push_back(static_cast<double>(*hottest));
  }
  return felt;
}

std::vector<SeedCourse> seed_courses(const BenchClimate& climate,
                                     std::span<const BenchSeason* const> seasons,
                                     const climate::SeedPlace& place,
                                     int wanted) {
  int courses = wanted;
  for (const BenchSeason* season : seasons) {
    courses = std::min(courses, season->outlook.members);
  }
  const climate::SunYear year{place.latitude};
  std::vector<SeedCourse> result(static_cast<std::size_t>(std::max(0, courses)));
  // Each course follows from its members alone.
  on_two_threads(result.size(), worth_a_second_thread, [&](std::size_t i) {
    result[i] = seed_course(joined(seasons, static_cast<int>(i), courses), climate, place, year);
  });
  return result;
}

} // namespace nightsow::planner
