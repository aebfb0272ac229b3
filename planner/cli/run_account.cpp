#include "planner/cli/run_account.hpp"

#include "climate/base/nearest_name.hpp"
#include "planner/answers/account_report.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/cli/typed_values.hpp"
#include "planner/journal/who_is_meant.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/to_json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

namespace nightsow::planner {

namespace {

constexpr std::size_t names_shown = 8;

// What a sowing may be called, each once: taxa, then packets.
std::vector<std::string> names_of(const Records& records) {
  std::vector<std::string> names;
  const auto add = [&names](const std::string& name) {
    if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end()) {
      names.push_back(name);
    }
  };
  for (const RecordedSowing& sowing : records.sowings) {
    add(sowing.taxon);
    add(sowing.taxon.substr(0, sowing.taxon.find(' ')));
  }
  for (const RecordedSowing& sowing : records.sowings) {
    add(sowing.packet_id);
  }
  return names;
}

[[noreturn]] void refuse(const std::string& name, const Records& records) {
  const std::string found = fmt::format("no sowing is called {}", shown(name));
  if (records.sowings.empty()) {
    wrong_use("nightsow account",
              found + ", and none is written down yet",
              "a sowing in the journal",
              "nightsow sow NAME SEEDS begins it");
  }
  std::vector<std::string> names = names_of(records);
  const auto nearest = nearest_name(name, names);
  names.resize(std::min(names.size(), names_shown));
  wrong_use("nightsow account",
            found,
            "the number of a sowing, the id of its packet, or its taxon, such as " + listed(names),
            nearest ? fmt::format("did you mean {}?", nearest->name)
                    : "nightsow journal list shows what was sown");
}

std::vector<EntryId> sowings_meant(const std::vector<std::string>& words, const Records& records) {
  std::vector<EntryId> ids;
  if (words.empty()) {
    return ids;
  }
  // "Albuca spiralis" in two words, else each word by itself: "12 14".
  std::string name;
  for (const std::string& word : words) {
    name += (name.empty() ? "" : " ") + word;
  }
  std::vector<RecordedSowing> found = sowings_called(name, records);
  if (found.empty() && words.size() > 1) {
    for (const std::string& word : words) {
      const std::vector<RecordedSowing> one = sowings_called(word, records);
      if (one.empty()) {
        refuse(name, records);
      }
      found.insert(found.end(), one.begin(), one.end());
    }
  }
  if (found.empty()) {
    refuse(name, records);
  }
  for (const RecordedSowing& sowing : found) {
    ids.push_back(sowing.id);
  }
  return ids;
}

} // namespace

Outcome run(const AccountCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  return about_garden(common, around, [&](const LoadedGarden& garden) {
    AccountRequest request;
    request.sowings = sowings_meant(command.sowing, garden.records);
    request.all = command.all;
    request.deciding = !request.sowings.empty();
    const AccountAnswer answer = account_report(garden, request);
    return Outcome{common.json ? to_json(answer) : account_text(answer, style_of(common, around)),
                   "",
                   Ending::answered};
  });
}

} // namespace nightsow::planner
