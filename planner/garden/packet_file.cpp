#include "planner/garden/packet_file.hpp"

#include "climate/base/csv.hpp"
#include "climate/base/nearest_name.hpp"
#include "planner/garden/packet_columns.hpp"
#include "planner/garden/settle_packets.hpp"
#include "planner/garden/table_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

namespace nightsow::planner {

namespace {

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
  PacketFile file;
  const TableText table = table_text_of(text, where, file.problems);
  CsvReader rows{table.text, table.separator, where};
  if (!rows.next()) {
    refuse_empty_table(where);
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
