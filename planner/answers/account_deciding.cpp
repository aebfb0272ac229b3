#include "planner/answers/account_deciding.hpp"

#include "planner/answers/account_names.hpp"
#include "planner/answers/figures.hpp"
#include "species-rules/rule_fields.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string_view>

namespace nightsow::planner {

namespace {

using species_rules::Estimate;
using species_rules::Field;
using species_rules::Rule;
using species_rules::RuleFor;

// Values that say what becomes of seed; seedlings and how to sow are of no account here.
constexpr std::array<std::string_view, 9> asked{"night_limit_c",
                                                "warm_night_c",
                                                "indifferent_share",
                                                "germination_share",
                                                "half_life_years",
                                                "after_ripening_c_d",
                                                "deferral_share",
                                                "thermal_time_c_d",
                                                "wet_loss_per_day"};
constexpr int draws_at_an_end = 40;
constexpr double worth_telling = 0.1;
constexpr std::size_t most_told = 3;

struct AtEnd {
  std::vector<double> shares; ///< of the seeds not up, by cause
  NextStep step{};
};

struct Fixing {
  std::string_view key;
  double value = 0.0;

  void operator()(const Field& field, std::optional<Estimate>& estimate) const {
    if (field.key == key && estimate) {
      estimate->value = value;
      estimate->low = value;
      estimate->high = value;
    }
  }

  template <class Word> void operator()(const Field& /*field*/, Word& /*word*/) const {}
};

struct Ranged {
  std::string_view key;
  std::string unit;
  double low = 0.0;
  double high = 0.0;
};

struct Ranges {
  std::vector<Ranged>& list;

  void operator()(const Field& field, const std::optional<Estimate>& estimate) const {
    const bool wanted = std::find(asked.begin(), asked.end(), field.key) != asked.end();
    if (wanted && estimate && estimate->low < estimate->high) {
      list.push_back({field.key, std::string(field.unit), estimate->low, estimate->high});
    }
  }

  template <class Word> void operator()(const Field& /*field*/, const Word& /*word*/) const {}
};

AtEnd at_end(const AccountBasis& basis,
             RuleFor rule,
             const SowingSituation& situation,
             const Fixing& fixing) {
  species_rules::for_each_field(rule.rule, fixing);
  const std::vector<SeedsOnDay> cases = cases_of(basis, {rule, draws_at_an_end});
  const Account result = account(cases, basis.record);
  AtEnd end;
  for (const CauseShare& cause : result.causes) {
    end.shares.push_back(cause.share);
  }
  end.step = advice_for(cases, basis.record, result, situation).step;
  return end;
}

DecidingValue deciding_value(const Ranged& value, const AtEnd& low, const AtEnd& high) {
  DecidingValue told;
  told.field = value.key;
  told.unit = value.unit;
  told.low = value.low;
  told.high = value.high;
  told.step_low = name_of(low.step);
  told.step_high = name_of(high.step);
  for (std::size_t i = 0; i < all_causes.size(); ++i) {
    const double moves = rounded_share(std::abs(high.shares[i] - low.shares[i]));
    if (moves > told.moves) {
      told.moves = moves;
      told.cause = name_of(all_causes.at(i));
    }
  }
  return told;
}

} // namespace

std::vector<DecidingValue> deciding_values(const AccountBasis& basis,
                                           const RuleFor& rule,
                                           const SowingSituation& situation) {
  std::vector<Ranged> ranges;
  species_rules::for_each_field(rule.rule, Ranges{ranges});
  std::vector<DecidingValue> values;
  for (const Ranged& range : ranges) {
    const DecidingValue value =
        deciding_value(range,
                       at_end(basis, rule, situation, {range.key, range.low}),
                       at_end(basis, rule, situation, {range.key, range.high}));
    if (value.step_low != value.step_high || value.moves >= worth_telling) {
      values.push_back(value);
    }
  }
  std::stable_sort(values.begin(), values.end(), [](const auto& a, const auto& b) {
    const auto key = [](const DecidingValue& value) {
      return std::pair{value.step_low == value.step_high, -value.moves};
    };
    return key(a) < key(b);
  });
  values.resize(std::min(values.size(), most_told));
  return values;
}

} // namespace nightsow::planner
