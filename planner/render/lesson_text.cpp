#include "planner/render/figure_text.hpp"
#include "planner/render/review.hpp"

#include <fmt/format.h>

#include <array>
#include <string_view>

namespace nightsow::planner {

namespace {

struct Remedy {
  std::string_view of;
  std::string_view what;
  std::string_view remedy;
};

// What growers do about each (common practice, no source).
constexpr std::array<Remedy, 8> remedies{{
    {"damping_off",
     "Damping off",
     "Clean mineral mix, air, and the bag off within three days of the first seedlings."},
    {"gnats",
     "Fungus gnats",
     "Let the top dry between waterings, cover with grit, and hang traps."},
    {"snails", "Snails", "Set the trays up off the ground, and look after dark in wet weather."},
    {"heat", "Heat", "More shade, and a thermometer in the pot, before the next warm spell."},
    {"dry", "Drought", "Water by need from below; seedlings under a fortnight old bear no drying."},
    {"frost", "Frost", "Fleece on, or pots in, on the nights that `nightsow today` warns of."},
    {"other", "Other known causes", "They stand in your notes: see that they do not come again."},
    {"unknown", "Deaths without a known cause", "Look closer next time: --of says what it was."},
}};

std::string deaths_text(const Lesson& lesson) {
  for (const Remedy& remedy : remedies) {
    if (remedy.of == lesson.of) {
      return fmt::format("{} took {} of {}. {}",
                         remedy.what,
                         counted_text(lesson.count, "seedling"),
                         counted_text(lesson.sowings, "sowing"),
                         remedy.remedy);
    }
  }
  return "";
}

std::string trial_text_of(const Lesson& lesson) {
  if (lesson.kind == "trial_settled") {
    return fmt::format("The trial \"{}\" is settled: \"{}\" brought more. Do it so from now on.",
                       lesson.of,
                       lesson.other);
  }
  return lesson.more_seeds > 0
             ? fmt::format("The trial \"{}\" leans to \"{}\" and is not settled: sow about {} more "
                           "seeds an arm.",
                           lesson.of,
                           lesson.other,
                           lesson.more_seeds)
             : fmt::format("The trial \"{}\" shows no difference that is worth more seed.",
                           lesson.of);
}

std::string failure_text(const Lesson& lesson) {
  if (lesson.kind == "seed_was_dead") {
    return fmt::format("Pressed, the seed of {} was mostly soft: it was dead. Sow such seed "
                       "sooner, or test twenty before sowing.",
                       lesson.of);
  }
  if (lesson.kind == "keep_the_pot") {
    return fmt::format("Pressed, the seed of {} was mostly firm: it lives. Keep the pot "
                       "through its rest, dry where its kind is dried off, and water it when "
                       "nights cool again.",
                       lesson.of);
  }
  if (lesson.kind == "watered_early") {
    return fmt::format("{} got first water {} before nights held{}, and little came. Wait for the "
                       "nights.",
                       lesson.of,
                       counted_text(lesson.count, "day"),
                       lesson.sowings > 1 ? " (on average)" : "");
  }
  return fmt::format("Fewer of {} came than promised, and nothing tells why. Press five recovered "
                     "seeds of each pot before you give it up: `nightsow account` says what "
                     "follows.",
                     lesson.of);
}

} // namespace

std::string lesson_text(const Lesson& lesson) {
  if (lesson.kind == "deaths") {
    return deaths_text(lesson);
  }
  if (lesson.kind == "trial_settled" || lesson.kind == "trial_open") {
    return trial_text_of(lesson);
  }
  if (lesson.kind == "promised_too_much" || lesson.kind == "promised_too_little") {
    return fmt::format("Over {} the plan promised {} seedlings too {}: sow {} next time, and let "
                       "`nightsow learn` say for which kinds.",
                       counted_text(lesson.sowings, "sowing"),
                       lesson.count,
                       lesson.kind == "promised_too_much" ? "many" : "few",
                       lesson.kind == "promised_too_much" ? "more" : "less");
  }
  if (lesson.kind == "never_counted") {
    return fmt::format("{} of {} {} never counted: {} taught nothing. Count every week or two, "
                       "zeros too.",
                       counted_text(lesson.sowings, "sowing"),
                       lesson.of,
                       lesson.sowings == 1 ? "was" : "were",
                       counted_text(lesson.count, "seed"));
  }
  if (lesson.kind == "count_after_rest") {
    return fmt::format("{} of {} were not counted after their first rest, by which a season is "
                       "judged. Count what is back: --phase back-after-rest.",
                       counted_text(lesson.count, "seedling"),
                       lesson.of);
  }
  if (lesson.kind == "lost_in_rest") {
    return fmt::format("{} of {} came and were not back after the rest, more than the plan "
                       "reckoned with. Grow them on longer, cool and shaded, and rest them less "
                       "dry.",
                       counted_text(lesson.count, "seedling"),
                       lesson.of);
  }
  return failure_text(lesson);
}

} // namespace nightsow::planner
