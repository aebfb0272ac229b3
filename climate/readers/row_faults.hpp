#pragma once

#include "climate/readers/readings.hpp"

#include <cstddef>
#include <functional>
#include <set>
#include <string>
#include <string_view>

namespace nightsow::climate {

/// So many faults of rows are listed; more are only counted, lest a file of another kind fill the
/// memory with complaints.
inline constexpr std::size_t most_faults_listed = 1000;

/// Lists a fault of one row as a warning, with its place. Remember to count the row in
/// `rows_faulty`.
void report_fault(Readings& readings,
                  std::size_t line,
                  std::size_t column,
                  std::string found,
                  std::string expected,
                  std::string remedy);

/// Adds a note that is no fault of a row.
void add_note(Readings& readings, std::string found, std::string remedy);

/// Sees to it that a file is of one station.
class OneStation {
public:
  /// Quick for the id that came first.
  void meet(std::string_view id) {
    if (id != first_ || !met_) {
      meet_other(id);
    }
  }

  /// The first id; empty when there was none.
  [[nodiscard]] const std::string& id() const { return first_; }

  /// Throws InputError, with the ids listed, when there was more than one. Blank ids do not count.
  void refuse_several(std::string_view file) const;

  /// Whether so many stations were met that reading on is in vain.
  [[nodiscard]] bool hopeless() const;

private:
  void meet_other(std::string_view id);

  std::string first_;
  bool met_ = false;
  std::set<std::string, std::less<>> others_;
};

} // namespace nightsow::climate
