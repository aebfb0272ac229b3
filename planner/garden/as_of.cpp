#include "climate/screen.hpp"
#include "planner/garden/load_garden.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace nightsow::planner {

namespace {

// How many days of the series are known: up to today, without an end in which nothing stands. A
// file that was cut at today may end earlier than one that has a hole over today.
std::size_t known_days(const climate::DailySeries& series, Date today) {
  const auto upto = std::clamp<std::ptrdiff_t>(
      days_between(series.first(), today) + 1, 0, static_cast<std::ptrdiff_t>(series.size()));
  auto count = static_cast<std::size_t>(upto);
  while (count > 0 && std::isnan(series.night_c()[count - 1]) &&
         std::isnan(series.day_c()[count - 1])) {
    --count;
  }
  return count;
}

climate::MergedReadings cut_at(const climate::MergedReadings& whole, Date today) {
  const std::size_t count = known_days(whole.series, today);
  climate::MergedReadings known;
  known.files = whole.files;
  known.series = climate::DailySeries{whole.series.first(), count};
  for (std::size_t i = 0; i < count; ++i) {
    known.series.set_night(i, whole.series.night_c()[i], whole.series.night_mark()[i]);
    known.series.set_day(i, whole.series.day_c()[i]);
  }
  const auto end = static_cast<std::ptrdiff_t>(count);
  known.night_place.assign(whole.night_place.begin(), whole.night_place.begin() + end);
  known.day_place.assign(whole.day_place.begin(), whole.day_place.begin() + end);
  std::copy_if(whole.findings.begin(),
               whole.findings.end(),
               std::back_inserter(known.findings),
               [&](const climate::Finding& finding) { return finding.date <= today; });
  return known;
}

[[noreturn]] void refuse_unknown_past(const GardenFolder& folder, Date today) {
  throw InputError({Severity::error,
                    folder.files.empty() ? "readings" : folder.files.front().file,
                    0,
                    0,
                    fmt::format("no usable night up to today, {}", format_iso_date(today)),
                    fmt::format("a day from {} on", format_iso_date(folder.station.series.first())),
                    "check --today and the dates of the readings"});
}

Problem problem_of(const Packet& packet, std::string found, std::string remedy) {
  return {Severity::warning,
          "packets.csv",
          packet.line,
          0,
          std::move(found),
          "a day up to today",
          std::move(remedy)};
}

void cut_harvest_at(Packet& packet, Date today, std::vector<Problem>& problems) {
  if (packet.harvested && packet.harvested->first > today) {
    problems.push_back(problem_of(packet,
                                  fmt::format("{} is harvested {}, after today",
                                              packet.id,
                                              format_iso_date(packet.harvested->first)),
                                  "correct it; the seed counts as fresh"));
    packet.harvested = DateRange{today, today};
    return;
  }
  if (packet.harvested) {
    packet.harvested->last = std::min(packet.harvested->last, today);
  }
  if (packet.received && packet.received->first > today) {
    problems.push_back(problem_of(packet,
                                  fmt::format("{} is received {}, after today",
                                              packet.id,
                                              format_iso_date(packet.received->first)),
                                  "correct it; the packet is planned as if it were here"));
  }
}

void cut_test_at(Packet& packet, Date today, std::vector<Problem>& problems) {
  if (packet.tested && packet.tested->on && *packet.tested->on > today) {
    problems.push_back(problem_of(
        packet,
        fmt::format("{} is tested {}, after today", packet.id, format_iso_date(*packet.tested->on)),
        "correct it; the test does not count"));
    packet.tested.reset();
  }
}

} // namespace

LoadedGarden as_of(const GardenFolder& folder, Date today) {
  climate::ScreenedReadings screened = climate::screen(cut_at(folder.station, today));
  if (!climate::last_night(screened.series)) {
    refuse_unknown_past(folder, today);
  }
  LoadedGarden known;
  known.garden = folder.garden;
  known.today = today;
  known.station = std::move(screened.series);
  known.station_elevation_m = folder.station_elevation_m;
  known.findings = std::move(screened.findings);
  known.files = folder.files;
  known.packets = folder.packets;
  known.catalogue = folder.catalogue;
  known.problems = folder.problems;
  // Only what has happened by today is known of a packet.
  for (Packet& packet : known.packets) {
    cut_harvest_at(packet, today, known.problems);
    cut_test_at(packet, today, known.problems);
  }
  return known;
}

} // namespace nightsow::planner
