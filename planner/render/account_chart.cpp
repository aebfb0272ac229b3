#include "planner/render/account_chart.hpp"

#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace nightsow::planner {

namespace {

constexpr int widest = 50; // columns from none up to all

struct Scale {
  int seeds = 1;
  int columns = widest;

  [[nodiscard]] std::size_t column(double up) const {
    const double part = std::clamp(up / seeds, 0.0, 1.0);
    return static_cast<std::size_t>(std::lround(part * columns));
  }
};

std::string line_of(const CurvePoint& point, const Scale& scale) {
  std::string marks(static_cast<std::size_t>(scale.columns) + 1, ' ');
  const auto from = static_cast<std::ptrdiff_t>(scale.column(point.expected.p10));
  const auto to = static_cast<std::ptrdiff_t>(scale.column(point.expected.p90));
  std::fill(marks.begin() + from, marks.begin() + to + 1, '-');
  marks[scale.column(point.expected.mean)] = '+';
  if (point.counted) {
    marks[scale.column(*point.counted)] = 'o';
  }
  return fmt::format("  {:>11}  |{}|{}\n",
                     date_text(point.on),
                     marks,
                     point.counted ? fmt::format(" {} counted", *point.counted) : "");
}

} // namespace

std::string account_chart(const std::vector<CurvePoint>& curve, int seeds) {
  if (curve.empty()) {
    return {};
  }
  const Scale scale{seeds, std::min(widest, std::max(10, seeds * 2))};
  std::string text = fmt::format("  {:>11}   0{:>{}}\n", "", seeds, scale.columns);
  for (const CurvePoint& point : curve) {
    text += line_of(point, scale);
  }
  return text;
}

} // namespace nightsow::planner
