#pragma once

#include "climate/archive/fetch.hpp"

#include <string_view>

namespace nightsow::climate {

/// Whether what came is what was asked for, before it is put in place. Throws InputError, naming
/// the address: a web page in place of data, JSON without the two temperatures, a table without
/// them, a text that ends in the middle of a line.
void check_content(const PlannedFetch& plan, std::string_view text);

} // namespace nightsow::climate
