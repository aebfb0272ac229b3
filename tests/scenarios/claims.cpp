#include "tests/scenarios/claims.hpp"

#include "planner/answers/nights.hpp"
#include "planner/answers/plan.hpp"
#include "planner/render/words.hpp"

#include <algorithm>
#include <cstdlib>
#include <optional>
#include <stdexcept>
#include <utility>

namespace nightsow::scenarios {

namespace {

using Parts = std::vector<std::string>;

/// What a plan says of one packet, wherever it stands in it.
struct Planned {
  std::string verdict; ///< waters now, waits, unknown, not now
  std::optional<Date> first_water;
  std::optional<Date> last_water;
  std::optional<bool> nights_decide;
  bool fades = false;
  std::string words; ///< all that is said of it, a sentence a line
};

std::string said(const std::vector<planner::Reason>& reasons) {
  std::string words;
  for (const planner::Reason& reason : reasons) {
    words += planner::sentence(reason, {}) + '\n';
  }
  return words;
}

std::string verdict_words(planner::Verdict verdict) {
  switch (verdict) {
  case planner::Verdict::water_now:
    return "waters now";
  case planner::Verdict::wait:
    return "waits";
  case planner::Verdict::unknown:
    break;
  }
  return "is left open";
}

std::optional<Planned> planned(const planner::PlanAnswer& plan, const std::string& taxon) {
  for (const planner::Sowing& line : plan.sowings) {
    if (line.taxon == taxon) {
      return Planned{verdict_words(line.verdict),
                     line.first_water.expected.p50,
                     line.first_water.no_later_than,
                     line.gate ? std::optional{line.gate->binds} : std::nullopt,
                     line.seed.fading,
                     said(line.reasons) + said(line.risks)};
    }
  }
  for (const planner::NotNow& line : plan.not_now) {
    if (line.taxon == taxon) {
      return Planned{"not now", line.when, {}, {}, line.seed.fading, said(line.reasons)};
    }
  }
  return std::nullopt;
}

std::string day_text(std::optional<Date> day) {
  return day ? format_iso_date(*day) : "no day";
}

/// "at least 3 days", "at most 3 days" or "3 +- 2 days": four parts, which meets() takes.
const std::string so_many_days = R"((?:(at least|at most) (\d+)|(\d+) \+- (\d+)) days?)";

bool meets(int days, const Parts& claim) {
  if (claim[1] == "at least") {
    return days >= std::stoi(claim[2]);
  }
  if (claim[1] == "at most") {
    return days <= std::stoi(claim[2]);
  }
  return std::abs(days - std::stoi(claim[3])) <= std::stoi(claim[4]);
}

/// The day a claim counts from.
std::optional<Date> day_named(const std::string& words, const planner::PlanAnswer& plan) {
  if (words == "today") {
    return plan.today;
  }
  if (words == "the hottest night" && plan.phases) {
    return plan.phases->hottest_night;
  }
  if (words == "nights begin to cool" && plan.phases) {
    return plan.phases->cooling_limb_begins;
  }
  const std::optional<Planned> other = planned(plan, words);
  return other ? other->first_water : std::nullopt;
}

std::string fault_in_day(std::optional<Date> day,
                         const Parts& claim,
                         const planner::PlanAnswer& plan) {
  const std::optional<Date> from = day_named(claim[6], plan);
  if (!from) {
    return "no day is known of \"" + claim[6] + '"';
  }
  if (!day) {
    return "the plan gives no such day";
  }
  const int days = claim[5] == "after" ? days_between(*from, *day) : days_between(*day, *from);
  return meets(days, claim) ? ""
                            : "it is " + std::to_string(days) + " days: " + day_text(day) +
                                  ", counted from " + day_text(from);
}

bool sown_in_hot_season(const Planned& line, const planner::PlanAnswer& plan) {
  return plan.phases && line.first_water && line.last_water &&
         *line.first_water < plan.phases->cooling_limb_begins &&
         *line.last_water < plan.phases->cooling_limb_begins;
}

std::string fault_unless(bool holds, const std::string& instead) {
  return holds ? "" : instead;
}

std::string fault_in_packet(const Planned& line,
                            const std::string& claim,
                            const planner::PlanAnswer& plan) {
  if (const Parts first = parts_of(claim, "first water " + so_many_days + " (after|before) (.+)");
      !first.empty()) {
    return fault_in_day(line.first_water, first, plan);
  }
  if (const Parts last = parts_of(claim, "last day " + so_many_days + " (after|before) (.+)");
      !last.empty()) {
    return fault_in_day(line.last_water, last, plan);
  }
  if (const Parts words = parts_of(claim, R"re(says "(.+)")re"); !words.empty()) {
    return fault_unless(line.words.find(words[1]) != std::string::npos, "it says:\n" + line.words);
  }
  if (claim == "waters now" || claim == "waits" || claim == "is left open" || claim == "not now") {
    return fault_unless(line.verdict == claim, "it " + line.verdict + ":\n" + line.words);
  }
  if (claim == "sown in the hot season") {
    return fault_unless(sown_in_hot_season(line, plan),
                        "first water " + day_text(line.first_water) + ", last day " +
                            day_text(line.last_water));
  }
  if (claim == "nights decide" || claim == "nights do not decide") {
    return fault_unless(line.nights_decide == (claim == "nights decide"), line.words);
  }
  if (claim == "fades" || claim == "does not fade") {
    return fault_unless(line.fades == (claim == "fades"), line.words);
  }
  return "not understood";
}

/// Medians over the usable past seasons, in days.
struct PastDays {
  int stirs = 0; ///< from the hottest night
  int holds = 0; ///< from the hottest night
  int holds_after_stirs = 0;
};

int median(std::vector<int> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

int days_after_hottest(Date day, Date hottest) {
  const date::month_day recurring = recurring_day(hottest);
  const Date this_year = in_year(recurring, year_of(day));
  return days_between(this_year <= day ? this_year : in_year(recurring, year_of(day) - 1), day);
}

PastDays past_days(const planner::PastGate& gate, Date hottest) {
  std::vector<int> stirs;
  std::vector<int> holds;
  std::vector<int> between;
  for (const planner::PastSeasonDates& season : gate.seasons) {
    if (season.usable && season.stirs && season.holds) {
      stirs.push_back(days_after_hottest(*season.stirs, hottest));
      holds.push_back(days_after_hottest(*season.holds, hottest));
      between.push_back(days_between(*season.stirs, *season.holds));
    }
  }
  if (stirs.empty()) {
    throw std::runtime_error("no past season in which nights stir and hold");
  }
  return {median(stirs), median(holds), median(between)};
}

std::string fault_in_nights(const Parts& subject,
                            const std::string& claim,
                            const planner::LoadedGarden& garden) {
  planner::PastNightsRequest request;
  request.limit_c = std::stod(subject[1]);
  if (!subject[2].empty()) {
    request.day_limit_c = std::stod(subject[2]);
  }
  const planner::PastGate gate = planner::past_nights(garden, request).gates.at(0);
  const planner::PlanAnswer plan = planner::plan(garden, {});
  if (!plan.phases) {
    return "this place has no hottest night to count from";
  }
  if (claim == "decide" || claim == "do not decide") {
    return fault_unless(gate.binds == (claim == "decide"), "it is the other way round");
  }
  const PastDays days = past_days(gate, plan.phases->hottest_night);
  const auto judge = [&](int found, const Parts& parts) {
    return fault_unless(meets(found, parts), "it is " + std::to_string(found) + " days");
  };
  if (const Parts parts = parts_of(claim, "stir " + so_many_days + " after the hottest night");
      !parts.empty()) {
    return judge(days.stirs, parts);
  }
  if (const Parts parts = parts_of(claim, "hold " + so_many_days + " after the hottest night");
      !parts.empty()) {
    return judge(days.holds, parts);
  }
  if (const Parts parts = parts_of(claim, "hold " + so_many_days + " after they stir");
      !parts.empty()) {
    return judge(days.holds_after_stirs, parts);
  }
  return "not understood";
}

std::string fault_in_plan(const std::string& claim, const planner::PlanAnswer& plan) {
  const Parts words = parts_of(claim, R"re(says "(.+)")re");
  if (words.empty()) {
    return "not understood";
  }
  const std::string warnings = said(plan.warnings);
  return fault_unless(warnings.find(words[1]) != std::string::npos, "it says:\n" + warnings);
}

} // namespace

std::string fault_in(const Expectation& expectation, const planner::LoadedGarden& garden) {
  const Parts nights = parts_of(expectation.subject,
                                R"(nights at or under ([\d.]+)(?:, days at or under ([\d.]+))?)");
  if (!nights.empty()) {
    return fault_in_nights(nights, expectation.claim, garden);
  }
  const planner::PlanAnswer plan = planner::plan(garden, {});
  if (expectation.subject == "the plan") {
    return fault_in_plan(expectation.claim, plan);
  }
  const std::optional<Planned> line = planned(plan, expectation.subject);
  return line ? fault_in_packet(*line, expectation.claim, plan)
              : "no packet of " + expectation.subject;
}

} // namespace nightsow::scenarios
