#pragma once

#include "climate/base/problem.hpp"
#include "climate/daily_series.hpp"
#include "climate/finding.hpp"
#include "climate/merge_readings.hpp"
#include "climate/suspicions.hpp"
#include "planner/garden/garden.hpp"
#include "planner/garden/packet.hpp"
#include "planner/garden/records.hpp"
#include "species-rules/catalogue.hpp"

#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// The files of seed in hand and of the record, in the garden's folder.
inline constexpr std::string_view packet_file_name = "packets.csv";
inline constexpr std::string_view journal_file_name = "journal.db";

/// What one weather file turned out to be.
struct ReadingsFile {
  std::string file;
  std::string format;
  std::vector<std::string> because;
  std::string unit;
  std::string bench;     ///< empty: the station
  bool forecast = false; ///< at station level
};

/// A garden's folder as it was read, before anything depends on today.
struct GardenFolder {
  std::filesystem::path folder;
  Garden garden;
  climate::MergedReadings station;
  climate::MergedReadings forecast; ///< at station level; empty: none given
  std::map<std::string, climate::MergedReadings, std::less<>> bench_loggers; ///< by bench
  std::optional<double> station_elevation_m; ///< of the first station file that tells it
  std::vector<ReadingsFile> files;
  std::vector<Packet> packets;
  std::shared_ptr<const species_rules::Catalogue> catalogue;
  Records records;               ///< of journal.db; where it holds no sowing, of sown.csv
  std::vector<Problem> problems; ///< all that was not as it should be, in the order of reading
};

/// What is in doubt about one record, up to today.
struct RecordDoubts {
  std::vector<climate::Finding> findings;
  std::vector<climate::Suspicion> suspicions; ///< before screening
};

/// Everything an answer is made from: nothing in it but the forecast is dated after `today`. Never
/// changed once made; what-if makes another.
struct LoadedGarden {
  Garden garden;
  Date today{};
  climate::DailySeries station; ///< screened, holes open
  /// At station level, screened, marked as forecast, from the first day it tells of, which says
  /// how old it is; days that were read are of no account. Empty: no forecast, or none of use.
  climate::DailySeries forecast;
  std::map<std::string, climate::DailySeries, std::less<>> bench_loggers; ///< screened, by bench
  std::map<std::string, RecordDoubts, std::less<>> logger_doubts; ///< of the loggers, by bench
  std::optional<double> station_elevation_m;
  std::vector<climate::Finding> findings;     ///< of the station's record; the same below
  std::vector<climate::Suspicion> suspicions; ///< before screening
  std::vector<ReadingsFile> files;
  std::vector<Packet> packets; ///< what is left of them after the sowings in `records`
  std::shared_ptr<const species_rules::Catalogue> catalogue;
  Records records; ///< up to today
  std::vector<Problem> problems;
};

/// Reads garden.json, packets.csv (may be absent: then no packets, and a note) and the readings.
/// Loggers decide the air of their bench; forecasts are weighed in to what is expected. One of
/// either that cannot be read is a warning. Of faulty rows the first five of
/// a file are in `problems`, the rest is one note. The grower's own rules lie over the catalogue
/// (own_rules.hpp). The journal, journal.db, is only read (read_records.hpp); one that cannot be is
/// an error; sown.csv (sown_file.hpp) is read where it holds no sowing. Throws UsageError when the
/// folder holds no garden.json, InputError on bad content, when a file that garden.json names is
/// not there, and when the garden has no night of its station (saying what is needed).
[[nodiscard]] GardenFolder load_garden(const std::filesystem::path& folder);

/// The same without weather and rules, for keeping the record: garden.json, packets.csv and the
/// journal alone. Nothing about readings can be wrong here.
[[nodiscard]] GardenFolder load_seed_and_records(const std::filesystem::path& folder);

/// The garden as it was known on a day: readings after it are cut off before they are screened, so
/// that a shorter file gives the same answer; the series ends with the last day that has a reading.
/// A harvest after today is a problem, and the seed counts as fresh; so is a receipt; either is
/// planned, but not for a day before it (Packet::in_hand_from); a test after today is a problem,
/// and does not count. Packets themselves stay, whenever they were received, less what was sown of
/// them by today. A forecast that begins later than tomorrow was not known today; one without a
/// night after the station's last is of no use: either is ignored, and said; so are monthly normals
/// beside ten years or more. Throws InputError when there is no usable night up to today.
[[nodiscard]] LoadedGarden as_of(const GardenFolder& folder, Date today);

} // namespace nightsow::planner
