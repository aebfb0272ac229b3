#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plain_words.hpp"
#include "planner/render/saved.hpp"
#include "planner/render/table.hpp"
#include "planner/render/text_parts.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cstdlib>
#include <vector>

namespace nightsow::planner {

namespace {

constexpr std::size_t most_changes = 8;

std::string moved_text(std::string_view what,
                       const std::optional<Date>& before,
                       const std::optional<Date>& after,
                       const std::optional<int>& days,
                       Date near) {
  if (before == after) {
    return {};
  }
  if (!after) {
    return fmt::format("{} no longer has a date", what);
  }
  std::string text = fmt::format("{} {}", what, day_text(*after, near));
  if (before && days) {
    text += fmt::format(", was {} ({} {})",
                        day_text(*before, near),
                        counted_text(std::abs(*days), "day"),
                        *days > 0 ? "later" : "earlier");
  }
  return text;
}

// What is said of a packet that stands in both plans.
std::vector<std::string> both_parts(const PlanChange& change, Date near) {
  const LineThen& before = *change.before;
  const LineThen& after = *change.after;
  std::vector<std::string> parts;
  if (before.verdict != after.verdict && !after.verdict.empty()) {
    parts.push_back("now " + plain_word("verdict", after.verdict));
  }
  if (after.verdict.empty() && !before.verdict.empty()) {
    parts.emplace_back("not this season");
  }
  if (after.verdict != "water_now") {
    parts.push_back(moved_text("first water", before.water, after.water, change.moved_days, near));
  }
  if (!after.verdict.empty()) {
    parts.push_back(moved_text("no later than",
                               before.no_later_than,
                               after.no_later_than,
                               change.latest_moved_days,
                               near));
  }
  if (before.route != after.route && !after.route.empty()) {
    parts.push_back(fmt::format("now {}", plain_word("route", after.route)));
  }
  std::erase(parts, "");
  return parts;
}

std::string what_text(const PlanChange& change, Date near) {
  switch (change.kind) {
  case ChangeKind::sown:
    return change.after ? "some of it has been sown" : "all of it has been sown";
  case ChangeKind::gone:
    return "no longer among the packets";
  case ChangeKind::added:
    return change.after->water
               ? fmt::format("new, first water {}", day_text(*change.after->water, near))
               : "new";
  default:
    return fmt::format("{}", fmt::join(both_parts(change, near), "; "));
  }
}

std::string causes_text(const PlanChange& change) {
  if (!change.before || !change.after || change.kind == ChangeKind::sown) {
    return {};
  }
  std::vector<std::string> causes;
  std::transform(
      change.causes.begin(),
      change.causes.end(),
      std::back_inserter(causes),
      [](ChangeCause cause) { return plain_word("cause", std::string(name_of(cause))); });
  return fmt::format(" ({})", fmt::join(causes, ", "));
}

} // namespace

std::string change_text(const PlanChange& change, Date near) {
  return fmt::format(
      "{} {}: {}{}", change.packet, change.taxon, what_text(change, near), causes_text(change));
}

std::string since_saved_text(const PlanAnswer& answer, const TextStyle& style) {
  if (!answer.since_saved) {
    return {};
  }
  const SinceSaved& since = *answer.since_saved;
  const std::string heading =
      fmt::format("Since the plan saved on {}", day_text(since.saved_on, answer.today));
  std::string text = '\n' + heading_text(heading, style);
  if (since.changes.empty()) {
    return text + "  Nothing is different.\n";
  }
  const std::size_t shown =
      style.why ? since.changes.size() : std::min(most_changes, since.changes.size());
  for (std::size_t i = 0; i < shown; ++i) {
    text += paragraph("  ", change_text(since.changes[i], answer.today));
  }
  if (shown < since.changes.size()) {
    text += fmt::format("  And {} more: --why\n", since.changes.size() - shown);
  }
  if (since.unchanged > 0) {
    text += fmt::format("  As it was: {}.\n", counted_text(since.unchanged, "packet"));
  }
  return text;
}

} // namespace nightsow::planner
