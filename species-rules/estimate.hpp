#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace nightsow::species_rules {

/// How good the ground is on which a value stands, best first.
enum class Evidence {
  experiment,      ///< a published experiment
  institution,     ///< the practice of a garden, a society or a seed house
  grower,          ///< one grower
  common_practice, ///< what growers hold in common; no source
  relatives,       ///< estimated from relatives
  memory,          ///< from memory, unchecked
};

/// Whether a value with this evidence must name a source.
[[nodiscard]] constexpr bool needs_source(Evidence evidence) {
  return evidence == Evidence::experiment || evidence == Evidence::institution ||
         evidence == Evidence::grower;
}

/// The level of the catalogue at which a value was given.
enum class Origin { family, genus, species, grower };

/// Words for the enumerations of this folder, one table each: `words<E>` lists (value, word) pairs
/// as they are written in rule files and JSON.
template <class E> struct Words;

template <> struct Words<Evidence> {
  static constexpr std::array<std::pair<Evidence, std::string_view>, 6> table{{
      {Evidence::experiment, "experiment"},
      {Evidence::institution, "institution"},
      {Evidence::grower, "grower"},
      {Evidence::common_practice, "common_practice"},
      {Evidence::relatives, "relatives"},
      {Evidence::memory, "memory"},
  }};
};

template <> struct Words<Origin> {
  static constexpr std::array<std::pair<Origin, std::string_view>, 4> table{{
      {Origin::family, "family"},
      {Origin::genus, "genus"},
      {Origin::species, "species"},
      {Origin::grower, "yours"},
  }};
};

template <class E> [[nodiscard]] constexpr std::string_view word_of(E value) {
  for (const auto& [entry, word] : Words<E>::table) {
    if (entry == value) {
      return word;
    }
  }
  return {};
}

template <class E> [[nodiscard]] constexpr std::optional<E> from_word(std::string_view word) {
  for (const auto& [entry, known] : Words<E>::table) {
    if (known == word) {
      return entry;
    }
  }
  return std::nullopt;
}

/// Where a value comes from.
struct Ground {
  Evidence evidence = Evidence::memory;
  std::string source; ///< id in sources.json; empty where the evidence needs none
  Origin origin = Origin::family;

  bool operator==(const Ground&) const = default;
};

/// A number that is not known exactly. low <= value <= high; what the range means is the reader's
/// honest belief that about four in five cases lie within.
struct Estimate {
  double value = 0.0;
  double low = 0.0;
  double high = 0.0;
  Ground ground;

  bool operator==(const Estimate&) const = default;
};

/// One of a few words.
template <class E> struct Choice {
  E value{};
  Ground ground;

  bool operator==(const Choice&) const = default;
};

/// A sentence, or a code such as a caution.
struct Remark {
  std::string value;
  Ground ground;

  bool operator==(const Remark&) const = default;
};

} // namespace nightsow::species_rules
