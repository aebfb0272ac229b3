#include "planner/render/table.hpp"

#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

using Lines = std::vector<std::string>;

TEST(Table, WidthIsCountedInCharactersNotInBytes) {
  EXPECT_EQ(columns_of("13 °C"), 5U);
  EXPECT_EQ(columns_of("Drôme, 日本"), 9U);
}

TEST(Table, ShorteningLeavesWholeCharactersAndSaysSo) {
  EXPECT_EQ(shortened("°°°°", 4), "°°°°");
  EXPECT_EQ(shortened("°°°°", 3), "°°…");
  EXPECT_EQ(shortened("abc", 0), "");
}

TEST(Table, LinesBreakBetweenWords) {
  EXPECT_EQ(wrapped("first water about April", 11), (Lines{"first water", "about April"}));
}

TEST(Table, ANumberStaysWithItsUnit) {
  EXPECT_EQ(wrapped("under 13 °C.", 8), (Lines{"under", "13 °C."}));
  EXPECT_EQ(wrapped("by 2.0 K a day", 6), (Lines{"by", "2.0 K", "a day"}));
}

TEST(Table, AWordWiderThanTheColumnIsCut) {
  EXPECT_EQ(wrapped("°°°°°°°", 3), (Lines{"°°°", "°°°", "°"}));
}

TEST(Table, ALongIdIsCutBehindItsHyphens) {
  EXPECT_EQ(wrapped("pachypodium-namaquanum-2026", 14),
            (Lines{"pachypodium-", "namaquanum-", "2026"}));
}

TEST(Table, NothingIsOneEmptyLine) {
  EXPECT_EQ(wrapped("", 10), (Lines{""}));
}

TEST(Table, ControlCharactersOfAFileDoNotReachTheTerminal) {
  const std::string text = table_text({{"Taxon"}}, {{{"Moraea\x1b[31m\nvillosa"}, ""}}, {});
  EXPECT_EQ(text, "  Taxon\n  Moraea [31m villosa\n");
}

TEST(Table, ColumnsStandUnderOneAnother) {
  const std::string text = table_text(
      {{"Packet"}, {"Seeds", Align::right}}, {{{"S1", "8"}, ""}, {{"S2", "120"}, ""}}, {});
  EXPECT_EQ(text,
            "  Packet  Seeds\n"
            "  S1          8\n"
            "  S2        120\n");
}

TEST(Table, WhatIsBelowARowFollowsIt) {
  EXPECT_EQ(table_text({{"A"}}, {{{"1"}, "      because\n"}}, {}), "  A\n  1\n      because\n");
}

TEST(Table, ATableOfWideCellsFitsTheScreen) {
  const std::string wide =
      "Sarcocaulon multifidum, 日本の播種, a name that goes on and on and on and on";
  const std::vector<TableRow> rows{{{wide, wide, wide, wide}, ""}};
  const std::vector<Column> columns{
      {"Packet"}, {"Taxon", Align::left, true}, {"When", Align::left, true}, {"Latest"}};
  const std::string text = table_text(columns, rows, {});
  EXPECT_EQ(first_line_too_wide(text), "");
}

TEST(Table, WrappingGivesWayBeforeAnythingIsShortened) {
  const std::vector<TableRow> rows{
      {{"S1", std::string(60, 'a') + ' ' + std::string(30, 'b'), "12 Apr"}, ""}};
  const std::string text =
      table_text({{"Packet"}, {"Taxon", Align::left, true}, {"When"}}, rows, {});
  EXPECT_EQ(text.find("…"), std::string::npos);
}

TEST(Table, ColourChangesNoWord) {
  TextStyle colour;
  colour.colour = true;
  EXPECT_EQ(heading_text("Now", colour), "\x1b[1mNow\x1b[0m\n");
  EXPECT_EQ(heading_text("Now", {}), "Now\n");
}

TEST(Table, WithoutRowsThereIsNoTable) {
  EXPECT_EQ(table_text({{"Packet"}}, {}, {}), "");
}

} // namespace
} // namespace nightsow::planner
