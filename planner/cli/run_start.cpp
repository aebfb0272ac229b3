#include "planner/cli/run_start.hpp"

#include "climate/base/file.hpp"
#include "climate/base/nearest_name.hpp"
#include "climate/base/problem.hpp"
#include "climate/readers/read_readings.hpp"
#include "planner/cli/problem_notes.hpp"
#include "planner/cli/typed_values.hpp"
#include "planner/garden/garden_file.hpp"
#include "planner/garden/packet_file.hpp"
#include "planner/garden/time_zone.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <system_error>
#include <utility>
#include <vector>

namespace nightsow::planner {

namespace fs = std::filesystem;

namespace {

struct NewFile {
  std::string name; ///< relative to the garden's folder
  std::string content;
  std::string what; ///< for people
};

/// Folders and files made so far; taken away again unless all went well.
class Made {
public:
  Made() = default;
  Made(const Made&) = delete;
  Made& operator=(const Made&) = delete;
  Made(Made&&) = delete;
  Made& operator=(Made&&) = delete;

  ~Made() {
    while (!paths_.empty()) {
      std::error_code ignored; // whoever put something into a folder meanwhile keeps it
      fs::remove(paths_.back(), ignored);
      paths_.pop_back();
    }
  }

  void make_folder(const fs::path& folder) {
    if (folder.empty() || fs::is_directory(folder)) {
      return;
    }
    make_folder(folder.parent_path());
    std::error_code error;
    if (fs::create_directory(folder, error)) {
      paths_.push_back(folder);
    } else if (error) {
      throw StorageError({Severity::error,
                          folder.string(),
                          0,
                          0,
                          "cannot make this folder: " + error.message(),
                          "",
                          "check its name and the permissions"});
    }
  }

  void write_file(const fs::path& path, std::string_view content) {
    write_atomically(path, content);
    paths_.push_back(path);
  }

  void keep_all() { paths_.clear(); }

private:
  std::vector<fs::path> paths_;
};

void refuse_existing_garden(const fs::path& folder) {
  if (fs::exists(folder / "garden.json")) {
    wrong_use((folder / "garden.json").string(),
              "here is a garden already",
              "",
              "name another folder, or edit this file");
  }
}

void check_time_zone(const std::string& zone) {
  if (!zone.empty() && !is_time_zone(zone)) {
    wrong_use("--time-zone",
              shown(zone) + " is no known time zone",
              "a name of the tz database such as Africa/Johannesburg",
              did_you_mean(zone, time_zone_names()));
  }
}

/// Whether the file is there already with just this content. Throws UsageError when it is another.
bool is_there_already(const fs::path& path, std::string_view content) {
  if (!fs::exists(path)) {
    return false;
  }
  if (read_whole_file(path, "start") != content) {
    wrong_use(path.string(),
              "a file of this name is there already, and it is another one",
              "",
              "rename one of the two");
  }
  return true;
}

std::string readings_in_words(const climate::Readings& readings) {
  const auto [first, last] = std::minmax_element(
      readings.rows.begin(),
      readings.rows.end(),
      [](const climate::Reading& a, const climate::Reading& b) { return a.date < b.date; });
  return fmt::format("{} rows, {} to {}, {}",
                     readings.rows.size(),
                     format_iso_date(first->date),
                     format_iso_date(last->date),
                     readings.unit);
}

/// In the order of writing: garden.json comes last, so that a folder that has one is whole.
std::vector<NewFile> files_to_write(const StartCommand& command,
                                    const NewGarden& garden,
                                    const climate::Readings& readings,
                                    std::string bytes) {
  std::vector<NewFile> files;
  if (!is_there_already(command.folder / garden.readings_file, bytes)) {
    files.push_back({garden.readings_file, std::move(bytes), readings_in_words(readings)});
  }
  // A list of packets that was here first is the grower's.
  if (!fs::exists(command.folder / "packets.csv")) {
    files.push_back(
        {"packets.csv", packet_header(), "empty: one packet a row, taxon and seeds needed"});
  }
  files.push_back(
      {"garden.json", new_garden_text(garden), "its comments say what else to fill in"});
  return files;
}

void write_all(const fs::path& folder, const std::vector<NewFile>& files) {
  Made made;
  made.make_folder(folder);
  made.make_folder(folder / "readings");
  for (const NewFile& file : files) {
    made.write_file(folder / file.name, file.content);
  }
  made.keep_all();
}

/// As a shell takes it: in quotes where it must be.
std::string shell_word(const std::string& text) {
  constexpr std::string_view harmless = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
                                        "0123456789_./-+=:,@%";
  if (text.find_first_not_of(harmless) == std::string::npos && !text.starts_with('-')) {
    return text;
  }
  std::string quoted = "'";
  for (const char c : text) {
    quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
  }
  return quoted + "'";
}

std::string next_command(const fs::path& folder, std::string_view command) {
  if (folder.empty()) {
    return fmt::format("nightsow {}", command);
  }
  return fmt::format("nightsow --garden {} {}", shell_word(folder.string()), command);
}

std::string start_text(const fs::path& folder, const std::vector<NewFile>& files) {
  std::size_t width = 0;
  for (const NewFile& file : files) {
    width = std::max(width, file.name.size());
  }
  std::string text =
      fmt::format("Made a garden in {}:\n", folder.empty() ? "this folder" : folder.string());
  for (const NewFile& file : files) {
    text += fmt::format("  {:{}}  {}\n", file.name, width, file.what);
  }
  text += fmt::format("Next, see what the readings say:    {}\n"
                      "Then, with seed in packets.csv:     {}\n",
                      next_command(folder, "climate"),
                      next_command(folder, "plan"));
  return text;
}

std::string start_json(const fs::path& folder, const std::vector<NewFile>& files) {
  nlohmann::ordered_json names = nlohmann::ordered_json::array();
  for (const NewFile& file : files) {
    names.push_back(file.name);
  }
  const nlohmann::ordered_json json{{"schema", 1},
                                    {"folder", folder.empty() ? "." : folder.string()},
                                    {"files", names},
                                    {"next", next_command(folder, "climate")}};
  return json.dump(2) + "\n";
}

} // namespace

Outcome run(const StartCommand& command,
            const CommonOptions& common,
            const Surroundings& /*around*/) {
  refuse_existing_garden(command.folder);
  check_time_zone(command.garden.time_zone);
  std::string bytes = read_whole_file(command.readings, "--readings");
  const climate::Readings readings = climate::read_readings(
      bytes,
      command.readings.string(),
      {command.garden.station, command.garden.column, command.garden.time_zone});
  NewGarden garden = command.garden;
  garden.readings_file = "readings/" + command.readings.filename().string();
  if (common.strict && has_faults(readings.problems)) {
    return {"", strict_notes(readings.problems, common.quiet), Ending::refused};
  }
  const auto files = files_to_write(command, garden, readings, std::move(bytes));
  // What we write must load: better a fault of ours here than a garden that cannot be read.
  static_cast<void>(read_garden_file(files.back().content, "garden.json"));
  write_all(command.folder, files);
  return {common.json ? start_json(command.folder, files) : start_text(command.folder, files),
          problem_notes(readings.problems, common.quiet),
          Ending::answered};
}

} // namespace nightsow::planner
