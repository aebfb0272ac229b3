#include "planner/cli/typed_entry_parts.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <charconv>
#include <span>
#include <system_error>

namespace nightsow::planner {

namespace {

constexpr int most = 1'000'000;

} // namespace

int whole_number(std::string_view option, std::string_view text, int least) {
  int number = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (fault != std::errc{} || end != text.data() + text.size() || number < least || number > most) {
    wrong_use(option,
              shown(text) + " is no such number",
              fmt::format("a whole number from {} to {}", least, most));
  }
  return number;
}

std::string maybe_text(std::string_view option, const TypedWords::MaybeText& text) {
  return text ? typed_text(option, *text) : std::string{};
}

std::optional<Date> maybe_date(std::string_view option, const TypedWords::MaybeText& text) {
  return text ? std::optional(typed_date(option, *text)) : std::nullopt;
}

std::string name_typed(std::string_view command,
                       const std::vector<std::string>& words,
                       std::string_view such_as) {
  if (words.empty()) {
    wrong_use(command,
              "nothing is named",
              fmt::format("such as: {}", such_as),
              "add what is missing; nothing was written");
  }
  return typed_text(command, fmt::format("{}", fmt::join(words, " ")));
}

std::pair<std::string, int> name_and_number(std::string_view command,
                                            const std::vector<std::string>& words,
                                            int least) {
  if (words.size() < 2) {
    wrong_use(command,
              "a name and a number are needed",
              fmt::format("such as: {} albuca 7", command),
              "add what is missing; nothing was written");
  }
  const std::span<const std::string> name(words.data(), words.size() - 1);
  return {typed_text(command, fmt::format("{}", fmt::join(name, " "))),
          whole_number(command, words.back(), least)};
}

} // namespace nightsow::planner
