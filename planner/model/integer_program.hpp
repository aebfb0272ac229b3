#pragma once

#include <vector>

namespace nightsow::planner {

// The one door to the solver, CBC.

/// A variable from 0 to `upper`, and what one of it is worth.
struct ProgramVariable {
  double worth = 0.0;
  double upper = 1.0;
  bool whole = true;
};

struct ProgramTerm {
  int variable = 0;
  double times = 0.0;
};

/// The sum of the terms lies from `low` to `high`.
struct ProgramRow {
  std::vector<ProgramTerm> terms;
  double low = 0.0;
  double high = 0.0;
};

struct Program {
  std::vector<ProgramVariable> variables;
  std::vector<ProgramRow> rows;
};

struct Solved {
  bool found = false;
  std::vector<double> values;
  double worth = 0.0;
  double bound = 0.0; ///< no solution is worth more
};

/// Maximises the worth, on one thread, until the gap is at or under `gap` or the time is up.
/// Prints nothing.
[[nodiscard]] Solved solve(const Program& program, double gap, double seconds);

/// The best where variables need not be whole: a bound for where they must.
struct Relaxed {
  bool found = false;
  std::vector<double> values;
  double worth = 0.0;
  /// Of a variable at 0: what one of it would take from the worth at least, whatever the others.
  std::vector<double> price;
};

[[nodiscard]] Relaxed solve_relaxed(const Program& program, double seconds);

} // namespace nightsow::planner
