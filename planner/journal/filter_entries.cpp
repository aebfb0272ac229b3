#include "planner/journal/filter_entries.hpp"

#include "planner/garden/plain_text.hpp"

#include <type_traits>
#include <unordered_set>

namespace nightsow::planner {

namespace {

/// Whether entries are wanted, each told once in the order of their numbers.
class Wanted {
public:
  explicit Wanted(const EntryFilter& filter) : filter_(filter) {}

  bool operator()(const Entry& entry) {
    bool wanted = false;
    if (const auto* undo = std::get_if<Undo>(&entry.value)) {
      wanted = about_.contains(undo->undone);
    } else {
      wanted = of_packet(entry) && of_sowing(entry);
    }
    if (wanted) {
      about_.insert(entry.id);
    }
    if (filter_.entry) {
      return entry.id == *filter_.entry;
    }
    return wanted && (!filter_.since || entry.on >= *filter_.since);
  }

private:
  [[nodiscard]] bool is_packet(const std::string& packet, const std::string& taxon) const {
    return packet == filter_.packet || lower_case(taxon).starts_with(lower_case(filter_.packet));
  }

  bool of_packet(const Entry& entry) {
    if (filter_.packet.empty()) {
      return true;
    }
    const bool own = std::visit(
        [&](const auto& told) {
          using Told = std::decay_t<decltype(told)>;
          if constexpr (std::is_same_v<Told, RecordedSowing>) {
            return is_packet(told.packet_id, told.taxon);
          } else if constexpr (std::is_same_v<Told, PacketTest> ||
                               std::is_same_v<Told, PacketUse> || std::is_same_v<Told, Note>) {
            return !told.packet_id.empty() && is_packet(told.packet_id, "");
          } else {
            return false;
          }
        },
        entry.value);
    const auto sowing = sowing_of(entry.value);
    if (own && kind_of(entry.value) == EntryKind::sowing) {
      sowings_.insert(entry.id);
    }
    return own || (sowing && sowings_.contains(*sowing));
  }

  [[nodiscard]] bool of_sowing(const Entry& entry) const {
    return !filter_.sowing || sowing_of(entry.value) == filter_.sowing;
  }

  const EntryFilter& filter_;
  std::unordered_set<EntryId> sowings_; ///< of the packet
  std::unordered_set<EntryId> about_;   ///< wanted but for their day
};

} // namespace

std::vector<Entry> filtered(const std::vector<Entry>& entries, const EntryFilter& filter) {
  std::vector<Entry> kept;
  Wanted wanted{filter};
  for (const Entry& entry : entries) {
    if (wanted(entry)) {
      kept.push_back(entry);
    }
  }
  return kept;
}

} // namespace nightsow::planner
