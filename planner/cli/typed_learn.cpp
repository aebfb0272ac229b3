#include "planner/cli/typed_learn.hpp"

#include "planner/cli/typed_values.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cstdint>
#include <string>
#include <string_view>

namespace nightsow::planner {

namespace {

std::uint32_t seed_number(const std::string& text) {
  std::uint32_t number = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (fault != std::errc{} || end != text.data() + text.size()) {
    wrong_use("--seed", shown(text) + " is no such number", "a whole number from 0 to 4294967295");
  }
  return number;
}

void refuse_with_trial(const TypedWords& typed) {
  for (const auto& [is_typed, name] : {std::pair{typed.write, "--write"},
                                       std::pair{typed.share.has_value(), "--share"},
                                       std::pair{!typed.others.empty(), "--import"},
                                       std::pair{!typed.taxon.empty(), "TAXON"}}) {
    if (is_typed) {
      wrong_use(name, "does not go with --trial", "", "leave out one or the other");
    }
  }
}

// "Lachenalia mutabilis" is one taxon in two words: what begins with a small letter belongs to the
// word before it.
std::vector<std::string> taxa_of(const std::vector<std::string>& words) {
  std::vector<std::string> taxa;
  for (const std::string& word : words) {
    const bool is_epithet = !word.empty() && word[0] >= 'a' && word[0] <= 'z';
    if (is_epithet && !taxa.empty()) {
      taxa.back() += " " + word;
    } else {
      taxa.push_back(typed_text("TAXON", word));
    }
  }
  return taxa;
}

} // namespace

Command typed_learn(const TypedWords& typed) {
  if (typed.seed_number && !typed.plan_trial) {
    wrong_use("--seed", "draws the pots of a trial", "", "add --trial");
  }
  if (typed.plan_trial) {
    refuse_with_trial(typed);
    LearnTrialCommand command;
    if (typed.seed_number) {
      command.request.seed_number = seed_number(*typed.seed_number);
    }
    return command;
  }
  LearnCommand command;
  command.taxa = taxa_of(typed.taxon);
  command.write = typed.write;
  if (typed.share) {
    command.share = typed_text("--share", *typed.share);
  }
  for (const std::string& file : typed.others) {
    command.others.emplace_back(typed_text("--import", file));
  }
  return command;
}

} // namespace nightsow::planner
