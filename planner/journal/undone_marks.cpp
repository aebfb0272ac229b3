#include "planner/journal/undone_marks.hpp"

namespace nightsow::planner {

void UndoneMarks::undo(EntryId undo, EntryId undone) {
  undos_[undo] = undone;
  bool out = true;
  for (EntryId entry = undone; true; out = !out) {
    if (out) {
      undone_.insert(entry);
    } else {
      undone_.erase(entry);
    }
    const auto next = undos_.find(entry);
    if (next == undos_.end()) {
      return;
    }
    entry = next->second;
  }
}

} // namespace nightsow::planner
