#include "planner/model/account.hpp"

#include "planner/statistics/log_weights.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr double least_share = 1e-6; // nothing is quite impossible
constexpr std::size_t causes_in_all = all_causes.size();

// Weights of a Dirichlet for what becomes of a seed: up between two looks, or not up and why.
struct Fates {
  std::vector<double> up; // one a look
  std::array<double, causes_in_all> missing{};

  [[nodiscard]] double all_up() const { return std::accumulate(up.begin(), up.end(), 0.0); }

  [[nodiscard]] double all_missing() const {
    return std::accumulate(missing.begin(), missing.end(), 0.0);
  }

  [[nodiscard]] double firm() const {
    double sum = 0.0;
    for (std::size_t i = 0; i < causes_in_all; ++i) {
      sum += is_firm(all_causes.at(i)) ? missing.at(i) : 0.0;
    }
    return sum;
  }
};

double correlation_of(const SowingRecord& record) {
  return pots_differ / std::max(1, record.pots);
}

Fates fates_of(const SeedsOnDay& seeds, const SowingRecord& record) {
  const double size = 1.0 / correlation_of(record) - 1.0;
  Fates fates;
  std::size_t day = 0;
  for (const Look& look : record.looks) {
    double up = 0.0;
    for (; day < seeds.up.size() && static_cast<int>(day) <= look.day; ++day) {
      up += seeds.up[day];
    }
    fates.up.push_back(size * std::max(up, least_share));
  }
  for (std::size_t i = 0; i < causes_in_all; ++i) {
    fates.missing.at(i) = size * std::max(share_of(seeds, all_causes.at(i)), least_share);
  }
  return fates;
}

std::vector<Fates> all_fates(std::span<const SeedsOnDay> cases, const SowingRecord& record) {
  std::vector<Fates> list;
  list.reserve(cases.size());
  for (const SeedsOnDay& one : cases) {
    list.push_back(fates_of(one, record));
  }
  return list;
}

// The logarithm of what a cell of a Dirichlet-multinomial adds.
double log_cell(double weight, int count) {
  return count == 0 ? 0.0
                    : std::lgamma(weight + count) - std::lgamma(weight) - std::lgamma(count + 1.0);
}

double log_likelihood(const Fates& fates, const SowingRecord& record) {
  double result = 0.0;
  int before = 0;
  for (std::size_t i = 0; i < record.looks.size(); ++i) {
    result += log_cell(fates.up[i], record.looks[i].seen - before);
    before = record.looks[i].seen;
  }
  const double missing = fates.all_missing();
  const double all = missing + fates.all_up();
  result +=
      log_cell(missing, record.seeds - before) + std::lgamma(all) - std::lgamma(all + record.seeds);
  const Pressed& pressed = record.pressed;
  return result + log_cell(fates.firm(), pressed.firm) +
         log_cell(missing - fates.firm(), pressed.soft) + std::lgamma(missing) -
         std::lgamma(missing + pressed.firm + pressed.soft);
}

std::vector<double> weights_of(const std::vector<Fates>& fates, const SowingRecord& record) {
  std::vector<double> weights;
  weights.reserve(fates.size());
  for (const Fates& one : fates) {
    weights.push_back(log_likelihood(one, record));
  }
  return shares_of_logs(std::move(weights));
}

// Chances of 0..n of a beta-binomial with weights a and b.
std::vector<double> chances(int n, double a, double b) {
  return beta_binomial(n, a / (a + b), 1.0 / (a + b + 1.0));
}

// Of those missing, how many are firm: those pressed are known.
std::vector<double> firm_chances(const Fates& fates, int missing, const Pressed& pressed) {
  std::vector<double> list(static_cast<std::size_t>(missing) + 1, 0.0);
  const double firm = fates.firm();
  const std::vector<double> of_others = chances(missing - pressed.firm - pressed.soft,
                                                firm + pressed.firm,
                                                fates.all_missing() - firm + pressed.soft);
  std::copy(of_others.begin(), of_others.end(), list.begin() + pressed.firm);
  return list;
}

// Adds one case's chances of 0..missing seeds with that cause.
void add_chances(const Fates& fates,
                 std::size_t cause,
                 int missing,
                 const Pressed& pressed,
                 double weight,
                 std::vector<double>& sum) {
  const double here = fates.missing.at(cause);
  if (pressed.firm + pressed.soft == 0) {
    const std::vector<double> of_case = chances(missing, here, fates.all_missing() - here);
    for (std::size_t k = 0; k < sum.size(); ++k) {
      sum[k] += weight * of_case[k];
    }
    return;
  }
  const bool firm_cause = is_firm(all_causes.at(cause));
  const double firm = fates.firm();
  const double alike = firm_cause ? firm : fates.all_missing() - firm;
  const std::vector<double> firm_ones = firm_chances(fates, missing, pressed);
  for (std::size_t f = 0; f < firm_ones.size(); ++f) {
    if (firm_ones[f] * weight < 1e-9) {
      continue;
    }
    const int of_kind = firm_cause ? static_cast<int>(f) : missing - static_cast<int>(f);
    const std::vector<double> of_case = chances(of_kind, here, alike - here);
    for (std::size_t k = 0; k < of_case.size(); ++k) {
      sum[k] += weight * firm_ones[f] * of_case[k];
    }
  }
}

double quantile(const std::vector<double>& chances, double part) {
  double so_far = 0.0;
  std::size_t k = 0;
  while (k + 1 < chances.size() && (so_far += chances[k]) < part - 1e-9) {
    ++k;
  }
  return static_cast<double>(k);
}

CauseShare cause_share(const std::vector<Fates>& fates,
                       const std::vector<double>& weights,
                       std::size_t cause,
                       int missing,
                       const Pressed& pressed) {
  std::vector<double> sum(static_cast<std::size_t>(missing) + 1, 0.0);
  for (std::size_t i = 0; i < fates.size(); ++i) {
    if (weights[i] > 1e-6) {
      add_chances(fates[i], cause, missing, pressed, weights[i], sum);
    }
  }
  double mean = 0.0;
  double all = 0.0;
  for (std::size_t k = 0; k < sum.size(); ++k) {
    mean += static_cast<double>(k) * sum[k];
    all += sum[k];
  }
  for (double& chance : sum) {
    chance /= all;
  }
  const double p10 = quantile(sum, 0.1) / missing;
  const double p90 = quantile(sum, 0.9) / missing;
  return {all_causes.at(cause), mean / all / missing, p10, p90, std::move(sum)};
}

// Seedlings by day, of the seeds missing, after the last look.
std::vector<double> seedlings_to_come(std::span<const SeedsOnDay> cases,
                                      const SowingRecord& record,
                                      const std::vector<double>& weights) {
  const int last = record.looks.back().day;
  const int missing = record.seeds - record.looks.back().seen;
  std::vector<double> later;
  for (std::size_t i = 0; i < cases.size(); ++i) {
    const std::vector<double>& up = cases[i].up;
    later.resize(std::max(later.size(), up.size()), 0.0);
    const double not_up = std::max(1.0 - cases[i].up_so_far, least_share);
    for (std::size_t day = static_cast<std::size_t>(last) + 1; day < up.size(); ++day) {
      later[day] += weights[i] * missing * up[day] / not_up;
    }
  }
  return later;
}

void add_outlook(std::span<const SeedsOnDay> cases, const SowingRecord& record, Account& result) {
  const std::vector<double> later = seedlings_to_come(cases, record, result.weights);
  result.more_to_come = std::accumulate(later.begin(), later.end(), 0.0);
  double so_far = 0.0;
  for (std::size_t day = 0; day < later.size() && result.more_to_come > 1e-3; ++day) {
    so_far += later[day];
    if (so_far >= 0.9 * result.more_to_come) {
      result.most_up_by = static_cast<int>(day);
      return;
    }
  }
}

// How likely a number of seedlings no likelier than this one was.
double chance_of_no_likelier(std::span<const double> shares, const SowingRecord& record, int up) {
  std::vector<double> sum(static_cast<std::size_t>(record.seeds) + 1, 0.0);
  for (const double share : shares) {
    const std::vector<double> of_case = beta_binomial(record.seeds, share, correlation_of(record));
    for (std::size_t k = 0; k < sum.size(); ++k) {
      sum[k] += of_case[k] / static_cast<double>(shares.size());
    }
  }
  double result = 0.0;
  for (const double chance : sum) {
    result += chance <= sum[static_cast<std::size_t>(up)] * (1.0 + 1e-9) ? chance : 0.0;
  }
  return std::min(1.0, result);
}

} // namespace

bool is_firm(Cause cause) {
  return cause == Cause::not_ripe || cause == Cause::nights_too_warm || cause == Cause::to_come ||
         cause == Cause::deferred || cause == Cause::too_late;
}

double share_of(const SeedsOnDay& seeds, Cause cause) {
  switch (cause) {
  case Cause::dead:
    return seeds.dead;
  case Cause::not_ripe:
    return seeds.not_ripe;
  case Cause::nights_too_warm:
    return seeds.nights_too_warm;
  case Cause::to_come:
    return seeds.to_come;
  case Cause::deferred:
    return seeds.deferred;
  case Cause::too_late:
    return seeds.too_late;
  case Cause::heat:
    return seeds.heat;
  case Cause::lost_wet:
    return seeds.lost_wet;
  case Cause::dried:
    return seeds.dried;
  }
  return 0.0;
}

Account account(std::span<const SeedsOnDay> cases, const SowingRecord& record) {
  const std::vector<Fates> fates = all_fates(cases, record);
  Account result;
  result.up = record.looks.back().seen;
  result.missing = record.seeds - result.up;
  std::vector<double> shares;
  for (const SeedsOnDay& one : cases) {
    shares.push_back(std::clamp(one.up_so_far, 0.0, 1.0));
  }
  result.expected_up = count_range(record.seeds, shares, correlation_of(record));
  result.like_the_rule = chance_of_no_likelier(shares, record, result.up);
  result.weights = weights_of(fates, record);
  double squares = 0.0;
  for (const double weight : result.weights) {
    squares += weight * weight;
  }
  result.cases_left = 1.0 / squares;
  if (result.missing > 0) {
    for (std::size_t i = 0; i < causes_in_all; ++i) {
      result.causes.push_back(
          cause_share(fates, result.weights, i, result.missing, record.pressed));
    }
    add_outlook(cases, record, result);
  }
  return result;
}

std::vector<double> shares_once_pressed(std::span<const SeedsOnDay> cases,
                                        const SowingRecord& record,
                                        const std::vector<double>& weights,
                                        const Pressed& pressed) {
  std::vector<double> shares(causes_in_all, 0.0);
  double all = 0.0;
  for (std::size_t i = 0; i < cases.size(); ++i) {
    const Fates fates = fates_of(cases[i], record);
    const double firm = fates.firm();
    const double soft = fates.all_missing() - firm;
    const int n = pressed.firm + pressed.soft;
    const double weight =
        weights[i] * chances(n, firm, soft)[static_cast<std::size_t>(pressed.firm)];
    const double firm_now = (firm + pressed.firm) / (firm + soft + n);
    for (std::size_t c = 0; c < causes_in_all; ++c) {
      shares[c] +=
          weight * (is_firm(all_causes.at(c)) ? firm_now * fates.missing.at(c) / firm
                                              : (1.0 - firm_now) * fates.missing.at(c) / soft);
    }
    all += weight;
  }
  for (double& share : shares) {
    share /= all;
  }
  return shares;
}

CaseOutlook outlook_of_case(const SeedsOnDay& seeds, const SowingRecord& record) {
  const Fates fates = fates_of(seeds, record);
  const double firm = fates.firm();
  const double soft = fates.all_missing() - firm;
  const Pressed& pressed = record.pressed;
  const int known = pressed.firm + pressed.soft;
  const double missing = record.seeds - record.looks.back().seen;
  const double firm_of_others = (firm + pressed.firm) / (firm + soft + known);
  const double firm_now = (pressed.firm + (missing - known) * firm_of_others) / missing;
  CaseOutlook result;
  for (std::size_t c = 0; c < causes_in_all; ++c) {
    result.shares.push_back(is_firm(all_causes.at(c))
                                ? firm_now * fates.missing.at(c) / firm
                                : (1.0 - firm_now) * fates.missing.at(c) / soft);
  }
  const std::vector<double> later = seedlings_to_come({&seeds, 1}, record, {1.0});
  result.more_to_come = std::accumulate(later.begin(), later.end(), 0.0);
  return result;
}

double expected_by(std::span<const SeedsOnDay> cases,
                   const SowingRecord& record,
                   const Account& account,
                   int day) {
  const std::vector<double> later = seedlings_to_come(cases, record, account.weights);
  const auto to = std::clamp<std::ptrdiff_t>(day + 1, 0, std::ssize(later));
  return std::accumulate(later.begin(), later.begin() + to, 0.0);
}

std::vector<double> chances_of_firm(std::span<const SeedsOnDay> cases,
                                    const SowingRecord& record,
                                    const std::vector<double>& weights,
                                    int pressed) {
  std::vector<double> sum(static_cast<std::size_t>(pressed) + 1, 0.0);
  for (std::size_t i = 0; i < cases.size(); ++i) {
    const Fates fates = fates_of(cases[i], record);
    const std::vector<double> of_case =
        chances(pressed, fates.firm(), fates.all_missing() - fates.firm());
    for (std::size_t k = 0; k < sum.size(); ++k) {
      sum[k] += weights[i] * of_case[k];
    }
  }
  return sum;
}

} // namespace nightsow::planner
