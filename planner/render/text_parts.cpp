#include "planner/render/text_parts.hpp"

#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/table.hpp"
#include "planner/render/words.hpp"

#include <fmt/format.h>

namespace nightsow::planner {

std::string garden_line(const GardenHead& garden, Date today, std::optional<int> season) {
  const std::string name = garden.name.empty() ? "Garden" : garden.name;
  return paragraph("",
                   fmt::format("{} ({}), {}{}",
                               name,
                               place_text(garden.latitude, garden.longitude),
                               date_text(today),
                               season ? fmt::format(", season {}", *season) : ""));
}

std::string readings_line(const ReadingsHead& readings) {
  if (!readings.from || !readings.to) {
    return "Readings: none\n";
  }
  return paragraph("Readings: ",
                   fmt::format("{} to {}, {}, {} of the nights, {} in doubt",
                               date_text(*readings.from),
                               date_text(*readings.to),
                               counted_text(readings.seasons, "full past season"),
                               percent_text(readings.complete),
                               counted_text(readings.findings, "reading")));
}

std::string warnings_block(std::string_view heading,
                           std::vector<Reason> warnings,
                           const TextStyle& style) {
  // What was wrong with the files is told on the error stream, once for every command.
  std::erase_if(warnings,
                [](const Reason& reason) { return reason.code == ReasonCode::file_problem; });
  return reasons_block(heading, warnings, style);
}

std::string reasons_block(std::string_view heading,
                          const std::vector<Reason>& reasons,
                          const TextStyle& style) {
  if (reasons.empty()) {
    return {};
  }
  std::string text = '\n' + heading_text(heading, style);
  for (const auto& reason : reasons) {
    text += paragraph("  ", sentence(reason, style));
  }
  return text;
}

std::string because_lines(const std::vector<Reason>& reasons, const TextStyle& style) {
  std::string text;
  for (const auto& reason : reasons) {
    const std::string_view word = text.empty() ? "because: " : "and: ";
    text += paragraph(std::string{under_row}.append(word), sentence(reason, style));
    if (!style.why) {
      break;
    }
  }
  return text;
}

} // namespace nightsow::planner
