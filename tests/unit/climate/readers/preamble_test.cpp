#include "climate/readers/preamble.hpp"

#include <gtest/gtest.h>

#include <array>

namespace nightsow::climate {
namespace {

constexpr std::array facts{PreambleFact{"station number", StationFact::id},
                           PreambleFact{"station name", StationFact::name},
                           PreambleFact{"latitude", StationFact::latitude},
                           PreambleFact{"longitude", StationFact::longitude},
                           PreambleFact{"altitude", StationFact::elevation},
                           PreambleFact{"days (", StationFact::said}};

StationFacts read(std::string_view text, std::vector<std::string>& said) {
  const Opening opening = opening_of(text);
  return read_preamble(facts, opening, opening.lines.size(), said);
}

StationFacts read(std::string_view text) {
  std::vector<std::string> said;
  return read(text, said);
}

TEST(Preamble, FactsStandBehindTheirLabels) {
  const StationFacts station = read("!Station number = 012345\n"
                                    "\"Station Name\",\"NO SUCH PLACE (DAM)\"\n"
                                    "Location: Latitude  -33.25   Longitude 19.5 \n"
                                    "Altitude=250(m)\n");
  EXPECT_EQ(station.id, "012345");
  EXPECT_EQ(station.name, "NO SUCH PLACE");
  EXPECT_EQ(station.latitude, -33.25);
  EXPECT_EQ(station.longitude, 19.5);
  EXPECT_EQ(station.elevation_m, 250.0);
}

TEST(Preamble, ALabelIsAWholeWord) {
  EXPECT_FALSE(read("colatitude = 3\n").latitude.has_value());
}

TEST(Preamble, DegreesAndMinutesAreNotTakenForDecimals) {
  EXPECT_FALSE(read("Latitude=37(deg.min)\n").latitude.has_value());
}

TEST(Preamble, SomeLinesAreRepeatedToThePerson) {
  std::vector<std::string> said;
  static_cast<void>(read("Days (local) through 2024 in LST\n", said));
  ASSERT_EQ(said.size(), 1U);
  EXPECT_EQ(said[0], "the file says: Days (local) through 2024 in LST");
}

} // namespace
} // namespace nightsow::climate
