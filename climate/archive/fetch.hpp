#pragma once

#include "climate/base/date.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace nightsow::climate {

/// The open archives that are known.
enum class Archive {
  station,    ///< GHCN-Daily: what a station measured
  reanalysis, ///< what models and satellites make of the past, for any place
  forecast,   ///< the next days
  power,      ///< NASA POWER, for any place, coarse
};

struct FetchRequest {
  Archive archive = Archive::station;
  std::string station;   ///< Archive::station only, 11 letters
  double latitude = 0.0; ///< of the garden; not sent for a station
  double longitude = 0.0;
  std::optional<Date> from; ///< empty: thirty full years; a station's file comes whole anyway
  Date today{};
  std::string base_url; ///< empty: the archive's own; else an address without slash at its end
};

/// One file to fetch, and what is known of it beforehand.
struct PlannedFetch {
  Archive archive = Archive::station;
  std::string url;
  std::string file; ///< a plain name
  std::string source;
  std::string licence;
};

/// Where to ask, and as what to keep it. Coordinates go out rounded to hundredths of a degree
/// (about a kilometre): archives by place are coarser than that. Throws UsageError on a station's
/// number that is none, and when `from` lies behind what the archive can have.
[[nodiscard]] PlannedFetch plan_fetch(const FetchRequest& request);

/// "ghcnd-stations.txt" or "ghcnd-inventory.txt" of the same archive.
[[nodiscard]] PlannedFetch plan_station_list(std::string_view file, const std::string& base_url);

} // namespace nightsow::climate
