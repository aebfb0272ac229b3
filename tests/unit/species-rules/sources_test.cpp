#include "species-rules/sources.hpp"

#include "tests/unit/species-rules/rule_texts.hpp"

#include <gtest/gtest.h>

namespace nightsow::species_rules {
namespace {

using rule_texts::texts_of;

SourceFile read_sources(std::string_view sources) {
  return read_source_file("{\"schema\": 1, \"sources\": {\n" + std::string{sources} + "\n}}",
                          "sources.json");
}

std::string only_fault(std::string_view sources) {
  const auto texts = texts_of(read_sources(sources).faults);
  return texts.size() == 1 ? texts.front() : std::to_string(texts.size()) + " faults";
}

TEST(SourceFile, ASourceIsKnownByItsId) {
  const auto file = read_sources(
      R"("a": {"kind": "book", "author": "A. Author", "title": "Seeds", "year": 1999})");
  const Source& source = file.sources.at("a");
  EXPECT_TRUE(file.faults.empty());
  EXPECT_EQ(source.id, "a");
  EXPECT_EQ(source.kind, "book");
  EXPECT_EQ(source.author, "A. Author");
  EXPECT_EQ(source.title, "Seeds");
  EXPECT_EQ(source.year, 1999);
}

TEST(SourceFile, AuthorAndYearMayBeNullOrLeftOut) {
  const auto file = read_sources(
      R"("a": {"kind": "note", "author": null, "title": "Mats", "year": null},
         "b": {"kind": "note", "title": "Mats"})");
  EXPECT_TRUE(file.faults.empty());
  EXPECT_EQ(file.sources.at("a").author, "");
  EXPECT_FALSE(file.sources.at("b").year);
}

TEST(SourceFile, ASourceListedTwiceIsRefusedWithItsPlace) {
  try {
    static_cast<void>(read_sources("\"a\": {},\n \"a\": {}"));
    FAIL();
  } catch (const InputError& error) {
    EXPECT_EQ(error.problem().line, 3U);
  }
}

TEST(SourceFile, FaultsAreToldWithLineAndColumn) {
  EXPECT_EQ(only_fault(R"("a": {"kind": "note", "title": "T", "autor": "A"})"),
            "sources.json:2:37: unknown key \"autor\"; expected \"author\" perhaps");
  EXPECT_EQ(only_fault(R"("a": {"kind": "book", "title": "T", "year": "old"})"),
            "sources.json:2:37: \"year\" is \"old\"; expected a whole number from 1500 to 2200; "
            "correct it");
  EXPECT_EQ(only_fault(R"("a": {"kind": "book"})"),
            "sources.json:2:1: a has no \"title\"; expected a title, or what the note is about");
  EXPECT_EQ(only_fault(R"("a": 5)"),
            "sources.json:2:1: \"a\" is 5; expected an object with kind, author, title and year; "
            "correct it");
}

TEST(SourceFile, APublicationHasAYearOrTellsWhyNot) {
  EXPECT_EQ(only_fault(R"("a": {"kind": "journal article", "title": "T"})"),
            "sources.json:2:1: a has no \"year\"; expected the year in which a publication came "
            "out; look it up, or say in \"undated\" why none is known");
  const auto file = read_sources(
      R"("a": {"kind": "thesis", "title": "T", "undated": "the pages read give no year"})");
  EXPECT_TRUE(file.faults.empty());
  EXPECT_EQ(file.sources.at("a").undated, "the pages read give no year");
  EXPECT_EQ(only_fault(R"("a": {"kind": "book", "title": "T", "year": 1999, "undated": "lost"})"),
            "sources.json:2:1: a has both \"year\" and \"undated\"; expected one of them; take "
            "\"undated\" out");
}

TEST(SourceFile, GrowersAndSellersAreNotNamed) {
  EXPECT_EQ(only_fault(R"("a": {"kind": "grower's page", "author": "A. Grower", "title": "T"})"),
            "sources.json:2:1: a names an author; expected a grower or seller by kind and subject "
            "only; take \"author\" out");
}

TEST(SourceFile, AnotherSchemaIsAFault) {
  const auto faults = read_source_file(R"({"schema": 2, "sources": {}})", "sources.json").faults;
  EXPECT_EQ(texts_of(faults),
            std::vector<std::string>{"sources.json:1:2: \"schema\" is 2; expected 1; correct it"});
}

} // namespace
} // namespace nightsow::species_rules
