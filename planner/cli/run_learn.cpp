#include "planner/cli/run_learn.hpp"

#include "climate/base/file.hpp"
#include "planner/answers/learn.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/cli/problem_notes.hpp"
#include "planner/cli/saved_plans.hpp"
#include "planner/garden/own_rules.hpp"
#include "planner/garden/shared_counts.hpp"
#include "planner/render/learn.hpp"
#include "planner/render/review.hpp"

#include <utility>
#include <vector>

namespace nightsow::planner {

namespace {

Outcome learned(const LearnCommand& command,
                const CommonOptions& common,
                const Surroundings& around,
                const LoadedGarden& garden) {
  LearnRequest request;
  request.taxa = command.taxa;
  for (const std::filesystem::path& file : command.others) {
    request.others.push_back(read_shared_counts(read_whole_file(file, "--import"), file.string()));
  }
  LearnAnswer answer = learn(garden, request);
  if (command.write) {
    std::vector<species_rules::RuleText> files;
    for (OfferedRules& offer : answer.offered) {
      files.push_back({offer.file, offer.text});
      offer.written = true;
    }
    write_own_rules(common.garden, files);
  }
  if (!command.share.empty()) {
    write_atomically(command.share, shared_counts_text(counts_to_share(garden)));
    answer.shared_with = command.share.string();
  }
  return {common.json ? learn_json(answer) : learn_text(answer, style_of(common, around)),
          "",
          Ending::answered};
}

} // namespace

Outcome run(const LearnCommand& command, const CommonOptions& common, const Surroundings& around) {
  return about_garden(common, around, [&](const LoadedGarden& garden) {
    return learned(command, common, around, garden);
  });
}

Outcome run(const LearnTrialCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  return about_garden(common, around, [&](const LoadedGarden& garden) {
    const TrialAnswer answer = plan_trial(garden, command.request);
    return Outcome{common.json ? trial_json(answer) : trial_text(answer, style_of(common, around)),
                   "",
                   Ending::answered};
  });
}

Outcome run(const ReviewCommand& command, const CommonOptions& common, const Surroundings& around) {
  return about_garden(common, around, [&](const GardenFolder& folder, const LoadedGarden& garden) {
    ReviewRequest request = command.request;
    SavedPlans saved = all_saved_plans(common.garden, garden.today);
    request.saved = std::move(saved.plans);
    const ReviewAnswer answer = review(folder, garden, request);
    return Outcome{common.json ? review_json(answer)
                               : review_text(answer, style_of(common, around)),
                   problem_notes(saved.problems, common.quiet),
                   Ending::answered};
  });
}

} // namespace nightsow::planner
