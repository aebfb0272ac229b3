#include "species-rules/sources.hpp"

#include "climate/base/located_json.hpp"
#include "species-rules/json_part.hpp"

#include <utility>

namespace nightsow::species_rules {

namespace {

constexpr std::string_view source_form = "an object with kind, author, title and year";

std::optional<Source> read_source(const JsonPart& part, const std::string& id) {
  if (!part.is_object(source_form)) {
    return std::nullopt;
  }
  part.allow_keys({"kind", "author", "title", "year"});
  const auto kind = part.required("kind", "what sort of source it is");
  const auto title = part.required("title", "a title, or what the note is about");
  const auto kind_text = kind ? kind->text("a text") : std::nullopt;
  const auto title_text = title ? title->text("a text") : std::nullopt;
  if (!kind_text || !title_text) {
    return std::nullopt;
  }
  Source source{id, *kind_text, {}, *title_text, {}};
  if (const auto author = part.member("author"); author && !author->is_null()) {
    source.author = author->text("a text or null").value_or("");
  }
  if (const auto year = part.member("year"); year && !year->is_null()) {
    source.year = year->whole_number();
  }
  return source;
}

} // namespace

SourceFile read_source_file(std::string_view text, std::string_view where) {
  const LocatedJson json = LocatedJson::parse(text, where);
  SourceFile file;
  const JsonPart whole{json, file.faults};
  if (!whole.is_object("an object with schema and sources")) {
    return file;
  }
  whole.allow_keys({"schema", "sources"});
  whole.check_schema();
  const auto sources = whole.required("sources", "an object of sources by their id");
  if (!sources || !sources->is_object("an object of sources by their id")) {
    return file;
  }
  for (const std::string& id : sources->keys()) {
    if (auto source = read_source(*sources->member(id), id)) {
      file.sources.emplace(id, *std::move(source));
    }
  }
  return file;
}

} // namespace nightsow::species_rules
