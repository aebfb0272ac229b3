#include "species-rules/rule_file.hpp"

#include "tests/unit/species-rules/rule_texts.hpp"

#include <gtest/gtest.h>

namespace nightsow::species_rules {
namespace {

using rule_texts::family_text;
using rule_texts::read;
using rule_texts::texts_of;

// A family with one genus that has this rule, on line 3; the rule begins at column 28.
FamilyFile with_rule(std::string_view rule) {
  return read(family_text(R"({"genus": "Aloe", "rule": {)" + std::string{rule} + "}}"));
}

std::string only_fault(const FamilyFile& file) {
  const auto texts = texts_of(file.faults);
  return texts.size() == 1 ? texts.front() : std::to_string(texts.size()) + " faults";
}

std::string fault_in(std::string_view rule) {
  return only_fault(with_rule(rule));
}

TEST(RuleFile, ANumberKeepsItsRangeEvidenceSourceAndLevel) {
  const auto file = with_rule(R"("night_limit_c": {"value": 14, "low": 11.5, "high": 16.5,
                                  "evidence": "experiment", "source": "book"})");
  const Estimate wanted{14, 11.5, 16.5, {Evidence::experiment, "book", Origin::genus}};
  EXPECT_TRUE(file.faults.empty());
  EXPECT_EQ(file.genera.at(0).rule.gate.night_limit_c, wanted);
}

TEST(RuleFile, AWordKeepsItsEvidenceAndLevel) {
  const auto file = read(family_text(
      R"({"genus": "Aloe", "species": [{"species": "vera", "rule":
          {"start": {"value": "hot", "evidence": "common_practice", "source": null}}}]})"));
  const Choice<Start> wanted{Start::hot, {Evidence::common_practice, "", Origin::species}};
  EXPECT_EQ(file.genera.at(0).species.at(0).rule.gate.start, wanted);
}

TEST(RuleFile, CautionsAndNotesAreLists) {
  const auto file = with_rule(
      R"("cautions": [{"value": "spines", "evidence": "memory"}],
         "notes": [{"value": "Some sow deep.", "evidence": "grower", "source": "book"}])");
  EXPECT_TRUE(file.faults.empty());
  EXPECT_EQ(file.genera.at(0).rule.cautions.at(0).value, "spines");
  EXPECT_EQ(file.genera.at(0).rule.notes.at(0).ground.source, "book");
}

TEST(RuleFile, NamesAndOldNamesAreKept) {
  const auto file = read(family_text(
      R"({"genus": "Aloidendron", "synonyms": ["Oldaloe"], "accepted_genus": "Aloe", "species":
          [{"species": "pillansii", "synonyms": ["Aloe dichotoma subsp. pillansii"]}]})"));
  const GenusEntry& genus = file.genera.at(0);
  EXPECT_EQ(file.family, "Testaceae");
  EXPECT_EQ(genus.accepted_genus, "Aloe");
  EXPECT_EQ(genus.synonyms.at(0).name, "Oldaloe");
  EXPECT_EQ(genus.species.at(0).synonyms.at(0).name, "Aloe dichotoma pillansii");
  EXPECT_EQ(genus.place.line, 3U);
}

TEST(RuleFile, AFieldThatIsNotGivenStaysEmpty) {
  const auto file = with_rule("");
  EXPECT_FALSE(file.genera.at(0).rule.gate.night_limit_c);
  EXPECT_TRUE(file.rule.gate.night_limit_c);
}

TEST(RuleFile, AnUnknownFieldIsToldWithTheNearestOne) {
  EXPECT_EQ(fault_in(R"("night_limit": {})"),
            "Testaceae.json:3:28: unknown key \"night_limit\"; expected \"night_limit_c\" perhaps");
}

TEST(RuleFile, AnUnknownFieldThatIsNearNothingIsToldWithWhereAllOfThemStand) {
  const std::string said = fault_in(R"("colour": {})");
  EXPECT_NE(said.find("`nightsow rules schema` lists them"), std::string::npos) << said;
  EXPECT_LT(said.size(), 160U) << "half a hundred names say nothing";
}

TEST(RuleFile, AFaultyGroundHidesNoDisorderOfItsNumber) {
  const auto file = with_rule(R"("night_limit_c":
      {"value": 3, "low": 5, "high": 4, "evidence": "memory", "source": "not-listed"})");
  ASSERT_EQ(file.faults.size(), 2U);
  EXPECT_NE(file.faults[0].found.find("not-listed"), std::string::npos);
  EXPECT_EQ(file.faults[1].expected, "low <= value <= high");
}

TEST(RuleFile, NotesOfGenusAndFamilyMayBeLeftOut) {
  EXPECT_TRUE(with_rule(R"("only_own_notes": true)").genera.at(0).rule.only_own_notes);
  EXPECT_FALSE(with_rule("").genera.at(0).rule.only_own_notes);
  EXPECT_FALSE(fault_in(R"("only_own_notes": "yes")").empty());
}

TEST(RuleFile, AnUnknownKeyOfAValueIsTold) {
  EXPECT_EQ(fault_in(R"("mat": {"value": "needed", "evidence": "memory", "sorce": "book"})"),
            "Testaceae.json:3:77: unknown key \"sorce\"; expected \"source\" perhaps");
}

TEST(RuleFile, AnUnknownWordIsToldWithTheAllowedOnes) {
  EXPECT_EQ(fault_in(R"("start": {"value": "kool", "evidence": "memory"})"),
            "Testaceae.json:3:38: start \"kool\"; expected one of cool, hot, any, at_once; "
            "\"cool\" perhaps");
  EXPECT_EQ(fault_in(R"("start": {"value": "lukewarm", "evidence": "memory"})"),
            "Testaceae.json:3:38: start \"lukewarm\"; expected one of cool, hot, any, at_once");
}

TEST(RuleFile, AnUnknownEvidenceIsTold) {
  EXPECT_EQ(fault_in(R"("start": {"value": "cool", "evidence": "memroy"})"),
            "Testaceae.json:3:55: evidence \"memroy\"; expected one of experiment, institution, "
            "grower, common_practice, relatives, memory; \"memory\" perhaps");
}

TEST(RuleFile, AnUnknownCautionCodeIsTold) {
  const auto fault = fault_in(R"("cautions": [{"value": "spine", "evidence": "memory"}])");
  EXPECT_NE(fault.find("cautions \"spine\"; expected one of sap_irritant, "), std::string::npos);
  EXPECT_NE(fault.find("\"spines\" perhaps"), std::string::npos);
}

// The text of a night limit with this value, low and high.
std::string night_limit(std::string_view value, std::string_view low, std::string_view high) {
  return R"("night_limit_c": {"value": )" + std::string{value} + R"(, "low": )" + std::string{low} +
         R"(, "high": )" + std::string{high} + R"(, "evidence": "memory"})";
}

TEST(RuleFile, ANightLimitInFahrenheitIsSuspected) {
  EXPECT_EQ(fault_in(night_limit("57", "14", "14")),
            "Testaceae.json:3:46: night_limit_c: value 57; expected -5 to 30 °C; "
            "Fahrenheit suspected: 57 °F is 13.9 °C");
}

TEST(RuleFile, WhatIsTooHotInFahrenheitTooIsNotSuspected) {
  EXPECT_EQ(fault_in(night_limit("200", "14", "14")),
            "Testaceae.json:3:46: night_limit_c: value 200; expected -5 to 30 °C");
}

TEST(RuleFile, BoundsAreIncludedAndHoldForTheWholeRange) {
  EXPECT_TRUE(with_rule(night_limit("-5", "-5", "30")).faults.empty());
  EXPECT_EQ(fault_in(night_limit("14", "-5.1", "30")),
            "Testaceae.json:3:59: night_limit_c: low -5.1; expected -5 to 30 °C");
  EXPECT_EQ(with_rule(night_limit("30.1", "-5.1", "31")).faults.size(), 3U);
}

TEST(RuleFile, AValueMustLieInItsOwnRange) {
  EXPECT_EQ(fault_in(night_limit("14", "15", "16")),
            "Testaceae.json:3:28: night_limit_c: value 14, low 15, high 16; "
            "expected low <= value <= high");
  EXPECT_EQ(with_rule(night_limit("14", "12", "13")).faults.size(), 1U);
  EXPECT_TRUE(with_rule(night_limit("14", "14", "14")).faults.empty());
}

TEST(RuleFile, ANumberWithoutRangeIsTold) {
  EXPECT_EQ(fault_in(R"("cover_mm": {"value": 3, "low": 2, "evidence": "memory"})"),
            "Testaceae.json:3:28: cover_mm has no \"high\"; expected 0 to 100 mm");
}

TEST(RuleFile, AWrongTypeIsTold) {
  EXPECT_EQ(fault_in(R"("cover_mm": 3)"),
            "Testaceae.json:3:28: \"cover_mm\" is 3; expected an object with value, low, high, "
            "evidence and source; correct it");
  EXPECT_EQ(fault_in(R"("start": null)"),
            "Testaceae.json:3:28: \"start\" is null; expected an object with value, evidence and "
            "source; correct it");
  EXPECT_EQ(fault_in(R"("notes": "slow")"),
            "Testaceae.json:3:28: \"notes\" is \"slow\"; expected a list in [ ]; correct it");
  EXPECT_EQ(fault_in(night_limit("\"14\"", "14", "14")),
            "Testaceae.json:3:46: \"value\" is \"14\"; expected a number; correct it");
}

TEST(RuleFile, AMissingSourceIsToldWhereTheEvidenceNeedsOne) {
  EXPECT_EQ(fault_in(R"("mat": {"value": "needed", "evidence": "grower", "source": null})"),
            "Testaceae.json:3:28: mat: no source; expected a source beside evidence \"grower\"");
  EXPECT_EQ(fault_in(R"("mat": {"value": "needed", "evidence": "relatives"})"), "0 faults");
}

TEST(RuleFile, ASourceThatIsNotListedIsTold) {
  EXPECT_EQ(fault_in(R"("mat": {"value": "needed", "evidence": "memory", "source": "boook"})"),
            "Testaceae.json:3:77: source \"boook\" is not listed; expected an id of sources.json; "
            "\"book\" perhaps");
}

TEST(RuleFile, EveryFaultIsFoundInOneReading) {
  const auto file = with_rule(R"("mat": 1, "cover": 2, "light": 3)");
  EXPECT_EQ(file.faults.size(), 3U);
}

TEST(RuleFile, NamesThatAreNoBotanicalNamesAreTold) {
  EXPECT_EQ(only_fault(read(family_text(R"({"genus": "aloe"})"))),
            "Testaceae.json:3:2: genus \"aloe\"; expected one word that begins with a capital");
  EXPECT_EQ(only_fault(read(family_text(R"({"genus": "Aloe", "species": [{"species": "Vera"}]})"))),
            "Testaceae.json:3:32: species \"Vera\"; expected one word of small letters");
  EXPECT_NE(only_fault(read(family_text(R"({"genus": "Aloe", "synonyms": ["Aloe vera"]})")))
                .find("3:32: synonyms[0] \"Aloe vera\"; expected one word"),
            std::string::npos);
}

TEST(RuleFile, AFileWithoutItsPartsIsTold) {
  EXPECT_EQ(only_fault(read(R"({"schema": 1, "family": "Aaceae", "rule": {}})")),
            "Testaceae.json:1:1: the file has no \"genera\"; expected a list of genera");
  EXPECT_EQ(only_fault(read(R"({"schema": 3, "family": "Aaceae", "rule": {}, "genera": []})")),
            "Testaceae.json:1:2: \"schema\" is 3; expected 1; correct it");
  EXPECT_EQ(only_fault(read("[]")),
            "Testaceae.json:1:1: the file is a list of 0; expected an object with schema, family, "
            "rule and genera; correct it");
}

TEST(RuleFile, ATextThatIsNoJsonIsRefused) {
  EXPECT_THROW(static_cast<void>(read("{")), InputError);
}

} // namespace
} // namespace nightsow::species_rules
