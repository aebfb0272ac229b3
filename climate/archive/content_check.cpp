#include "climate/archive/content_check.hpp"

#include "climate/base/csv.hpp"
#include "climate/base/problem.hpp"

#include <nlohmann/json.hpp>

#include <array>
#include <string>

namespace nightsow::climate {

namespace {

[[noreturn]] void refuse(const PlannedFetch& plan, std::string found, std::string expected) {
  throw InputError({Severity::error,
                    plan.url,
                    0,
                    0,
                    std::move(found),
                    std::move(expected),
                    "nothing was put in place; check the address, or try again later"});
}

bool is_web_page(std::string_view text) {
  while (!text.empty() &&
         std::string_view(" \t\r\n").find(text.front()) != std::string_view::npos) {
    text.remove_prefix(1);
  }
  return text.starts_with('<');
}

void check_json(const PlannedFetch& plan, std::string_view text) {
  const nlohmann::json json = nlohmann::json::parse(text, nullptr, false);
  if (json.is_discarded()) {
    refuse(plan, "what came is not whole JSON", "JSON of daily temperatures");
  }
  const auto daily = json.is_object() ? json.find("daily") : json.end();
  constexpr std::array needed{"time", "temperature_2m_max", "temperature_2m_min"};
  std::size_t days = 0;
  for (const char* key : needed) {
    if (daily == json.end() || !daily->is_object() || !daily->contains(key) ||
        !(*daily)[key].is_array()) {
      refuse(plan, std::string("the answer lacks daily/") + key, "JSON of daily temperatures");
    }
    const std::size_t here = (*daily)[key].size();
    days = key == needed.front() ? here : days;
    if (here != days || days == 0) {
      refuse(plan, "the lists of days and temperatures do not go together", "one value a day");
    }
  }
}

void check_table(const PlannedFetch& plan, std::string_view text) {
  if (plan.archive == Archive::power && (text.find("T2M_MIN") == std::string_view::npos ||
                                         text.find("T2M_MAX") == std::string_view::npos)) {
    refuse(plan, "the table lacks T2M_MIN or T2M_MAX", "a table of daily temperatures");
  }
  if (plan.file.ends_with(".dly") && text.find("TMIN") == std::string_view::npos &&
      text.find("TMAX") == std::string_view::npos) {
    refuse(plan, "no line of it holds TMIN or TMAX", "a station's file of daily temperatures");
  }
  if (!text.ends_with('\n')) {
    refuse(plan, "the text ends in the middle of a line", "a whole file");
  }
}

} // namespace

void check_content(const PlannedFetch& plan, std::string_view text) {
  if (trimmed(text).empty()) {
    refuse(plan, "the answer is empty", "daily temperatures");
  }
  if (is_web_page(text)) {
    refuse(plan, "a web page came in place of data", "daily temperatures");
  }
  if (plan.file.ends_with(".json")) {
    check_json(plan, text);
  } else {
    check_table(plan, text);
  }
}

} // namespace nightsow::climate
