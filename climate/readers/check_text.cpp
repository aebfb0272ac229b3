#include "climate/readers/check_text.hpp"

#include "climate/base/csv.hpp"
#include "climate/base/problem.hpp"
#include "climate/readers/json_daily.hpp"
#include "climate/readers/line_reader.hpp"

#include <array>

namespace nightsow::climate {

namespace {

constexpr std::size_t longest_line = 1U << 20U; // 1 MiB
constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

// Files that are no text of readings, told by their first bytes.
struct FirstBytes {
  std::string_view bytes;
  std::string_view what;
  std::string_view remedy;
};

constexpr std::array first_bytes{
    FirstBytes{"PK\x03\x04",
               "a zip archive or a spreadsheet",
               "unpack it and name the file inside, or save the sheet as CSV"},
    FirstBytes{"\x1F\x8B", "gzip within gzip", "unpack it (gunzip) and name the file inside"},
    FirstBytes{"\xFF\xFE", "a text in UTF-16", "save it as CSV in UTF-8"},
    FirstBytes{"\xFE\xFF", "a text in UTF-16", "save it as CSV in UTF-8"},
    FirstBytes{"\xD0\xCF\x11\xE0", "an old spreadsheet", "save the sheet as CSV"},
    FirstBytes{"%PDF", "a PDF document", "find the readings as CSV"},
    FirstBytes{"<", "a web page or XML", "download the file itself, not the page that shows it"},
};

constexpr std::string_view readings_expected = "a text file of daily minima and maxima";

[[noreturn]] void refuse(std::string_view name,
                         std::size_t line,
                         std::size_t column,
                         std::string_view found,
                         std::string_view remedy) {
  throw InputError({Severity::error,
                    std::string(name),
                    line,
                    column,
                    std::string(found),
                    std::string(readings_expected),
                    std::string(remedy)});
}

void refuse_nul(std::string_view text, std::string_view name) {
  const std::size_t place = text.find('\0');
  if (place == std::string_view::npos) {
    return;
  }
  LineReader before{text.substr(0, place)};
  while (before.next()) {
  }
  const std::string_view line = before.line();
  const bool ended = place == 0 || text[place - 1] == '\n' || text[place - 1] == '\r';
  refuse(name,
         before.number() + (ended ? 1 : 0),
         ended ? 1 : line.size() + 1,
         "a NUL byte",
         "the file is damaged or no text: download it again");
}

// Steps from line end to line end by as much as a line may have, so that few lines are looked at.
void refuse_long_line(std::string_view text, std::string_view name) {
  std::size_t begin = text.starts_with(byte_order_mark) ? byte_order_mark.size() : 0;
  while (text.size() - begin > longest_line) {
    const std::size_t end = text.substr(begin, longest_line + 1).find_last_of("\r\n");
    if (end == std::string_view::npos) {
      LineReader before{text.substr(0, begin)};
      while (before.next()) {
      }
      refuse(name,
             before.number() + 1,
             0,
             "a line of over 1 MiB",
             "check that this is the file you meant");
    }
    begin += end + 1;
  }
}

// Length of the UTF-8 character that begins the text; 0 when it is none.
std::size_t utf8_length(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(0);
  std::size_t length = 0;
  if (lead < 0x80) {
    length = 1;
  } else if (lead >= 0xC2 && lead < 0xE0) {
    length = 2;
  } else if (lead >= 0xE0 && lead < 0xF0) {
    length = 3;
  } else if (lead >= 0xF0 && lead < 0xF5) {
    length = 4;
  }
  if (length == 0 || length > text.size()) {
    return 0;
  }
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(i) & 0xC0U) != 0x80) {
      return 0;
    }
  }
  const bool overlong = (lead == 0xE0 && byte(1) < 0xA0) || (lead == 0xF0 && byte(1) < 0x90);
  const bool outside = (lead == 0xED && byte(1) > 0x9F) || (lead == 0xF4 && byte(1) > 0x8F);
  return overlong || outside ? 0 : length;
}

} // namespace

void check_text(std::string_view text, std::string_view name) {
  for (const FirstBytes& kind : first_bytes) {
    if (text.starts_with(kind.bytes)) {
      refuse(name, 0, 0, "this is " + std::string(kind.what), kind.remedy);
    }
  }
  refuse_nul(text, name);
  if (!is_json(text)) { // which is mostly one line
    refuse_long_line(text, name);
  }
  const std::string_view content = text.starts_with(byte_order_mark) ? text.substr(3) : text;
  if (content.find_first_not_of(" \t\r\n") == std::string_view::npos) {
    refuse(name, 0, 0, "the file is empty", "download or export it again");
  }
}

std::string printable(std::string_view text, std::size_t longest) {
  std::string clean;
  while (!text.empty()) {
    if (clean.size() >= longest) {
      clean += "...";
      break;
    }
    const std::size_t length = utf8_length(text);
    const auto first = static_cast<unsigned char>(text.front());
    if (length == 0 || first < 0x20 || first == 0x7F) {
      clean += length == 0 ? '?' : ' ';
      text.remove_prefix(1);
      continue;
    }
    clean += text.substr(0, length);
    text.remove_prefix(length);
  }
  return clean;
}

} // namespace nightsow::climate
