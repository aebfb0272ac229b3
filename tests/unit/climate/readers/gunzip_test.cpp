#include "climate/readers/gunzip.hpp"

#include "climate/base/problem.hpp"
#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace nightsow::climate {
namespace {

constexpr std::string_view table = "date,tmin_c,tmax_c\n2024-03-31,5,18\n";

std::string bytes_of(std::string_view hex) {
  std::string bytes;
  for (std::size_t i = 0; i + 1 < hex.size(); i += 2) {
    bytes += static_cast<char>(std::stoi(std::string(hex.substr(i, 2)), nullptr, 16));
  }
  return bytes;
}

// source: the table above through `gzip -n9` of GNU gzip 1.12.
std::string packed() {
  return bytes_of("1f8b08000000000002034b492c49d529c9cdcc8b4f06528915f1c95c4606"
                  "4626ba06c6bac6863aa63a86165c008d9a60a623000000");
}

std::string fault(std::string_view bytes, std::size_t most = most_unpacked_bytes) {
  try {
    static_cast<void>(gunzip(bytes, "file.csv.gz", most));
  } catch (const InputError& error) {
    return to_text(error.problem());
  }
  return "";
}

TEST(Gunzip, GivesBackWhatWasPacked) {
  EXPECT_EQ(gunzip(packed(), "file.csv.gz"), table);
}

TEST(Gunzip, MembersOneAfterAnotherAreJoined) {
  EXPECT_EQ(gunzip(packed() + packed(), "file.csv.gz"), std::string(table) + std::string(table));
}

TEST(Gunzip, ZerosBehindTheEndArePadding) {
  EXPECT_EQ(gunzip(packed() + std::string(512, '\0'), "file.csv.gz"), table);
  EXPECT_NE(fault(packed() + "x"), "");
}

TEST(Gunzip, AFileCutOffAnywhereIsRefusedAsSuch) {
  for (std::size_t length = 2; length < packed().size(); ++length) {
    EXPECT_EQ(fault(packed().substr(0, length)),
              "file.csv.gz: the gzip file is cut off before its end; expected a whole gzip file of "
              "up to 1 GiB unpacked; download it again")
        << length;
  }
}

TEST(Gunzip, ADamagedFileIsRefused) {
  std::string bytes = packed();
  bytes[bytes.size() - 5] = static_cast<char>(bytes[bytes.size() - 5] ^ 1); // in the checksum
  EXPECT_TRUE(says(fault(bytes), "the gzip file is damaged"));
}

TEST(Gunzip, StopsAtTheSizeCap) {
  EXPECT_EQ(fault(packed(), table.size()), "");
  EXPECT_TRUE(says(fault(packed(), table.size() - 1), "unpacks to more than 1 GiB"));
}

TEST(ReadReadings, APackedFileIsReadByItsContent) {
  const Readings readings = read_readings(packed(), "readings/station");
  EXPECT_EQ(rows_of(readings), "2024-03-31 5/18");
  EXPECT_EQ(readings.because.front(), "it was packed by gzip");
}

} // namespace
} // namespace nightsow::climate
