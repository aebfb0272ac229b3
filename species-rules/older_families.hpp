#pragma once

#include <array>
#include <string_view>
#include <utility>

namespace nightsow::species_rules {

/// Names of families that growers know from older books and lists, each with the family that holds
/// its plants in current botany (APG IV, 2016), where the catalogue has it.
inline constexpr std::array<std::pair<std::string_view, std::string_view>, 17> older_families{{
    {"Agapanthaceae", "Amaryllidaceae"},
    {"Alliaceae", "Amaryllidaceae"},
    {"Aloaceae", "Asphodelaceae"},
    {"Asclepiadaceae", "Apocynaceae"},
    {"Bombacaceae", "Malvaceae"},
    {"Compositae", "Asteraceae"},
    {"Cruciferae", "Brassicaceae"},
    {"Cyphiaceae", "Campanulaceae"},
    {"Eriospermaceae", "Asparagaceae"},
    {"Ficoidaceae", "Aizoaceae"},
    {"Hyacinthaceae", "Asparagaceae"},
    {"Leguminosae", "Fabaceae"},
    {"Lobeliaceae", "Campanulaceae"},
    {"Mesembryanthemaceae", "Aizoaceae"},
    {"Papilionaceae", "Fabaceae"},
    {"Sterculiaceae", "Malvaceae"},
    {"Xanthorrhoeaceae", "Asphodelaceae"},
}};

} // namespace nightsow::species_rules
