#include "planner/model/seed_place.hpp"

#include "climate/shelter.hpp"

namespace nightsow::planner {

climate::FrostCare frost_care_of(const Bench& bench) {
  if (bench.frost_care == "none") {
    return climate::FrostCare::none;
  }
  return bench.frost_care == "in" ? climate::FrostCare::in : climate::FrostCare::fleece;
}

climate::SeedPlace seed_place(const Garden& garden, const Bench& bench) {
  const climate::Shelter& shelter = climate::shelter_named(bench.shelter);
  climate::SeedPlace place;
  place.latitude = garden.latitude;
  place.elevation_m = garden.elevation_m.value_or(0.0);
  place.glass = shelter.closed_glass || shelter.name == "plastic tunnel";
  place.sun = bench.sun.value_or(shelter.sun);
  place.shade = bench.shade.value_or(shelter.shade);
  place.pots = bench.pot_colour == "dark" ? climate::PotColour::dark : climate::PotColour::pale;
  place.night_loss_k = shelter.night_loss.kelvin();
  place.frost_care = frost_care_of(bench);
  return place;
}

} // namespace nightsow::planner
