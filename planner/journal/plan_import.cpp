#include "planner/journal/plan_import.hpp"

#include "planner/garden/plain_text.hpp"
#include "planner/journal/entry_csv.hpp"
#include "planner/journal/row_order.hpp"
#include "planner/journal/undone_marks.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <deque>
#include <map>
#include <optional>
#include <set>
#include <unordered_map>
#include <utility>

namespace nightsow::planner {

namespace {

std::string said_by(const EntryValue& value) {
  std::string said;
  for (const std::string& cell : told_cells(value)) {
    said += cell;
    said += '\x1f';
  }
  return said;
}

class Import {
public:
  Import(const EntryTable& table,
         std::string_view where,
         const std::vector<Entry>& there,
         const std::vector<Packet>& packets,
         Date today)
      : table_(table), where_(where), packets_(packets), today_(today),
        numbered_(all_numbered(table.entries)), keep_numbers_(there.empty() && numbered_) {
    for (const Entry& entry : there) {
      unmatched_[said_by(entry.value)].push_back(entry.id);
      take_note(entry);
    }
    plan_.faults = table.faults;
    plan_.faulty_rows = table.faulty_lines.size();
  }

  PlannedImport plan() {
    for (const WrittenEntry* row : in_order(table_.entries, numbered_)) {
      const std::size_t faults = plan_.faults.size();
      Entry entry = entry_of(*row);
      if (plan_.faults.size() == faults) {
        take(*row, std::move(entry));
      } else {
        ++plan_.faulty_rows;
        bad_keys_.insert(row->key);
      }
    }
    undo_what_is_said_to_be();
    sort_by_line();
    return std::move(plan_);
  }

private:
  /// The row with all that it belongs to.
  Entry entry_of(const WrittenEntry& row) {
    Entry entry;
    entry.value = row.value;
    entry.entered_at = row.entered_at;
    if (!row.key.empty() && keys_.contains(row.key)) {
      refuse(row, 0, fmt::format("entry \"{}\" stands in an earlier row", row.key), "another one");
    }
    if (day_of(row.value) > today_) {
      refuse(row,
             0,
             fmt::format("{} is after today, {}",
                         format_iso_date(day_of(row.value)),
                         format_iso_date(today_)),
             "a day up to today");
    }
    std::visit([&](auto& told) { settle(row, told); }, entry.value);
    entry.on = day_of(entry.value);
    return entry;
  }

  void settle(const WrittenEntry& row, RecordedSowing& sowing) const {
    if (row.has_copy) {
      return;
    }
    const Packet written = sowing.packet;
    const auto packet = std::find_if(packets_.begin(), packets_.end(), [&](const Packet& one) {
      return !sowing.packet_id.empty() && one.id == sowing.packet_id;
    });
    if (packet != packets_.end()) {
      sowing.packet = *packet;
    }
    sowing.packet.id = sowing.packet_id;
    sowing.packet.taxon = sowing.taxon;
    if (written.harvested) {
      sowing.packet.harvested = written.harvested;
      sowing.packet.harvest_guessed = false;
    }
    if (!written.stored.empty()) {
      sowing.packet.stored = written.stored;
    }
  }

  void settle(const WrittenEntry& row, Undo& undo) {
    const auto undone = entry_named(row);
    if (!undone) {
      return;
    }
    if (marks_.is_undone(*undone) && !is_known(Undo{0, *undone, undo.on})) {
      refuse(row, row.belongs_at, "that entry is undone already", "an entry that counts");
    }
    undo.undone = *undone;
  }

  static void settle(const WrittenEntry& /*row*/, PacketTest& /*test*/) {}

  static void settle(const WrittenEntry& /*row*/, PacketUse& /*use*/) {}

  void settle(const WrittenEntry& row, Note& note) {
    if (!row.belongs_to.empty() || !row.taxon.empty()) {
      EntryId sowing = 0;
      find_sowing(row, note.on, sowing);
      note.sowing = sowing;
    }
  }

  // What is done with pots.
  template <typename Told>

  requires requires(Told told) { told.sowing; }

  void settle(const WrittenEntry& row, Told& told) {
    const std::size_t faults = plan_.faults.size();
    find_sowing(row, told.on, told.sowing);
    // What does not count, or is there already, changes nothing.
    if (plan_.faults.size() == faults && !row.undone && !is_known(told)) {
      check_closed(row, told);
    }
  }

  /// What closed that sowing, of what counts.
  [[nodiscard]] const Closing* closing_of(EntryId sowing) const {
    const auto [first, last] = closings_.equal_range(sowing);
    const auto found =
        std::find_if(first, last, [&](const auto& closing) { return counts(closing.second.id); });
    return found == last ? nullptr : &found->second;
  }

  [[nodiscard]] bool counts(EntryId id) const {
    return !marks_.is_undone(id) &&
           std::find(said_undone_.begin(), said_undone_.end(), id) == said_undone_.end();
  }

  // As when it is typed: a closed sowing stands as on the day of its closing.
  template <typename Told> void check_closed(const WrittenEntry& row, const Told& told) {
    const Closing* const closing = closing_of(told.sowing);
    if (closing != nullptr && closing->on < told.on) {
      refuse(row,
             0,
             fmt::format("{} is after its sowing was closed, {}",
                         format_iso_date(told.on),
                         format_iso_date(closing->on)),
             fmt::format("a day up to {}", format_iso_date(closing->on)),
             "correct the day, or undo the closing first");
    }
  }

  void check_closed(const WrittenEntry& row, const Closing& told) {
    if (const Closing* const closing = closing_of(told.sowing)) {
      refuse(row,
             0,
             fmt::format("its sowing is closed already, since {}", format_iso_date(closing->on)),
             "a sowing that is looked after",
             "leave the row out, or undo that closing first");
    }
    const auto [first, last] = told_of_.equal_range(told.sowing);
    for (auto one = first; one != last; ++one) {
      const EntryId id = one->second;
      if (days_.at(id) > told.on && counts(id)) {
        refuse(row,
               0,
               fmt::format("something is told of its sowing on {}, after {}",
                           format_iso_date(days_.at(id)),
                           format_iso_date(told.on)),
               "that day or later",
               "correct the day of the closing");
        return;
      }
    }
  }

  /// What `undoes` names.
  std::optional<EntryId> entry_named(const WrittenEntry& row) {
    if (const auto key = keys_.find(row.belongs_to); key != keys_.end()) {
      return key->second;
    }
    const auto number = number_in(row.belongs_to);
    if (number && !is_bad(row.belongs_to) && days_.contains(*number)) {
      return number;
    }
    refuse(row,
           row.belongs_at,
           fmt::format("there is no entry \"{}\" before it", row.belongs_to),
           "the entry of a row, or its number in the journal");
    return std::nullopt;
  }

  void find_sowing(const WrittenEntry& row, Date on, EntryId& sowing) {
    const auto found = sowing_named(row, on);
    if (!found) {
      return;
    }
    sowing = *found;
    const RecordedSowing& sown = sowings_.at(sowing);
    if (on < sown.on) {
      refuse(row,
             0,
             fmt::format("{} is before its sowing was sown", format_iso_date(on)),
             fmt::format("{} or later", format_iso_date(sown.on)));
    }
    check_told(row, "taxon", row.taxon, sown.taxon);
    check_told(row, "packet", row.packet, sown.packet_id);
  }

  void check_told(const WrittenEntry& row,
                  std::string_view what,
                  const std::string& told,
                  const std::string& right) {
    if (!told.empty() && lower_case(told) != lower_case(right)) {
      refuse(row,
             row.belongs_at,
             fmt::format("the {} is \"{}\", that of its sowing \"{}\"", what, told, right),
             "the same, or an empty cell");
    }
  }

  std::optional<EntryId> sowing_named(const WrittenEntry& row, Date on) {
    if (const auto key = keys_.find(row.belongs_to); key != keys_.end()) {
      return known_sowing(row, key->second);
    }
    if (is_bad(row.belongs_to)) {
      refuse(row,
             row.belongs_at,
             fmt::format("its sowing \"{}\" cannot be taken", row.belongs_to),
             "a sowing in a sound row");
      return std::nullopt;
    }
    if (const auto number = number_in(row.belongs_to)) {
      return known_sowing(row, *number);
    }
    const std::string& name = !row.belongs_to.empty() ? row.belongs_to
                              : !row.packet.empty()   ? row.packet
                                                      : row.taxon;
    return sowing_called(row, name, on);
  }

  std::optional<EntryId> known_sowing(const WrittenEntry& row, EntryId id) {
    if (sowings_.contains(id)) {
      return id;
    }
    refuse(row,
           row.belongs_at,
           fmt::format("there is no sowing \"{}\" before it", row.belongs_to),
           "the entry of its sowing, or its packet or taxon");
    return std::nullopt;
  }

  /// By packet or taxon, among those sown by then that count.
  std::optional<EntryId> sowing_called(const WrittenEntry& row, const std::string& name, Date on) {
    std::vector<EntryId> found;
    if (const auto at = called_.find(lower_case(name)); at != called_.end()) {
      std::copy_if(at->second.begin(),
                   at->second.end(),
                   std::back_inserter(found),
                   [&](EntryId id) { return sowings_.at(id).on <= on && !marks_.is_undone(id); });
    }
    if (found.size() == 1) {
      return found.front();
    }
    refuse(row,
           row.belongs_at,
           found.empty() ? fmt::format("no sowing is called \"{}\" by then", name)
                         : fmt::format("{} sowings are called \"{}\"", found.size(), name),
           found.empty() ? "the entry of its sowing, or its packet or taxon"
                         : fmt::format("the entry of one: {}", fmt::join(found, ", ")));
    return std::nullopt;
  }

  [[nodiscard]] bool is_bad(const std::string& key) const {
    return bad_keys_.contains(key) ||
           std::find(table_.faulty_keys.begin(), table_.faulty_keys.end(), key) !=
               table_.faulty_keys.end();
  }

  [[nodiscard]] bool is_known(const EntryValue& value) const {
    const auto at = unmatched_.find(said_by(value));
    return at != unmatched_.end() && !at->second.empty();
  }

  void take(const WrittenEntry& row, Entry entry) {
    const auto same = unmatched_.find(said_by(entry.value));
    if (same != unmatched_.end() && !same->second.empty()) {
      entry.id = same->second.front();
      same->second.pop_front();
      plan_.known.push_back({row.line, entry.id, marks_.is_undone(entry.id)});
    } else {
      entry.id = keep_numbers_ ? *number_in(row.key) : next_;
      give_id(entry.value, entry.id);
      take_note(entry);
      if (row.undone) {
        said_undone_.push_back(entry.id);
      }
      plan_.entries.push_back(entry);
    }
    if (!row.key.empty()) {
      keys_[row.key] = entry.id;
    }
  }

  static void give_id(EntryValue& value, EntryId id) {
    std::visit([id](auto& told) { told.id = id; }, value);
  }

  void take_note(const Entry& entry) {
    next_ = std::max(next_, entry.id + 1);
    days_[entry.id] = entry.on;
    if (const auto* undo = std::get_if<Undo>(&entry.value)) {
      marks_.undo(entry.id, undo->undone);
    }
    if (const auto* closing = std::get_if<Closing>(&entry.value)) {
      closings_.emplace(closing->sowing, *closing);
    } else if (const auto sowing = sowing_of(entry.value)) {
      told_of_.emplace(*sowing, entry.id);
    }
    if (const auto* sowing = std::get_if<RecordedSowing>(&entry.value)) {
      sowings_[entry.id] = *sowing;
      called_[lower_case(sowing->taxon)].push_back(entry.id);
      if (!sowing->packet_id.empty()) {
        called_[lower_case(sowing->packet_id)].push_back(entry.id);
      }
    }
  }

  // Only of what is new: what the journal has already is as the journal has it.
  void undo_what_is_said_to_be() {
    for (const EntryId id : said_undone_) {
      if (!marks_.is_undone(id)) {
        Entry entry;
        entry.id = next_;
        entry.on = today_;
        entry.value = Undo{next_, id, today_};
        take_note(entry);
        plan_.entries.push_back(std::move(entry));
      }
    }
  }

  void sort_by_line() {
    const auto by_line = [](const auto& one, const auto& other) { return one.line < other.line; };
    std::stable_sort(plan_.faults.begin(), plan_.faults.end(), by_line);
    std::stable_sort(plan_.known.begin(), plan_.known.end(), by_line);
  }

  void refuse(const WrittenEntry& row,
              std::size_t column,
              std::string found,
              std::string expected,
              std::string remedy = "") {
    plan_.faults.push_back({Severity::warning,
                            std::string(where_),
                            row.line,
                            column,
                            std::move(found),
                            std::move(expected),
                            std::move(remedy)});
  }

  const EntryTable& table_;
  std::string_view where_;
  const std::vector<Packet>& packets_;
  Date today_;
  bool numbered_;
  bool keep_numbers_;
  EntryId next_ = 1;
  std::unordered_map<std::string, std::deque<EntryId>> unmatched_; ///< by what they say
  std::unordered_map<std::string, EntryId> keys_;                  ///< of rows that were taken
  std::set<std::string> bad_keys_;
  std::unordered_map<EntryId, Date> days_;
  std::map<EntryId, RecordedSowing> sowings_;
  std::unordered_map<std::string, std::vector<EntryId>> called_;
  std::multimap<EntryId, Closing> closings_; ///< by sowing
  std::multimap<EntryId, EntryId> told_of_;  ///< by sowing: all else that is told of it
  std::vector<EntryId> said_undone_;         ///< of what is new
  UndoneMarks marks_;
  PlannedImport plan_;
};

} // namespace

PlannedImport plan_import(const EntryTable& table,
                          std::string_view where,
                          const std::vector<Entry>& there,
                          const std::vector<Packet>& packets,
                          Date today) {
  return Import{table, where, there, packets, today}.plan();
}

} // namespace nightsow::planner
