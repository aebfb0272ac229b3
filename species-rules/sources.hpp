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
  std::string author; ///< empty for growers and sellers, and where we know none
  std::string title;
  std::optional<int> year; ///< a publication has one …
  std::string undated{};   ///< … or why none is known
};

/// By id.
using Sources = std::map<std::string, Source, std::less<>>;

struct SourceFile {
  Sources sources;
  std::vector<Problem> faults; ///< each with line and column; a source with a fault is left out
};

/// Reads the text of sources.json. A publication without year, and a grower or seller by name, are
/// faults; the source itself is kept. Throws InputError when it is no JSON at all, and when an id
/// stands there twice.
[[nodiscard]] SourceFile read_source_file(std::string_view text, std::string_view where);

} // namespace nightsow::species_rules
