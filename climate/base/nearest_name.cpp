#include "climate/base/nearest_name.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace nightsow {

namespace {

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

} // namespace

bool begins_as(std::string_view text, std::string_view word) {
  return text.size() >= word.size() &&
         std::equal(word.begin(), word.end(), text.begin(), [](char a, char b) {
           return lower(a) == lower(b);
         });
}

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before_last(b.size() + 1);
  std::vector<std::size_t> last(b.size() + 1);
  std::vector<std::size_t> present(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) {
    last[j] = j;
  }
  for (std::size_t i = 1; i <= a.size(); ++i) {
    present[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replace = last[j - 1] + (lower(a[i - 1]) == lower(b[j - 1]) ? 0 : 1);
      present[j] = std::min({last[j] + 1, present[j - 1] + 1, replace});
      const bool swapped = i > 1 && j > 1 && lower(a[i - 1]) == lower(b[j - 2]) &&
                           lower(a[i - 2]) == lower(b[j - 1]);
      if (swapped) {
        present[j] = std::min(present[j], before_last[j - 2] + 1);
      }
    }
    std::swap(before_last, last);
    std::swap(last, present);
  }
  return last[b.size()];
}

std::optional<NearestName> nearest_name(std::string_view typed,
                                        std::span<const std::string> names) {
  const std::size_t most = std::min<std::size_t>(3, std::max<std::size_t>(1, typed.size() / 3));
  std::optional<NearestName> nearest;
  for (const std::string& name : names) {
    const std::size_t distance = edit_distance(typed, name);
    if (distance > most) {
      continue;
    }
    if (!nearest || distance < nearest->distance) {
      nearest = NearestName{name, distance, true};
    } else if (distance == nearest->distance && name != nearest->name) {
      nearest->only = false;
    }
  }
  return nearest;
}

std::string did_you_mean(std::string_view typed, std::span<const std::string> names) {
  const auto nearest = nearest_name(typed, names);
  return nearest ? fmt::format("did you mean \"{}\"?", nearest->name) : "correct it";
}

} // namespace nightsow
