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

constexpr std::string_view first_water_heading = "First water (8 in 10)";

std::string change_text(const ChangeAnswer& change, const TextStyle& style) {
  if (change.change == "bench") {
    return fmt::format("all packets stood on the {}", change.what);
  }
  if (change.change == "packets") {
    return fmt::format("the packets of {} in place of those in hand", change.what);
  }
  if (change.change == "rule") {
    return fmt::format("the rules said {}", change.what);
  }
  if (change.change == "place") {
    return fmt::format(
        "the garden lay where {} does: its readings; benches, packets and today stay, loggers are "
        "left out",
        change.what);
  }
  if (change.change == "mirror") {
    return "the other hemisphere, half a year away; seed keeps its age and ripeness as they are";
  }
  if (change.kelvin) {
    return fmt::format("every night and day {}", difference_text(*change.kelvin, style, true));
  }
  return plain_word("change", change.change);
}

std::string side_text(const WhatIfSide& side, Date today) {
  if (side.list.empty()) {
    return "not in hand";
  }
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

std::string_view side_words(Side side) {
  switch (side) {
  case Side::now:
    return "now";
  case Side::later:
    return "later";
  case Side::unknown:
    return "not known";
  case Side::not_here:
    return "not here";
  case Side::not_in_hand:
    break;
  }
  return "not in hand";
}

std::string side_line(const WhatIfLine& line) {
  const Side before = side_of(line.before);
  const Side after = side_of(line.after);
  return before == after ? std::string{}
                         : paragraph(under_row,
                                     fmt::format("changes side: {}, as it is {}",
                                                 side_words(after),
                                                 side_words(before)));
}

// "In all: 2 packets change side; 20 dates move, the middle one 23 days later; plants …".
std::string totals_line(const WhatIfAnswer& answer) {
  const WhatIfTotals& totals = answer.totals;
  std::string text = fmt::format("{} to another side (now, later, not here)",
                                 counted_text(totals.change_side, "packet"));
  if (totals.moved_days) {
    text += fmt::format("; {} moved, the middle one by {} {}",
                        counted_text(totals.moved, "date"),
                        counted_text(std::abs(*totals.moved_days), "day"),
                        *totals.moved_days > 0 ? "later" : "earlier");
  }
  text += fmt::format("; plants: about {} instead of {}",
                      whole_text(totals.plants_after),
                      whole_text(totals.plants_before));
  return paragraph("In all: ", text);
}

std::string plants_line(const WhatIfLine& line) {
  if (!line.plants_change || whole_text(*line.before.plants) == whole_text(*line.after.plants)) {
    return {};
  }
  return paragraph(under_row,
                   fmt::format("plants: about {} instead of {}",
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
                      side_line(line) + binding_line(line) + plants_line(line)});
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
    columns.push_back({std::string(first_water_heading), Align::left, true});
  }
  return '\n' +
         heading_text(moves_today ? "What stays as it is, counted from today"
                                  : "What stays as it is",
                      style) +
         table_text(columns, rows, style);
}

std::string warmer_text(double kelvin, const TextStyle& style) {
  return kelvin == 0.0 ? "as it is" : difference_text(kelvin, style, true);
}

std::string sweep_totals(const SweepAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const auto& row : answer.rows) {
    rows.push_back({{warmer_text(row.warmer_k, style),
                     std::to_string(row.now),
                     std::to_string(row.later),
                     std::to_string(row.not_here),
                     std::to_string(row.unknown),
                     whole_text(row.plants)}});
  }
  const std::vector<Column> columns{{"Nights and days", Align::right},
                                    {"Water now", Align::right},
                                    {"Later", Align::right},
                                    {"Not here", Align::right},
                                    {"Not known", Align::right},
                                    {"Plants", Align::right}};
  return '\n' + heading_text("All packets", style) + table_text(columns, rows, style);
}

// All rows list the same packets in the same order.
std::string sweep_of_packet(const SweepAnswer& answer, std::size_t packet, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const auto& row : answer.rows) {
    const WhatIfSide& side = row.lines[packet].side;
    rows.push_back({{warmer_text(row.warmer_k, style),
                     side_text(side, answer.today),
                     side.no_later_than ? day_text(*side.no_later_than, answer.today) : "",
                     side.plants ? number_text(*side.plants) : ""}});
  }
  const SweepLine& line = answer.rows.front().lines[packet];
  const std::vector<Column> columns{{"Nights and days", Align::right},
                                    {std::string(first_water_heading), Align::left, true},
                                    {"Best by"},
                                    {"Plants", Align::right}};
  return '\n' + heading_text(line.packet + "  " + line.taxon, style) +
         table_text(columns, rows, style);
}

} // namespace

std::string sweep_text(const SweepAnswer& answer, const TextStyle& style) {
  std::string text = garden_line(answer.garden, answer.today, answer.season);
  for (const auto& change : answer.changes) {
    text += paragraph("What if: ", change_text(change, style));
  }
  text += paragraph("What if: ", "every night and day were so much warmer or cooler");
  if (answer.rows.empty()) {
    return text;
  }
  text += sweep_totals(answer, style);
  for (std::size_t i = 0; i < answer.rows.front().lines.size(); ++i) {
    text += sweep_of_packet(answer, i, style);
  }
  return text;
}

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
  text += totals_line(answer);
  text += differences_text(answer, style);
  text += unchanged_text(answer, style);
  return text + warnings_block("Under the change", answer.warnings, style);
}

} // namespace nightsow::planner
