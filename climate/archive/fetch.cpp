#include "climate/archive/fetch.hpp"

#include "climate/base/problem.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

namespace nightsow::climate {

namespace {

constexpr std::size_t id_letters = 11;
constexpr int usual_years = 30; // WMO-No. 1203: the length of a normal period

// What each archive says of itself. Addresses: GHCN-Daily readme.txt; the public documentation of
// the two interfaces by place.
struct ArchiveFacts {
  std::string_view base;
  std::string_view source;
  std::string_view licence;
  int first_year; ///< 0: as far as it goes
  int days_late;  ///< so many days the newest value lies back
};

ArchiveFacts facts_of(Archive archive) {
  constexpr std::string_view open_service_licence =
      "CC BY 4.0: name Open-Meteo.com as the source when you pass it on. The free service is for "
      "use that earns nothing; check its terms.";
  switch (archive) {
  case Archive::station:
    return {"https://www.ncei.noaa.gov/pub/data/ghcn/daily",
            "GHCN-Daily (NOAA National Centers for Environmental Information)",
            "Data of the US government, in the public domain; other countries' stations may carry "
            "terms of their own for resale. Name GHCN-Daily as the source.",
            0,
            0};
  case Archive::reanalysis:
    return {"https://archive-api.open-meteo.com",
            "Open-Meteo archive (reanalysis)",
            open_service_licence,
            1940,
            6};
  case Archive::forecast:
    return {"https://api.open-meteo.com", "Open-Meteo forecast", open_service_licence, 0, 0};
  case Archive::power:
    break;
  }
  return {"https://power.larc.nasa.gov",
          "NASA POWER (Prediction Of Worldwide Energy Resources)",
          "Data of the US government, free to use. Name the NASA POWER project as the source.",
          1981,
          3};
}

std::string base_of(const ArchiveFacts& facts, const std::string& base_url) {
  std::string base = base_url.empty() ? std::string(facts.base) : base_url;
  while (base.ends_with('/')) {
    base.pop_back();
  }
  return base;
}

void check_station(const std::string& id) {
  const bool letters = std::all_of(id.begin(), id.end(), [](unsigned char letter) {
    return std::isalnum(letter) != 0 || letter == '-' || letter == '_';
  });
  if (id.size() != id_letters || !letters) {
    throw UsageError({Severity::error,
                      "--station",
                      0,
                      0,
                      "this is no station's number",
                      "11 letters and figures such as USW00094728",
                      "--nearest --dry-run lists the stations near you"});
  }
}

struct Span {
  Date from{};
  Date to{};
};

Span span_of(const FetchRequest& request, const ArchiveFacts& facts) {
  const Date to = request.today - Days{facts.days_late};
  const date::month_day new_year{date::month{1}, date::day{1}};
  const Date earliest = in_year(new_year, facts.first_year);
  const Date from = std::max(
      earliest, request.from.value_or(in_year(new_year, year_of(request.today) - usual_years)));
  if (from > to) {
    throw UsageError(
        {Severity::error,
         "--from",
         0,
         0,
         format_iso_date(from) + " is too late: the archive ends about " + format_iso_date(to),
         "an earlier day",
         "leave it out for the last thirty years"});
  }
  return {from, to};
}

std::string compact(Date day) {
  std::string text = format_iso_date(day);
  std::erase(text, '-');
  return text;
}

std::string place_of(const FetchRequest& request) {
  return fmt::format("latitude={:.2f}&longitude={:.2f}", request.latitude, request.longitude);
}

} // namespace

PlannedFetch plan_fetch(const FetchRequest& request) {
  const ArchiveFacts facts = facts_of(request.archive);
  const std::string base = base_of(facts, request.base_url);
  constexpr std::string_view daily = "daily=temperature_2m_max,temperature_2m_min&timezone=auto";
  PlannedFetch plan{request.archive, "", "", std::string(facts.source), std::string(facts.licence)};
  switch (request.archive) {
  case Archive::station:
    check_station(request.station);
    plan.url = fmt::format("{}/all/{}.dly", base, request.station);
    plan.file = fmt::format("ghcnd-{}.dly", request.station);
    break;
  case Archive::reanalysis: {
    const Span span = span_of(request, facts);
    plan.url = fmt::format("{}/v1/archive?{}&start_date={}&end_date={}&{}",
                           base,
                           place_of(request),
                           format_iso_date(span.from),
                           format_iso_date(span.to),
                           daily);
    plan.file = "reanalysis.json";
    break;
  }
  case Archive::forecast:
    plan.url = fmt::format("{}/v1/forecast?{}&{}&forecast_days=16", base, place_of(request), daily);
    plan.file = "forecast.json";
    break;
  case Archive::power: {
    const Span span = span_of(request, facts);
    plan.url = fmt::format("{}/api/temporal/daily/point?parameters=T2M_MAX,T2M_MIN&community=AG&{}"
                           "&start={}&end={}&format=CSV",
                           base,
                           place_of(request),
                           compact(span.from),
                           compact(span.to));
    plan.file = "nasa-power.csv";
    break;
  }
  }
  return plan;
}

PlannedFetch plan_station_list(std::string_view file, const std::string& base_url) {
  const ArchiveFacts facts = facts_of(Archive::station);
  return {Archive::station,
          fmt::format("{}/{}", base_of(facts, base_url), file),
          std::string(file),
          std::string(facts.source),
          std::string(facts.licence)};
}

} // namespace nightsow::climate
