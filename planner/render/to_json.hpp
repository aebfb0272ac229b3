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

#include <string>

namespace nightsow::planner {

// Every answer as JSON text with a line end, indented by two. Temperatures in °C, dates ISO 8601, a
// field without meaning is null, never left out; every object has "schema": 1 at its top.

[[nodiscard]] std::string to_json(const PlanAnswer& answer);
[[nodiscard]] std::string to_json(const NightsAnswer& answer);
[[nodiscard]] std::string to_json(const PastNightsAnswer& answer);
[[nodiscard]] std::string to_json(const TodayAnswer& answer);
[[nodiscard]] std::string to_json(const WhatIfAnswer& answer);
[[nodiscard]] std::string to_json(const SweepAnswer& answer);
[[nodiscard]] std::string to_json(const ClimateAnswer& answer);
[[nodiscard]] std::string to_json(const BacktestAnswer& answer);
[[nodiscard]] std::string to_json(const FetchAnswer& answer);
[[nodiscard]] std::string to_json(const RulesListAnswer& answer);
[[nodiscard]] std::string to_json(const RuleShowAnswer& answer);
[[nodiscard]] std::string to_json(const RulesCheckAnswer& answer);
[[nodiscard]] std::string to_json(const RulesGapsAnswer& answer);
[[nodiscard]] std::string to_json(const AccountAnswer& answer);

} // namespace nightsow::planner
