#include "planner/garden/own_rules.hpp"

#include "climate/base/file.hpp"
#include "species-rules/overrides.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>
#include <system_error>
#include <utility>

namespace nightsow::planner {

namespace {

namespace fs = std::filesystem;
using species_rules::RuleText;

constexpr std::string_view sources_name = "sources.json";
constexpr std::size_t most_faults_shown = 5;

std::vector<fs::path> json_files(const fs::path& folder) {
  std::vector<fs::path> files;
  std::error_code none;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder, none)) {
    if (entry.path().extension() == ".json") {
      files.push_back(entry.path());
    }
  }
  std::sort(files.begin(), files.end());
  return files;
}

std::string name_in_garden(const fs::path& file) {
  return fmt::format("{}/{}", own_rules_folder, file.filename().string());
}

void list_faults_of(const std::string& file,
                    const std::vector<Problem>& faults,
                    bool refused,
                    std::vector<Problem>& problems) {
  std::size_t count = 0;
  for (Problem fault : faults) {
    if (fault.where == file && ++count <= most_faults_shown) {
      fault.severity = Severity::warning;
      problems.push_back(std::move(fault));
    }
  }
  if (refused) {
    problems.push_back({Severity::warning,
                        file,
                        0,
                        0,
                        count > most_faults_shown
                            ? fmt::format("{} faults, the first {} listed; the file is left aside",
                                          count,
                                          most_faults_shown)
                            : "the file is left aside",
                        "",
                        "the other rules hold; `nightsow rules check " + file + "` lists all"});
  }
}

} // namespace

RulesInGarden rules_in_garden(const fs::path& folder) {
  auto catalogue =
      std::make_shared<const species_rules::Catalogue>(species_rules::Catalogue::embedded());
  std::vector<RuleText> files;
  std::optional<RuleText> sources;
  for (const fs::path& file : json_files(folder / own_rules_folder)) {
    RuleText text{name_in_garden(file), read_whole_file(file, "the garden's rules")};
    if (file.filename() == sources_name) {
      sources = std::move(text);
    } else {
      files.push_back(std::move(text));
    }
  }
  if (files.empty()) {
    return {std::move(catalogue), {}};
  }
  species_rules::Overlaid overlaid = species_rules::overlaid(std::move(catalogue), files, sources);
  RulesInGarden rules{std::move(overlaid.catalogue), {}};
  if (sources) {
    list_faults_of(sources->name, overlaid.faults, false, rules.problems);
  }
  for (const RuleText& file : overlaid.refused) {
    list_faults_of(file.name, overlaid.faults, true, rules.problems);
  }
  return rules;
}

} // namespace nightsow::planner
