#include "planner/journal/entry_row.hpp"

#include "planner/garden/date_range.hpp"
#include "planner/garden/packet_values.hpp"
#include "planner/garden/plain_text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace nightsow::planner {

namespace {

// Nobody counts higher by eye; a longer number is a slip.
constexpr int most = 1'000'000;

std::size_t index(EntryColumn column) {
  return static_cast<std::size_t>(column);
}

// "2026-03-01 00:00:00", as some spreadsheets write a day.
std::string_view without_clock(std::string_view cell) {
  constexpr std::size_t iso_day = 10;
  const bool stamp = cell.size() > iso_day && (cell[iso_day] == ' ' || cell[iso_day] == 'T') &&
                     parse_iso_date(cell.substr(0, iso_day));
  return stamp ? cell.substr(0, iso_day) : cell;
}

bool is_control(char letter) {
  const auto byte = static_cast<unsigned char>(letter);
  return (byte < 0x20 && letter != '\n' && letter != '\r' && letter != '\t') || byte == 0x7f;
}

} // namespace

EntryRow::EntryRow(const CsvReader& row,
                   const LooseHeader& header,
                   std::string_view where,
                   std::vector<Problem>& faults)
    : where_(where), faults_(faults), line_(row.line()) {
  for (std::size_t i = 0; i < header.columns.size() && i < row.fields().size(); ++i) {
    if (const auto column = header.columns[i]) {
      cells_.at(*column) = row.fields()[i];
      places_.at(*column) = row.column(i);
    }
  }
  for (std::size_t i = header.columns.size(); i < row.fields().size(); ++i) {
    if (!trimmed(row.fields()[i]).empty()) {
      faults_.push_back({Severity::warning,
                         std::string(where_),
                         line_,
                         row.column(i),
                         fmt::format("\"{}\" stands beyond the last column", row.fields()[i]),
                         fmt::format("{} cells as in the header", header.columns.size()),
                         "put cells that hold the separator in double quotes"});
    }
  }
}

bool EntryRow::blank() const {
  return std::all_of(cells_.begin(), cells_.end(), [](auto cell) { return trimmed(cell).empty(); });
}

std::size_t EntryRow::place(EntryColumn column) const {
  return places_.at(index(column));
}

std::string_view EntryRow::cell(EntryColumn column) const {
  return trimmed(cells_.at(index(column)));
}

int EntryRow::number(EntryColumn column, int least, std::optional<int> otherwise) const {
  if (cell(column).empty() && otherwise) {
    return *otherwise;
  }
  const auto value = parse_decimal(cell(column));
  if (!value || std::trunc(*value) != *value || *value < least || *value > most) {
    refuse(column, fmt::format("a whole number from {} to {}", least, most));
    return least;
  }
  return static_cast<int>(*value);
}

std::optional<Date> EntryRow::maybe_day(EntryColumn column) const {
  return cell(column).empty() ? std::nullopt : std::optional(day(column));
}

Date EntryRow::day(EntryColumn column) const {
  const auto range = parse_date_range(without_clock(cell(column)));
  if (!range || range->first != range->last) {
    refuse(column, "a day: 2026-03-01 (03/11/2025 may be March or November)");
    return {};
  }
  return range->first;
}

std::string EntryRow::text(EntryColumn column) const {
  const std::string_view whole = cells_.at(index(column));
  if (std::any_of(whole.begin(), whole.end(), is_control)) {
    refuse(column, "text without control characters");
  }
  return cell(column).empty() ? std::string{} : std::string(whole);
}

std::string EntryRow::needed_text(EntryColumn column) const {
  if (cell(column).empty()) {
    refuse(column, "a name");
  }
  return text(column);
}

std::size_t EntryRow::word(EntryColumn column,
                           std::span<const std::string_view> allowed,
                           std::optional<std::size_t> otherwise) const {
  if (cell(column).empty() && otherwise) {
    return *otherwise;
  }
  std::string word = lower_case(cell(column));
  std::replace(word.begin(), word.end(), ' ', '_');
  std::replace(word.begin(), word.end(), '-', '_');
  const auto at = std::find(allowed.begin(), allowed.end(), word);
  if (at == allowed.end()) {
    refuse(column, fmt::format("one of: {}", fmt::join(allowed, ", ")));
    return 0;
  }
  return static_cast<std::size_t>(at - allowed.begin());
}

void EntryRow::refuse(EntryColumn column, std::string expected) const {
  refuse(column,
         cell(column).empty() ? fmt::format("{} is empty", name_of(column))
                              : fmt::format("{} is \"{}\"", name_of(column), cell(column)),
         std::move(expected));
}

void EntryRow::refuse(EntryColumn column, std::string found, std::string expected) const {
  faults_.push_back({Severity::warning,
                     std::string(where_),
                     line_,
                     place(column),
                     std::move(found),
                     std::move(expected),
                     ""});
}

} // namespace nightsow::planner
