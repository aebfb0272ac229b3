#include "planner/garden/loose_header.hpp"

#include "climate/base/nearest_name.hpp"
#include "planner/garden/plain_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>
#include <utility>

namespace nightsow::planner {

namespace {

// "No. of seeds" and "no_of_seeds" are one name.
std::string bare(std::string_view name) {
  std::string result = slug(name);
  std::erase(result, '-');
  return result;
}

bool has_name(const ColumnName& column, std::string_view name) {
  return bare(column.name) == name;
}

bool has_other_name(const ColumnName& column, std::string_view name) {
  std::string_view also = column.also;
  while (!also.empty()) {
    const std::size_t end = std::min(also.find(' '), also.size());
    if (also.substr(0, end) == name) {
      return true;
    }
    also.remove_prefix(std::min(end + 1, also.size()));
  }
  return false;
}

bool has_near_name(const ColumnName& column, std::string_view name) {
  const std::array<std::string, 1> own{bare(column.name)};
  return nearest_name(name, own).has_value();
}

class Matcher {
public:
  Matcher(const CsvReader& header, std::span<const ColumnName> names, std::string_view where)
      : header_(header), names_(names), where_(where) {
    result_.columns.resize(header.fields().size());
  }

  LooseHeader match() {
    take(has_name, false);
    take(has_other_name, true);
    take(has_near_name, true);
    report_unused();
    return std::move(result_);
  }

private:
  void take(bool (*fits)(const ColumnName&, std::string_view), bool guess) {
    for (std::size_t i = 0; i < result_.columns.size(); ++i) {
      const std::string name = bare(header_.fields()[i]);
      if (!result_.columns[i] && !name.empty()) {
        take_cell(i, name, fits, guess);
      }
    }
  }

  void take_cell(std::size_t i,
                 std::string_view name,
                 bool (*fits)(const ColumnName&, std::string_view),
                 bool guess) {
    for (std::size_t k = 0; k < names_.size(); ++k) {
      if (result_.has(k) || !fits(names_[k], name)) {
        continue;
      }
      result_.columns[i] = k;
      if (guess) {
        report(i,
               fmt::format("the column \"{}\" is read as {}", cell(i), names_[k].name),
               fmt::format("rename it to {}, or to something else if it is not", names_[k].name));
      }
      return;
    }
  }

  void report_unused() {
    for (std::size_t i = 0; i < result_.columns.size(); ++i) {
      if (!result_.columns[i] && !cell(i).empty()) {
        report(i, fmt::format("the column \"{}\" is not used", cell(i)), "");
      }
    }
  }

  void report(std::size_t i, std::string found, std::string remedy) {
    result_.problems.push_back({Severity::note,
                                std::string(where_),
                                header_.line(),
                                header_.column(i),
                                std::move(found),
                                "",
                                std::move(remedy)});
  }

  [[nodiscard]] std::string_view cell(std::size_t i) const { return trimmed(header_.fields()[i]); }

  const CsvReader& header_;
  std::span<const ColumnName> names_;
  std::string_view where_;
  LooseHeader result_;
};

} // namespace

bool LooseHeader::has(std::size_t column) const {
  return std::find(columns.begin(), columns.end(), column) != columns.end();
}

LooseHeader match_names(const CsvReader& header,
                        std::span<const ColumnName> names,
                        std::string_view where) {
  return Matcher{header, names, where}.match();
}

} // namespace nightsow::planner
