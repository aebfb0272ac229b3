#include "planner/journal/row_order.hpp"

#include <algorithm>
#include <charconv>
#include <cstddef>
#include <set>
#include <tuple>

namespace nightsow::planner {

namespace {

int rank(EntryKind kind) {
  return kind == EntryKind::sowing ? 0 : kind == EntryKind::undo ? 2 : 1;
}

} // namespace

std::optional<EntryId> number_in(std::string_view text) {
  EntryId number = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
  const bool whole = fault == std::errc{} && end == text.data() + text.size() && number > 0;
  return whole ? std::optional(number) : std::nullopt;
}

bool all_numbered(const std::vector<WrittenEntry>& rows) {
  std::set<EntryId> numbers;
  return std::all_of(rows.begin(), rows.end(), [&](const WrittenEntry& row) {
    const auto number = number_in(row.key);
    return number && numbers.insert(*number).second;
  });
}

std::vector<const WrittenEntry*> in_order(const std::vector<WrittenEntry>& rows, bool numbered) {
  std::vector<const WrittenEntry*> ordered;
  ordered.reserve(rows.size());
  for (const WrittenEntry& row : rows) {
    ordered.push_back(&row);
  }
  const auto place = [numbered](const WrittenEntry& row) {
    return numbered ? std::tuple(*number_in(row.key), 0, Date{}, std::size_t{0})
                    : std::tuple(EntryId{0}, rank(kind_of(row.value)), day_of(row.value), row.line);
  };
  std::sort(ordered.begin(), ordered.end(), [&](const auto* one, const auto* other) {
    return place(*one) < place(*other);
  });
  return ordered;
}

} // namespace nightsow::planner
