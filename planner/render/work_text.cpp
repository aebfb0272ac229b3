#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plan_lines.hpp"
#include "planner/render/table.hpp"
#include "planner/render/task_words.hpp"
#include "planner/render/text_parts.hpp"
#include "planner/render/work.hpp"

#include <fmt/format.h>

namespace nightsow::planner {

namespace {

std::string date_cell(const std::optional<Date>& day, Date today) {
  return day ? day_text(*day, today) : "no date";
}

std::string packets_line(const Lot& lot) {
  std::string list;
  for (const LotPacket& packet : lot.packets) {
    list += fmt::format("{}{} {}", list.empty() ? "" : ", ", packet.packet, packet.taxon);
  }
  return paragraph(under_row, list);
}

std::string trays_text(const PlanAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  for (const Lot& lot : answer.lots) {
    rows.push_back({{lot.id,
                     lot.pots ? fmt::format("{}", *lot.pots) : "some",
                     lot_words(lot),
                     date_cell(lot.sow_on, answer.today),
                     date_cell(lot.waters, answer.today)},
                    packets_line(lot)});
  }
  const std::vector<Column> columns{
      {"Tray"}, {"Pots", Align::right}, {"Stands", Align::left, true}, {"Sow"}, {"First water"}};
  return '\n' + heading_text("Trays", style) + table_text(columns, rows, style);
}

std::string diary_text(const PlanAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  std::optional<Date> last;
  for (const DiaryEntry& entry : answer.diary) {
    std::string below;
    for (const std::string& sentence : entry_sentences(entry, answer.lots, style)) {
      below += paragraph(under_row, sentence);
    }
    rows.push_back({{last == entry.on ? "" : day_text(entry.on, answer.today),
                     task_title(entry.kind),
                     entry.group},
                    std::move(below)});
    last = entry.on;
  }
  const std::vector<Column> columns{{"Day"}, {"Work"}, {"Trays"}};
  return '\n' + heading_text("Work day by day", style) + table_text(columns, rows, style);
}

} // namespace

std::string work_text(const PlanAnswer& answer, const TextStyle& style) {
  return answer.lots.empty() ? "" : trays_text(answer, style) + diary_text(answer, style);
}

} // namespace nightsow::planner
