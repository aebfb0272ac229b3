#include "climate/readers/day_order.hpp"

#include "climate/base/problem.hpp"
#include "climate/readers/column_name.hpp"

#include <algorithm>

namespace nightsow::climate {

namespace {

constexpr int months_a_year = 12;

// The first lines that can be read in one way only, or in either; 0 when there is none.
struct Witnesses {
  std::size_t day_first = 0;
  std::size_t month_first = 0;
  std::size_t either = 0;

  [[nodiscard]] bool none() const { return day_first + month_first + either == 0; }

  void hear(const LeadingNumbers& numbers, std::size_t line) {
    std::size_t& witness = numbers.first > months_a_year    ? day_first
                           : numbers.second > months_a_year ? month_first
                                                            : either;
    witness = witness == 0 ? line : witness;
  }
};

Witnesses hear_witnesses(CsvReader& rows, std::size_t column, std::size_t header_line) {
  Witnesses witnesses;
  while (rows.next()) {
    if (rows.fields().size() <= column) {
      continue;
    }
    const std::string_view field = rows.fields()[column];
    if (const auto numbers = unordered_date(field)) {
      witnesses.hear(*numbers, rows.line() + header_line - 1);
    } else if (witnesses.none() && read_date(field, std::nullopt)) {
      break; // the usual file: dates that need no order are not read twice
    }
  }
  return witnesses;
}

std::optional<DayOrder> order_in_name(std::string_view name) {
  const std::vector<std::string> words = words_of(name);
  const auto day = std::find(words.begin(), words.end(), "dd");
  const auto month = std::find(words.begin(), words.end(), "mm");
  if (day == words.end() || month == words.end()) {
    return std::nullopt;
  }
  return day < month ? DayOrder::day_first : DayOrder::month_first;
}

[[noreturn]] void refuse_contradiction(const Witnesses& seen, std::string_view file) {
  throw InputError({Severity::error,
                    std::string(file),
                    seen.month_first,
                    0,
                    "the date can only be month/day, that of line " +
                        std::to_string(seen.day_first) + " only day/month",
                    "one order of dates in a file",
                    "write the dates as YYYY-MM-DD"});
}

[[noreturn]] void ask_for_order(const Witnesses& seen, std::string_view file) {
  throw InputError({Severity::error,
                    std::string(file),
                    seen.either,
                    0,
                    "no date of the file tells whether the day or the month comes first",
                    "dates as YYYY-MM-DD",
                    "is it day/month or month/day? Name the column 'date (dd/mm/yyyy)' or "
                    "'date (mm/dd/yyyy)'"});
}

} // namespace

FoundOrder find_day_order(CsvReader rows,
                          std::size_t column,
                          std::string_view column_name,
                          std::size_t header_line,
                          std::string_view file) {
  const Witnesses seen = hear_witnesses(rows, column, header_line);
  if (seen.none()) {
    return {};
  }
  if (seen.day_first != 0 && seen.month_first != 0) {
    refuse_contradiction(seen, file);
  }
  if (seen.day_first != 0) {
    return {DayOrder::day_first,
            "dates are day/month/year: line " + std::to_string(seen.day_first) +
                " can be read in no other way"};
  }
  if (seen.month_first != 0) {
    return {DayOrder::month_first,
            "dates are month/day/year: line " + std::to_string(seen.month_first) +
                " can be read in no other way"};
  }
  if (const auto order = order_in_name(column_name)) {
    return {order, "the order of day and month stands in the column's name"};
  }
  ask_for_order(seen, file);
}

} // namespace nightsow::climate
