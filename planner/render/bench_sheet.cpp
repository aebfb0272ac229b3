#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plan_files.hpp"
#include "planner/render/table.hpp"
#include "planner/render/task_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <vector>

namespace nightsow::planner {

namespace {

constexpr std::size_t packet_columns = 8;
constexpr std::size_t taxon_columns = 30;
constexpr std::string_view blanks = "  ______ ______ ______ ______";

std::string padded(std::string_view text, std::size_t columns) {
  std::string cell = shortened(text, columns);
  cell.append(columns - std::min(columns, columns_of(cell)), ' ');
  return cell;
}

std::string row(std::string_view packet,
                std::string_view taxon,
                std::string_view seeds,
                std::string_view pots) {
  return fmt::format("{} {} {:>5} {:>4}",
                     padded(packet, packet_columns),
                     padded(taxon, taxon_columns),
                     seeds,
                     pots);
}

std::string day_or_line(const std::optional<Date>& day, Date near) {
  return day ? day_text(*day, near) : "________";
}

std::vector<std::string> tray_lines(const Lot& lot, Date today, const TextStyle& style) {
  std::vector<std::string> lines{lot.id};
  const auto add = [&](const std::string& text) {
    for (const std::string& line : wrapped(text, sheet_width - 2)) {
      lines.push_back("  " + line);
    }
  };
  add(lot_words(lot));
  add(fmt::format("sow {}, done ________; first water about {}, done ________",
                  day_or_line(lot.sow_on, today),
                  day_or_line(lot.waters, today)));
  const std::string condition = water_condition(lot.first_water, today, style);
  if (lot.verdict != Verdict::water_now && !condition.empty()) {
    add("water when: " + condition);
  }
  lines.emplace_back();
  lines.push_back(row("Packet", "Taxon", "Seeds", "Pots") + "  Up on, how many");
  for (const LotPacket& packet : lot.packets) {
    lines.push_back(row(packet.packet,
                        packet.taxon,
                        packet.seeds ? whole_text(*packet.seeds) : "",
                        packet.pots ? fmt::format("{}", *packet.pots) : "") +
                    std::string{blanks});
  }
  lines.emplace_back();
  return lines;
}

} // namespace

std::string bench_sheet(const PlanAnswer& answer, const TextStyle& style) {
  const std::string when =
      fmt::format(", season {}, as of {}", answer.season, date_text(answer.today));
  const std::string head =
      shortened(answer.garden.name, sheet_width - columns_of(when)) + when + "\n\n";
  std::string text = head;
  std::size_t used = 2;
  for (const Lot& lot : answer.lots) {
    const std::vector<std::string> lines = tray_lines(lot, answer.today, style);
    // A tray that fits a page is not torn in two.
    if (used > 2 && used + lines.size() > sheet_lines) {
      text += '\f' + head;
      used = 2;
    }
    for (const std::string& line : lines) {
      if (used >= sheet_lines) {
        text += '\f' + head;
        used = 2;
      }
      text += line + '\n';
      ++used;
    }
  }
  return text;
}

} // namespace nightsow::planner
