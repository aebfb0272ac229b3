#include "climate/base/csv.hpp"
#include "planner/render/plan_files.hpp"

#include <fmt/format.h>

#include <string_view>
#include <vector>

namespace nightsow::planner {

namespace {

std::string cell(const std::optional<Date>& day) {
  return day ? format_iso_date(*day) : "";
}

std::string cell(const std::optional<double>& number) {
  return number ? fmt::format("{}", *number) : "";
}

std::string cell(const std::optional<int>& number) {
  return number ? fmt::format("{}", *number) : "";
}

std::string row(const std::vector<std::string>& cells) {
  std::string line;
  for (const std::string& text : cells) {
    line += (line.empty() ? "" : ",") + csv_field(text, ',');
  }
  return line + "\r\n";
}

} // namespace

std::string plan_csv(const PlanAnswer& answer) {
  std::string text = row({"packet",
                          "taxon",
                          "accepted",
                          "start",
                          "verdict",
                          "bench",
                          "tray",
                          "seeds",
                          "pots",
                          "sow_on",
                          "first_water_p10",
                          "first_water_p50",
                          "first_water_p90",
                          "no_later_than",
                          "seedlings",
                          "plants"});
  for (const Sowing& one : answer.sowings) {
    const Spread& water = one.first_water.expected;
    const auto& expected = one.expected;
    text += row({one.packet,
                 one.taxon,
                 one.accepted,
                 one.start,
                 std::string{name_of(one.verdict)},
                 one.bench,
                 one.tray ? one.tray->tray : "",
                 cell(one.seeds),
                 cell(one.how.pots),
                 cell(one.sow_on),
                 cell(water.p10),
                 cell(water.p50),
                 cell(water.p90),
                 cell(one.first_water.no_later_than),
                 cell(expected ? std::optional{expected->seedlings.mean} : std::nullopt),
                 cell(expected ? std::optional{expected->plants.mean} : std::nullopt)});
  }
  for (const NotNow& one : answer.not_now) {
    text += row({one.packet,
                 one.taxon,
                 one.accepted,
                 one.start,
                 "not_now",
                 "",
                 "",
                 "",
                 "",
                 "",
                 "",
                 cell(one.when),
                 "",
                 "",
                 "",
                 ""});
  }
  return text;
}

} // namespace nightsow::planner
