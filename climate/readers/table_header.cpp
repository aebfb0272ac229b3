#include "climate/readers/table_header.hpp"

#include "climate/base/csv.hpp"

#include <algorithm>

namespace nightsow::climate {

namespace {

constexpr std::array separators{',', ';', '\t'};

bool in_celsius(const ColumnName& column) {
  return column.unit == TemperatureUnit::celsius;
}

// Of several columns of one kind the one in °C is taken; otherwise nobody can tell which is meant.
std::optional<std::size_t> choose(TableHeader& header, ColumnMeaning meaning) {
  std::optional<std::size_t> chosen;
  std::vector<std::string> rivals;
  for (std::size_t i = 0; i < header.columns.size(); ++i) {
    const ColumnName& column = header.columns[i];
    if (column.meaning != meaning) {
      continue;
    }
    if (!chosen || (in_celsius(column) && !in_celsius(header.columns[*chosen]))) {
      chosen = i;
      rivals.clear();
    } else if (in_celsius(column) == in_celsius(header.columns[*chosen])) {
      rivals.push_back(header.names[i]);
    }
  }
  if (!rivals.empty()) {
    header.rivals.push_back(header.names[*chosen]);
    header.rivals.insert(header.rivals.end(), rivals.begin(), rivals.end());
  }
  return chosen;
}

void choose_dates(TableHeader& header) {
  const auto year = header.column_of(ColumnMeaning::year);
  const auto month = header.column_of(ColumnMeaning::month);
  const auto day = header.column_of(ColumnMeaning::day_number);
  header.date = header.column_of(ColumnMeaning::date);
  if (!header.date && year && month && day) {
    header.year_month_day = {*year, *month, *day};
    return;
  }
  if (!header.date) {
    header.date = header.column_of(ColumnMeaning::time);
  }
  if (!header.date && !year && !month) {
    header.date = day;
  }
}

std::size_t understood(const TableHeader& header) {
  return static_cast<std::size_t>(
      std::count_if(header.columns.begin(), header.columns.end(), [](const ColumnName& column) {
        return column.meaning != ColumnMeaning::other;
      }));
}

} // namespace

std::optional<std::size_t> TableHeader::column_of(ColumnMeaning meaning) const {
  const auto found = std::find_if(columns.begin(), columns.end(), [&](const ColumnName& column) {
    return column.meaning == meaning;
  });
  if (found == columns.end()) {
    return std::nullopt;
  }
  return static_cast<std::size_t>(found - columns.begin());
}

std::vector<std::string> fields_of(std::string_view line, char separator) {
  std::vector<std::string> fields;
  if (std::count(line.begin(), line.end(), '"') % 2 != 0) {
    return fields;
  }
  CsvReader reader{line, separator, ""};
  if (reader.next()) {
    for (const std::string_view field : reader.fields()) {
      fields.emplace_back(trimmed(field));
    }
  }
  return fields;
}

TableHeader read_header(std::string_view line, std::size_t number, char separator) {
  TableHeader header;
  header.line = number;
  header.separator = separator;
  header.names = fields_of(line, separator);
  for (const std::string& name : header.names) {
    header.columns.push_back(understand_column(name));
  }
  choose_dates(header);
  header.night = choose(header, ColumnMeaning::night);
  header.day = choose(header, ColumnMeaning::day);
  return header;
}

std::optional<TableHeader> find_header(const Opening& opening) {
  for (std::size_t i = 0; i < opening.lines.size(); ++i) {
    for (const char separator : separators) {
      TableHeader header = read_header(opening.lines[i], i + 1, separator);
      if (header.complete()) {
        return header;
      }
    }
  }
  return std::nullopt;
}

TableHeader nearest_to_a_header(const Opening& opening) {
  TableHeader nearest;
  for (std::size_t i = 0; i < opening.lines.size(); ++i) {
    for (const char separator : separators) {
      TableHeader header = read_header(opening.lines[i], i + 1, separator);
      const bool first = nearest.line == 0 && !trimmed(opening.lines[i]).empty();
      // Among equals the separator that parts the line into more fields.
      const bool better =
          understood(header) > understood(nearest) ||
          (header.line == nearest.line && understood(header) == understood(nearest) &&
           header.names.size() > nearest.names.size());
      if (first || better) {
        nearest = std::move(header);
      }
    }
  }
  return nearest;
}

std::string_view separator_name(char separator) {
  switch (separator) {
  case ';':
    return "semicolon";
  case '\t':
    return "tab";
  default:
    return "comma";
  }
}

} // namespace nightsow::climate
