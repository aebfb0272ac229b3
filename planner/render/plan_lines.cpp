#include "planner/render/plan_lines.hpp"

#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plain_words.hpp"
#include "planner/render/shopping.hpp"
#include "planner/render/table.hpp"
#include "planner/render/text_parts.hpp"
#include "planner/render/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <utility>
#include <vector>

namespace nightsow::planner {

namespace {

std::string under(std::string_view word, std::string_view text) {
  return text.empty() ? "" : paragraph(fmt::format("{}{}: ", under_row, word), text);
}

void append(std::string& list, std::string_view separator, std::string_view part) {
  if (!list.empty() && !part.empty()) {
    list += separator;
  }
  list += part;
}

std::string fading_text(const SeedAnswer& seed) {
  if (!seed.fading || seed.lost_by_waiting <= 0.0) {
    return {};
  }
  return fmt::format("{} of its living seed dies within a year", share_text(seed.lost_by_waiting));
}

// "about 7 seedlings (likely 1 to 15)".
std::string likely_text(const NumberSpread& number, std::string_view what) {
  if (number.p90 <= 0.0) {
    return fmt::format("hardly any {}", what);
  }
  return fmt::format("about {} {} (likely {} to {})",
                     whole_text(number.mean),
                     what,
                     whole_text(number.p10),
                     whole_text(number.p90));
}

// By when a season is judged, by how the kind passes its first resting season.
std::string_view alive_words(const How& how) {
  const std::string_view way = how.first_rest ? std::string_view{*how.first_rest} : "";
  return way == "none"   ? "alive at the height of the next hot season"
         : way == "dies" ? "grown up to flower"
                         : "alive after the first rest";
}

std::string expect_text(const std::optional<Expected>& expected, const How& how, Date today) {
  if (!expected) {
    return {};
  }
  const bool one = whole_text(expected->seedlings.mean) == "1";
  std::string text = likely_text(expected->seedlings, one ? "seedling" : "seedlings");
  if (expected->seedlings.p90 <= 0.0) {
    return text;
  }
  if (expected->first) {
    text += fmt::format(", the first near {}", day_text(*expected->first, today));
  }
  return text + "; " + likely_text(expected->plants, alive_words(how));
}

// Where the seeds go that do not become plants, the largest losses first.
std::string losses_text(const std::optional<Expected>& expected) {
  if (!expected) {
    return {};
  }
  const LostSeeds& lost = expected->losses;
  std::vector<std::pair<double, std::string_view>> parts{
      {lost.dead, "dead or empty"},
      {lost.not_ripe, "not ripe"},
      {lost.nights_too_warm, "waiting for cooler nights"},
      {lost.deferred, "waiting a year longer"},
      {lost.lost_wet, "rotted or damped off"},
      {lost.dried, "dried out"},
      {lost.heat, "by heat"},
      {lost.frost, "by frost"},
      {lost.too_late, "up too late or too small"},
      {lost.rest, "in the first rest"}};
  std::stable_sort(
      parts.begin(), parts.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
  std::string text;
  for (const auto& [seeds, why] : parts) {
    if (seeds > 0.5) {
      append(text, ", ", fmt::format("{} {}", whole_text(seeds), why));
    }
  }
  return text;
}

std::string condition_text(const FirstWater& water, Date today, const TextStyle& style) {
  std::string text;
  if (water.when) {
    text = fmt::format("{} of {} nights lie at or under {} on the {}",
                       water.when->nights,
                       water.when->of,
                       temperature_text(water.when->at_or_under_c, style),
                       water.when->bench);
    if (water.when->no_day_over_c) {
      text += fmt::format(", no day over {} is expected for a week",
                          temperature_text(*water.when->no_day_over_c, style));
    }
  }
  if (water.not_before) {
    append(text, "; ", "not before " + day_text(*water.not_before, today));
  }
  return text;
}

// From here on nobody needs to read how ripe it is.
constexpr double as_good_as_ripe = 0.99;
constexpr double hardly_ripe = 0.01;

std::string keep_text(const Keep& keep, Date today) {
  std::string text = keep.now.empty() ? "" : plain_word("store", keep.now);
  if (!text.empty() && keep.until) {
    text += ", until " + day_text(*keep.until, today);
  }
  if (!keep.then.empty()) {
    append(text, "; then ", plain_word("store", keep.then));
  }
  return text;
}

std::string plants_text(double plants) {
  const std::string number = whole_text(plants);
  return number + (number == "1" ? " plant" : " plants");
}

// What was compared, most plants first.
std::string routes_text(const std::vector<RouteAnswer>& routes, Date today) {
  std::string text;
  for (const RouteAnswer& route : routes) {
    if (route.plants && route.first_water) {
      append(text,
             "; ",
             fmt::format("{}: about {} from water near {}",
                         plain_word("route", route.route),
                         plants_text(*route.plants),
                         day_text(*route.first_water, today)));
    }
  }
  return text;
}

std::string share_and_range(const NumberSpread& share, std::string_view what) {
  return fmt::format("{} {}, likely {} to {}",
                     percent_text(share.mean),
                     what,
                     percent_text(share.p10),
                     percent_text(share.p90));
}

std::string seed_text(const SeedAnswer& seed, Date today) {
  std::string text;
  if (seed.age_years) {
    text = counted_text(*seed.age_years, "year") + " old";
  }
  if (seed.alive) {
    append(text, ", ", share_and_range(*seed.alive, "alive"));
  }
  if (seed.ripe && seed.ripe->mean < as_good_as_ripe) {
    append(text,
           ", ",
           seed.ripe->p90 < hardly_ripe ? "not ripe yet" : share_and_range(*seed.ripe, "ripe"));
  }
  if (seed.ripe_on) {
    append(
        text, "; ", fmt::format("half of it will be by about {}", day_text(*seed.ripe_on, today)));
  }
  return text;
}

std::string pots_text(const How& how) {
  std::string text;
  if (how.seeds_to_sow) {
    text = counted_text(*how.seeds_to_sow, "seed");
  }
  if (how.pots) {
    append(text, " in ", counted_text(*how.pots, "pot"));
  }
  if (how.seeds_per_pot) {
    append(text, ", ", "at most " + counted_text(*how.seeds_per_pot, "seed") + " in each");
  }
  return text;
}

std::string how_text(const How& how) {
  std::string text = pots_text(how);
  const auto add = [&](std::string_view label, std::string_view key, const auto& value) {
    if (value && !value->empty()) {
      append(text, "; ", fmt::format("{}: {}", label, plain_word(key, *value)));
    }
  };
  add("pot", "pot_depth", how.pot_depth);
  if (how.nick != "useless") {
    add("nicking the coat", "scarify", how.nick);
  }
  add("cover", "cover", how.cover);
  add("light", "light", how.light);
  add("bag or lid", "humidity_cover", how.humidity_cover);
  add("mat", "mat", how.mat);
  add("pricking out", "transplant", how.transplant);
  add("first rest", "first_rest", how.first_rest);
  return text;
}

std::string look_text(const How& how, bool may_go_dry) {
  std::string text;
  const auto add = [&](const std::optional<int>& days, std::string_view what) {
    if (days) {
      append(text, ", ", fmt::format("{} after {}", what, counted_text(*days, "day")));
    }
  };
  add(how.first_look_days, "first seedlings");
  add(how.main_look_days, "most of them");
  add(how.last_look_days, may_go_dry ? "where nothing came up, a dry rest" : "the last look");
  return text.empty() ? text : text + ", counted from first water";
}

std::string tray_text(const std::optional<TrayPlace>& place, Date today) {
  if (!place) {
    return {};
  }
  return place->first_water ? fmt::format("{}; all of it gets first water about {}",
                                          place->tray,
                                          day_text(*place->first_water, today))
                            : place->tray;
}

std::string every_text(int days) {
  return days == 1 ? "every day" : fmt::format("every {} days", days);
}

std::string watering_text(const WorkFacts& work) {
  if (!work.water_every_days) {
    return {};
  }
  std::string text = fmt::format("from below by need, once the top is dry: usually about {}",
                                 every_text(*work.water_every_days));
  if (work.waters_later_days && work.waters_later_days != work.water_every_days) {
    text += fmt::format(", later about {}", every_text(*work.waters_later_days));
  }
  return text;
}

} // namespace

std::string taxon_cell(const std::string& taxon, const std::string& accepted) {
  return accepted.empty() || accepted == taxon ? taxon : fmt::format("{} ({})", taxon, accepted);
}

std::string seeds_cell(const Sowing& sowing) {
  return sowing.seeds ? whole_text(*sowing.seeds) : "some";
}

std::string gate_cell(const Sowing& sowing, const TextStyle& style) {
  if (!sowing.gate) {
    return "not asked for";
  }
  const GateAnswer& gate = *sowing.gate;
  const std::string limit = temperature_text(gate.limit_c, style);
  if (!gate.binds) {
    return limit + ": do not decide";
  }
  if (gate.counted >= gate.needed) {
    return fmt::format("{}: {}, enough", limit, gate.counted);
  }
  return fmt::format("{}: {} of {}", limit, gate.counted, gate.needed);
}

std::string first_water_cell(const Sowing& sowing, Date today) {
  Spread expected = sowing.first_water.expected;
  if (const auto& held = sowing.first_water.held) {
    expected.p50 = held;
    expected.p10 = expected.p10 ? std::min(expected.p10, held) : held;
    expected.p90 = expected.p90 ? std::max(expected.p90, held) : std::nullopt;
  }
  const bool certain = expected.p50 && expected.p10 == expected.p50 && expected.p90 == expected.p50;
  return (certain ? "from " : "") + spread_text(expected, today);
}

std::string below_sowing(const Sowing& sowing, Date today, const TextStyle& style) {
  std::string text = under("if it waits", fading_text(sowing.seed));
  text += because_lines(sowing.reasons, style);
  text += under("expect", expect_text(sowing.expected, sowing.how, today));
  if (!style.why) {
    return text;
  }
  for (const auto& risk : sowing.risks) {
    text += under("risk", sentence(risk, style));
  }
  text += under("losses", losses_text(sowing.expected));
  text += under("water when", condition_text(sowing.first_water, today, style));
  text += under("tray", tray_text(sowing.tray, today));
  text += under("keep", keep_text(sowing.keep, today));
  text += under("compared", routes_text(sowing.routes, today));
  text += under("seed", seed_text(sowing.seed, today));
  text += under("wanted", wish_text(sowing));
  text += under("sow", how_text(sowing.how));
  text += under("water", watering_text(sowing.work));
  text += under("look", look_text(sowing.how, sowing.work.may_go_dry));
  return text;
}

} // namespace nightsow::planner
