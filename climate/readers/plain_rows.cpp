#include "climate/readers/plain_rows.hpp"

#include "climate/daily_series.hpp"
#include "climate/readers/date_field.hpp"
#include "climate/readers/figures_at_once.hpp"

#include <array>
#include <string>

namespace nightsow::climate {

namespace {

constexpr std::size_t date_length = 10;
constexpr std::size_t month_length = 8; // with the mark behind it
constexpr int most_digits = 6;
constexpr int most_decimals = 4;

enum class Role : std::uint8_t { other, date, night, day };

// Consecutive rows are mostly of one month, whose first day is worked out once.
struct Month {
  std::uint64_t text = 0; ///< "2024-03-", see eight_characters
  Date first{};
  int days = 0; ///< 0: none yet
};

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

class PlainReader {
public:
  PlainReader(std::string_view text, const PlainLayout& layout)
      : at_(text.data()), end_(text.data() + text.size()), separator_(layout.separator),
        roles_(layout.columns, Role::other) {
    roles_[layout.date] = Role::date;
    if (layout.night) {
      roles_[*layout.night] = Role::night;
    }
    if (layout.day) {
      roles_[*layout.day] = Role::day;
    }
  }

  [[nodiscard]] const char* place() const { return at_; }

  [[nodiscard]] bool at_end() const { return at_ == end_; }

  /// False, and anywhere within the row, when it is not plain.
  bool row(Reading& reading) {
    for (std::size_t column = 0; column < roles_.size(); ++column) {
      if (column > 0 && (at_end() || *at_++ != separator_)) {
        return false;
      }
      if (!field(roles_[column], reading)) {
        return false;
      }
    }
    return line_end();
  }

private:
  bool field(Role role, Reading& reading) {
    switch (role) {
    case Role::date:
      return date(reading.date);
    case Role::night:
      return figure(reading.night_c);
    case Role::day:
      return figure(reading.day_c);
    case Role::other:
      break;
    }
    while (!at_end() && *at_ != separator_ && *at_ != '\n' && *at_ != '\r') {
      if (*at_++ == '"') {
        return false;
      }
    }
    return true;
  }

  bool date(Date& found) {
    if (static_cast<std::size_t>(end_ - at_) < date_length) {
      return false;
    }
    const std::uint64_t month = eight_characters(at_);
    if (month != month_.text && !begin_month(month)) {
      return false;
    }
    const char* const day_text = at_ + month_length;
    const int day = (day_text[0] - '0') * 10 + (day_text[1] - '0');
    if (!is_digit(day_text[0]) || !is_digit(day_text[1]) || day < 1 || day > month_.days) {
      return false;
    }
    found = month_.first + Days{day - 1};
    at_ += date_length;
    return true;
  }

  bool begin_month(std::uint64_t text) {
    const std::string first_day = std::string(at_, month_length) + "01";
    const auto first = read_date(first_day, std::nullopt);
    if (!first || at_[4] != '-' || at_[7] != '-') {
      return false;
    }
    const date::year_month_day ymd{first->date};
    const date::year_month_day_last last{ymd.year() / ymd.month() / date::last};
    month_ = {text, first->date, static_cast<int>(static_cast<unsigned>(last.day()))};
    return true;
  }

  bool figure(float& value) {
    constexpr std::ptrdiff_t read_at_once = 8;
    if (end_ - at_ >= read_at_once && separator_ != '.') {
      const ShortFigure figure = short_figure(at_);
      if (figure.length > 0) {
        value = figure.value;
        at_ += figure.length;
        return true;
      }
    }
    return figure_by_digits(value);
  }

  bool figure_by_digits(float& value) {
    value = missing_c;
    const bool negative = !at_end() && *at_ == '-';
    at_ += negative ? 1 : 0;
    int digits = 0;
    int count = 0;
    while (!at_end() && is_digit(*at_) && count <= most_digits) {
      digits = digits * 10 + (*at_++ - '0');
      ++count;
    }
    if (count == 0 || count > most_digits) {
      return count == 0 && !negative; // nothing: missing
    }
    int decimals = 0;
    if (!at_end() && *at_ == '.' && separator_ != '.') {
      ++at_;
      while (!at_end() && is_digit(*at_) && decimals <= most_decimals && count <= most_digits) {
        digits = digits * 10 + (*at_++ - '0');
        ++decimals;
        ++count;
      }
    }
    if (decimals > most_decimals || count > most_digits) {
      return false;
    }
    constexpr std::array powers_of_ten{1.0, 10.0, 100.0, 1000.0, 10000.0};
    const double size = digits / powers_of_ten[static_cast<std::size_t>(decimals)];
    value = static_cast<float>(negative ? -size : size);
    return true;
  }

  bool line_end() {
    if (!at_end() && *at_ == '\r') {
      ++at_;
    }
    if (at_end()) {
      return true;
    }
    return *at_++ == '\n';
  }

  const char* at_;
  const char* end_;
  char separator_;
  std::vector<Role> roles_;
  Month month_;
};

} // namespace

PlainRun read_plain_rows(std::string_view text,
                         const PlainLayout& layout,
                         std::size_t first_line,
                         std::vector<Reading>& rows) {
  PlainReader reader{text, layout};
  PlainRun run;
  Reading reading{{}, missing_c, missing_c, 0};
  while (!reader.at_end() && reader.row(reading)) {
    reading.line = static_cast<std::uint32_t>(first_line + run.rows);
    rows.push_back(reading);
    ++run.rows;
    run.bytes = static_cast<std::size_t>(reader.place() - text.data());
  }
  return run;
}

void PlainRows::read(CsvReader& rows, std::size_t next_line, Readings& readings) {
  constexpr int most_tries_in_vain = 8;
  if (!layout_ || tries_in_vain_ == most_tries_in_vain) {
    return;
  }
  const PlainRun run = read_plain_rows(rows.rest(), *layout_, next_line, readings.rows);
  rows.skip(run.bytes, run.rows);
  readings.rows_read += run.rows;
  tries_in_vain_ = run.rows == 0 ? tries_in_vain_ + 1 : 0;
}

} // namespace nightsow::climate
