#include "planner/garden/packet_columns.hpp"

#include "climate/base/nearest_name.hpp"
#include "planner/garden/packet_values.hpp"
#include "planner/garden/plain_text.hpp"
#include "planner/garden/store_stages.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>
#include <utility>

namespace nightsow::planner {

namespace {

/// Stores what a parser made of a cell.
template <auto Field, auto Parse> bool read_as(Packet& packet, std::string_view cell) {
  auto value = Parse(cell);
  if (!value) {
    return false;
  }
  packet.*Field = *std::move(value);
  return true;
}

template <auto Field> bool read_text(Packet& packet, std::string_view cell) {
  packet.*Field = std::string(cell);
  return true;
}

constexpr bool required = true;
constexpr std::string_view some_text = "a text";
constexpr std::string_view some_date =
    "a year, a month or a day: 2025, 2025-11 or 2025-11-03 (03/11/2025 may be March or November)";

constexpr auto columns = std::to_array<PacketColumn>({
    {"packet", "id packetid packetno lot lotid", some_text, read_text<&Packet::id>},
    {"taxon",
     "species name plant plantname latinname botanicalname scientificname taxa",
     "the plant's name",
     read_text<&Packet::taxon>,
     required},
    {"seeds",
     "seed noofseeds nofseeds numberofseeds nrofseeds seedcount count qty quantity amount",
     "a number such as 40, ~40, 30-60 or 0.2g",
     read_as<&Packet::seeds, parse_seed_count>,
     required},
    {"harvested",
     "harvest harvestdate harvestyear dateharvested harvestedon collected datecollected seedyear",
     some_date,
     read_as<&Packet::harvested, parse_date_range>},
    {"received",
     "receivedon datereceived bought boughton datebought purchased acquired arrived",
     some_date,
     read_as<&Packet::received, parse_date_range>},
    {"stored",
     "storage store kept keptin",
     "shelf, fridge, freezer, indoors or unknown, or stages such as: shelf 22C to 2026-03-01; "
     "fridge; dry, desiccated or damp may stand beside them",
     read_as<&Packet::stored, parse_store_stages>},
    {"tested",
     "test germinationtest",
     "seeds up of seeds tried, the day and the temperature: 14/20 2026-01-10 15C",
     read_as<&Packet::tested, parse_germination_test>},
    {"bench", "benchname", some_text, read_text<&Packet::bench>},
    {"wanted_plants",
     "wanted plantswanted wantedseedlings",
     "a whole number from 1 on",
     read_as<&Packet::wanted_plants, parse_positive>},
    {"grown_in", "grownat", some_text, read_text<&Packet::grown_in>},
    {"number",
     "collectionnumber collectornumber fieldnumber",
     some_text,
     read_text<&Packet::number>},
    {"provenance", "locality origin habitat", some_text, read_text<&Packet::provenance>},
    {"irreplaceable",
     "notreplaceable",
     "yes or no",
     read_as<&Packet::irreplaceable, parse_yes_or_no>},
    {"source", "supplier seller vendor boughtfrom from", some_text, read_text<&Packet::source>},
    {"notes", "note remarks remark comments comment", some_text, read_text<&Packet::notes>},
});

// "No. of seeds" and "no_of_seeds" are one name.
std::string bare(std::string_view name) {
  std::string result = slug(name);
  std::erase(result, '-');
  return result;
}

bool has_name(const PacketColumn& column, std::string_view name) {
  return bare(column.name) == name;
}

bool has_other_name(const PacketColumn& column, std::string_view name) {
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

bool has_near_name(const PacketColumn& column, std::string_view name) {
  const std::array<std::string, 1> own{bare(column.name)};
  return nearest_name(name, own).has_value();
}

class HeaderMatcher {
public:
  HeaderMatcher(const CsvReader& header, std::string_view where) : header_(header), where_(where) {
    result_.columns.resize(header.fields().size(), nullptr);
  }

  MatchedHeader match() {
    take(has_name, false);
    take(has_other_name, true);
    take(has_near_name, true);
    report_unused();
    require_columns();
    return std::move(result_);
  }

private:
  [[nodiscard]] bool taken(const PacketColumn& column) const {
    return std::find(result_.columns.begin(), result_.columns.end(), &column) !=
           result_.columns.end();
  }

  void take(bool (*fits)(const PacketColumn&, std::string_view), bool guess) {
    for (std::size_t i = 0; i < result_.columns.size(); ++i) {
      const std::string name = bare(header_.fields()[i]);
      if (result_.columns[i] != nullptr || name.empty()) {
        continue;
      }
      const auto* column = std::find_if(columns.begin(), columns.end(), [&](const auto& candidate) {
        return !taken(candidate) && fits(candidate, name);
      });
      if (column == columns.end()) {
        continue;
      }
      result_.columns[i] = column;
      if (guess) {
        report(i,
               fmt::format("the column \"{}\" is read as {}", cell(i), column->name),
               fmt::format("rename it to {}, or to something else if it is not", column->name));
      }
    }
  }

  void report_unused() {
    for (std::size_t i = 0; i < result_.columns.size(); ++i) {
      if (result_.columns[i] == nullptr && !cell(i).empty()) {
        report(i, fmt::format("the column \"{}\" is not used", cell(i)), "");
      }
    }
  }

  void require_columns() const {
    for (const PacketColumn& column : columns) {
      if (column.required && !taken(column)) {
        throw InputError(
            {Severity::error,
             std::string(where_),
             header_.line(),
             1,
             fmt::format("the header has no column {}", column.name),
             "at least the columns taxon and seeds, separated by comma, semicolon or tab",
             fmt::format("the first line should look like: {}", "taxon,seeds,harvested,received")});
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
  std::string_view where_;
  MatchedHeader result_;
};

} // namespace

std::span<const PacketColumn> packet_columns() {
  return columns;
}

MatchedHeader match_header(const CsvReader& header, std::string_view where) {
  return HeaderMatcher{header, where}.match();
}

} // namespace nightsow::planner
