#pragma once

#include "species-rules/catalogue.hpp"
#include "species-rules/rule_fields.hpp"
#include "species-rules/rule_file.hpp"

#include <string>
#include <string_view>
#include <vector>

// Rule texts for tests: a family with every default, so that a test shows only what it is about.
namespace nightsow::species_rules::rule_texts {

/// Writes a value for every field of the table: lowest numbers and first words, so that a new field
/// needs no new line here. But ceiling and day limit are the highest, so that any night limit fits
/// under them.
class DefaultsWriter {
public:
  void operator()(const Field& field, const std::optional<Estimate>& /*member*/) {
    const bool is_ceiling = field.key == "ceiling_c" || field.key == "day_limit_c";
    const std::string number = std::to_string(is_ceiling ? field.highest : field.lowest);
    add(field, number + R"(, "low": )" + number + R"(, "high": )" + number);
  }

  template <class E>
  void operator()(const Field& field, const std::optional<Choice<E>>& /*member*/) {
    add(field, '"' + std::string{Words<E>::table.front().second} + '"');
  }

  void operator()(const Field& /*field*/, const std::vector<Remark>& /*member*/) {}

  [[nodiscard]] std::string text() const { return '{' + text_ + '}'; }

private:
  void add(const Field& field, const std::string& value) {
    text_ += (text_.empty() ? "\"" : ", \"") + std::string{field.key} + R"(": {"value": )" + value +
             R"(, "evidence": "memory"})";
  }

  std::string text_;
};

inline std::string family_defaults() {
  DefaultsWriter writer;
  const Rule any;
  for_each_field(any, writer);
  return writer.text();
}

/// The genera begin on line 3.
inline std::string family_text(std::string_view genera,
                               std::string_view family = "Testaceae",
                               const std::string& rule = family_defaults()) {
  return R"({"schema": 1, "family": ")" + std::string{family} + R"(", "rule": )" + rule +
         ",\n\"genera\": [\n" + std::string{genera} + "\n]}";
}

inline Sources one_source() {
  return {{"book", {"book", "book", "A. Author", "A title", 2004}}};
}

inline RuleText one_source_text() {
  return {"sources.json",
          R"({"schema": 1, "sources": {"book": {"kind": "book", "author": "A. Author",
              "title": "A title", "year": 2004}}})"};
}

inline FamilyFile read(const std::string& text) {
  return read_family_file(text, "Testaceae.json", one_source());
}

inline std::vector<std::string> texts_of(const std::vector<Problem>& faults) {
  std::vector<std::string> texts;
  texts.reserve(faults.size());
  for (const Problem& fault : faults) {
    texts.push_back(to_text(fault));
  }
  return texts;
}

/// A catalogue of one family with these genera.
inline Catalogue catalogue_of(std::string_view genera) {
  const RuleText file{"Testaceae.json", family_text(genera)};
  return Catalogue::load(std::span{&file, 1}, one_source_text());
}

/// The message with which the catalogue refuses these family files, or nothing.
inline std::string refusal_of(const std::vector<std::string>& files) {
  std::vector<RuleText> texts;
  texts.reserve(files.size());
  for (const std::string& file : files) {
    texts.push_back({"file" + std::to_string(texts.size() + 1) + ".json", file});
  }
  try {
    static_cast<void>(Catalogue::load(texts, one_source_text()));
    return {};
  } catch (const InputError& error) {
    return error.what();
  }
}

} // namespace nightsow::species_rules::rule_texts
