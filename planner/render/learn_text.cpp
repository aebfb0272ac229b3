#include "planner/render/figure_text.hpp"
#include "planner/render/learn.hpp"
#include "planner/render/learned_limits_text.hpp"
#include "planner/render/table.hpp"
#include "planner/render/text_parts.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <cmath>
#include <vector>

namespace nightsow::planner {

namespace {

// A share of few seeds is known to whole per cent at best.
std::string percent(double share) {
  return fmt::format("{:.0f} %", 100.0 * share);
}

std::string range(double low, double high) {
  return fmt::format("{:.0f}-{:.0f} %", 100.0 * low, 100.0 * high);
}

std::string days(const std::optional<DaysBetween>& between) {
  if (!between) {
    return "-";
  }
  return between->after == between->by ? std::to_string(between->by)
                                       : fmt::format("{}-{}", between->after, between->by);
}

std::string head(const LearnAnswer& answer) {
  std::string text = fmt::format("{} in {}, {} of them counted.",
                                 counted_text(answer.sowings, "sowing"),
                                 counted_text(answer.seasons, "season"),
                                 answer.counted);
  if (answer.too_early > 0) {
    text += fmt::format(" {} still to be looked at, and in no share or effect below.",
                        answer.too_early == 1 ? "One is" : fmt::format("{} are", answer.too_early));
  }
  if (answer.closed_early > 0) {
    text += fmt::format(
        " {} closed before all could be up: in the times as waiting until then, and in no share or "
        "effect below.",
        answer.closed_early == 1 ? "One was" : fmt::format("{} were", answer.closed_early));
  }
  if (answer.unknown > 0) {
    text += fmt::format(" {} of taxa that no rule knows, and in no figure below.",
                        answer.unknown == 1 ? "One more is"
                                            : fmt::format("{} more are", answer.unknown));
  }
  if (answer.others_sowings > 0) {
    text += fmt::format(" {} of other gardens count {:g} times as much in the shares.",
                        counted_text(answer.others_sowings, "sowing"),
                        answer.others_weight);
  }
  return paragraph("", text);
}

std::string nothing_yet(const LearnAnswer& answer) {
  const std::string what =
      answer.asked.empty()
          ? "Nothing is written down yet, so there is nothing to learn from."
          : fmt::format("No sowing of {} is written down.", fmt::join(answer.asked, ", "));
  return paragraph("", what) +
         paragraph("",
                   "What it takes: each sowing with its seeds (`nightsow sow`), and a count every "
                   "week or two, zeros too (`nightsow count`). Shares begin with the first sowing "
                   "looked at to the end; a night limit takes two sowings, and three in two "
                   "seasons before it is offered as a rule.");
}

std::string shares_block(const LearnAnswer& answer, const TextStyle& style) {
  if (answer.shares.empty()) {
    return "\n" + paragraph("",
                            "No sowing has been looked at to the end yet: shares wait for the last "
                            "look that its rule names, or for a count after the first rest.");
  }
  std::vector<TableRow> rows;
  for (const LearnedShareLine& line : answer.shares) {
    rows.push_back({{line.level == "taxon" ? "" : line.level,
                     line.level == "garden" ? "all of it" : line.name,
                     std::to_string(line.sowings),
                     fmt::format("{} of {}", line.came, line.sown),
                     fmt::format("{} ({})", percent(line.share), range(line.low, line.high)),
                     line.level == "garden" ? "" : percent(line.leaned)}});
  }
  return "\n" + heading_text("How much of the seed comes", style) +
         table_text({{""},
                     {"Kind"},
                     {"Sowings", Align::right},
                     {"Came", Align::right},
                     {"To expect (8 in 10)", Align::right},
                     {"By relatives", Align::right}},
                    rows,
                    style);
}

std::string times_block(const LearnAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const LearnedTimesLine& line : answer.times) {
    rows.push_back({{line.taxon,
                     std::to_string(line.sowings),
                     fmt::format("{} of {}", line.came, line.seeds),
                     days(line.first),
                     days(line.half),
                     days(line.half_sown)}});
  }
  if (rows.empty()) {
    return "";
  }
  return "\n" + heading_text("When it comes, in days after first water", style) +
         table_text({{"Taxon"},
                     {"Sowings", Align::right},
                     {"Came", Align::right},
                     {"First", Align::right},
                     {"Half of those that come", Align::right},
                     {"Half of all sown", Align::right}},
                    rows,
                    style) +
         paragraph("  ",
                   "Two days: after the look on the one, by the look on the other. Seed not up yet "
                   "counts as waiting, not as failed; \"-\": fewer than that came.");
}

std::string pair_text(const TrialPairLine& pair) {
  const std::string difference =
      fmt::format("\"{}\" against \"{}\": {:.0f} in 100 more came ({:.0f} to {:.0f}); alike, so "
                  "large a difference would come by chance in {} of 100.",
                  pair.a,
                  pair.b,
                  100.0 * pair.difference,
                  100.0 * pair.low,
                  100.0 * pair.high,
                  pair.chance < 0.01 ? "under 1" : fmt::format("{:.0f}", 100.0 * pair.chance));
  if (pair.settled) {
    return difference + " Settled, for these pots.";
  }
  return difference +
         (pair.more_seeds_an_arm
              ? fmt::format(" Not settled: about {} more seeds an arm would settle it, should "
                            "shares stay.",
                            *pair.more_seeds_an_arm)
              : " Not settled, and so small a difference is not worth more seed.");
}

std::string trial_block(const LearnedTrialLine& trial, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const TrialArmLine& arm : trial.arms) {
    rows.push_back({{arm.arm.empty() ? "(no arm named)" : arm.arm,
                     std::to_string(arm.sowings),
                     fmt::format("{} of {}", arm.came, arm.sown),
                     range(arm.low, arm.high)}});
  }
  std::string text =
      paragraph("  ", fmt::format("{} ({})", trial.trial, fmt::join(trial.taxa, ", "))) +
      table_text(
          {{"Arm"}, {"Sowings", Align::right}, {"Came", Align::right}, {"19 in 20", Align::right}},
          rows,
          style,
          4);
  for (const TrialPairLine& pair : trial.pairs) {
    text += paragraph("      ", pair_text(pair));
  }
  if (trial.pairs.empty()) {
    text += paragraph("      ", "One arm only: there is nothing to compare it with.");
  }
  if (trial.chance) {
    text += paragraph("      ",
                      fmt::format("All arms alike would differ so much by chance in {:.0f} of 100.",
                                  100.0 * *trial.chance));
  }
  return text;
}

std::string trials_block(const LearnAnswer& answer, const TextStyle& style) {
  std::string text;
  for (const LearnedTrialLine& trial : answer.trials) {
    text += trial_block(trial, style);
  }
  return text.empty() ? "" : "\n" + heading_text("Trials", style) + text;
}

std::string effect_text(const LearnedEffectLine& line) {
  const bool age = line.of == "age";
  const std::string what =
      age ? "A year of age" : fmt::format("{} against {}", line.bench, line.against);
  if (line.refused == "nothing_differs") {
    return what + (age ? ": the record cannot tell, as seed of one kind was of one age within half "
                         "a year. Sow seed of two harvests of a kind side by side."
                       : ": the record cannot tell, as no kind was sown on both.");
  }
  if (!line.refused.empty()) {
    return what + ": the record cannot tell yet; four sowings are needed of kinds that were sown " +
           (age ? "at different ages." : "on both.");
  }
  return fmt::format("{}: where {} would come {}, {} do ({}). {}",
                     what,
                     percent(line.usual_share),
                     age ? "of the fresher seed" : fmt::format("on {}", line.against),
                     percent(line.share),
                     range(line.low, line.high),
                     line.settled ? "More than chance." : "It may be nothing.");
}

std::string effects_block(const LearnAnswer& answer, const TextStyle& style) {
  std::string text;
  for (const LearnedEffectLine& line : answer.effects) {
    text += paragraph("  ", effect_text(line));
  }
  return text.empty() ? "" : "\n" + heading_text("What age and bench change", style) + text;
}

} // namespace

std::string learn_text(const LearnAnswer& answer, const TextStyle& style) {
  std::string text = garden_line(answer.garden, answer.today, std::nullopt);
  if (answer.sowings == 0 && answer.others_sowings == 0) {
    return text + nothing_yet(answer);
  }
  text += head(answer) + shares_block(answer, style) + times_block(answer, style) +
          trials_block(answer, style) + effects_block(answer, style) +
          learned_limits_text(answer, style);
  if (!answer.shared_with.empty()) {
    text += "\n" + paragraph("",
                             fmt::format("Counts, rules and a coarse climate are in {}: no place, "
                                         "no names of yours, no dates.",
                                         answer.shared_with));
  }
  return text;
}

} // namespace nightsow::planner
