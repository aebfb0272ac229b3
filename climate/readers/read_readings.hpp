#pragma once

#include "climate/readers/readings.hpp"

#include <string_view>

namespace nightsow::climate {

/// Reads a weather file of any known format. The content decides which, never the file's name.
/// `name` is used in messages only. Rows that cannot be read are listed in `problems`, the rest is
/// used.
/// Throws InputError when no format fits (the message shows the first lines as understood and says
/// what is missing), or when not one row could be read.
[[nodiscard]] Readings read_readings(std::string_view text, std::string_view name);

} // namespace nightsow::climate
