#pragma once

namespace nightsow::planner {

/// What has happened: sowings, counts, waterings, moves, tests. The plan takes it as a value and
/// never sees where it is kept. Nothing is recorded yet.
struct Records {};

} // namespace nightsow::planner
