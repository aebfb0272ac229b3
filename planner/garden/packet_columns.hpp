#pragma once

#include "climate/base/csv.hpp"
#include "climate/base/problem.hpp"
#include "planner/garden/packet.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// One column of packets.csv: its name, the names that people write instead, and how a cell is
/// read.
struct PacketColumn {
  std::string_view name;
  std::string_view also; ///< other names without blanks and signs, one blank between two
  std::string_view expected;
  /// Says whether the cell, which is not empty, was understood; if not, the packet is unchanged.
  bool (*read)(Packet& packet, std::string_view cell);
  bool required = false;
};

/// All columns, in the order in which they are written.
[[nodiscard]] std::span<const PacketColumn> packet_columns();

struct MatchedHeader {
  /// For every cell of the header its column; null: not used.
  std::vector<const PacketColumn*> columns;
  std::vector<Problem> problems; ///< guesses, and columns that are not used
};

/// Finds the columns in the reader's present record. Capitals, blanks and signs do not matter. The
/// columns' own names come first, then other known names, then near misses.
/// Throws InputError when a required column is not there.
[[nodiscard]] MatchedHeader match_header(const CsvReader& header, std::string_view where);

} // namespace nightsow::planner
