#include "climate/base/located_json.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>
#include <string_view>

namespace nightsow {
namespace {

Problem refusal(std::string_view text) {
  try {
    static_cast<void>(LocatedJson::parse(text, "g.json"));
  } catch (const InputError& error) {
    return error.problem();
  }
  ADD_FAILURE() << "accepted: " << text;
  return {};
}

// "line:column" of the value a pointer names.
std::string place(std::string_view text, std::string_view pointer) {
  const Problem problem = LocatedJson::parse(text, "g.json").problem_at(pointer, "", "", "");
  return std::to_string(problem.line) + ':' + std::to_string(problem.column);
}

std::string place(const Problem& problem) {
  return std::to_string(problem.line) + ':' + std::to_string(problem.column);
}

TEST(LocatedJson, GivesTheValueInTheOrderOfTheFile) {
  const LocatedJson json = LocatedJson::parse(R"({"z": 1, "a": [2.5, "x", null, true]})", "g.json");
  EXPECT_EQ(json.value().dump(), R"({"z":1,"a":[2.5,"x",null,true]})");
  EXPECT_EQ(json.where(), "g.json");
}

TEST(LocatedJson, SaysWhereAMemberStands) {
  const std::string_view text = "{\n  \"name\": \"here\",\n  \"place\": {\"lat\": -33}\n}";
  EXPECT_EQ(place(text, "/name"), "2:3");
  EXPECT_EQ(place(text, "/place"), "3:3");
  EXPECT_EQ(place(text, "/place/lat"), "3:13");
  EXPECT_EQ(place(text, ""), "1:1");
}

TEST(LocatedJson, SaysWhereAnElementStands) {
  EXPECT_EQ(place("[\"a\",\n \"bb\"]", "/1"), "2:2");
  EXPECT_EQ(place("[{},\n {}]", "/1"), "2:2");
}

TEST(LocatedJson, SaysWhereANumberInAListStands) {
  EXPECT_EQ(place("[1, 22, 333]", "/0"), "1:2");
  EXPECT_EQ(place("[1, 22, 333]", "/1"), "1:5");
  EXPECT_EQ(place("[1, 22, 333]", "/2"), "1:9");
}

TEST(LocatedJson, SaysWhereALiteralInAListStands) {
  EXPECT_EQ(place("[true, false, null, 1.5]", "/0"), "1:2");
  EXPECT_EQ(place("[true, false, null, 1.5]", "/1"), "1:8");
  EXPECT_EQ(place("[true, false, null, 1.5]", "/2"), "1:15");
  EXPECT_EQ(place("[true, false, null, 1.5]", "/3"), "1:21");
}

TEST(LocatedJson, AnAbsentValueIsPlacedAtItsNearestParent) {
  const std::string_view text = "{\n  \"benches\": [\n    {\"name\": \"b\"}\n  ]\n}";
  EXPECT_EQ(place(text, "/benches/0/rain"), place(text, "/benches/0"));
  EXPECT_EQ(place(text, "/benches/7/rain"), "2:3");
  EXPECT_EQ(place(text, "/mats"), "1:1");
}

TEST(LocatedJson, KeysWithSlashesAndTildesArePointers) {
  EXPECT_EQ(place("{\n\"a/b\": 1}", "/a~1b"), "2:1");
  EXPECT_EQ(place("{\n\"a~b\": 1}", "/a~0b"), "2:1");
}

TEST(LocatedJson, AProblemCarriesWhatItIsTold) {
  const LocatedJson json = LocatedJson::parse(R"({"a": 1})", "g.json");
  const Problem problem = json.problem_at("/a", "1", "a name", "write one", Severity::warning);
  EXPECT_EQ(problem,
            (Problem{Severity::warning, "g.json", 1, 2, "1", "a name", "write one", "/a"}));
}

TEST(LocatedJson, RefusesASyntaxErrorWithItsPlace) {
  const Problem problem = refusal("{\n  \"a\": 1,\n  \"b\" 2\n}");
  EXPECT_EQ(problem.where, "g.json");
  EXPECT_EQ(place(problem), "3:7");
}

TEST(LocatedJson, RefusesATextThatEndsTooEarly) {
  EXPECT_NE(refusal(R"({"a": [1, 2)").found.find("too early"), std::string::npos);
  EXPECT_NE(refusal("").found.find("too early"), std::string::npos);
}

TEST(LocatedJson, RefusesADuplicateKeyWhereItStandsAgain) {
  const Problem problem = refusal("{\n  \"a\": 1,\n  \"a\": 2\n}");
  EXPECT_NE(problem.found.find(R"("a")"), std::string::npos);
  EXPECT_EQ(place(problem), "3:3");
}

TEST(LocatedJson, TheSameKeyInTwoObjectsIsNoDuplicate) {
  EXPECT_EQ(LocatedJson::parse(R"([{"a": 1}, {"a": 2}])", "g").value().size(), 2U);
}

TEST(LocatedJson, ReadsSixtyFourLevelsAndRefusesMore) {
  const auto nested = [](std::size_t depth) {
    return std::string(depth, '[') + std::string(depth, ']');
  };
  EXPECT_TRUE(LocatedJson::parse(nested(64), "g").value().is_array());
  EXPECT_NE(refusal(nested(65)).found.find("64"), std::string::npos);
}

TEST(LocatedJson, PassesOverComments) {
  const LocatedJson json = LocatedJson::parse("// mine\n{\"a\": /* here */ 1}\n", "g");
  EXPECT_EQ(json.value().dump(), R"({"a":1})");
}

TEST(LocatedJson, RefusesBytesThatAreNotUtf8) {
  const Problem problem = refusal("{\n\"a\": \"\xE9\"}");
  EXPECT_NE(problem.found.find("UTF-8"), std::string::npos);
  EXPECT_EQ(problem.line, 2U);
}

TEST(LocatedJson, ReadsUtf8) {
  EXPECT_EQ(LocatedJson::parse("\"\xC3\xA9\"", "g").value(), "\xC3\xA9");
}

TEST(LocatedJson, RefusesWhatIsAlmostJson) {
  for (const char* text : {"{'a': 1}",
                           "[1,]",
                           R"({"a": 1,})",
                           "[NaN]",
                           "[01]",
                           "[1.]",
                           "[+1]",
                           "[] []",
                           "nul",
                           "[\"a\nb\"]"}) {
    EXPECT_THROW(static_cast<void>(LocatedJson::parse(text, "g")), InputError) << text;
  }
}

} // namespace
} // namespace nightsow
