#include "planner/answers/count_sheet.hpp"

#include <utility>

namespace nightsow::planner {

CountSheetAnswer count_sheet(const std::vector<OpenSowing>& open, Date today) {
  CountSheetAnswer answer;
  answer.today = today;
  for (const OpenSowing& one : open) {
    SheetRow row;
    row.sowing = one.sowing.id;
    row.packet = one.sowing.packet_id;
    row.taxon = one.sowing.taxon;
    row.bench = one.bench;
    row.sown = one.sowing.on;
    row.seeds = one.sowing.seeds;
    row.pots = one.sowing.pots;
    row.wetted = one.wetted();
    row.resting = one.resting();
    if (one.last_count) {
      row.last_seen = one.last_count->seen;
      row.last_on = one.last_count->on;
    }
    answer.rows.push_back(std::move(row));
  }
  return answer;
}

} // namespace nightsow::planner
