#include "climate/base/json_node.hpp"

#include <gtest/gtest.h>

#include <array>
#include <functional>
#include <string>
#include <vector>

namespace nightsow {
namespace {

LocatedJson file_of(std::string_view text) {
  return LocatedJson::parse(text, "g.json");
}

// What a reading of the member "a" of this file is refused with.
std::string refusal(std::string_view text, const std::function<void(const JsonNode&)>& read) {
  const LocatedJson file = file_of(text);
  try {
    read(*JsonNode{file}.member_or_null("a"));
    return "accepted";
  } catch (const InputError& error) {
    return to_text(error.problem());
  }
}

TEST(JsonNode, AValueOfTheWrongKindIsShownWithItsPlace) {
  EXPECT_EQ(refusal(R"({"a": "x"})", [](const JsonNode& a) { static_cast<void>(a.number()); }),
            "g.json:1:2: \"a\" is \"x\"; expected a number; correct it");
  EXPECT_EQ(refusal(R"({"a": {}})", [](const JsonNode& a) { static_cast<void>(a.elements()); }),
            "g.json:1:2: \"a\" is an object; expected a list in [ ]; correct it");
  EXPECT_EQ(
      refusal(R"({"a": [1]})", [](const JsonNode& a) { static_cast<void>(a.members("a rule")); }),
      "g.json:1:2: \"a\" is a list of 1; expected a rule; correct it");
}

TEST(JsonNode, ABlankTextIsNoText) {
  const auto read = [](const JsonNode& a) { static_cast<void>(a.some_text()); };
  EXPECT_EQ(refusal(R"({"a": " "})", read),
            "g.json:1:2: \"a\" is \" \"; expected a text that is not empty; correct it");
  EXPECT_EQ(refusal(R"({"a": "b"})", read), "accepted");
}

TEST(JsonNode, NullCountsAsLeftOutUnlessItIsAskedFor) {
  const LocatedJson file = file_of(R"({"a": null})");
  const JsonNode whole{file};
  EXPECT_FALSE(whole.member("a"));
  ASSERT_TRUE(whole.member_or_null("a"));
  EXPECT_TRUE(whole.member_or_null("a")->is_null());
  EXPECT_FALSE(whole.member_or_null("b"));
}

TEST(JsonNode, AProblemNamesThePointerOfAKeyWithSlashes) {
  const LocatedJson file = file_of(R"({"a/b": [1, "c~d"]})");
  const JsonNode list = *JsonNode{file}.member("a/b");
  EXPECT_EQ(list.elements()[1].problem("", "").pointer, "/a~1b/1");
  EXPECT_EQ(list.elements()[1].name(), "a/b[1]");
}

TEST(JsonNode, AReaderThatNotesFaultsGoesOnToTheNextPart) {
  const LocatedJson file = file_of(R"({"a": [1, "two", 3, null]})");
  std::vector<Problem> faults;
  double sum = 0.0;
  for (const JsonNode& part : JsonNode{file}.member("a")->elements()) {
    sum += read_or_note(faults, [&] { return part.number(); }).value_or(0.0);
  }
  EXPECT_EQ(sum, 4.0);
  ASSERT_EQ(faults.size(), 2U);
  EXPECT_EQ(faults[0].found, R"("a[1]" is "two")");
  EXPECT_EQ(faults[1].found, R"("a[3]" is null)");
}

} // namespace
} // namespace nightsow
