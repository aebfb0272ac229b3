#include "climate/base/file.hpp"
#include "planner/answers/rules_check.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/cli/run_rules.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/to_json.hpp"

#include <algorithm>
#include <filesystem>
#include <iterator>
#include <memory>
#include <optional>
#include <string_view>
#include <system_error>
#include <utility>
#include <vector>

namespace nightsow::planner {

namespace {

namespace fs = std::filesystem;
using species_rules::RuleText;

constexpr std::string_view sources_name = "sources.json";

RuleText text_of(const fs::path& file) {
  return {file.string(), read_whole_file(file, "nightsow rules check")};
}

// Sources lie beside the rules that name them.
std::optional<RuleText> sources_in(const fs::path& folder) {
  const fs::path sources = folder / sources_name;
  std::error_code unknown;
  return fs::exists(sources, unknown) ? std::optional{text_of(sources)} : std::nullopt;
}

/// Files of one folder, in their order.
struct FolderFiles {
  fs::path folder;
  std::vector<RuleText> rules;
};

std::vector<FolderFiles> by_folder(const std::vector<fs::path>& files) {
  std::vector<FolderFiles> folders;
  for (const fs::path& file : files) {
    const fs::path folder = file.parent_path();
    auto known = std::ranges::find(folders, folder, &FolderFiles::folder);
    if (known == folders.end()) {
      known = folders.insert(folders.end(), {folder, {}});
    }
    if (file.filename() != sources_name) {
      known->rules.push_back(text_of(file));
    }
  }
  return folders;
}

void append(RulesCheckAnswer& answer, RulesCheckAnswer more) {
  std::ranges::move(more.files, std::back_inserter(answer.files));
  std::ranges::move(more.faults, std::back_inserter(answer.faults));
}

} // namespace

Outcome run(const RulesCheckCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  const auto catalogue =
      std::make_shared<const species_rules::Catalogue>(species_rules::Catalogue::embedded());
  RulesCheckAnswer answer;
  for (const FolderFiles& files : by_folder(command.files)) {
    append(answer, check_rule_files(catalogue, files.rules, sources_in(files.folder)));
  }
  return {common.json ? to_json(answer) : rules_check_text(answer, style_of(common, around)),
          "",
          answer.faults.empty() ? Ending::answered : Ending::faults_found};
}

} // namespace nightsow::planner
