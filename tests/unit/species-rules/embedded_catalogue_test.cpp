#include "species-rules/embedded_catalogue.hpp"

#include "species-rules/explain.hpp"
#include "tests/unit/species-rules/rule_texts.hpp"

#include <gtest/gtest.h>

#include <regex>
#include <set>

namespace nightsow::species_rules {
namespace {

const Catalogue& built_in() {
  static const Catalogue catalogue = Catalogue::embedded();
  return catalogue;
}

RuleFor rule_of(std::string_view taxon) {
  const Lookup lookup = built_in().rule_for(taxon);
  EXPECT_TRUE(lookup.found) << taxon;
  EXPECT_EQ(lookup.read_as, "") << taxon;
  return lookup.found.value_or(RuleFor{});
}

TEST(EmbeddedCatalogue, LoadsWithoutFault) {
  EXPECT_NO_THROW(static_cast<void>(Catalogue::embedded()));
  EXPECT_GE(built_in().genera().size(), 31U);
}

TEST(EmbeddedCatalogue, EachFileIsNamedAfterItsFamily) {
  std::set<std::string_view> names;
  for (const EmbeddedFile& file : embedded_catalogue()) {
    EXPECT_TRUE(names.insert(file.name).second) << file.name;
    const std::string family{file.name.substr(0, file.name.find('.'))};
    const bool named = file.text.find(R"("family": ")" + family + '"') != std::string_view::npos;
    EXPECT_TRUE(named || file.name == "sources.json") << file.name;
  }
  EXPECT_TRUE(names.contains("sources.json"));
}

TEST(EmbeddedCatalogue, KnowsTheGeneraThatWinterGrowersRaise) {
  for (const std::string_view genus :
       {"Othonna",     "Crassothonna", "Pelargonium", "Monsonia",  "Sarcocaulon", "Dioscorea",
        "Moraea",      "Bulbine",      "Trachyandra", "Albuca",    "Drimia",      "Eriospermum",
        "Lachenalia",  "Conophytum",   "Gibbaeum",    "Sceletium", "Muiria",      "Crassula",
        "Pachypodium", "Aloidendron",  "Haworthia",   "Tylecodon", "Oxalis",      "Massonia",
        "Babiana",     "Romulea",      "Gladiolus",   "Lithops",   "Stapelia",    "Adromischus",
        "Anacampseros"}) {
    EXPECT_FALSE(explain(rule_of(genus).rule).empty()) << genus;
  }
}

TEST(EmbeddedCatalogue, EveryRuleIsFoundUnderItsOwnName) {
  for (const std::string& name : built_in().rule_names()) {
    EXPECT_EQ(rule_of(name).rule_name, name);
  }
}

TEST(EmbeddedCatalogue, EveryValueHasEvidenceAndWhereNeededAListedSource) {
  for (const std::string& name : built_in().rule_names()) {
    for (const ExplainedValue& told : explain(rule_of(name).rule)) {
      const auto evidence = from_word<Evidence>(told.evidence);
      ASSERT_TRUE(evidence) << name << ' ' << told.key;
      EXPECT_TRUE(!needs_source(*evidence) || !told.source.empty()) << name << ' ' << told.key;
      EXPECT_TRUE(told.source.empty() || built_in().source(told.source) != nullptr)
          << name << ' ' << told.key << ' ' << told.source;
    }
  }
}

// "Unchecked" and cited exclude each other.
TEST(EmbeddedCatalogue, WhatIsFromMemoryCitesNobody) {
  for (const std::string& name : built_in().rule_names()) {
    for (const ExplainedValue& told : explain(rule_of(name).rule)) {
      EXPECT_TRUE(told.evidence != word_of(Evidence::memory) || told.source.empty())
          << name << ' ' << told.key << ' ' << told.source;
    }
  }
}

TEST(EmbeddedCatalogue, EverySourceIsUsed) {
  std::string rules;
  for (const EmbeddedFile& file : embedded_catalogue()) {
    rules += file.name == "sources.json" ? std::string_view{} : file.text;
  }
  for (const auto& [id, source] : built_in().sources()) {
    EXPECT_NE(rules.find("\"source\": \"" + id + '"'), std::string::npos) << id;
  }
}

// A harm of the first order: half of the draws would call such seed unripe in a fridge.
TEST(EmbeddedCatalogue, SeedThatNeedsNoRipeningNeedsNoneInAnyDraw) {
  for (const std::string_view taxon : {"Albuca spiralis", "Adenia", "Moringa", "Fouquieria"}) {
    EXPECT_EQ(rule_of(taxon).rule.seed.after_ripening_c_d->high, 0.0) << taxon;
  }
}

// common practice, no source
TEST(EmbeddedCatalogue, SummerGrowersAmongWinterGrowersSayNothingOfAutumn) {
  for (const std::string_view taxon :
       {"Gladiolus dalenii", "Eucomis", "Galtonia", "Moraea huttonii", "Pelargonium luridum"}) {
    for (const Remark& note : rule_of(taxon).rule.notes) {
      EXPECT_EQ(note.value.find("autumn"), std::string::npos) << taxon << ": " << note.value;
    }
  }
}

// common practice, no source
TEST(EmbeddedCatalogue, WarmGrowingAmaryllidsComeUpInTheWarmth) {
  for (const std::string_view taxon : {"Crinum", "Scadoxus", "Clivia", "Brunsvigia grandiflora"}) {
    const Rule rule = rule_of(taxon).rule;
    EXPECT_GE(rule.development.optimum_c->value, 22.0) << taxon;
    EXPECT_GE(rule.development.ceiling_c->value, 35.0) << taxon;
  }
}

TEST(EmbeddedCatalogue, SummerSownTreesStartHotOnAMat) {
  for (const std::string_view taxon : {"Pachypodium namaquanum", "Aloidendron pillansii"}) {
    const Rule rule = rule_of(taxon).rule;
    EXPECT_EQ(rule.gate.start->value, Start::hot) << taxon;
    EXPECT_LE(rule.sowing.mat->value, Mat::helpful) << taxon;
    EXPECT_TRUE(rule.gate.warm_night_c) << taxon;
  }
}

TEST(EmbeddedCatalogue, OldNamesOfTheTradeAreKnown) {
  EXPECT_EQ(rule_of("Sarcocaulon vanderietiae").accepted, "Monsonia vanderietiae");
  EXPECT_EQ(rule_of("Ophthalmophyllum friedrichiae").accepted, "Conophytum friedrichiae");
  EXPECT_EQ(rule_of("Sceletium tortuosum").accepted, "Mesembryanthemum tortuosum");
  EXPECT_EQ(rule_of("Mesembryanthemum tortuosum").rule_name.substr(0, 9), "Sceletium");
  EXPECT_EQ(rule_of("Aloe pillansii").accepted, "Aloidendron pillansii");
}

TEST(EmbeddedCatalogue, NoTextNamesAMonthOrAHemisphere) {
  const std::regex calendar{R"(\b(January|February|March|April|May|June|July|August|September|)"
                            R"(October|November|December|[Hh]emispheres?)\b)"};
  for (const EmbeddedFile& file : embedded_catalogue()) {
    if (file.name == "sources.json") {
      continue; // titles are as their authors wrote them
    }
    const std::string text{file.text};
    for (auto hit = std::sregex_iterator{text.begin(), text.end(), calendar};
         hit != std::sregex_iterator{};
         ++hit) {
      ADD_FAILURE() << file.name << ": "
                    << text.substr(static_cast<std::size_t>(hit->position()), 60);
    }
  }
}

} // namespace
} // namespace nightsow::species_rules
