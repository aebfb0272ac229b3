#include "planner/cli/saved_plans.hpp"

#include "climate/base/file.hpp"
#include "climate/base/folder_lock.hpp"
#include "planner/answers/plan_marks.hpp"
#include "planner/render/saved.hpp"

#include <fmt/format.h>

#include <charconv>
#include <set>
#include <string>
#include <system_error>
#include <utility>

namespace nightsow::planner {

namespace {

namespace fs = std::filesystem;

bool is_there(const fs::path& path) {
  std::error_code unknown;
  return fs::exists(path, unknown);
}

// Messages name it as the garden does.
SavedPlan read_saved(const fs::path& garden, int season) {
  const fs::path file = saved_plan_file(season);
  SavedPlan plan = read_saved_plan(read_whole_file(garden / file, "the garden"), file.string());
  if (plan.season != season) {
    throw InputError({Severity::error,
                      file.string(),
                      0,
                      0,
                      fmt::format("this is a plan of season {}", plan.season),
                      fmt::format("one of season {}", season),
                      "give the file the name of its season; it was not touched"});
  }
  return plan;
}

void read_into(const fs::path& garden, int season, Date today, SavedPlans& all) {
  try {
    SavedPlan plan = read_saved(garden, season);
    if (plan.on <= today) {
      all.plans.push_back(std::move(plan));
      return;
    }
    all.problems.push_back({Severity::note,
                            saved_plan_file(season).string(),
                            0,
                            0,
                            fmt::format("the plan saved is of {}, after today, {}",
                                        format_iso_date(plan.on),
                                        format_iso_date(today)),
                            "",
                            "it is left aside"});
  } catch (const InputError& error) {
    Problem unread = error.problem();
    unread.severity = Severity::warning;
    unread.found = "the saved plan is left aside: " + unread.found;
    if (unread.remedy.empty()) {
      unread.remedy = "move the file elsewhere; it was not touched";
    }
    all.problems.push_back(std::move(unread));
  }
}

} // namespace

SavedPlans saved_plans(const fs::path& garden, std::optional<int> season, Date today) {
  const int from = season ? *season : year_of(today) - 1;
  const int to = season ? *season + 1 : year_of(today) + 1;
  SavedPlans all;
  for (int year = from; year <= to; ++year) {
    if (is_there(garden / saved_plan_file(year))) {
      read_into(garden, year, today, all);
    }
  }
  return all;
}

SavedPlans all_saved_plans(const fs::path& garden, Date today) {
  const fs::path folder = (garden / saved_plan_file(year_of(today))).parent_path();
  std::set<int> seasons;
  std::error_code none;
  for (const auto& entry : fs::directory_iterator(folder, none)) {
    const std::string name = entry.path().stem().string();
    int season = 0;
    const auto [end, fault] = std::from_chars(name.data(), name.data() + name.size(), season);
    if (fault == std::errc{} && end == name.data() + name.size() &&
        entry.path() == garden / saved_plan_file(season)) {
      seasons.insert(season);
    }
  }
  SavedPlans all;
  for (const int season : seasons) {
    read_into(garden, season, today, all);
  }
  return all;
}

fs::path save_plan(const fs::path& garden, const LoadedGarden& loaded, PlanAnswer& answer) {
  fs::path file = garden / saved_plan_file(answer.season);
  std::error_code failure;
  fs::create_directories(file.parent_path(), failure);
  if (failure) {
    throw StorageError({Severity::error,
                        file.parent_path().string(),
                        0,
                        0,
                        "cannot make the folder: " + failure.message(),
                        "",
                        "check the garden's folder and its permissions"});
  }
  const FolderLock lock{file.parent_path()};
  const int before = is_there(file) ? read_saved(garden, answer.season).saves : 0;
  answer.saves = before + 1;
  write_atomically(file, saved_plan_text(answer, plan_marks(loaded)));
  return file;
}

} // namespace nightsow::planner
