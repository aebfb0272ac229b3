#include "climate/readers/preamble.hpp"

#include "climate/base/csv.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/field_value.hpp"

#include <algorithm>
#include <optional>

namespace nightsow::climate {

namespace {

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool is_letter(char c) {
  return lower(c) >= 'a' && lower(c) <= 'z';
}

// What stands behind the label in the line; empty when the label is not there.
std::optional<std::string_view> behind_label(std::string_view line, std::string_view label) {
  const std::size_t at = find_caseless(line, label);
  if (at == std::string_view::npos || (at > 0 && is_letter(line[at - 1]))) {
    return std::nullopt;
  }
  std::string_view rest = line.substr(at + label.size());
  rest.remove_prefix(std::min(rest.find_first_not_of(" \t=:,;\""), rest.size()));
  return rest;
}

std::string_view up_to(std::string_view text, std::string_view ends) {
  return trimmed(text.substr(0, text.find_first_of(ends)));
}

std::optional<double> number_at_start(std::string_view text) {
  if (find_caseless(text, "(deg.min)") != std::string_view::npos) {
    return std::nullopt;
  }
  return read_decimal(text.substr(0, text.find_first_not_of("+-.0123456789")));
}

void take(StationFact fact, std::string_view rest, StationFacts& station) {
  switch (fact) {
  case StationFact::id:
    station.id = up_to(rest, " \t,;\"()");
    break;
  case StationFact::name:
    station.name = printable(up_to(rest, "\t;\"("));
    break;
  case StationFact::latitude:
    station.latitude = number_at_start(rest);
    break;
  case StationFact::longitude:
    station.longitude = number_at_start(rest);
    break;
  case StationFact::elevation:
    station.elevation_m = number_at_start(rest);
    break;
  case StationFact::said:
    break;
  }
}

} // namespace

std::size_t find_caseless(std::string_view text, std::string_view part) {
  const auto* const found =
      std::search(text.begin(), text.end(), part.begin(), part.end(), [](char a, char b) {
        return lower(a) == lower(b);
      });
  return found == text.end() && !part.empty() ? std::string_view::npos
                                              : static_cast<std::size_t>(found - text.begin());
}

StationFacts read_preamble(std::span<const PreambleFact> facts,
                           const Opening& opening,
                           std::size_t lines,
                           std::vector<std::string>& said) {
  StationFacts station;
  for (const PreambleFact& wanted : facts) {
    for (std::size_t i = 0; i < std::min(lines, opening.lines.size()); ++i) {
      const auto rest = behind_label(opening.lines[i], wanted.label);
      if (!rest) {
        continue;
      }
      if (wanted.fact == StationFact::said) {
        said.push_back("the file says: " + printable(trimmed(opening.lines[i]), 120));
      } else {
        take(wanted.fact, *rest, station);
      }
      break;
    }
  }
  return station;
}

} // namespace nightsow::climate
