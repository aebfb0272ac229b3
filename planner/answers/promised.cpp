#include "planner/answers/promised.hpp"

#include "climate/base/problem.hpp"
#include "planner/answers/expectation.hpp"
#include "planner/answers/make_heads.hpp"
#include "planner/model/seed_state.hpp"

#include <utility>

namespace nightsow::planner {

namespace {

// Too little was read by then: no plan, and so no promise.
std::unique_ptr<BenchSeasons> seasons_of_day(const LoadedGarden& garden) {
  try {
    auto seasons = std::make_unique<BenchSeasons>(garden);
    const auto season = chosen_season(seasons->station(), garden.today, std::nullopt);
    return season && usable_seasons(seasons->station(), season) > 0 ? std::move(seasons) : nullptr;
  } catch (const InputError&) {
    return nullptr;
  }
}

} // namespace

Promises::OnDay* Promises::on(Date day) {
  const auto [entry, fresh] = days_.try_emplace(day);
  if (fresh) {
    auto made = std::make_unique<OnDay>();
    try {
      made->garden = as_of(folder_, day);
    } catch (const InputError&) {
      return nullptr;
    }
    made->seasons = seasons_of_day(made->garden);
    if (made->seasons) {
      entry->second = std::move(made);
    }
  }
  return entry->second.get();
}

std::optional<Promised> Promises::of(const KnownSowing& sowing) {
  const RecordedSowing& sown = *sowing.told->sowing;
  OnDay* then = sowing.told->first_water ? on(sown.on) : nullptr;
  if (then == nullptr) {
    return std::nullopt;
  }
  const Date water = *sowing.told->first_water;
  const SeedState seed = seed_state(sown.packet, sowing.rule.rule, sown.on);
  const std::string& bench = bench_named(then->garden.garden, sown.bench).name;
  const LineInput input{
      then->garden, sown.packet, sowing.rule, seed, then->seasons->guard(bench), bench};
  const climate::Season season =
      climate::season_of(*then->seasons->station().turning.phases, water);
  if (then->seasons->season(bench, season).outlook.members == 0) {
    return std::nullopt;
  }
  Prospects prospects(
      input,
      *then->seasons,
      {bench, season, false, !sown.mat.empty() && mat_for(then->garden.garden, bench).has_value()});
  if (water < prospects.first_day() || water > prospects.last_day()) {
    return std::nullopt;
  }
  const std::optional<Expected> expected =
      prospects.expected(water, {}, static_cast<double>(sown.seeds));
  return expected ? std::optional{Promised{expected->seedlings, expected->plants}} : std::nullopt;
}

} // namespace nightsow::planner
