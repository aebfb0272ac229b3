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

/// The texts of a garden's rules/.
struct OwnFiles {
  std::vector<RuleText> rules;
  std::optional<RuleText> sources;
  std::vector<Problem> unreadable; ///< a warning each
};

// A folder, a link that leads nowhere and the like is no file of rules, and no reason to stop.
std::optional<RuleText> text_of(const fs::path& file, std::vector<Problem>& unreadable) {
  try {
    return RuleText{name_in_garden(file), read_whole_file(file, "the garden's rules")};
  } catch (const ProblemError& error) {
    Problem problem = error.problem();
    unreadable.push_back({Severity::warning,
                          name_in_garden(file),
                          0,
                          0,
                          std::move(problem.found),
                          "a file of rules that can be read",
                          "it is left aside and the other rules hold; mend it or move it away"});
    return std::nullopt;
  }
}

OwnFiles own_files(const fs::path& folder) {
  OwnFiles files;
  for (const fs::path& file : json_files(folder / own_rules_folder)) {
    auto text = text_of(file, files.unreadable);
    if (!text) {
      continue;
    }
    if (file.filename() == sources_name) {
      files.sources = std::move(text);
    } else {
      files.rules.push_back(*std::move(text));
    }
  }
  return files;
}

} // namespace

RulesInGarden rules_in_garden(const fs::path& folder) {
  auto catalogue =
      std::make_shared<const species_rules::Catalogue>(species_rules::Catalogue::embedded());
  auto [files, sources, unreadable] = own_files(folder);
  if (files.empty()) {
    return {std::move(catalogue), std::move(unreadable)};
  }
  species_rules::Overlaid overlaid = species_rules::overlaid(std::move(catalogue), files, sources);
  RulesInGarden rules{std::move(overlaid.catalogue), std::move(unreadable)};
  if (sources) {
    list_faults_of(sources->name, overlaid.faults, false, rules.problems);
  }
  for (const RuleText& file : overlaid.refused) {
    list_faults_of(file.name, overlaid.faults, true, rules.problems);
  }
  return rules;
}

void write_own_rules(const fs::path& folder, const std::vector<RuleText>& files) {
  auto catalogue =
      std::make_shared<const species_rules::Catalogue>(species_rules::Catalogue::embedded());
  const auto is_new = [&](const std::string& name) {
    return std::any_of(
        files.begin(), files.end(), [&](const RuleText& file) { return file.name == name; });
  };
  OwnFiles together = own_files(folder);
  std::erase_if(together.rules, [&](const RuleText& there) { return is_new(there.name); });
  together.rules.insert(together.rules.end(), files.begin(), files.end());
  const species_rules::Overlaid overlaid =
      species_rules::overlaid(std::move(catalogue), together.rules, together.sources);
  for (Problem fault : overlaid.faults) {
    if (is_new(fault.where)) {
      fault.remedy = "nothing was written; take the value over into your own file by hand";
      throw InputError(std::move(fault));
    }
  }
  if (!files.empty()) {
    std::error_code failed;
    fs::create_directories(folder / own_rules_folder, failed);
  }
  for (const RuleText& file : files) {
    write_atomically(folder / file.name, file.text);
  }
}

} // namespace nightsow::planner
