#include "planner/garden/plain_text.hpp"

#include <array>
#include <cstddef>

namespace nightsow::planner {

namespace {

constexpr std::string_view multiplication_sign = "\xC3\x97";

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool in_slug(char c) {
  const char l = lower(c);
  const bool beyond_ascii = static_cast<unsigned char>(c) >= 0x80;
  return (l >= 'a' && l <= 'z') || (c >= '0' && c <= '9') || beyond_ascii;
}

// How many bytes a character takes, by its first; 0 when none begins so.
std::size_t length_by_first(unsigned char first) {
  if (first < 0x80) {
    return 1;
  }
  if (first >= 0xC2 && first <= 0xDF) {
    return 2;
  }
  if (first >= 0xE0 && first <= 0xEF) {
    return 3;
  }
  return first >= 0xF0 && first <= 0xF4 ? 4 : 0;
}

// Overlong forms, surrogates and what lies beyond U+10FFFF show in the second byte.
bool second_fits(unsigned char first, unsigned char second) {
  switch (first) {
  case 0xE0:
    return second >= 0xA0;
  case 0xED:
    return second <= 0x9F;
  case 0xF0:
    return second >= 0x90;
  case 0xF4:
    return second <= 0x8F;
  default:
    return true;
  }
}

// What Windows-1252 has in place of the control characters 0x80 to 0x9F of Latin-1 (WHATWG Encoding
// Standard, index windows-1252).
constexpr std::array<char16_t, 32> windows_signs{
    0x20AC, 0x0081, 0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0x008D, 0x017D, 0x008F, 0x0090, 0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x009D, 0x017E, 0x0178};

void append_utf8(std::string& text, unsigned code) {
  if (code < 0x80) {
    text += static_cast<char>(code);
  } else if (code < 0x800) {
    text += static_cast<char>(0xC0U | (code >> 6U));
    text += static_cast<char>(0x80U | (code & 0x3FU));
  } else {
    text += static_cast<char>(0xE0U | (code >> 12U));
    text += static_cast<char>(0x80U | ((code >> 6U) & 0x3FU));
    text += static_cast<char>(0x80U | (code & 0x3FU));
  }
}

} // namespace

std::string lower_case(std::string_view text) {
  std::string result(text);
  for (char& c : result) {
    c = lower(c);
  }
  return result;
}

std::string slug(std::string_view text) {
  std::string result;
  bool gap = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (!in_slug(text[i])) {
      gap = gap || text[i] != '\'';
      continue;
    }
    if (gap && !result.empty()) {
      result += '-';
    }
    gap = false;
    if (text.substr(i).starts_with(multiplication_sign)) {
      result += 'x';
      ++i;
    } else {
      result += lower(text[i]);
    }
  }
  return result;
}

bool is_utf8(std::string_view text) {
  std::size_t i = 0;
  while (i < text.size()) {
    const auto first = static_cast<unsigned char>(text[i]);
    const std::size_t length = length_by_first(first);
    if (length == 0 || i + length > text.size()) {
      return false;
    }
    for (std::size_t k = 1; k < length; ++k) {
      const auto byte = static_cast<unsigned char>(text[i + k]);
      if (byte < 0x80 || byte > 0xBF || (k == 1 && !second_fits(first, byte))) {
        return false;
      }
    }
    i += length;
  }
  return true;
}

std::string utf8_from_windows_1252(std::string_view text) {
  std::string result;
  for (const char c : text) {
    const unsigned byte = static_cast<unsigned char>(c);
    const bool sign = byte >= 0x80 && byte < 0xA0;
    append_utf8(result, sign ? windows_signs[byte - 0x80] : byte);
  }
  return result;
}

} // namespace nightsow::planner
