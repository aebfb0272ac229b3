#include "planner/render/dates.hpp"
#include "planner/render/plan_files.hpp"

#include <fmt/format.h>

#include <string_view>

namespace nightsow::planner {

namespace {

// A label is 70 x 25 mm: what fits plastic pot labels, three beside each other on A4.
constexpr std::string_view page_begins = R"(<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>Pot labels</title>
<style>
@page { size: A4; margin: 10mm 0; }
body { margin: 0; color: #000; background: #fff; font: 8pt/1.25 sans-serif; }
main { display: grid; grid-template-columns: repeat(3, 70mm); }
article { box-sizing: border-box; width: 70mm; height: 25mm; padding: 2mm 3mm; overflow: hidden;
  border: 0.2mm dashed #000; break-inside: avoid; }
article p { margin: 0; white-space: nowrap; overflow: hidden; text-overflow: ellipsis; }
.taxon { font: italic bold 10pt/1.3 serif; }
.packet { font-weight: bold; }
</style>
</head>
<body>
<main>
)";

constexpr std::string_view page_ends = "</main>\n</body>\n</html>\n";

std::string escaped(std::string_view text) {
  std::string safe;
  for (const char c : text) {
    switch (c) {
    case '&':
      safe += "&amp;";
      break;
    case '<':
      safe += "&lt;";
      break;
    case '>':
      safe += "&gt;";
      break;
    case '"':
      safe += "&quot;";
      break;
    case '\'':
      safe += "&#39;";
      break;
    default:
      safe += c;
    }
  }
  return safe;
}

std::string label(const LotPacket& packet, int pot) {
  std::string first = fmt::format("<span class=\"packet\">{}</span>", escaped(packet.packet));
  if (packet.pots) {
    first += fmt::format(", pot {} of {}", pot, *packet.pots);
  }
  if (!packet.number.empty()) {
    first += ", " + escaped(packet.number);
  }
  const std::string sown = packet.sow_on ? date_text(*packet.sow_on) : "____________";
  return fmt::format("<article>\n<p class=\"taxon\">{}</p>\n<p>{}</p>\n<p>sown {}</p>\n"
                     "<p>{}</p>\n</article>\n",
                     escaped(packet.taxon),
                     first,
                     sown,
                     escaped(packet.provenance));
}

std::string labels_of(const std::vector<LotPacket>& packets) {
  std::string text;
  for (const LotPacket& packet : packets) {
    for (int pot = 1; pot <= packet.pots.value_or(1); ++pot) {
      text += label(packet, pot);
    }
  }
  return text;
}

} // namespace

std::string plan_labels(const PlanAnswer& answer) {
  std::string text{page_begins};
  for (const Lot& lot : answer.lots) {
    if (!lot.carried) { // these have theirs
      text += labels_of(lot.packets);
    }
  }
  text += labels_of(answer.no_day);
  return text + std::string{page_ends};
}

} // namespace nightsow::planner
