#include "planner/garden/mix_file.hpp"

#include "planner/garden/object_keys.hpp"

#include <utility>

namespace nightsow::planner {

namespace {

// Bounds that catch slips (per cent, millimetres), not odd mixes.
constexpr double most_parts = 1000.0;
constexpr double most_shrink = 0.5;
constexpr double widest_pot_cm = 60.0;
constexpr double deepest_pot_cm = 80.0;
constexpr double least_pot_cm = 2.0;

constexpr std::array<std::string_view, 4> depths{"shallow", "standard", "deep", "very_deep"};

double share(const JsonNode& node) {
  return node.number(0.0, 1.0);
}

double shrink(const JsonNode& node) {
  return node.number(0.0, most_shrink);
}

double pot_width(const JsonNode& node) {
  return node.number(least_pot_cm, widest_pot_cm);
}

double pot_depth(const JsonNode& node) {
  return node.number(least_pot_cm, deepest_pot_cm);
}

std::string depth(const JsonNode& node) {
  return node.one_of(depths);
}

std::string text(const JsonNode& node) {
  return node.some_text();
}

std::vector<std::string> texts(const JsonNode& node) {
  std::vector<std::string> words;
  for (const JsonNode& element : node.elements()) {
    words.push_back(text(element));
  }
  return words;
}

std::vector<MixPart> mix_parts(const JsonNode& node) {
  std::vector<MixPart> parts;
  double sum = 0.0;
  for (const JsonNode& member : node.members()) {
    parts.push_back({member.name(), member.number(0.0, most_parts)});
    sum += parts.back().parts;
  }
  if (!(sum > 0.0)) {
    node.fail_as("parts by volume such as {\"pumice\": 2, \"grit\": 1}");
  }
  return parts;
}

constexpr auto recipe_keys = std::to_array<Key<MixRecipe>>({
    {"name", set<&MixRecipe::name, text>, required},
    {"for", set<&MixRecipe::taxa, texts>, required},
    {"mineral_share", set<&MixRecipe::mineral_share, share>},
    {"mineral", set<&MixRecipe::mineral, mix_parts>},
    {"organic", set<&MixRecipe::organic, mix_parts>},
});

std::vector<MixRecipe> recipes(const JsonNode& node) {
  return read_list(node, recipe_keys);
}

constexpr auto mix_keys = std::to_array<Key<Garden>>({
    {"mineral_share", set<&Garden::mix_mineral_share, share>},
    {"shrink", set<&Garden::mix_shrink, shrink>},
    {"mineral", set<&Garden::mix_mineral, mix_parts>},
    {"organic", set<&Garden::mix_organic, mix_parts>},
    {"recipes", set<&Garden::mix_recipes, recipes>},
});

constexpr auto pot_keys = std::to_array<Key<PotSize>>({
    {"depth", set<&PotSize::depth, depth>, required},
    {"top_cm", set<&PotSize::top_cm, pot_width>, required},
    {"base_cm", set<&PotSize::base_cm, pot_width>, required},
    {"deep_cm", set<&PotSize::deep_cm, pot_depth>, required},
});

} // namespace

void read_mix(Garden& garden, const JsonNode& node) {
  Garden read = read_object(node, mix_keys);
  garden.mix_mineral_share = read.mix_mineral_share;
  garden.mix_shrink = read.mix_shrink;
  garden.mix_mineral = std::move(read.mix_mineral);
  garden.mix_organic = std::move(read.mix_organic);
  garden.mix_recipes = std::move(read.mix_recipes);
}

std::vector<PotSize> read_pot_sizes(const JsonNode& list) {
  std::vector<PotSize> pots;
  for (const JsonNode& element : list.elements()) {
    PotSize pot = read_object(element, pot_keys);
    if (std::any_of(pots.begin(), pots.end(), [&](const PotSize& other) {
          return other.depth == pot.depth;
        })) {
      element.member("depth")->fail(fmt::format("a second pot \"{}\"", pot.depth),
                                    "one pot for a depth class",
                                    "take one of them out");
    }
    pots.push_back(std::move(pot));
  }
  return pots;
}

} // namespace nightsow::planner
