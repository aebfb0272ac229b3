#include "species-rules/known_keys.hpp"

#include "climate/base/nearest_name.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <optional>

namespace nightsow::species_rules {

namespace {

// More than this many keys say nothing to a reader.
constexpr std::size_t most_keys_listed = 12;

std::string expected_key(const std::vector<std::string>& known,
                         const std::optional<NearestName>& nearest) {
  if (nearest) {
    return fmt::format("\"{}\" perhaps", nearest->name);
  }
  return known.size() > most_keys_listed
             ? fmt::format("one of {} keys; `nightsow rules schema` lists them", known.size())
             : fmt::format("one of {}", fmt::join(known, ", "));
}

} // namespace

void note_unknown_keys(const JsonNode& object,
                       std::string_view form,
                       const std::vector<std::string>& known,
                       std::vector<Problem>& faults) {
  for (const JsonNode& member : object.members(form)) {
    if (std::ranges::find(known, member.name()) != known.end()) {
      continue;
    }
    const auto nearest = nearest_name(member.name(), known);
    faults.push_back(member.problem(fmt::format("unknown key \"{}\"", member.name()),
                                    expected_key(known, nearest)));
  }
}

JsonNode required(const JsonNode& object, std::string_view key, std::string_view form) {
  auto part = object.member_or_null(key);
  if (!part) {
    const std::string& name = object.name();
    object.fail(fmt::format("{} has no \"{}\"", name.empty() ? "the file" : name, key),
                std::string{form},
                "");
  }
  return *std::move(part);
}

void check_schema(const JsonNode& file, std::vector<Problem>& faults) {
  static_cast<void>(read_or_note(
      faults, [&] { return required(file, "schema", "\"schema\": 1").whole_number(1, 1); }));
}

} // namespace nightsow::species_rules
