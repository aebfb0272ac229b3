#include "planner/render/figure_text.hpp"
#include "planner/render/learn.hpp"
#include "planner/render/table.hpp"
#include "planner/render/text_parts.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace nightsow::planner {

namespace {

std::string trial_block(const PlannedTrialLine& line, int number, const TextStyle& style) {
  std::string text =
      "\n" + heading_text(fmt::format("{}. {}, packet {}", number, line.taxon, line.packet), style);
  text += paragraph("  a: ", line.a) + paragraph("  b: ", line.b);
  text +=
      paragraph("  ",
                fmt::format("{} and {} an arm; the same mix, bench, day and water for both, but "
                            "for what is compared.",
                            counted_text(line.seeds_an_arm, "seed"),
                            counted_text(line.pots_an_arm, "pot")));
  text +=
      paragraph("  pots in the order of the tray: ", fmt::format("{}", fmt::join(line.pots, " ")));
  text += paragraph(
      "  ",
      fmt::format(
          "Expected to come: {:.0f} % of a, {:.0f} % of b. Should it be so, counts settle it in {} "
          "of cases{}.",
          100.0 * line.share_a,
          100.0 * line.share_b,
          share_text(line.power),
          line.seeds_wanted ? fmt::format("; {} an arm would in 8 of 10",
                                          counted_text(*line.seeds_wanted, "seed"))
                            : ""));
  return text;
}

} // namespace

std::string trial_text(const TrialAnswer& answer, const TextStyle& style) {
  std::string text = garden_line(answer.garden, answer.today, std::nullopt);
  if (answer.trials.empty()) {
    return text +
           paragraph("",
                     fmt::format("No trial can be made with what is in hand: of {}, {} hold the {} "
                                 "seeds that two arms need and may be shared.",
                                 counted_text(answer.packets, "packet"),
                                 answer.looked_at,
                                 answer.least_seeds));
  }
  text += paragraph("",
                    "Next year's trial: what would teach most with the seed in hand. Pick one, two "
                    "if there is time.");
  int number = 0;
  for (const PlannedTrialLine& line : answer.trials) {
    text += trial_block(line, ++number, style);
  }
  return text + "\n" +
         paragraph(
             "",
             fmt::format("Pots are drawn by the seed number {}; --seed N draws anew. Write it "
                         "down with `nightsow sow … --trial NAME --arm a`, a sowing an arm, "
                         "and count both on the same days.",
                         answer.seed_number));
}

} // namespace nightsow::planner
