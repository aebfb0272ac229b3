#include "planner/render/whatif_csv.hpp"

#include <fmt/format.h>

#include <optional>
#include <string_view>
#include <vector>

namespace nightsow::planner {

namespace {

using Fields = std::vector<std::string>;

std::string quoted(std::string_view field) {
  if (field.find_first_of(",\"\r\n") == std::string_view::npos) {
    return std::string(field);
  }
  std::string text = "\"";
  for (const char letter : field) {
    text += letter == '"' ? "\"\"" : std::string(1, letter);
  }
  return text + '"';
}

std::string row_text(const Fields& fields) {
  std::string text;
  for (const std::string& field : fields) {
    text += (text.empty() ? "" : ",") + quoted(field);
  }
  return text + '\n';
}

std::string field_of(const std::optional<Date>& day) {
  return day ? format_iso_date(*day) : "";
}

template <class Number> std::string field_of(const std::optional<Number>& number) {
  return number ? fmt::format("{}", *number) : "";
}

void add_side_header(Fields& fields, std::string_view ending) {
  for (const std::string_view name : {"side",
                                      "first_water_p10",
                                      "first_water_p50",
                                      "first_water_p90",
                                      "never",
                                      "latest",
                                      "plants"}) {
    fields.push_back(fmt::format("{}{}", name, ending));
  }
}

void add_side(Fields& fields, const WhatIfSide& side) {
  const bool there = !side.list.empty();
  fields.emplace_back(name_of(side_of(side)));
  fields.push_back(field_of(side.expected.p10));
  fields.push_back(field_of(side.expected.p50));
  fields.push_back(field_of(side.expected.p90));
  fields.push_back(there ? fmt::format("{}", side.expected.never) : "");
  fields.push_back(field_of(side.no_later_than));
  fields.push_back(field_of(side.plants));
}

} // namespace

std::string whatif_csv(const WhatIfAnswer& answer) {
  Fields header{"packet", "taxon", "differs", "moved_days", "plants_change"};
  add_side_header(header, "_before");
  add_side_header(header, "_after");
  std::string text = row_text(header);
  for (const WhatIfLine& line : answer.lines) {
    Fields fields{line.packet,
                  line.taxon,
                  line.differs ? "yes" : "no",
                  field_of(line.moved_days),
                  field_of(line.plants_change)};
    add_side(fields, line.before);
    add_side(fields, line.after);
    text += row_text(fields);
  }
  return text;
}

std::string sweep_csv(const SweepAnswer& answer) {
  Fields header{"warmer_k", "packet", "taxon"};
  add_side_header(header, "");
  std::string text = row_text(header);
  for (const SweepRow& row : answer.rows) {
    for (const SweepLine& line : row.lines) {
      Fields fields{fmt::format("{}", row.warmer_k), line.packet, line.taxon};
      add_side(fields, line.side);
      text += row_text(fields);
    }
  }
  return text;
}

} // namespace nightsow::planner
