#include "planner/render/answer_text.hpp"
#include "planner/render/carried.hpp"
#include "planner/render/cautions.hpp"
#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plan_lines.hpp"
#include "planner/render/saved.hpp"
#include "planner/render/shopping.hpp"
#include "planner/render/table.hpp"
#include "planner/render/text_parts.hpp"
#include "planner/render/work.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>

namespace nightsow::planner {

namespace {

/// A part of the screen, in the order in which a grower needs them.
enum class Part { now, ripeness, cool_nights, milder_days, unknown, hot_season, hardly_worth };

struct PartHeading {
  Part part;
  std::string_view text;
};

constexpr std::array<PartHeading, 7> parts{{
    {Part::now, "Now: sow, and give first water"},
    {Part::ripeness, "Waiting for the seed to ripen"},
    {Part::cool_nights, "Waiting for cool nights"},
    {Part::milder_days, "Waiting for milder days"},
    {Part::unknown, "Unknown, until the readings say more"},
    {Part::hot_season, "In the hot season"},
    {Part::hardly_worth, "Hardly worth its seed here, as things stand"},
}};

bool gives(const Sowing& sowing, ReasonCode code) {
  return std::any_of(sowing.reasons.begin(), sowing.reasons.end(), [code](const Reason& reason) {
    return reason.code == code;
  });
}

Part part_of(const Sowing& sowing) {
  // What cannot wait stays where it is seen first.
  if (gives(sowing, ReasonCode::hardly_any_lives) && sowing.start != "at_once") {
    return Part::hardly_worth;
  }
  if (sowing.verdict == Verdict::water_now) {
    return Part::now;
  }
  if (sowing.verdict == Verdict::unknown) {
    return Part::unknown;
  }
  if (sowing.start == "hot") {
    return Part::hot_season;
  }
  if (gives(sowing, ReasonCode::seed_not_ripe)) {
    return Part::ripeness;
  }
  if (gives(sowing, ReasonCode::hot_days) || gives(sowing, ReasonCode::freezing_nights)) {
    return Part::milder_days;
  }
  return sowing.gate && sowing.gate->binds ? Part::cool_nights : Part::milder_days;
}

std::string first_water(const Sowing& sowing, Part part, Date today) {
  if (part != Part::now) {
    return first_water_cell(sowing, today);
  }
  return sowing.sow_on && *sowing.sow_on != today ? day_text(*sowing.sow_on, today) : "today";
}

std::string latest_cell(const Sowing& sowing, Date today) {
  const auto& latest = sowing.first_water.no_later_than;
  return latest ? day_text(*latest, today) : "no date";
}

TableRow sowing_row(
    const Sowing& sowing, Part part, bool with_gate, Date today, const TextStyle& style) {
  TableRow row;
  row.cells = {sowing.packet, taxon_cell(sowing.taxon, sowing.accepted), seeds_cell(sowing)};
  if (with_gate) {
    row.cells.push_back(gate_cell(sowing, style));
  }
  row.cells.push_back(first_water(sowing, part, today));
  row.cells.push_back(latest_cell(sowing, today));
  row.below = below_sowing(sowing, today, style);
  return row;
}

std::string part_text(const PlanAnswer& answer,
                      const PartHeading& heading,
                      const TextStyle& style) {
  bool with_gate = false;
  for (const auto& sowing : answer.sowings) {
    with_gate = with_gate || (part_of(sowing) == heading.part && sowing.gate);
  }
  std::vector<TableRow> rows;
  for (const auto& sowing : answer.sowings) {
    if (part_of(sowing) == heading.part) {
      rows.push_back(sowing_row(sowing, heading.part, with_gate, answer.today, style));
    }
  }
  if (rows.empty()) {
    return {};
  }
  std::vector<Column> columns{
      {"Packet", Align::left, true}, {"Taxon", Align::left, true}, {"Seeds", Align::right}};
  if (with_gate) {
    columns.push_back({"Cool nights so far", Align::left, true});
  }
  columns.push_back({"First water (8 in 10)", Align::left, true});
  columns.push_back({"Best by"});
  return '\n' + heading_text(heading.text, style) + table_text(columns, rows, style);
}

std::string not_now_text(const PlanAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const auto& line : answer.not_now) {
    rows.push_back({{line.packet,
                     taxon_cell(line.taxon, line.accepted),
                     line.when ? day_text(*line.when, answer.today) : "no date"},
                    because_lines(line.reasons, style)});
  }
  if (rows.empty()) {
    return {};
  }
  const std::vector<Column> columns{
      {"Packet", Align::left, true}, {"Taxon", Align::left, true}, {"Next"}};
  return '\n' + heading_text("Not this season, or not here", style) +
         table_text(columns, rows, style);
}

std::string head_text(const PlanAnswer& answer, const TextStyle& style) {
  std::string text = garden_line(answer.garden, answer.today, answer.season);
  if (answer.preview) {
    text += "A look ahead: every window of the season asked for has passed.\n";
  }
  if (answer.phases) {
    const PhasesHead& phases = *answer.phases;
    text += paragraph(
        "Nights: ",
        fmt::format("hottest about {}, the cooling limb begins {}, coldest about {}, {} apart",
                    day_text(phases.hottest_night, answer.today),
                    day_text(phases.cooling_limb_begins, answer.today),
                    day_text(phases.coldest_night, answer.today),
                    difference_text(phases.nights_swing_c, style)));
  }
  return text + readings_line(answer.readings);
}

} // namespace

std::string plan_text(const PlanAnswer& answer, const TextStyle& style) {
  std::string text = head_text(answer, style);
  text += warnings_block("First of all", answer.warnings, style);
  text += since_saved_text(answer, style);
  for (const auto& heading : parts) {
    text += part_text(answer, heading, style);
  }
  if (answer.sowings.empty()) {
    text += "\nNothing to sow this season.\n";
  }
  text += carried_text(answer, style);
  text += not_now_text(answer, style);
  if (style.work) {
    text += work_text(answer, style);
  }
  text += free_days_text(answer.free_days, style);
  text += shopping_text(answer.shopping, style);
  text += cautions_text(answer, style);
  if (!style.why && !answer.sowings.empty()) {
    text += "\nAll reasons, risks and how to sow: --why; trays and the season's work: --work\n";
  }
  return text;
}

} // namespace nightsow::planner
