#include "planner/render/task_words.hpp"

#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plain_words.hpp"
#include "planner/render/words.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace nightsow::planner {

namespace {

/// What is said of a kind of task whatever the tray.
struct TaskWords {
  TaskKind kind;
  std::string_view title;
  std::string_view text;
};

constexpr std::array<TaskWords, 23> words{{
    {TaskKind::get_ready, "Get ready", "Have pots, mix, cover and labels ready"},
    {TaskKind::sow_dry, "Sow dry", "Sow and cover, without water"},
    {TaskKind::sow_wet,
     "Sow and water",
     "Sow, and water from below the same day: this seed dies when it dries"},
    {TaskKind::first_water, "First water", "Water from below"},
    {TaskKind::mat_on,
     "Mat on",
     "Switch the mat on, its probe in a pot, behind a residual-current device"},
    {TaskKind::water_by_need, "Water by need", ""},
    {TaskKind::first_look, "First look", "The first seedlings may show"},
    {TaskKind::bag_off,
     "Bag off",
     "Open the bag within three days of the first seedlings; closed, it stays in the shade"},
    {TaskKind::main_look, "Main look", "Most should be up: count them, pot by pot"},
    {TaskKind::mat_off, "Mat off", "Seedlings stand better off the mat"},
    {TaskKind::shade, "Shade", ""},
    {TaskKind::dry_rest,
     "Dry rest",
     "Only pots in which nothing came up: let them go dry for three weeks"},
    {TaskKind::re_wet, "Wet again", "The pots that were let go dry: water them again from below"},
    {TaskKind::prick_out, "Prick out", ""},
    {TaskKind::leave,
     "Leave in their pots",
     "These do not like to be moved so early: leave them in their pots"},
    {TaskKind::rest,
     "Rest",
     "About now the first rest begins: water less and less, then shade and a sip now and then"},
    {TaskKind::rest_moist,
     "Rest barely moist",
     "About now the first rest begins: water less, in shade, and never let these dry out; they are "
     "not dried off"},
    {TaskKind::keep_watering,
     "Keep watering",
     "Evergreen, with no dry rest: go on watering by need through their resting season, in shade "
     "and air"},
    {TaskKind::gather_seed,
     "Gather seed",
     "Annuals: they flower, set seed and die about now, and have no rest to live through. Gather "
     "the seed before it falls"},
    {TaskKind::carry_on,
     "Carry on",
     "Usually too small by now to rest: keep them cool, shaded and watered while they grow"},
    {TaskKind::carry_over, "Keep the pots", "Nothing came up, or little: keep the pots"},
    {TaskKind::wake,
     "Wake",
     "Its season usually begins again about now: water what rests, and pots that were kept"},
    {TaskKind::pot_on,
     "Pot on",
     "Their third season begins: move those whose roots fill the pot into a larger one, with the "
     "whole of the old mix"},
}};

constexpr std::array<std::pair<std::string_view, std::string_view>, 3> treatments{{
    {"leach", "soak and rinse"},
    {"scarify", "nick or rub the coat of"},
    {"smoke", "smoke"},
}};

const TaskWords& words_of(TaskKind kind) {
  return *std::find_if(
      words.begin(), words.end(), [&](const TaskWords& known) { return known.kind == kind; });
}

std::string_view treatment_words(std::string_view treatment) {
  for (const auto& [known, text] : treatments) {
    if (known == treatment) {
      return text;
    }
  }
  return treatment;
}

std::string ready_text(const Task& task) {
  std::string text{words_of(task.kind).text};
  if (task.pots) {
    text += " for " + counted_text(*task.pots, "pot");
  }
  if (task.treated.empty()) {
    return text;
  }
  std::vector<std::string> parts;
  for (const TreatedPackets& treated : task.treated) {
    parts.push_back(
        fmt::format("{} {}", treatment_words(treated.treatment), listed_packets(treated.packets)));
  }
  return text + fmt::format(". Not before first water is near: {}", fmt::join(parts, "; "));
}

std::string first_water_text(const Task& task, const Lot& lot, const TextStyle& style) {
  std::string text{words_of(task.kind).text};
  if (lot.start == "at_once") {
    text += ", the day they are sown";
  } else if (lot.verdict == Verdict::water_now) {
    text += " now";
  } else if (const auto condition = water_condition(lot.first_water, task.on, style);
             !condition.empty()) {
    text += (lot.first_water.when ? " when " : ": ") + condition;
  }
  text += ". Never on a frost night";
  if (lot.bag) {
    text += ". Close the bag, and keep it in the shade";
  }
  return text;
}

std::string by_need_text(const Task& task, const Lot& lot) {
  const bool in_bag = task.number == 1 && lot.bag;
  std::string text =
      in_bag ? "In its bag it dries slowly: look, and water from below once the top is dry"
             : fmt::format("From {} on water from below by need, once the top is dry",
                           task.number == 1 ? "then" : "now");
  if (task.every_days) {
    text += *task.every_days == 1 ? ", usually every day"
                                  : fmt::format(", usually about every {} days", *task.every_days);
  }
  return text;
}

std::string shade_text(const Task& task) {
  constexpr std::array<std::string_view, 3> years{"first", "second", "third"};
  std::string text = fmt::format("From the {} year on: keep up to {} of the sun off",
                                 years.at(static_cast<std::size_t>(task.number - 1)),
                                 percent_text(task.share.value_or(0.0)));
  return task.number == 1 ? text + ", at first all of the afternoon's" : text;
}

std::string kept_text(const Task& task) {
  return fmt::format(
      "{} {} and shaded. Empty none before {} have passed, or before a soft press finds no firm "
      "seed",
      words_of(task.kind).text,
      task.moist.value_or(false) ? "barely moist" : "dry",
      counted_text(task.seasons.value_or(0), "cool season"));
}

std::string_view prick_out_text(const Task& task) {
  return task.number == 1 ? "Annuals may be pricked out while they are young, with two true leaves"
                          : "These may be pricked out once they grow again";
}

std::string plain_text(const Task& task, const Lot& lot, const TextStyle& style) {
  switch (task.kind) {
  case TaskKind::prick_out:
    return std::string{prick_out_text(task)};
  case TaskKind::get_ready:
    return ready_text(task);
  case TaskKind::first_water:
    return first_water_text(task, lot, style);
  case TaskKind::water_by_need:
    return by_need_text(task, lot);
  case TaskKind::shade:
    return shade_text(task);
  case TaskKind::carry_over:
    return kept_text(task);
  case TaskKind::mat_on:
    return std::string{words_of(task.kind).text} + (lot.mat_off_at_night ? ". Off at night" : "");
  default:
    return std::string{words_of(task.kind).text};
  }
}

// Seed that was sown wet was not sown dry.
std::string done_text(const Task& task) {
  const std::string day = day_text(*task.done_on, task.on);
  return task.kind == TaskKind::sow_dry || task.kind == TaskKind::sow_wet
             ? fmt::format("Sown on {}.", day)
             : fmt::format("{}: done on {}.", task_title(task.kind), day);
}

} // namespace

std::string task_title(TaskKind kind) {
  return std::string{words_of(kind).title};
}

std::string task_text(const Task& task, const Lot& lot, const TextStyle& style) {
  std::string text = task.done_on ? done_text(task) : plain_text(task, lot, style) + ".";
  if (task.overdue_since) {
    text = fmt::format("Due since {}, and not written down as done. {}",
                       day_text(*task.overdue_since, task.on),
                       text);
  }
  if (task.packets.size() < lot.packets.size()) {
    text += fmt::format(" Packets: {}.", listed_packets(task.packets));
  }
  if (task.moved_from) {
    text += fmt::format(" (You are away on {}.)", day_text(*task.moved_from, task.on));
  }
  return text;
}

// What is left of an entry may be of another kind than its main one; a day of sowing may hold
// nothing but seed that is sown wet.
std::string entry_title(const DiaryEntry& entry) {
  const bool all_done = entry.done();
  const auto counts = [&](const Task& task) { return all_done || !task.done_on; };
  const auto first = std::find_if(entry.tasks.begin(), entry.tasks.end(), counts);
  const auto has = [&](TaskKind kind) {
    return std::any_of(entry.tasks.begin(), entry.tasks.end(), [&](const Task& task) {
      return task.kind == kind && counts(task);
    });
  };
  const bool sows_wet = entry.kind == TaskKind::sow_dry && has(TaskKind::sow_wet);
  const TaskKind kind = has(entry.kind) || first == entry.tasks.end() ? entry.kind
                        : sows_wet                                    ? TaskKind::sow_wet
                                                                      : first->kind;
  const std::string title = task_title(kind);
  return entry.done() ? title + ", done" : entry.overdue_since() ? title + ", overdue" : title;
}

bool concerns(const DiaryEntry& entry, const Lot& lot) {
  return std::any_of(
      entry.tasks.begin(), entry.tasks.end(), [&](const Task& task) { return task.lot == lot.id; });
}

std::string entry_trays(const DiaryEntry& entry, const std::vector<Lot>& lots) {
  std::string group;
  bool same = true;
  int trays = 0;
  for (const Lot& lot : lots) {
    if (concerns(entry, lot)) {
      same = same && (trays == 0 || lot.group == group);
      group = lot.group;
      ++trays;
    }
  }
  return same ? group : counted_text(trays, "tray");
}

std::vector<std::string> entry_sentences(const DiaryEntry& entry,
                                         const std::vector<Lot>& lots,
                                         const TextStyle& style) {
  std::vector<std::pair<std::string, std::vector<std::string>>> said;
  for (const Task& task : entry.tasks) {
    std::string text = task_text(task, lot_with(lots, task.lot), style);
    if (task.on != entry.on && !task.done_on) {
      text = fmt::format("{}: {}", day_text(task.on, entry.on), text);
    }
    const auto known =
        std::find_if(said.begin(), said.end(), [&](const auto& one) { return one.first == text; });
    if (known == said.end()) {
      said.emplace_back(std::move(text), std::vector<std::string>{task.lot});
    } else {
      known->second.push_back(task.lot);
    }
  }
  const auto trays = static_cast<std::size_t>(std::count_if(
      lots.begin(), lots.end(), [&](const Lot& lot) { return concerns(entry, lot); }));
  std::vector<std::string> sentences;
  sentences.reserve(said.size());
  for (const auto& [text, of] : said) {
    sentences.push_back(of.size() == trays ? text
                                           : fmt::format("{} [{}]", text, listed_packets(of)));
  }
  return sentences;
}

std::string water_condition(const FirstWater& water, Date near, const TextStyle& style) {
  std::vector<std::string> parts;
  if (water.when) {
    std::string nights = fmt::format("{} of {} nights lie at or under {} on the {}",
                                     water.when->nights,
                                     water.when->of,
                                     temperature_text(water.when->at_or_under_c, style),
                                     water.when->bench);
    if (water.when->no_day_over_c) {
      nights += fmt::format(" and no day over {} is expected for a week",
                            temperature_text(*water.when->no_day_over_c, style));
    }
    parts.push_back(std::move(nights));
  }
  if (water.not_before) {
    parts.push_back("not before " + day_text(*water.not_before, near));
  }
  if (water.no_later_than) {
    parts.push_back("no later than " + day_text(*water.no_later_than, near));
  }
  return fmt::format("{}", fmt::join(parts, "; "));
}

std::string lot_words(const Lot& lot) {
  std::string text = lot.bench + ", " + plain_word("lot_cover", lot.cover);
  if (lot.start == "at_once" && !lot.carried) {
    text += ", sown and watered the same day";
  }
  if (lot.bag) {
    text += ", bag";
  }
  if (lot.mat) {
    text += lot.mat_off_at_night ? ", mat by day" : ", mat";
  }
  return text;
}

std::string listed_packets(const std::vector<std::string>& packets) {
  return fmt::format("{}", fmt::join(packets, ", "));
}

const Lot& lot_with(const std::vector<Lot>& lots, const std::string& id) {
  return *std::find_if(lots.begin(), lots.end(), [&](const Lot& lot) { return lot.id == id; });
}

} // namespace nightsow::planner
