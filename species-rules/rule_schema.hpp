#pragma once

#include <string>

namespace nightsow::species_rules {

/// The form of a rule file as JSON Schema 2020-12, made from the one table of fields
/// (rule_fields.hpp) and the words of its choices, so that editors and other programs check what we
/// check. The schema itself is that of a grower's file; its `#/$defs/catalogue_file` asks for what
/// the catalogue's own files must give besides. `species-rules/rule.schema.json` is this text; a
/// test holds the two together.
[[nodiscard]] std::string rule_schema();

} // namespace nightsow::species_rules
