#include "climate/phases.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace nightsow::climate {

namespace {

constexpr double least_swing_k = 4.0;
constexpr double limb_share = 0.1; // of the swing, below the hottest night

// The smooth nights of one calendar year, taken as a ring.
class Ring {
public:
  Ring(const SmoothCurve& night, int year)
      : first_(date::year{year} / date::January / 1),
        size_(static_cast<std::size_t>(
            (Date{date::year{year + 1} / date::January / 1} - first_).count())) {
    values_.reserve(size_);
    for (std::size_t i = 0; i < size_; ++i) {
      values_.push_back(night.season_c(first_ + Days{static_cast<int>(i)}));
    }
  }

  [[nodiscard]] std::size_t size() const { return size_; }

  [[nodiscard]] double at(std::size_t index) const { return values_[index % size_]; }

  [[nodiscard]] date::month_day day(std::size_t index) const {
    return recurring_day(first_ + Days{static_cast<int>(index % size_)});
  }

  [[nodiscard]] std::size_t highest() const {
    return static_cast<std::size_t>(std::max_element(values_.begin(), values_.end()) -
                                    values_.begin());
  }

  [[nodiscard]] std::size_t lowest() const {
    return static_cast<std::size_t>(std::min_element(values_.begin(), values_.end()) -
                                    values_.begin());
  }

  [[nodiscard]] int peaks() const {
    int count = 0;
    for (std::size_t i = 0; i < size_; ++i) {
      const bool peak = at(i) > at(i + size_ - 1) && at(i) >= at(i + 1);
      count += peak ? 1 : 0;
    }
    return count;
  }

private:
  Date first_;
  std::size_t size_;
  std::vector<double> values_;
};

// First index after `from`, going by `step` round the ring, at which the night is at or under
// (falling) or at or over (rising) the level.
std::size_t first_under(const Ring& ring, std::size_t from, double level_c) {
  std::size_t index = from;
  while (ring.at(index) > level_c) {
    ++index;
  }
  return index;
}

std::size_t first_over(const Ring& ring, std::size_t from, double level_c) {
  std::size_t index = from;
  while (ring.at(index) < level_c) {
    ++index;
  }
  return index;
}

} // namespace

PhasesOrReason find_phases(const SmoothCurve& night, int target_year) {
  const Ring ring{night, target_year};
  const std::size_t hottest = ring.highest();
  const std::size_t coldest = ring.lowest();
  const double high_c = ring.at(hottest);
  const double low_c = ring.at(coldest);

  PhasesOrReason result;
  result.hottest = ring.day(hottest);
  result.swing = Celsius{high_c} - Celsius{low_c};
  if (ring.peaks() != 1) {
    result.reason = NoPhases::several_peaks;
    return result;
  }
  if (result.swing.kelvin() < least_swing_k) {
    result.reason = NoPhases::swing_too_small;
    return result;
  }
  const double limb_level_c = high_c - limb_share * (high_c - low_c);
  const std::size_t limb = first_under(ring, hottest, limb_level_c);
  const std::size_t hot_begins = first_over(ring, coldest, limb_level_c);
  const std::size_t warming = first_over(ring, coldest, 0.5 * (high_c + low_c));
  result.phases = Phases{ring.day(hottest),
                         ring.day(limb),
                         ring.day(coldest),
                         ring.day(warming),
                         ring.day(hot_begins),
                         Celsius{high_c},
                         Celsius{low_c}};
  return result;
}

} // namespace nightsow::climate
