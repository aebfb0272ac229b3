#pragma once

#include "climate/base/celsius.hpp"
#include "climate/daily_series.hpp"

#include <string>

namespace nightsow::climate {

/// How the bench was reached from the station, best first.
enum class BenchSource {
  written_offset, ///< the grower wrote offsets in garden.json
  station_as_is,  ///< nothing is known about the bench
};

/// What to add to the station's air to get the air at the bench.
struct BenchOffset {
  CelsiusDelta night;
  CelsiusDelta day;
  BenchSource source = BenchSource::station_as_is;
};

/// Air at the bench, the only air in which nights are counted. Not the temperature of pots or seed,
/// which is another type, and never made from this one without a model of the pot.
struct BenchAir {
  std::string bench;
  BenchOffset offset;
  DailySeries air;
};

[[nodiscard]] BenchAir to_bench(const DailySeries& station, std::string bench, BenchOffset offset);

} // namespace nightsow::climate
