#include "climate/base/file.hpp"
#include "planner/answers/rules_check.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/cli/run_rules.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/to_json.hpp"

#include <filesystem>
#include <memory>
#include <optional>
#include <system_error>
#include <vector>

namespace nightsow::planner {

namespace {

namespace fs = std::filesystem;
using species_rules::RuleText;

RuleText text_of(const fs::path& file) {
  return {file.string(), read_whole_file(file, "nightsow rules check")};
}

// Sources lie beside the rules that name them.
std::optional<RuleText> sources_beside(const fs::path& file) {
  const fs::path sources = file.parent_path() / "sources.json";
  std::error_code unknown;
  return fs::exists(sources, unknown) ? std::optional{text_of(sources)} : std::nullopt;
}

} // namespace

Outcome run(const RulesCheckCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  std::vector<RuleText> files;
  for (const fs::path& file : command.files) {
    files.push_back(text_of(file));
  }
  const auto catalogue =
      std::make_shared<const species_rules::Catalogue>(species_rules::Catalogue::embedded());
  const RulesCheckAnswer answer =
      check_rule_files(catalogue, files, sources_beside(command.files.front()));
  return {common.json ? to_json(answer) : rules_check_text(answer, style_of(common, around)),
          "",
          answer.faults.empty() ? Ending::answered : Ending::faults_found};
}

} // namespace nightsow::planner
