#pragma once

#include "climate/base/problem.hpp"
#include "planner/garden/packet.hpp"
#include "planner/garden/records.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// Sowings as a grower lists them who keeps no journal.
struct SownFile {
  std::vector<RecordedSowing> sowings; ///< by date; their ids are negative: they are no entries
  std::vector<Problem> problems;       ///< rows and cells that were left out, and guesses
};

/// Reads sown.csv: columns packet or taxon (one of them), seeds and sown_on (both required), bench,
/// watered_on, pots. Header names are matched loosely, as in packets.csv. A packet is one of
/// `packets` by its id; a taxon alone means the packet of that name where there is one only. A row
/// that cannot be used is left out and listed, a cell that is not required counts as empty and is
/// listed. Throws InputError when the file is no table or its header lacks a required column.
[[nodiscard]] SownFile read_sown_file(std::string_view text,
                                      std::string_view where,
                                      const std::vector<Packet>& packets,
                                      std::span<const std::string> benches);

} // namespace nightsow::planner
