#include "climate/screen.hpp"
#include "climate/smooth_year.hpp"
#include "planner/garden/drawn_station.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/garden/packets_in_hand.hpp"
#include "planner/journal/read_records.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
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
  known.series = whole.series.part(whole.series.first(), static_cast<int>(count));
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

constexpr int old_forecast_days = 3; // common practice, no source

std::string counted_days(int days) {
  return fmt::format("{} day{}", days, days == 1 ? "" : "s");
}

climate::DailySeries marked_as_forecast(climate::DailySeries series) {
  for (std::size_t i = 0; i < series.size(); ++i) {
    series.set_night(i, series.night_c()[i], climate::Mark::forecast);
  }
  return series;
}

// A forecast is worth what it knows beyond the readings; what it was worth is said.
climate::DailySeries known_forecast(const GardenFolder& folder,
                                    const LoadedGarden& known,
                                    std::vector<Problem>& told) {
  if (folder.forecast.series.empty()) {
    return {};
  }
  const auto tell = [&](Severity severity, std::string found, std::string remedy) {
    told.push_back(
        {severity, folder.forecast.files.front(), 0, 0, std::move(found), "", std::move(remedy)});
  };
  const climate::DailySeries forecast = climate::screen(folder.forecast).series;
  if (forecast.first() > known.today + Days{1}) {
    tell(Severity::warning,
         fmt::format("the forecast begins {}, later than tomorrow: it was not known today, {}",
                     format_iso_date(forecast.first()),
                     format_iso_date(known.today)),
         "it is ignored");
    return {};
  }
  const Date last = *climate::last_night(known.station);
  const std::optional<Date> end = climate::last_night(forecast);
  if (!end || *end <= last) {
    tell(Severity::warning,
         fmt::format("the forecast has no night after the last reading, {}", format_iso_date(last)),
         "it is ignored; bring a newer one");
    return {};
  }
  const int days_old = days_between(forecast.first(), known.today);
  tell(days_old > old_forecast_days ? Severity::warning : Severity::note,
       fmt::format("the forecast from {} to {} is weighed in, {} after the last reading",
                   format_iso_date(forecast.first()),
                   format_iso_date(*end),
                   counted_days(days_between(last, *end))),
       days_old > old_forecast_days ? "it is old and counts for less; bring a newer one" : "");
  return marked_as_forecast(forecast);
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
    problems.push_back(problem_of(
        packet,
        fmt::format(
            "{} is harvested {}, after today", packet.id, format_iso_date(packet.harvested->first)),
        "correct it; until then the seed counts as fresh, and is not sown"));
    packet.in_hand_from = packet.harvested->first;
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
                                  "correct it; until then it is planned, and not sown"));
    packet.in_hand_from = packet.received->first;
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

std::string share_text(const climate::Suspicion& suspicion) {
  return fmt::format("{} ({:.0f} % of what was read)",
                     climate::words_for(suspicion.kind),
                     100.0 * suspicion.share);
}

// What would make every answer wrong is said with every answer; the rest is for `climate`.
void add_spoilt_record(const std::vector<climate::Suspicion>& suspicions,
                       const std::string& file,
                       std::vector<Problem>& problems) {
  for (const climate::Suspicion& suspicion : suspicions) {
    if (climate::spoils_every_answer(suspicion.kind)) {
      problems.push_back(
          {Severity::warning,
           file,
           0,
           0,
           share_text(suspicion),
           "lowest and highest of each day in °C",
           "look at the file and correct it; nothing was changed in it, but what cannot be was "
           "left out"});
    }
  }
}

// When nothing is left of a record, what is odd about all of it is the likeliest cause.
void refuse_spoilt_record(const GardenFolder& folder,
                          const std::vector<climate::Suspicion>& suspicions) {
  for (const climate::Suspicion& suspicion : suspicions) {
    if (climate::spoils_every_answer(suspicion.kind)) {
      throw InputError({Severity::error,
                        folder.files.empty() ? "readings" : folder.files.front().file,
                        0,
                        0,
                        share_text(suspicion) + ", and no night can be used",
                        "lowest and highest of each day in °C",
                        "look at the columns of the file and correct their names"});
    }
  }
}

void read_station(const GardenFolder& folder, LoadedGarden& known) {
  climate::MergedReadings read = cut_at(folder.station, known.today);
  known.suspicions = climate::suspicions(read.series);
  climate::ScreenedReadings screened = climate::screen(std::move(read));
  if (!climate::last_night(screened.series)) {
    refuse_spoilt_record(folder, known.suspicions);
    refuse_unknown_past(folder, known.today);
  }
  known.station = std::move(screened.series);
  known.findings = std::move(screened.findings);
}

// Shorter readings lean on them, which is said where the usual year is made.
void note_unused_normals(LoadedGarden& known) {
  if (known.garden.monthly_normals &&
      climate::spans_a_trend(known.station.first(), known.station.night_c())) {
    known.problems.push_back(
        {Severity::note,
         "garden.json",
         0,
         0,
         fmt::format("monthly_normals are not used where the readings span {:.0f} years or more",
                     climate::least_years_for_a_trend),
         "",
         ""});
  }
}

void read_logger(const std::string& bench,
                 const climate::MergedReadings& whole,
                 LoadedGarden& known) {
  climate::MergedReadings read = cut_at(whole, known.today);
  RecordDoubts doubts;
  doubts.suspicions = climate::suspicions(read.series);
  add_spoilt_record(doubts.suspicions, whole.files.front(), known.problems);
  climate::ScreenedReadings screened = climate::screen(std::move(read));
  doubts.findings = std::move(screened.findings);
  known.bench_loggers.emplace(bench, std::move(screened.series));
  known.logger_doubts.emplace(bench, std::move(doubts));
}

} // namespace

LoadedGarden as_of(const GardenFolder& folder, Date today) {
  LoadedGarden known;
  known.garden = folder.garden;
  known.today = today;
  if (knows_normals_only(folder.garden)) {
    known.station = drawn_station(folder.garden, today);
  } else {
    read_station(folder, known);
  }
  known.station_elevation_m = folder.station_elevation_m;
  known.files = folder.files;
  known.records = up_to(folder.records, today);
  known.packets = packets_in_hand(folder.packets, known.records);
  known.catalogue = folder.catalogue;
  known.problems = folder.problems;
  add_spoilt_record(known.suspicions, "readings", known.problems);
  if (!knows_normals_only(folder.garden)) {
    note_unused_normals(known);
    known.forecast = known_forecast(folder, known, known.problems);
  }
  for (const auto& [bench, logger] : folder.bench_loggers) {
    read_logger(bench, logger, known);
  }
  // Only what has happened by today is known of a packet.
  for (Packet& packet : known.packets) {
    cut_harvest_at(packet, today, known.problems);
    cut_test_at(packet, today, known.problems);
  }
  return known;
}

} // namespace nightsow::planner
