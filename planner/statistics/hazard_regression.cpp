#include "planner/statistics/hazard_regression.hpp"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace nightsow::planner {

namespace {

using Priors = std::vector<std::optional<CoefficientPrior>>;

constexpr int most_steps = 200;
constexpr double settled = 1e-9;
constexpr double farthest = 30.0;      // standardised: beyond, a coefficient runs to infinity
constexpr double least_share = 1e-300; // its logarithm is still a number

Eigen::Index at(std::size_t i) {
  return static_cast<Eigen::Index>(i);
}

// ln h and ln(1 - h), exact in both tails.
struct LogShares {
  double came = 0.0;
  double waiting = 0.0;
};

LogShares log_shares(double sum, HazardLink link) {
  if (link == HazardLink::logit) {
    return {sum > 0.0 ? -std::log1p(std::exp(-sum)) : sum - std::log1p(std::exp(sum)),
            sum > 0.0 ? -sum - std::log1p(std::exp(-sum)) : -std::log1p(std::exp(sum))};
  }
  const double hazard = std::exp(std::min(sum, 300.0));
  return {std::log(std::max(-std::expm1(-hazard), least_share)), -hazard};
}

// First derivative of a row's log likelihood by its sum, and the information expected of it.
struct Slopes {
  double score = 0.0;
  double information = 0.0;
};

Slopes slopes(const HazardRow& row, double sum, HazardLink link) {
  const double share = hazard_share(sum, link);
  if (link == HazardLink::logit) {
    return {row.came - row.waiting * share, row.waiting * share * (1.0 - share)};
  }
  const double hazard = std::exp(std::min(sum, 300.0));
  if (share <= 0.0 || hazard > 700.0) {
    return {row.came - row.waiting * hazard, row.waiting * hazard};
  }
  const double slope = hazard * std::exp(-hazard); // of the share
  return {row.came * slope / share - (row.waiting - row.came) * hazard,
          row.waiting * hazard * hazard * std::exp(-hazard) / share};
}

double log_likelihood(const std::vector<HazardRow>& rows,
                      const Eigen::VectorXd& sums,
                      HazardLink link) {
  double result = 0.0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const LogShares logs = log_shares(sums(at(i)), link);
    result +=
        (rows[i].came > 0.0 ? rows[i].came * logs.came : 0.0) +
        (rows[i].waiting > rows[i].came ? (rows[i].waiting - rows[i].came) * logs.waiting : 0.0);
  }
  return result;
}

double log_prior(const Priors& priors, const Eigen::VectorXd& coefficients) {
  double result = 0.0;
  for (std::size_t i = 0; i < priors.size(); ++i) {
    if (priors[i]) {
      const double z = (coefficients(at(i)) - priors[i]->mean) / priors[i]->deviation;
      result -= 0.5 * z * z;
    }
  }
  return result;
}

double log_of_full_model(const std::vector<HazardRow>& rows) {
  double result = 0.0;
  for (const HazardRow& row : rows) {
    const double share = row.waiting > 0.0 ? row.came / row.waiting : 0.0;
    result += (row.came > 0.0 ? row.came * std::log(share) : 0.0) +
              (row.waiting > row.came ? (row.waiting - row.came) * std::log1p(-share) : 0.0);
  }
  return result;
}

struct Step {
  Eigen::VectorXd score;
  Eigen::MatrixXd information;
};

Step step_at(const std::vector<HazardRow>& rows,
             const Eigen::MatrixXd& design,
             const Eigen::VectorXd& coefficients,
             const Priors& priors,
             HazardLink link) {
  const Eigen::VectorXd sums = design * coefficients;
  Step step{Eigen::VectorXd::Zero(coefficients.size()),
            Eigen::MatrixXd::Zero(coefficients.size(), coefficients.size())};
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Slopes of_row = slopes(rows[i], sums(at(i)), link);
    const Eigen::VectorXd explains = design.row(at(i)).transpose();
    step.score += of_row.score * explains;
    step.information += of_row.information * explains * explains.transpose();
  }
  for (std::size_t i = 0; i < priors.size(); ++i) {
    if (priors[i]) {
      const double precision = 1.0 / (priors[i]->deviation * priors[i]->deviation);
      step.score(at(i)) -= precision * (coefficients(at(i)) - priors[i]->mean);
      step.information(at(i), at(i)) += precision;
    }
  }
  return step;
}

// Coefficients are brought to one scale first, so that narrow priors and wide values do no harm;
// empty where some combination of them is not told by anything.
std::optional<Eigen::VectorXd> newton_step(const Step& step) {
  if (step.information.diagonal().minCoeff() <= 0.0) {
    return std::nullopt;
  }
  const Eigen::VectorXd scale = step.information.diagonal().cwiseSqrt().cwiseInverse();
  const Eigen::MatrixXd scaled = scale.asDiagonal() * step.information * scale.asDiagonal();
  const Eigen::LDLT<Eigen::MatrixXd> solver(scaled);
  if (solver.info() != Eigen::Success || solver.rcond() < 1e-13) {
    return std::nullopt;
  }
  return scale.cwiseProduct(solver.solve(scale.cwiseProduct(step.score)));
}

// By how much single rows' sums may move before the fit counts as running away.
bool runs_away(const Eigen::MatrixXd& design, const Eigen::VectorXd& coefficients) {
  return !coefficients.allFinite() || (design * coefficients).cwiseAbs().maxCoeff() > farthest;
}

HazardFit report(const std::vector<HazardRow>& rows,
                 const Eigen::MatrixXd& design,
                 const Eigen::VectorXd& coefficients,
                 const Eigen::MatrixXd& information,
                 HazardLink link) {
  const Eigen::MatrixXd covariance = information.inverse();
  HazardFit fit;
  for (Eigen::Index i = 0; i < coefficients.size(); ++i) {
    fit.coefficients.push_back(coefficients(i));
    fit.errors.push_back(std::sqrt(covariance(i, i)));
    const Eigen::VectorXd row = covariance.row(i).transpose();
    fit.covariance.emplace_back(row.begin(), row.end());
  }
  const double log_fit = log_likelihood(rows, design * coefficients, link);
  fit.deviance = -2.0 * log_fit;
  fit.group_deviance = 2.0 * (log_of_full_model(rows) - log_fit);
  return fit;
}

} // namespace

double hazard_share(double sum, HazardLink link) {
  if (link == HazardLink::logit) {
    return 1.0 / (1.0 + std::exp(-sum));
  }
  return -std::expm1(-std::exp(std::min(sum, 300.0)));
}

std::optional<HazardFit> fit_hazard(const std::vector<HazardRow>& rows,
                                    const Priors& priors,
                                    HazardLink link) {
  if (rows.empty() || priors.empty()) {
    return std::nullopt;
  }
  Eigen::MatrixXd design(at(rows.size()), at(priors.size()));
  for (std::size_t i = 0; i < rows.size(); ++i) {
    for (std::size_t j = 0; j < priors.size(); ++j) {
      design(at(i), at(j)) = rows[i].explains[j];
    }
  }
  Eigen::VectorXd coefficients = Eigen::VectorXd::Zero(at(priors.size()));
  for (std::size_t i = 0; i < priors.size(); ++i) {
    coefficients(at(i)) = priors[i] ? priors[i]->mean : 0.0;
  }
  const auto height = [&](const Eigen::VectorXd& where) {
    return log_likelihood(rows, design * where, link) + log_prior(priors, where);
  };
  for (int count = 0; count < most_steps; ++count) {
    const Step step = step_at(rows, design, coefficients, priors, link);
    const std::optional<Eigen::VectorXd> wanted = newton_step(step);
    if (!wanted) {
      return std::nullopt;
    }
    double part = 1.0;
    while (part > 1e-10 && !(height(coefficients + part * *wanted) >= height(coefficients))) {
      part *= 0.5;
    }
    if (part <= 1e-10 || (design * *wanted).cwiseAbs().maxCoeff() < settled) {
      return report(rows, design, coefficients, step.information, link);
    }
    coefficients += part * *wanted;
    if (runs_away(design, coefficients)) {
      return std::nullopt;
    }
  }
  return std::nullopt;
}

} // namespace nightsow::planner
