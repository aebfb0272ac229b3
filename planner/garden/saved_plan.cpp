#include "planner/garden/saved_plan.hpp"

#include "climate/base/json_node.hpp"
#include "climate/base/located_json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr int known_schema = 1;
constexpr int first_year = 1;
constexpr int last_year = 9999;

JsonNode needed(const JsonNode& object, std::string_view name) {
  if (auto found = object.member(name)) {
    return *std::move(found);
  }
  object.fail(fmt::format("\"{}\" is missing", name),
              "a plan as `plan --save` writes it",
              "move the file elsewhere; it was not touched");
}

std::optional<Date> maybe_date(const JsonNode& object, std::string_view name) {
  const auto found = object.member(name);
  return found ? std::optional{found->date()} : std::nullopt;
}

std::string maybe_text(const JsonNode& object, std::string_view name) {
  const auto found = object.member(name);
  return found ? found->text() : "";
}

void check_schema(const JsonNode& root) {
  const JsonNode schema = needed(root, "schema");
  const int number = schema.whole_number(1, std::numeric_limits<int>::max());
  if (number > known_schema) {
    schema.fail(fmt::format("this saved plan is of schema {}", number),
                fmt::format("schema {} or older", known_schema),
                "use the newer nightsow that wrote it; the file was not touched");
  }
}

std::optional<SavedRange> maybe_range(const JsonNode& object, std::string_view name) {
  const auto found = object.member(name);
  if (!found) {
    return std::nullopt;
  }
  return SavedRange{needed(*found, "mean").number(),
                    needed(*found, "p10").number(),
                    needed(*found, "p90").number()};
}

SavedLine sowing_line(const JsonNode& sowing) {
  SavedLine line;
  line.packet = needed(sowing, "packet").text();
  line.taxon = needed(sowing, "taxon").text();
  line.verdict = needed(sowing, "verdict").text();
  line.route = maybe_text(sowing, "route");
  line.sow_on = maybe_date(sowing, "sow_on");
  line.bench = maybe_text(sowing, "bench");
  if (const auto seeds = sowing.member("seeds")) {
    line.seeds = seeds->number();
  }
  line.seedlings = maybe_range(sowing, "seedlings");
  line.plants = maybe_range(sowing, "plants");
  const JsonNode water = needed(sowing, "first_water");
  line.water = maybe_date(water, "planned");
  line.not_before = maybe_date(water, "not_before");
  line.no_later_than = maybe_date(water, "no_later_than");
  return line;
}

SavedLine not_now_line(const JsonNode& entry) {
  SavedLine line;
  line.packet = needed(entry, "packet").text();
  line.taxon = needed(entry, "taxon").text();
  line.sown_this_season = false;
  line.water = maybe_date(entry, "when");
  return line;
}

// They stand beside the plan, since they are of no use to who reads it.
void add_marks(const JsonNode& root, SavedPlan& plan) {
  const auto made_from = root.member("made_from");
  if (!made_from) {
    return;
  }
  plan.garden_mark = maybe_text(*made_from, "garden");
  for (const JsonNode& mark : needed(*made_from, "packets").elements()) {
    const std::string packet = needed(mark, "packet").text();
    const auto line = std::find_if(plan.lines.begin(), plan.lines.end(), [&](const auto& one) {
      return one.packet == packet;
    });
    if (line != plan.lines.end()) {
      line->row_mark = needed(mark, "row").text();
      line->rule_mark = needed(mark, "rule").text();
      line->seeds_sown = needed(mark, "seeds_sown").number(0.0, std::numeric_limits<double>::max());
    }
  }
}

} // namespace

SavedPlan read_saved_plan(std::string_view text, std::string_view where) {
  const LocatedJson file = LocatedJson::parse(text, where);
  const JsonNode root{file};
  check_schema(root);
  SavedPlan plan;
  plan.season = needed(root, "season").whole_number(first_year, last_year);
  plan.saves = needed(root, "saves").whole_number(1, std::numeric_limits<int>::max());
  plan.on = needed(root, "today").date();
  plan.readings_to = maybe_date(needed(root, "readings"), "to");
  for (const JsonNode& sowing : needed(root, "sowings").elements()) {
    plan.lines.push_back(sowing_line(sowing));
  }
  for (const JsonNode& entry : needed(root, "not_now").elements()) {
    plan.lines.push_back(not_now_line(entry));
  }
  add_marks(root, plan);
  return plan;
}

std::filesystem::path saved_plan_file(int season) {
  return std::filesystem::path{"plans"} / fmt::format("{}.json", season);
}

} // namespace nightsow::planner
