#include "planner/answers/lessons.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

namespace nightsow::planner {

namespace {

constexpr std::size_t most_lessons = 3;
constexpr int sowings_for_a_promise = 5; // fewer say little of the plan's own numbers
constexpr double clearly_off = 1.25;     // promised over come, or the other way round
constexpr int ranges_to_doubt = 2;       // that did not hold, more to one side than to the other
constexpr double of_a_seedling = 0.6;    // plants that a seedling is worth
constexpr double of_a_trial = 0.5;       // of the seeds in it: what it teaches is for all years
constexpr double not_counting = 0.1;     // of the seeds that nobody counted
constexpr double not_judging = 0.2;      // of the seedlings that nobody looked at after the rest
constexpr double least_weight = 1.0;     // a plant

std::string joined(const std::set<std::string>& names) {
  constexpr std::size_t most_named = 3;
  std::string text;
  std::size_t named = 0;
  for (const std::string& name : names) {
    if (++named > most_named) {
      return text + " and others";
    }
    text += (text.empty() ? "" : ", ") + name;
  }
  return text;
}

double promised_seedlings(const ReviewLine& line) {
  return line.promised ? line.promised->seedlings.mean : 0.0;
}

double missing(const ReviewLine& line) {
  return std::max(0.0, promised_seedlings(line) - line.came.value_or(0)) * of_a_seedling;
}

/// Gathers the lines that teach the same.
class Gathering {
public:
  Gathering(std::string kind, double weighs) : weighs_(weighs) { lesson_.kind = std::move(kind); }

  void add(const ReviewLine& line, int count, double weight) {
    taxa_.insert(line.accepted);
    lesson_.count += count;
    ++lesson_.sowings;
    lesson_.weight += weighs_ * weight;
  }

  /// The count is then that of a sowing, on average, down to a whole one.
  void count_by_sowing() { lesson_.count /= std::max(1, lesson_.sowings); }

  void add_to(std::vector<Lesson>& list) {
    if (lesson_.sowings > 0) {
      lesson_.of = joined(taxa_);
      list.push_back(lesson_);
    }
  }

private:
  double weighs_;
  std::set<std::string> taxa_;
  Lesson lesson_;
};

void add_deaths(const ReviewAnswer& review, std::vector<Lesson>& list) {
  for (const DeathsLine& deaths : review.deaths) {
    Lesson lesson;
    lesson.kind = "deaths";
    lesson.of = deaths.of;
    lesson.count = deaths.seedlings;
    lesson.sowings = deaths.sowings;
    lesson.weight = of_a_seedling * deaths.seedlings;
    list.push_back(std::move(lesson));
  }
}

void add_failures(const ReviewAnswer& review, std::vector<Lesson>& list) {
  Gathering dead("seed_was_dead", 1.0);
  Gathering sound("keep_the_pot", 1.0);
  Gathering early("watered_early", 1.0);
  Gathering unknown("press_them", 0.5);
  for (const ReviewLine& line : review.lines) {
    if (line.outcome != "nothing" && line.outcome != "fewer") {
      continue;
    }
    const int not_up = line.seeds - line.came.value_or(0);
    if (line.why == "seed_was_dead") {
      dead.add(line, not_up, missing(line));
    } else if (line.closed_on && line.why != "watered_early") {
      continue; // neither can be kept nor pressed
    } else if (line.why == "seed_is_sound") {
      sound.add(line, not_up, missing(line));
    } else if (line.why == "watered_early") {
      early.add(line, line.days_early.value_or(0), missing(line));
    } else {
      unknown.add(line, not_up, missing(line));
    }
  }
  early.count_by_sowing();
  for (Gathering* gathering : {&dead, &sound, &early, &unknown}) {
    gathering->add_to(list);
  }
}

void add_counting(const ReviewAnswer& review, std::vector<Lesson>& list) {
  Gathering uncounted("never_counted", not_counting);
  Gathering unjudged("count_after_rest", not_judging);
  Gathering lost("lost_in_rest", 1.0);
  for (const ReviewLine& line : review.lines) {
    if (line.outcome == "not_counted") {
      uncounted.add(line, line.seeds, line.seeds);
    }
    const bool rested = review.rest_is_over && !line.annual && !line.evergreen;
    const bool judged_by_rest = rested && !line.closed_on;
    if (judged_by_rest && line.came.value_or(0) - line.dead > 0 && !line.back) {
      unjudged.add(line, *line.came - line.dead, *line.came - line.dead);
    }
    if (line.back && !line.annual && line.promised && *line.back < line.promised->plants.p10) {
      lost.add(line, line.came.value_or(0) - *line.back, line.promised->plants.mean - *line.back);
    }
  }
  for (Gathering* gathering : {&uncounted, &unjudged, &lost}) {
    gathering->add_to(list);
  }
}

void add_promise(const RangesHeld& held, std::vector<Lesson>& list) {
  if (held.told < sowings_for_a_promise || held.promised <= 0.0) {
    return;
  }
  const double ratio = held.promised / std::max(1, held.came);
  if (ratio < clearly_off && ratio > 1.0 / clearly_off) {
    return;
  }
  Lesson lesson;
  const int outside = ratio > 1.0 ? held.below - held.above : held.above - held.below;
  if (outside < ranges_to_doubt) {
    return;
  }
  lesson.kind = ratio > 1.0 ? "promised_too_much" : "promised_too_little";
  lesson.count = static_cast<int>(std::lround(std::abs(held.promised - held.came)));
  lesson.sowings = held.told;
  lesson.weight = 0.5 * of_a_seedling * lesson.count;
  list.push_back(std::move(lesson));
}

void add_trials(const std::vector<LearnedTrialLine>& trials, std::vector<Lesson>& list) {
  for (const LearnedTrialLine& trial : trials) {
    if (trial.pairs.empty()) {
      continue;
    }
    const TrialPairLine& pair = trial.pairs.front();
    Lesson lesson;
    lesson.kind = pair.settled ? "trial_settled" : "trial_open";
    lesson.of = trial.trial;
    lesson.other = pair.a;
    for (const TrialArmLine& arm : trial.arms) {
      lesson.sowings += arm.sowings;
      lesson.count += arm.sown;
    }
    lesson.more_seeds = pair.more_seeds_an_arm.value_or(0);
    lesson.weight = of_a_trial * pair.difference * lesson.count * (pair.settled ? 1.0 : 0.5);
    list.push_back(std::move(lesson));
  }
}

} // namespace

std::vector<Lesson> lessons_of(const ReviewAnswer& review,
                               const std::vector<LearnedTrialLine>& trials) {
  std::vector<Lesson> list;
  add_deaths(review, list);
  add_failures(review, list);
  add_counting(review, list);
  add_promise(review.seedlings_held, list);
  add_trials(trials, list);
  std::erase_if(list, [](const Lesson& lesson) { return lesson.weight < least_weight; });
  std::stable_sort(list.begin(), list.end(), [](const Lesson& a, const Lesson& b) {
    return a.weight > b.weight;
  });
  list.resize(std::min(list.size(), most_lessons));
  for (Lesson& lesson : list) {
    lesson.weight = std::round(lesson.weight * 10.0) / 10.0;
  }
  return list;
}

} // namespace nightsow::planner
