#include "planner/render/table.hpp"

#include <algorithm>
#include <cassert>
#include <numeric>
#include <optional>

namespace nightsow::planner {

namespace {

using Widths = std::vector<std::size_t>;
using Lines = std::vector<std::string>;

constexpr std::size_t gap = 2;
// A column that wraps is not made narrower than this, nor than its heading, before others give way.
constexpr std::size_t narrowest_wrapped = 14;

bool starts_code_point(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
}

bool is_blank(char c) {
  return static_cast<unsigned char>(c) <= 0x20U || c == '\x7f';
}

// Bytes that the first so many code points take.
std::size_t bytes_of(std::string_view text, std::size_t columns) {
  std::size_t seen = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (starts_code_point(text[i]) && seen++ == columns) {
      return i;
    }
  }
  return text.size();
}

bool is_unit(std::string_view word) {
  return word.starts_with("°C") || word.starts_with("°F") || word.starts_with("%") ||
         (word.starts_with("K") && columns_of(word) <= 2);
}

// Words as they may be parted: "13 °C" is one.
Lines words_of(std::string_view text) {
  Lines words;
  while (true) {
    const auto* const begin = std::find_if_not(text.begin(), text.end(), is_blank);
    if (begin == text.end()) {
      return words;
    }
    const auto* const end = std::find_if(begin, text.end(), is_blank);
    const std::string_view word{begin, static_cast<std::size_t>(end - begin)};
    const bool after_digit =
        !words.empty() && words.back().back() >= '0' && words.back().back() <= '9';
    if (after_digit && is_unit(word)) {
      words.back().append(" ").append(word);
    } else {
      words.emplace_back(word);
    }
    text.remove_prefix(static_cast<std::size_t>(end - text.begin()));
  }
}

// For a cell of a column that does not wrap.
std::string one_line(std::string_view text) {
  std::string line;
  for (const auto& word : words_of(text)) {
    line += line.empty() ? word : ' ' + word;
  }
  return line;
}

Widths natural_widths(const std::vector<Column>& columns, const std::vector<TableRow>& rows) {
  Widths widths;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    std::size_t width = columns_of(columns[i].heading);
    for (const auto& row : rows) {
      width = std::max(width, columns_of(one_line(row.cells[i])));
    }
    widths.push_back(width);
  }
  return widths;
}

// How many lines the cells of one column take at a width.
std::size_t lines_taken(const std::vector<TableRow>& rows, std::size_t column, std::size_t width) {
  std::size_t lines = 0;
  for (const auto& row : rows) {
    lines += wrapped(row.cells[column], width).size();
  }
  return lines;
}

// The column that gives way next: of those that wrap the one that breaks the fewest more cells, the
// widest of equals; when all of them are narrow, the widest of all.
std::size_t next_to_shrink(const std::vector<Column>& columns,
                           const std::vector<TableRow>& rows,
                           const Widths& widths) {
  std::optional<std::size_t> best;
  std::size_t best_cost = 0;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const std::size_t narrowest = std::max(narrowest_wrapped, columns_of(columns[i].heading));
    if (!columns[i].wraps || widths[i] <= narrowest) {
      continue;
    }
    const std::size_t cost = lines_taken(rows, i, widths[i] - 1) - lines_taken(rows, i, widths[i]);
    if (!best || cost < best_cost || (cost == best_cost && widths[i] > widths[*best])) {
      best = i;
      best_cost = cost;
    }
  }
  const auto widest = std::max_element(widths.begin(), widths.end());
  return best.value_or(static_cast<std::size_t>(widest - widths.begin()));
}

Widths fitted_widths(const std::vector<Column>& columns,
                     const std::vector<TableRow>& rows,
                     std::size_t indent) {
  Widths widths = natural_widths(columns, rows);
  const std::size_t gaps = indent + gap * (columns.size() - 1);
  while (std::accumulate(widths.begin(), widths.end(), gaps) > std::size_t{text_width}) {
    --widths[next_to_shrink(columns, rows, widths)];
  }
  return widths;
}

std::string padded(const std::string& text, std::size_t width, Align align) {
  const std::string space(width - std::min(width, columns_of(text)), ' ');
  return align == Align::right ? space + text : text + space;
}

std::string without_trailing_space(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

std::string row_text(const std::vector<Column>& columns,
                     const Lines& cells,
                     const Widths& widths,
                     std::size_t indent) {
  std::vector<Lines> parts;
  std::size_t height = 1;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    parts.push_back(columns[i].wraps ? wrapped(cells[i], widths[i])
                                     : Lines{shortened(one_line(cells[i]), widths[i])});
    height = std::max(height, parts.back().size());
  }
  std::string text;
  for (std::size_t line = 0; line < height; ++line) {
    std::string joined(indent, ' ');
    for (std::size_t i = 0; i < columns.size(); ++i) {
      const std::string part = line < parts[i].size() ? parts[i][line] : "";
      joined += padded(part, widths[i], columns[i].align) + std::string(gap, ' ');
    }
    text += without_trailing_space(joined) + '\n';
  }
  return text;
}

} // namespace

std::size_t columns_of(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), starts_code_point));
}

std::string shortened(std::string_view text, std::size_t columns) {
  if (columns_of(text) <= columns) {
    return std::string{text};
  }
  if (columns == 0) {
    return {};
  }
  return std::string{text.substr(0, bytes_of(text, columns - 1))} + "…";
}

std::vector<std::string> wrapped(std::string_view text, std::size_t columns) {
  assert(columns > 0);
  Lines lines{""};
  for (std::string_view word : words_of(text)) {
    const std::size_t used = columns_of(lines.back());
    if (used > 0 && used + 1 + columns_of(word) <= columns) {
      lines.back().append(" ").append(word);
      continue;
    }
    if (used > 0) {
      lines.emplace_back();
    }
    while (columns_of(word) > columns) {
      const std::size_t room = bytes_of(word, columns);
      const std::size_t hyphen = word.substr(0, room).rfind('-');
      const std::size_t cut = hyphen == std::string_view::npos ? room : hyphen + 1;
      lines.back() = word.substr(0, cut);
      lines.emplace_back();
      word.remove_prefix(cut);
    }
    lines.back() = word;
  }
  return lines;
}

std::string paragraph(std::string_view lead, std::string_view text) {
  const std::size_t indent = columns_of(lead);
  std::string out;
  for (const auto& line : wrapped(text, std::size_t{text_width} - indent)) {
    out += (out.empty() ? std::string{lead} : std::string(indent, ' ')) + line + '\n';
  }
  return out;
}

std::string table_text(const std::vector<Column>& columns,
                       const std::vector<TableRow>& rows,
                       const TextStyle& style,
                       std::size_t indent) {
  if (rows.empty()) {
    return {};
  }
  const Widths widths = fitted_widths(columns, rows, indent);
  Lines headings;
  for (const auto& column : columns) {
    headings.push_back(column.heading);
  }
  std::string text = row_text(columns, headings, widths, indent);
  if (style.colour) {
    text = "\x1b[2m" + text.substr(0, text.size() - 1) + "\x1b[0m\n";
  }
  for (const auto& row : rows) {
    assert(row.cells.size() == columns.size());
    text += row.above + row_text(columns, row.cells, widths, indent) + row.below;
  }
  return text;
}

std::string heading_text(std::string_view text, const TextStyle& style) {
  const std::string line = paragraph("", text);
  return style.colour ? "\x1b[1m" + line.substr(0, line.size() - 1) + "\x1b[0m\n" : line;
}

} // namespace nightsow::planner
