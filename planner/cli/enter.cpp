#include "planner/cli/enter.hpp"

#include "planner/cli/about_garden.hpp"
#include "planner/cli/record_ground.hpp"
#include "planner/journal/journal.hpp"
#include "planner/render/journal.hpp"

#include <algorithm>
#include <string>
#include <utility>

namespace nightsow::planner {

namespace {

const RecordedSowing* sowing_in(const Records& records, const EntryValue& value) {
  const auto id = sowing_of(value);
  const auto at = std::find_if(
      records.sowings.begin(), records.sowings.end(), [&](const RecordedSowing& sowing) {
        return id && sowing.id == *id && kind_of(value) != EntryKind::sowing;
      });
  return at == records.sowings.end() ? nullptr : &*at;
}

} // namespace

Outcome enter(const EntryValue& value, const CommonOptions& common, const Records& records) {
  const EntryId id = Journal(journal_of(common)).add(value);
  return {common.json ? entered_json(id, value)
                      : entered_text(id, value, sowing_in(records, value)),
          "",
          Ending::answered};
}

Outcome enter_all(const std::vector<EntryValue>& values,
                  const CommonOptions& common,
                  const Surroundings& around,
                  const Records& records,
                  bool tried) {
  std::vector<EnteredRow> rows;
  rows.reserve(values.size());
  for (const EntryValue& value : values) {
    const RecordedSowing* const sowing = sowing_in(records, value);
    rows.push_back({0, value, sowing == nullptr ? "" : sowing->taxon});
  }
  if (!tried && !rows.empty()) {
    Journal journal(journal_of(common));
    journal.together([&] {
      for (EnteredRow& row : rows) {
        row.id = journal.add(row.value);
      }
    });
  }
  return {common.json ? entered_rows_json(rows, tried)
                      : entered_rows_text(rows, tried, style_of(common, around)),
          "",
          Ending::answered};
}

} // namespace nightsow::planner
