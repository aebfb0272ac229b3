#include "planner/answers/tasks.hpp"

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

constexpr std::array<std::pair<TaskKind, std::string_view>, 19> names{{
    {TaskKind::get_ready, "get_ready"},
    {TaskKind::sow_dry, "sow_dry"},
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
    {TaskKind::carry_on, "carry_on"},
    {TaskKind::carry_over, "carry_over"},
    {TaskKind::wake, "wake"},
    {TaskKind::pot_on, "pot_on"},
}};

// Days of a year, for what is done a year later.
constexpr int year_days = 365;

// Cool seasons before a pot may be emptied (common practice, no source).
constexpr int usual_keep_seasons = 3;

using Members = std::vector<const Sowing*>;

bool may_be_pricked_out(const Sowing& sowing) {
  return sowing.how.transplant == "easy" || sowing.how.transplant == "after_first_rest";
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

  void add_kept_pots(Date on) {
    const std::vector<std::string> pots = deferring();
    if (pots.empty()) {
      return;
    }
    const auto seasons = sorted<int>(
        [](const Sowing& one) { return one.work.defers ? one.work.keep_seasons : std::nullopt; });
    add(TaskKind::carry_over, on, pots);
    tasks_.back().seasons = seasons.empty() ? usual_keep_seasons : seasons.back();
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
      add(TaskKind::sow_dry, *day, packets, number);
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
  }

  [[nodiscard]] std::vector<std::string> deferring() const {
    return packets_where([](const Sowing& one) { return one.work.defers; });
  }

  // Only where the rule says that seed may wait: whether nothing came is for the grower to see.
  // Where no rest of the season is left for it, pots are carried over as they are.
  void wait_for_the_late() {
    const auto last = sorted<int>([](const Sowing& one) {
      return std::optional{one.how.last_look_days.value_or(usual_last_look_days)};
    });
    const auto rests = sorted<Date>([](const Sowing& one) { return one.work.rests; });
    const Date dry = water_ + Days{last.back()};
    const Date wet = dry + Days{dry_rest_days};
    if (rests.empty() || wet < rests.front()) {
      add(TaskKind::dry_rest, dry, deferring());
      add(TaskKind::re_wet, wet, deferring());
    }
  }

  void summer() {
    const auto rests = sorted<Date>([](const Sowing& one) { return one.work.rests; });
    const auto wakes = sorted<Date>([](const Sowing& one) { return one.work.wakes; });
    if (rests.empty() || wakes.empty() || rests.front() <= water_) {
      return;
    }
    const Date rest = rests.front();
    add(TaskKind::rest, rest, packets_where([](const Sowing& one) {
          return !one.work.too_small_to_rest;
        }));
    add(TaskKind::carry_on, rest, packets_where([](const Sowing& one) {
          return one.work.too_small_to_rest;
        }));
    add_kept_pots(rest);
    second_year(wakes.front());
  }

  void second_year(Date wake) {
    add(TaskKind::wake, wake, everything());
    add(TaskKind::prick_out, wake, packets_where(may_be_pricked_out));
    add(TaskKind::leave, wake, packets_where([](const Sowing& one) {
          return !may_be_pricked_out(one);
        }));
    add_shade(2, wake, &WorkFacts::shade_second_year);
    const Date third = wake + Days{year_days};
    add_shade(3, third, &WorkFacts::shade_third_year);
    add(TaskKind::pot_on,
        third,
        packets_where([](const Sowing& one) { return one.how.transplant != "never"; }),
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
