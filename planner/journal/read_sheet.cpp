#include "planner/journal/read_sheet.hpp"

#include "climate/base/csv.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr int most_seedlings = 1'000'000; // nobody counts higher by eye

struct Line {
  std::size_t number = 0;
  std::string_view text; ///< without blanks at its ends
};

std::vector<Line> lines_of(std::string_view text) {
  std::vector<Line> lines;
  if (text.starts_with("\xEF\xBB\xBF")) {
    text.remove_prefix(3);
  }
  for (std::size_t number = 1; !text.empty(); ++number) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.ends_with('\r')) {
      line.remove_suffix(1);
    }
    line = trimmed(line);
    if (!line.starts_with('#')) {
      lines.push_back({number, line});
    }
  }
  return lines;
}

bool not_looked_at(std::string_view text) {
  return text.empty() || text == "-";
}

template <typename Number> std::optional<Number> number_in(std::string_view text) {
  Number number = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
  const bool whole = fault == std::errc{} && end == text.data() + text.size() && number >= 0 &&
                     number <= most_seedlings;
  return whole ? std::optional(number) : std::nullopt;
}

class Sheet {
public:
  Sheet(std::string_view where, const std::vector<OpenSowing>& open, Date on)
      : where_(where), open_(open), on_(on) {}

  SheetRead read(const std::vector<Line>& lines) {
    const bool named = std::any_of(lines.begin(), lines.end(), [](const Line& line) {
      return line.text.find(':') != std::string_view::npos;
    });
    if (!named && lines.size() != open_.size()) {
      refuse(0,
             fmt::format("there are {} lines for {} sowings", lines.size(), open_.size()),
             "a line a sowing, empty or - where nobody looked; or its number before: 12: 7");
      return std::move(result_);
    }
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (!not_looked_at(lines[i].text)) {
        named ? read_named(lines[i]) : read_counts(lines[i], lines[i].text, open_[i]);
      }
    }
    return std::move(result_);
  }

private:
  void read_named(const Line& line) {
    const std::size_t colon = std::min(line.text.find(':'), line.text.size());
    const auto id = number_in<EntryId>(trimmed(line.text.substr(0, colon)));
    const auto at = std::find_if(open_.begin(), open_.end(), [&](const OpenSowing& one) {
      return id && one.sowing.id == *id;
    });
    if (at == open_.end() || colon == line.text.size()) {
      refuse(line.number,
             fmt::format("\"{}\" names no sowing of the sheet", line.text),
             "its number, a colon, the count: 12: 7");
    } else if (!named_.insert(*id).second) {
      refuse(line.number, fmt::format("sowing {} stands there twice", *id), "each sowing once");
    } else if (!not_looked_at(trimmed(line.text.substr(colon + 1)))) {
      read_counts(line, trimmed(line.text.substr(colon + 1)), *at);
    }
  }

  void read_counts(const Line& line, std::string_view text, const OpenSowing& one) {
    const std::size_t gap = std::min(text.find_first_of(" \t,;"), text.size());
    const std::size_t more = std::min(text.find_first_not_of(" \t,;", gap), text.size());
    const auto seen = number_in<int>(text.substr(0, gap));
    const auto dead = more == text.size() ? std::optional(0) : number_in<int>(text.substr(more));
    if (!seen || !dead) {
      refuse(line.number,
             fmt::format("\"{}\" is no count", line.text),
             "seedlings alive, and behind a blank how many died: 7 or 7 2");
      return;
    }
    if (on_ < one.sowing.on) {
      refuse(line.number,
             fmt::format(
                 "sowing {} was sown later, {}", one.sowing.id, format_iso_date(one.sowing.on)),
             "an empty line");
      return;
    }
    SeedlingCount count;
    count.sowing = one.sowing.id;
    count.on = on_;
    count.seen = *seen;
    count.dead = *dead;
    result_.counts.push_back(count);
  }

  void refuse(std::size_t line, std::string found, std::string expected) {
    result_.faults.push_back(
        {Severity::error, std::string(where_), line, 0, std::move(found), std::move(expected), ""});
  }

  std::string_view where_;
  const std::vector<OpenSowing>& open_;
  Date on_;
  std::set<EntryId> named_;
  SheetRead result_;
};

} // namespace

SheetRead read_sheet(std::string_view text,
                     std::string_view where,
                     const std::vector<OpenSowing>& open,
                     Date on) {
  return Sheet{where, open, on}.read(lines_of(text));
}

} // namespace nightsow::planner
