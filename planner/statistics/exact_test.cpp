#include "planner/statistics/comparison.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numeric>
#include <utility>

namespace nightsow::planner {

namespace {

// A table's chance is a constant times the product of 1 / cell!. Its columns are put in two halves:
// all ways to fill each half are listed by what they leave of the rows' sums, and each way of the
// left half looks up how much of the matching right ones is unlikely enough.
using RowSums = std::vector<int>;
using Key = std::uint64_t; // of row sums: digits of mixed base

struct Way {
  Key used = 0;
  double log_product = 0.0;
};

constexpr std::size_t most_ways = 4'000'000;
constexpr double as_likely = 1e-7; // of a logarithm: rounding must not decide
constexpr double most_keys = 1e18;

struct Filling {
  const RowSums* limits = nullptr;
  std::vector<Key> places;
  std::vector<Way> ways;
};

void fill(Filling& filling,
          std::span<const int> columns,
          std::size_t row,
          int left,
          RowSums& used,
          const Way& way) {
  if (filling.ways.size() > most_ways) {
    return;
  }
  if (row == used.size()) {
    if (left == 0 && columns.size() == 1) {
      filling.ways.push_back(way);
    } else if (left == 0) {
      fill(filling, columns.subspan(1), 0, columns[1], used, way);
    }
    return;
  }
  const int most = std::min(left, (*filling.limits)[row] - used[row]);
  for (int cell = row + 1 == used.size() ? left : 0; cell <= most; ++cell) {
    used[row] += cell;
    fill(filling,
         columns,
         row + 1,
         left - cell,
         used,
         {way.used + filling.places[row] * static_cast<Key>(cell),
          way.log_product - std::lgamma(cell + 1.0)});
    used[row] -= cell;
  }
}

// In order of keys, then of products; empty where there are too many.
std::vector<Way> ways_of(std::span<const int> columns,
                         const RowSums& limits,
                         const std::vector<Key>& places) {
  if (columns.empty()) {
    return {{}};
  }
  RowSums used(limits.size(), 0);
  Filling filling{&limits, places, {}};
  fill(filling, columns, 0, columns.front(), used, {});
  if (filling.ways.size() > most_ways) {
    return {};
  }
  std::sort(filling.ways.begin(), filling.ways.end(), [](const Way& a, const Way& b) {
    return a.used != b.used ? a.used < b.used : a.log_product < b.log_product;
  });
  return std::move(filling.ways);
}

// Empty where there are too many keys to tell apart.
std::vector<Key> places_of(const RowSums& limits) {
  std::vector<Key> places;
  double so_far = 1.0;
  Key place = 1;
  for (const int limit : limits) {
    places.push_back(place);
    so_far *= limit + 1.0;
    if (so_far > most_keys) {
      return {};
    }
    place *= static_cast<Key>(limit) + 1;
  }
  return places;
}

// What the ways in a range, all of one key, weigh: all of them, and up to some product.
struct Weights {
  double all = 0.0;
  double unlikely = 0.0;
};

Weights weights_of(const std::vector<Way>& left,
                   const std::vector<Way>& right,
                   Key whole,
                   double here) {
  Weights weights;
  std::vector<double> sums; // of the right ways of one key, up to each
  auto first = right.end();
  auto last = right.end();
  for (std::size_t i = 0; i < left.size(); ++i) {
    const Key wanted = whole - left[i].used;
    if (i == 0 || left[i].used != left[i - 1].used) {
      const auto less = [](const Way& way, Key key) { return way.used < key; };
      first = std::lower_bound(right.begin(), right.end(), wanted, less);
      last = std::lower_bound(first, right.end(), wanted + 1, less);
      sums.assign(1, 0.0);
      for (auto way = first; way != last; ++way) {
        sums.push_back(sums.back() + std::exp(way->log_product));
      }
    }
    const double most = here + as_likely - left[i].log_product;
    const auto end = std::upper_bound(
        first, last, most, [](double log, const Way& way) { return log < way.log_product; });
    const double scaled = std::exp(left[i].log_product - here);
    weights.all += scaled * sums.back();
    weights.unlikely += scaled * sums[static_cast<std::size_t>(end - first)];
  }
  return weights;
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
  const std::vector<Key> places = places_of(row_sums);
  if (places.empty()) {
    return std::nullopt;
  }
  const std::vector<Way> left =
      ways_of({columns.begin(), columns.begin() + half}, row_sums, places);
  const std::vector<Way> right = ways_of({columns.begin() + half, columns.end()}, row_sums, places);
  if (left.empty() || right.empty()) {
    return std::nullopt;
  }
  Key whole = 0;
  for (std::size_t row = 0; row < row_sums.size(); ++row) {
    whole += places[row] * static_cast<Key>(row_sums[row]);
  }
  const Weights weights = weights_of(left, right, whole, here);
  return weights.unlikely / weights.all;
}

} // namespace nightsow::planner
