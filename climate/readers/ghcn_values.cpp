#include "climate/readers/ghcn_values.hpp"

#include "climate/base/csv.hpp"
#include "climate/readers/field_value.hpp"

#include <algorithm>

namespace nightsow::climate {

namespace {

bool is_capital(char c) {
  return c >= 'A' && c <= 'Z';
}

bool is_capital_or_digit(char c) {
  return is_capital(c) || (c >= '0' && c <= '9');
}

} // namespace

GhcnElement ghcn_element(std::string_view code) {
  if (code == "TMIN") {
    return GhcnElement::night;
  }
  return code == "TMAX" ? GhcnElement::day : GhcnElement::other;
}

bool is_ghcn_station(std::string_view id) {
  return id.size() == 11 && is_capital(id[0]) && is_capital(id[1]) &&
         std::all_of(id.begin(), id.end(), [](char c) {
           return is_capital_or_digit(c) || c == '_' || c == '-';
         });
}

bool is_ghcn_element(std::string_view code) {
  return code.size() == 4 && is_capital(code[0]) &&
         std::all_of(code.begin(), code.end(), is_capital_or_digit);
}

std::optional<float> read_tenths(std::string_view field) {
  if (const auto tenths = read_whole(field)) {
    return celsius_of_tenths(*tenths);
  }
  return is_missing_word(field) ? std::optional(missing_c) : std::nullopt;
}

} // namespace nightsow::climate
