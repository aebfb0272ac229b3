#include "planner/answers/asked_kinds.hpp"

#include "climate/base/problem.hpp"
#include "planner/model/bench_climate.hpp"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <set>
#include <tuple>
#include <utility>

namespace nightsow::planner {

namespace {

using species_rules::Lookup;
using species_rules::RuleFor;

std::string genus_of(const std::string& name) {
  return name.substr(0, name.find(' '));
}

// Every kind in hand whose rule differs, once a bench; genera in the order of the alphabet.
std::vector<AskedKind> in_hand(const LoadedGarden& garden) {
  std::vector<AskedKind> asked;
  std::set<std::pair<std::string, std::string>> seen;
  for (const Packet& packet : garden.packets) {
    const Lookup lookup = garden.catalogue->rule_for(packet.taxon);
    if (!lookup.found) {
      continue;
    }
    const std::string bench = bench_named(garden.garden, packet.bench).name;
    if (seen.emplace(lookup.found->rule_name, bench).second) {
      asked.push_back({lookup.found->rule_name, bench, *lookup.found});
    }
  }
  std::sort(asked.begin(), asked.end(), [](const AskedKind& a, const AskedKind& b) {
    return std::tie(a.name, a.bench) < std::tie(b.name, b.bench);
  });
  return asked;
}

} // namespace

RuleFor typed_rule(const species_rules::Catalogue& catalogue, std::string_view typed) {
  const Lookup lookup = catalogue.rule_for(typed);
  if (lookup.found && lookup.read_as.empty()) {
    return *lookup.found;
  }
  const std::string& nearest = lookup.found ? lookup.read_as : lookup.suggestion;
  throw UsageError(
      {Severity::error,
       "",
       0,
       0,
       "no rule for \"" + std::string(typed) + "\"",
       "a genus or species of the catalogue",
       nearest.empty() ? "see `nightsow rules list`" : "did you mean " + nearest + "?"});
}

std::vector<AskedKind> asked_kinds(const LoadedGarden& garden,
                                   const std::vector<std::string>& names) {
  if (names.empty()) {
    return in_hand(garden);
  }
  const std::vector<AskedKind> all_in_hand = in_hand(garden);
  std::vector<AskedKind> asked;
  for (const std::string& typed : names) {
    const RuleFor rule = typed_rule(*garden.catalogue, typed);
    const std::size_t before = asked.size();
    std::copy_if(all_in_hand.begin(),
                 all_in_hand.end(),
                 std::back_inserter(asked),
                 [&](const AskedKind& kind) {
                   return kind.name == rule.rule_name ||
                          genus_of(kind.rule.accepted) == rule.accepted;
                 });
    if (asked.size() == before) {
      asked.push_back({rule.rule_name, garden.garden.benches.front().name, rule});
    }
  }
  return asked;
}

} // namespace nightsow::planner
