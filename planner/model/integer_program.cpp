#include "planner/model/integer_program.hpp"

#include <coin/Cbc_C_Interface.h>

#include <cmath>
#include <cstddef>
#include <memory>
#include <string>
#include <utility>

namespace nightsow::planner {

namespace {

struct Delete {
  void operator()(Cbc_Model* model) const { Cbc_deleteModel(model); }
};

/// A program as the solver reads it: column by column.
struct Columns {
  std::vector<CoinBigIndex> starts;
  std::vector<int> rows;
  std::vector<double> times;
  std::vector<double> low;
  std::vector<double> high;
  std::vector<double> worth;
};

Columns columns_of(const Program& program) {
  std::vector<std::vector<std::pair<int, double>>> by_variable(program.variables.size());
  for (std::size_t row = 0; row < program.rows.size(); ++row) {
    for (const ProgramTerm& term : program.rows[row].terms) {
      by_variable[static_cast<std::size_t>(term.variable)].emplace_back(static_cast<int>(row),
                                                                        term.times);
    }
  }
  Columns columns;
  columns.starts.push_back(0);
  for (std::size_t variable = 0; variable < by_variable.size(); ++variable) {
    for (const auto& [row, times] : by_variable[variable]) {
      columns.rows.push_back(row);
      columns.times.push_back(times);
    }
    columns.starts.push_back(static_cast<CoinBigIndex>(columns.rows.size()));
    columns.low.push_back(0.0);
    columns.high.push_back(program.variables[variable].upper);
    columns.worth.push_back(program.variables[variable].worth);
  }
  return columns;
}

void set(Cbc_Model* model, const char* name, const std::string& value) {
  Cbc_setParameter(model, name, value.c_str());
}

using Model = std::unique_ptr<Cbc_Model, Delete>;

Model model_of(const Program& program, double seconds) {
  Model model{Cbc_newModel()};
  const Columns columns = columns_of(program);
  std::vector<double> low;
  std::vector<double> high;
  for (const ProgramRow& row : program.rows) {
    low.push_back(row.low);
    high.push_back(row.high);
  }
  Cbc_loadProblem(model.get(),
                  static_cast<int>(program.variables.size()),
                  static_cast<int>(program.rows.size()),
                  columns.starts.data(),
                  columns.rows.data(),
                  columns.times.data(),
                  columns.low.data(),
                  columns.high.data(),
                  columns.worth.data(),
                  low.data(),
                  high.data());
  Cbc_setObjSense(model.get(), -1.0);
  Cbc_setLogLevel(model.get(), 0);
  set(model.get(), "log", "0");
  set(model.get(), "threads", "0");
  set(model.get(), "randomCbcSeed", "1");
  set(model.get(), "randomSeed", "1");
  set(model.get(), "timeMode", "elapsed");
  set(model.get(), "seconds", std::to_string(seconds));
  return model;
}

double worth_of(const Program& program, const std::vector<double>& values) {
  double worth = 0.0;
  for (std::size_t variable = 0; variable < values.size(); ++variable) {
    worth += program.variables[variable].worth * values[variable];
  }
  return worth;
}

} // namespace

Solved solve(const Program& program, double gap, double seconds) {
  const Model model = model_of(program, seconds);
  for (std::size_t variable = 0; variable < program.variables.size(); ++variable) {
    if (program.variables[variable].whole) {
      Cbc_setInteger(model.get(), static_cast<int>(variable));
    }
  }
  set(model.get(), "ratioGap", std::to_string(gap));
  Cbc_solve(model.get());
  Solved solved;
  const double* values = Cbc_bestSolution(model.get());
  solved.found = values != nullptr && Cbc_isProvenInfeasible(model.get()) == 0;
  if (solved.found) {
    solved.values.assign(values, values + program.variables.size());
    solved.worth = worth_of(program, solved.values);
    solved.bound = Cbc_getBestPossibleObjValue(model.get());
  }
  return solved;
}

Relaxed solve_relaxed(const Program& program, double seconds) {
  const Model model = model_of(program, seconds);
  Cbc_solve(model.get());
  Relaxed relaxed;
  const double* values = Cbc_getColSolution(model.get());
  const double* prices = Cbc_getReducedCost(model.get());
  relaxed.found = Cbc_isProvenOptimal(model.get()) != 0 && values != nullptr && prices != nullptr;
  if (relaxed.found) {
    relaxed.values.assign(values, values + program.variables.size());
    relaxed.worth = worth_of(program, relaxed.values);
    // The solver's sign follows the sense of its own inner program.
    for (std::size_t variable = 0; variable < program.variables.size(); ++variable) {
      relaxed.price.push_back(std::abs(prices[variable]));
    }
  }
  return relaxed;
}

} // namespace nightsow::planner
