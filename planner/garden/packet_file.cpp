#include "planner/garden/packet_file.hpp"

#include "climate/base/csv.hpp"
#include "climate/base/nearest_name.hpp"
#include "planner/garden/packet_columns.hpp"
#include "planner/garden/plain_text.hpp"
#include "planner/garden/settle_packets.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
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

class RowReader {
public:
  RowReader(std::string_view where,
            std::span<const std::string> benches,
            std::vector<Problem>& problems)
      : where_(where), benches_(benches), problems_(problems) {}

  /// Empty when the row is blank or has to be left out.
  std::optional<Packet> read(const CsvReader& row, const MatchedHeader& header) {
    const auto cells = row.fields();
    if (std::all_of(cells.begin(), cells.end(), [](auto c) { return trimmed(c).empty(); })) {
      return std::nullopt;
    }
    Packet packet;
    packet.line = row.line();
    if (!no_cells_beyond(row, header) || !read_cells(row, header, packet)) {
      return std::nullopt;
    }
    if (packet.seeds.high && *packet.seeds.high == 0.0) {
      report(Severity::note,
             row.line(),
             1,
             fmt::format("{} has no seeds", packet.taxon),
             "",
             "the row is left out");
      return std::nullopt;
    }
    return packet;
  }

private:
  bool no_cells_beyond(const CsvReader& row, const MatchedHeader& header) {
    for (std::size_t i = header.columns.size(); i < row.fields().size(); ++i) {
      if (!trimmed(row.fields()[i]).empty()) {
        report(Severity::warning,
               row.line(),
               row.column(i),
               fmt::format("\"{}\" stands beyond the last column", trimmed(row.fields()[i])),
               fmt::format("{} cells as in the header", header.columns.size()),
               "the row is left out; put cells that hold the separator in double quotes");
        return false;
      }
    }
    return true;
  }

  bool read_cells(const CsvReader& row, const MatchedHeader& header, Packet& packet) {
    for (std::size_t i = 0; i < header.columns.size(); ++i) {
      const PacketColumn* column = header.columns[i];
      if (column == nullptr) {
        continue;
      }
      const bool given = i < row.fields().size();
      const std::string_view cell = given ? trimmed(row.fields()[i]) : std::string_view{};
      const std::size_t place = given ? row.column(i) : 0;
      if (!read_cell(*column, cell, row.line(), place, packet)) {
        return false;
      }
      if (column->name == "bench") {
        settle_bench(packet, row.line(), place);
      }
    }
    return true;
  }

  // False when the row cannot be used without this cell.
  bool read_cell(const PacketColumn& column,
                 std::string_view cell,
                 std::size_t line,
                 std::size_t place,
                 Packet& packet) {
    if (cell.empty() ? !column.required : column.read(packet, cell)) {
      return true;
    }
    report(Severity::warning,
           line,
           place,
           cell.empty() ? fmt::format("{} is empty", column.name)
                        : fmt::format("{} is \"{}\"", column.name, cell),
           std::string(column.expected),
           column.required ? "the row is left out until it is corrected"
                           : "it counts as not given until it is corrected");
    return !column.required;
  }

  void settle_bench(Packet& packet, std::size_t line, std::size_t place) {
    if (packet.bench.empty()) {
      return;
    }
    const auto nearest = nearest_name(packet.bench, benches_);
    if (nearest && nearest->distance == 0) {
      packet.bench = nearest->name;
      return;
    }
    report(Severity::warning,
           line,
           place,
           fmt::format("the garden has no bench \"{}\"", packet.bench),
           fmt::format("one of: {}", fmt::join(benches_, ", ")),
           nearest ? fmt::format("did you mean \"{}\"? the packet stands on the first bench",
                                 nearest->name)
                   : "the packet stands on the first bench");
    packet.bench.clear();
  }

  void report(Severity severity,
              std::size_t line,
              std::size_t column,
              std::string found,
              std::string expected,
              std::string remedy) {
    problems_.push_back({severity,
                         std::string(where_),
                         line,
                         column,
                         std::move(found),
                         std::move(expected),
                         std::move(remedy)});
  }

  std::string_view where_;
  std::span<const std::string> benches_;
  std::vector<Problem>& problems_;
};

} // namespace

PacketFile read_packet_file(std::string_view text,
                            std::string_view where,
                            std::span<const std::string> benches) {
  refuse_other_files(text, where);
  PacketFile file;
  std::string converted;
  if (!is_utf8(text)) {
    converted = utf8_from_windows_1252(text);
    text = converted;
    file.problems.push_back({Severity::note,
                             std::string(where),
                             0,
                             0,
                             "the file is not UTF-8 and was read as Latin-1 (Windows-1252)",
                             "",
                             "export it as CSV UTF-8 if names look wrong"});
  }
  CsvReader rows{text, find_separator(text), where};
  if (!rows.next()) {
    refuse(where, "the file is empty");
  }
  const MatchedHeader header = match_header(rows, where);
  file.problems.insert(file.problems.end(), header.problems.begin(), header.problems.end());
  RowReader reader{where, benches, file.problems};
  while (rows.next()) {
    if (auto packet = reader.read(rows, header)) {
      file.packets.push_back(*std::move(packet));
    }
  }
  give_ids(file.packets, where, file.problems);
  settle_harvests(file.packets, where, file.problems);
  return file;
}

std::string packet_header() {
  std::string header;
  for (const PacketColumn& column : packet_columns()) {
    header += header.empty() ? "" : ",";
    header += column.name;
  }
  return header + '\n';
}

} // namespace nightsow::planner
