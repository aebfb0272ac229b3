#include "climate/base/folder_lock.hpp"

#include "climate/base/problem.hpp"
#include "tests/support/temporary_folder.hpp"

#include <gtest/gtest.h>

#include <optional>
#include <thread>

namespace nightsow {
namespace {

using support::TemporaryFolder;

TEST(FolderLock, IsFreeAgainOnceItIsGivenUp) {
  const TemporaryFolder folder;
  for (int i = 0; i < 2; ++i) {
    const FolderLock lock{folder.path()};
  }
  SUCCEED();
}

TEST(FolderLock, IsRefusedWhileAnotherHoldsItForLong) {
  const TemporaryFolder folder;
  const FolderLock lock{folder.path()};
  EXPECT_THROW(FolderLock{folder.path()}, StorageError);
}

TEST(FolderLock, WaitsForAnotherThatIsDoneSoon) {
  const TemporaryFolder folder;
  std::optional<FolderLock> lock;
  lock.emplace(folder.path());
  std::thread other([&lock] {
    std::this_thread::sleep_for(std::chrono::milliseconds{120});
    lock.reset();
  });
  EXPECT_NO_THROW(FolderLock{folder.path()});
  other.join();
}

TEST(FolderLock, IsRefusedWhereThereIsNoFolder) {
  const TemporaryFolder folder;
  EXPECT_THROW(FolderLock{folder.path() / "no such folder"}, StorageError);
}

} // namespace
} // namespace nightsow
