#pragma once

#include "planner/garden/records.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace nightsow::planner {

/// What a salvage brought.
struct Salvaged {
  std::vector<EntryId> kept; ///< by number, as they were numbered
  /// What could not be read, or belongs to what could not: "entry 12, count: …", by number.
  std::vector<std::string> lost;
};

/// Copies every entry that can be read out of a damaged journal into a new one; the damaged file is
/// only read. Entries keep their numbers. Throws UsageError when `into` is there already,
/// InputError when nothing at all can be read, StorageError when `into` cannot be written.
Salvaged salvage(const std::filesystem::path& damaged, const std::filesystem::path& into);

} // namespace nightsow::planner
