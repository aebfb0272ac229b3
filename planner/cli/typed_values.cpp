#include "planner/cli/typed_values.hpp"

#include "climate/base/nearest_name.hpp"
#include "climate/base/problem.hpp"
#include "climate/readers/check_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <limits>
#include <optional>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr std::size_t longest_shown = 60;

// Outside of these a year is a slip of the keys.
constexpr int first_year = 1800;
constexpr int last_year = 2200;

template <class Number> std::optional<Number> whole_text_as(std::string_view text) {
  if (text.starts_with('+')) {
    text.remove_prefix(1);
  }
  Number value{};
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size()) {
    return std::nullopt;
  }
  return value;
}

} // namespace

void wrong_use(std::string_view where,
               std::string found,
               std::string expected,
               std::string remedy) {
  throw UsageError({Severity::error,
                    std::string(where),
                    0,
                    0,
                    std::move(found),
                    std::move(expected),
                    std::move(remedy)});
}

std::string shown(std::string_view typed) {
  return "'" + climate::printable(typed, longest_shown) + "'";
}

std::string listed(std::span<const std::string> names) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) {
      text += i + 1 == names.size() ? " or " : ", ";
    }
    text += names[i];
  }
  return text;
}

Date typed_date(std::string_view option, std::string_view text) {
  const auto day = parse_iso_date(text);
  if (!day) {
    wrong_use(option, shown(text) + " is no date", "a day as YYYY-MM-DD, such as 2026-02-20");
  }
  return *day;
}

int typed_year(std::string_view option, std::string_view text) {
  const auto year = whole_text_as<int>(text);
  if (!year || *year < first_year || *year > last_year) {
    wrong_use(option, shown(text) + " is no year", "a year such as 2026");
  }
  return *year;
}

double typed_number(std::string_view option, std::string_view text, const NumberRange& range) {
  const auto number = whole_text_as<double>(text);
  const std::string expected = fmt::format("{} from {} to {}", range.what, range.least, range.most);
  if (!number) {
    const bool comma = text.find(',') != std::string_view::npos;
    wrong_use(option,
              shown(text) + " is no number",
              expected,
              comma ? "write decimals behind a point" : "");
  }
  // Written so that NaN is refused too.
  if (!(*number >= range.least && *number <= range.most)) {
    wrong_use(option, shown(text) + " is out of range", expected);
  }
  return *number;
}

std::filesystem::path typed_folder(std::string_view option, std::string_view text) {
  if (text.empty()) {
    wrong_use(option, "the name is empty", "the name of a folder");
  }
  return text == "." ? "" : text;
}

std::string typed_text(std::string_view option, std::string_view text) {
  if (text.empty()) {
    wrong_use(option, "the text is empty");
  }
  if (climate::printable(text, std::numeric_limits<std::size_t>::max()) != text) {
    wrong_use(option,
              shown(text) + " holds control characters or is no UTF-8",
              "plain text",
              "give it another name");
  }
  return std::string(text);
}

std::size_t typed_word(std::string_view option,
                       std::string_view text,
                       std::span<const std::string> allowed) {
  const auto found = std::find(allowed.begin(), allowed.end(), text);
  if (found == allowed.end()) {
    wrong_use(
        option, shown(text) + " is not known here", listed(allowed), did_you_mean(text, allowed));
  }
  return static_cast<std::size_t>(found - allowed.begin());
}

} // namespace nightsow::planner
