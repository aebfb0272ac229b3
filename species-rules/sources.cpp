#include "species-rules/sources.hpp"

#include "climate/base/json_node.hpp"
#include "climate/base/located_json.hpp"
#include "species-rules/known_keys.hpp"

#include <algorithm>
#include <array>
#include <span>
#include <utility>

namespace nightsow::species_rules {

namespace {

constexpr std::string_view source_form = "an object with kind, author, title and year";
constexpr std::array<std::string_view, 6> publications{
    "journal article", "book", "book chapter", "thesis", "proceedings", "preprint"};
// Growers and sellers: kind and subject are all that is told of them.
constexpr std::array<std::string_view, 6> not_named{"seed house note",
                                                    "nursery note",
                                                    "grower's page",
                                                    "grower's list post",
                                                    "grower's forum post",
                                                    "specialist page"};
constexpr std::string_view sources_form = "an object of sources by their id";
constexpr int oldest_year = 1500;
constexpr int latest_year = 2200;

bool is_of(std::span<const std::string_view> kinds, const Source& source) {
  return std::ranges::find(kinds, source.kind) != kinds.end();
}

void check_source(const JsonNode& part, const Source& source, std::vector<Problem>& faults) {
  if (is_of(publications, source) && !source.year && source.undated.empty()) {
    faults.push_back(part.problem(source.id + " has no \"year\"",
                                  "the year in which a publication came out",
                                  "look it up, or say in \"undated\" why none is known"));
  }
  if (source.year && !source.undated.empty()) {
    faults.push_back(part.problem(
        source.id + " has both \"year\" and \"undated\"", "one of them", "take \"undated\" out"));
  }
  if (is_of(not_named, source) && !source.author.empty()) {
    faults.push_back(part.problem(source.id + " names an author",
                                  "a grower or seller by kind and subject only",
                                  "take \"author\" out"));
  }
}

Source read_source(const JsonNode& part, std::vector<Problem>& faults) {
  note_unknown_keys(part, source_form, {"kind", "author", "title", "year", "undated"}, faults);
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
  if (const auto undated = part.member("undated")) {
    source.undated = undated->some_text("why no year is known");
  }
  check_source(part, source, faults);
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
