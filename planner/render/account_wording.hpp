#pragma once

#include "planner/render/wording.hpp"

#include <array>

namespace nightsow::planner {

/// The sentences of an account's codes, in the order of the enumeration.
inline constexpr std::array<Wording, 31> account_wordings{{
    {ReasonCode::account_likely,
     "cause share low high missing",
     "Not up: {missing}. Most likely {share} of them {cause} ({low} to {high})."},
    {ReasonCode::nights_short,
     "cool of needed limit_c short_k",
     "At best {cool} of {of} nights in a row lay at or under {limit_c} since it was watered; "
     "{needed} are needed[, and the night that decides was {short_k} too warm]."},
    {ReasonCode::warm_nights_short,
     "cool of needed limit_c short_k",
     "At best {cool} of {of} nights in a row lay at or above {limit_c} since it was watered; "
     "{needed} are needed[, and the night that decides was {short_k} too cool]."},
    {ReasonCode::nights_came,
     "limit_c when",
     "The nights that half of its seed waits for ({limit_c}) had come by {when}."},
    {ReasonCode::account_too_early,
     "until",
     "Too early to tell: hardly any would be up by now[. Look again about {until}]."},
    {ReasonCode::account_wait,
     "more until",
     "Wait: about {more:seedling} more may come[, most of them by {until}]."},
    {ReasonCode::account_look_again,
     "last days",
     "Count again first: the last count is of {last}, {days:day} ago, and more should have come "
     "since."},
    {ReasonCode::account_count_first,
     "sowing",
     "Count it: no count is written down yet (nightsow count {sowing} 0, if none is up)."},
    {ReasonCode::account_water_again,
     "seeds",
     "Water it again now: it has rested, nights are cool enough, and about {seeds:seed} not up "
     "should be sound."},
    {ReasonCode::account_water_first,
     "sowing",
     "As far as the record tells the seed still lies dry. Once it is wet: nightsow water "
     "{sowing}."},
    {ReasonCode::account_cool_it,
     "seeds limit_c",
     "Cool it: about {seeds:seed} not up should be sound and wait for nights at or under "
     "{limit_c}. A cooler place brings them, or the fridge by night."},
    {ReasonCode::account_warm_it,
     "seeds limit_c",
     "Warm it: about {seeds:seed} not up should be sound and wait for nights at or above "
     "{limit_c}. A warmer place brings them, or a heat mat."},
    {ReasonCode::account_keep,
     "seeds dry moist",
     "Keep the pot: about {seeds:seed} not up should be sound but not come now.[ Let it rest dry, "
     "and water it again about {dry}.][ Keep it barely moist, which this kind or its seed needs, "
     "and "
     "water it again about {moist}.]"},
    {ReasonCode::account_sow_again,
     "seeds",
     "Sow again: of what is not up hardly any seed is sound (about {seeds}). Keep the pot all the "
     "same, it costs little."},
    {ReasonCode::account_stop,
     "",
     "Stop: what was pressed is soft, or all its seasons are over and hardly a sound seed is left. "
     "The pot may be emptied."},
    {ReasonCode::account_all_up, "", "All of it is up."},
    {ReasonCode::account_how_sure,
     "sure share",
     "How sure: {sure}[; {share} of what the rule and the counts leave possible leads to this "
     "step]."},
    {ReasonCode::account_unlike_rule,
     "up low high rule",
     "{up} up, where {low} to {high} were expected, hardly fits the rule {rule}. It may be "
     "wrong here, or the pot had what no model knows: mice, another name, a spilled packet."},
    {ReasonCode::account_press,
     "sowing",
     "Five seeds would decide: dig them up, press them, then nightsow check {sowing} --firm N "
     "--soft N."},
    {ReasonCode::account_nothing_reckoned,
     "",
     "Nothing can be reckoned of it; its counts are shown as they are."},
    {ReasonCode::account_closed,
     "on closed",
     "It was closed on {on}[: {closed}]. All that is told here stands as on that day."},
    {ReasonCode::first_water_taken,
     "on",
     "Its first water is not written down: it is taken as the day of sowing, {on}."},
    {ReasonCode::watered_again_taken,
     "when",
     "When it was watered again is not written down: it is taken as {when}, as nights grow "
     "cooler."},
    {ReasonCode::sown_bench_gone,
     "text bench",
     "Its bench ({text}) is not in garden.json: it is reckoned as on the {bench}."},
    {ReasonCode::sown_mat_gone,
     "text",
     "Its mat ({text}) is not in garden.json: it is reckoned without one."},
    {ReasonCode::sown_without_packet,
     "",
     "It was sown of no packet: age and store of its seed are not known, and it counts as fresh."},
    {ReasonCode::moves_left_out,
     "",
     "That its shade or bag was changed since is not reckoned with."},
    {ReasonCode::counted_fell,
     "fell",
     "Counted earlier and gone since: {fell:seedling}. What came up counts as up."},
    {ReasonCode::counted_more_than_sown,
     "up seeds",
     "{up} counted of {seeds:seed} sown: was another pot counted? It is reckoned as if all were "
     "up."},
    {ReasonCode::nights_unread,
     "missing",
     "Not read since first water: {missing:night}. The account takes several courses for them."},
    {ReasonCode::readings_begin_late,
     "on",
     "The readings hold no whole season before that of its first water, {on}."},
}};

} // namespace nightsow::planner
