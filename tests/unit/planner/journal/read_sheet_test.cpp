#include "planner/journal/read_sheet.hpp"

#include "tests/support/invented_journal.hpp"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace nightsow::planner {
namespace {

using support::on;

SheetRead sheet_of(std::string_view text) {
  std::vector<OpenSowing> open;
  for (const EntryId id : {12, 15, 13}) {
    RecordedSowing sowing = support::invented_sowing();
    sowing.id = id;
    open.push_back({sowing, "", {}, {}});
  }
  return read_sheet(text, "standard input", open, on("2026-04-01"));
}

/// "12:7 13:4-2", the sowing, those seen and the dead
std::string told(std::string_view text) {
  std::string told;
  for (const SeedlingCount& count : sheet_of(text).counts) {
    told += (told.empty() ? "" : " ") + std::to_string(count.sowing) + ':' +
            std::to_string(count.seen) +
            (count.dead > 0 ? '-' + std::to_string(count.dead) : std::string{});
  }
  return told;
}

struct Sheet {
  std::string_view text;
  std::string_view counts;
};

TEST(ASheet, TakesALineASowingInTrayOrder) {
  for (const Sheet& sheet : {Sheet{"7\n0\n3\n", "12:7 15:0 13:3"},
                             Sheet{"7\n\n4 2\n", "12:7 13:4-2"},
                             Sheet{"-\r\n-\r\n4, 2\r\n", "13:4-2"},
                             Sheet{"# frame\n7\n# bench\n\n3", "12:7 13:3"},
                             Sheet{"13: 3\n12: 7 1\n15:\n", "13:3 12:7-1"}}) {
    EXPECT_EQ(told(sheet.text), sheet.counts) << sheet.text;
    EXPECT_TRUE(sheet_of(sheet.text).faults.empty()) << sheet.text;
  }
}

struct FaultySheet {
  std::string_view text;
  std::size_t line;
  std::string_view found;
};

TEST(ASheet, IsToldOfEachLineThatIsNoCount) {
  for (const FaultySheet& sheet :
       {FaultySheet{"7\n3\n", 0, "there are 2 lines for 3 sowings"},
        FaultySheet{"7\n3\n2\n1\n", 0, "there are 4 lines for 3 sowings"},
        FaultySheet{"7\nseven\n3\n", 2, "\"seven\" is no count"},
        FaultySheet{"7\n-1\n3\n", 2, "\"-1\" is no count"},
        FaultySheet{"12: 7\n14: 2\n", 2, "\"14: 2\" names no sowing of the sheet"},
        FaultySheet{"12: 7\n3\n", 2, "\"3\" names no sowing of the sheet"},
        FaultySheet{"12: 7\n12: 3\n", 2, "sowing 12 stands there twice"}}) {
    const SheetRead read = sheet_of(sheet.text);
    ASSERT_EQ(read.faults.size(), 1U) << sheet.text;
    EXPECT_EQ(read.faults.front().line, sheet.line) << sheet.text;
    EXPECT_EQ(read.faults.front().found, sheet.found) << sheet.text;
  }
}

} // namespace
} // namespace nightsow::planner
