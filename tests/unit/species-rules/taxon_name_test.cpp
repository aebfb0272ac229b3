#include "species-rules/taxon_name.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace nightsow::species_rules {
namespace {

std::string parsed(std::string_view text) {
  const auto name = parse_taxon(text);
  return name ? to_text(*name) : "no name";
}

struct Written {
  std::string_view text;
  std::string_view name;
};

void expect_all(const std::vector<Written>& table) {
  for (const auto& [text, name] : table) {
    EXPECT_EQ(parsed(text), name) << text;
  }
}

TEST(TaxonName, CapitalsAndBlanksDoNotMatter) {
  expect_all({{"Lachenalia bulbifera", "Lachenalia bulbifera"},
              {"  lachenalia\tbulbifera ", "Lachenalia bulbifera"},
              {"LACHENALIA BULBIFERA", "Lachenalia bulbifera"},
              {"Lachenalia\u00a0 bulbifera", "Lachenalia bulbifera"},
              {"lachenalia", "Lachenalia"}});
}

TEST(TaxonName, WordsOfDoubtBetweenGenusAndEpithetDoNotMatter) {
  expect_all({{"Bulbine cf. annua", "Bulbine annua"},
              {"Bulbine aff annua", "Bulbine annua"},
              {"cf. Bulbine annua", "Bulbine annua"},
              {"Bulbine annua?", "Bulbine annua"}});
}

TEST(TaxonName, AHybridSignDoesNotMatter) {
  expect_all({{"Conophytum \u00d7 marnierianum", "Conophytum marnierianum"},
              {"Conophytum \u00d7marnierianum", "Conophytum marnierianum"},
              {"Conophytum x marnierianum", "Conophytum marnierianum"},
              {"\u00d7Gasteraloe beguinii", "Gasteraloe beguinii"}});
}

TEST(TaxonName, WhatStandsBehindTheEpithetDoesNotMatter) {
  expect_all({{"Bulbine annua (L.) Willd.", "Bulbine annua"},
              {"Conophytum bilobum subsp. altum", "Conophytum bilobum"},
              {"Lithops lesliei 'Albinica' C36a", "Lithops lesliei"},
              {"Oxalis obtusa, pink form", "Oxalis obtusa"},
              {"Conophytum ectypum \u00d7 pageae", "Conophytum ectypum"}});
}

TEST(TaxonName, AGroupInBracketsIsPassedOver) {
  expect_all({{"Mesembryanthemum (Sceletium) tortuosum", "Mesembryanthemum tortuosum"}});
}

TEST(TaxonName, AGenusWithoutEpithetMayCarryAWordANumberOrAnAuthor) {
  expect_all({{"Lachenalia sp.", "Lachenalia"},
              {"Lachenalia spp", "Lachenalia"},
              {"Lachenalia sp. nov. MBB 123", "Lachenalia"},
              {"Lithops C362", "Lithops"},
              {"Lithops mixed", "Lithops"},
              {"Conophytum 'Peekaboo'", "Conophytum"},
              {"Conophytum N.E.Br.", "Conophytum"}});
}

TEST(TaxonName, AccentsAndHyphensBelongToTheEpithet) {
  expect_all({{"Gladiolus r\u00fceggii", "Gladiolus r\u00fceggii"},
              {"Oxalis pes-caprae", "Oxalis pes-caprae"}});
}

TEST(TaxonName, ACapitalLeavesTheEpithetInDoubt) {
  EXPECT_FALSE(parse_taxon("Bulbine Wolf")->epithet_sure);
  EXPECT_TRUE(parse_taxon("Bulbine annua")->epithet_sure);
  EXPECT_TRUE(parse_taxon("BULBINE ANNUA")->epithet_sure);
}

TEST(TaxonName, AnEpithetBelowTheSpeciesIsKeptWithoutItsRank) {
  EXPECT_EQ(to_full_text(*parse_taxon("Aloe dichotoma subsp. pillansii")),
            "Aloe dichotoma pillansii");
  EXPECT_EQ(to_full_text(*parse_taxon("Aloe dichotoma Masson var. ramosissima (Pillans) Glen")),
            "Aloe dichotoma ramosissima");
  EXPECT_EQ(to_full_text(*parse_taxon("Oxalis obtusa Hook. f. & x")), "Oxalis obtusa");
}

TEST(TaxonName, ATextThatBeginsWithNoWordIsNoName) {
  expect_all({{"", "no name"},
              {"   ", "no name"},
              {"123", "no name"},
              {"...", "no name"},
              {"\u00d7", "no name"},
              {"'Peekaboo'", "no name"}});
}

TEST(TaxonName, RuleFilesHoldGeneraAndEpithetsInOneForm) {
  EXPECT_TRUE(is_genus("Conophytum"));
  EXPECT_FALSE(is_genus("conophytum"));
  EXPECT_FALSE(is_genus("Conophytum pageae"));
  EXPECT_TRUE(is_epithet("pes-caprae"));
  EXPECT_FALSE(is_epithet("Pageae"));
  EXPECT_FALSE(is_epithet("pageae "));
}

TEST(TaxonName, OldNamesOfSpeciesHaveTwoWordsOrARankAndAThird) {
  EXPECT_TRUE(is_species_name("Sarcocaulon crassicaule"));
  EXPECT_TRUE(is_species_name("Aloe dichotoma subsp. pillansii"));
  EXPECT_FALSE(is_species_name("Sarcocaulon"));
  EXPECT_FALSE(is_species_name("Aloe dichotoma pillansii"));
  EXPECT_FALSE(is_species_name("Aloe dichotoma subsp pillansii"));
  EXPECT_FALSE(is_species_name("Aloe  dichotoma"));
}

} // namespace
} // namespace nightsow::species_rules
