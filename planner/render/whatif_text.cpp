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

// That nights come to decide, or no longer do, is a difference of its own.
std::string binding_line(const WhatIfLine& line) {
  if (!line.before.binds || !line.after.binds || line.before.binds == line.after.binds) {
    return {};
  }
  return paragraph(
      under_row, *line.after.binds ? "cool nights come to decide" : "cool nights no longer decide");
}

std::string plants_line(const WhatIfLine& line) {
  if (!line.plants_change || whole_text(*line.before.plants) == whole_text(*line.after.plants)) {
    return {};
  }
  return paragraph(under_row,
                   fmt::format("plants after their first rest: about {} instead of {}",
                               whole_text(*line.after.plants),
                               whole_text(*line.before.plants)));
}

std::string differences_text(const WhatIfAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const auto& line : answer.lines) {
    if (line.differs) {
      rows.push_back({{line.packet,
                       line.taxon,
                       side_text(line.before, answer.today_before),
                       side_text(line.after, answer.today_after),
                       moved_text(line)},
                      binding_line(line) + plants_line(line)});
    }
  }
  const std::vector<Column> columns{{"Packet", Align::left, true},
                                    {"Taxon", Align::left, true},
                                    {"As it is (8 in 10)", Align::left, true},
                                    {"Under the change (8 in 10)", Align::left, true},
                                    {"Moved"}};
  return '\n' + heading_text("What differs", style) +
         (rows.empty() ? "  Nothing.\n" : table_text(columns, rows, style));
}

// Where the change moves today, as a mirror does, both dates are shown: they stand equally far off.
std::string unchanged_text(const WhatIfAnswer& answer, const TextStyle& style) {
  const bool moves_today = answer.today_after != answer.today_before;
  std::vector<TableRow> rows;
  for (const auto& line : answer.lines) {
    if (line.differs) {
      continue;
    }
    TableRow row{{line.packet, line.taxon}, ""};
    if (moves_today) {
      row.cells.push_back(side_text(line.before, answer.today_before));
    }
    row.cells.push_back(side_text(line.after, answer.today_after));
    rows.push_back(std::move(row));
  }
  if (rows.empty()) {
    return {};
  }
  std::vector<Column> columns{{"Packet", Align::left, true}, {"Taxon", Align::left, true}};
  if (moves_today) {
    columns.push_back({"As it is (8 in 10)", Align::left, true});
    columns.push_back({"Under the change (8 in 10)", Align::left, true});
  } else {
    columns.push_back({"First water (8 in 10)", Align::left, true});
  }
  return '\n' +
         heading_text(moves_today ? "What stays as it is, counted from today"
                                  : "What stays as it is",
                      style) +
         table_text(columns, rows, style);
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
