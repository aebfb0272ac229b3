#include "climate/suspicions.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace nightsow::climate {

namespace {

constexpr std::size_t least_values = 60;

// Shares are taken over what is there of both elements.
template <class Matches> double share_of(const std::vector<double>& values_c, Matches matches) {
  if (values_c.empty()) {
    return 0.0;
  }
  const auto count = std::count_if(values_c.begin(), values_c.end(), matches);
  return static_cast<double>(count) / static_cast<double>(values_c.size());
}

void append_there(std::span<const float> row, std::vector<double>& values_c) {
  for (const float value : row) {
    if (!std::isnan(value)) {
      values_c.push_back(static_cast<double>(value));
    }
  }
}

bool is_whole(double value, double tolerance) {
  return std::abs(value - std::round(value)) <= tolerance;
}

// What the file's unit may have been.
void suspect_unit(const std::vector<double>& values_c,
                  const std::vector<double>& days_c,
                  std::vector<Suspicion>& found) {
  constexpr double hottest_on_earth_c = 56.75;
  constexpr double hottest_on_earth_f = 134.5;
  constexpr double many = 0.05;
  constexpr double nearly_all = 0.98;
  const double too_hot = share_of(values_c, [](double c) { return c > hottest_on_earth_c; });
  const double too_hot_in_f = share_of(values_c, [](double c) { return c > hottest_on_earth_f; });
  const double whole = share_of(values_c, [](double c) { return is_whole(c, 1e-3); });
  if (too_hot_in_f > many && whole > nearly_all) {
    found.push_back({SuspicionKind::tenths_as_celsius, too_hot});
  } else if (too_hot > many && too_hot_in_f < 1.0 - nearly_all) {
    found.push_back({SuspicionKind::fahrenheit_as_celsius, too_hot});
  }
  // Air at 0 to 6 °C by day all the year is known of nowhere where people grow things.
  const double small = share_of(days_c, [](double c) { return std::abs(c) < 6.0; });
  const double below_zero = share_of(days_c, [](double c) { return c < 0.0; });
  constexpr std::size_t whole_year = 365;
  if (days_c.size() >= whole_year && small > nearly_all && below_zero < 0.4) {
    found.push_back({SuspicionKind::a_tenth_of_celsius, small});
  }
}

void suspect_swapped(const DailySeries& series, std::vector<Suspicion>& found) {
  std::size_t both = 0;
  std::size_t crossed = 0;
  for (std::size_t i = 0; i < series.size(); ++i) {
    const float night = series.night_c()[i];
    const float day = series.day_c()[i];
    both += std::isnan(night) || std::isnan(day) ? 0U : 1U;
    crossed += night > day ? 1U : 0U;
  }
  if (both >= least_values && 2 * crossed > both) {
    found.push_back(
        {SuspicionKind::swapped, static_cast<double>(crossed) / static_cast<double>(both)});
  }
}

// Correlation of steps from night to night with the steps from day to day, `later` dates on. Wild
// values would rule the sums; steps over 30 K do not count.
struct StepCorrelation {
  double value = 0.0;
  std::size_t pairs = 0;
};

StepCorrelation step_correlation(const DailySeries& series, int later) {
  constexpr float wildest_step_k = 30.0F;
  double products = 0.0;
  double night_squares = 0.0;
  double day_squares = 0.0;
  StepCorrelation result;
  const auto size = static_cast<std::ptrdiff_t>(series.size());
  for (std::ptrdiff_t i = 2; i + 1 < size; ++i) {
    const auto n = static_cast<std::size_t>(i);
    const auto d = static_cast<std::size_t>(i + later);
    const float night_step = series.night_c()[n] - series.night_c()[n - 1];
    const float day_step = series.day_c()[d] - series.day_c()[d - 1];
    // False for missing ones, too.
    if (std::abs(night_step) < wildest_step_k && std::abs(day_step) < wildest_step_k) {
      products += static_cast<double>(night_step * day_step);
      night_squares += static_cast<double>(night_step * night_step);
      day_squares += static_cast<double>(day_step * day_step);
      ++result.pairs;
    }
  }
  const double scale = std::sqrt(night_squares * day_squares);
  result.value = scale > 0.0 ? products / scale : 0.0;
  return result;
}

// A night follows the day before it: its steps go with those of that day, and hardly with those of
// the day after. Where it is the other way round, the maxima stand a date too late.
void suspect_late_days(const DailySeries& series, std::vector<Suspicion>& found) {
  constexpr std::size_t least_pairs = 300;
  constexpr double clearly = 0.10;
  const StepCorrelation before = step_correlation(series, -1);
  const StepCorrelation after = step_correlation(series, 1);
  if (before.pairs >= least_pairs && after.pairs >= least_pairs &&
      after.value > before.value + clearly) {
    found.push_back({SuspicionKind::days_a_day_late, 1.0});
  }
}

// How often each last figure of the hundredths stands in the values.
std::array<double, 10> hundredths(const std::vector<double>& values_c) {
  std::array<double, 10> shares{};
  for (const double value : values_c) {
    const long digit = ((std::lround(value * 100.0) % 10) + 10) % 10;
    shares.at(static_cast<std::size_t>(digit)) += 1.0 / static_cast<double>(values_c.size());
  }
  return shares;
}

double whole_fahrenheit_share(const std::vector<double>& values_c, bool to_hundredths) {
  // A whole °F is at most half of the last figure away, times 1.8.
  const double tolerance = to_hundredths ? 0.0095 : 0.0905;
  return share_of(values_c, [&](double c) { return is_whole(c * 1.8 + 32.0, tolerance); });
}

void suspect_steps(const DailySeries& series,
                   const std::vector<double>& values_c,
                   std::vector<Suspicion>& found) {
  constexpr double nearly_all = 0.95;
  constexpr double most_in_tenths = 0.9;
  const std::array<double, 10> last_figure = hundredths(values_c);
  const bool to_hundredths = last_figure[0] < most_in_tenths;
  const double whole_f = whole_fahrenheit_share(values_c, to_hundredths);
  const double whole_c = share_of(values_c, [](double c) { return is_whole(c, 1e-3); });
  const double half_f =
      share_of(values_c, [](double c) { return is_whole(2.0 * (c * 1.8 + 32.0), 0.019); });
  const bool fahrenheit = whole_f > nearly_all || (to_hundredths && half_f > nearly_all);
  if (fahrenheit) {
    found.push_back({SuspicionKind::whole_fahrenheit, std::max(whole_f, half_f)});
  } else if (whole_c > nearly_all) {
    found.push_back({SuspicionKind::whole_celsius, whole_c});
  }
  if (!to_hundredths || fahrenheit) {
    return;
  }
  constexpr double uneven = 0.2; // even ones have a tenth each
  const double most = *std::max_element(last_figure.begin(), last_figure.end());
  const std::size_t whole_five_years = 1826;
  const bool gap_free = values_c.size() == 2 * series.size();
  if (most > uneven) {
    found.push_back({SuspicionKind::uneven_hundredths, 1.0 - last_figure[0]});
  } else if (gap_free && series.size() >= whole_five_years) {
    found.push_back({SuspicionKind::computed, 1.0});
  }
}

} // namespace

std::string_view words_for(SuspicionKind kind) {
  using enum SuspicionKind;
  switch (kind) {
  case fahrenheit_as_celsius:
    return "Too hot for °C, and right for °F: look at the unit";
  case tenths_as_celsius:
    return "Too hot for °C, and right for tenths: look at the unit";
  case a_tenth_of_celsius:
    return "As small as if divided by ten once too often";
  case swapped:
    return "Nights above their days, as if the two columns were swapped";
  case days_a_day_late:
    return "Nights go with the day after them, not the one before: the highs seem to stand one "
           "date "
           "too late";
  case whole_fahrenheit:
    return "Read in whole or half °F, so true to about 0.3 K";
  case whole_celsius:
    return "Read in whole °C, so true to about half a kelvin";
  case uneven_hundredths:
    return "Few figures stand in the hundredths: converted or corrected before it came here";
  case computed:
    return "No gap in years and every hundredth alike: it looks computed, not measured; extremes "
           "may "
           "be damped";
  }
  return "";
}

bool spoils_every_answer(SuspicionKind kind) {
  using enum SuspicionKind;
  return kind == fahrenheit_as_celsius || kind == tenths_as_celsius || kind == a_tenth_of_celsius ||
         kind == swapped;
}

std::vector<Suspicion> suspicions(const DailySeries& unscreened) {
  std::vector<double> days_c;
  append_there(unscreened.day_c(), days_c);
  std::vector<double> values_c = days_c;
  append_there(unscreened.night_c(), values_c);
  std::vector<Suspicion> found;
  if (values_c.size() < least_values) {
    return found;
  }
  suspect_unit(values_c, days_c, found);
  suspect_swapped(unscreened, found);
  suspect_late_days(unscreened, found);
  suspect_steps(unscreened, values_c, found);
  return found;
}

} // namespace nightsow::climate
