#include "planner/render/learned_limits_text.hpp"

#include "climate/base/celsius.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/table.hpp"
#include "planner/render/words.hpp"

#include <fmt/format.h>

#include <array>
#include <cstddef>
#include <string_view>
#include <utility>
#include <vector>

namespace nightsow::planner {

namespace {

std::string range_c(const LearnedNumber& number, const TextStyle& style) {
  const auto without_unit = [&](double degrees_c) {
    const std::string text = temperature_text(degrees_c, style);
    return text.substr(0, text.find(' '));
  };
  return fmt::format("{} ({} to {})",
                     temperature_text(number.value, style),
                     without_unit(number.low),
                     without_unit(number.high));
}

std::string warmth(const LearnedNumber& number, const TextStyle& style) {
  const auto figure = [&](double c_d) {
    return whole_text(style.fahrenheit ? to_fahrenheit_degrees(CelsiusDelta{c_d}) : c_d);
  };
  return fmt::format("{} {} d ({} to {})",
                     figure(number.value),
                     style.fahrenheit ? "°F" : "°C",
                     figure(number.low),
                     figure(number.high));
}

/// Why the record cannot tell, and what it would take.
struct Refusal {
  std::string_view word;
  std::string_view why;
  std::string_view needed;
};

constexpr std::array<Refusal, 4> share_refusals{{
    {"too_few_sowings",
     "one sowing with counts in its first season is all there is",
     "two sowings at least, counted until nothing more comes"},
    {"too_few_seeds",
     "fewer than twenty living seeds could have come while somebody looked",
     "twenty, from two sowings or more"},
    {"fits_no_share",
     "what came fits no share near the rule's",
     "another name for the seed, or a look at what else took it: nightsow account"},
    {"too_unsure", "what it says is no surer than the rule", "more seed, counted to the end"},
}};

constexpr std::array<Refusal, 5> refusals{{
    {"too_few_sowings",
     "one sowing with counts in its first season is all there is",
     "two sowings at least, counted every week or two from first water on"},
    {"too_few_seedlings",
     "fewer than twenty seedlings came while somebody looked",
     "twenty, from two sowings or more"},
    {"nights_too_alike",
     "the nights before all looks were alike within 3 K",
     "a part sown three or four weeks earlier, while nights are still warm"},
    {"fits_no_limit",
     "when seedlings came fits no night limit near the rule's",
     "counts every week or two from the first water on; or these kinds do not wait for cool"},
    {"too_unsure",
     "what it says is no surer than the rule",
     "more seedlings, counted every week while nights cool down"},
}};

template <class Line>
std::string names_refused(const std::vector<Line>& lines, std::string_view word) {
  std::string names;
  for (const Line& line : lines) {
    if (line.refused == word) {
      names += (names.empty() ? "" : ", ") + line.rule;
    }
  }
  return names;
}

template <class Line> std::string verdict(const Line& line) {
  if (line.offered) {
    return "It foretells left-out sowings better than the rule.";
  }
  if (line.predicts_better > 1.0) {
    return fmt::format("Not offered as a rule yet: {} in {}, three in two seasons are needed.",
                       counted_text(line.sowings, "sowing"),
                       counted_text(line.seasons, "season"));
  }
  return "Not offered as a rule: it foretells left-out sowings no better than the rule does.";
}

std::string learned_table(const LearnAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const LearnedLimitLine& line : answer.limits) {
    if (!line.limit_c) {
      continue;
    }
    std::string below = paragraph("      ", verdict(line));
    if (line.thermal_time_c_d) {
      below += paragraph("      ",
                         fmt::format("From release to emergence {}; the rule has {}.",
                                     warmth(*line.thermal_time_c_d, style),
                                     warmth(line.rule_thermal_time_c_d, style)));
    }
    rows.push_back({{line.rule,
                     std::to_string(line.sowings),
                     std::to_string(line.seedlings),
                     range_c(line.rule_limit_c, style),
                     range_c(*line.limit_c, style)},
                    below});
  }
  if (rows.empty()) {
    return "";
  }
  return "\n" + heading_text("The night limit of half the seed", style) +
         table_text({{"Rule"},
                     {"Sowings", Align::right},
                     {"Came", Align::right},
                     {"The rule says"},
                     {"Your record says (8 in 10)"}},
                    rows,
                    style);
}

std::string shares_table(const LearnAnswer& answer, const TextStyle& style) {
  const auto range = [](const LearnedNumber& number) {
    return fmt::format("{} % ({} to {})",
                       whole_text(100.0 * number.value),
                       whole_text(100.0 * number.low),
                       whole_text(100.0 * number.high));
  };
  std::vector<TableRow> rows;
  for (const LearnedGerminationLine& line : answer.germinations) {
    if (line.share) {
      rows.push_back({{line.rule,
                       std::to_string(line.sowings),
                       fmt::format("{} of {}", line.came, line.seeds),
                       whole_text(line.could_come),
                       range(line.rule_share),
                       range(*line.share)},
                      paragraph("      ", verdict(line))});
    }
  }
  return rows.empty() ? ""
                      : "\n" + heading_text("The share of fresh seed that comes up", style) +
                            table_text({{"Rule"},
                                        {"Sowings", Align::right},
                                        {"Came", Align::right},
                                        {"Could", Align::right},
                                        {"The rule says"},
                                        {"Your record says (8 in 10)"}},
                                       rows,
                                       style) +
                            paragraph("  ",
                                      "Could: so many would have come by the last look, by the "
                                      "rule and the weather, "
                                      "did every living, ripe seed come up.");
}

template <class Line, std::size_t Size>
std::string refused_block(const std::vector<Line>& lines,
                          const std::array<Refusal, Size>& refusals_told,
                          std::string_view heading,
                          const TextStyle& style) {
  std::string text;
  for (const Refusal& refusal : refusals_told) {
    const std::string names = names_refused(lines, refusal.word);
    if (!names.empty()) {
      text +=
          paragraph("  ", fmt::format("{}: {}. Needed: {}.", names, refusal.why, refusal.needed));
    }
  }
  return text.empty() ? "" : "\n" + heading_text(std::string(heading), style) + text;
}

std::string offers_block(const LearnAnswer& answer, const TextStyle& style) {
  if (answer.offered.empty()) {
    return "";
  }
  std::string text = "\n" + heading_text("Rules that your record justifies", style);
  bool open = false;
  for (const OfferedRules& offer : answer.offered) {
    text += paragraph(
        "  ",
        offer.written
            ? fmt::format("{}: {} is written, and holds from now on.", offer.rule, offer.file)
            : fmt::format("{}: would stand in {}.", offer.rule, offer.file));
    open = open || !offer.written;
  }
  if (open) {
    text += paragraph("  ", "Nothing was written. `nightsow learn --write` writes them.");
  }
  return text;
}

} // namespace

std::string learned_limits_text(const LearnAnswer& answer, const TextStyle& style) {
  return learned_table(answer, style) +
         refused_block(answer.limits, refusals, "Night limits that the record cannot tell", style) +
         shares_table(answer, style) +
         refused_block(answer.germinations,
                       share_refusals,
                       "Shares of fresh seed that the record cannot tell",
                       style) +
         offers_block(answer, style);
}

} // namespace nightsow::planner
