#pragma once

#include "planner/answers/known_sowings.hpp"
#include "planner/answers/review_answer.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/model/bench_seasons.hpp"

#include <map>
#include <memory>
#include <optional>

namespace nightsow::planner {

/// What plans of the past promised, each reckoned once more with what was known on its day.
class Promises {
public:
  /// The folder must outlive it.
  explicit Promises(const GardenFolder& folder) : folder_(folder) {}

  /// Of the sowing, on its day, of first water on the day it was given. Empty while it is dry, and
  /// where the readings of its day did not do for a plan.
  [[nodiscard]] std::optional<Promised> of(const KnownSowing& sowing);

private:
  struct OnDay {
    LoadedGarden garden;
    std::unique_ptr<BenchSeasons> seasons; ///< of `garden`
  };

  /// Null where no plan could be made on that day.
  [[nodiscard]] OnDay* on(Date day);

  const GardenFolder& folder_;
  std::map<Date, std::unique_ptr<OnDay>> days_;
};

} // namespace nightsow::planner
