#include "climate/bench.hpp"

#include <utility>

namespace nightsow::climate {

BenchAir to_bench(const DailySeries& station, std::string bench, BenchOffset offset) {
  BenchAir result{std::move(bench), offset, station};
  const auto night = static_cast<float>(offset.night.kelvin());
  const auto day = static_cast<float>(offset.day.kelvin());
  for (std::size_t i = 0; i < station.size(); ++i) {
    result.air.set_night(i, station.night_c()[i] + night, station.night_mark()[i]);
    result.air.set_day(i, station.day_c()[i] + day);
  }
  return result;
}

} // namespace nightsow::climate
