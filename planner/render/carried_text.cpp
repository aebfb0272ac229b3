#include "planner/render/carried.hpp"
#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plan_lines.hpp"
#include "planner/render/table.hpp"
#include "planner/render/text_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <string_view>
#include <utility>
#include <vector>

namespace nightsow::planner {

namespace {

struct StageWords {
  PotStage stage;
  std::string_view heading;
  std::string_view column; ///< of its date
};

constexpr std::array<StageWords, 3> stages{{
    {PotStage::dry, "Sown dry, not watered yet", "First water (8 in 10)"},
    {PotStage::resting, "Pots carried over: water wakes them", "Water again (8 in 10)"},
    {PotStage::growing, "Growing", "Rests about"},
}};

std::string pot_cell(const CarriedPot& pot) {
  const std::string packet = pot.packet.empty() ? "-" : pot.packet;
  return pot.sowing > 0 ? fmt::format("{} #{}", packet, pot.sowing) : packet;
}

std::string up_cell(const CarriedPot& pot) {
  return pot.alive ? fmt::format("{} of {}", *pot.alive, pot.seeds)
                   : fmt::format("? of {}", pot.seeds);
}

std::string date_cell(const CarriedPot& pot, Date today) {
  if (pot.stage == PotStage::growing) {
    if (pot.first_rest == "none") {
      return "evergreen";
    }
    const std::string day = pot.rests ? day_text(*pot.rests, today) : "no date";
    return pot.first_rest == "dies" ? "ends " + day : day;
  }
  if (pot.verdict == Verdict::water_now) {
    return "now";
  }
  return pot.water.held ? day_text(*pot.water.held, today) : spread_text(pot.water.expected, today);
}

std::string more_text(const CarriedPot& pot) {
  if (!pot.more) {
    return {};
  }
  const std::string mean = whole_text(pot.more->mean);
  const std::string text = pot.more->p90 <= 0.0
                               ? "hardly any seedling more"
                               : fmt::format("about {} {} (likely {} to {})",
                                             mean,
                                             mean == "1" ? "seedling" : "seedlings",
                                             whole_text(pot.more->p10),
                                             whole_text(pot.more->p90));
  return paragraph(fmt::format("{}expect: ", under_row), text);
}

std::string behind_lines(const CarriedPot& pot, const TextStyle& style) {
  std::vector<Reason> behind;
  std::copy_if(pot.reasons.begin(),
               pot.reasons.end(),
               std::back_inserter(behind),
               [](const Reason& reason) { return reason.code == ReasonCode::behind_expected; });
  return behind.empty() ? "" : because_lines(behind, style);
}

std::string stage_text(const PlanAnswer& answer, const StageWords& words, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const CarriedPot& pot : answer.carried) {
    if (pot.stage == words.stage) {
      const bool brief = pot.stage == PotStage::growing && !style.why;
      const std::string behind = behind_lines(pot, style);
      rows.push_back({{pot_cell(pot),
                       taxon_cell(pot.taxon, pot.accepted),
                       day_text(pot.sown_on, answer.today),
                       up_cell(pot),
                       date_cell(pot, answer.today)},
                      brief ? behind : because_lines(pot.reasons, style) + more_text(pot)});
    }
  }
  if (rows.empty()) {
    return {};
  }
  const std::vector<Column> columns{{"Packet", Align::left, true},
                                    {"Taxon", Align::left, true},
                                    {"Sown"},
                                    {"Alive", Align::right},
                                    {std::string(words.column), Align::left, true}};
  return '\n' + heading_text(words.heading, style) + table_text(columns, rows, style);
}

} // namespace

std::string carried_text(const PlanAnswer& answer, const TextStyle& style) {
  std::string text;
  for (const StageWords& words : stages) {
    text += stage_text(answer, words, style);
  }
  return text;
}

} // namespace nightsow::planner
