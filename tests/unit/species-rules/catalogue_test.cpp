#include "species-rules/catalogue.hpp"

#include "tests/unit/species-rules/rule_texts.hpp"

#include <gtest/gtest.h>

namespace nightsow::species_rules {
namespace {

using rule_texts::catalogue_of;
using rule_texts::family_defaults;
using rule_texts::family_text;
using rule_texts::refusal_of;

constexpr std::string_view limit_17 =
    R"({"night_limit_c": {"value": 17, "low": 15, "high": 19, "evidence": "memory"}})";

// Genera for most tests: an old genus, a group within a genus, species with and without rules.
Catalogue few_genera() {
  const std::string own{limit_17};
  return catalogue_of(R"(
    {"genus": "Monsonia", "synonyms": ["Sarcocaulon"], "species": [
      {"species": "peniculina", "synonyms": ["Sarcocaulon peniculinum"]}]},
    {"genus": "Massonia"},
    {"genus": "Crassula", "rule": )" +
                      own + R"(, "species": [
      {"species": "umbella", "rule": )" +
                      own + R"(}, {"species": "alba"}]},
    {"genus": "Mesembryanthemum", "synonyms": ["Phyllobolus"]},
    {"genus": "Sceletium", "accepted_genus": "Mesembryanthemum", "species": [
      {"species": "tortuosum", "rule": )" +
                      own + R"(}, {"species": "expansum"}]})");
}

// "accepted | rule", with "| old" for an old name and "| read as …" for a corrected one.
std::string told(const Catalogue& catalogue, std::string_view taxon) {
  const Lookup lookup = catalogue.rule_for(taxon);
  if (!lookup.found) {
    return lookup.suggestion.empty() ? "unknown" : "unknown, perhaps " + lookup.suggestion;
  }
  std::string text = lookup.found->accepted + " | " + lookup.found->rule_name;
  text += lookup.found->by_synonym ? " | old" : "";
  return lookup.read_as.empty() ? text : text + " | read as " + lookup.read_as;
}

struct Asked {
  std::string_view taxon;
  std::string_view answer;
};

void expect_told(const std::vector<Asked>& table) {
  const Catalogue catalogue = few_genera();
  for (const auto& [taxon, answer] : table) {
    EXPECT_EQ(told(catalogue, taxon), answer) << taxon;
  }
}

TEST(Catalogue, AGenusOrAnySpeciesOfItHasTheRuleOfTheGenus) {
  expect_told({{"Monsonia", "Monsonia | Monsonia"},
               {"Monsonia crassicaulis", "Monsonia crassicaulis | Monsonia"},
               {"monsonia", "Monsonia | Monsonia"},
               {"Monsonia cf. crassicaulis Author", "Monsonia crassicaulis | Monsonia"}});
}

TEST(Catalogue, ASpeciesWithARuleOfItsOwnHasThatRule) {
  expect_told({{"Crassula umbella", "Crassula umbella | Crassula umbella"},
               {"Crassula alba", "Crassula alba | Crassula"},
               {"Crassula", "Crassula | Crassula"}});
}

TEST(Catalogue, OldNamesOfGeneraAndSpeciesLeadToTheAcceptedName) {
  expect_told({{"Sarcocaulon", "Monsonia | Monsonia | old"},
               {"Sarcocaulon vanderietiae", "Monsonia vanderietiae | Monsonia | old"},
               {"Sarcocaulon peniculinum", "Monsonia peniculina | Monsonia | old"}});
}

TEST(Catalogue, AGroupWithinAGenusHasItsOwnRuleUnderEitherName) {
  expect_told(
      {{"Sceletium tortuosum", "Mesembryanthemum tortuosum | Sceletium tortuosum | old"},
       {"Mesembryanthemum tortuosum", "Mesembryanthemum tortuosum | Sceletium tortuosum"},
       {"Mesembryanthemum expansum", "Mesembryanthemum expansum | Sceletium"},
       {"Phyllobolus tortuosum", "Mesembryanthemum tortuosum | Sceletium tortuosum | old"},
       {"Sceletium", "Mesembryanthemum | Sceletium | old"},
       {"Mesembryanthemum crystallinum", "Mesembryanthemum crystallinum | Mesembryanthemum"}});
}

TEST(Catalogue, AMisspeltGenusIsCorrectedWhenOneOnlyIsNear) {
  expect_told(
      {{"crasula alba", "Crassula alba | Crassula | read as Crassula alba"},
       {"Crasulla umbella", "Crassula umbella | Crassula umbella | read as Crassula umbella"},
       {"Sarcocaulom", "Monsonia | Monsonia | old | read as Sarcocaulon"}});
}

TEST(Catalogue, AMisspeltGenusBetweenTwoIsOnlySuggested) {
  expect_told({{"Mansonia", "unknown, perhaps Massonia"}});
}

TEST(Catalogue, AnotherGenusIsNotTakenForAnEntryThatIsSpeltLikeIt) {
  expect_told({{"Cussonia spicata", "unknown, perhaps Massonia"}});
}

TEST(Catalogue, ANameThatIsNearNothingIsUnknown) {
  expect_told({{"Welwitschia mirabilis", "unknown"}, {"", "unknown"}, {"12", "unknown"}});
}

TEST(Catalogue, AnEpithetIsCorrectedOnlyTowardsASpeciesWithItsOwnRule) {
  expect_told(
      {{"Crassula umbela", "Crassula umbella | Crassula umbella | read as Crassula umbella"},
       {"Crassula umbel", "Crassula umbel | Crassula"},
       {"Crassula albo", "Crassula albo | Crassula"}});
}

TEST(Catalogue, AnAuthorBehindTheGenusIsNoEpithet) {
  expect_told(
      {{"Massonia Thunberg", "Massonia | Massonia"},
       {"Crassula Umbella", "Crassula umbella | Crassula umbella"},
       {"Crassula Umbela", "Crassula umbella | Crassula umbella | read as Crassula umbella"}});
}

TEST(Catalogue, AnOldNameBelowASpeciesLeadsElsewhereThanTheSpecies) {
  const Catalogue catalogue = catalogue_of(
      R"({"genus": "Aloe"}, {"genus": "Aloidendron", "species": [{"species": "ramosissimum",
          "synonyms": ["Aloe dichotoma var. ramosissima"]}]})");
  EXPECT_EQ(told(catalogue, "Aloe dichotoma subsp. ramosissima"),
            "Aloidendron ramosissimum | Aloidendron | old");
  EXPECT_EQ(told(catalogue, "Aloe dichotoma"), "Aloe dichotoma | Aloe");
}

TEST(Catalogue, ARuleIsPutTogetherFromFamilyToSpecies) {
  const auto found = few_genera().rule_for("Crassula umbella").found;
  ASSERT_TRUE(found);
  EXPECT_EQ(found->family, "Testaceae");
  EXPECT_EQ(found->rule.gate.night_limit_c->value, 17);
  EXPECT_EQ(found->rule.gate.night_limit_c->ground.origin, Origin::species);
  EXPECT_EQ(found->rule.gate.start->ground.origin, Origin::family);
}

TEST(Catalogue, GeneraAreTheAcceptedOnesAndRulesAllThatHaveOne) {
  EXPECT_EQ(few_genera().genera(),
            (std::vector<std::string>{"Crassula", "Massonia", "Mesembryanthemum", "Monsonia"}));
  EXPECT_EQ(few_genera().rule_names(),
            (std::vector<std::string>{"Crassula",
                                      "Crassula umbella",
                                      "Massonia",
                                      "Mesembryanthemum",
                                      "Monsonia",
                                      "Sceletium",
                                      "Sceletium tortuosum"}));
}

TEST(Catalogue, ASourceIsFoundByItsId) {
  const Catalogue catalogue = few_genera();
  ASSERT_NE(catalogue.source("book"), nullptr);
  EXPECT_EQ(catalogue.source("book")->year, 2004);
  EXPECT_EQ(catalogue.source("Book"), nullptr);
}

TEST(Catalogue, TheFirstFaultIsRefusedWithFileLineAndColumn) {
  EXPECT_EQ(refusal_of({family_text(""), family_text(R"({"genus": "aloe"})", "Oxaceae")}),
            "file2.json:3:2: genus \"aloe\"; expected one word that begins with a capital");
  EXPECT_EQ(
      refusal_of(
          {family_text(R"({"genus": "Aloe"})"), family_text(R"({"genus": "Aloe"})", "Oxaceae")}),
      "file2.json:3:1: Aloe stands here, and as an entry of its own; expected each name once");
  EXPECT_NE(refusal_of({family_text("", "Testaceae", "{}")}).find("Testaceae gives no growth"),
            std::string::npos);
}

TEST(Catalogue, NoFilesMakeAnEmptyCatalogue) {
  EXPECT_EQ(refusal_of({}), "");
  EXPECT_EQ(refusal_of({family_text("", "Testaceae", family_defaults())}), "");
}

TEST(Catalogue, TellsTheOlderNamesOfAnAcceptedOne) {
  const Catalogue catalogue = few_genera();
  using Names = std::vector<std::string>;
  EXPECT_EQ(catalogue.older_names("Monsonia"), Names{"Sarcocaulon"});
  EXPECT_EQ(catalogue.older_names("Monsonia peniculina"), Names{"Sarcocaulon peniculinum"});
  EXPECT_EQ(catalogue.older_names("Mesembryanthemum"), (Names{"Phyllobolus", "Sceletium"}));
  EXPECT_EQ(catalogue.older_names("Mesembryanthemum tortuosum"), Names{"Sceletium tortuosum"});
  EXPECT_EQ(catalogue.older_names("Massonia"), Names{});
  EXPECT_EQ(catalogue.older_names("Sarcocaulon"), Names{});
}

} // namespace
} // namespace nightsow::species_rules
