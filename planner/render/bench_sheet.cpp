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

std::string packet_row(const LotPacket& packet) {
  return row(packet.packet,
             packet.taxon,
             packet.seeds ? whole_text(*packet.seeds) : "",
             packet.pots ? fmt::format("{}", *packet.pots) : "") +
         std::string{blanks};
}

// Under each day the packets that are sown on it.
void add_packets(const std::vector<LotPacket>& packets,
                 Date today,
                 std::vector<std::string>& lines) {
  lines.push_back(row("Packet", "Taxon", "Seeds", "Pots") + "  Up on, how many");
  std::optional<Date> day;
  for (const LotPacket& packet : packets) {
    if (packet.sow_on && packet.sow_on != day) {
      lines.push_back(fmt::format("  sow {}, done ________", day_text(*packet.sow_on, today)));
      day = packet.sow_on;
    }
    lines.push_back(packet_row(packet));
  }
  lines.emplace_back();
}

std::vector<std::string> tray_lines(const Lot& lot, Date today, const TextStyle& style) {
  std::vector<std::string> lines{lot.id};
  const auto add = [&](const std::string& text) {
    for (const std::string& line : wrapped(text, sheet_width - 2)) {
      lines.push_back("  " + line);
    }
  };
  add(lot_words(lot));
  if (lot.waters) {
    add(fmt::format("{} about {}, done ________",
                    lot.carried ? "water again" : "first water",
                    day_text(*lot.waters, today)));
  }
  const std::string condition = water_condition(lot.first_water, today, style);
  if (lot.verdict != Verdict::water_now && !condition.empty()) {
    add("water when: " + condition);
  }
  lines.emplace_back();
  add_packets(lot.packets, today, lines);
  return lines;
}

std::vector<std::string> no_day_lines(const PlanAnswer& answer) {
  std::vector<std::string> lines{"No day yet: sow ________, done ________", ""};
  add_packets(answer.no_day, answer.today, lines);
  return lines;
}

/// Pages of lines, each with the same head.
class Pages {
public:
  explicit Pages(std::string head) : head_(std::move(head)), text_(head_) {}

  // What fits a page is not torn in two.
  void add(const std::vector<std::string>& lines) {
    if (used_ > head_lines && used_ + lines.size() > sheet_lines) {
      turn();
    }
    for (const std::string& line : lines) {
      if (used_ >= sheet_lines) {
        turn();
      }
      text_ += line + '\n';
      ++used_;
    }
  }

  [[nodiscard]] const std::string& text() const { return text_; }

private:
  static constexpr std::size_t head_lines = 2;

  void turn() {
    text_ += '\f' + head_;
    used_ = head_lines;
  }

  std::string head_;
  std::string text_;
  std::size_t used_ = head_lines;
};

} // namespace

std::string bench_sheet(const PlanAnswer& answer, const TextStyle& style) {
  const std::string when =
      fmt::format(", season {}, as of {}", answer.season, date_text(answer.today));
  const std::string head =
      shortened(answer.garden.name, sheet_width - columns_of(when)) + when + "\n\n";
  Pages pages{head};
  for (const Lot& lot : answer.lots) {
    pages.add(tray_lines(lot, answer.today, style));
  }
  if (!answer.no_day.empty()) {
    pages.add(no_day_lines(answer));
  }
  return pages.text();
}

} // namespace nightsow::planner
