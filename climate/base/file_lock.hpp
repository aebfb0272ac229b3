#pragma once

#include <filesystem>

namespace nightsow {

/// Keeps other runs of the program from writing at the same time: as long as this lives, nobody
/// else holds the lock file of that path. The file stays behind, empty; what locks is the system,
/// so a run that was stopped leaves nothing locked. Who only reads takes no lock.
class FileLock {
public:
  /// Waits a few seconds for another run. Throws StorageError when that one takes longer, and when
  /// the file cannot be made.
  explicit FileLock(const std::filesystem::path& path);
  ~FileLock();

  FileLock(const FileLock&) = delete;
  FileLock& operator=(const FileLock&) = delete;
  FileLock(FileLock&&) = delete;
  FileLock& operator=(FileLock&&) = delete;

private:
  int descriptor_;
};

} // namespace nightsow
