#pragma once

#include "planner/render/wording.hpp"

#include <array>

namespace nightsow::planner {

/// The sentences of pots that have been sown, then those of names, in the order of the enumeration.
inline constexpr std::array<Wording, 16> pot_wordings{{
    // Pots that have been sown.
    {ReasonCode::sown_dry,
     "on",
     "Sown on {on}, and no first water is written down: taken to be dry still. If it was watered, "
     "write that down."},
    {ReasonCode::rests_from,
     "rest moist evergreen annual",
     "It grows[; its rest usually begins about {rest}][; from about {moist} on it usually rests, "
     "and is kept barely moist][; it is evergreen, and watered through its resting season too, "
     "usually from about {evergreen}][; it is an annual, and usually sets seed and dies about "
     "{annual}]."},
    {ReasonCode::not_dried_off,
     "",
     "Until then keep it barely moist: this kind, or its seed, is not dried off."},
    {ReasonCode::annual_over,
     "",
     "An annual: its plants have set seed and died by now. What may still come is of seed that is "
     "left in the pot."},
    {ReasonCode::wakes_when_cool,
     "limit_c bench",
     "It rests until nights hold at or under {limit_c} on the {bench}: then water it again."},
    {ReasonCode::wakes_in_warmth,
     "when",
     "It rests until warmth comes back, about {when}: then water it again."},
    {ReasonCode::wake_due,
     "since",
     "Its nights hold since {since}, and no water since then is written down: water it now, or "
     "write down when you did."},
    {ReasonCode::seed_in_pot,
     "missing waiting",
     "Not up: {missing:seed}, of which about {waiting} may still be alive and wait for another "
     "season."},
    {ReasonCode::pot_kept,
     "seasons keep",
     "Cool seasons behind it: {seasons}; keep the pot through {keep} before you give it up."},
    {ReasonCode::press_before_emptying,
     "seasons",
     "Nothing lives in it that was seen, after {seasons:cool season}: dig out a seed and press it "
     "softly before you empty the pot; firm seed is alive."},
    {ReasonCode::water_not_recorded,
     "on",
     "Its first water is not written down: taken as given when it was sown, {on}."},
    {ReasonCode::count_not_recorded,
     "",
     "No count is written down: count what is up, 0 too, so that what is still to come can be "
     "told."},
    {ReasonCode::behind_expected,
     "up seeds on low high sowing",
     "Fewer came than expected: {up} of {seeds} by {on}, where {low} to {high} were likely; "
     "nightsow account {sowing} says where the others may be."},
    // Names.
    {ReasonCode::synonym, "written accepted", "{written} is an older name of {accepted}."},
    {ReasonCode::spelling, "written read_as", "{written} is read as {read_as}."},
    {ReasonCode::unknown_taxon,
     "written suggestion",
     "No rule is known for {written}.[ Did you mean {suggestion}?]"},
}};

} // namespace nightsow::planner
