#include "planner/garden/table_text.hpp"

#include "planner/garden/plain_text.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <utility>

namespace nightsow::planner {

namespace {

[[noreturn]] void refuse(std::string_view where, std::string found) {
  throw InputError({Severity::error,
                    std::string(where),
                    0,
                    0,
                    std::move(found),
                    "a table as text, the first line its header",
                    "export the sheet as CSV (UTF-8)"});
}

// What a spreadsheet saves when it is not asked for CSV.
void refuse_other_files(std::string_view text, std::string_view where) {
  if (text.starts_with("PK\x03\x04")) {
    refuse(where, "this is a spreadsheet's own file");
  }
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) {
    refuse(where, "this text is in UTF-16");
  }
  if (text.find('\0') != std::string_view::npos) {
    refuse(where, "this is no text");
  }
}

// The separator that stands most often in the first line that is not blank, quoted parts left out.
char find_separator(std::string_view text) {
  const std::size_t begin = std::min(text.find_first_not_of("\r\n"), text.size());
  const std::string_view line = text.substr(begin, text.find_first_of("\r\n", begin) - begin);
  constexpr std::array<char, 3> separators{',', ';', '\t'};
  std::array<std::size_t, 3> counts{};
  bool quoted = false;
  for (const char c : line) {
    quoted = quoted != (c == '"');
    for (std::size_t i = 0; i < separators.size() && !quoted; ++i) {
      counts[i] += c == separators[i] ? 1U : 0U;
    }
  }
  const auto* most = std::max_element(counts.begin(), counts.end());
  return separators[static_cast<std::size_t>(most - counts.begin())];
}

} // namespace

TableText table_text_of(std::string_view text,
                        std::string_view where,
                        std::vector<Problem>& problems) {
  refuse_other_files(text, where);
  if (is_utf8(text)) {
    return {std::string(text), find_separator(text)};
  }
  problems.push_back({Severity::note,
                      std::string(where),
                      0,
                      0,
                      "the file is not UTF-8 and was read as Latin-1 (Windows-1252)",
                      "",
                      "export it as CSV UTF-8 if names look wrong"});
  TableText table{utf8_from_windows_1252(text), ','};
  table.separator = find_separator(table.text);
  return table;
}

void refuse_empty_table(std::string_view where) {
  refuse(where, "the file is empty");
}

} // namespace nightsow::planner
