#include "climate/base/file.hpp"

#include "climate/base/problem.hpp"
#include "tests/support/temporary_folder.hpp"

#include <gtest/gtest.h>

#include <filesystem>
#include <iterator>
#include <string>
#include <string_view>

namespace nightsow {
namespace {

using support::TemporaryFolder;

std::size_t files_in(const TemporaryFolder& folder) {
  const std::filesystem::directory_iterator files{folder.path()};
  return static_cast<std::size_t>(std::distance(begin(files), end(files)));
}

TEST(File, ReadsEveryByte) {
  const TemporaryFolder folder;
  folder.write("a.txt", std::string_view("one\r\n\0two\xFF", 10));
  EXPECT_EQ(read_whole_file(folder.path() / "a.txt", "a test"),
            std::string("one\r\n\0two\xFF", 10));
}

TEST(File, ReadsAnEmptyFile) {
  const TemporaryFolder folder;
  folder.write("a.txt", "");
  EXPECT_EQ(read_whole_file(folder.path() / "a.txt", "a test"), "");
}

TEST(File, NamesAMissingFileAndWhoAskedForIt) {
  const TemporaryFolder folder;
  try {
    static_cast<void>(read_whole_file(folder.path() / "no.csv", "garden.json"));
    FAIL();
  } catch (const InputError& error) {
    EXPECT_EQ(error.problem().where, (folder.path() / "no.csv").string());
    EXPECT_NE(error.problem().expected.find("garden.json"), std::string::npos);
  }
}

TEST(File, AFolderIsNoFile) {
  const TemporaryFolder folder;
  EXPECT_THROW(static_cast<void>(read_whole_file(folder.path(), "a test")), InputError);
}

TEST(File, OverOneGibibyteIsRefusedUnread) {
  const TemporaryFolder folder;
  folder.write("big.csv", "");
  std::filesystem::resize_file(folder.path() / "big.csv", (std::uintmax_t{1} << 30U) + 1);
  EXPECT_THROW(static_cast<void>(read_whole_file(folder.path() / "big.csv", "a test")), InputError);
}

TEST(File, WritesWhatItIsGiven) {
  const TemporaryFolder folder;
  write_atomically(folder.path() / "a.txt", "new\n");
  EXPECT_EQ(read_whole_file(folder.path() / "a.txt", "a test"), "new\n");
}

TEST(File, ReplacesAndLeavesNothingBeside) {
  const TemporaryFolder folder;
  folder.write("a.txt", "old and longer\n");
  write_atomically(folder.path() / "a.txt", "new\n");
  EXPECT_EQ(read_whole_file(folder.path() / "a.txt", "a test"), "new\n");
  EXPECT_EQ(files_in(folder), 1U);
}

TEST(File, AFailedWriteLeavesTheTargetAsItWas) {
  const TemporaryFolder folder;
  std::filesystem::create_directory(folder.path() / "target");
  folder.write("target/kept.txt", "kept");
  EXPECT_THROW(write_atomically(folder.path() / "target", "new"), StorageError);
  EXPECT_EQ(read_whole_file(folder.path() / "target" / "kept.txt", "a test"), "kept");
  EXPECT_EQ(files_in(folder), 1U);
}

TEST(File, AMissingFolderIsAStorageError) {
  const TemporaryFolder folder;
  EXPECT_THROW(write_atomically(folder.path() / "no" / "a.txt", "new"), StorageError);
}

} // namespace
} // namespace nightsow
