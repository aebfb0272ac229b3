#include "species-rules/taxon_name.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace nightsow::species_rules {

namespace {

constexpr std::string_view hybrid_sign = "\u00d7";
constexpr std::string_view no_break_space = "\u00a0";

// Words that stand between genus and epithet, and words that stand where there is no epithet.
constexpr std::array<std::string_view, 6> passed_over{"cf", "aff", "nr", "x", "X", "?"};
constexpr std::array<std::string_view, 10> no_epithet{
    "sp", "spp", "species", "hybrid", "hybrids", "hybr", "hyb", "mix", "mixed", "seed"};
constexpr std::array<std::string_view, 6> ranks{"subsp", "ssp", "var", "forma", "fo", "f"};

bool is_upper(char c) {
  return c >= 'A' && c <= 'Z';
}

bool is_lower(char c) {
  return c >= 'a' && c <= 'z';
}

char to_lower(char c) {
  return is_upper(c) ? static_cast<char>(c - 'A' + 'a') : c;
}

char to_upper(char c) {
  return is_lower(c) ? static_cast<char>(c - 'a' + 'A') : c;
}

// Letters with accents ("rüeggii") are bytes outside ASCII here; they are taken as they come.
bool is_letter(char c) {
  return is_upper(c) || is_lower(c) || (static_cast<unsigned char>(c) & 0x80U) != 0U;
}

std::string lowered(std::string_view word) {
  std::string text{word};
  std::ranges::transform(text, text.begin(), to_lower);
  return text;
}

bool is_word(std::string_view text) {
  return !text.empty() && text.front() != '-' && text.back() != '-' &&
         std::ranges::all_of(text, [](char c) { return is_letter(c) || c == '-'; });
}

// Blanks of every kind become one kind, and hybrid signs blanks, wherever they touch a word.
std::string with_plain_blanks(std::string_view text) {
  std::string plain;
  while (!text.empty()) {
    const bool sign = text.starts_with(hybrid_sign) || text.starts_with(no_break_space);
    const bool blank = text.front() == '\t' || text.front() == '\r' || text.front() == '\n';
    plain += sign || blank ? ' ' : text.front();
    text.remove_prefix(sign ? 2 : 1);
  }
  return plain;
}

std::vector<std::string_view> split(std::string_view text) {
  std::vector<std::string_view> words;
  while (true) {
    const std::size_t begin = text.find_first_not_of(' ');
    if (begin == std::string_view::npos) {
      return words;
    }
    text.remove_prefix(begin);
    const std::size_t end = std::min(text.find(' '), text.size());
    words.push_back(text.substr(0, end));
    text.remove_prefix(end);
  }
}

std::string_view without_points(std::string_view word) {
  const std::size_t last = word.find_last_not_of(".,;:?");
  return last == std::string_view::npos ? word.substr(0, 1) : word.substr(0, last + 1);
}

bool all_capitals(std::string_view word) {
  return word.size() > 1 && std::ranges::none_of(word, is_lower);
}

using Words = std::vector<std::string_view>;

template <class List> bool contains(const List& list, std::string_view word) {
  return std::ranges::find(list, word) != list.end();
}

// Sets the epithet and returns where the words behind it begin, or returns the end.
Words::const_iterator read_epithet(const Words& words,
                                   Words::const_iterator word,
                                   TaxonName& name) {
  const std::string_view genus = without_points(*word);
  for (++word; word != words.end(); ++word) {
    const std::string_view bare = without_points(*word);
    if (contains(passed_over, bare) || bare.front() == '(') {
      continue;
    }
    // "Conophytum N.E.Br." names the author of a genus, "Lithops C362" a number.
    const bool abbreviated = bare.size() != word->size() && word->back() == '.';
    if (!is_word(bare) || contains(no_epithet, lowered(bare)) || abbreviated) {
      return words.end();
    }
    name.epithet = lowered(bare);
    name.epithet_sure = !is_upper(bare.front()) || (all_capitals(bare) && all_capitals(genus));
    return word + 1;
  }
  return word;
}

// Authors may stand before the rank; "Hook. f." is one, so the next word must be an epithet.
std::string read_below(Words::const_iterator word, Words::const_iterator end) {
  for (; word != end && word + 1 != end; ++word) {
    const std::string_view next = without_points(word[1]);
    if (contains(ranks, without_points(*word)) && is_epithet(next)) {
      return std::string{next};
    }
  }
  return {};
}

} // namespace

std::optional<TaxonName> parse_taxon(std::string_view text) {
  const std::string plain = with_plain_blanks(text);
  const Words words = split(plain);
  auto word = words.begin();
  while (word != words.end() && contains(passed_over, without_points(*word))) {
    ++word;
  }
  if (word == words.end() || !is_word(without_points(*word))) {
    return std::nullopt;
  }
  TaxonName name;
  name.genus = lowered(without_points(*word));
  name.genus.front() = to_upper(name.genus.front());
  const auto behind = read_epithet(words, word, name);
  name.below = read_below(behind, words.end());
  return name;
}

std::string to_text(const TaxonName& name) {
  return name.epithet.empty() ? name.genus : name.genus + ' ' + name.epithet;
}

std::string to_full_text(const TaxonName& name) {
  return name.below.empty() ? to_text(name) : to_text(name) + ' ' + name.below;
}

bool is_genus(std::string_view word) {
  return word.size() > 1 && is_upper(word.front()) && is_word(word) &&
         std::ranges::none_of(word.substr(1), is_upper);
}

bool is_epithet(std::string_view word) {
  return word.size() > 1 && is_word(word) && std::ranges::none_of(word, is_upper);
}

bool is_species_name(std::string_view name) {
  const Words words = split(name);
  if (words.size() != 2 && words.size() != 4) {
    return false;
  }
  const bool below = words.size() == 2 || (contains(ranks, without_points(words[2])) &&
                                           words[2].ends_with('.') && is_epithet(words[3]));
  return is_genus(words[0]) && is_epithet(words[1]) && below && !name.ends_with(' ') &&
         name.find("  ") == std::string_view::npos;
}

} // namespace nightsow::species_rules
