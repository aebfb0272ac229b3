#include "planner/garden/sheet_text.hpp"

#include "climate/base/problem.hpp"

#include <algorithm>
#include <array>
#include <string>
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

} // namespace

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

void refuse_empty_sheet(std::string_view where) {
  refuse(where, "the file is empty");
}

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

} // namespace nightsow::planner
