#include "climate/base/celsius.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/table.hpp"
#include "planner/render/text_parts.hpp"
#include "planner/render/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>

namespace nightsow::planner {

namespace {

std::string open_words(Open open) {
  switch (open) {
  case Open::yes:
    return "yes";
  case Open::no:
    return "not yet";
  case Open::unknown:
    break;
  }
  return "unknown";
}

std::string limit_text(double limit_c,
                       const std::optional<double>& day_limit_c,
                       const TextStyle& style) {
  const std::string nights = temperature_text(limit_c, style);
  return day_limit_c ? fmt::format("{}, days {}", nights, temperature_text(*day_limit_c, style))
                     : nights;
}

std::string stirs_text(const GenusNights& line, Date today) {
  std::string text =
      fmt::format("{} of {} nights: {}", line.nights, line.of, spread_text(line.stirs, today));
  if (line.relapse > 0.0) {
    text += fmt::format(
        "; warm again within four weeks of the day they hold in {} of the possible seasons",
        share_text(line.relapse));
  }
  return text;
}

constexpr std::string_view bars_explained = "\n  Bars: ▁ at or under the limit, higher is warmer "
                                            "(█ over 8 K above it), a gap is missing.\n";

// A cool night is the lowest bar; the others stand so many kelvin above the limit, at most.
std::string_view bar_of(double over_k) {
  struct Bar {
    double most_k;
    std::string_view bar;
  };

  constexpr std::array<Bar, 6> bars{
      {{1.0, "▂"}, {2.0, "▃"}, {3.0, "▄"}, {4.0, "▅"}, {6.0, "▆"}, {8.0, "▇"}}};
  for (const Bar& bar : bars) {
    if (over_k <= bar.most_k) {
      return bar.bar;
    }
  }
  return "█";
}

std::string bars_line(const GenusNights& line) {
  const auto& nights = line.recent.night_c;
  if (std::none_of(
          nights.begin(), nights.end(), [](const auto& night_c) { return night_c.has_value(); })) {
    return {};
  }
  std::string bars;
  for (const auto& night_c : line.recent.night_c) {
    bars += !night_c                              ? " "
            : at_or_under(*night_c, line.limit_c) ? "▁"
                                                  : bar_of(*night_c - line.limit_c);
  }
  return fmt::format("{}last {} nights: [{}]\n", under_row, line.recent.night_c.size(), bars);
}

std::string forecast_line(const GenusNights& line, const TextStyle& style) {
  if (!line.forecast) {
    return {};
  }
  std::string text = fmt::format("{} of {} at or under {}",
                                 line.forecast->cool,
                                 counted_text(line.forecast->nights, "night"),
                                 temperature_text(line.limit_c, style));
  if (line.forecast->hottest_day_c) {
    text += ", hottest day " + temperature_text(*line.forecast->hottest_day_c, style);
  }
  return paragraph(std::string{under_row} + "forecast: ", text);
}

std::string relapse_line(const GenusNights& line) {
  if (!line.relapse_after_today || !line.binds) {
    return {};
  }
  return paragraph(std::string{under_row} + "watered today: ",
                   fmt::format("a warm week within four weeks in {} of the possible seasons",
                               share_text(*line.relapse_after_today)));
}

std::string counted_nights_text(const GenusNights& line) {
  const auto& nights = line.recent.night_c;
  const auto there = [](const std::optional<double>& night_c) { return night_c.has_value(); };
  if (nights.size() >= 14 && std::none_of(nights.end() - 14, nights.end(), there)) {
    return "no readings";
  }
  return fmt::format("{} of {}, {} of 14", line.counted, line.of, line.counted_of_14);
}

TableRow genus_row(const GenusNights& line, Date today, const TextStyle& style) {
  TableRow row;
  row.cells = {line.genus,
               line.bench,
               limit_text(line.limit_c, line.day_limit_c, style),
               counted_nights_text(line),
               open_words(line.open),
               line.binds ? spread_text(line.holds, today) : "nights do not decide here"};
  row.below = bars_line(line) + forecast_line(line, style) + relapse_line(line) +
              because_lines(line.reasons, style);
  if (line.binds && style.why) {
    row.below += paragraph(std::string{under_row} + "first cool week, ", stirs_text(line, today));
  }
  return row;
}

std::string without_gate_text(const std::vector<std::string>& genera) {
  std::string list;
  for (const auto& genus : genera) {
    list += list.empty() ? genus : ", " + genus;
  }
  return list.empty() ? "" : '\n' + paragraph("Do not wait for cool nights: ", list);
}

// What stands in a season's column: a date, or why there is none.
std::string season_cell(const PastSeasonDates& season,
                        const std::optional<Date>& date,
                        std::string_view word) {
  if (date) {
    return date_text(*date);
  }
  for (const auto& unknown : season.unknown) {
    if (unknown == word) {
      return "unknown";
    }
  }
  return "did not come";
}

std::string gate_heading(const PastGate& gate, const TextStyle& style) {
  return fmt::format("{}{} of {} nights at or under {}{}",
                     gate.genus.empty() ? "" : gate.genus + ": ",
                     gate.nights,
                     gate.of,
                     temperature_text(gate.limit_c, style),
                     gate.day_limit_c
                         ? fmt::format(", days to {}", temperature_text(*gate.day_limit_c, style))
                         : "");
}

std::string past_gate_text(const PastGate& gate, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const auto& season : gate.seasons) {
    rows.push_back({{std::to_string(season.season),
                     season_cell(season, season.stirs, "stirs"),
                     season_cell(season, season.holds, "holds"),
                     season_cell(season, season.settles, "settles"),
                     season.usable ? "" : "left out, nights are missing"},
                    ""});
  }
  const std::vector<Column> columns{{"Season"}, {"Stirs"}, {"Holds"}, {"Settles"}, {""}};
  const std::string decides =
      gate.binds ? "Cool nights decide here" : "Cool nights do not decide here";
  return '\n' + heading_text(gate_heading(gate, style), style) +
         paragraph("  ",
                   fmt::format("{}. Seasons used: {}, of which it never held in {}.",
                               decides,
                               gate.usable_seasons,
                               gate.never)) +
         table_text(columns, rows, style);
}

// The three words are the growers' and this program's; they are explained where they are used.
std::string words_explained() {
  return '\n' +
         paragraph(
             "  ",
             "stirs: cool enough for the first time, mostly a false start; holds: cool enough "
             "to act on; settles: from then on only a night or two turned warm again.");
}

} // namespace

std::string nights_text(const NightsAnswer& answer, const TextStyle& style) {
  std::string text = garden_line(answer.garden, answer.today, answer.season);
  text += readings_line(answer.readings);
  text += warnings_block("First of all", answer.warnings, style);
  std::vector<TableRow> rows;
  for (const auto& line : answer.genera) {
    rows.push_back(genus_row(line, answer.today, style));
  }
  const std::vector<Column> columns{{"Genus"},
                                    {"Bench", Align::left, true},
                                    {"At or under", Align::left, true},
                                    {"Cool so far", Align::left, true},
                                    {"Enough?"},
                                    {"Enough from (8 in 10)", Align::left, true}};
  text += '\n' + heading_text("Are nights cool enough yet?", style);
  text +=
      rows.empty() ? "  Nothing here waits for cool nights.\n" : table_text(columns, rows, style);
  text += rows.empty() ? "" : std::string(bars_explained);
  return text + without_gate_text(answer.without_gate);
}

std::string past_nights_text(const PastNightsAnswer& answer, const TextStyle& style) {
  std::string text = garden_line(answer.garden, answer.today, std::nullopt);
  text += warnings_block("First of all", answer.warnings, style);
  for (const auto& gate : answer.gates) {
    text += past_gate_text(gate, style);
  }
  return text +
         (answer.gates.empty() ? "\nNothing here waits for cool nights.\n" : words_explained());
}

} // namespace nightsow::planner
