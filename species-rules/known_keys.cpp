#include "species-rules/known_keys.hpp"

#include "climate/base/nearest_name.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace nightsow::species_rules {

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
                                    nearest ? fmt::format("\"{}\" perhaps", nearest->name)
                                            : fmt::format("one of {}", fmt::join(known, ", "))));
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
