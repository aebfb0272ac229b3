#include "planner/garden/time_zone.hpp"

#include "climate/readers/local_time.hpp"

#include <date/tz.h>

#include <ctime>
#include <stdexcept>

namespace nightsow::planner {

namespace {

// By the C library, which heeds TZ and does with any /etc/localtime; date::current_zone() needs one
// that names a zone.
Date machine_date(std::chrono::system_clock::time_point instant) {
  const std::time_t seconds = std::chrono::system_clock::to_time_t(instant);
  std::tm local{};
  localtime_r(&seconds, &local);
  return Date{date::year{local.tm_year + 1900} / (local.tm_mon + 1) / local.tm_mday};
}

} // namespace

bool is_time_zone(std::string_view name) {
  climate::need_zone_data();
  try {
    return date::locate_zone(name) != nullptr;
  } catch (const std::runtime_error&) {
    return false;
  }
}

std::vector<std::string> time_zone_names() {
  std::vector<std::string> names;
  climate::need_zone_data();
  for (const date::time_zone& zone : date::get_tzdb().zones) {
    names.push_back(zone.name());
  }
  return names;
}

Date civil_date(std::chrono::system_clock::time_point instant, const std::string& zone) {
  if (zone.empty()) {
    return machine_date(instant);
  }
  climate::need_zone_data();
  return date::floor<Days>(date::locate_zone(zone)->to_local(instant));
}

} // namespace nightsow::planner
