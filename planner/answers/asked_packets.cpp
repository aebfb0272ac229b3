#include "planner/answers/asked_packets.hpp"

#include "climate/base/nearest_name.hpp"
#include "climate/base/problem.hpp"

#include <algorithm>
#include <set>
#include <string_view>

namespace nightsow::planner {

namespace {

template <class Line> bool is_called(const Line& line, std::string_view name) {
  return line.packet == name || begins_as(line.taxon, name) || begins_as(line.accepted, name);
}

template <class Line> bool is_asked(const Line& line, const std::vector<std::string>& names) {
  return std::any_of(
      names.begin(), names.end(), [&](const std::string& name) { return is_called(line, name); });
}

void require_called(const std::string& name, const PlanAnswer& answer) {
  std::vector<std::string> known;
  const auto look = [&](const auto& lines) {
    bool found = false;
    for (const auto& line : lines) {
      found = found || is_called(line, name);
      known.insert(known.end(), {line.packet, line.taxon, line.accepted});
    }
    return found;
  };
  const bool sown = look(answer.sowings);
  const bool put_off = look(answer.not_now);
  if (sown || put_off) {
    return;
  }
  const auto nearest = nearest_name(name, known);
  throw UsageError(
      {Severity::error,
       "",
       0,
       0,
       "no packet is called \"" + name + "\"",
       "the id of a packet in this plan, or the beginning of its name",
       nearest ? "did you mean " + nearest->name + "?" : "leave the name out, to see all of them"});
}

template <class Line>
void keep_lines(const std::vector<std::string>& names, std::vector<Line>& lines) {
  lines.erase(std::remove_if(lines.begin(),
                             lines.end(),
                             [&](const Line& line) { return !is_asked(line, names); }),
              lines.end());
}

bool holds(const std::vector<LotPacket>& packets, const std::set<std::string>& asked) {
  return std::any_of(packets.begin(), packets.end(), [&](const LotPacket& packet) {
    return asked.contains(packet.packet);
  });
}

bool concerns(const Task& task, const std::set<std::string>& asked) {
  return std::any_of(task.packets.begin(), task.packets.end(), [&](const std::string& packet) {
    return asked.contains(packet);
  });
}

void keep_work(const std::set<std::string>& asked, PlanAnswer& answer) {
  const auto keep = [](auto& all, auto wanted) {
    all.erase(std::remove_if(all.begin(), all.end(), [&](const auto& one) { return !wanted(one); }),
              all.end());
  };
  const auto of_asked = [&](const Task& task) { return concerns(task, asked); };
  keep(answer.lots, [&](const Lot& lot) { return holds(lot.packets, asked); });
  keep(answer.tasks, of_asked);
  for (DiaryEntry& entry : answer.diary) {
    keep(entry.tasks, of_asked);
  }
  keep(answer.diary, [](const DiaryEntry& entry) { return !entry.tasks.empty(); });
}

} // namespace

void keep_asked(const std::vector<std::string>& names, PlanAnswer& answer) {
  if (names.empty()) {
    return;
  }
  for (const std::string& name : names) {
    require_called(name, answer);
  }
  keep_lines(names, answer.sowings);
  keep_lines(names, answer.not_now);
  std::set<std::string> asked;
  for (const Sowing& sowing : answer.sowings) {
    asked.insert(sowing.packet);
  }
  keep_work(asked, answer);
  answer.shopping = {};
  answer.free_days.reset();
}

} // namespace nightsow::planner
