#include "planner/render/answer_text.hpp"
#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plain_words.hpp"
#include "planner/render/table.hpp"
#include "planner/render/text_parts.hpp"

#include <fmt/format.h>

#include <cstdlib>

namespace nightsow::planner {

namespace {

std::string change_text(const ChangeAnswer& change, const TextStyle& style) {
  if (change.change == "mirror") {
    return "the other hemisphere, half a year away; seed keeps its age and ripeness as they are";
  }
  if (change.kelvin) {
    return fmt::format("every night and day {}", difference_text(*change.kelvin, style, true));
  }
  return plain_word("change", change.change);
}

std::string side_text(const WhatIfSide& side, Date today) {
  if (side.list == "not_now") {
    return "not this season, or not here";
  }
  if (side.verdict == "water_now") {
    return "water now";
  }
  if (side.verdict == "unknown") {
    return "unknown";
  }
  return spread_text(side.expected, today);
}

std::string moved_text(const WhatIfLine& line) {
  if (!line.moved_days) {
    return "no date to compare";
  }
  if (*line.moved_days == 0) {
    return "same day";
  }
  return fmt::format("{} {}",
                     counted_text(std::abs(*line.moved_days), "day"),
                     *line.moved_days > 0 ? "later" : "earlier");
}

// Dates themselves move under a mirror, so sides are compared by what they say of the packet.
bool differs(const WhatIfLine& line) {
  return line.before.list != line.after.list || line.before.verdict != line.after.verdict ||
         line.before.binds != line.after.binds || line.moved_days.value_or(0) != 0;
}

// That nights come to decide, or no longer do, is a difference of its own.
std::string binding_line(const WhatIfLine& line) {
  if (!line.before.binds || !line.after.binds || line.before.binds == line.after.binds) {
    return {};
  }
  return paragraph(
      under_row, *line.after.binds ? "cool nights come to decide" : "cool nights no longer decide");
}

std::string differences_text(const WhatIfAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const auto& line : answer.lines) {
    if (differs(line)) {
      rows.push_back({{line.packet,
                       line.taxon,
                       side_text(line.before, answer.today_before),
                       side_text(line.after, answer.today_after),
                       moved_text(line)},
                      binding_line(line)});
    }
  }
  const std::vector<Column> columns{{"Packet"},
                                    {"Taxon", Align::left, true},
                                    {"As it is (8 in 10)", Align::left, true},
                                    {"Under the change (8 in 10)", Align::left, true},
                                    {"Moved"}};
  return '\n' + heading_text("What differs", style) +
         (rows.empty() ? "  Nothing.\n" : table_text(columns, rows, style));
}

std::string unchanged_text(const WhatIfAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const auto& line : answer.lines) {
    if (!differs(line)) {
      rows.push_back({{line.packet, line.taxon, side_text(line.after, answer.today_after)}, ""});
    }
  }
  const std::vector<Column> columns{
      {"Packet"}, {"Taxon", Align::left, true}, {"First water (8 in 10)", Align::left, true}};
  return rows.empty()
             ? ""
             : '\n' + heading_text("What stays as it is", style) + table_text(columns, rows, style);
}

} // namespace

std::string whatif_text(const WhatIfAnswer& answer, const TextStyle& style) {
  std::string text = garden_line(answer.garden, answer.today_before, answer.season_before);
  for (const auto& change : answer.changes) {
    text += paragraph("What if: ", change_text(change, style));
  }
  if (answer.today_after != answer.today_before || answer.season_after != answer.season_before) {
    text += fmt::format("Under the change it is {}, season {}.\n",
                        date_text(answer.today_after),
                        answer.season_after);
  }
  text += differences_text(answer, style);
  text += unchanged_text(answer, style);
  return text + warnings_block("Under the change", answer.warnings, style);
}

} // namespace nightsow::planner
