#pragma once

#include "species-rules/rule.hpp"

#include <string_view>

namespace nightsow::species_rules {

/// The child's rule laid over its parent's: a field that the child gives replaces the parent's,
/// remarks of the child follow those of the parent, and one that says the same replaces it; of a
/// child with `only_own_notes` the parent's notes are left out. A field that the child gives but
/// that could not be read is empty, whatever the parent says. Every value keeps its ground and
/// origin.
[[nodiscard]] Rule inherit(Rule parent, const Rule& child);

/// Whether a field stands in the file of a rule and could not be read.
[[nodiscard]] bool was_unread(const Rule& rule, std::string_view key);

/// Whether a rule gives any field or remark at all.
[[nodiscard]] bool gives_anything(const Rule& rule);

} // namespace nightsow::species_rules
