#pragma once

namespace nightsow::planner {

/// So many of so many seeds. 0 <= came <= sown.
struct Count {
  int came = 0;
  int sown = 0;
};

/// Limits of a share, or of a difference of shares.
struct Interval {
  double low = 0.0;
  double high = 1.0;
};

inline constexpr double usual_confidence = 0.95;

// All of these hold the true share at about the wanted confidence (0..1, ends out), and know
// nothing where nothing was sown: 0 to 1. Newcombe (1998), Statistics in Medicine 17: 857-872;
// Brown, Cai and DasGupta (2001), Statistical Science 16: 101-133.

/// Score interval: the one to use, close to its confidence also for few seeds.
[[nodiscard]] Interval wilson(const Count& count, double confidence = usual_confidence);

/// Quantiles of Beta(came + 1/2, sown - came + 1/2); 0 where none came, 1 where all did.
[[nodiscard]] Interval jeffreys(const Count& count, double confidence = usual_confidence);

/// Exact, so never under its confidence, and often wide.
[[nodiscard]] Interval clopper_pearson(const Count& count, double confidence = usual_confidence);

/// Share at the middle of Wilson's and Agresti and Coull's intervals. Requires: sown > 0.
[[nodiscard]] double shrunk_share(const Count& count, double confidence = usual_confidence);

/// The value under which so much of Beta(a, b) lies. Requires: a, b > 0; 0 <= part <= 1.
[[nodiscard]] double beta_quantile(double a, double b, double part);

/// Standard deviation of a share that is read off so many seeds.
/// Requires: 0 <= share <= 1, seeds > 0.
[[nodiscard]] double share_deviation(double share, int seeds);

/// By how much the best and the worst of two or four like germination tests may differ by chance
/// alone, once in forty: q standard deviations of one test, q the upper 2.5 % point of the
/// studentized range with infinite freedom (3.170, 3.984). Within 1.35 % of the printed table of
/// 7 CFR 201.55 for tests of 100 seeds. Requires: tests 2 or 4.
[[nodiscard]] double tolerated_range(double share, int tests, int seeds_a_test);

} // namespace nightsow::planner
