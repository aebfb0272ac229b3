#include "planner/model/mix.hpp"

#include <algorithm>
#include <utility>

namespace nightsow::planner {

namespace {

std::string_view genus_of(std::string_view accepted) {
  return accepted.substr(0, accepted.find(' '));
}

const MixRecipe* recipe_naming(const Garden& garden, std::string_view name) {
  const auto found = std::find_if(
      garden.mix_recipes.begin(), garden.mix_recipes.end(), [name](const MixRecipe& recipe) {
        return std::find(recipe.taxa.begin(), recipe.taxa.end(), name) != recipe.taxa.end();
      });
  return found == garden.mix_recipes.end() ? nullptr : &*found;
}

const MixRecipe* recipe_for(const Garden& garden, const KindNames& kind) {
  for (const std::string_view name : {kind.accepted, genus_of(kind.accepted), kind.family}) {
    if (const MixRecipe* recipe = recipe_naming(garden, name)) {
      return recipe;
    }
  }
  return nullptr;
}

std::vector<MixPart> first_given(const std::vector<MixPart>& nearest,
                                 const std::vector<MixPart>& next,
                                 const std::vector<MixPart>& otherwise) {
  if (!nearest.empty()) {
    return nearest;
  }
  return next.empty() ? otherwise : next;
}

double sum_of(const std::vector<MixPart>& parts) {
  double sum = 0.0;
  for (const MixPart& part : parts) {
    sum += part.parts;
  }
  return sum;
}

void add_side(const std::vector<MixPart>& side, double litres, std::vector<PartLitres>& into) {
  const double sum = sum_of(side);
  for (const MixPart& part : side) {
    const double of_part = sum > 0.0 ? litres * part.parts / sum : 0.0;
    if (of_part <= 0.0) {
      continue;
    }
    const auto known = std::find_if(
        into.begin(), into.end(), [&](const PartLitres& other) { return other.name == part.name; });
    if (known != into.end()) {
      known->litres += of_part;
    } else {
      into.push_back({part.name, of_part});
    }
  }
}

} // namespace

MixRecipe mix_for(const Garden& garden,
                  const KindNames& kind,
                  std::optional<double> rule_mineral_share) {
  const MixRecipe* recipe = recipe_for(garden, kind);
  MixRecipe mix = recipe != nullptr ? *recipe : MixRecipe{};
  if (!mix.mineral_share) {
    mix.mineral_share = garden.mix_mineral_share ? garden.mix_mineral_share : rule_mineral_share;
  }
  mix.mineral_share = mix.mineral_share.value_or(usual_mineral_share);
  mix.mineral = first_given(
      mix.mineral, garden.mix_mineral, {{"pumice", 2.0}, {"coarse sand", 1.0}, {"fine grit", 1.0}});
  mix.organic = first_given(mix.organic, garden.mix_organic, {{"sieved compost", 1.0}});
  return mix;
}

std::vector<PartLitres> parts_of(const MixRecipe& mix, double litres, double shrink) {
  const double loose = litres / (1.0 - shrink);
  const double mineral = mix.mineral_share.value_or(usual_mineral_share);
  std::vector<PartLitres> parts;
  add_side(mix.mineral, loose * mineral, parts);
  add_side(mix.organic, loose * (1.0 - mineral), parts);
  return parts;
}

} // namespace nightsow::planner
