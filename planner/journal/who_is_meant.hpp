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

/// The one sowing that is called so; where several are, the one of them that is not closed. Throws
/// UsageError when it is none or several; with none it names what is written nearly so, `others`
/// (benches) included.
[[nodiscard]] RecordedSowing sowing_called(const std::string& what,
                                           const Records& records,
                                           const std::vector<std::string>& others = {});

/// The same, for something that is to be written down of it on that day: throws UsageError when it
/// was closed before, with the way to open it again.
[[nodiscard]] RecordedSowing looked_after(const std::string& what,
                                          const Records& records,
                                          Date on,
                                          const std::vector<std::string>& others = {});

/// The one packet that is called so: by its id, its taxon, or the first letters of that. Empty when
/// none is; throws UsageError when several are.
[[nodiscard]] std::optional<Packet> packet_called(const std::string& what,
                                                  const std::vector<Packet>& packets);

/// The same; throws UsageError also when none is, and names what is written nearly so.
[[nodiscard]] Packet packet_meant(const std::string& what, const std::vector<Packet>& packets);

/// Whether a word looks like the id of a packet and not like a plant's name: a figure in it, or
/// capitals only. Several words are a plant's name, since those of collection numbers and cultivars
/// hold figures, too.
[[nodiscard]] bool looks_like_a_packet(const std::string& what);

/// Throws UsageError: no packet is called so, with what is written nearly so.
[[noreturn]] void refuse_packet(const std::string& what, const std::vector<Packet>& packets);

/// Whether any sowing or packet is called so.
[[nodiscard]] bool is_called(const std::string& what,
                             const Records& records,
                             const std::vector<Packet>& packets);

} // namespace nightsow::planner
