#pragma once

#include "climate/readers/readings.hpp"

#include <string_view>

namespace nightsow::climate {

/// Reads a weather file of any known format. The content decides which, never the file's name.
/// `name` is used in messages only. Rows that cannot be read are listed in `problems`, the rest is
/// used.
///
/// `station` is the id or the name of the station wanted, for files that hold several; empty asks
/// for the only one.
/// Throws InputError when no format fits (the message shows the first lines as understood and says
/// what is missing), when not one row could be read, when several stations are in the file and none
/// of them was asked for (the message lists them), and when the one asked for is not.
[[nodiscard]] Readings read_readings(std::string_view text,
                                     std::string_view name,
                                     std::string_view station = {});

} // namespace nightsow::climate
