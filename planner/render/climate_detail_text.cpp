#include "climate/base/celsius.hpp"
#include "planner/render/climate_detail.hpp"
#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plain_words.hpp"
#include "planner/render/table.hpp"
#include "planner/render/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace nightsow::planner {

namespace {

constexpr std::string_view margin = "  ";
constexpr std::size_t most_holes_shown = 5;

std::string joined(const std::vector<std::string>& words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) {
      text += i + 1 == words.size() ? " and " : ", ";
    }
    text += words[i];
  }
  return text;
}

std::string lopsided_text(const std::string& element,
                          const LopsidedLine& lopsided,
                          const std::vector<std::string>& on) {
  return paragraph(margin,
                   fmt::format("More {} are missing on some days than on others: {} in {}, "
                               "against {} otherwise. Means and counts lean to the days that are "
                               "there.",
                               element,
                               percent_text(lopsided.share),
                               joined(on),
                               percent_text(lopsided.usual)));
}

std::vector<std::string> weekdays_in_words(const std::vector<std::string>& days) {
  std::vector<std::string> words;
  std::transform(days.begin(), days.end(), std::back_inserter(words), [](const auto& day) {
    return plain_word("weekday", day);
  });
  return words;
}

std::vector<std::string> months_in_words(const std::vector<std::string>& months) {
  std::vector<std::string> words;
  std::transform(months.begin(), months.end(), std::back_inserter(words), [](const auto& month) {
    return month_text(std::stoi(month));
  });
  return words;
}

std::string holes_text(const CompletenessLine& line) {
  std::vector<HoleLine> holes = line.long_holes;
  std::stable_sort(holes.begin(), holes.end(), [](const HoleLine& a, const HoleLine& b) {
    return a.days > b.days;
  });
  std::string text;
  for (std::size_t i = 0; i < std::min(holes.size(), most_holes_shown); ++i) {
    text += paragraph(margin,
                      fmt::format("No {} from {} to {}: {}.",
                                  line.element,
                                  date_text(holes[i].from),
                                  date_text(holes[i].to),
                                  counted_text(holes[i].days, "day")));
  }
  if (holes.size() > most_holes_shown) {
    text += paragraph(margin,
                      fmt::format("Shorter holes of a month or more in the {}: {}.",
                                  line.element,
                                  holes.size() - most_holes_shown));
  }
  return text;
}

std::string figure(double degrees_c, const TextStyle& style) {
  return fmt::format("{:.1f}", style.fahrenheit ? to_fahrenheit(Celsius{degrees_c}) : degrees_c);
}

void add_band(const std::optional<BandFigures>& band,
              const TextStyle& style,
              std::vector<std::string>& cells) {
  if (!band) {
    cells.insert(cells.end(), 3, "none");
    return;
  }
  for (const double value_c : {band->p10_c, band->p50_c, band->p90_c}) {
    cells.push_back(figure(value_c, style));
  }
}

// Which tail of single nights is the longer. The limit is by eye: no reader sees a smaller one.
std::string tail_text(double skewness) {
  constexpr double clearly = 0.3;
  if (std::abs(skewness) < clearly) {
    return "to both sides alike";
  }
  return skewness < 0.0 ? "further to the cold" : "further to the warm";
}

std::string decade_text(const std::optional<DecadeTrend>& trend, const TextStyle& style) {
  return trend ? difference_text(trend->a_decade, style, true) : "not known";
}

std::string limits_text(const std::optional<DecadeTrend>& trend, const TextStyle& style) {
  if (!trend) {
    return "";
  }
  // A rounded -0 would look like a fall.
  const auto limit = [&](double kelvin) {
    return difference_text(std::abs(kelvin) < 0.05 ? 0.0 : kelvin, style, true);
  };
  return fmt::format("{} to {}", limit(trend->low), limit(trend->high));
}

std::string range_in_words(const DateRangeLine& range) {
  return fmt::format("{} (8 in 10: {})", date_text(range.p50), range_text(range.p10, range.p90));
}

// "+6.7 (+1.6 to +10.0)".
std::string move_text(const std::optional<DecadeTrend>& days) {
  if (!days) {
    return "not known";
  }
  const auto number = [](double value) {
    return std::abs(value) < 0.05 ? std::string{"0"} : fmt::format("{:+.1f}", value);
  };
  return fmt::format(
      "{} ({} to {})", number(days->a_decade), number(days->low), number(days->high));
}

} // namespace

std::string suspicions_text(const std::vector<SuspicionLine>& suspicions) {
  std::string text;
  for (const auto& suspicion : suspicions) {
    text += paragraph(margin,
                      fmt::format("{} ({} of it).", suspicion.text, percent_text(suspicion.share)));
  }
  return text;
}

std::string completeness_text(const RecordDetail& record) {
  std::string text;
  for (const auto& line : record.completeness) {
    text += paragraph(margin,
                      fmt::format("{} of the {} are there; months with too little for a mean: {} "
                                  "of {}.",
                                  percent_text(line.complete),
                                  line.element,
                                  line.months_lost,
                                  line.months));
    text += holes_text(line);
    if (line.weekdays) {
      text += lopsided_text(line.element, *line.weekdays, weekdays_in_words(line.weekdays->on));
    }
    if (line.months_of_year) {
      text += lopsided_text(
          line.element, *line.months_of_year, months_in_words(line.months_of_year->on));
    }
  }
  return text;
}

std::string bands_text(const UsualDetail& usual, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const auto& line : usual.bands) {
    std::vector<std::string> cells{month_text(line.month)};
    add_band(line.night, style, cells);
    add_band(line.day, style, cells);
    rows.push_back({std::move(cells), ""});
  }
  const std::vector<Column> columns{{"Month"},
                                    {"Nights: 1 in 10 under", Align::right},
                                    {"half", Align::right},
                                    {"9 in 10", Align::right},
                                    {"Days: 1 in 10 under", Align::right},
                                    {"half", Align::right},
                                    {"9 in 10", Align::right}};
  return table_text(columns, rows, style);
}

std::string quarters_text(const UsualDetail& usual, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const auto& line : usual.quarters) {
    rows.push_back({{plain_word("quarter", line.quarter),
                     difference_text(line.night_sd_c, style),
                     tail_text(line.skewness),
                     decade_text(line.trend, style),
                     limits_text(line.trend, style)},
                    ""});
  }
  if (usual.year_trend) {
    rows.push_back({{"the whole year",
                     "",
                     "",
                     decade_text(usual.year_trend, style),
                     limits_text(usual.year_trend, style)},
                    ""});
  }
  const std::vector<Column> columns{{"Time of year"},
                                    {"Stray by", Align::right},
                                    {"Stray"},
                                    {"In ten years", Align::right},
                                    {"95 in 100", Align::right}};
  return table_text(columns, rows, style);
}

std::string frost_text(const UsualDetail& usual) {
  const FrostLine& frost = usual.frost;
  if (frost.seasons == 0) {
    return "";
  }
  if (!frost.first || !frost.last) {
    return paragraph(margin, fmt::format("No frost in {} seasons.", frost.seasons));
  }
  std::string text = paragraph(
      margin,
      fmt::format("Nights at or under freezing in {} of {} seasons, {} a season over all.",
                  frost.seasons - frost.without,
                  frost.seasons,
                  number_text(frost.nights_a_season)));
  return text + paragraph(margin,
                          fmt::format("In those the first comes about {}, the last about {}.",
                                      range_in_words(*frost.first),
                                      range_in_words(*frost.last)));
}

std::string gates_text(const UsualDetail& usual, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const auto& gate : usual.gates) {
    rows.push_back({{temperature_text(gate.limit_c, style),
                     gate.bench,
                     joined(gate.genera),
                     move_text(gate.stirs),
                     move_text(gate.holds),
                     gate.binds ? "yes" : "no"},
                    ""});
  }
  if (rows.empty()) {
    return "";
  }
  const std::vector<Column> columns{{"Nights", Align::right},
                                    {"Bench"},
                                    {"For", Align::left, true},
                                    {"First come"},
                                    {"Hold"},
                                    {"Decide here"}};
  return table_text(columns, rows, style) +
         paragraph(
             margin,
             "Days later (+) or earlier (-) in ten years, and in brackets where that lies in 95 "
             "of 100 cases: a range with 0 in it tells no sure move.");
}

} // namespace nightsow::planner
