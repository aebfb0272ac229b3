#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace nightsow {

/// The whole file as bytes. `named_by` says who named it ("garden.json", "--readings") for the
/// error. Throws InputError when there is no such file or it is over 1 GiB, StorageError when it
/// cannot be read.
[[nodiscard]] std::string read_whole_file(const std::filesystem::path& path,
                                          std::string_view named_by);

/// Writes all or nothing: a temporary file beside the target, fsync of file and folder, rename.
/// Throws StorageError, after which the target is as it was.
void write_atomically(const std::filesystem::path& path, std::string_view content);

} // namespace nightsow
