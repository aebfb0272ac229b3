#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/packet.hpp"
#include "planner/garden/records.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

// What a person means by a few letters. What could mean several things is asked back: UsageError,
// with all that are called so.

/// The day typed, or today. Throws UsageError for a day after today: an entry of a day to come
/// would be of no account until then.
[[nodiscard]] Date day_meant(const std::optional<Date>& typed, Date today);

/// Which sowings are spoken of: the one with that number; those of the packet with that id; those
/// of that taxon, capitals or not; those whose taxon begins so. The first of these that finds any.
[[nodiscard]] std::vector<RecordedSowing> sowings_called(const std::string& what,
                                                         const Records& records);

/// The one sowing that is called so. Throws UsageError when it is none or several.
[[nodiscard]] RecordedSowing sowing_called(const std::string& what, const Records& records);

/// The one packet that is called so: by its id, its taxon, or the first letters of that. Empty when
/// none is; throws UsageError when several are.
[[nodiscard]] std::optional<Packet> packet_called(const std::string& what,
                                                  const std::vector<Packet>& packets);

/// The same; throws UsageError also when none is.
[[nodiscard]] Packet packet_meant(const std::string& what, const std::vector<Packet>& packets);

/// Whether any sowing or packet is called so.
[[nodiscard]] bool is_called(const std::string& what,
                             const Records& records,
                             const std::vector<Packet>& packets);

} // namespace nightsow::planner
