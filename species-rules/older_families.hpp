#pragma once

#include <array>
#include <string_view>
#include <utility>

namespace nightsow::species_rules {

/// Names of families that growers know from older books and lists, each with the family that holds
/// its plants in current botany (APG IV, 2016), where the catalogue has it.
inline constexpr std::array<std::pair<std::string_view, std::string_view>, 10> older_families{{
    {"Aloaceae", "Asphodelaceae"},
    {"Asclepiadaceae", "Apocynaceae"},
    {"Bombacaceae", "Malvaceae"},
    {"Compositae", "Asteraceae"},
    {"Cruciferae", "Brassicaceae"},
    {"Eriospermaceae", "Asparagaceae"},
    {"Hyacinthaceae", "Asparagaceae"},
    {"Leguminosae", "Fabaceae"},
    {"Mesembryanthemaceae", "Aizoaceae"},
    {"Sterculiaceae", "Malvaceae"},
}};

} // namespace nightsow::species_rules
