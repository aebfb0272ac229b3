#include "planner/render/cautions.hpp"

#include "planner/render/table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <stdexcept>
#include <utility>

namespace nightsow::planner {

namespace {

// In the order in which they are printed.
constexpr std::array<std::pair<std::string_view, std::string_view>, 6> sentences{{
    {"sap_irritant", "Sap irritates skin and eyes: wear gloves, and wash it off at once."},
    {"bulb_toxic", "The bulbs are poisonous when eaten: keep them from children and animals."},
    {"toxic_all_parts",
     "All parts are poisonous when eaten: keep them from children and animals, and wash your "
     "hands."},
    {"spines", "Spines: mind your hands and eyes."},
    {"protected_species",
     "Protected, or in controlled trade, in some places: ask the authorities there which permits "
     "seed and plants need before they are collected, bought, sent or carried across a border."},
    {"weed_in_some_regions",
     "A declared weed in some regions: check your local biosecurity rules before you order or sow, "
     "and let none of it escape."},
}};

constexpr std::string_view mat_sentence =
    "Heat mats are mains electricity near water: use a residual-current device, keep plugs and "
    "thermostat dry, put the probe into a pot, and follow your local rules.";

constexpr std::string_view dust_sentence =
    "Dry mineral mixes give off dust that harms the lungs: wet the mix before you stir it, wear a "
    "mask, and follow the supplier's sheet and your local rules.";

bool has_caution(const Sowing& sowing, std::string_view code) {
  return std::find(sowing.cautions.begin(), sowing.cautions.end(), code) != sowing.cautions.end();
}

// What stands on a mat, and what is told to want one that the garden does not have.
bool uses_mat(const Sowing& sowing) {
  return sowing.work.on_mat ||
         std::any_of(sowing.reasons.begin(), sowing.reasons.end(), [](const Reason& reason) {
           return reason.code == ReasonCode::mat_needed;
         });
}

template <class Concerns> std::string packets_where(const PlanAnswer& answer, Concerns concerns) {
  std::string packets;
  for (const auto& sowing : answer.sowings) {
    if (concerns(sowing)) {
      packets += packets.empty() ? sowing.packet : ", " + sowing.packet;
    }
  }
  return packets;
}

std::string caution_line(std::string_view text, const std::string& packets) {
  return packets.empty() ? "" : paragraph("  ", fmt::format("{} Packets: {}.", text, packets));
}

} // namespace

std::string_view caution_sentence(std::string_view code) {
  for (const auto& [known, text] : sentences) {
    if (known == code) {
      return text;
    }
  }
  throw std::logic_error(fmt::format("caution '{}' has no sentence", code));
}

std::string cautions_text(const PlanAnswer& answer, const TextStyle& style) {
  if (answer.sowings.empty()) {
    return {};
  }
  for (const auto& sowing : answer.sowings) {
    for (const auto& code : sowing.cautions) {
      // A code without a sentence must not be passed over in silence.
      static_cast<void>(caution_sentence(code));
    }
  }
  std::string text = '\n' + heading_text("Cautions", style);
  for (const auto& entry : sentences) {
    const std::string_view code = entry.first;
    text += caution_line(entry.second, packets_where(answer, [&](const Sowing& sowing) {
                           return has_caution(sowing, code);
                         }));
  }
  text += caution_line(mat_sentence, packets_where(answer, uses_mat));
  return text + paragraph("  ", dust_sentence);
}

} // namespace nightsow::planner
