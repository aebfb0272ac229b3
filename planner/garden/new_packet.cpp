#include "planner/garden/new_packet.hpp"

#include "climate/base/csv.hpp"
#include "climate/base/problem.hpp"
#include "planner/garden/packet_columns.hpp"
#include "planner/garden/packet_file.hpp"
#include "planner/garden/plain_text.hpp"
#include "planner/garden/table_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <vector>

namespace nightsow::planner {

namespace {

const PacketColumn& column_named(std::string_view name) {
  const auto all = packet_columns();
  return *std::find_if(
      all.begin(), all.end(), [&](const PacketColumn& column) { return column.name == name; });
}

void check(std::span<const PacketCell> cells) {
  for (const PacketCell& one : cells) {
    const PacketColumn& column = column_named(one.column);
    Packet packet;
    const bool read = column.read(packet, trimmed(one.cell));
    // A packet of no seeds would be left out when the table is read again.
    if (!read || packet.seeds.high == 0.0) {
      throw UsageError({Severity::error,
                        std::string(one.typed),
                        0,
                        0,
                        fmt::format("\"{}\" cannot stand there", one.cell),
                        std::string(column.expected),
                        "correct it; nothing was written"});
    }
  }
}

bool is_ascii(std::string_view text) {
  return std::all_of(
      text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

/// The table as it is, taken apart where something goes in between.
struct Parts {
  std::string_view header; ///< without its line end
  std::string_view line_end;
  std::string_view rows; ///< what stands behind it
};

Parts parts_of(std::string_view text, std::string_view rest) {
  std::string_view header = text.substr(0, text.size() - rest.size());
  const std::size_t end = header.find_last_not_of("\r\n") + 1;
  const std::string_view line_end =
      header.substr(end, header.substr(end).starts_with("\r\n") ? 2 : 1);
  return {header.substr(0, end), line_end.empty() ? "\n" : line_end, rest};
}

std::string joined(const std::vector<std::string>& cells, char separator) {
  std::string row;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    row += i == 0 ? "" : std::string(1, separator);
    row += csv_field(cells[i], separator);
  }
  return row;
}

std::string appended(std::string_view text,
                     std::string_view where,
                     std::span<const PacketCell> cells) {
  std::vector<Problem> problems;
  const TableText table = table_text_of(text, where, problems);
  CsvReader rows{text, table.separator, where};
  if (!rows.next()) {
    refuse_empty_table(where);
  }
  const MatchedHeader header = match_header(rows, where);
  std::vector<std::string> row(header.columns.size());
  std::string more_header;
  for (const PacketCell& one : cells) {
    const auto at =
        std::find(header.columns.begin(), header.columns.end(), &column_named(one.column));
    if (at != header.columns.end()) {
      row.at(static_cast<std::size_t>(at - header.columns.begin())) = one.cell;
    } else {
      more_header += table.separator + std::string(one.column);
      row.push_back(one.cell);
    }
  }
  const std::string line = joined(row, table.separator);
  if (!is_utf8(text) && !is_ascii(line)) {
    throw InputError({Severity::error,
                      std::string(where),
                      0,
                      0,
                      "the file is not UTF-8, and the new row has other letters than ASCII",
                      "a table in UTF-8",
                      "export it as CSV UTF-8 first; nothing was written"});
  }
  const Parts parts = parts_of(text, rows.rest());
  const bool ended = parts.rows.empty() || parts.rows.ends_with('\n') || parts.rows.ends_with('\r');
  return fmt::format("{}{}{}{}{}{}{}",
                     parts.header,
                     more_header,
                     parts.line_end,
                     parts.rows,
                     ended ? "" : parts.line_end,
                     line,
                     parts.line_end);
}

bool has_column(std::string_view text, std::string_view where, std::string_view name) {
  std::vector<Problem> problems;
  CsvReader rows{text, table_text_of(text, where, problems).separator, where};
  const bool any = rows.next();
  const MatchedHeader header = match_header(rows, where);
  return any && std::find(header.columns.begin(), header.columns.end(), &column_named(name)) !=
                    header.columns.end();
}

} // namespace

std::string with_packet_row(std::string_view text,
                            std::string_view where,
                            std::span<const PacketCell> cells) {
  check(cells);
  const std::string fresh = packet_header();
  const bool blank = text.find_first_not_of("\r\n\t ") == std::string_view::npos;
  const std::string_view before = blank ? std::string_view(fresh) : text;
  std::string with_row = appended(before, where, cells);
  const bool named = std::any_of(
      cells.begin(), cells.end(), [](const PacketCell& one) { return one.column == "packet"; });
  if (named || !has_column(before, where, "packet")) {
    return with_row;
  }
  std::vector<PacketCell> with_id(cells.begin(), cells.end());
  with_id.push_back({"packet", "--id", read_packet_file(with_row, where, {}).packets.back().id});
  return appended(before, where, with_id);
}

PacketRowTaken without_packet_row(std::string_view text, std::string_view where, std::size_t line) {
  std::vector<Problem> problems;
  CsvReader rows{text, table_text_of(text, where, problems).separator, where};
  std::size_t begins = 0;
  while (rows.next() && rows.line() < line) {
    begins = text.size() - rows.rest().size();
  }
  const std::size_t ends = text.size() - rows.rest().size();
  // Blank lines before it stay.
  begins = std::min(text.find_first_not_of("\r\n", begins), ends);
  std::string_view row = text.substr(begins, ends - begins);
  row = row.substr(0, row.find_last_not_of("\r\n") + 1);
  return {fmt::format("{}{}", text.substr(0, begins), text.substr(ends)), std::string(row)};
}

} // namespace nightsow::planner
