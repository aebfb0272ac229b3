#include "planner/render/answer_text.hpp"
#include "planner/render/cautions.hpp"
#include "planner/render/packet_back.hpp"
#include "planner/render/plain_words.hpp"
#include "planner/render/rule_value_text.hpp"
#include "planner/render/table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <span>
#include <string_view>
#include <utility>

namespace nightsow::planner {

namespace {

struct Label {
  std::string_view key;
  std::string_view text;
};

/// A part of the packet's back, and what its values are called there.
struct Part {
  std::string_view heading;
  std::span<const Label> labels;
};

constexpr std::array<Label, 11> starts_labels{{
    {"growth", "grows"},
    {"start", "started by"},
    {"night_limit_c", "nights at or under"},
    {"night_limit_spread_k", "single seeds stray by"},
    {"indifferent_share", "come up without such nights"},
    {"gate_nights", "so many cool nights"},
    {"gate_of", "of the last"},
    {"day_limit_c", "highs on average to"},
    {"warm_night_c", "nights at or above, mat counted"},
    {"swing", "difference of day and night"},
    {"wake_above_limit_k", "a resting plant wakes above it by"},
}};

constexpr std::array<Label, 8> seed_labels{{
    {"seed_size", "size"},
    {"germination_share", "comes up, fresh and ripe"},
    {"half_life_years", "half alive after"},
    {"after_ripening_c_d", "half ripe after, above the next"},
    {"after_ripening_base_c", "a store ripens it above"},
    {"deferral_share", "waits a year longer, left whole"},
    {"deferral_treated_share", "waits so, treated as below"},
    {"store", "store"},
}};

constexpr std::array<Label, 5> development_labels{{
    {"base_c", "no progress at or under"},
    {"optimum_c", "fastest at"},
    {"ceiling_c", "no progress at or over"},
    {"thermal_time_c_d", "half of them up after"},
    {"thermal_time_spread", "spread between seeds"},
}};

constexpr std::array<Label, 3> losses_labels{{
    {"wet_loss_per_day", "wet waiting seed lost a day"},
    {"rot_factor", "damping off, usual is 1"},
    {"dry_loss_share", "die, dried with the root just out"},
}};

constexpr std::array<Label, 13> sowing_labels{{
    {"light", "light"},
    {"cover", "cover"},
    {"cover_mm", "depth of the cover"},
    {"mat", "heat mat"},
    {"mat_at_night", "mat at night"},
    {"humidity_cover", "bag or lid"},
    {"pot_depth", "pot"},
    {"pot_depth_mm", "depth of the pot"},
    {"seeds_per_pot", "in a pot 8 cm across"},
    {"mix_mineral_share", "mineral part of the mix"},
    {"smoke", "smoke"},
    {"leach", "soaking or rinsing first"},
    {"scarify", "nicking or rubbing the coat"},
}};

constexpr std::array<Label, 14> seedling_labels{{
    {"first_look_days", "first seedlings after"},
    {"main_look_days", "most of them after"},
    {"last_look_days", "last look after"},
    {"growth_needed_days", "growth before the first rest"},
    {"rest_sum", "days of full warmth to the first rest"},
    {"first_rest", "first rest"},
    {"seedling_frost_c", "coldest that they stand"},
    {"older_seedling_frost_c", "coldest, when sixty days old"},
    {"seedling_heat_c", "hottest hours that they stand"},
    {"shade_first_year", "shade in the first year"},
    {"shade_second_year", "shade in the second year"},
    {"shade_third_year", "shade from the third on"},
    {"keep_seasons", "keep a pot for"},
    {"transplant", "pricking out"},
}};

constexpr std::array<Part, 6> parts{{
    {"Starts when", starts_labels},
    {"Seed", seed_labels},
    {"Then, by warmth", development_labels},
    {"Losses", losses_labels},
    {"Sowing", sowing_labels},
    {"Seedlings", seedling_labels},
}};

/// Where a value stands and what it is called.
struct Place {
  const Part* part = nullptr; ///< null: no part names it
  std::string_view label;
};

Place place_of(const RuleValue& value) {
  for (const auto& part : parts) {
    for (const auto& label : part.labels) {
      if (label.key == value.key) {
        return {&part, label.text};
      }
    }
  }
  return {nullptr, value.meaning};
}

bool is_remark(const RuleValue& value) {
  return value.key == "cautions" || value.key == "notes";
}

// What a grower's own value would be otherwise, with its ground.
std::string otherwise_text(const RuleValue& value, const TextStyle& style) {
  if (!value.otherwise || is_remark(value)) {
    return {};
  }
  RuleValue other = value;
  other.value = value.otherwise->value;
  other.low = value.otherwise->low;
  other.high = value.otherwise->high;
  other.word = value.otherwise->word;
  return fmt::format("; otherwise {}, {}, {}",
                     rule_value_text(other, style),
                     plain_word("evidence", value.otherwise->evidence),
                     value.otherwise->origin);
}

// "practice of an institution [2]; genus".
std::string ground_text(const RuleValue& value,
                        const std::vector<RuleSource>& sources,
                        const TextStyle& style) {
  std::string text = plain_word("evidence", value.evidence);
  const auto source = std::find_if(
      sources.begin(), sources.end(), [&](const auto& entry) { return entry.id == value.source; });
  if (source != sources.end()) {
    text += fmt::format(" [{}]", source - sources.begin() + 1);
  } else if (!value.source.empty()) {
    text += fmt::format(" [{}]", value.source);
  }
  if (!value.origin.empty()) {
    text += "; " + value.origin;
  }
  return text + otherwise_text(value, style);
}

// Values come in the order of the field table; one that no part names goes with the one before it.
std::string values_text(const RuleShowAnswer& answer, const TextStyle& style) {
  std::vector<TableRow> rows;
  const Part* here = nullptr;
  for (const auto& value : answer.values) {
    if (is_remark(value)) {
      continue;
    }
    const Place place = place_of(value);
    TableRow row{{std::string{place.label},
                  rule_value_text(value, style),
                  ground_text(value, answer.sources, style)}};
    if (place.part != nullptr && place.part != here) {
      here = place.part;
      row.above = '\n' + heading_text(here->heading, style);
    }
    rows.push_back(std::move(row));
  }
  const std::vector<Column> columns{
      {"", Align::left, true}, {"Value", Align::left, true}, {"Known from", Align::left, true}};
  const std::string table = table_text(columns, rows, style);
  return table.empty() ? "" : '\n' + table;
}

std::string remarks_text(const RuleShowAnswer& answer,
                         std::string_view key,
                         std::string_view heading,
                         const TextStyle& style) {
  std::string text;
  for (const auto& value : answer.values) {
    if (value.key == key) {
      const std::string said =
          key == "cautions" ? std::string{caution_sentence(value.word)} : value.word;
      text +=
          paragraph("  ", fmt::format("{} ({})", said, ground_text(value, answer.sources, style)));
    }
  }
  return text.empty() ? "" : '\n' + heading_text(heading, style) + text;
}

std::string source_text(const RuleSource& source, std::size_t number) {
  std::string text = source.author.empty() ? source.title : source.author + ": " + source.title;
  if (source.year) {
    text += fmt::format(", {}", *source.year);
  }
  return paragraph(fmt::format("  [{}] ", number), fmt::format("{} ({})", text, source.kind));
}

std::string names_line(std::string_view lead, const std::vector<std::string>& names) {
  return names.empty() ? "" : paragraph("", fmt::format("{}: {}.", lead, fmt::join(names, ", ")));
}

std::string rule_head(const RuleShowAnswer& answer, const TextStyle& style) {
  std::string text = heading_text(fmt::format("{} ({})", answer.accepted, answer.family), style);
  if (!answer.read_as.empty()) {
    text += paragraph("", fmt::format("{} was read as {}.", answer.taxon, answer.read_as));
  }
  if (answer.by_synonym) {
    text += paragraph("", fmt::format("{} is an older name of {}.", answer.taxon, answer.accepted));
  }
  text += names_line("Older names on labels", answer.older_names);
  if (!answer.own_rule) {
    text += paragraph("",
                      fmt::format("It has no rule of its own: this is what is known of {} as a "
                                  "whole, and a species may differ.",
                                  answer.rule.substr(0, answer.rule.find(' '))));
  } else if (answer.rule != answer.accepted) {
    text += paragraph("", fmt::format("By the rule of {}.", answer.rule));
  }
  text += names_line("With rules of their own", answer.species_rules);
  return text + names_line("Yours, over the catalogue's", answer.yours);
}

std::string packet_back_text(const RuleShowAnswer& answer, const TextStyle& style) {
  constexpr std::size_t lead_width = 11;
  std::string text = "\n";
  std::string_view before;
  const std::vector<PacketBackLine> lines = packet_back(answer, style);
  for (const auto& line : lines) {
    std::string lead = line.about == before ? "" : with_capital(line.about);
    lead.resize(lead_width, ' ');
    text += paragraph(lead, line.text);
    before = line.about;
  }
  return lines.empty() ? "" : text;
}

std::string sources_text(const RuleShowAnswer& answer, const TextStyle& style) {
  std::string text = answer.sources.empty() ? "" : '\n' + heading_text("Sources", style);
  std::size_t number = 0;
  for (const auto& source : answer.sources) {
    text += source_text(source, ++number);
  }
  return text;
}

} // namespace

std::string rule_values_text(const RuleShowAnswer& answer, const TextStyle& style) {
  return values_text(answer, style) + sources_text(answer, style);
}

std::string rule_show_text(const RuleShowAnswer& answer, const TextStyle& style) {
  const std::string first = rule_head(answer, style) + packet_back_text(answer, style);
  if (!style.why) {
    return first + "\nEvery value with its range, ground and source: --why\n";
  }
  return first + values_text(answer, style) + remarks_text(answer, "cautions", "Cautions", style) +
         remarks_text(answer, "notes", "Notes", style) + sources_text(answer, style);
}

} // namespace nightsow::planner
