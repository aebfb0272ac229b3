#include "climate/archive/fetch.hpp"

#include "climate/archive/content_check.hpp"
#include "climate/base/problem.hpp"
#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

namespace nightsow::climate {
namespace {

using support::day;

FetchRequest request(Archive archive) {
  FetchRequest asked;
  asked.archive = archive;
  asked.station = "XX000000001";
  asked.latitude = -33.00449;
  asked.longitude = 19.00551;
  asked.today = day("2026-03-01");
  return asked;
}

// source: the archive's readme.txt and the interfaces' public documentation
TEST(PlanFetch, EachArchiveIsAskedInItsOwnWay) {
  EXPECT_EQ(plan_fetch(request(Archive::station)).url,
            "https://www.ncei.noaa.gov/pub/data/ghcn/daily/all/XX000000001.dly");
  EXPECT_EQ(plan_fetch(request(Archive::reanalysis)).url,
            "https://archive-api.open-meteo.com/v1/archive?latitude=-33.00&longitude=19.01"
            "&start_date=1996-01-01&end_date=2026-02-23"
            "&daily=temperature_2m_max,temperature_2m_min&timezone=auto");
  EXPECT_EQ(plan_fetch(request(Archive::forecast)).url,
            "https://api.open-meteo.com/v1/forecast?latitude=-33.00&longitude=19.01"
            "&daily=temperature_2m_max,temperature_2m_min&timezone=auto&forecast_days=16");
  EXPECT_EQ(plan_fetch(request(Archive::power)).url,
            "https://power.larc.nasa.gov/api/temporal/daily/point?parameters=T2M_MAX,T2M_MIN"
            "&community=AG&latitude=-33.00&longitude=19.01&start=19960101&end=20260226"
            "&format=CSV");
}

TEST(PlanFetch, AnArchiveIsNotAskedForDaysBeforeItBegins) {
  FetchRequest asked = request(Archive::power);
  asked.from = day("1900-01-01");
  EXPECT_NE(plan_fetch(asked).url.find("start=19810101"), std::string::npos);
}

TEST(PlanFetch, DaysThatTheArchiveCannotHaveYetAreRefused) {
  FetchRequest asked = request(Archive::reanalysis);
  asked.from = day("2026-02-23");
  EXPECT_NO_THROW((void)plan_fetch(asked));
  asked.from = day("2026-02-24");
  EXPECT_THROW((void)plan_fetch(asked), UsageError);
}

TEST(PlanFetch, ABaseAddressStandsInPlaceOfTheArchives) {
  FetchRequest asked = request(Archive::station);
  asked.base_url = "https://mirror.invalid/ghcn/";
  EXPECT_EQ(plan_fetch(asked).url, "https://mirror.invalid/ghcn/all/XX000000001.dly");
  EXPECT_EQ(plan_station_list("ghcnd-stations.txt", asked.base_url).url,
            "https://mirror.invalid/ghcn/ghcnd-stations.txt");
}

TEST(PlanFetch, OnlyAStationsNumberBecomesAFileName) {
  for (const char* id : {"", "XX00000001", "XX0000000012", "../../../ab", "XX 00000001"}) {
    FetchRequest asked = request(Archive::station);
    asked.station = id;
    EXPECT_THROW((void)plan_fetch(asked), UsageError) << id;
  }
}

TEST(PlanFetch, EverySourceSaysItsTerms) {
  for (const Archive archive :
       {Archive::station, Archive::reanalysis, Archive::forecast, Archive::power}) {
    EXPECT_FALSE(plan_fetch(request(archive)).licence.empty());
    EXPECT_FALSE(plan_fetch(request(archive)).source.empty());
  }
}

TEST(CheckContent, AWebPageIsNoReading) {
  for (const Archive archive : {Archive::station, Archive::reanalysis, Archive::power}) {
    EXPECT_THROW(check_content(plan_fetch(request(archive)), "\n <html>TMIN T2M_MIN T2M_MAX\n"),
                 InputError);
  }
}

TEST(CheckContent, JsonMustBeWholeAndHoldBothTemperaturesOfEachDay) {
  const PlannedFetch plan = plan_fetch(request(Archive::reanalysis));
  EXPECT_NO_THROW(check_content(plan, R"({"daily": {"time": ["2026-01-01"],
    "temperature_2m_max": [28.1], "temperature_2m_min": [null]}})"));
  for (const char* text : {R"({"daily": {"time": ["2026-01-01"], "temperature_2m_max": [28)",
                           R"({"daily": {"time": ["2026-01-01"], "temperature_2m_max": [28.1]}})",
                           R"({"daily": {"time": ["2026-01-01"], "temperature_2m_max": [28.1],
                               "temperature_2m_min": []}})",
                           R"({"daily": {"time": [], "temperature_2m_max": [],
                               "temperature_2m_min": []}})",
                           R"({"daily": 3})",
                           R"([1, 2])",
                           R"("daily")"}) {
    EXPECT_THROW(check_content(plan, text), InputError) << text;
  }
}

TEST(CheckContent, ATableMustHoldTemperaturesAndEndItsLastLine) {
  const PlannedFetch plan = plan_fetch(request(Archive::power));
  EXPECT_NO_THROW(check_content(plan, "YEAR,DOY,T2M_MIN,T2M_MAX\n2026,1,9.0,20.0\n"));
  EXPECT_THROW(check_content(plan, "YEAR,DOY,T2M_MIN\n2026,1,9.0\n"), InputError);
  EXPECT_THROW(check_content(plan, "YEAR,DOY,T2M_MIN,T2M_MAX\n2026,1,9.0,2"), InputError);
}

} // namespace
} // namespace nightsow::climate
