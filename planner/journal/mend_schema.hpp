#pragma once

#include <filesystem>

namespace nightsow::planner {

/// Brings the schema of a damaged journal back, in place, where that is what is damaged. A new
/// journal has its schema on the same pages as every other that began with its version, written
/// before any entry: its pages tell where the entries lie. Which version a journal began with is
/// told by under which of them most entries are found; tables that came with later versions are
/// looked for among the other pages. Gives whether anything was mended; what is left is of the
/// present version then. `damaged` must be a copy; `scratch` is the name of a file that is not
/// there, and is not there afterwards. Throws SQLite::Exception, StorageError.
bool mend_schema(const std::filesystem::path& damaged, const std::filesystem::path& scratch);

} // namespace nightsow::planner
