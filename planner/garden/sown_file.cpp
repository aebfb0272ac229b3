#include "planner/garden/sown_file.hpp"

#include "climate/base/csv.hpp"
#include "climate/base/nearest_name.hpp"
#include "planner/garden/date_range.hpp"
#include "planner/garden/packet_values.hpp"
#include "planner/garden/plain_text.hpp"
#include "planner/garden/table_text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

namespace nightsow::planner {

namespace {

enum class SownColumn { packet, taxon, seeds, sown_on, bench, watered_on, pots };

struct ColumnNames {
  SownColumn column;
  std::string_view name;
  std::string_view also; ///< without blanks and signs, a blank on either side of each
};

constexpr std::array<ColumnNames, 7> columns{{
    {SownColumn::packet, "packet", " packet id packetid packetno lot "},
    {SownColumn::taxon, "taxon", " taxon species name plant plantname botanicalname "},
    {SownColumn::seeds, "seeds", " seeds seed noofseeds numberofseeds count qty quantity "},
    {SownColumn::sown_on,
     "sown_on",
     " sownon sown sowndate datesown date sowed sowedon sowingdate "},
    {SownColumn::bench, "bench", " bench benchname place "},
    {SownColumn::watered_on,
     "watered_on",
     " wateredon watered firstwater firstwatered datewatered water "},
    {SownColumn::pots, "pots", " pots pot noofpots numberofpots "},
}};

std::string bare(std::string_view name) {
  std::string result = slug(name);
  std::erase(result, '-');
  return result;
}

/// Where each column stands in the rows; empty: it is not there.
using Places = std::array<std::optional<std::size_t>, columns.size()>;

class SownRows {
public:
  SownRows(std::string_view where,
           const std::vector<Packet>& packets,
           std::span<const std::string> benches,
           SownFile& file)
      : where_(where), packets_(packets), benches_(benches), file_(file) {}

  void read_header(const CsvReader& header) {
    for (std::size_t i = 0; i < header.fields().size(); ++i) {
      const std::string name = bare(header.fields()[i]);
      const auto* column = std::find_if(columns.begin(), columns.end(), [&](const auto& one) {
        return !name.empty() && one.also.find(' ' + name + ' ') != std::string_view::npos;
      });
      if (column == columns.end()) {
        report(Severity::note,
               header.line(),
               header.column(i),
               fmt::format("column \"{}\" is not used", trimmed(header.fields()[i])),
               "",
               "");
      } else if (auto& place = places_.at(index(column->column)); !place) {
        place = i;
      }
    }
    const bool named = place(SownColumn::packet) || place(SownColumn::taxon);
    if (!named || !place(SownColumn::seeds) || !place(SownColumn::sown_on)) {
      throw InputError({Severity::error,
                        std::string(where_),
                        header.line(),
                        1,
                        "the header lacks a column that is needed",
                        "packet or taxon, seeds, sown_on; also bench, watered_on, pots",
                        "name the columns so"});
    }
  }

  void read(const CsvReader& row) {
    const auto cells = row.fields();
    if (std::all_of(cells.begin(), cells.end(), [](auto cell) { return trimmed(cell).empty(); })) {
      return;
    }
    RecordedSowing sowing;
    sowing.id = -static_cast<EntryId>(row.line());
    if (set_packet(row, sowing) && set_needed(row, sowing)) {
      set_others(row, sowing);
      file_.sowings.push_back(std::move(sowing));
    }
  }

private:
  static std::size_t index(SownColumn column) { return static_cast<std::size_t>(column); }

  [[nodiscard]] std::optional<std::size_t> place(SownColumn column) const {
    return places_.at(index(column));
  }

  [[nodiscard]] std::string_view cell(const CsvReader& row, SownColumn column) const {
    const auto at = place(column);
    return at && *at < row.fields().size() ? trimmed(row.fields()[*at]) : std::string_view{};
  }

  bool set_packet(const CsvReader& row, RecordedSowing& sowing) {
    const std::string_view id = cell(row, SownColumn::packet);
    const std::string_view taxon = cell(row, SownColumn::taxon);
    if (!id.empty()) {
      const auto packet = std::find_if(packets_.begin(), packets_.end(), [&](const Packet& one) {
        return lower_case(one.id) == lower_case(id);
      });
      if (packet != packets_.end()) {
        take(*packet, sowing);
        return true;
      }
      if (taxon.empty()) {
        leave_out(row, SownColumn::packet, "the id of a row in packets.csv");
        return false;
      }
    }
    if (taxon.empty()) {
      leave_out(row, SownColumn::taxon, "a packet or a taxon");
      return false;
    }
    const auto same = [&](const Packet& one) { return slug(one.taxon) == slug(taxon); };
    const auto packet = std::find_if(packets_.begin(), packets_.end(), same);
    if (id.empty() && std::count_if(packets_.begin(), packets_.end(), same) == 1) {
      take(*packet, sowing);
      return true;
    }
    sowing.taxon = taxon;
    sowing.packet.taxon = taxon;
    report(Severity::note,
           row.line(),
           1,
           fmt::format("which packet of {} was sown is not said", taxon),
           "",
           "it takes no seeds off any; write the packet's id into column packet");
    return true;
  }

  static void take(const Packet& packet, RecordedSowing& sowing) {
    sowing.packet_id = packet.id;
    sowing.taxon = packet.taxon;
    sowing.bench = packet.bench;
    sowing.packet = packet;
  }

  bool set_needed(const CsvReader& row, RecordedSowing& sowing) {
    const auto seeds = parse_positive(cell(row, SownColumn::seeds));
    if (!seeds) {
      leave_out(row, SownColumn::seeds, "a whole number from 1 on");
      return false;
    }
    const auto day = day_in(cell(row, SownColumn::sown_on));
    if (!day) {
      leave_out(row, SownColumn::sown_on, "a day such as 2026-04-12");
      return false;
    }
    sowing.seeds = *seeds;
    sowing.on = *day;
    return true;
  }

  void set_others(const CsvReader& row, RecordedSowing& sowing) {
    if (const auto watered = cell(row, SownColumn::watered_on); !watered.empty()) {
      sowing.first_water = day_in(watered);
      if (!sowing.first_water || *sowing.first_water < sowing.on) {
        sowing.first_water.reset();
        pass_over(row, SownColumn::watered_on, "a day on or after sown_on, or nothing");
      }
    }
    if (const auto pots = cell(row, SownColumn::pots); !pots.empty()) {
      const auto number = parse_positive(pots);
      sowing.pots = number.value_or(1);
      if (!number) {
        pass_over(row, SownColumn::pots, "a whole number from 1 on");
      }
    }
    if (const auto bench = cell(row, SownColumn::bench); !bench.empty()) {
      const auto nearest = nearest_name(bench, benches_);
      if (nearest && nearest->distance == 0) {
        sowing.bench = nearest->name;
      } else {
        pass_over(row, SownColumn::bench, fmt::format("one of: {}", fmt::join(benches_, ", ")));
      }
    }
  }

  static std::optional<Date> day_in(std::string_view text) {
    const auto range = parse_date_range(text);
    return range && range->first == range->last ? std::optional{range->first} : std::nullopt;
  }

  void leave_out(const CsvReader& row, SownColumn column, std::string expected) {
    fault(row, column, std::move(expected), "the row is left out until it is corrected");
  }

  void pass_over(const CsvReader& row, SownColumn column, std::string expected) {
    fault(row, column, std::move(expected), "it counts as not given until it is corrected");
  }

  void fault(const CsvReader& row, SownColumn column, std::string expected, std::string remedy) {
    const std::string_view found = cell(row, column);
    const std::string_view name = columns.at(index(column)).name;
    const auto at = place(column);
    report(Severity::warning,
           row.line(),
           at && *at < row.fields().size() ? row.column(*at) : 0,
           found.empty() ? fmt::format("{} is empty", name)
                         : fmt::format("{} is \"{}\"", name, found),
           std::move(expected),
           std::move(remedy));
  }

  void report(Severity severity,
              std::size_t line,
              std::size_t column,
              std::string found,
              std::string expected,
              std::string remedy) {
    file_.problems.push_back({severity,
                              std::string(where_),
                              line,
                              column,
                              std::move(found),
                              std::move(expected),
                              std::move(remedy)});
  }

  std::string_view where_;
  const std::vector<Packet>& packets_;
  std::span<const std::string> benches_;
  SownFile& file_;
  Places places_{};
};

} // namespace

SownFile read_sown_file(std::string_view text,
                        std::string_view where,
                        const std::vector<Packet>& packets,
                        std::span<const std::string> benches) {
  SownFile file;
  const TableText table = table_text_of(text, where, file.problems);
  CsvReader rows{table.text, table.separator, where};
  if (!rows.next()) {
    refuse_empty_table(where);
  }
  SownRows reader{where, packets, benches, file};
  reader.read_header(rows);
  while (rows.next()) {
    reader.read(rows);
  }
  std::stable_sort(file.sowings.begin(),
                   file.sowings.end(),
                   [](const RecordedSowing& a, const RecordedSowing& b) { return a.on < b.on; });
  return file;
}

} // namespace nightsow::planner
