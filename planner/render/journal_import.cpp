#include "planner/render/journal_import.hpp"

#include "planner/journal/entry_words.hpp"
#include "planner/render/journal_words.hpp"
#include "planner/render/json_parts.hpp"
#include "planner/render/table.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <map>

namespace nightsow::planner {

namespace {

std::map<EntryKind, std::size_t> kinds_of(const std::vector<Entry>& entries) {
  std::map<EntryKind, std::size_t> kinds;
  for (const Entry& entry : entries) {
    ++kinds[kind_of(entry.value)];
  }
  return kinds;
}

std::string counted(std::size_t number, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", number, number == 1 ? one : many);
}

/// "4 sowings, 8 counts"
std::string kinds_text(const std::vector<Entry>& entries) {
  std::string text;
  for (const auto& [kind, number] : kinds_of(entries)) {
    const std::string word = spoken(journal_word(kind));
    text += (text.empty() ? "" : ", ") + counted(number, word, word + "s");
  }
  return text;
}

std::string range_text(EntryId first, EntryId last, std::string_view between) {
  return first == last ? fmt::format("{}", first) : fmt::format("{}{}{}", first, between, last);
}

std::string known_text(const std::vector<EntryKnown>& known) {
  if (known.empty()) {
    return "";
  }
  std::string text = paragraph("",
                               fmt::format("{} what is there already, the first in line {}; "
                                           "nothing is written twice.",
                                           counted(known.size(), "row says", "rows say"),
                                           known.front().line));
  for (const EntryKnown& row : known) {
    if (row.undone) {
      text += fmt::format("  line {}: entry {}, undone since; it stays so\n", row.line, row.entry);
    }
  }
  return text;
}

// What was only tried has no numbers yet.
std::string entered_sentence(const ImportSummary& summary) {
  const std::size_t number = summary.entered.size();
  const auto first = summary.entered.front().id;
  const auto last = summary.entered.back().id;
  const std::string numbers = summary.tried ? ""
                                            : fmt::format("; {} {}",
                                                          first == last ? "entry" : "entries",
                                                          range_text(first, last, " to "));
  return fmt::format("{} {} from {}: {}{}.",
                     counted(number, "entry", "entries"),
                     summary.tried ? "would be written down"
                     : number == 1 ? "is written down"
                                   : "are written down",
                     summary.file,
                     kinds_text(summary.entered),
                     numbers);
}

} // namespace

std::string import_text(const ImportSummary& summary) {
  std::string text = summary.entered.empty() ? fmt::format("Nothing new in {}.\n", summary.file)
                                             : paragraph("", entered_sentence(summary));
  text += known_text(summary.known);
  if (summary.left_out > 0) {
    text += fmt::format("{} left out for {} faults.\n",
                        counted(summary.left_out, "row is", "rows are"),
                        summary.left_out == 1 ? "its" : "their");
  }
  if (!summary.entered.empty() && !summary.tried) {
    text += fmt::format("Not so? nightsow journal undo {}\n",
                        range_text(summary.entered.front().id, summary.entered.back().id, "-"));
  }
  return text;
}

std::string import_json(const ImportSummary& summary) {
  Json json = json_top();
  json["file"] = summary.file;
  json["written"] = !summary.tried;
  json["entered"] = Json::array();
  for (const Entry& entry : summary.entered) {
    json["entered"].push_back(entry.id);
  }
  json["kinds"] = Json::object();
  for (const auto& [kind, number] : kinds_of(summary.entered)) {
    json["kinds"][std::string(journal_word(kind))] = number;
  }
  json["known"] = Json::array();
  for (const EntryKnown& row : summary.known) {
    json["known"].push_back({{"line", row.line}, {"entry", row.entry}, {"undone", row.undone}});
  }
  json["left_out"] = summary.left_out;
  json["faults"] = Json::array();
  for (const Problem& fault : summary.faults) {
    json["faults"].push_back({{"line", fault.line},
                              {"column", fault.column == 0 ? Json(nullptr) : Json(fault.column)},
                              {"found", fault.found},
                              {"expected", json_text(fault.expected)}});
  }
  return json_dump(json);
}

} // namespace nightsow::planner
