#include "planner/answers/tasks.hpp"

#include "planner/answers/resting_work.hpp"
#include "planner/model/sowing_days.hpp"
#include "planner/model/usual_looks.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <stdexcept>
#include <string_view>
#include <tuple>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr std::array<std::pair<TaskKind, std::string_view>, 23> names{{
    {TaskKind::get_ready, "get_ready"},
    {TaskKind::sow_dry, "sow_dry"},
    {TaskKind::sow_wet, "sow_wet"},
    {TaskKind::first_water, "first_water"},
    {TaskKind::mat_on, "mat_on"},
    {TaskKind::water_by_need, "water_by_need"},
    {TaskKind::first_look, "first_look"},
    {TaskKind::bag_off, "bag_off"},
    {TaskKind::main_look, "main_look"},
    {TaskKind::mat_off, "mat_off"},
    {TaskKind::shade, "shade"},
    {TaskKind::dry_rest, "dry_rest"},
    {TaskKind::re_wet, "re_wet"},
    {TaskKind::prick_out, "prick_out"},
    {TaskKind::leave, "leave"},
    {TaskKind::rest, "rest"},
    {TaskKind::rest_moist, "rest_moist"},
    {TaskKind::keep_watering, "keep_watering"},
    {TaskKind::gather_seed, "gather_seed"},
    {TaskKind::carry_on, "carry_on"},
    {TaskKind::carry_over, "carry_over"},
    {TaskKind::wake, "wake"},
    {TaskKind::pot_on, "pot_on"},
}};

// Days of a year, for what is done a year later.
constexpr int year_days = 365;

using Members = std::vector<const Sowing*>;

bool may_be_pricked_out(const Sowing& sowing) {
  return sowing.how.transplant == "easy" || sowing.how.transplant == "after_first_rest";
}

// A kind whose rule does not say rests dry.
std::string_view first_rest(const Sowing& sowing) {
  return sowing.how.first_rest ? std::string_view{*sowing.how.first_rest} : "dry";
}

bool is_annual(const Sowing& sowing) {
  return first_rest(sowing) == "dies";
}

bool rests(const Sowing& sowing) {
  return first_rest(sowing) == "dry" || first_rest(sowing) == "barely_moist";
}

/// The work on one tray.
class TrayWork {
public:
  TrayWork(const Lot& lot, Members members, const Presence& presence)
      : lot_(lot), members_(std::move(members)), presence_(presence) {}

  std::vector<Task> all() {
    sow();
    water();
    look();
    wait_for_the_late();
    summer();
    return std::move(tasks_);
  }

private:
  void add(TaskKind kind, Date on, std::vector<std::string> packets, int number = 1) {
    add_not_before(presence_.today, kind, on, std::move(packets), number);
  }

  void add_not_before(
      Date earliest, TaskKind kind, Date on, std::vector<std::string> packets, int number = 1) {
    if (packets.empty()) {
      return;
    }
    Task task;
    const Date wanted = std::max(on, earliest);
    task.on = nearest_day_there(presence_.away, wanted, earliest);
    if (task.on != wanted) {
      task.moved_from = wanted;
    }
    task.lot = lot_.id;
    task.kind = kind;
    task.number = number;
    task.packets = std::move(packets);
    tasks_.push_back(std::move(task));
  }

  template <class Concerns>
  [[nodiscard]] std::vector<std::string> packets_where(Concerns concerns) const {
    std::vector<std::string> packets;
    for (const Sowing* sowing : members_) {
      if (concerns(*sowing)) {
        packets.push_back(sowing->packet);
      }
    }
    return packets;
  }

  [[nodiscard]] std::vector<std::string> everything() const {
    return packets_where([](const Sowing&) { return true; });
  }

  // The values that there are, in rising order.
  template <class Value, class Of> [[nodiscard]] std::vector<Value> sorted(Of of) const {
    std::vector<Value> values;
    for (const Sowing* sowing : members_) {
      if (const std::optional<Value> value = of(*sowing)) {
        values.push_back(*value);
      }
    }
    std::sort(values.begin(), values.end());
    return values;
  }

  [[nodiscard]] std::vector<TreatedPackets> treated_on(Date day) const {
    std::vector<TreatedPackets> all;
    for (const auto* treatment : {"leach", "scarify", "smoke"}) {
      std::vector<std::string> packets = packets_where([&](const Sowing& one) {
        const auto& helps = one.work.treatments;
        return one.sow_on == day && std::find(helps.begin(), helps.end(), treatment) != helps.end();
      });
      if (!packets.empty()) {
        all.push_back({treatment, std::move(packets)});
      }
    }
    return all;
  }

  void add_shade(int number, Date on, std::optional<double> WorkFacts::*share) {
    const auto shares = sorted<double>([&](const Sowing& one) { return one.work.*share; });
    if (!shares.empty()) {
      add(TaskKind::shade,
          on,
          packets_where([&](const Sowing& one) { return (one.work.*share).has_value(); }),
          number);
      tasks_.back().share = shares.back();
    }
  }

  void add_kept_pots(bool moist, Date on) {
    const std::vector<std::string> pots = deferring(!moist);
    if (pots.empty()) {
      return;
    }
    const auto seasons = sorted<int>([&](const Sowing& one) {
      return one.work.defers && one.work.may_go_dry != moist ? one.work.keep_seasons : std::nullopt;
    });
    add(TaskKind::carry_over, on, pots, moist ? 2 : 1);
    tasks_.back().seasons = seasons.empty() ? usual_keep_seasons : seasons.back();
    tasks_.back().moist = moist;
  }

  [[nodiscard]] std::vector<std::string> sown_on(Date day) const {
    return packets_where([&](const Sowing& one) { return one.sow_on == day; });
  }

  [[nodiscard]] std::optional<int> pots_of(const std::vector<std::string>& packets) const {
    std::optional<int> pots;
    for (const LotPacket& packet : lot_.packets) {
      if (packet.pots &&
          std::find(packets.begin(), packets.end(), packet.packet) != packets.end()) {
        pots = pots.value_or(0) + *packet.pots;
      }
    }
    return pots;
  }

  void sow() {
    const auto days = sorted<Date>([](const Sowing& one) { return one.sow_on; });
    int number = 0;
    for (auto day = days.begin(); day != days.end();
         day = std::upper_bound(days.begin(), days.end(), *day)) {
      const std::vector<std::string> packets = sown_on(*day);
      add(TaskKind::get_ready, *day - Days{days_to_get_ready}, packets, ++number);
      tasks_.back().treated = treated_on(*day);
      tasks_.back().pots = pots_of(packets);
      add(lot_.start == "at_once" ? TaskKind::sow_wet : TaskKind::sow_dry, *day, packets, number);
    }
  }

  void water() {
    const Date earliest = std::max(
        {presence_.today, lot_.first_water.not_before.value_or(lot_.sown_by), lot_.sown_by});
    add_not_before(earliest, TaskKind::first_water, *lot_.waters, everything());
    tasks_.back().moved_from = lot_.waters_if_there;
    water_ = tasks_.back().on;
    if (lot_.mat) {
      add(TaskKind::mat_on, water_, everything());
    }
    add_water_by_need(1, water_, &WorkFacts::water_every_days);
  }

  void add_water_by_need(int number, Date on, std::optional<int> WorkFacts::*every) {
    const auto days = sorted<int>([&](const Sowing& one) { return one.work.*every; });
    add(TaskKind::water_by_need, on, everything(), number);
    if (!days.empty()) {
      tasks_.back().every_days = days.front();
    }
  }

  void look() {
    const auto first = sorted<int>([](const Sowing& one) {
      return std::optional{one.how.first_look_days.value_or(usual_first_look_days)};
    });
    const auto main = sorted<int>([](const Sowing& one) {
      return std::optional{one.how.main_look_days.value_or(usual_main_look_days)};
    });
    const Date first_look = water_ + Days{first.front()};
    add(TaskKind::first_look, first_look, everything());
    add_shade(1, first_look, &WorkFacts::shade_first_year);
    if (lot_.bag) {
      add(TaskKind::bag_off, first_look + Days{bag_off_days}, everything());
    }
    const Date main_look = water_ + Days{main[main.size() / 2]};
    add(TaskKind::main_look, main_look, everything());
    if (lot_.mat) {
      add(TaskKind::mat_off, main_look, everything());
    }
    add_water_by_need(2, main_look, &WorkFacts::waters_later_days);
    add(TaskKind::prick_out, main_look, packets_where([](const Sowing& one) {
          return is_annual(one) && may_be_pricked_out(one);
        }));
  }

  [[nodiscard]] std::vector<std::string> deferring(bool may_go_dry) const {
    return packets_where(
        [&](const Sowing& one) { return one.work.defers && one.work.may_go_dry == may_go_dry; });
  }

  // Only where the rule says that seed may wait and dry: whether nothing came is for the grower to
  // see.
  // Where no rest of the season is left for it, pots are carried over as they are.
  void wait_for_the_late() {
    const auto last = sorted<int>([](const Sowing& one) {
      return std::optional{one.how.last_look_days.value_or(usual_last_look_days)};
    });
    const auto rests = sorted<Date>([](const Sowing& one) { return one.work.rests; });
    const Date dry = water_ + Days{last.back()};
    const Date wet = dry + Days{dry_rest_days};
    if (rests.empty() || wet < rests.front()) {
      add(TaskKind::dry_rest, dry, deferring(true));
      add(TaskKind::re_wet, wet, deferring(true));
    }
  }

  void summer() {
    const auto rests = sorted<Date>([](const Sowing& one) { return one.work.rests; });
    const auto wakes = sorted<Date>([](const Sowing& one) { return one.work.wakes; });
    if (rests.empty() || wakes.empty() || rests.front() <= water_) {
      return;
    }
    first_resting_season(rests.front());
    second_year(wakes.front());
  }

  void first_resting_season(Date on) {
    const auto large_enough = [&](TaskKind kind, std::string_view way) {
      add(kind, on, packets_where([&](const Sowing& one) {
            return first_rest(one) == way && !(rests(one) && one.work.too_small_to_rest);
          }));
    };
    for (const auto& [way, word] : species_rules::Words<species_rules::FirstRestWay>::table) {
      large_enough(resting_task(way), word);
    }
    add(TaskKind::carry_on, on, packets_where([](const Sowing& one) {
          return rests(one) && one.work.too_small_to_rest;
        }));
    add_kept_pots(false, on);
    add_kept_pots(true, on);
  }

  // Annuals have none but what comes of seed that waits in the pot; evergreens need no waking.
  void second_year(Date wake) {
    add(TaskKind::wake, wake, packets_where([](const Sowing& one) {
          return rests(one) || one.work.defers;
        }));
    add(TaskKind::prick_out,
        wake,
        packets_where([](const Sowing& one) { return !is_annual(one) && may_be_pricked_out(one); }),
        2);
    add(TaskKind::leave, wake, packets_where([](const Sowing& one) {
          return !is_annual(one) && !may_be_pricked_out(one);
        }));
    add_shade(2, wake, &WorkFacts::shade_second_year);
    const Date third = wake + Days{year_days};
    add_shade(3, third, &WorkFacts::shade_third_year);
    add(TaskKind::pot_on,
        third,
        packets_where(
            [](const Sowing& one) { return !is_annual(one) && one.how.transplant != "never"; }),
        3);
  }

  const Lot& lot_;
  Members members_;
  const Presence& presence_;
  Date water_{};
  std::vector<Task> tasks_;
};

} // namespace

std::string_view name_of(TaskKind kind) {
  for (const auto& [known, name] : names) {
    if (known == kind) {
      return name;
    }
  }
  throw std::logic_error("a task has no name");
}

std::vector<Task> tasks_of(const std::vector<Lot>& lots,
                           const std::vector<Sowing>& sowings,
                           const Presence& presence) {
  std::map<std::string_view, const Sowing*> by_packet;
  for (const Sowing& sowing : sowings) {
    by_packet[sowing.packet] = &sowing;
  }
  std::vector<Task> tasks;
  for (const Lot& lot : lots) {
    Members members;
    for (const LotPacket& packet : lot.packets) {
      members.push_back(by_packet.at(packet.packet));
    }
    for (Task& task : TrayWork{lot, std::move(members), presence}.all()) {
      tasks.push_back(std::move(task));
    }
  }
  std::stable_sort(tasks.begin(), tasks.end(), [](const Task& a, const Task& b) {
    return std::tuple{a.on, a.kind, a.lot} < std::tuple{b.on, b.kind, b.lot};
  });
  return tasks;
}

} // namespace nightsow::planner
