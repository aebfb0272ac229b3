#include "planner/render/account_chart.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plain_words.hpp"
#include "planner/render/table.hpp"
#include "planner/render/text_parts.hpp"
#include "planner/render/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace nightsow::planner {

namespace {

constexpr double worth_a_row = 0.03; // of the seeds not up

std::string spread_text(const NumberSpread& spread) {
  return spread.p10 == spread.p90 ? fmt::format("about {}", whole_text(spread.mean))
                                  : fmt::format("about {}, likely {}-{}",
                                                whole_text(spread.mean),
                                                whole_text(spread.p10),
                                                whole_text(spread.p90));
}

std::string sown_line(const SowingAccount& account) {
  std::string text = fmt::format("{} in {} on the {}, sown {}",
                                 counted_text(account.seeds, "seed"),
                                 counted_text(account.pots, "pot"),
                                 account.bench,
                                 date_text(account.sown));
  if (account.first_water && *account.first_water != account.sown) {
    text += fmt::format(", first water {}", date_text(*account.first_water));
  }
  return paragraph("  ", text);
}

std::string counted_line(const SowingAccount& account) {
  std::string text;
  if (!account.counted_on) {
    if (!account.expected_up) {
      return {};
    }
    text =
        fmt::format("Not counted yet; expected up by now: {}", spread_text(*account.expected_up));
  } else {
    text = fmt::format(
        "Counted {}: {} of {} up", date_text(*account.counted_on), account.up, account.seeds);
    if (account.died > 0) {
      text += fmt::format(", {} of them gone since", account.died);
    }
    if (account.expected_up) {
      text += fmt::format("; expected by then: {}", spread_text(*account.expected_up));
    }
  }
  if (account.firm + account.soft > 0) {
    text += fmt::format("; pressed: {} firm, {} soft", account.firm, account.soft);
  }
  return paragraph("  ", text);
}

std::string step_word(const std::string& step) {
  return plain_word("step", step);
}

// "0 or 1 firm: stop; 2 to 5 firm: keep it for its next season".
std::string press_line(const PressToDecide& press) {
  std::string text;
  const std::vector<std::string>& steps = press.step_by_firm;
  for (std::size_t from = 0; from < steps.size();) {
    std::size_t to = from;
    while (to + 1 < steps.size() && steps[to + 1] == steps[from]) {
      ++to;
    }
    text += fmt::format("{}{} firm: {}",
                        text.empty() ? "" : "; ",
                        from == to ? fmt::format("{}", from) : fmt::format("{} to {}", from, to),
                        step_word(steps[from]));
    from = to + 1;
  }
  return paragraph("    ", text);
}

std::string advice_lines(const SowingAccount& account, const TextStyle& style) {
  std::string text = "\n";
  for (const Reason& reason : account.advice) {
    text += paragraph("  ", sentence(reason, style));
    if (reason.code == ReasonCode::account_press && account.press) {
      text += press_line(*account.press);
    }
  }
  return text;
}

std::string missing_table(const SowingAccount& account, const TextStyle& style) {
  std::vector<MissingShare> shown = account.missing;
  std::erase_if(
      shown, [](const MissingShare& one) { return one.share < worth_a_row && one.seeds_p90 == 0; });
  std::stable_sort(
      shown.begin(), shown.end(), [](const auto& a, const auto& b) { return a.share > b.share; });
  std::vector<TableRow> rows;
  rows.reserve(shown.size());
  for (const MissingShare& one : shown) {
    rows.push_back({{with_capital(plain_word("loss", one.cause)),
                     with_capital(share_text(one.share)),
                     fmt::format("{}-{}", one.seeds_p10, one.seeds_p90)}});
  }
  if (rows.empty()) {
    return {};
  }
  return '\n' +
         heading_text(fmt::format("Where the {} not up may be", account.seeds - account.up),
                      style) +
         table_text({{"What became of it"}, {"Share"}, {"Seeds, 8 in 10 cases", Align::right}},
                    rows,
                    style);
}

std::string end_text(const DecidingValue& value, double end, const TextStyle& style) {
  if (value.unit == "°C") {
    return temperature_text(end, style);
  }
  if (value.unit == "share") {
    return percent_text(end);
  }
  return fmt::format("{} {}", number_text(end), value.unit);
}

std::string deciding_line(const DecidingValue& value, const TextStyle& style) {
  std::string text = fmt::format("{} ({} to {})",
                                 with_capital(plain_word("field", value.field)),
                                 end_text(value, value.low, style),
                                 end_text(value, value.high, style));
  if (value.step_low != value.step_high) {
    text += fmt::format(": at the low end {}, at the high end {}",
                        step_word(value.step_low),
                        step_word(value.step_high));
  }
  return paragraph("  ",
                   fmt::format("{}; it moves the share \"{}\" by {} %.",
                               text,
                               plain_word("loss", value.cause),
                               whole_text(100.0 * value.moves)));
}

std::string deciding_block(const SowingAccount& account, const TextStyle& style) {
  if (account.deciding.empty()) {
    return {};
  }
  std::string text = '\n' + heading_text("What in the rule decides most", style);
  for (const DecidingValue& value : account.deciding) {
    text += deciding_line(value, style);
  }
  return text;
}

std::string curve_block(const SowingAccount& account, const TextStyle& style) {
  const std::string chart = account_chart(account.curve, account.seeds);
  return chart.empty()
             ? ""
             : '\n' +
                   heading_text("Up in all: expected (- in 8 of 10 cases, + on average), counted o",
                                style) +
                   chart;
}

std::string whole_account(const SowingAccount& account, const TextStyle& style) {
  const std::string rule =
      account.rule.empty() || account.rule == account.taxon ? "" : ", rule " + account.rule;
  return '\n' +
         heading_text(fmt::format("Sowing {}: {}{}", account.sowing, account.taxon, rule), style) +
         sown_line(account) + counted_line(account) + advice_lines(account, style) +
         missing_table(account, style) + deciding_block(account, style) +
         curve_block(account, style) + reasons_block("Taken for granted", account.notes, style);
}

TableRow short_row(const SowingAccount& account, Date today) {
  std::string step = step_word(account.step);
  if (account.until) {
    step += fmt::format(", {}", day_text(*account.until, today));
  }
  return {{fmt::format("{}", account.sowing),
           account.taxon,
           day_text(account.sown, today),
           account.counted_on ? fmt::format("{} of {}", account.up, account.seeds)
                              : fmt::format("{} sown", account.seeds),
           account.expected_up ? fmt::format("{}-{}",
                                             whole_text(account.expected_up->p10),
                                             whole_text(account.expected_up->p90))
                               : "",
           with_capital(step)}};
}

std::string overview(const AccountAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  rows.reserve(answer.accounts.size());
  for (const SowingAccount& account : answer.accounts) {
    rows.push_back(short_row(account, answer.today));
  }
  return '\n' +
         table_text({{"No.", Align::right},
                     {"Sown", Align::left, true},
                     {"On"},
                     {"Up", Align::right},
                     {"Expected", Align::right},
                     {"What to do", Align::left, true}},
                    rows,
                    style) +
         paragraph("", "\n") + paragraph("  ", "nightsow account NUMBER says why, and how sure.");
}

std::string closed_line(const AccountAnswer& answer) {
  return answer.closed == 0
             ? ""
             : paragraph("  ",
                         fmt::format(
                             "{} left out: closed, all up, or all seasons over. --all shows them.",
                             counted_text(answer.closed, "sowing")));
}

} // namespace

std::string account_text(const AccountAnswer& answer, const TextStyle& style) {
  std::string text = garden_line(answer.garden, answer.today, std::nullopt);
  if (answer.accounts.empty() && answer.closed == 0) {
    return text + paragraph("  ",
                            "No sowing is written down yet. `nightsow sow NAME SEEDS` begins the "
                            "journal; once seed is wet, `nightsow count NAME SEEN` keeps it.");
  }
  if (answer.overview && answer.accounts.size() != 1) {
    text += answer.accounts.empty() ? "" : overview(answer, style);
  } else {
    for (const SowingAccount& account : answer.accounts) {
      text += whole_account(account, style);
    }
  }
  return text + closed_line(answer) + warnings_block("Readings", answer.warnings, style);
}

} // namespace nightsow::planner
