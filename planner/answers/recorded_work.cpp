#include "planner/answers/recorded_work.hpp"

#include "planner/answers/resting_work.hpp"
#include "planner/answers/tasks.hpp"

#include <algorithm>
#include <iterator>
#include <map>
#include <string_view>
#include <tuple>
#include <utility>

namespace nightsow::planner {

namespace {

// A dry rest written down so long before the usual day is that rest.
constexpr Days early_rest{90};
constexpr int told_of_rest_days = 7;

/// What was written down of one sowing, by date.
class Told {
public:
  Told(const Records& records, EntryId sowing) {
    keep(records.counts, sowing, counts_);
    keep(records.waterings, sowing, waterings_);
    keep(records.moves, sowing, moves_);
    keep(records.pottings, sowing, pottings_);
  }

  [[nodiscard]] std::optional<Date> count_from(Date day) const {
    return first_day(counts_, [&](const SeedlingCount& count) { return count.on >= day; });
  }

  /// Dead ones had come up as well.
  [[nodiscard]] std::optional<Date> seedlings() const {
    return first_day(counts_,
                     [](const SeedlingCount& count) { return count.seen + count.dead > 0; });
  }

  [[nodiscard]] std::optional<Date> dry_rest(Date from = Date::min()) const {
    return first_day(waterings_, [&](const Watering& watering) {
      return watering.kind == WateringKind::dry_rest && watering.on >= from;
    });
  }

  [[nodiscard]] std::optional<Date> water_from(Date day) const {
    return first_day(waterings_, [&](const Watering& watering) {
      return watering.kind != WateringKind::dry_rest && watering.on >= day;
    });
  }

  [[nodiscard]] std::optional<Date> moved(MoveKind kind, bool off) const {
    return first_day(moves_, [&](const Move& move) {
      return move.kind == kind && (move.to == "off" || move.to == "0") == off;
    });
  }

  /// The last one by need, where the pot was not left dry since.
  [[nodiscard]] std::optional<Date> watered_last(Date from) const {
    std::optional<Date> last;
    for (const Watering& watering : waterings_) {
      if (watering.kind == WateringKind::dry_rest) {
        last.reset();
      } else if (watering.kind == WateringKind::watered && watering.on >= from) {
        last = watering.on;
      }
    }
    return last;
  }

  [[nodiscard]] std::optional<Date> potted(PottingKind kind, Date from) const {
    return first_day(pottings_, [&](const Potting& potting) {
      return potting.kind == kind && potting.on >= from;
    });
  }

private:
  template <class Entry>
  static void keep(const std::vector<Entry>& from, EntryId sowing, std::vector<Entry>& to) {
    std::copy_if(from.begin(), from.end(), std::back_inserter(to), [&](const Entry& entry) {
      return entry.sowing == sowing;
    });
  }

  template <class Entry, class Is>
  static std::optional<Date> first_day(const std::vector<Entry>& list, Is is) {
    const auto found = std::find_if(list.begin(), list.end(), is);
    return found == list.end() ? std::nullopt : std::optional{found->on};
  }

  std::vector<SeedlingCount> counts_;
  std::vector<Watering> waterings_;
  std::vector<Move> moves_;
  std::vector<Potting> pottings_;
};

/// Watering by need as far as somebody writes it down.
std::vector<PotTask> waterings_by_need(const Told& told,
                                       Date from,
                                       const std::optional<int>& every_days,
                                       const std::optional<Date>& rests,
                                       Date today) {
  std::vector<PotTask> work;
  const std::optional<Date> last = told.watered_last(from);
  if (!last) {
    return work;
  }
  work.push_back({TaskKind::water_by_need, *last, true, {}, {}});
  const Date due = *last + Days{every_days.value_or(0)};
  const bool grows = !rests || (due < *rests && today < *rests);
  if (every_days && grows && due + Days{late_work_days} >= today) {
    work.push_back({TaskKind::water_by_need, due, false, {}, every_days});
  }
  return work;
}

// From when on a resting plant asks for no more work; evergreens go on.
std::optional<Date> growth_stops(species_rules::FirstRestWay way,
                                 const std::optional<Date>& rests) {
  return way == species_rules::FirstRestWay::none ? std::nullopt : rests;
}

// The work that a resting season brings. A dry rest is asked for until it is written down; of the
// other ways nothing is written, and they are told for a while.
std::optional<PotTask> rest_work(const Told& told,
                                 species_rules::FirstRestWay way,
                                 const std::optional<Date>& rests,
                                 Date today) {
  if (!rests) {
    return std::nullopt;
  }
  const bool dry = way == species_rules::FirstRestWay::dry;
  if (const auto dried = told.dry_rest(*rests - early_rest); dry && dried) {
    return PotTask{TaskKind::rest, *dried, true, {}, {}};
  }
  if (today >= *rests + Days{dry ? late_work_days : told_of_rest_days}) {
    return std::nullopt;
  }
  return PotTask{resting_task(way), *rests, false, {}, {}};
}

void in_order(std::vector<PotTask>& work) {
  std::stable_sort(work.begin(), work.end(), [](const PotTask& a, const PotTask& b) {
    return std::tie(a.on, a.kind) < std::tie(b.on, b.kind);
  });
}

/// The work of one sowing since its first water.
class PotHistory {
public:
  PotHistory(
      const RecordedSowing& sowing, Told told, Date first_water, const PotNeeds& needs, Date today)
      : sowing_(sowing), told_(std::move(told)), needs_(needs), today_(today), water_(first_water),
        first_look_(water_ + Days{needs.first_look_days}),
        main_look_(water_ + Days{needs.main_look_days}),
        stops_(growth_stops(needs.first_rest, needs.rests)), seedlings_(told_.seedlings()) {}

  std::vector<PotTask> all() {
    done(TaskKind::first_water, water_);
    looks();
    bag();
    mat();
    add_if_wanted(TaskKind::shade,
                  needs_.shade.has_value(),
                  told_.moved(MoveKind::shade, false),
                  first_look_,
                  needs_.shade);
    dry();
    potted();
    by_need();
    return std::move(work_);
  }

private:
  void done(TaskKind kind, Date on, std::optional<double> share = {}) {
    work_.push_back({kind, on, true, share, {}});
  }

  // At rest nothing of it is left to do.
  void open(TaskKind kind, Date due, std::optional<double> share = {}) {
    if (!stops_ || (due < *stops_ && today_ < *stops_)) {
      work_.push_back({kind, due, false, share, {}});
    }
  }

  void add_if_wanted(TaskKind kind,
                     bool wanted,
                     const std::optional<Date>& was_done,
                     Date due,
                     std::optional<double> share = {}) {
    if (was_done) {
      done(kind, *was_done, share);
    } else if (wanted && due + Days{late_work_days} >= today_) {
      open(kind, due, share);
    }
  }

  // The first one is overdue only until the main one is due, which says all that it would have.
  void looks() {
    const Days early{std::min(early_look_days, days_between(first_look_, main_look_) / 2)};
    const std::optional<Date> main = told_.count_from(main_look_ - early);
    std::optional<Date> first = told_.count_from(first_look_ - early);
    if (seedlings_ && (!first || *seedlings_ < *first)) {
      first = seedlings_;
    }
    if (first && (!main || *first < *main)) {
      done(TaskKind::first_look, *first);
    } else if (!main && today_ < main_look_ - early) {
      open(TaskKind::first_look, first_look_);
    }
    if (main) {
      done(TaskKind::main_look, *main);
    } else {
      open(TaskKind::main_look, main_look_);
    }
  }

  // Where a count found none yet it stays closed; the main look asks again.
  void bag() {
    const bool none_yet = !seedlings_ && told_.count_from(water_);
    const Date due =
        seedlings_ ? *seedlings_ + Days{bag_off_days} : first_look_ + Days{bag_off_days};
    add_if_wanted(TaskKind::bag_off,
                  needs_.bag || told_.moved(MoveKind::bag, false),
                  told_.moved(MoveKind::bag, true),
                  none_yet ? std::max(due, main_look_) : due);
  }

  // A pot that was put onto a mat stands on it until it was taken off.
  void mat() {
    std::optional<Date> on = told_.moved(MoveKind::mat, false);
    if (!sowing_.mat.empty()) {
      on = water_;
    }
    add_if_wanted(TaskKind::mat_on, needs_.mat, on, water_);
    if (on) {
      add_if_wanted(TaskKind::mat_off, true, told_.moved(MoveKind::mat, true), main_look_);
    }
  }

  // A dry rest is the first rest of seedlings, or the summer that pots get in which nothing came.
  void dry() {
    const std::optional<Date> dried = told_.dry_rest();
    if (dried && seedlings_ && *seedlings_ <= *dried) {
      done(TaskKind::rest, *dried);
      return;
    }
    const Date due = water_ + Days{needs_.last_look_days};
    const Date wet = dried.value_or(std::max(due, today_)) + Days{dry_rest_days};
    const bool in_time = !needs_.rests || wet < *needs_.rests;
    const bool wanted = needs_.defers && needs_.may_go_dry && !seedlings_ && in_time;
    add_if_wanted(TaskKind::dry_rest, wanted, dried, due);
    const auto wetted = dried ? told_.water_from(*dried) : std::nullopt;
    if (dried || (wanted && due + Days{late_work_days} >= today_)) {
      add_if_wanted(TaskKind::re_wet, true, wetted, wet);
    }
    const bool may_rest = seedlings_ || !dried || wetted;
    if (const auto rest = rest_work(told_, needs_.first_rest, needs_.rests, today_);
        may_rest && rest) {
      work_.push_back(*rest);
    }
  }

  // Nothing asks for it in the first season, but some do it.
  void potted() {
    for (const auto& [kind, task] : {std::pair{PottingKind::pricked_out, TaskKind::prick_out},
                                     std::pair{PottingKind::potted_on, TaskKind::pot_on}}) {
      if (const auto on = told_.potted(kind, water_)) {
        done(task, *on);
      }
    }
  }

  void by_need() {
    const auto every = today_ < main_look_ ? needs_.water_every_days : needs_.waters_later_days;
    for (PotTask& task : waterings_by_need(told_, water_, every, stops_, today_)) {
      work_.push_back(task);
    }
  }

  const RecordedSowing& sowing_;
  Told told_;
  const PotNeeds& needs_;
  Date today_{};
  Date water_{};
  Date first_look_{};
  Date main_look_{};
  std::optional<Date> stops_;
  std::optional<Date> seedlings_;
  std::vector<PotTask> work_;
};

} // namespace

std::vector<PotTask> recorded_work(const Records& records,
                                   const RecordedSowing& sowing,
                                   const std::optional<Date>& first_water,
                                   const PotNeeds& needs,
                                   Date today) {
  std::vector<PotTask> work{{TaskKind::sow_dry, sowing.on, true, {}, {}}};
  if (first_water) {
    PotHistory history{sowing, Told{records, sowing.id}, *first_water, needs, today};
    for (PotTask& task : history.all()) {
      work.push_back(task);
    }
  }
  in_order(work);
  return work;
}

std::vector<PotTask> recorded_later_work(const Records& records,
                                         const RecordedSowing& sowing,
                                         const LaterPotNeeds& needs,
                                         Date today) {
  const Told told{records, sowing.id};
  std::vector<PotTask> work;
  if (needs.woken) {
    work.push_back({TaskKind::wake, needs.grows_from, true, {}, {}});
  }
  const auto add = [&](PottingKind kind, TaskKind task, bool wanted) {
    if (const auto on = told.potted(kind, needs.grows_from)) {
      work.push_back({task, *on, true, {}, {}});
    } else if (wanted && !told.potted(kind, sowing.on) &&
               needs.grows_from + Days{late_work_days} >= today) {
      work.push_back({task, needs.grows_from, false, {}, {}});
    }
  };
  add(PottingKind::pricked_out, TaskKind::prick_out, needs.prick_out);
  add(PottingKind::potted_on, TaskKind::pot_on, needs.pot_on);
  const std::optional<Date> stops = growth_stops(needs.rest, needs.rests);
  for (PotTask& task :
       waterings_by_need(told, needs.by_need_from(), needs.water_every_days, stops, today)) {
    work.push_back(task);
  }
  if (const auto rest = rest_work(told, needs.rest, needs.rests, today)) {
    work.push_back(*rest);
  }
  in_order(work);
  return work;
}

std::optional<PotTask> recorded_rest(const Records& records,
                                     EntryId sowing,
                                     species_rules::FirstRestWay way,
                                     const std::optional<Date>& rests,
                                     Date today) {
  return rest_work(Told{records, sowing}, way, rests, today);
}

bool waters_are_told(const Records& records, EntryId sowing, Date from) {
  return Told{records, sowing}.watered_last(from).has_value();
}

void mark_overdue_sowings(const SavedPlan& saved,
                          const Records& records,
                          Date today,
                          std::vector<Task>& tasks) {
  std::map<std::string_view, double> sown;
  for (const RecordedSowing& sowing : records.sowings) {
    sown[sowing.packet_id] += sowing.seeds;
  }
  std::map<std::string_view, Date> overdue;
  for (const SavedLine& line : saved.lines) {
    if (line.sow_on && *line.sow_on < today && sown[line.packet] <= line.seeds_sown) {
      overdue.emplace(line.packet, *line.sow_on);
    }
  }
  for (Task& task : tasks) {
    if (!is_sowing(task.kind) || task.done_on) {
      continue;
    }
    for (const std::string& packet : task.packets) {
      if (const auto found = overdue.find(packet); found != overdue.end()) {
        task.overdue_since = std::min(task.overdue_since.value_or(found->second), found->second);
      }
    }
  }
}

} // namespace nightsow::planner
