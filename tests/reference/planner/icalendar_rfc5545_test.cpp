#include "planner/render/plan_files.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

// RFC 5545, Internet Calendaring and Scheduling Core Object Specification (iCalendar), B.
// Desruisseaux, September 2009, https://www.rfc-editor.org/rfc/rfc5545. The section stands beside
// each check.

namespace nightsow::planner {
namespace {

Date day(std::string_view text) {
  return parse_iso_date(text).value();
}

// One tray with one packet of that name, and first water on that day.
PlanAnswer plan_with(const std::string& taxon, Date on) {
  PlanAnswer answer;
  answer.garden.name = "Invented slope";
  answer.today = day("1997-07-14");
  answer.season = 1997;
  Lot lot;
  lot.id = lot.group = "bench-cool-T1";
  lot.bench = "bench";
  lot.sow_on = lot.sown_by = on;
  lot.waters = on;
  LotPacket packet;
  packet.packet = "T1";
  packet.taxon = taxon;
  packet.sow_on = on;
  lot.packets = {packet};
  answer.lots = {lot};
  Task sow;
  sow.on = on;
  sow.lot = lot.id;
  sow.kind = TaskKind::sow_dry;
  sow.packets = {"T1"};
  DiaryEntry entry;
  entry.on = on;
  entry.group = lot.group;
  entry.kind = TaskKind::sow_dry;
  entry.alarm_days = 3;
  entry.tasks = {sow};
  answer.tasks = {sow};
  answer.diary = {entry};
  return answer;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::size_t from = 0;
  for (std::size_t end = text.find("\r\n"); end != std::string::npos;
       end = text.find("\r\n", from)) {
    lines.push_back(text.substr(from, end - from));
    from = end + 2;
  }
  EXPECT_EQ(from, text.size()) << "the last line ends, too";
  return lines;
}

// 3.1: a line break followed by one space or tab is taken out with it.
std::vector<std::string> unfolded(const std::string& text) {
  std::vector<std::string> lines;
  for (const std::string& line : lines_of(text)) {
    if (!line.empty() && (line.front() == ' ' || line.front() == '\t')) {
      lines.back() += line.substr(1);
    } else {
      lines.push_back(line);
    }
  }
  return lines;
}

bool has_line(const std::vector<std::string>& lines, std::string_view wanted) {
  return std::find(lines.begin(), lines.end(), wanted) != lines.end();
}

std::string line_beginning(const std::vector<std::string>& lines, std::string_view begin) {
  for (const std::string& line : lines) {
    if (line.starts_with(begin)) {
      return line;
    }
  }
  return "";
}

// 3.6.1: an anniversary of 2 November 1997 is shown with its DTSTART as a date, without a time.
TEST(ICalendar, WritesAllDayEntriesAsDates) {
  const std::vector<std::string> lines =
      unfolded(plan_calendar(plan_with("Albuca spiralis", day("1997-11-02"))));
  EXPECT_TRUE(has_line(lines, "DTSTART;VALUE=DATE:19971102"));
  EXPECT_TRUE(has_line(lines, "TRANSP:TRANSPARENT"));
  EXPECT_EQ(line_beginning(lines, "DTEND"), "") << "without an end it takes that day";
}

// 3.8.7.2 and 3.3.5: a stamp is in UTC, with a Z.
TEST(ICalendar, StampsEntriesInUtc) {
  const std::vector<std::string> lines =
      unfolded(plan_calendar(plan_with("Albuca spiralis", day("1997-11-02"))));
  EXPECT_TRUE(has_line(lines, "DTSTAMP:19970714T000000Z"));
}

// 3.8.7.4: a whole number that grows with each revision.
TEST(ICalendar, CountsTheSavesInItsSequence) {
  PlanAnswer answer = plan_with("Albuca spiralis", day("1997-11-02"));
  EXPECT_TRUE(has_line(unfolded(plan_calendar(answer)), "SEQUENCE:0"));
  answer.saves = 2;
  EXPECT_TRUE(has_line(unfolded(plan_calendar(answer)), "SEQUENCE:2"));
}

// 3.3.11: the example of a text of three lines, which \n keeps on one.
TEST(ICalendar, EscapesTextAsTheExampleDoes) {
  const std::vector<std::string> lines = unfolded(plan_calendar(plan_with(
      "Project XYZ Final Review\nConference Room - 3B\nCome Prepared.", day("1997-11-02"))));
  EXPECT_NE(line_beginning(lines, "DESCRIPTION")
                .find(R"(Project XYZ Final Review\nConference Room - 3B\nCome Prepared.)"),
            std::string::npos);
}

struct Escaped {
  std::string_view text;
  std::string_view written;
};

// 3.3.11: ESCAPED-CHAR = ("\\" / "\;" / "\," / "\N" / "\n"); a colon is not escaped.
TEST(ICalendar, EscapesBackslashSemicolonAndCommaButNoColon) {
  for (const Escaped& one : {Escaped{R"(a\b)", R"(a\\b)"},
                             Escaped{"a;b", R"(a\;b)"},
                             Escaped{"a,b", R"(a\,b)"},
                             Escaped{"a:b", "a:b"}}) {
    const std::vector<std::string> lines =
        unfolded(plan_calendar(plan_with(std::string{one.text}, day("1997-11-02"))));
    EXPECT_NE(line_beginning(lines, "DESCRIPTION").find(one.written), std::string::npos)
        << one.text;
  }
}

// 3.1: lines hold no more than 75 octets, line break left out, and end with CR LF. Ours break no
// character in two, so that each line can be read by itself.
TEST(ICalendar, FoldsLongLinesBetweenCharacters) {
  for (const std::string_view letter : {"e", "\u00eb", "\u20ac"}) {
    std::string taxon;
    for (int i = 0; i < 300; ++i) {
      taxon += letter;
    }
    const std::string text = plan_calendar(plan_with(taxon, day("1997-11-02")));
    for (const std::string& line : lines_of(text)) {
      EXPECT_LE(line.size(), 75U) << line;
      EXPECT_EQ(line.find_first_of("\r\n"), std::string::npos);
      const std::size_t first = line.find_first_not_of(' ');
      const bool within_a_character =
          first != std::string::npos && (static_cast<unsigned char>(line[first]) & 0xC0U) == 0x80U;
      EXPECT_FALSE(within_a_character) << line;
    }
    EXPECT_NE(line_beginning(unfolded(text), "DESCRIPTION").find(taxon), std::string::npos);
  }
}

// 3.3.6: dur-day, and the minus of a trigger before its event (3.8.6.3). 3.6.6: an alarm that is
// displayed has ACTION, TRIGGER and DESCRIPTION.
TEST(ICalendar, RemindsDaysAhead) {
  const std::vector<std::string> lines =
      unfolded(plan_calendar(plan_with("Albuca spiralis", day("1997-11-02"))));
  const auto begin = std::find(lines.begin(), lines.end(), "BEGIN:VALARM");
  const auto end = std::find(lines.begin(), lines.end(), "END:VALARM");
  ASSERT_LT(begin, end);
  const std::vector<std::string> alarm(begin, end);
  EXPECT_TRUE(has_line(alarm, "ACTION:DISPLAY"));
  EXPECT_TRUE(has_line(alarm, "TRIGGER:-P3D"));
  EXPECT_NE(line_beginning(alarm, "DESCRIPTION:"), "");
}

// 3.6: a calendar has PRODID and VERSION (3.7.4: 2.0) before its components; 3.6.1: an event has
// UID and DTSTAMP once each.
TEST(ICalendar, HasWhatACalendarAndAnEventMustHave) {
  const std::vector<std::string> lines =
      unfolded(plan_calendar(plan_with("Albuca spiralis", day("1997-11-02"))));
  EXPECT_EQ(lines.front(), "BEGIN:VCALENDAR");
  EXPECT_EQ(lines.back(), "END:VCALENDAR");
  EXPECT_TRUE(has_line(lines, "VERSION:2.0"));
  EXPECT_NE(line_beginning(lines, "PRODID:"), "");
  for (const std::string_view once :
       {"UID:", "DTSTAMP:", "DTSTART;", "BEGIN:VEVENT", "END:VEVENT"}) {
    EXPECT_EQ(std::count_if(lines.begin(),
                            lines.end(),
                            [&](const std::string& line) { return line.starts_with(once); }),
              1)
        << once;
  }
  EXPECT_TRUE(has_line(lines, "UID:bench-cool-T1-1997-sow_dry-1@invented-slope"));
}

} // namespace
} // namespace nightsow::planner
