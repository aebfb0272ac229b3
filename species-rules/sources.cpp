#include "species-rules/sources.hpp"

#include "climate/base/json_node.hpp"
#include "climate/base/located_json.hpp"
#include "species-rules/known_keys.hpp"

#include <utility>

namespace nightsow::species_rules {

namespace {

constexpr std::string_view source_form = "an object with kind, author, title and year";
constexpr std::string_view sources_form = "an object of sources by their id";
constexpr int oldest_year = 1500;
constexpr int latest_year = 2200;

Source read_source(const JsonNode& part, std::vector<Problem>& faults) {
  note_unknown_keys(part, source_form, {"kind", "author", "title", "year"}, faults);
  Source source;
  source.id = part.name();
  source.kind = required(part, "kind", "what sort of source it is").some_text("a text");
  source.title = required(part, "title", "a title, or what the note is about").some_text("a text");
  if (const auto author = part.member("author")) {
    source.author = author->some_text("a text or null");
  }
  if (const auto year = part.member("year")) {
    source.year = year->whole_number(oldest_year, latest_year);
  }
  return source;
}

} // namespace

SourceFile read_source_file(std::string_view text, std::string_view where) {
  const LocatedJson json = LocatedJson::parse(text, where);
  SourceFile file;
  const auto read = read_or_note(file.faults, [&] {
    const JsonNode whole{json};
    note_unknown_keys(
        whole, "an object with schema and sources", {"schema", "sources"}, file.faults);
    check_schema(whole, file.faults);
    return required(whole, "sources", sources_form).members(sources_form);
  });
  for (const JsonNode& part : read.value_or(std::vector<JsonNode>{})) {
    if (auto source = read_or_note(file.faults, [&] { return read_source(part, file.faults); })) {
      file.sources.emplace(part.name(), *std::move(source));
    }
  }
  return file;
}

} // namespace nightsow::species_rules
