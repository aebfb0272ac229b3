#include "climate/base/date.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/table.hpp"

#include <fmt/format.h>

namespace nightsow::planner {

namespace {

std::string metres(const std::optional<double>& height, const char* form) {
  return height ? fmt::format(fmt::runtime(form), *height) : "?";
}

std::string stations_text(const FetchAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const auto& station : answer.stations) {
    rows.push_back({{station.id,
                     station.name,
                     fmt::format("{:.1f}", station.distance_km),
                     metres(station.higher_m, "{:+.0f}"),
                     fmt::format("{}", station.years),
                     fmt::format("{}", station.last_year),
                     fmt::format("{:.0f}", station.for_height),
                     fmt::format("{:.0f}", station.for_years),
                     fmt::format("{:.0f}", station.for_age),
                     fmt::format("{:.0f}", station.doubt)}});
  }
  if (rows.empty()) {
    return "";
  }
  const std::vector<Column> columns{{"Station"},
                                    {"Name", Align::left, true},
                                    {"km", Align::right},
                                    {"Higher, m", Align::right},
                                    {"Years", Align::right},
                                    {"To", Align::right},
                                    {"+height", Align::right},
                                    {"+years", Align::right},
                                    {"+age", Align::right},
                                    {"= doubt", Align::right}};
  std::string text = heading_text("Stations near the garden, best first", style);
  text += table_text(columns, rows, style);
  text += paragraph("  ",
                    "Doubt is in kilometres: the distance, and what is added for a difference in "
                    "height, for years fewer than 30, and for years since the last one.");
  if (answer.list_age_days && *answer.list_age_days > 0) {
    text += paragraph("  ", fmt::format("The station list is {} days old.", *answer.list_age_days));
  }
  return text + '\n';
}

std::string arrival_text(const FetchAnswer& answer) {
  if (answer.dry_run) {
    return "Dry run: no readings were fetched.";
  }
  if (answer.arrival == "fetched") {
    return fmt::format("Fetched {}, {} bytes.", answer.file, answer.bytes.value_or(0));
  }
  if (answer.arrival == "unchanged") {
    return fmt::format("{} is still the newest; nothing had to be fetched.", answer.file);
  }
  const int days = answer.age_days.value_or(0);
  return fmt::format("Nothing newer came. {} stays as it was: {} day{} old. ({})",
                     answer.file,
                     days,
                     days == 1 ? "" : "s",
                     answer.trouble);
}

std::string readings_text(const FetchAnswer& answer) {
  if (answer.dry_run) {
    return "";
  }
  if (!answer.readings) {
    return paragraph("  ", "This version cannot read its format yet; the file is kept as it came.");
  }
  const FetchedReadings& readings = *answer.readings;
  return paragraph("  ",
                   fmt::format("{}: {} to {}, {:.1f} % of the nights and {:.1f} % of the days.",
                               readings.format,
                               format_iso_date(readings.from),
                               format_iso_date(readings.to),
                               100.0 * readings.nights_there,
                               100.0 * readings.days_there));
}

std::string next_text(const FetchAnswer& answer) {
  if (answer.in_garden) {
    return paragraph("  ", "garden.json names it already.");
  }
  return paragraph("  ", "To plan by it, add to \"readings\" in garden.json:") + "      " +
         answer.garden_line + '\n';
}

} // namespace

std::string fetch_text(const FetchAnswer& answer, const TextStyle& style) {
  std::string text = stations_text(answer, style);
  text += paragraph("", arrival_text(answer));
  text += readings_text(answer);
  text += "  address:  " + answer.url + '\n'; // whole, to be copied, however long
  text += paragraph("  sent:     ", answer.sent);
  text += paragraph("  source:   ", answer.source);
  text += paragraph("  licence:  ", answer.licence);
  return text + next_text(answer);
}

} // namespace nightsow::planner
