#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plain_words.hpp"
#include "planner/render/review.hpp"
#include "planner/render/table.hpp"
#include "planner/render/text_parts.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <array>
#include <cstdint>
#include <map>
#include <string_view>
#include <vector>

namespace nightsow::planner {

namespace {

struct OutcomeWords {
  std::string_view word;
  std::string_view text;
};

constexpr std::array<OutcomeWords, 9> outcomes{{
    {"dry", "still dry"},
    {"not_counted", "never counted"},
    {"too_early", "too early to tell"},
    {"closed_early", "closed before it could tell"},
    {"nothing", "nothing came"},
    {"fewer", "fewer than promised"},
    {"as_promised", "as promised"},
    {"more", "more than promised"},
    {"counted", "counted"},
}};

std::string_view outcome_text(std::string_view word) {
  for (const OutcomeWords& outcome : outcomes) {
    if (outcome.word == word) {
      return outcome.text;
    }
  }
  return word;
}

std::string why_text(const ReviewLine& line) {
  if (line.why == "seed_was_dead") {
    return fmt::format(
        ": {} of {} pressed were soft, the seed was dead", line.soft, line.firm + line.soft);
  }
  if (line.why == "seed_is_sound") {
    return fmt::format(": {} of {} pressed are firm{}",
                       line.firm,
                       line.firm + line.soft,
                       line.closed_on ? "" : ", keep the pot");
  }
  if (line.why == "watered_early") {
    return fmt::format(": watered {} before nights held", counted_text(*line.days_early, "day"));
  }
  return "";
}

std::string died_text(const ReviewLine& line) {
  return line.dead > 0 ? fmt::format(", {} died", line.dead) : "";
}

std::string closed_text(const ReviewLine& line) {
  return line.closed_on
             ? fmt::format(
                   "; closed {}{}",
                   date_text(*line.closed_on),
                   line.closed_why == "other" ? "" : ": " + plain_word("closed", line.closed_why))
             : "";
}

std::string promised_text(const NumberSpread& promised) {
  return fmt::format(
      "{} ({}-{})", whole_text(promised.mean), whole_text(promised.p10), whole_text(promised.p90));
}

// Who promised: saved plans, or nobody, and it is reckoned anew.
std::string promises_text(const ReviewAnswer& answer) {
  std::map<Date, std::vector<std::int64_t>> by_day;
  bool anew = false;
  for (const ReviewLine& line : answer.lines) {
    if (line.promised_on) {
      by_day[*line.promised_on].push_back(line.sowing);
    }
    anew = anew || (line.promised && !line.promised_on);
  }
  std::string text;
  for (const auto& [day, sowings] : by_day) {
    text += fmt::format("{}Promised by the plan saved on {}: {}.",
                        text.empty() ? "" : " ",
                        date_text(day),
                        fmt::join(sowings, ", "));
  }
  if (anew) {
    text += fmt::format("{}: reckoned anew, with what was known on the day of sowing.",
                        by_day.empty() ? "No saved plan tells of them" : " The others");
  }
  return text.empty() ? "" : paragraph("", text);
}

std::string number_or_dash(const std::optional<int>& number) {
  return number ? std::to_string(*number) : "-";
}

std::string lines_table(const ReviewAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const ReviewLine& line : answer.lines) {
    std::string below;
    if (!line.trial.empty()) {
      below += paragraph("      ", fmt::format("trial {}: {}", line.trial, line.arm));
    }
    rows.push_back({{std::to_string(line.sowing),
                     line.taxon,
                     day_text(line.first_water.value_or(line.on), answer.lines.front().on),
                     std::to_string(line.seeds),
                     line.promised ? promised_text(line.promised->seedlings) : "-",
                     number_or_dash(line.came),
                     line.promised ? promised_text(line.promised->plants) : "-",
                     number_or_dash(line.back),
                     std::string(outcome_text(line.outcome)) + died_text(line) + why_text(line) +
                         closed_text(line)},
                    below});
  }
  return "\n" +
         table_text({{"No", Align::right},
                     {"Taxon", Align::left, true},
                     {"Water"},
                     {"Seeds", Align::right},
                     {"Promised", Align::right},
                     {"Came", Align::right},
                     {"Plants", Align::right},
                     {"Back", Align::right},
                     {"", Align::left, true}},
                    rows,
                    style,
                    0) +
         paragraph(
             "",
             "Water: first water. Promised, Plants: seedlings, and plants after the first rest, "
             "that were to expect (8 in 10); of evergreens those at the height of the next hot "
             "season, of "
             "annuals those in flower. Back: alive after the first rest.") +
         promises_text(answer);
}

std::string sums_text(const ReviewAnswer& answer) {
  std::string text = fmt::format("{} with {}: {} came, {} died",
                                 counted_text(static_cast<double>(answer.lines.size()), "sowing"),
                                 counted_text(answer.seeds, "seed"),
                                 answer.came,
                                 answer.dead);
  if (answer.back) {
    text += fmt::format("; {} back after the first rest, of {} counted then",
                        counted_text(*answer.back, "plant") + (*answer.back == 1 ? " is" : " are"),
                        counted_text(answer.judged, "sowing"));
  }
  return paragraph("", text + ".");
}

std::string judged_text(const ReviewAnswer& answer) {
  if (answer.back) {
    return "";
  }
  return paragraph(
      "",
      answer.rest_is_over
          ? "Nothing was counted after the first rest, by which a season is judged."
          : "A season is judged by the plants back after the first rest; that is still "
            "to come.");
}

std::string held_text(std::string_view what, const RangesHeld& held) {
  if (held.told == 0) {
    return "";
  }
  std::string text =
      fmt::format("{} of {} ranges of {} held what came", held.within, held.told, what);
  if (held.below + held.above > 0) {
    text += fmt::format(" ({} came to less, {} to more)", held.below, held.above);
  }
  text += fmt::format("; promised {} in all, came {}. ", whole_text(held.promised), held.came);
  if (held.told < 5) {
    text += "So few tell nothing of the plan.";
  } else if (held.within < held.least_likely) {
    text += fmt::format("Were they right, {} or more would have: they are too narrow, or off.",
                        held.least_likely);
  } else {
    text += fmt::format(
        "8 in 10 should; {} or more of {} is no surprise.", held.least_likely, held.told);
  }
  return paragraph("  ", text);
}

std::string held_block(const ReviewAnswer& answer, const TextStyle& style) {
  const std::string text =
      held_text("seedlings", answer.seedlings_held) + held_text("plants", answer.plants_held);
  return text.empty() ? "" : "\n" + heading_text("Did the plan's own ranges hold?", style) + text;
}

std::string deaths_block(const ReviewAnswer& answer) {
  std::vector<std::string> parts;
  for (const DeathsLine& line : answer.deaths) {
    parts.push_back(fmt::format("{} {}", line.seedlings, plain_word("", line.of)));
  }
  return parts.empty() ? "" : paragraph("", fmt::format("Died of: {}.", fmt::join(parts, ", ")));
}

std::string carried_block(const ReviewAnswer& answer, const TextStyle& style) {
  std::string text;
  for (const CarriedLine& line : answer.carried) {
    text += paragraph("  ",
                      fmt::format("{} of {} (no {}): {} of {} seeds came before, {} this season.",
                                  line.taxon,
                                  date_text(line.on),
                                  line.sowing,
                                  line.came_before,
                                  line.seeds,
                                  line.came_now));
  }
  return text.empty() ? "" : "\n" + heading_text("Pots carried over", style) + text;
}

std::string lessons_block(const ReviewAnswer& answer, const TextStyle& style) {
  std::string text;
  int number = 0;
  for (const Lesson& lesson : answer.lessons) {
    text += paragraph(fmt::format("  {}. ", ++number), lesson_text(lesson));
  }
  if (text.empty()) {
    text =
        paragraph("  ", "None yet: what was counted came as promised, or too little was counted.");
  }
  return "\n" + heading_text("What matters most", style) + text;
}

std::string nothing_text(const ReviewAnswer& answer) {
  if (answer.seasons.empty()) {
    return paragraph("",
                     "Nothing is written down yet, so there is nothing to review. Begin with: "
                     "nightsow sow TAXON SEEDS");
  }
  return paragraph("",
                   fmt::format("No sowing of season {} is written down. There are sowings of: {}.",
                               answer.season,
                               fmt::join(answer.seasons, ", ")));
}

} // namespace

std::string review_text(const ReviewAnswer& answer, const TextStyle& style) {
  std::string text = garden_line(answer.garden, answer.today, answer.season);
  if (answer.lines.empty() && answer.carried.empty()) {
    return text + nothing_text(answer);
  }
  if (!answer.lines.empty()) {
    text +=
        sums_text(answer) + deaths_block(answer) + judged_text(answer) + lines_table(answer, style);
  }
  text += carried_block(answer, style) + held_block(answer, style) + lessons_block(answer, style);
  if (answer.unknown > 0) {
    text += "\n" + paragraph("",
                             fmt::format("Left out: {} of taxa that no rule knows.",
                                         counted_text(answer.unknown, "sowing")));
  }
  return text;
}

} // namespace nightsow::planner
