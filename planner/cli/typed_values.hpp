#pragma once

#include "climate/base/date.hpp"

#include <cstddef>
#include <filesystem>
#include <span>
#include <string>
#include <string_view>

namespace nightsow::planner {

/// Throws a UsageError about an option or command. Expected and remedy may be empty.
[[noreturn]] void wrong_use(std::string_view where,
                            std::string found,
                            std::string expected = "",
                            std::string remedy = "");

// What stands behind an option, turned into a value. Every function throws UsageError, naming the
// option, when the text is something else.

/// A word as it may stand in a message: in quotes, fit for a terminal, cut when long.
[[nodiscard]] std::string shown(std::string_view typed);

/// "plan, nights or start"
[[nodiscard]] std::string listed(std::span<const std::string> names);

[[nodiscard]] Date typed_date(std::string_view option, std::string_view text);

[[nodiscard]] int typed_year(std::string_view option, std::string_view text);

/// What an option's number may be, both ends included.
struct NumberRange {
  double least = 0.0;
  double most = 0.0;
  std::string_view what; ///< "degrees", "metres": for the message
};

[[nodiscard]] double typed_number(std::string_view option,
                                  std::string_view text,
                                  const NumberRange& range);

/// Any name but the empty one. The present folder comes back as an empty path, so that the files in
/// it are called by their plain names.
[[nodiscard]] std::filesystem::path typed_folder(std::string_view option, std::string_view text);

/// Text that goes into a file: UTF-8 without control characters, not empty.
[[nodiscard]] std::string typed_text(std::string_view option, std::string_view text);

/// The place of the word in the list of those allowed.
[[nodiscard]] std::size_t typed_word(std::string_view option,
                                     std::string_view text,
                                     std::span<const std::string> allowed);

} // namespace nightsow::planner
