#pragma once

#include <cstdint>
#include <span>
#include <string_view>

namespace nightsow::planner {

/// Marks the file as ours (application_id of the SQLite file format): "nsow".
inline constexpr std::int32_t journal_application_id = 0x6e736f77;

/// What brings a journal from the version before to `to`.
struct Migration {
  int to = 0; ///< counted from 1
  std::string_view sql;
};

/// From nothing to the version that this program writes, in order.
[[nodiscard]] std::span<const Migration> journal_migrations();

/// The version that this program writes.
[[nodiscard]] int journal_version();

} // namespace nightsow::planner
