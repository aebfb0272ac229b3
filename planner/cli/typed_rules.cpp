#include "planner/cli/typed_rules.hpp"

#include "planner/cli/typed_values.hpp"

#include <fmt/format.h>

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

namespace {

/// One of the words that rule files use for it.
template <class E>
std::optional<E> maybe_one_of(std::string_view option, const TypedWords::MaybeText& text) {
  if (!text) {
    return std::nullopt;
  }
  std::vector<std::string> allowed;
  allowed.reserve(species_rules::Words<E>::table.size());
  for (const auto& [value, word] : species_rules::Words<E>::table) {
    allowed.emplace_back(word);
  }
  return species_rules::Words<E>::table.at(typed_word(option, *text, allowed)).first;
}

std::string maybe_text(std::string_view option, const TypedWords::MaybeText& text) {
  return text ? typed_text(option, *text) : std::string{};
}

std::string typed_taxon(std::string_view command, const TypedWords& typed) {
  if (typed.taxon.empty()) {
    wrong_use(std::string{command}, "no taxon is given", "a genus or species", "add one");
  }
  return fmt::format("{}", fmt::join(typed.taxon, " "));
}

} // namespace

RulesListCommand typed_rules_list(const TypedWords& typed) {
  RulesListCommand command;
  RulesListRequest& request = command.request;
  request.family = maybe_text("--family", typed.family);
  request.start = maybe_one_of<species_rules::Start>("--start", typed.start);
  request.growth = maybe_one_of<species_rules::Growth>("--growth", typed.growth);
  request.mat = maybe_one_of<species_rules::Mat>("--mat", typed.mat);
  request.seed_size = maybe_one_of<species_rules::SeedSize>("--seed-size", typed.seed_size);
  request.first_rest = maybe_one_of<species_rules::FirstRestWay>("--first-rest", typed.first_rest);
  request.evidence_below =
      maybe_one_of<species_rules::Evidence>("--evidence-below", typed.evidence_below);
  request.text = fmt::format("{}", fmt::join(typed.text, " "));
  command.in_hand = typed.in_hand;
  return command;
}

RulesShowCommand typed_rules_show(const TypedWords& typed) {
  return {typed_taxon("nightsow rules show", typed), typed.why};
}

RulesCheckCommand typed_rules_check(const TypedWords& typed) {
  if (typed.files.empty()) {
    wrong_use("nightsow rules check", "no file is given", "a file of rules", "add one");
  }
  return {{typed.files.begin(), typed.files.end()}};
}

RulesExportCommand typed_rules_export(const TypedWords& typed) {
  return {typed_taxon("nightsow rules export", typed)};
}

RulesGapsCommand typed_rules_gaps(const TypedWords& typed) {
  return {{maybe_text("--family", typed.family), std::nullopt, typed.all}, typed.in_hand};
}

} // namespace nightsow::planner
