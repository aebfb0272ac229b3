#pragma once

#include <span>
#include <string_view>

namespace nightsow::species_rules {

/// One file of the catalogue, as it stood when the program was built.
struct EmbeddedFile {
  std::string_view name; ///< file name without folder, such as "Iridaceae.json"
  std::string_view text; ///< all of it: UTF-8, lines ended by a line feed
};

/// The files of species-rules/catalogue, in the order of their names; they live as long as the
/// program.
[[nodiscard]] std::span<const EmbeddedFile> embedded_catalogue();

} // namespace nightsow::species_rules
