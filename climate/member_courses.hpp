#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace nightsow::climate {

/// One element of all members of an outlook, member-major, °C; NaN is missing.
struct Courses {
  int days = 0;
  std::vector<float> values_c;

  [[nodiscard]] int members() const { return static_cast<int>(values_c.size()) / days; }

  [[nodiscard]] std::span<float> of(int member) {
    return std::span<float>(values_c).subspan(static_cast<std::size_t>(member) *
                                                  static_cast<std::size_t>(days),
                                              static_cast<std::size_t>(days));
  }
};

/// Mean and variance over members of one day; members that miss it do not count.
struct Spread {
  double mean_c = 0.0;
  double variance = 0.0;
};

/// Of each day from `begin` on.
[[nodiscard]] std::vector<Spread> spreads_from(Courses& courses, std::size_t begin);

/// What becomes of the members of each day: they stray from another mean, by more or less.
struct Moves {
  std::vector<double> about_c;
  std::vector<double> to_c;
  std::vector<double> factor;

  void add(double about, double to, double by) {
    about_c.push_back(about);
    to_c.push_back(to);
    factor.push_back(by);
  }
};

/// Moves the members of each day from `begin` on. Requires: moves for all of them.
void move_from(std::size_t begin, const Moves& moves, Courses& courses);

/// The first day of a season of which nothing is known, `last` being the last that is, both counted
/// from the season's first.
[[nodiscard]] std::size_t first_unknown(int last, int days);

} // namespace nightsow::climate
