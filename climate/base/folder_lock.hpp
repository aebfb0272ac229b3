#pragma once

#include <filesystem>

namespace nightsow {

/// Keeps other runs of the program from changing files of a folder at the same time; the folder
/// itself is locked, and nothing is left behind. Who only reads takes no lock.
class FolderLock {
public:
  /// Waits five seconds for another run. Throws StorageError when it still holds the folder, or the
  /// folder cannot be opened. An empty path is the present folder.
  explicit FolderLock(const std::filesystem::path& folder);
  ~FolderLock();

  FolderLock(const FolderLock&) = delete;
  FolderLock& operator=(const FolderLock&) = delete;
  FolderLock(FolderLock&&) = delete;
  FolderLock& operator=(FolderLock&&) = delete;

private:
  int descriptor_;
};

} // namespace nightsow
