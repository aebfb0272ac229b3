#pragma once

#include "climate/base/json_node.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::species_rules {

// How the objects of this folder's files are read: every fault of a file is wanted, so what can be
// read beside a fault is read.

/// Every key that is not known goes to `faults`; the nearest known one is suggested. Throws
/// InputError where this is no object; `form` says what was expected.
void note_unknown_keys(const JsonNode& object,
                       std::string_view form,
                       const std::vector<std::string>& known,
                       std::vector<Problem>& faults);

/// The member; null is a value. Throws InputError where it is absent; `form` says what belongs
/// there.
[[nodiscard]] JsonNode required(const JsonNode& object,
                                std::string_view key,
                                std::string_view form);

/// A file of another schema than 1, or of none, is a fault.
void check_schema(const JsonNode& file, std::vector<Problem>& faults);

} // namespace nightsow::species_rules
