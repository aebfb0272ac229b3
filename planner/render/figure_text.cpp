#include "planner/render/figure_text.hpp"

#include "climate/base/celsius.hpp"

#include <fmt/format.h>

#include <cmath>

namespace nightsow::planner {

namespace {

std::string with_noun(const std::string& number, std::string_view noun) {
  return number == "1" ? fmt::format("1 {}", noun) : fmt::format("{} {}s", number, noun);
}

} // namespace

std::string number_text(double number) {
  std::string text = fmt::format("{:.1f}", number);
  if (text.ends_with(".0")) {
    text.resize(text.size() - 2);
  }
  return text == "-0" ? "0" : text;
}

std::string whole_text(double number) {
  const std::string text = fmt::format("{:.0f}", number);
  return text == "-0" ? "0" : text;
}

std::string difference_text(double kelvin, const TextStyle& style, bool sign) {
  const double shown = style.fahrenheit ? to_fahrenheit_degrees(CelsiusDelta{kelvin}) : kelvin;
  const std::string number = sign ? fmt::format("{:+.1f}", shown) : fmt::format("{:.1f}", shown);
  return number + (style.fahrenheit ? " °F" : " K");
}

// Growers count pots, not per cent. The edges lie where the next wording is as near.
std::string share_text(double share) {
  if (share <= 0.0) {
    return "none";
  }
  if (share < 0.03) {
    return "hardly any";
  }
  if (share >= 1.0) {
    return "all";
  }
  if (share >= 0.95) {
    return "nearly all";
  }
  if (share < 0.38) {
    return fmt::format("about 1 in {:.0f}", 1.0 / share);
  }
  const double tenths = std::round(share * 10.0);
  return tenths == 5.0 ? "about half" : fmt::format("about {:.0f} in 10", tenths);
}

std::string percent_text(double share) {
  return number_text(share * 100.0) + " %";
}

std::string counted_text(double number, std::string_view noun) {
  if (noun == "year" && number < 0.95) {
    const std::string months = whole_text(number * 12.0);
    return months == "0" ? "under a month" : with_noun(months, "month");
  }
  return with_noun(number_text(number), noun);
}

std::string place_text(double latitude, double longitude) {
  return fmt::format("{:.1f}° {}, {:.1f}° {}",
                     std::abs(latitude),
                     latitude < 0.0 ? 'S' : 'N',
                     std::abs(longitude),
                     longitude < 0.0 ? 'W' : 'E');
}

} // namespace nightsow::planner
