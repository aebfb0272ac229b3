#pragma once

#include "planner/cli/record_commands.hpp"
#include "planner/cli/typed_words.hpp"

namespace nightsow::planner {

// What is done to sown pots. All throw UsageError.

[[nodiscard]] CheckCommand typed_check(const TypedWords& typed);
[[nodiscard]] WaterCommand typed_water(const TypedWords& typed);
[[nodiscard]] PotCommand typed_prick_out(const TypedWords& typed);
[[nodiscard]] PotCommand typed_pot_on(const TypedWords& typed);
[[nodiscard]] CloseCommand typed_close(const TypedWords& typed);
[[nodiscard]] NoteCommand typed_note(const TypedWords& typed);
[[nodiscard]] MoveCommand typed_move(const TypedWords& typed);

} // namespace nightsow::planner
