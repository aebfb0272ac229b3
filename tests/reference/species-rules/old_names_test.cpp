#include "species-rules/catalogue.hpp"

#include <gtest/gtest.h>

#include <string_view>

// Names that labels and seed lists still carry (common practice, no source; where the plants went
// is in current floras and checklists, from memory), and the rule each must lead to.
namespace nightsow::species_rules {
namespace {

struct OldName {
  std::string_view written;
  std::string_view rule_name;
};

constexpr OldName old_names[] = {
    {"Caralluma", "Caralluma"},
    {"Caralluma lutea", "Orbea"},
    {"Caralluma melanantha", "Orbea"},
    {"Caralluma europaea", "Apteranthes"},
    {"Caralluma burchardii", "Apteranthes"},
    {"Caralluma speciosa", "Desmidorchis"},
    {"Caralluma acutangula", "Desmidorchis"},
    {"Caralluma mammillaris", "Quaqua"},
    {"Caralluma frerei", "Boucerosia"},
    {"Caralluma edulis", "Caudanthera"},
    {"Caralluma quadrangula", "Monolluma"},
    {"Trichocaulon cactiforme", "Larryleachia"},
    {"Lavrania marlothii", "Larryleachia"},
    {"Lavrania haagnerae", "Lavrania"},
    {"Senecio haworthii", "Caputia"},
    {"Senecio scaposus", "Caputia"},
    {"Senecio rowleyanus", "Curio"},
    {"Caputia", "Caputia"},
    {"Schizostylis coccinea", "Schizostylis"},
    {"Galtonia candicans", "Galtonia"},
    {"Schizobasis intricata", "Drimia"},
    {"Polyxena ensifolia", "Lachenalia"},
    {"Whiteheadia bifolia", "Massonia"},
    {"Androcymbium capense", "Colchicum"},
    {"Homeria flaccida", "Moraea"},
    {"Cybistetes longifolia", "Ammocharis"},
    {"Sarcocaulon herrei", "Monsonia"},
    {"Bryophyllum daigremontianum", "Kalanchoe"},
    {"Cotyledon paniculata", "Tylecodon"},
    {"Cotyledon wallichii", "Tylecodon"},
    {"Cotyledon undulata", "Cotyledon"},
    {"Greenovia aurea", "Aeonium"},
    {"Poellnitzia rubriflora", "Astroloba"},
    {"Montbretia crocosmiiflora", "Crocosmia"},
    {"Antholyza paniculata", "Crocosmia"},
    {"Antholyza aethiopica", "Chasmanthe"},
    {"Antholyza floribunda", "Chasmanthe"},
    {"Antholyza plicata", "Babiana"},
    {"Antholyza ringens", "Babiana"},
    {"Antholyza cunonia", "Gladiolus"},
};

TEST(OldNames, EachLeadsToAUsableRule) {
  const Catalogue catalogue = Catalogue::embedded();
  for (const OldName& name : old_names) {
    const auto found = catalogue.rule_for(name.written).found;
    ASSERT_TRUE(found) << name.written;
    EXPECT_EQ(std::string_view(found->rule_name).substr(0, found->rule_name.find(' ')),
              name.rule_name)
        << name.written;
    EXPECT_TRUE(found->rule.gate.start && found->rule.seed.half_life_years) << name.written;
  }
}

} // namespace
} // namespace nightsow::species_rules
