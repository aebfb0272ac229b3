#include "climate/member_courses.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::climate {

// Sums grow member by member, as members lie in memory.
std::vector<Spread> spreads_from(Courses& courses, std::size_t begin) {
  const std::size_t days = static_cast<std::size_t>(courses.days) - begin;
  std::vector<double> sums(days);
  std::vector<double> squares(days);
  std::vector<float> there(days);
  for (int member = 0; member < courses.members(); ++member) {
    const std::span<const float> course_c = courses.of(member).subspan(begin);
    for (std::size_t t = 0; t < days; ++t) {
      const bool known = !std::isnan(course_c[t]);
      const auto value = static_cast<double>(known ? course_c[t] : 0.0F);
      sums[t] += value;
      squares[t] += value * value;
      there[t] += known ? 1.0F : 0.0F;
    }
  }
  std::vector<Spread> spreads(days);
  for (std::size_t t = 0; t < days; ++t) {
    if (there[t] > 0.0F) {
      const auto members = static_cast<double>(there[t]);
      const double mean = sums[t] / members;
      spreads[t] = {mean, std::max(0.0, squares[t] / members - mean * mean)};
    }
  }
  return spreads;
}

void move_from(std::size_t begin, const Moves& moves, Courses& courses) {
  for (int member = 0; member < courses.members(); ++member) {
    const std::span<float> course_c = courses.of(member).subspan(begin);
    for (std::size_t t = 0; t < course_c.size(); ++t) {
      const double stray_k = static_cast<double>(course_c[t]) - moves.about_c[t];
      course_c[t] = static_cast<float>(moves.to_c[t] + moves.factor[t] * stray_k);
    }
  }
}

std::size_t first_unknown(int last, int days) {
  return static_cast<std::size_t>(std::clamp(last + 1, 0, days));
}

} // namespace nightsow::climate
