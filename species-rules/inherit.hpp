#pragma once

#include "species-rules/rule.hpp"

namespace nightsow::species_rules {

/// The child's rule laid over its parent's: a field that the child gives replaces the parent's,
/// remarks of the child follow those of the parent, and one that says the same replaces it. Every
/// value keeps its ground and origin.
[[nodiscard]] Rule inherit(Rule parent, const Rule& child);

/// Whether a rule gives any field or remark at all.
[[nodiscard]] bool gives_anything(const Rule& rule);

} // namespace nightsow::species_rules
