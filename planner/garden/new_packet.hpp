#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace nightsow::planner {

/// What is to stand in one column of a new row.
struct PacketCell {
  std::string_view column; ///< of packet_columns.hpp
  std::string_view typed;  ///< the option that gave it, for errors
  std::string cell;        ///< not empty
};

/// A packets.csv with one row more, the rest byte for byte as it was: separator, quotes, line ends
/// and columns that nobody knows. A column that is missing is added to the header. An empty text
/// becomes a file with all columns. Without an id the row gets one from taxon and harvest, written
/// down where there is a column for it. Throws UsageError for a cell that its column cannot hold,
/// InputError when the text is no packets.csv, or not UTF-8 and the row needs more than ASCII.
[[nodiscard]] std::string with_packet_row(std::string_view text,
                                          std::string_view where,
                                          std::span<const PacketCell> cells);

/// A packets.csv taken apart at one of its rows.
struct PacketRowTaken {
  std::string text; ///< the file without it, byte for byte the rest
  std::string row;  ///< as it stood there, without its line end
};

/// Takes out the row that begins on that line. Requires: a row does (Packet::line).
[[nodiscard]] PacketRowTaken without_packet_row(std::string_view text,
                                                std::string_view where,
                                                std::size_t line);

} // namespace nightsow::planner
