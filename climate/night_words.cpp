#include "climate/night_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace nightsow::climate {

namespace {

constexpr double coldest_possible = -std::numeric_limits<double>::infinity();
constexpr double hottest_possible = std::numeric_limits<double>::infinity();

bool is_missing(float night_c) {
  return std::isnan(night_c);
}

// A missing night is taken once as cool, once as warm; where the two agree it did not matter.
bool counts_as_cool(float night_c, Celsius limit, double missing_as) {
  const double value = is_missing(night_c) ? missing_as : static_cast<double>(night_c);
  return at_or_under(value, limit.degrees());
}

std::optional<int> first_stir(std::span<const float> night_c,
                              const NightLimit& limit,
                              double missing_as) {
  const auto of = static_cast<std::size_t>(limit.of);
  int cool = 0;
  for (std::size_t t = 0; t < night_c.size(); ++t) {
    cool += counts_as_cool(night_c[t], limit.at_or_under, missing_as) ? 1 : 0;
    if (t >= of) {
      cool -= counts_as_cool(night_c[t - of], limit.at_or_under, missing_as) ? 1 : 0;
    }
    if (t + 1 >= of && cool >= limit.nights) {
      return static_cast<int>(t);
    }
  }
  return std::nullopt;
}

struct FirstHold {
  std::optional<int> day;
  bool day_limit_left_out = false;
};

FirstHold first_hold(std::span<const float> night_c,
                     std::span<const float> day_c,
                     const NightLimit& limit,
                     int first_allowed,
                     double missing_as) {
  FirstHold hold;
  const auto window = static_cast<std::size_t>(holds_of);
  int cool = 0;
  for (std::size_t t = 0; t < night_c.size(); ++t) {
    cool += counts_as_cool(night_c[t], limit.at_or_under, missing_as) ? 1 : 0;
    if (t >= window) {
      cool -= counts_as_cool(night_c[t - window], limit.at_or_under, missing_as) ? 1 : 0;
    }
    // The level lies at or above the tenth coolest night.
    if (static_cast<int>(t) < first_allowed || t + 1 < window || cool < holds_nights) {
      continue;
    }
    const std::size_t begin = t + 1 - window;
    const std::size_t days_end = std::min(day_c.size(), t + 1);
    const std::span<const float> days =
        begin < days_end ? day_c.subspan(begin, days_end - begin) : std::span<const float>{};
    const HoldLevel level = hold_level(night_c.subspan(begin, window), days, limit, missing_as);
    if (at_or_under(level.level_c, limit.at_or_under.degrees())) {
      hold.day = static_cast<int>(t);
      hold.day_limit_left_out = level.day_limit_left_out;
      return hold;
    }
  }
  return hold;
}

std::optional<int> first_settled(std::span<const float> night_c,
                                 const NightLimit& limit,
                                 std::optional<int> stirs,
                                 double missing_as) {
  if (!stirs) {
    return std::nullopt;
  }
  const auto window = static_cast<std::size_t>(holds_of);
  for (auto s = static_cast<std::size_t>(*stirs); s + window < night_c.size(); ++s) {
    int warm = 0;
    for (std::size_t t = s + 1; t <= s + window; ++t) {
      warm += counts_as_cool(night_c[t], limit.at_or_under, missing_as) ? 0 : 1;
    }
    if (warm <= settles_most_warm) {
      return static_cast<int>(s);
    }
  }
  return std::nullopt;
}

// Certain once it is met even when every missing night was warm; in doubt when it could have come
// earlier had they been cool.
WordDay certain(std::optional<int> missing_cool, std::optional<int> missing_warm) {
  return {missing_warm, missing_cool != missing_warm};
}

} // namespace

HoldLevel hold_level(std::span<const float> night_c,
                     std::span<const float> day_c,
                     const NightLimit& limit,
                     double missing_as) {
  std::array<double, holds_of> nights{};
  for (std::size_t i = 0; i < nights.size(); ++i) {
    nights[i] = is_missing(night_c[i]) ? missing_as : static_cast<double>(night_c[i]);
  }
  std::nth_element(nights.begin(), nights.begin() + (holds_nights - 1), nights.end());
  HoldLevel result{nights[holds_nights - 1], false};
  if (!limit.day_limit) {
    return result;
  }
  const std::optional<double> mean_c = mean_of_those_there(day_c, holds_least_maxima);
  if (!mean_c) {
    result.day_limit_left_out = true;
    return result;
  }
  result.level_c += holds_day_weight * std::max(0.0, *mean_c - limit.day_limit->degrees());
  return result;
}

std::optional<double> mean_of_those_there(std::span<const float> values_c, int least) {
  double sum = 0.0;
  int count = 0;
  for (const float value_c : values_c) {
    if (!std::isnan(value_c)) {
      sum += static_cast<double>(value_c);
      ++count;
    }
  }
  return count > 0 && count >= least ? std::optional{sum / count} : std::nullopt;
}

std::optional<int> first_mild_day(std::span<const float> day_c,
                                  std::optional<Celsius> day_limit,
                                  int first_allowed) {
  if (!day_limit) {
    return first_allowed;
  }
  for (auto t = static_cast<std::size_t>(std::max(first_allowed, holds_of - 1)); t < day_c.size();
       ++t) {
    const std::optional<double> mean_c =
        mean_of_those_there(day_c.subspan(t + 1 - holds_of, holds_of), holds_least_maxima);
    if (!mean_c || at_or_under(*mean_c, day_limit->degrees())) {
      return static_cast<int>(t);
    }
  }
  return std::nullopt;
}

NightWords night_words(std::span<const float> night_c,
                       std::span<const float> day_c,
                       const NightLimit& limit,
                       int first_allowed) {
  const std::optional<int> stirs_warm = first_stir(night_c, limit, hottest_possible);
  const FirstHold holds_warm = first_hold(night_c, day_c, limit, first_allowed, hottest_possible);
  const std::optional<int> settles_warm =
      first_settled(night_c, limit, stirs_warm, hottest_possible);
  NightWords words;
  words.day_limit_left_out = holds_warm.day_limit_left_out;
  if (std::none_of(night_c.begin(), night_c.end(), is_missing)) {
    words.stirs.day = stirs_warm;
    words.holds.day = holds_warm.day;
    words.settles.day = settles_warm;
    return words;
  }
  const std::optional<int> stirs_cool = first_stir(night_c, limit, coldest_possible);
  words.stirs = certain(stirs_cool, stirs_warm);
  words.holds = certain(first_hold(night_c, day_c, limit, first_allowed, coldest_possible).day,
                        holds_warm.day);
  // `settles` takes missing nights as warm by definition; what is in doubt is where it starts.
  words.settles = {settles_warm, words.stirs.unknown};
  return words;
}

bool relapses(std::span<const float> night_c, const NightLimit& limit, int after) {
  const int last = std::min(static_cast<int>(night_c.size()) - 1, after + relapse_within);
  for (int end = after + relapse_window; end <= last; ++end) {
    double sum = 0.0;
    for (int t = end - relapse_window + 1; t <= end; ++t) {
      sum += static_cast<double>(night_c[static_cast<std::size_t>(t)]);
    }
    // A missing night makes the sum NaN, and the comparison false.
    if (over(sum / relapse_window, limit.at_or_under.degrees())) {
      return true;
    }
  }
  return false;
}

NightCount count_nights(std::span<const float> night_c,
                        std::size_t last,
                        Celsius at_or_under_limit,
                        int of) {
  NightCount count;
  const std::size_t begin =
      last + 1 >= static_cast<std::size_t>(of) ? last + 1 - static_cast<std::size_t>(of) : 0;
  for (std::size_t i = begin; i <= last && i < night_c.size(); ++i) {
    ++count.of;
    if (is_missing(night_c[i])) {
      ++count.missing;
    } else if (at_or_under(static_cast<double>(night_c[i]), at_or_under_limit.degrees())) {
      ++count.cool;
    }
  }
  return count;
}

} // namespace nightsow::climate
