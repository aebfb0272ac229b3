#include "planner/garden/packet_columns.hpp"

#include "planner/garden/loose_header.hpp"
#include "planner/garden/packet_values.hpp"
#include "planner/garden/store_stages.hpp"

#include <fmt/format.h>

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

void require_columns(const LooseHeader& found, const CsvReader& header, std::string_view where) {
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (columns.at(i).required && !found.has(i)) {
      throw InputError(
          {Severity::error,
           std::string(where),
           header.line(),
           1,
           fmt::format("the header has no column {}", columns.at(i).name),
           "at least the columns taxon and seeds, separated by comma, semicolon or tab",
           fmt::format("the first line should look like: {}", "taxon,seeds,harvested,received")});
    }
  }
}

} // namespace

std::span<const PacketColumn> packet_columns() {
  return columns;
}

MatchedHeader match_header(const CsvReader& header, std::string_view where) {
  std::vector<ColumnName> names;
  names.reserve(columns.size());
  for (const PacketColumn& column : columns) {
    names.push_back({column.name, column.also});
  }
  LooseHeader found = match_names(header, names, where);
  require_columns(found, header, where);
  MatchedHeader matched;
  matched.problems = std::move(found.problems);
  for (const auto& column : found.columns) {
    matched.columns.push_back(column ? &columns.at(*column) : nullptr);
  }
  return matched;
}

} // namespace nightsow::planner
