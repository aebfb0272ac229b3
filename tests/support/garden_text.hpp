#pragma once

#include "climate/base/date.hpp"
#include "climate/base/problem.hpp"
#include "tests/support/temporary_folder.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::support {

/// A day that a test knows to exist.
inline Date day(std::string_view iso) {
  return parse_iso_date(iso).value();
}

/// What is thrown, as people read it; empty when nothing is.
template <class Error, class Call> std::string fault(Call&& call) {
  try {
    static_cast<void>(call());
  } catch (const Error& error) {
    return error.what();
  }
  return "";
}

inline std::vector<std::string> texts(const std::vector<Problem>& problems) {
  std::vector<std::string> result;
  for (const Problem& problem : problems) {
    result.push_back(to_text(problem));
  }
  return result;
}

/// A station file of `days` days: nights fall from 12.0 by a tenth a day, days are ten degrees
/// above.
inline std::string station_text(std::string_view first_day, int days) {
  std::string text = "date,tmin_c,tmax_c\n";
  for (int i = 0; i < days; ++i) {
    const auto tenths = [](int value) {
      return std::to_string(value / 10) + '.' + std::to_string(value % 10);
    };
    const int night = 120 - i % 100;
    text += format_iso_date(day(first_day) + Days{i}) + ',' + tenths(night) + ',' +
            tenths(night + 100) + '\n';
  }
  return text;
}

inline constexpr std::string_view smallest_garden =
    R"({"latitude": -33.0, "longitude": 19.0, "readings": [{"file": "readings/station.csv"}]})";

/// The folder of a garden with ninety days of readings and one packet.
inline void write_garden(const TemporaryFolder& folder,
                         std::string_view garden = smallest_garden,
                         std::string_view station = station_text("2025-12-01", 90)) {
  folder.write("garden.json", garden);
  folder.write("readings/station.csv", station);
  folder.write("packets.csv",
               "packet,taxon,seeds,harvested\n"
               "b1,Bulbine annua,40,2025-11\n");
}

} // namespace nightsow::support
