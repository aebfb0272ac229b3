#include "climate/readers/logger.hpp"

#include "tests/support/weather_text.hpp"

#include <date/date.h>
#include <gtest/gtest.h>

#include <functional>
#include <string>
#include <string_view>

namespace nightsow::climate {
namespace {

using std::chrono::hours;
using std::chrono::minutes;

// Two days of half hours from midnight of 13 April 2026 on: one row for each, made by `row` from
// the time and the number of the row. The coldest is 5.5 at 06:00, the warmest 14.5 at 15:00.
using Row = std::function<std::string(date::local_seconds, int)>;

std::string rows(const Row& row) {
  std::string text;
  const date::local_seconds begin{make_date(2026, 4, 13).value()};
  for (int i = 0; i <= 96; ++i) {
    text += row(begin + minutes{30} * i, i) + '\n';
  }
  return text;
}

double celsius(date::local_seconds clock) {
  const auto halves = static_cast<int>((clock - date::floor<Days>(clock)) / minutes{30});
  return halves <= 12   ? 5.5 + (12 - halves) / 4.0
         : halves <= 30 ? 5.5 + (halves - 12) / 2.0
                        : 14.5 - (halves - 30) / 4.0;
}

std::string figure(double value, char mark = '.') {
  std::string text = std::to_string(value);
  text = text.substr(0, text.find('.') + 4);
  text[text.find('.')] = mark;
  return text;
}

std::string stamp(const char* form, date::local_seconds clock) {
  return date::format(form, date::floor<std::chrono::seconds>(clock));
}

Row simple(const char* form, const std::string& separator = ",") {
  return [=](date::local_seconds clock, int) {
    return stamp(form, clock) + separator + figure(celsius(clock));
  };
}

constexpr const char* iso = "%F %H:%M:%S";
constexpr std::string_view two_days = "2026-04-13 -/14.5; 2026-04-14 5.5/14.5";

Readings read_here(const std::string& text, const std::string& column = "") {
  return read_readings(text, "logger.csv", {"", column, "Africa/Johannesburg"});
}

std::string refusal_here(const std::string& text, const std::string& column = "") {
  try {
    static_cast<void>(read_here(text, column));
  } catch (const InputError& error) {
    return to_text(error.problem());
  }
  return "";
}

bool told(const Readings& readings, std::string_view words) {
  for (const Problem& problem : readings.problems) {
    if (says(to_text(problem), words)) {
      return true;
    }
  }
  return false;
}

TEST(Logger, TheSimplestFileIsRead) {
  const Readings readings = read_here("Timestamp,Temperature_Celsius\n" + rows(simple(iso)));
  EXPECT_EQ(rows_of(readings), two_days);
  EXPECT_EQ(readings.format, "readings within the day");
  EXPECT_EQ(readings.unit, "°C");
  EXPECT_EQ(readings.rows_read, 97U);
  EXPECT_EQ(readings.rows_faulty, 0U);
}

TEST(Logger, ATitleAQuotedHeaderTwelveHoursAndFahrenheit) {
  const Readings readings = read_here(
      "Plot Title: bench south\n"
      R"x("#","Date Time, GMT+02:00","Temp, °F (LGR S/N: 77, LBL: c)","Started (LGR S/N: 77)")x"
      "\n" +
      rows([](date::local_seconds clock, int i) {
        return std::to_string(i + 1) + ',' + stamp("%m/%d/%y %I:%M:%S %p", clock) + ',' +
               figure(celsius(clock) * 1.8 + 32.0) + ',' + (i == 0 ? "Logged" : "");
      }) +
      "98,04/15/26 12:10:11 AM,,Logged\n");
  EXPECT_EQ(rows_of(readings), two_days);
  EXPECT_EQ(readings.unit, "°F");
  EXPECT_TRUE(told(readings, "1 rows hold no temperature"));
}

TEST(Logger, APreambleAndAColumnOfUnits) {
  const auto mixed = rows([](date::local_seconds clock, int i) {
    const bool celsius_row = i % 2 == 0;
    return stamp("%d/%m/%y %I:%M:%S %p", clock) + (celsius_row ? ",C," : ",F,") +
           figure(celsius_row ? celsius(clock) : celsius(clock) * 1.8 + 32.0);
  });
  const Readings readings =
      read_here("Part Number: X\nMission Active? false\n\nDate/Time,Unit,Value\n" + mixed);
  EXPECT_EQ(rows_of(readings), two_days);
}

TEST(Logger, AColumnOfUnitsMayHoldWholeWords) {
  const auto in_words = [](const char* warm, const char* hot) {
    return "Date/Time,Unit,Value\n" + rows([=](date::local_seconds clock, int i) {
             return stamp(iso, clock) + ',' + (i % 2 == 0 ? warm : hot) + ',' +
                    figure(i % 2 == 0 ? celsius(clock) : celsius(clock) * 1.8 + 32.0);
           });
  };
  EXPECT_EQ(rows_of(read_here(in_words("Celsius", "Fahrenheit"))), two_days);
  EXPECT_EQ(rows_of(read_here(in_words("deg C", "deg F"))), two_days);
  EXPECT_EQ(rows_of(read_here(in_words("°C", "°F"))), two_days);
}

TEST(Logger, ADecimalCommaThatSplitsAFieldIsJoined) {
  const auto text =
      "Date/Time,Unit,Value\n" + rows([](date::local_seconds clock, int) {
        return stamp("%y-%m-%d %H:%M:%S", clock) + ",C," + figure(celsius(clock) - 8.0, ',');
      });
  EXPECT_EQ(rows_of(read_here(text)), "2026-04-13 -/6.5; 2026-04-14 -2.5/6.5");
}

TEST(Logger, SurplusFieldsOfAFewRowsAreNoDecimals) {
  const auto text = "Date,Temp (C),Humidity\n" + rows([](date::local_seconds clock, int i) {
                      return stamp(iso, clock) + ',' + figure(celsius(clock)) + ",60" +
                             (i % 7 == 0 ? ",alarm" : "");
                    });
  EXPECT_EQ(rows_of(read_here(text)), two_days);
}

TEST(Logger, SemicolonsDecimalCommasAndLatinOne) {
  const auto text =
      "Zeit;Temperatur (\xB0"
      "C)\r\n" +
      rows([](date::local_seconds clock, int) {
        return stamp("%d.%m.%Y %H:%M", clock) + ';' + figure(celsius(clock), ',') + '\r';
      });
  EXPECT_EQ(rows_of(read_here(text)), two_days);
}

TEST(Logger, DateAndTimeMayStandApart) {
  const auto text = "Fecha;Hora;Temperatura (ºC)\n" + rows([](date::local_seconds clock, int) {
                      return stamp("%d/%m/%Y;%H:%M", clock) + ';' + figure(celsius(clock), ',');
                    });
  EXPECT_EQ(rows_of(read_here(text)), two_days);
}

TEST(Logger, YearMonthDayAndHourMayStandApart) {
  const auto text =
      "Station,Year,Month,Day,Hour,Minute,Temp\n" + rows([](date::local_seconds clock, int) {
        return stamp("7,%Y,%m,%d,%H,%M,", clock) + figure(celsius(clock));
      });
  const Readings readings = read_here(text);
  EXPECT_EQ(rows_of(readings), two_days);
  EXPECT_EQ(readings.station.id, "7");
}

TEST(Logger, AMinuteBeyondTheHourIsAFaultOfItsRow) {
  const auto text_with = [](const std::string& minute) {
    return "Year,Month,Day,Hour,Minute,Temp\n" + rows([&](date::local_seconds clock, int i) {
             return stamp("%Y,%m,%d,%H,", clock) + (i == 50 ? minute : stamp("%M", clock)) + ',' +
                    figure(celsius(clock));
           });
  };
  for (const char* minute : {"60", "-1", "900000000", "half"}) {
    const Readings readings = read_here(text_with(minute));
    EXPECT_EQ(rows_of(readings), two_days) << minute;
    EXPECT_EQ(readings.rows_faulty, 1U) << minute;
    EXPECT_TRUE(told(readings,
                     "logger.csv:52:15: '" + std::string(minute) +
                         "' where the minute should be; expected a minute, 0 to 59"))
        << minute;
  }
  EXPECT_EQ(read_here(text_with("59")).rows_faulty, 0U);
}

TEST(Logger, SecondsSince1970AreOfUtc) {
  const auto text =
      "time,temperature\n" + rows([](date::local_seconds clock, int) {
        const auto here = clock - hours{2};
        return std::to_string(here.time_since_epoch().count()) + ',' + figure(celsius(clock));
      });
  EXPECT_EQ(rows_of(read_here(text)), two_days);
}

TEST(Logger, AnOffsetInTheStampOrAboveTheHeaderIsHeeded) {
  const auto moved = [](int by, const char* form) {
    return rows([=](date::local_seconds clock, int) {
      return stamp(form, clock - hours{by}) + ',' + figure(celsius(clock));
    });
  };
  EXPECT_EQ(rows_of(read_here("Time,Temp\n" + moved(2, "%FT%H:%M:%SZ"))), two_days);
  EXPECT_EQ(rows_of(read_here("Time,Temp\n" + moved(-3, "%FT%H:%M:%S+05:00"))), two_days);
  EXPECT_EQ(rows_of(read_here("Time zone: UTC-1\nTime,Temp\n" + moved(3, iso))), two_days);
}

TEST(Logger, SomeTimesWithAnOffsetAndSomeWithoutAreRefused) {
  const auto text = "Time,Temp\n" + rows([](date::local_seconds clock, int i) {
                      return stamp(iso, clock) + (i % 2 == 0 ? "Z," : ",") + figure(celsius(clock));
                    });
  EXPECT_TRUE(says(refusal_here(text), "some times tell their distance from UTC"));
}

TEST(Logger, ASerialInTheFirstRowOnlyIsNoFault) {
  const auto text = "Greenhouse,Time,Celsius(°C),Humidity(%rh),Dew Point(°C),Serial Number\n" +
                    rows([](date::local_seconds clock, int i) {
                      return std::to_string(i + 1) + ',' + stamp(iso, clock) + ',' +
                             figure(celsius(clock)) + ",60.0,1.5" + (i == 0 ? ",0101" : "");
                    });
  EXPECT_EQ(rows_of(read_here(text)), two_days);
}

TEST(Logger, AFooterOfProseIsNoFaultAndANoteInTheMiddleIsOne) {
  const std::string head = "\"Tiempo UTC+2\";\"Temperatura del Aire ºC\"\n";
  const auto lines = rows([](date::local_seconds clock, int) {
    return '"' + stamp("%d-%m-%Y %H:%M", clock) + "\";" + figure(celsius(clock));
  });
  const Readings footer = read_here(head + lines + ";\n;\n\"Name the source; thank you.\";\n");
  EXPECT_EQ(rows_of(footer), two_days);
  EXPECT_EQ(footer.rows_faulty, 0U);
  EXPECT_TRUE(told(footer, "1 lines behind the last reading hold no time"));
  const std::size_t middle = lines.find('\n', lines.size() / 2) + 1;
  const Readings note =
      read_here(head + lines.substr(0, middle) + "battery low;\n" + lines.substr(middle));
  EXPECT_EQ(rows_of(note), two_days);
  EXPECT_EQ(note.rows_faulty, 1U);
  EXPECT_TRUE(told(note, "logger.csv:51:1: 'battery low' where the time should be"));
}

TEST(Logger, AValueThatIsNoNumberIsAFaultWithItsPlace) {
  std::string text = "Time,Temp\n" + rows(simple(iso));
  text.replace(text.find("5.500"), 5, "cold!");
  const Readings readings = read_here(text);
  EXPECT_EQ(readings.rows_faulty, 1U);
  EXPECT_TRUE(told(readings, "logger.csv:14:21: 'cold!' in column 'Temp'"));
}

TEST(Logger, NanAndMissingCodesAreNoTemperatures) {
  std::string text = "Time,Temp\n" + rows(simple(iso));
  text.replace(text.find("5.500"), 5, "NaN");
  text.replace(text.find("8.500"), 5, "-999.9");
  const Readings readings = read_here(text);
  EXPECT_EQ(rows_of(readings), two_days);
  EXPECT_TRUE(told(readings, "2 rows hold no temperature"));
}

std::string two_channels() {
  return "Time,Inside Temp (°C),Outside Temp (°C)\n" + rows([](date::local_seconds clock, int) {
           return stamp(iso, clock) + ",20.5," + figure(celsius(clock));
         });
}

TEST(Logger, OfSeveralChannelsItIsAskedWhichIsMeant) {
  EXPECT_EQ(refusal_here(two_channels()),
            "logger.csv:1: several columns hold temperatures: 'Inside Temp (°C)', 'Outside Temp "
            "(°C)'; expected one column; which of them is meant? Name it in garden.json beside the "
            "file: \"column\": \"Inside Temp (°C)\"");
  EXPECT_EQ(rows_of(read_here(two_channels(), "outside temp (°c)")), two_days);
  EXPECT_TRUE(says(refusal_here(two_channels(), "Cellar"), "there is no column 'Cellar'"));
}

TEST(Logger, AChannelThatIsNamedMayBeCalledAnything) {
  const auto text = "Time,Sensor A,Sensor B\n" + rows([](date::local_seconds clock, int) {
                      return stamp(iso, clock) + ",20.5," + figure(celsius(clock));
                    });
  EXPECT_EQ(rows_of(read_here(text, "Sensor B")), two_days);
  EXPECT_TRUE(says(refusal_here(text), "no known weather format"));
}

TEST(Logger, OneChannelInTwoUnitsIsOne) {
  const auto text = "Time,Temp (°F),Temp (°C)\n" + rows([](date::local_seconds clock, int) {
                      return stamp(iso, clock) + ",99," + figure(celsius(clock));
                    });
  EXPECT_EQ(rows_of(read_here(text)), two_days);
}

TEST(Logger, TheValuesTellAUnitThatNothingNames) {
  const auto text = "Time,Temp\n" + rows([](date::local_seconds clock, int) {
                      return stamp(iso, clock) + ',' + figure(celsius(clock) * 1.8 + 62.0);
                    });
  // Two days of 72 and 88 are too few to tell; from memory of the rule three are needed.
  EXPECT_EQ(read_here(text).unit, "°C");
  EXPECT_TRUE(told(read_here(text), "no unit is named"));
}

TEST(Logger, ASecondBlockForTheSameTimeIsAsked) {
  const std::string block = "Time,Temp\n" + rows(simple(iso));
  const auto later =
      rows([](date::local_seconds clock, int) { return stamp(iso, clock + hours{1}) + ",20"; });
  EXPECT_TRUE(says(refusal_here(block + "Time,Temp\n" + later),
                   "logger.csv:100: a second block of readings for the same time"));
}

TEST(Logger, ARowWithADateThatIsNoDayNeitherEndsNorBeginsABlock) {
  const std::string bad = "2026-04-31 10:00:00,12\n";
  const std::string head = "Time,Temp\n";
  const auto later =
      rows([](date::local_seconds clock, int) { return stamp(iso, clock + hours{1}) + ",20"; });
  const std::string block = head + rows(simple(iso)) + bad;
  // Line 101 is the first of the second block; its first good row may stand behind a bad one.
  EXPECT_TRUE(says(refusal_here(block + head + later),
                   "logger.csv:101: a second block of readings for the same time"));
  EXPECT_TRUE(says(refusal_here(block + head + bad + later),
                   "logger.csv:102: a second block of readings for the same time"));
  const std::string all = rows(simple(iso));
  const std::size_t middle = all.find('\n', all.size() / 2) + 1;
  const Readings readings =
      read_here(head + all.substr(0, middle) + bad + head + bad + all.substr(middle));
  EXPECT_EQ(rows_of(readings), two_days);
  EXPECT_EQ(readings.rows_faulty, 2U);
  EXPECT_TRUE(told(readings, "a date that is no day of the calendar"));
}

TEST(Logger, ExportsOneAfterAnotherAreOne) {
  const std::string head = "Time,Temp\n";
  const std::string all = rows(simple(iso));
  const std::size_t middle = all.find('\n', all.size() / 2) + 1;
  EXPECT_EQ(rows_of(read_here(head + all.substr(0, middle) + head + all.substr(middle))), two_days);
}

TEST(Logger, SeveralStationsAreRefused) {
  const auto text = "Station,Time,Temp\n" + rows([](date::local_seconds clock, int i) {
                      return std::to_string(i % 2) + ',' + stamp(iso, clock) + ",20";
                    });
  EXPECT_TRUE(says(refusal_here(text), "several stations are mixed"));
}

TEST(Logger, OfSeveralStationsOneIsChosenByItsId) {
  const auto text = "Station,Time,Temp\n" + rows([](date::local_seconds clock, int) {
                      return "7," + stamp(iso, clock) + ',' + figure(celsius(clock)) + "\n8," +
                             stamp(iso, clock) + ",20";
                    });
  const auto of_station = [&](const char* station) {
    return read_readings(text, "logger.csv", {station, "", "Africa/Johannesburg"});
  };
  EXPECT_EQ(rows_of(of_station("7")), two_days);
  EXPECT_EQ(of_station("7").station.id, "7");
  EXPECT_EQ(rows_of(of_station("8")), "2026-04-13 -/20; 2026-04-14 20/20");
  EXPECT_THROW(static_cast<void>(of_station("9")), InputError);
}

TEST(Logger, OfAFileThatNamesNoStationNoneCanBeAskedFor) {
  const std::string text = "Time,Temp\n" + rows(simple(iso));
  try {
    static_cast<void>(read_readings(text, "logger.csv", {"7", "", "Africa/Johannesburg"}));
    ADD_FAILURE() << "was read";
  } catch (const InputError& error) {
    EXPECT_TRUE(says(to_text(error.problem()), "and this file names no station"));
  }
}

TEST(Logger, ADailyTableIsNoLoggersFile) {
  EXPECT_EQ(read("date,tmin,tmax,temp\n2024-03-31,5,18,11\n2024-04-01,6,19,12\n").format,
            "daily table");
  EXPECT_EQ(
      read("date,tmin,tmax,temp\n2024-03-31T00:00,5,18,11\n2024-04-01T00:00,6,19,12\n").format,
      "daily table");
}

TEST(Logger, TheTimeAtWhichSomebodyLookedMakesNoLogger) {
  EXPECT_EQ(rows_of(read("date,time,tmin,tmax,temp\n2024-03-31,08:55,5,18,11\n"
                         "2024-04-01,09:05,6,19,12\n")),
            "2024-03-31 5/18; 2024-04-01 6/19");
}

} // namespace
} // namespace nightsow::climate
