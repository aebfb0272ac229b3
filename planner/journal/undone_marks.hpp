#pragma once

#include "planner/garden/records.hpp"

#include <unordered_map>
#include <unordered_set>

namespace nightsow::planner {

/// Which entries are undone while entries are added one by one. An undo that is undone brings back
/// what it took out.
class UndoneMarks {
public:
  /// The entry `undo` takes out `undone`, an earlier one that counts.
  void undo(EntryId undo, EntryId undone);

  [[nodiscard]] bool is_undone(EntryId entry) const { return undone_.contains(entry); }

private:
  std::unordered_set<EntryId> undone_;
  std::unordered_map<EntryId, EntryId> undos_; ///< what each takes out
};

} // namespace nightsow::planner
