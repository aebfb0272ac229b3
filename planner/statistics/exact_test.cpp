#include "planner/statistics/comparison.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>
#include <iterator>
#include <map>
#include <numeric>
#include <utility>

namespace nightsow::planner {

namespace {

// A table's chance is a constant times the product of 1 / cell!. Its columns are put in two halves:
// all ways to fill each half are listed by what they leave of the rows' sums, and each way of the
// left half looks up how many of the matching right ones are likely enough.
using RowSums = std::vector<int>;
using Ways = std::map<RowSums, std::vector<double>>; // by row sums: logarithms of the products
constexpr std::size_t most_ways = 4'000'000;

struct Filling {
  const RowSums* limits = nullptr;
  std::size_t found = 0;
};

void fill(Filling& filling,
          std::span<const int> columns,
          std::size_t row,
          int left,
          RowSums& used,
          double log_product,
          Ways& ways) {
  if (filling.found > most_ways) {
    return;
  }
  if (row == used.size()) {
    if (left > 0) {
      return;
    }
    if (columns.size() == 1) {
      ++filling.found;
      ways[used].push_back(log_product);
    } else {
      fill(filling, columns.subspan(1), 0, columns[1], used, log_product, ways);
    }
    return;
  }
  const int most = std::min(left, (*filling.limits)[row] - used[row]);
  for (int cell = row + 1 == used.size() ? left : 0; cell <= most; ++cell) {
    used[row] += cell;
    fill(filling, columns, row + 1, left - cell, used, log_product - std::lgamma(cell + 1.0), ways);
    used[row] -= cell;
  }
}

std::optional<Ways> ways_of(std::span<const int> columns, const RowSums& limits) {
  Ways ways;
  if (columns.empty()) {
    ways[RowSums(limits.size(), 0)] = {0.0};
    return ways;
  }
  RowSums used(limits.size(), 0);
  Filling filling{&limits};
  fill(filling, columns, 0, columns.front(), used, 0.0, ways);
  return filling.found > most_ways ? std::nullopt : std::optional{std::move(ways)};
}

// Products of one half in rising order, with the sums of all up to each.
struct Ranked {
  std::vector<double> logs;
  std::vector<double> sums;
};

Ranked ranked(std::vector<double> logs) {
  std::sort(logs.begin(), logs.end());
  Ranked result;
  double sum = 0.0;
  for (const double value : logs) {
    sum += std::exp(value);
    result.sums.push_back(sum);
  }
  result.logs = std::move(logs);
  return result;
}

} // namespace

std::optional<double> exact_test(std::span<const std::vector<int>> rows) {
  if (rows.empty()) {
    return 1.0;
  }
  RowSums row_sums;
  std::vector<int> columns(rows.front().size(), 0);
  double here = 0.0;
  for (const std::vector<int>& row : rows) {
    row_sums.push_back(std::accumulate(row.begin(), row.end(), 0));
    for (std::size_t i = 0; i < row.size(); ++i) {
      columns[i] += row[i];
      here -= std::lgamma(row[i] + 1.0);
    }
  }
  const auto half = static_cast<std::ptrdiff_t>(columns.size() / 2);
  const std::optional<Ways> left = ways_of({columns.begin(), columns.begin() + half}, row_sums);
  const std::optional<Ways> right = ways_of({columns.begin() + half, columns.end()}, row_sums);
  if (!left || !right) {
    return std::nullopt;
  }
  double all = 0.0;
  double unlikely = 0.0;
  for (const auto& [used, logs] : *left) {
    RowSums rest;
    std::transform(
        row_sums.begin(), row_sums.end(), used.begin(), std::back_inserter(rest), std::minus<>{});
    const auto found = right->find(rest);
    if (found == right->end()) {
      continue;
    }
    const Ranked others = ranked(found->second);
    for (const double log_product : logs) {
      const double most = here + 1e-7 - log_product;
      const auto end = std::upper_bound(others.logs.begin(), others.logs.end(), most);
      const double scaled = std::exp(log_product - here);
      all += scaled * others.sums.back();
      if (end != others.logs.begin()) {
        unlikely += scaled * others.sums[static_cast<std::size_t>(end - others.logs.begin()) - 1];
      }
    }
  }
  return unlikely / all;
}

} // namespace nightsow::planner
