#pragma once

#include "climate/seed_level.hpp"
#include "planner/garden/garden.hpp"

namespace nightsow::planner {

/// The pots of a bench as garden.json tells of them; what it leaves open is the shelter's own, and
/// otherwise: shade a half, pale pots, fleece on frost nights, surface seed. No mat: which pots
/// stand on it, and when it is on, is decided a sowing.
[[nodiscard]] climate::SeedPlace seed_place(const Garden& garden, const Bench& bench);

/// What is done about frost on a bench; a garden that does not say lays fleece.
[[nodiscard]] climate::FrostCare frost_care_of(const Bench& bench);

} // namespace nightsow::planner
