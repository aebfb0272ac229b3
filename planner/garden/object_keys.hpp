#pragma once

#include "climate/base/json_node.hpp"
#include "climate/base/nearest_name.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

// How garden.json's objects are read: by a table of their keys. An unknown key, and a required one
// that is missing, is thrown as InputError with its place.

/// One key of an object, and where its value goes.
template <class T> struct Key {
  std::string_view name;
  void (*read)(T& into, const JsonNode& from);
  bool required = false;
};

inline constexpr bool required = true;

/// Reads a value into a field of an object; with both bound, a line of a table of keys.
template <auto Field, auto Read, class T> void set(T& object, const JsonNode& node) {
  object.*Field = Read(node);
}

template <class T, std::size_t Count>
[[noreturn]] void refuse_unknown(const JsonNode& member, const std::array<Key<T>, Count>& keys) {
  std::vector<std::string> names;
  names.reserve(Count);
  for (const Key<T>& known : keys) {
    names.emplace_back(known.name);
  }
  member.fail(fmt::format("unknown key \"{}\"", member.name()),
              fmt::format("one of: {}", fmt::join(names, ", ")),
              did_you_mean(member.name(), names));
}

/// Reads an object by its table of keys. null counts as left out.
template <class T, std::size_t Count>
T read_object(const JsonNode& object, const std::array<Key<T>, Count>& keys) {
  T value{};
  for (const JsonNode& member : object.members()) {
    const auto key = std::find_if(
        keys.begin(), keys.end(), [&](const Key<T>& k) { return k.name == member.name(); });
    if (key == keys.end()) {
      refuse_unknown(member, keys);
    }
    if (!member.is_null()) {
      key->read(value, member);
    }
  }
  for (const Key<T>& key : keys) {
    if (key.required && !object.member(key.name)) {
      object.fail(fmt::format("the key \"{}\" is missing", key.name), "", "add it");
    }
  }
  return value;
}

template <class T, std::size_t Count>
std::vector<T> read_list(const JsonNode& list, const std::array<Key<T>, Count>& keys) {
  std::vector<T> values;
  for (const JsonNode& element : list.elements()) {
    values.push_back(read_object(element, keys));
  }
  return values;
}

} // namespace nightsow::planner
