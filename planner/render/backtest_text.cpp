#include "planner/render/answer_text.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/table.hpp"
#include "planner/render/text_parts.hpp"
#include "planner/render/words.hpp"

#include <fmt/format.h>

namespace nightsow::planner {

namespace {

std::string days_text(double days) {
  return fmt::format("{:.2f}", days);
}

std::string event_heading(const BacktestEvent& event) {
  return event.event == "stirs" ? "The first cool week: 5 of 7 nights at or under a limit"
                                : "Cool enough to water, where nights decide";
}

// Under so many a share says little.
constexpr int few_cases = 30;

// The whole table in a sentence a line.
std::string in_plain_words(const BacktestEvent& event) {
  std::string text;
  for (const auto& lead : event.leads) {
    if (lead.cases < few_cases) {
      text += paragraph("  ",
                        fmt::format("{} days before: {}, too few to tell.",
                                    lead.lead_days,
                                    counted_text(lead.cases, "case")));
      continue;
    }
    const bool better = lead.skill && *lead.skill > 0.0;
    text += paragraph(
        "  ",
        fmt::format("{} days before, the range told as 8 in 10 held {:.0f} times in 100; the dates "
                    "told were {} than the past dates still possible.",
                    lead.lead_days,
                    100.0 * lead.coverage_80,
                    better ? percent_text(*lead.skill) + " better" : "no better"));
  }
  return text + '\n';
}

std::string scores_table(const BacktestEvent& event, bool forecast, const TextStyle& style) {
  std::vector<Column> columns{{"Days before", Align::right},
                              {"Cases", Align::right},
                              {"Outlook", Align::right},
                              {"All past", Align::right},
                              {"Possible", Align::right},
                              {"Better by", Align::right},
                              {"In range", Align::right}};
  if (forecast) {
    columns.push_back({"With forecast", Align::right});
    columns.push_back({"Better by", Align::right});
  }
  std::vector<TableRow> rows;
  for (const auto& lead : event.leads) {
    TableRow row{{std::to_string(lead.lead_days),
                  std::to_string(lead.cases),
                  days_text(lead.crps_outlook),
                  days_text(lead.crps_past),
                  days_text(lead.crps_possible),
                  lead.skill ? percent_text(*lead.skill) : "-",
                  percent_text(lead.coverage_80)}};
    if (lead.crps_forecast && lead.skill_forecast) {
      row.cells.push_back(days_text(*lead.crps_forecast));
      row.cells.push_back(percent_text(*lead.skill_forecast));
    }
    rows.push_back(std::move(row));
  }
  return table_text(columns, rows, style);
}

std::string ranks_table(const BacktestEvent& event, const TextStyle& style) {
  std::vector<Column> columns{{"Days before", Align::right}};
  for (int tenth = 1; tenth <= 10; ++tenth) {
    columns.push_back({fmt::format("{}.", tenth), Align::right});
  }
  std::vector<TableRow> rows;
  for (const auto& lead : event.leads) {
    TableRow row{{std::to_string(lead.lead_days)}};
    for (const double share : lead.pit) {
      row.cells.push_back(fmt::format("{:.0f}", 100.0 * share));
    }
    rows.push_back(std::move(row));
  }
  return "  In which tenth of the outlook the day came, % of cases (10 each, were all chances "
         "right)\n" +
         table_text(columns, rows, style);
}

std::string relapse_lines(const BacktestEvent& event) {
  if (!event.relapse_share || !event.relapse_brier || !event.relapse_brier_climate) {
    return {};
  }
  return '\n' + paragraph("  ",
                          fmt::format("Warm again within 28 days of it: in {} of {} cases. The "
                                      "chance told on that day had a Brier score of {:.3f}; always "
                                      "telling the share of past seasons {:.3f} (0 is best).",
                                      percent_text(*event.relapse_share),
                                      event.relapse_cases,
                                      *event.relapse_brier,
                                      *event.relapse_brier_climate));
}

std::string event_text(const BacktestEvent& event, bool forecast, const TextStyle& style) {
  std::string text = '\n' + heading_text(event_heading(event), style);
  if (event.leads.empty()) {
    return text +
           paragraph("  ",
                     "No case: at these limits nights come down too early, not in every year, or "
                     "do not decide.") +
           relapse_lines(event);
  }
  return text + in_plain_words(event) + scores_table(event, forecast, style) + '\n' +
         ranks_table(event, style) + relapse_lines(event);
}

std::string gates_text(const std::vector<double>& gates_c, const TextStyle& style) {
  std::vector<std::string> gates;
  gates.reserve(gates_c.size());
  for (const double gate_c : gates_c) {
    gates.push_back(temperature_text(gate_c, style));
  }
  return fmt::format("{}", fmt::join(gates, ", "));
}

std::string how_to_read(const BacktestAnswer& answer, const TextStyle& style) {
  if (answer.gates_tried_c.empty()) {
    return paragraph(
        "",
        fmt::format("Nights here do not come down to any of the limits tried ({}) late "
                    "enough in most years: there is nothing to test.",
                    gates_text(answer.gates_c, style)));
  }
  std::string text = paragraph(
      "",
      fmt::format("Tested on {}, each with only what was known before it and at least {} before "
                  "it, on the air at the station, at night limits of {}.",
                  counted_text(answer.seasons, "past season"),
                  answer.seasons_before,
                  gates_text(answer.gates_tried_c, style)));
  text += paragraph("",
                    "In the tables: a case is a season and a limit; under some thirty cases a line "
                    "says little. Scores are days missed by, the width of what was told counted in "
                    "(fair CRPS); smaller is better. All past: had the dates of all past seasons "
                    "been told; possible: those of them that had not gone by. Better by: the "
                    "outlook against the possible ones. In range: how often the day came within "
                    "the range told as 8 in 10.");
  if (answer.forecast_days > 0) {
    text += paragraph("",
                      fmt::format("With forecast: what came in the next {}, with an error that "
                                  "grows from day to day, stands in for the forecasts of then.",
                                  counted_text(answer.forecast_days, "day")));
  }
  return text;
}

} // namespace

std::string backtest_text(const BacktestAnswer& answer, const TextStyle& style) {
  std::string text = garden_line(answer.garden, answer.today, std::nullopt);
  text += readings_line(answer.readings);
  if (!answer.events.empty()) {
    text += '\n' + how_to_read(answer, style);
  }
  for (const auto& event : answer.events) {
    text += event_text(event, answer.forecast_days > 0, style);
  }
  return text + warnings_block("Note", answer.warnings, style);
}

} // namespace nightsow::planner
