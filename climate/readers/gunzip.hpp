#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace nightsow::climate {

/// No file may be larger, packed or unpacked.
inline constexpr std::size_t most_unpacked_bytes = std::size_t{1} << 30U; // 1 GiB

/// Whether the bytes begin as a gzip file does (RFC 1952). The name does not count.
[[nodiscard]] bool is_gzip(std::string_view bytes);

/// The unpacked content; several members one after another are joined, as gzip does.
/// Throws InputError when the file is damaged, cut off, or unpacks to more than `most` bytes.
[[nodiscard]] std::string gunzip(std::string_view bytes,
                                 std::string_view name,
                                 std::size_t most = most_unpacked_bytes);

} // namespace nightsow::climate
