#include "tests/scenarios/scenario.hpp"

#include <functional>
#include <map>
#include <regex>
#include <sstream>
#include <stdexcept>
#include <utility>

namespace nightsow::scenarios {

namespace {

using Parts = std::vector<std::string>;

// Each is given what stands behind its word, and says whether it was understood.
using Reader = std::function<bool(const std::string&, Scenario&)>;

double number(const std::string& digits) {
  return std::stod(digits);
}

bool read_nights(const std::string& words, Scenario& scenario) {
  const Parts parts = parts_of(
      words, R"((-?[\d.]+) in the hottest, (-?[\d.]+) in the coldest, single nights \+-([\d.]+))");
  if (parts.empty()) {
    return false;
  }
  support::InventedClimate& climate = scenario.garden.climate;
  climate.night_mean_c = (number(parts[1]) + number(parts[2])) / 2.0;
  climate.night_half_swing_k = (number(parts[1]) - number(parts[2])) / 2.0;
  climate.night_sd_k = number(parts[3]);
  return true;
}

bool read_days(const std::string& words, Scenario& scenario) {
  const Parts parts = parts_of(words, R"(([\d.]+) above nights)");
  if (!parts.empty()) {
    scenario.garden.climate.day_above_night_k = number(parts[1]);
  }
  return !parts.empty();
}

bool read_latitude(const std::string& words, Scenario& scenario) {
  const Parts parts = parts_of(words, R"(([\d.]+) degrees from the equator)");
  if (!parts.empty()) {
    scenario.garden.degrees_from_equator = number(parts[1]);
  }
  return !parts.empty();
}

bool read_today(const std::string& words, Scenario& scenario) {
  scenario.today = parse_iso_date(words);
  const Parts parts = parts_of(words, R"((\d+) days? (before|after) the hottest night)");
  if (!parts.empty()) {
    const int days = std::stoi(parts[1]);
    scenario.garden.days_after_hottest = parts[2] == "after" ? days : -days;
  }
  return scenario.today || !parts.empty();
}

bool read_bench(const std::string& words, Scenario& scenario) {
  const Parts parts = parts_of(words, R"(([^,]+), nights ([+-][\d.]+), days ([+-][\d.]+))");
  if (!parts.empty()) {
    scenario.garden.benches.push_back(
        support::bench_with(parts[1], number(parts[2]), number(parts[3])));
  }
  return !parts.empty();
}

bool read_mat(const std::string& words, Scenario& scenario) {
  const Parts parts = parts_of(words, R"(\+([\d.]+), thermostat ([\d.]+))");
  if (!parts.empty()) {
    scenario.garden.mats.push_back(support::mat_with(number(parts[1]), number(parts[2])));
  }
  return !parts.empty();
}

bool read_packet(const std::string& words, Scenario& scenario) {
  scenario.garden.packets.push_back(words);
  try {
    static_cast<void>(support::packet_from(words, Date{}));
  } catch (const std::invalid_argument&) {
    return false;
  }
  return true;
}

bool read_readings(const std::string& words, Scenario& scenario) {
  const Parts parts = parts_of(words, R"(([\w.-]+\.csv)(, in the north)?)");
  if (parts.empty()) {
    return false;
  }
  scenario.readings = parts[1];
  scenario.measured_in_the_north = !parts[2].empty();
  return true;
}

bool read_title(const std::string& words, Scenario& scenario) {
  scenario.title = words;
  return true;
}

bool read_source(const std::string& words, Scenario& scenario) {
  scenario.source = words;
  return true;
}

const std::map<std::string, Reader, std::less<>>& readers() {
  static const std::map<std::string, Reader, std::less<>> table{
      {"bench", read_bench},
      {"days", read_days},
      {"latitude", read_latitude},
      {"mat", read_mat},
      {"nights", read_nights},
      {"packet", read_packet},
      {"readings", read_readings},
      {"scenario", read_title},
      {"source", read_source},
      {"today", read_today},
  };
  return table;
}

std::string in_place(const Line& line, const std::string& fault) {
  return "line " + std::to_string(line.number) + ": " + fault + ": " + line.text;
}

void read_expectation(const Line& line, const std::string& words, Scenario& scenario) {
  const Parts parts = parts_of(words, "([^:]+): (.+)");
  if (parts.empty()) {
    scenario.faults.push_back(in_place(line, "expect needs a subject, a colon and a claim"));
    return;
  }
  scenario.expectations.push_back({line, parts[1], parts[2]});
}

void read_line(const Line& line, Scenario& scenario) {
  const Parts parts = parts_of(line.text, R"((\w+)\s+(.*\S)\s*)");
  if (parts.empty()) {
    scenario.faults.push_back(in_place(line, "not a word and what belongs to it"));
  } else if (parts[1] == "expect") {
    read_expectation(line, parts[2], scenario);
  } else if (const auto reader = readers().find(parts[1]); reader == readers().end()) {
    scenario.faults.push_back(in_place(line, "unknown word"));
  } else if (!reader->second(parts[2], scenario)) {
    scenario.faults.push_back(in_place(line, "not understood"));
  }
}

void check_whole(Scenario& scenario) {
  const auto must = [&](bool is_so, const char* fault) {
    if (!is_so) {
      scenario.faults.emplace_back(fault);
    }
  };
  must(!scenario.title.empty(), "it must say what it is about: scenario …");
  must(!scenario.source.empty(), "it must say where it comes from: source …");
  must(!scenario.expectations.empty(), "it expects nothing");
  must(scenario.today.has_value() == !scenario.readings.empty(),
       "today is a date with measured readings, else days from the hottest night");
}

} // namespace

Scenario read_scenario(std::string_view text) {
  Scenario scenario;
  scenario.garden.climate.hottest_day_of_year = support::hottest_in_the_south;
  std::istringstream lines{std::string(text)};
  Line line;
  while (std::getline(lines, line.text)) {
    ++line.number;
    if (line.text.find_first_not_of(' ') != std::string::npos && line.text.front() != '#') {
      read_line(line, scenario);
    }
  }
  check_whole(scenario);
  return scenario;
}

std::vector<std::string> parts_of(const std::string& text, const std::string& expression) {
  std::smatch found;
  if (!std::regex_match(text, found, std::regex(expression))) {
    return {};
  }
  return {found.begin(), found.end()};
}

} // namespace nightsow::scenarios
