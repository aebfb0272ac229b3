#pragma once

#include "planner/answers/reason.hpp"
#include "planner/garden/garden.hpp"
#include "planner/garden/records.hpp"
#include "planner/model/sowing_facts.hpp"
#include "species-rules/catalogue.hpp"

#include <string>
#include <vector>

namespace nightsow::planner {

/// What an account takes for granted of a sowing, as far as the record and garden.json tell.
[[nodiscard]] std::vector<Reason> account_notes(const Garden& garden,
                                                const RecordedSowing& sowing,
                                                const SowingFacts& facts);

/// That a name was read otherwise than written, or is an older one.
void add_name_notes(const species_rules::Lookup& lookup,
                    const std::string& written,
                    std::vector<Reason>& notes);

/// The copy of the packet's row, with the last germination test that was recorded up to the day of
/// sowing.
[[nodiscard]] Packet packet_as_sown(const RecordedSowing& sowing, const Records& records);

} // namespace nightsow::planner
