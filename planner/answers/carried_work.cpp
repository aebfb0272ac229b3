#include "planner/answers/carried.hpp"
#include "planner/garden/plain_text.hpp"
#include "planner/model/sowing_days.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace nightsow::planner {

namespace {

// By as much as the night limits of one tray of sowings.
constexpr int limit_step_c = 3;

std::string lot_of(const CarriedPot& pot) {
  std::string id = fmt::format("{}-{}", slug(pot.bench), name_of(pot.stage));
  if (pot.stage == PotStage::growing) {
    return id;
  }
  if (pot.water.when) {
    const double steps = std::floor(pot.water.when->at_or_under_c / limit_step_c);
    return fmt::format("{}-{}", id, static_cast<int>(steps) * limit_step_c);
  }
  return pot.start.empty() ? id : fmt::format("{}-{}", id, pot.start);
}

// As a grower finds it: the packet, and the number of the entry in the journal.
std::string name_of_pot(const CarriedPot& pot) {
  const std::string name = pot.packet.empty() ? pot.taxon : pot.packet;
  return pot.sowing > 0 ? fmt::format("{}#{}", name, pot.sowing) : name;
}

Lot empty_lot(const std::string& id, const CarriedPot& pot) {
  Lot lot;
  lot.carried = true;
  lot.id = id;
  lot.group = id;
  lot.bench = pot.bench;
  lot.start = pot.start;
  lot.verdict = pot.verdict;
  lot.cover = "surface";
  lot.pots = 0;
  lot.sow_on = lot.sown_by = pot.sown_on;
  return lot;
}

void add_pot(const CarriedPot& pot, Date today, Lot& lot) {
  LotPacket packet;
  packet.packet = name_of_pot(pot);
  packet.taxon = pot.taxon;
  packet.accepted = pot.accepted;
  packet.seeds = pot.seeds;
  packet.pots = pot.pots;
  lot.pots = *lot.pots + pot.pots;
  packet.sow_on = pot.sown_on;
  lot.sow_on = std::min(lot.sow_on, pot.sown_on);
  lot.sown_by = std::max(lot.sown_by, pot.sown_on);
  lot.packets.push_back(std::move(packet));
  if (lot.verdict != pot.verdict) {
    const bool unknown = lot.verdict == Verdict::unknown || pot.verdict == Verdict::unknown;
    lot.verdict = unknown ? Verdict::unknown : Verdict::wait;
  }
  // What waits longest decides for all of it.
  const std::optional<Date> water = day_of_water(pot.verdict, pot.water, today);
  if (pot.stage != PotStage::growing && water && (!lot.waters || *water >= *lot.waters)) {
    lot.waters = water;
    lot.first_water = pot.water;
  }
}

/// The work on the pots of one tray.
class PotWork {
public:
  PotWork(const Lot& lot, Date today, const std::vector<AwayPeriod>& away)
      : lot_(lot), today_(today), away_(away) {}

  void add(const CarriedPot& pot) {
    const std::string name = name_of_pot(pot);
    for (const PotTask& task : pot.work) {
      if (task.done) {
        work_[{task.on, task.kind, task.on, std::nullopt, task.share, {}}].push_back(name);
      } else {
        add(task.kind, task.on, name, task.share, task.every_days);
      }
    }
    if (pot.stage == PotStage::growing || !lot_.waters) {
      return;
    }
    const TaskKind kind = pot.stage == PotStage::dry ? TaskKind::first_water : TaskKind::wake;
    if (pot.water_due_since && *lot_.waters <= today_) {
      add(kind, *pot.water_due_since, name);
    } else {
      add(kind, std::max(*lot_.waters, today_), name);
    }
  }

  std::vector<Task> all() {
    std::map<TaskKind, int> numbers;
    std::vector<Task> tasks;
    for (auto& [what, packets] : work_) {
      Task task;
      task.kind = what.kind;
      task.on = what.on;
      task.done_on = what.done_on;
      task.overdue_since = what.overdue_since;
      task.share = what.share;
      task.every_days = what.every_days;
      const Date there = nearest_day_there(away_, task.on, today_);
      if (!task.done_on && there != task.on) {
        task.moved_from = task.on;
        task.on = there;
      }
      task.lot = lot_.id;
      task.number = number_of(task.kind, numbers);
      task.packets = std::move(packets);
      tasks.push_back(std::move(task));
    }
    return tasks;
  }

private:
  /// Pots with the same of it share a task.
  struct Work {
    Date on{};
    TaskKind kind{};
    std::optional<Date> done_on;
    std::optional<Date> overdue_since;
    std::optional<double> share;
    std::optional<int> every_days;

    [[nodiscard]] auto key() const {
      return std::tie(on, kind, done_on, overdue_since, share, every_days);
    }

    bool operator<(const Work& other) const { return key() < other.key(); }
  };

  // What is due before today is overdue: nobody wrote of it.
  void add(TaskKind kind,
           Date due,
           const std::string& name,
           std::optional<double> share = {},
           std::optional<int> every_days = {}) {
    const std::optional<Date> overdue = due < today_ ? std::optional{due} : std::nullopt;
    work_[{std::max(due, today_), kind, std::nullopt, overdue, share, every_days}].push_back(name);
  }

  // Of shade the number is the year.
  static int number_of(TaskKind kind, std::map<TaskKind, int>& numbers) {
    return kind == TaskKind::shade ? 1 : ++numbers[kind];
  }

  const Lot& lot_;
  Date today_{};
  const std::vector<AwayPeriod>& away_;
  std::map<Work, std::vector<std::string>> work_;
};

} // namespace

std::vector<Lot> carried_lots(const std::vector<CarriedPot>& pots, Date today) {
  std::map<std::string, Lot> by_id;
  for (const CarriedPot& pot : pots) {
    const std::string id = lot_of(pot);
    add_pot(pot, today, by_id.try_emplace(id, empty_lot(id, pot)).first->second);
  }
  std::vector<Lot> lots;
  lots.reserve(by_id.size());
  for (auto& [id, lot] : by_id) {
    lots.push_back(std::move(lot));
  }
  std::stable_sort(lots.begin(), lots.end(), [](const Lot& a, const Lot& b) {
    return a.waters.value_or(Date::max()) < b.waters.value_or(Date::max());
  });
  return lots;
}

std::vector<Task> carried_tasks(const std::vector<Lot>& lots,
                                const std::vector<CarriedPot>& pots,
                                Date today,
                                const std::vector<AwayPeriod>& away) {
  std::vector<Task> tasks;
  for (const Lot& lot : lots) {
    PotWork work{lot, today, away};
    for (const CarriedPot& pot : pots) {
      if (lot_of(pot) == lot.id) {
        work.add(pot);
      }
    }
    for (Task& task : work.all()) {
      tasks.push_back(std::move(task));
    }
  }
  return tasks;
}

} // namespace nightsow::planner
