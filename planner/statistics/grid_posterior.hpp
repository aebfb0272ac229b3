#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace nightsow::planner {

// Values of a model that are tried one by one: natural logarithms of what is thought of each before
// (`prior`), and of what each observation makes of it, one row an observation.

/// The sum of both for each value, one observation left out where said; up to a constant.
[[nodiscard]] std::vector<double> log_posterior(const std::vector<double>& prior,
                                                const std::vector<std::vector<double>>& likelihoods,
                                                std::optional<std::size_t> without = std::nullopt);

/// The place of the highest; the first of equals. Requires: not empty.
[[nodiscard]] std::size_t likeliest(const std::vector<double>& logs);

/// How much better each observation is foretold by the value that is likeliest by all others than
/// by the value at `reference`: log likelihoods, summed.
[[nodiscard]] double left_out_gain(const std::vector<double>& prior,
                                   const std::vector<std::vector<double>>& likelihoods,
                                   std::size_t reference);

} // namespace nightsow::planner
