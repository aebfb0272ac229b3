#include "planner/render/words.hpp"

#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plain_words.hpp"
#include "planner/render/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <stdexcept>
#include <string_view>

namespace nightsow::planner {

namespace {

struct Placeholder {
  std::string_view name;
  std::string_view form; ///< what stands behind the colon
};

Placeholder placeholder(std::string_view inside) {
  const std::size_t colon = inside.find(':');
  if (colon == std::string_view::npos) {
    return {inside, {}};
  }
  return {inside.substr(0, colon), inside.substr(colon + 1)};
}

/// One value of a reason as text.
struct ValueText {
  const Placeholder& place;
  const TextStyle& style;

  std::string operator()(int number) const {
    const bool counts = !place.form.empty() && place.form != "0" && place.form != "+";
    return counts ? counted_text(number, place.form) : std::to_string(number);
  }

  std::string operator()(double number) const {
    if (place.form.empty()) {
      return number_text(number);
    }
    return place.form == "0" ? whole_text(number) : counted_text(number, place.form);
  }

  std::string operator()(Share share) const { return share_text(share.value); }

  std::string operator()(Celsius point) const { return temperature_text(point.degrees(), style); }

  std::string operator()(CelsiusDelta difference) const {
    return difference_text(difference.kelvin(), style, place.form == "+");
  }

  std::string operator()(Date day) const { return date_text(day); }

  std::string operator()(const std::string& text) const { return plain_word(place.name, text); }
};

const NamedValue* find_value(const Reason& reason, std::string_view name) {
  const auto found = std::find_if(reason.values.begin(),
                                  reason.values.end(),
                                  [&](const auto& value) { return value.name == name; });
  return found == reason.values.end() ? nullptr : &*found;
}

/// What could be filled in, or the name of the value that was missing.
struct Filled {
  std::string text;
  std::optional<std::string_view> missing;
};

// A part without brackets in it.
Filled fill_part(std::string_view part, const Reason& reason, const TextStyle& style) {
  Filled filled;
  while (!part.empty()) {
    const std::size_t open = std::min(part.find('{'), part.size());
    filled.text += part.substr(0, open);
    part.remove_prefix(open);
    if (part.empty()) {
      break;
    }
    const std::size_t close = part.find('}');
    const Placeholder place = placeholder(part.substr(1, close - 1));
    const NamedValue* value = find_value(reason, place.name);
    const std::string text =
        value == nullptr ? "" : std::visit(ValueText{place, style}, value->value);
    if (text.empty()) {
      filled.missing = place.name;
    }
    filled.text += text;
    part.remove_prefix(close + 1);
  }
  return filled;
}

std::string_view wording_of(ReasonCode code) {
  for (const auto& wording : wordings()) {
    if (wording.code == code) {
      return wording.text;
    }
  }
  throw std::logic_error(fmt::format("reason '{}' has no sentence", name_of(code)));
}

} // namespace

std::string sentence(const Reason& reason, const TextStyle& style) {
  std::string_view rest = wording_of(reason.code);
  std::string text;
  while (!rest.empty()) {
    const bool optional_part = rest.front() == '[';
    const std::size_t end = std::min(rest.find(optional_part ? ']' : '['), rest.size());
    const Filled filled =
        fill_part(rest.substr(optional_part ? 1 : 0, end - (optional_part ? 1 : 0)), reason, style);
    if (!filled.missing) {
      text += filled.text;
    } else if (!optional_part) {
      throw std::logic_error(fmt::format(
          "reason '{}' came without its value '{}'", name_of(reason.code), *filled.missing));
    }
    rest.remove_prefix(optional_part ? end + 1 : end);
  }
  return text;
}

std::string temperature_text(double degrees_c, const TextStyle& style) {
  if (style.fahrenheit) {
    return whole_text(to_fahrenheit(Celsius{degrees_c})) + " °F";
  }
  return number_text(degrees_c) + " °C";
}

} // namespace nightsow::planner
