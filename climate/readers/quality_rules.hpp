#pragma once

#include "climate/readers/readings.hpp"
#include "climate/readers/table_format.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// A rule of quality on the columns of one file, and what it met there.
struct PlacedRule {
  const QualityRule* rule = nullptr;
  std::optional<std::size_t> night;
  std::optional<std::size_t> day;
  std::size_t not_used = 0;
  std::size_t kept = 0;
};

/// The format's rules, set on the columns in which their marks stand. The format must outlive them.
[[nodiscard]] std::vector<PlacedRule> place_rules(const TableFormat& format,
                                                  const PlacedColumns& columns);

/// The row's value of that element, °C, or NaN when a rule says that it must not be used: then it
/// is listed as a finding. Doubts are counted in `rules`.
[[nodiscard]] float judged(std::vector<PlacedRule>& rules,
                           Readings& readings,
                           std::span<const std::string_view> fields,
                           const Reading& row,
                           Element element);

/// Adds a note for each rule that met something.
void say_quality(const std::vector<PlacedRule>& rules, Readings& readings);

} // namespace nightsow::climate
