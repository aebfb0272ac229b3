#include "planner/render/answer_text.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plain_words.hpp"
#include "planner/render/seed_outlook.hpp"
#include "planner/render/table.hpp"
#include "planner/render/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace nightsow::planner {

namespace {

// Younger seed is told in days, and seed under two years in months, as growers do.
constexpr int days_up_to = 60;
constexpr int months_up_to = 700;
constexpr double days_a_month = 365.25 / 12.0;

std::string age_text(const SeedOutlookAnswer& answer) {
  if (answer.age_days <= days_up_to) {
    return counted_text(answer.age_days, "day");
  }
  return answer.age_days <= months_up_to
             ? counted_text(static_cast<int>(std::lround(answer.age_days / days_a_month)), "month")
             : counted_text(answer.age_years, "year");
}

std::string whole_percent(double share) {
  return whole_text(share * 100.0);
}

// "82 % (65 to 91)".
std::string chance_text(const NumberSpread& chance) {
  const std::string middle = whole_percent(chance.mean);
  const std::string low = whole_percent(chance.p10);
  const std::string high = whole_percent(chance.p90);
  return low == high ? middle + " %" : fmt::format("{} % ({} to {})", middle, low, high);
}

std::string way_text(const KeepingAnswer& keeping, const TextStyle& style) {
  const std::string warm = "warm and dry, at " + temperature_text(keeping.warm_c, style);
  const std::string cool = "in the fridge, sealed, at " + temperature_text(keeping.cool_c, style);
  if (keeping.warm_days) {
    return fmt::format("{} for {}, then {}", warm, counted_text(*keeping.warm_days, "day"), cool);
  }
  return keeping.way == "cool_dry" ? cool : warm;
}

std::string head_text(const SeedOutlookAnswer& answer, const TextStyle& style) {
  std::string text = heading_text(fmt::format("{} ({})", answer.accepted, answer.family), style);
  if (answer.by_synonym) {
    text += paragraph("", fmt::format("{} is an older name of {}.", answer.taxon, answer.accepted));
  }
  return text + paragraph("", fmt::format("By the rule of {}.", answer.rule));
}

// "smoked and nicked".
std::string treated_text(const std::vector<std::string>& treatments) {
  std::string text;
  for (const std::string& treatment : treatments) {
    text += (text.empty() ? "" : " and ") + plain_word("treated", treatment);
  }
  return text;
}

std::string comes_up_text(const SeedOutlookAnswer& answer) {
  if (!answer.comes_up) {
    return {};
  }
  const std::string whole = share_text(*answer.comes_up);
  const std::string_view of = answer.waits.empty() ? "Of seed that is both" : "Of living seed";
  if (answer.comes_up_treated) {
    return fmt::format("{}, {} comes up in its first season when all is right, {} first; left as "
                       "it is {}.",
                       of,
                       share_text(*answer.comes_up_treated),
                       treated_text(answer.treatments),
                       whole);
  }
  const std::string helped =
      answer.treatments.empty()
          ? ""
          : fmt::format("; {} first, it may be more", treated_text(answer.treatments));
  return fmt::format("{}, {} comes up in its first season when all is right{}.", of, whole, helped);
}

std::string today_text(const SeedOutlookAnswer& answer, const TextStyle& style) {
  const std::string kept =
      answer.stored.empty() ? "how it was kept is not known" : "kept: " + answer.stored;
  std::string text =
      '\n' + heading_text(fmt::format("Seed {} old, {}", age_text(answer), kept), style);
  text += paragraph("  alive           ", chance_text(answer.today.alive));
  if (answer.waits.empty()) {
    text += paragraph("  ripe            ", chance_text(answer.today.ripe));
    text += paragraph("  alive and ripe  ", chance_text(answer.today.alive_and_ripe));
  }
  text += paragraph("  ", comes_up_text(answer));
  for (const Reason& reason : answer.reasons) {
    text += paragraph("  ", sentence(reason, style));
  }
  return text;
}

std::string ways_text(const SeedOutlookAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const KeepingAnswer& keeping : answer.ways) {
    rows.push_back({{way_text(keeping, style),
                     chance_text(keeping.in_a_year.alive),
                     chance_text(keeping.in_a_year.ripe),
                     chance_text(keeping.in_a_year.alive_and_ripe),
                     keeping.best ? "best" : ""}});
  }
  const std::vector<Column> columns{
      {"Kept from today", Align::left, true}, {"Alive"}, {"Ripe"}, {"Alive and ripe"}, {""}};
  const std::string table = table_text(columns, rows, style);
  return table.empty() ? "" : '\n' + heading_text("In a year from now", style) + table;
}

std::string waits_text(const SeedOutlookAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const WaitAnswer& wait : answer.waits) {
    rows.push_back({{plain_word("wait", wait.way),
                     chance_text(wait.after_two_weeks),
                     chance_text(wait.after_eight_weeks),
                     wait.best ? "best" : ""}});
  }
  const std::vector<Column> columns{
      {"Kept from today", Align::left, true}, {"Alive in two weeks"}, {"Alive in eight"}, {""}};
  const std::string table = table_text(columns, rows, style);
  if (table.empty()) {
    return {};
  }
  return '\n' + heading_text("If it has to wait some days or weeks", style) + table +
         paragraph(
             "  ",
             "Barely moist is a closed bag with a little damp sand or vermiculite: look every "
             "few days and sow what sprouts. Frost kills it.");
}

// From this share on a year is worth sowing before.
constexpr double much_to_lose = 0.25;

std::string best_text(const SeedOutlookAnswer& answer, const TextStyle& style) {
  const auto best = std::find_if(
      answer.ways.begin(), answer.ways.end(), [](const KeepingAnswer& way) { return way.best; });
  if (best == answer.ways.end()) {
    return "";
  }
  std::string text = paragraph("  ", fmt::format("Best: {}.", way_text(*best, style)));
  if (answer.lost_in_a_year >= much_to_lose) {
    text += paragraph("  ",
                      fmt::format("Even so {} of its living seed dies within the year: sow it in "
                                  "the coming season.",
                                  share_text(answer.lost_in_a_year)));
  }
  if (!answer.advice.empty() && answer.advice != best->way) {
    text += paragraph(
        "  ", fmt::format("The catalogue's advice: {}.", plain_word("store", answer.advice)));
  }
  return text;
}

} // namespace

std::string seed_outlook_text(const SeedOutlookAnswer& answer, const TextStyle& style) {
  const std::string explained =
      paragraph("", "In brackets the range that about four in five cases lie in.");
  return head_text(answer, style) + today_text(answer, style) + ways_text(answer, style) +
         waits_text(answer, style) + best_text(answer, style) + '\n' + explained +
         (style.why ? rule_values_text(answer.grounds, style) : "");
}

} // namespace nightsow::planner
