#include "planner/answers/account_names.hpp"

#include "planner/answers/account_answer.hpp"

#include <array>
#include <cstddef>

namespace nightsow::planner {

namespace {

constexpr std::array<std::string_view, all_causes.size()> causes{"dead",
                                                                 "not_ripe",
                                                                 "nights_too_warm",
                                                                 "to_come",
                                                                 "deferred",
                                                                 "too_late",
                                                                 "heat",
                                                                 "lost_wet",
                                                                 "dried"};

} // namespace

std::string_view name_of(Cause cause) {
  return causes.at(static_cast<std::size_t>(cause));
}

std::string_view name_of(NextStep step) {
  return account_steps.at(static_cast<std::size_t>(step));
}

} // namespace nightsow::planner
