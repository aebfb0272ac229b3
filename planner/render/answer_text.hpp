#pragma once

#include "planner/answers/account_answer.hpp"
#include "planner/answers/backtest_answer.hpp"
#include "planner/answers/climate_answer.hpp"
#include "planner/answers/fetch_answer.hpp"
#include "planner/answers/nights_answer.hpp"
#include "planner/answers/plan_answer.hpp"
#include "planner/answers/rules_answer.hpp"
#include "planner/answers/today_answer.hpp"
#include "planner/answers/whatif_answer.hpp"
#include "planner/render/text_style.hpp"

#include <string>

namespace nightsow::planner {

// Every answer as people read it on a terminal, `text_width` columns at most, lines ended.

[[nodiscard]] std::string plan_text(const PlanAnswer& answer, const TextStyle& style);
[[nodiscard]] std::string nights_text(const NightsAnswer& answer, const TextStyle& style);
[[nodiscard]] std::string past_nights_text(const PastNightsAnswer& answer, const TextStyle& style);
/// Ten lines at most.
[[nodiscard]] std::string today_text(const TodayAnswer& answer, const TextStyle& style);
[[nodiscard]] std::string whatif_text(const WhatIfAnswer& answer, const TextStyle& style);
[[nodiscard]] std::string sweep_text(const SweepAnswer& answer, const TextStyle& style);
[[nodiscard]] std::string climate_text(const ClimateAnswer& answer, const TextStyle& style);
[[nodiscard]] std::string backtest_text(const BacktestAnswer& answer, const TextStyle& style);
/// The address alone may be wider: it is there to be copied.
[[nodiscard]] std::string fetch_text(const FetchAnswer& answer, const TextStyle& style);
[[nodiscard]] std::string rules_list_text(const RulesListAnswer& answer, const TextStyle& style);
/// The first screen; with `why` every value behind it, too.
[[nodiscard]] std::string rule_show_text(const RuleShowAnswer& answer, const TextStyle& style);
/// The values, each with its ground, and the sources that they name.
[[nodiscard]] std::string rule_values_text(const RuleShowAnswer& answer, const TextStyle& style);
[[nodiscard]] std::string rules_check_text(const RulesCheckAnswer& answer, const TextStyle& style);
[[nodiscard]] std::string rules_gaps_text(const RulesGapsAnswer& answer, const TextStyle& style);
/// Of several open sowings a line each, else the whole account.
[[nodiscard]] std::string account_text(const AccountAnswer& answer, const TextStyle& style);

} // namespace nightsow::planner
