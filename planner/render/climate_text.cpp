#include "planner/render/answer_text.hpp"
#include "planner/render/climate_detail.hpp"
#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plain_words.hpp"
#include "planner/render/table.hpp"
#include "planner/render/text_parts.hpp"
#include "planner/render/words.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <string_view>

namespace nightsow::planner {

namespace {

// In a column of figures every one has its decimal, so that they stand under one another.
std::string figure_cell(const std::optional<double>& degrees_c, const TextStyle& style) {
  if (!degrees_c) {
    return "none";
  }
  return fmt::format("{:.1f}", style.fahrenheit ? to_fahrenheit(Celsius{*degrees_c}) : *degrees_c);
}

std::string section(std::string_view heading, const std::string& text, const TextStyle& style) {
  return text.empty() ? "" : '\n' + heading_text(heading, style) + text;
}

std::string role_text(const ClimateFile& file) {
  if (file.forecast) {
    return "a forecast for the station";
  }
  return file.bench.empty() ? "the station" : "logger on the " + file.bench;
}

std::string files_text(const ClimateAnswer& answer, const TextStyle& style) {
  std::string text;
  for (const auto& file : answer.files) {
    text += paragraph("  ",
                      fmt::format("{}: {}, in {}, {}",
                                  file.file,
                                  plain_word("", file.format),
                                  file.unit,
                                  role_text(file)));
    for (const auto& why : file.because) {
      text += style.why ? paragraph(std::string{under_row} + "because: ", why) : "";
    }
  }
  return section("Files", text, style);
}

std::string readings_text(const ClimateAnswer& answer, const TextStyle& style) {
  std::string text = paragraph("  ", readings_line(answer.readings));
  if (!answer.readings.from) {
    return section("What was read", text, style);
  }
  text += paragraph("  ",
                    fmt::format("Days without a night reading: {}; the longest hole: {}.",
                                answer.days_without_night,
                                counted_text(answer.longest_hole_days, "day")));
  text += completeness_text(answer.record);
  return section("What was read", text, style);
}

std::string counts_table(const std::vector<FindingCount>& counts, const TextStyle& style) {
  std::vector<TableRow> rows;
  rows.reserve(counts.size());
  for (const auto& count : counts) {
    rows.push_back({{plain_word("kind", count.kind),
                     std::to_string(count.used),
                     std::to_string(count.ignored)},
                    ""});
  }
  const std::vector<Column> columns{
      {"Readings in doubt", Align::left, true}, {"Used", Align::right}, {"Left out", Align::right}};
  return table_text(columns, rows, style);
}

std::string finding_values(const FindingLine& finding, const TextStyle& style) {
  std::string text = finding.value_c ? temperature_text(*finding.value_c, style) : "not readable";
  if (finding.other_c) {
    text += " against " + temperature_text(*finding.other_c, style);
  }
  if (finding.days > 1) {
    text += fmt::format(", {} days to this one", finding.days);
  }
  return text;
}

std::string findings_text(const std::vector<FindingLine>& findings, const TextStyle& style) {
  std::vector<TableRow> rows;
  rows.reserve(findings.size());
  for (const auto& finding : findings) {
    rows.push_back({{fmt::format("{}:{}", finding.file, finding.line),
                     date_text(finding.date),
                     plain_word("kind", finding.kind),
                     finding_values(finding, style),
                     finding.verdict == "ignored" ? "left out" : "used"},
                    ""});
  }
  const std::vector<Column> columns{
      {"Where"}, {"Date"}, {"What", Align::left, true}, {"Value", Align::left, true}, {"Verdict"}};
  const std::string table = table_text(columns, rows, style);
  return table.empty() ? "" : '\n' + table;
}

std::string logger_text(const LoggerRecord& record, const TextStyle& style) {
  const bool in_doubt = !record.counts.empty() || !record.suspicions.empty();
  const std::string span = record.from && record.to
                               ? fmt::format("{} to {}, {}",
                                             date_text(*record.from),
                                             date_text(*record.to),
                                             counted_text(record.nights, "night"))
                               : "nothing up to today";
  std::string text =
      paragraph("  ", fmt::format("{}{}.", span, in_doubt ? "" : "; nothing in it is in doubt"));
  text += counts_table(record.counts, style);
  text += findings_text(record.findings, style);
  const std::string odd = suspicions_text(record.suspicions);
  text += odd.empty() || record.counts.empty() ? odd : '\n' + odd;
  return section("Logger on the " + record.bench, text, style);
}

std::string loggers_text(const ClimateAnswer& answer, const TextStyle& style) {
  std::string text;
  for (const LoggerRecord& record : answer.loggers) {
    text += logger_text(record, style);
  }
  return text;
}

std::string phase_row(std::string_view what, Date day) {
  return fmt::format("  {:<28}{}\n", what, date_text(day));
}

std::string phases_text(const ClimateAnswer& answer, const TextStyle& style) {
  std::string text;
  if (answer.phases) {
    const PhasesLine& phases = *answer.phases;
    text += phase_row("planning year begins", phases.planning_begins);
    text += phase_row("hot season begins", phases.hot_season_begins);
    text += fmt::format("  {:<28}{}, {} on the smooth curve\n",
                        "hottest night",
                        date_text(phases.hottest_night),
                        temperature_text(phases.hottest_c, style));
    text += phase_row("hot season ends", phases.hot_season_ends);
    text += phase_row("cooling limb begins", phases.cooling_limb_begins);
    text += fmt::format("  {:<28}{}, {} on the smooth curve\n",
                        "coldest night",
                        date_text(phases.coldest_night),
                        temperature_text(phases.coldest_c, style));
  }
  for (const auto& reason : answer.no_phases) {
    text += paragraph("  ", sentence(reason, style));
  }
  text += fmt::format("  {:<28}{}\n", "nights swing by", difference_text(answer.swing_k, style));
  text += fmt::format(
      "  {:<28}{}\n", "single nights stray by", difference_text(answer.night_sd_c, style));
  return section(fmt::format("The year of nights, season {}", answer.season), text, style);
}

std::string months_text(const ClimateAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const auto& month : answer.months) {
    rows.push_back({{month_text(month.month),
                     figure_cell(month.night_c, style),
                     figure_cell(month.day_c, style),
                     figure_cell(month.smooth_night_c, style),
                     figure_cell(month.smooth_day_c, style),
                     fmt::format("{:.1f}", month.day_length_hours),
                     std::to_string(month.nights)},
                    ""});
  }
  const std::vector<Column> columns{{"Month"},
                                    {"Nights", Align::right},
                                    {"Days", Align::right},
                                    {"Nights, smooth", Align::right},
                                    {"Days, smooth", Align::right},
                                    {"Hours of day", Align::right},
                                    {"Nights read", Align::right}};
  return section(style.fahrenheit ? "Months, mean lowest and highest in °F"
                                  : "Months, mean lowest and highest in °C",
                 table_text(columns, rows, style),
                 style);
}

// "offset written, +1.5 K at night, +4.0 K by day"
std::string reached_text(const std::string& source,
                         double night_k,
                         double day_k,
                         const TextStyle& style) {
  return fmt::format("{} ({} at night, {} by day)",
                     plain_word("source", source),
                     difference_text(night_k, style, true),
                     difference_text(day_k, style, true));
}

std::string bench_paragraph(const BenchLine& line, const TextStyle& style) {
  std::string text = fmt::format(
      "{}: by {}", line.bench, reached_text(line.source, line.night_k, line.day_k, style));
  if (line.next_night_k && line.next_day_k) {
    text +=
        fmt::format("; otherwise by {}",
                    reached_text(line.next_source, *line.next_night_k, *line.next_day_k, style));
  }
  text += '.';
  if (line.night_doubt_k > 0.0) {
    text += fmt::format(" Give or take {} at night, and dates are wider for it.",
                        difference_text(line.night_doubt_k, style));
  }
  if (line.paired_nights > 0) {
    text +=
        fmt::format(" Logger beside the station: {}.", counted_text(line.paired_nights, "night"));
  }
  if (line.seed) {
    text += fmt::format(" Seed in its pots had {} to {} in the last year of readings.",
                        temperature_text(line.seed->lowest_c, style),
                        temperature_text(line.seed->highest_c, style));
  }
  return paragraph("  ", text);
}

std::string benches_text(const ClimateAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  std::string paragraphs;
  for (const auto& line : answer.benches) {
    const auto day = [&](double Extremes::*end) {
      return figure_cell(line.days ? std::optional{(*line.days).*end} : std::nullopt, style);
    };
    rows.push_back({{line.bench.empty() ? "the station" : line.bench,
                     figure_cell(line.nights.highest_c, style),
                     figure_cell(line.nights.lowest_c, style),
                     day(&Extremes::highest_c),
                     day(&Extremes::lowest_c)},
                    ""});
    paragraphs += line.bench.empty() ? "" : bench_paragraph(line, style);
  }
  const std::vector<Column> columns{{"Air", Align::left, true},
                                    {"Hottest nights", Align::right},
                                    {"Coldest nights", Align::right},
                                    {"Hottest days", Align::right},
                                    {"Coldest days", Align::right}};
  return section(style.fahrenheit ? "Station and benches, smooth year in °F"
                                  : "Station and benches, smooth year in °C",
                 table_text(columns, rows, style) + paragraphs,
                 style);
}

std::string day_or_never(const std::optional<Date>& day) {
  return day ? date_text(*day) : "not this season";
}

std::string kelvin_text(const ClimateAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const auto& line : answer.kelvin) {
    const std::string days =
        line.day_limit_c ? ", days " + temperature_text(*line.day_limit_c, style) : "";
    rows.push_back({{temperature_text(line.limit_c, style) + days,
                     line.bench,
                     fmt::format("{}", fmt::join(line.kinds, ", ")),
                     day_or_never(line.cooler),
                     day_or_never(line.as_reckoned),
                     day_or_never(line.warmer)},
                    ""});
  }
  const std::vector<Column> columns{{"At or under"},
                                    {"Bench", Align::left, true},
                                    {"Waiting for them", Align::left, true},
                                    {"1 K cooler"},
                                    {"As reckoned"},
                                    {"1 K warmer"}};
  return section("What one kelvin (1.8 °F) on the bench is worth: when nights hold",
                 table_text(columns, rows, style),
                 style);
}

std::string trend_text(const ClimateAnswer& answer, const TextStyle& style) {
  if (!answer.trend) {
    return {};
  }
  const TrendLine& trend = *answer.trend;
  return section("Trend of the nights",
                 paragraph("  ",
                           fmt::format("{} in ten years, give or take {}; {} is counted on.",
                                       difference_text(trend.night_k_per_decade, style, true),
                                       difference_text(trend.standard_error, style),
                                       difference_text(trend.used_k_per_decade, style, true))),
                 style);
}

} // namespace

std::string climate_text(const ClimateAnswer& answer, const TextStyle& style) {
  std::string text = garden_line(answer.garden, answer.today, answer.season);
  text += warnings_block("First of all", answer.warnings, style);
  text += files_text(answer, style);
  text += readings_text(answer, style);
  text += section("What is wrong with it", counts_table(answer.counts, style), style);
  text += findings_text(answer.findings, style);
  text += section("Odd about the whole record", suspicions_text(answer.record.suspicions), style);
  text += loggers_text(answer, style);
  text += phases_text(answer, style);
  text += months_text(answer, style);
  text += section(style.fahrenheit ? "How far single nights and days go, in °F"
                                   : "How far single nights and days go, in °C",
                  bands_text(answer.usual, style),
                  style);
  text += section("Frost", frost_text(answer.usual), style);
  text += trend_text(answer, style);
  text += section("Nights by season", quarters_text(answer.usual, style), style);
  text += section("When cool nights come", gates_text(answer.usual, style), style);
  text += benches_text(answer, style);
  return text + kelvin_text(answer, style);
}

} // namespace nightsow::planner
