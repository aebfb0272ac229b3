#pragma once

#include <array>
#include <bit>
#include <cstdint>
#include <cstring>
#include <optional>

namespace nightsow::climate {

// The shapes that most temperatures of weather files have, each read in one go from the eight
// characters that begin with it, without a loop and without a branch on what the digits are:
// several times as fast as digit by digit. Whatever has another shape is left to others.

/// Eight characters as a number, the first in its lowest byte. There must be eight.
[[nodiscard]] inline std::uint64_t eight_characters(const char* text) {
  static_assert(std::endian::native == std::endian::little, "the first character is the lowest");
  std::uint64_t word = 0;
  std::memcpy(&word, text, sizeof word);
  return word;
}

struct ShortFigure {
  float value = 0.0F;
  int length = 0; ///< characters; 0: there is no such figure
};

/// One or two digits, a point and one digit, a minus before them or not: "5.0", "-12.3". Reads
/// eight characters. None when they begin with anything else, a second decimal among it.
[[nodiscard]] inline ShortFigure short_figure(const char* text) {
  std::uint64_t word = eight_characters(text);
  // Of the characters of such a figure, the point alone lacks this bit, and the minus, which may be
  // the first. What comes next depends on nothing else, so that the processor may go on there.
  constexpr std::uint64_t bit_of_second_to_fourth = 0x10101000;
  const auto point = static_cast<unsigned>(std::countr_zero(~word & bit_of_second_to_fourth)) / 8U;
  const unsigned negative = (word & 0xFFU) == '-' ? 1 : 0;
  const unsigned one_digit = point == negative + 1 ? 1 : 0;
  // "dd.d", if all is well
  word = word >> 8U * negative << 8U * one_digit | std::uint64_t{'0'} * one_digit;
  const std::uint32_t digits = static_cast<std::uint32_t>(word) ^ 0x302E3030U; // "00.0"
  const std::uint32_t wrong = (digits & 0xF0FFF0F0U) | ((digits + 0x06060606U) & 0xF0F0F0F0U);
  const auto next = static_cast<std::uint32_t>(word >> 32U & 0xFFU) - '0';
  if (wrong != 0 || next <= 9) {
    return {};
  }
  const std::uint32_t tenths =
      (digits & 0xFFU) * 100 + (digits >> 8U & 0xFFU) * 10 + (digits >> 24U);
  constexpr std::array units{10.0, -10.0};
  return {static_cast<float>(tenths / units[negative]), static_cast<int>(point + 2)};
}

/// A whole number that fills five columns from the right, blanks before it: "  137", "-9999". Reads
/// eight characters, of which the last three may be anything. Empty when the five hold anything
/// else.
[[nodiscard]] inline std::optional<int> right_aligned_whole(const char* text) {
  constexpr std::uint64_t five = 0xFF'FFFF'FFFFU;
  constexpr std::uint64_t ones = 0x01'0101'0101U;
  const std::uint64_t digits = (eight_characters(text) & five) ^ ones * '0';
  // The highest bit of each character that is no digit, then the whole of those characters.
  const std::uint64_t marks =
      (((digits & ones * 0x7FU) + ones * (0x7FU - 9U)) | digits) & ones * 0x80U;
  const std::uint64_t others = (marks >> 7U) * 0xFFU;
  const std::uint64_t last_other = others & ~(others >> 8U);
  const std::uint64_t not_blank = (digits ^ ones * ('0' ^ ' ')) & others;
  const bool negative = not_blank != 0;
  const bool leading = (others & (others + 1)) == 0 && others != five;
  if (!leading || (negative && not_blank != (last_other & ones * (' ' ^ '-')))) {
    return std::nullopt;
  }
  // Neighbours are joined to pairs, pairs to fours and those to all eight, the first three being 0.
  std::uint64_t sum = (digits & ~others) << 24U;
  sum = sum * 10 + (sum >> 8U);
  sum = ((sum & 0xFF'0000'00FFU) * (100 + (1000000ULL << 32U)) +
         ((sum >> 16U) & 0xFF'0000'00FFU) * (1 + (10000ULL << 32U))) >>
        32U;
  const int size = static_cast<int>(sum & 0xFFFFFFFFU);
  return negative ? -size : size;
}

} // namespace nightsow::climate
