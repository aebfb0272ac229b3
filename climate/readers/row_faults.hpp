#pragma once

#include "climate/readers/readings.hpp"

#include <cstddef>
#include <functional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

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

/// Refuses the whole file for what stands on a line (0: on none of its own). Throws InputError.
[[noreturn]] void refuse_file(std::string_view name,
                              std::size_t line,
                              std::string found,
                              std::string expected,
                              std::string remedy);

/// Adds a note that is no fault of a row.
void add_note(Readings& readings, std::string found, std::string remedy);

/// The value, or NaN when its quality flag is not blank: a value that its source says not to use is
/// listed as a finding.
[[nodiscard]] float unless_flagged(
    Readings& readings, float value, std::string_view quality_flag, Date date, std::size_t line);

/// Sees to it that the rows read are of one station.
class OneStation {
public:
  /// The only station there is, whatever its id.
  OneStation() = default;

  /// Of several, the one of that id or name; empty asks for the only one.
  explicit OneStation(std::string_view wanted) : wanted_(wanted) {}

  /// Whether a row of that station is to be read; blank ids belong to any. Quick for the id that
  /// came last. The name, where there is one, is for people.
  bool meet(std::string_view id, std::string_view name = {}) {
    return met_ && id == last_ ? last_is_wanted_ : meet_other(id, name);
  }

  /// The id of the rows read; empty when there was none.
  [[nodiscard]] const std::string& id() const { return id_; }

  /// Throws InputError, with the stations listed, when there was more than one and none was asked
  /// for, or when the one asked for was not among them. Blank ids do not count.
  void refuse_several(std::string_view file) const;

  /// Whether so many stations were met that reading on is in vain.
  [[nodiscard]] bool hopeless() const;

private:
  bool meet_other(std::string_view id, std::string_view name);

  std::string wanted_;
  std::string id_;
  std::string last_;
  bool met_ = false;
  bool last_is_wanted_ = true;
  std::vector<std::string> labels_; ///< "id (name)", in the file's order
  std::set<std::string, std::less<>> ids_;
};

} // namespace nightsow::climate
