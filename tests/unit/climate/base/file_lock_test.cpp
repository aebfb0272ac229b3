#include "climate/base/file_lock.hpp"

#include "climate/base/problem.hpp"
#include "tests/support/temporary_folder.hpp"

#include <gtest/gtest.h>

#include <optional>
#include <thread>

namespace nightsow {
namespace {

using support::TemporaryFolder;

TEST(FileLock, IsFreeAgainOnceItIsGivenUp) {
  const TemporaryFolder folder;
  for (int i = 0; i < 2; ++i) {
    const FileLock lock{folder.path() / ".lock"};
  }
  SUCCEED();
}

TEST(FileLock, IsRefusedWhileAnotherHoldsItForLong) {
  const TemporaryFolder folder;
  const FileLock lock{folder.path() / ".lock"};
  EXPECT_THROW(FileLock{folder.path() / ".lock"}, StorageError);
}

TEST(FileLock, WaitsForAnotherThatIsDoneSoon) {
  const TemporaryFolder folder;
  std::optional<FileLock> lock;
  lock.emplace(folder.path() / ".lock");
  std::thread other([&lock] {
    std::this_thread::sleep_for(std::chrono::milliseconds{120});
    lock.reset();
  });
  EXPECT_NO_THROW(FileLock{folder.path() / ".lock"});
  other.join();
}

TEST(FileLock, IsRefusedWhereItCannotBeMade) {
  const TemporaryFolder folder;
  EXPECT_THROW(FileLock{folder.path() / "no such folder" / ".lock"}, StorageError);
}

} // namespace
} // namespace nightsow
