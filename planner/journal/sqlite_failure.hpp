#pragma once

#include <filesystem>
#include <functional>
#include <string_view>

namespace nightsow::planner {

/// How long one program waits for another that writes to the same journal.
inline constexpr int patience_ms = 5000; // common practice, no source

/// Does some work on a journal's file and tells what went wrong in the words of the house:
/// StorageError for a lock, permission, full disk; InputError for a damaged file; UsageError for an
/// entry that the journal does not take, with the rule it breaks.
void telling_failures(const std::filesystem::path& file, const std::function<void()>& work);

/// Throws InputError for a damaged journal, with what SQLite found first, and the way out.
[[noreturn]] void refuse_damaged(const std::filesystem::path& file, std::string_view found);

} // namespace nightsow::planner
