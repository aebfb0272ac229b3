#pragma once

#include "climate/base/problem.hpp"

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::species_rules {

/// A publication, garden, society, or a grower's or seed house's note (by kind and subject only).
struct Source {
  std::string id;
  std::string kind;
  std::string author; ///< empty for growers and sellers
  std::string title;
  std::optional<int> year;
};

/// By id.
using Sources = std::map<std::string, Source, std::less<>>;

struct SourceFile {
  Sources sources;
  std::vector<Problem> faults; ///< each with line and column; a source with a fault is left out
};

/// Reads the text of sources.json. Throws InputError when it is no JSON at all, and when an id
/// stands there twice.
[[nodiscard]] SourceFile read_source_file(std::string_view text, std::string_view where);

} // namespace nightsow::species_rules
