#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plan_lines.hpp"
#include "planner/render/table.hpp"
#include "planner/render/task_words.hpp"
#include "planner/render/text_parts.hpp"
#include "planner/render/work.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace nightsow::planner {

namespace {

// "11 Apr", "11 Apr-25 Apr".
std::string sow_cell(const Lot& lot, Date today) {
  const std::string first = day_text(lot.sow_on, today);
  return lot.sow_on == lot.sown_by ? first : range_text(lot.sow_on, lot.sown_by);
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
                     sow_cell(lot, answer.today),
                     lot.waters ? day_text(*lot.waters, answer.today) : "no date"},
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
                     entry_title(entry),
                     entry_trays(entry, answer.lots)},
                    std::move(below)});
    last = entry.on;
  }
  const std::vector<Column> columns{{"Day"}, {"Work"}, {"Trays"}};
  return '\n' + heading_text("Work day by day", style) + table_text(columns, rows, style);
}

// What stands in no tray, and why.
std::string no_day_text(const PlanAnswer& answer, const TextStyle& style) {
  std::string room;
  std::string unknown;
  for (const LotPacket& packet : answer.no_day) {
    const auto& left_over =
        answer.free_days ? answer.free_days->packets_left_over : std::vector<std::string>{};
    const bool left =
        std::find(left_over.begin(), left_over.end(), packet.packet) != left_over.end();
    std::string& list = left ? room : unknown;
    list += fmt::format("{}{} {}", list.empty() ? "" : ", ", packet.packet, packet.taxon);
  }
  if (answer.no_day.empty()) {
    return {};
  }
  std::string text = '\n' + heading_text("No day yet, and so in no tray", style);
  text += room.empty() ? "" : paragraph("  Left over, for want of room: ", room);
  return text + (unknown.empty() ? "" : paragraph("  First water has no date yet: ", unknown));
}

} // namespace

std::string work_text(const PlanAnswer& answer, const TextStyle& style) {
  std::string text;
  if (!answer.lots.empty()) {
    text = trays_text(answer, style) + diary_text(answer, style);
  }
  return text + no_day_text(answer, style);
}

} // namespace nightsow::planner
