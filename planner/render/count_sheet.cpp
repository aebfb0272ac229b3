#include "planner/render/count_sheet.hpp"

#include "planner/render/json_parts.hpp"
#include "planner/render/table.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <utility>
#include <vector>

namespace nightsow::planner {

namespace {

constexpr auto room = "______";

std::string last_text(const SheetRow& row) {
  if (row.last_seen) {
    return fmt::format("{} on {}", *row.last_seen, format_iso_date(*row.last_on));
  }
  return row.wetted ? "" : "dry";
}

} // namespace

std::string count_sheet_text(const CountSheetAnswer& answer, const TextStyle& style) {
  if (answer.rows.empty()) {
    return "Nothing is sown, or nothing was written of it for over a year. "
           "Begin with: nightsow sow TAXON SEEDS\n";
  }
  std::vector<TableRow> rows;
  rows.reserve(answer.rows.size());
  for (const SheetRow& row : answer.rows) {
    rows.push_back({{std::to_string(row.sowing),
                     row.taxon,
                     row.bench,
                     format_iso_date(row.sown),
                     std::to_string(row.seeds),
                     last_text(row) + (row.resting ? ", at rest" : ""),
                     room,
                     room}});
  }
  return fmt::format("Counts, {}\n", format_iso_date(answer.today)) +
         table_text({{"Sowing", Align::right},
                     {"Taxon"},
                     {"Bench"},
                     {"Sown"},
                     {"Seeds", Align::right},
                     {"Up last time"},
                     {"Up now"},
                     {"Dead"}},
                    rows,
                    style) +
         "To enter it: one line a sowing in this order, as 7 or 7 2 (2 dead), empty where nobody "
         "looked:\n  nightsow count --sheet < numbers.txt\n";
}

std::string to_json(const CountSheetAnswer& answer) {
  Json json = json_top();
  json["today"] = json_date(answer.today);
  json["rows"] = Json::array();
  for (const SheetRow& row : answer.rows) {
    Json one;
    one["sowing"] = row.sowing;
    one["packet"] = json_text(row.packet);
    one["taxon"] = row.taxon;
    one["bench"] = json_text(row.bench);
    one["sown"] = json_date(row.sown);
    one["seeds"] = row.seeds;
    one["pots"] = row.pots;
    one["wetted"] = row.wetted;
    one["resting"] = row.resting;
    one["last_seen"] = json_number(row.last_seen);
    one["last_on"] = json_date(row.last_on);
    json["rows"].push_back(std::move(one));
  }
  return json_dump(json);
}

} // namespace nightsow::planner
