#include "planner/answers/since_saved.hpp"

#include "planner/answers/plan_marks.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <map>
#include <tuple>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr std::array<std::pair<ChangeKind, std::string_view>, 7> kind_names{{
    {ChangeKind::comes_in, "comes_in"},
    {ChangeKind::goes_out, "goes_out"},
    {ChangeKind::verdict, "verdict"},
    {ChangeKind::added, "added"},
    {ChangeKind::sown, "sown"},
    {ChangeKind::gone, "gone"},
    {ChangeKind::moved, "moved"},
}};

constexpr std::array<std::pair<ChangeCause, std::string_view>, 6> cause_names{{
    {ChangeCause::seeds_sown, "seeds_sown"},
    {ChangeCause::packet_changed, "packet_changed"},
    {ChangeCause::rule_changed, "rule_changed"},
    {ChangeCause::garden_changed, "garden_changed"},
    {ChangeCause::readings, "readings"},
    {ChangeCause::days_passed, "days_passed"},
}};

template <class Kind, std::size_t Count>
std::string_view name_in(const std::array<std::pair<Kind, std::string_view>, Count>& names,
                         Kind kind) {
  for (const auto& [known, name] : names) {
    if (known == kind) {
      return name;
    }
  }
  return {};
}

/// A line of today's plan.
struct LineNow {
  std::string taxon;
  LineThen line;
};

std::map<std::string, LineNow> lines_of(const PlanAnswer& answer) {
  std::map<std::string, LineNow> lines;
  for (const Sowing& one : answer.sowings) {
    lines[one.packet] = {one.taxon,
                         {std::string(name_of(one.verdict)),
                          one.route,
                          day_of_water(one.verdict, one.first_water, answer.today),
                          one.first_water.no_later_than}};
  }
  for (const NotNow& one : answer.not_now) {
    lines[one.packet] = {one.taxon, {"", "", one.when, std::nullopt}};
  }
  return lines;
}

std::optional<int> moved(const std::optional<Date>& before, const std::optional<Date>& after) {
  return before && after ? std::optional{days_between(*before, *after)} : std::nullopt;
}

/// What stayed the same and what did not, for all packets.
struct Facts {
  PlanMarks marks;
  std::map<std::string, double> seeds_sown; ///< by packet
  bool garden_changed = false;
  int nights_read = 0;
};

Facts facts_of(const SavedPlan& saved, const PlanAnswer& now, const LoadedGarden& garden) {
  Facts facts;
  facts.marks = plan_marks(garden);
  for (const RecordedSowing& sowing : garden.records.sowings) {
    facts.seeds_sown[sowing.packet_id] += sowing.seeds;
  }
  facts.garden_changed = !saved.garden_mark.empty() && saved.garden_mark != facts.marks.garden;
  if (saved.readings_to && now.readings.to) {
    facts.nights_read = std::max(0, days_between(*saved.readings_to, *now.readings.to));
  }
  return facts;
}

double sown_of(const std::string& packet, const Facts& facts) {
  const auto sown = facts.seeds_sown.find(packet);
  return sown == facts.seeds_sown.end() ? 0.0 : sown->second;
}

std::vector<ChangeCause> causes_of(const SavedLine& then, const Facts& facts) {
  std::vector<ChangeCause> causes;
  const auto add_if = [&](bool holds, ChangeCause cause) {
    if (holds) {
      causes.push_back(cause);
    }
  };
  add_if(sown_of(then.packet, facts) > then.seeds_sown, ChangeCause::seeds_sown);
  const auto mark = std::find_if(facts.marks.packets.begin(),
                                 facts.marks.packets.end(),
                                 [&](const PacketMarks& one) { return one.packet == then.packet; });
  if (mark != facts.marks.packets.end() && !then.row_mark.empty()) {
    add_if(mark->row != then.row_mark, ChangeCause::packet_changed);
    add_if(mark->rule != then.rule_mark, ChangeCause::rule_changed);
  }
  add_if(facts.garden_changed, ChangeCause::garden_changed);
  add_if(facts.nights_read > 0, ChangeCause::readings);
  add_if(causes.empty(), ChangeCause::days_passed);
  return causes;
}

// Water that is due each day anew has not moved.
bool same_line(const LineThen& before, const LineThen& after) {
  const bool still_due = before.verdict == "water_now" && after.verdict == "water_now";
  return before.verdict == after.verdict && before.route == after.route &&
         (still_due || before.water == after.water) && before.no_later_than == after.no_later_than;
}

ChangeKind kind_of(const LineThen& before, const LineThen& after) {
  if (before.verdict.empty() != after.verdict.empty()) {
    return before.verdict.empty() ? ChangeKind::comes_in : ChangeKind::goes_out;
  }
  return before.verdict == after.verdict ? ChangeKind::moved : ChangeKind::verdict;
}

PlanChange change_of(const SavedLine& then, const LineThen& before, const LineThen& after) {
  PlanChange change;
  change.kind = kind_of(before, after);
  change.packet = then.packet;
  change.taxon = then.taxon;
  change.before = before;
  change.after = after;
  change.moved_days = moved(before.water, after.water);
  change.latest_moved_days = moved(before.no_later_than, after.no_later_than);
  return change;
}

int days_moved(const PlanChange& change) {
  return std::max(std::abs(change.moved_days.value_or(0)),
                  std::abs(change.latest_moved_days.value_or(0)));
}

void sort_changes(std::vector<PlanChange>& changes) {
  std::sort(changes.begin(), changes.end(), [](const PlanChange& a, const PlanChange& b) {
    return std::tuple{a.kind, -days_moved(a), a.packet} <
           std::tuple{b.kind, -days_moved(b), b.packet};
  });
}

} // namespace

std::string_view name_of(ChangeKind kind) {
  return name_in(kind_names, kind);
}

std::string_view name_of(ChangeCause cause) {
  return name_in(cause_names, cause);
}

SinceSaved since_saved(const SavedPlan& saved, const PlanAnswer& now, const LoadedGarden& garden) {
  const Facts facts = facts_of(saved, now, garden);
  SinceSaved since{saved.on, facts.nights_read, {}, 0};
  std::map<std::string, LineNow> lines = lines_of(now);
  for (const SavedLine& then : saved.lines) {
    const LineThen before{then.verdict, then.route, then.water, then.no_later_than};
    const auto line = lines.find(then.packet);
    if (line == lines.end()) {
      const bool sown = sown_of(then.packet, facts) > then.seeds_sown;
      since.changes.push_back({sown ? ChangeKind::sown : ChangeKind::gone,
                               then.packet,
                               then.taxon,
                               before,
                               std::nullopt,
                               std::nullopt,
                               std::nullopt,
                               {sown ? ChangeCause::seeds_sown : ChangeCause::packet_changed}});
      continue;
    }
    const bool same = same_line(before, line->second.line);
    const bool sown = sown_of(then.packet, facts) > then.seeds_sown;
    if (same && !sown) {
      ++since.unchanged;
    } else {
      since.changes.push_back(change_of(then, before, line->second.line));
      since.changes.back().causes = causes_of(then, facts);
    }
    if (same && sown) {
      since.changes.back().kind = ChangeKind::sown;
    }
    lines.erase(line);
  }
  for (const auto& [packet, line] : lines) {
    since.changes.push_back({ChangeKind::added,
                             packet,
                             line.taxon,
                             std::nullopt,
                             line.line,
                             std::nullopt,
                             std::nullopt,
                             {ChangeCause::packet_changed}});
  }
  sort_changes(since.changes);
  return since;
}

} // namespace nightsow::planner
