#include "planner/render/words.hpp"

#include "tests/support/source_folder.hpp"
#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <regex>
#include <set>
#include <stdexcept>
#include <vector>

namespace nightsow::planner {
namespace {

// The codes as the header lists them, so that one added there cannot be forgotten here.
std::vector<std::string> codes_in_header() {
  std::ifstream file{support::source_folder() / "planner/answers/reason.hpp"};
  std::string text{std::istreambuf_iterator<char>{file}, {}};
  text = text.substr(text.find("enum class ReasonCode {"));
  text = text.substr(0, text.find("};"));
  const std::regex code{"\n  ([a-z_]+),"};
  std::vector<std::string> codes;
  for (std::sregex_iterator at{text.begin(), text.end(), code}; at != std::sregex_iterator{};
       ++at) {
    codes.push_back((*at)[1]);
  }
  return codes;
}

std::string said(const Reason& reason, const TextStyle& style = {}) {
  return sentence(reason, style);
}

TEST(Words, EveryCodeOfTheHeaderHasItsNameAndASentence) {
  const std::vector<std::string> codes = codes_in_header();
  ASSERT_EQ(codes.size(), wordings().size());
  for (std::size_t i = 0; i < codes.size(); ++i) {
    const Wording& wording = wordings()[i];
    EXPECT_EQ(name_of(wording.code), codes[i]);
    EXPECT_EQ(wording.code, static_cast<ReasonCode>(i)) << codes[i];
    EXPECT_FALSE(wording.text.empty()) << codes[i];
  }
}

TEST(Words, EverySentenceIsWholeOnceItHasItsValues) {
  for (const Wording& wording : wordings()) {
    const std::string text = said(complete_reason(wording));
    EXPECT_EQ(text.find_first_of("{}[]"), std::string::npos) << text;
    if (wording.code != ReasonCode::file_problem) {
      EXPECT_TRUE(text.ends_with('.') || text.ends_with('?')) << text;
    }
  }
}

TEST(Words, NoSentenceSpeaksOfPercentilesOrOfDeadSeedAlone) {
  for (const Wording& wording : wordings()) {
    const std::string text{wording.text};
    for (const std::string_view word : {"p10", "p90", "percentile", "CRPS", "give up", "ead"}) {
      EXPECT_EQ(text.find(" " + std::string{word} + " "), std::string::npos) << text;
    }
  }
}

TEST(Words, NumbersDegreesAndNamesStandWhereTheyBelong) {
  EXPECT_EQ(said(waits_reason()),
            "Waits for cool nights on the cold frame: 3 of the last 14 at or under 13 °C, 10 are "
            "needed.");
}

TEST(Words, AReasonWithoutOneOfItsValuesIsAFaultOfOurs) {
  Reason reason = waits_reason();
  reason.values.pop_back();
  EXPECT_THROW(static_cast<void>(said(reason)), std::logic_error);
}

TEST(Words, ACodeThatDoesNotExistIsAFaultOfOurs) {
  EXPECT_THROW(static_cast<void>(said({static_cast<ReasonCode>(1000), {}})), std::logic_error);
}

TEST(Words, APartInBracketsGoesWhenItsValueIsMissingOrEmpty) {
  const NamedValue written{"written", std::string{"Lachenallia"}};
  const std::string plain = "No rule is known for Lachenallia.";
  EXPECT_EQ(said({ReasonCode::unknown_taxon, {written}}), plain);
  EXPECT_EQ(said({ReasonCode::unknown_taxon, {written, {"suggestion", std::string{}}}}), plain);
}

TEST(Words, FadingSeedIsToBeSownNotGivenUp) {
  const Reason reason{ReasonCode::seed_fading, {{"alive", Share{0.5}}, {"age_years", 1.3}}};
  EXPECT_EQ(
      said(reason),
      "This seed fades: at an age of 1.3 years, about half of it is still alive. Sow all of it "
      "this season.");
}

TEST(Words, OneDayIsNotOneDays) {
  const Reason reason{ReasonCode::readings_stale, {{"last", day("2026-02-19")}, {"days", 1}}};
  EXPECT_NE(said(reason).find("19 Feb 2026, 1 day ago"), std::string::npos) << said(reason);
}

TEST(Words, DifferencesShowTheirSignWhereItMatters) {
  const Reason reason{ReasonCode::bench_by_offset,
                      {{"bench", std::string{"cold frame"}},
                       {"night_k", CelsiusDelta{2.0}},
                       {"day_k", CelsiusDelta{-1.0}}}};
  EXPECT_NE(said(reason).find("+2.0 K at night, -1.0 K by day"), std::string::npos) << said(reason);
}

TEST(Words, AFahrenheitReaderGetsEveryTemperatureInFahrenheit) {
  TextStyle style;
  style.fahrenheit = true;
  EXPECT_EQ(temperature_text(13.0, style), "55 °F");
  EXPECT_NE(said(waits_reason(), style).find("under 55 °F"), std::string::npos);
}

TEST(Words, ACodeWordInsideAReasonIsSaidInPlainWords) {
  const Reason reason{ReasonCode::no_cooling_limb,
                      {{"swing_k", CelsiusDelta{3.1}}, {"why", std::string{"swing_too_small"}}}};
  EXPECT_NE(said(reason).find("the year is too even"), std::string::npos) << said(reason);
}

} // namespace
} // namespace nightsow::planner
