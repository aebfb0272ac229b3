#pragma once

#include "climate/readers/reading_choices.hpp"
#include "climate/readers/readings.hpp"

#include <string_view>

namespace nightsow::climate {

/// Reads a weather file of any known format, packed by gzip or not. The content decides which,
/// never the file's name. `name` is used in messages only. Rows that cannot be read are listed in
/// `problems`, the rest is used. `choices` answers what a file may leave open.
/// Throws InputError when no format fits (the message shows the first lines as understood and says
/// what is missing), when not one row could be read, when something is left open that must be known
/// (several stations, several channels; the message lists them), and when the station asked for is
/// not in the file.
[[nodiscard]] Readings read_readings(std::string_view text,
                                     std::string_view name,
                                     const ReadingChoices& choices = {});

} // namespace nightsow::climate
