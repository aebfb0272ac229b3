#include "planner/render/packet_back.hpp"

#include "planner/render/cautions.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plain_words.hpp"
#include "planner/render/rule_value_text.hpp"
#include "planner/render/words.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <span>
#include <string_view>
#include <utility>

namespace nightsow::planner {

namespace {

/// The values of a rule by their keys; what is not known reads as empty.
class Told {
public:
  Told(const RuleShowAnswer& answer, const TextStyle& style) : answer_(&answer), style_(style) {}

  [[nodiscard]] const RuleValue* find(std::string_view key) const {
    const auto found = std::find_if(answer_->values.begin(),
                                    answer_->values.end(),
                                    [&](const RuleValue& value) { return value.key == key; });
    return found == answer_->values.end() ? nullptr : &*found;
  }

  [[nodiscard]] std::string_view word(std::string_view key) const {
    const RuleValue* value = find(key);
    return value == nullptr ? std::string_view{} : std::string_view{value->word};
  }

  /// `sentence` with {} for the value and its range; empty when it is not known.
  [[nodiscard]] std::string with(std::string_view sentence, std::string_view key) const {
    const RuleValue* value = find(key);
    return value == nullptr ? std::string{}
                            : fmt::format(fmt::runtime(sentence), rule_value_text(*value, style_));
  }

  /// The same without the range.
  [[nodiscard]] std::string with_plain(std::string_view sentence, std::string_view key) const {
    const RuleValue* value = find(key);
    return value == nullptr
               ? std::string{}
               : fmt::format(fmt::runtime(sentence), range_end_text(*value, value->value, style_));
  }

  [[nodiscard]] double number_or(std::string_view key, double otherwise) const {
    const RuleValue* value = find(key);
    return value == nullptr ? otherwise : value->value;
  }

  [[nodiscard]] const TextStyle& style() const { return style_; }

private:
  const RuleShowAnswer* answer_;
  TextStyle style_;
};

// Under this share nobody would count on it, and it is not said on the packet.
constexpr double worth_saying = 0.03;

std::string joined(const std::vector<std::string>& sentences) {
  std::string text;
  for (const auto& sentence : sentences) {
    if (!sentence.empty()) {
      text += text.empty() ? sentence : ' ' + sentence;
    }
  }
  return text;
}

/// The phrase that stands beside a word; empty for any other.
using Phrases = std::span<const std::pair<std::string_view, std::string_view>>;

std::string phrase_for(std::string_view word, Phrases phrases) {
  const auto found = std::find_if(
      phrases.begin(), phrases.end(), [&](const auto& entry) { return entry.first == word; });
  return found == phrases.end() ? std::string{} : std::string{found->second};
}

// ", 5 of 7".
std::string gate_text(const Told& told) {
  const RuleValue* nights = told.find("gate_nights");
  const RuleValue* of = told.find("gate_of");
  return nights == nullptr || of == nullptr
             ? std::string{}
             : fmt::format(", {} of {}", whole_text(nights->value), whole_text(of->value));
}

std::string what_starts_it(const Told& told) {
  const std::string_view start = told.word("start");
  const std::string days =
      told.with_plain(", and days reach no more than {} on average", "day_limit_c");
  if (start == "cool") {
    return told.with("Cool nights start it: sow for the time when nights lie at or under {}",
                     "night_limit_c") +
           gate_text(told) + days + '.';
  }
  if (start == "hot") {
    return "Warmth starts it: sow in the hot season" +
           told.with(", when nights hold at or above {}, a heat mat counted", "warm_night_c") + '.';
  }
  if (start == "any") {
    return "It waits for nothing: sow whenever it is neither hot nor cold" +
           told.with_plain(", days up to {} on average", "day_limit_c") + '.';
  }
  return start == "at_once" ? "Sow it at once, whatever the season: it dies when dried and cannot "
                              "wait."
                            : "";
}

std::string when_text(const Told& told) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 2> swings{
      {{"needed", "It needs days much warmer than nights."},
       {"helpful", "Days much warmer than nights help."}}};
  const double indifferent = told.number_or("indifferent_share", 0.0);
  const bool some = told.word("start") == "cool" && indifferent >= worth_saying;
  const RuleValue* growth = told.find("growth");
  return joined(
      {what_starts_it(told),
       some ? fmt::format("{} of the seed comes without them.",
                          with_capital(share_text(indifferent)))
            : "",
       phrase_for(told.word("swing"), swings),
       growth == nullptr ? "" : fmt::format("It grows {}.", plain_word("growth", growth->word))});
}

std::string cover_text(const Told& told) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 6> covers{
      {{"none", "Leave the seed on the surface"},
       {"dusting", "Cover it with a dusting"},
       {"thin", "Cover it thinly"},
       {"own_thickness", "Cover it as thick as the seed"},
       {"deep", "Bury it deep"},
       {"half_buried", "Bury it by half"}}};
  constexpr std::array<std::pair<std::string_view, std::string_view>, 3> lights{
      {{"needed", "; it needs light"},
       {"helpful", "; light helps"},
       {"dark", "; it comes better in the dark"}}};
  const std::string cover = phrase_for(told.word("cover"), covers);
  if (cover.empty()) {
    return {};
  }
  const bool deep = told.number_or("cover_mm", 0.0) > 0.0 && told.word("cover") != "none";
  return cover + (deep ? told.with(", {}", "cover_mm") : "") +
         phrase_for(told.word("light"), lights) + '.';
}

std::string pot_text(const Told& told) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 4> depths{
      {{"shallow", "A shallow pot"},
       {"standard", "A usual pot"},
       {"deep", "A deep pot"},
       {"very_deep", "A very deep pot"}}};
  const std::string pot = phrase_for(told.word("pot_depth"), depths);
  if (pot.empty()) {
    return {};
  }
  return pot + told.with_plain(", {}", "pot_depth_mm") +
         told.with("; {} where it is 8 cm across", "seeds_per_pot") +
         told.with_plain("; about {} of the mix mineral", "mix_mineral_share") + '.';
}

std::string mat_text(const Told& told) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 4> mats{
      {{"needed", "It needs a heat mat"},
       {"helpful", "A heat mat helps"},
       {"useless", "No heat mat is needed"},
       {"harmful", "No heat mat: it does harm"}}};
  constexpr std::array<std::pair<std::string_view, std::string_view>, 2> at_night{
      {{"on", ", at night too"}, {"off", ", off at night"}}};
  const std::string mat = phrase_for(told.word("mat"), mats);
  if (mat.empty()) {
    return {};
  }
  const bool used = told.word("mat") == "needed" || told.word("mat") == "helpful";
  return mat + (used ? phrase_for(told.word("mat_at_night"), at_night) : "") + '.';
}

std::string treatments_text(const Told& told) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 3> verdicts{
      {{"needed", "is needed"}, {"helpful", "helps"}, {"harmful", "does harm"}}};
  constexpr std::array<std::pair<std::string_view, std::string_view>, 3> treatments{
      {{"smoke", "Smoke"}, {"leach", "Soaking or rinsing first"}, {"scarify", "Nicking the coat"}}};
  std::vector<std::string> said;
  bool known = false;
  for (const auto& [key, name] : treatments) {
    known = known || !told.word(key).empty();
    const std::string verdict = phrase_for(told.word(key), verdicts);
    said.push_back(verdict.empty() ? "" : fmt::format("{} {}.", name, verdict));
  }
  const std::string text = joined(said);
  return text.empty() && known ? "No smoke, soaking or nicking is needed." : text;
}

std::string how_text(const Told& told) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 3> bags{
      {{"useful", "A bag or lid keeps it moist."},
       {"useless", "No bag or lid is needed."},
       {"harmful", "No closed bag or lid: it does harm."}}};
  return joined({cover_text(told),
                 pot_text(told),
                 mat_text(told),
                 phrase_for(told.word("humidity_cover"), bags),
                 treatments_text(told)});
}

std::string deferral_text(const Told& told) {
  const double waits = told.number_or("deferral_share", 0.0);
  const std::string keep = told.with_plain("keep the pot for {}", "keep_seasons");
  if (waits < worth_saying) {
    return keep.empty() ? "" : with_capital(keep) + " before you empty it.";
  }
  const RuleValue* treated = told.find("deferral_treated_share");
  return fmt::format(
      "{} of the sound seed waits a year longer{}{}{}.",
      with_capital(share_text(waits)),
      treated == nullptr ? "" : fmt::format(", once treated {}", share_text(treated->value)),
      keep.empty() ? "" : ": ",
      keep);
}

bool dies_dry(const Told& told) {
  return told.word("start") == "at_once" || told.word("seed_size") == "fleshy";
}

// As pot_may_go_dry of the rules; a kind of which it is not told rests dry.
bool pot_may_go_dry(const Told& told) {
  const std::string_view way = told.word("first_rest");
  return way != "barely_moist" && way != "none" && !dies_dry(told);
}

std::string expect_text(const Told& told) {
  const RuleValue* share = told.find("germination_share");
  const std::string comes = share == nullptr
                                ? ""
                                : fmt::format("Of fresh, ripe seed {} comes up ({} to {})",
                                              share_text(share->value),
                                              whole_text(share->low * 100.0),
                                              percent_text(share->high));
  const std::string first = told.with("the first after {}", "first_look_days");
  const std::string most = told.with("most after {}", "main_look_days");
  std::vector<std::string> parts;
  for (const std::string& part : {comes, first, most}) {
    if (!part.empty()) {
      parts.push_back(part);
    }
  }
  return joined({parts.empty() ? "" : with_capital(fmt::format("{}.", fmt::join(parts, ", "))),
                 told.with_plain(pot_may_go_dry(told) ? "Last look after {}, then a dry rest."
                                                      : "Last look after {}.",
                                 "last_look_days"),
                 deferral_text(told)});
}

std::string ripening_text(const RuleShowAnswer& answer, const TextStyle& style) {
  if (!answer.half_ripe) {
    return {};
  }
  const RipeningDays& ripe = *answer.half_ripe;
  if (ripe.high < 0.5) {
    return "It needs no ripening.";
  }
  return fmt::format("Half of it is ripe after {} ({} to {}) warm and dry at {}.",
                     counted_text(std::round(ripe.days), "day"),
                     whole_text(ripe.low),
                     whole_text(ripe.high),
                     temperature_text(ripe.shelf_c, style));
}

std::string store_text(const Told& told) {
  const std::string_view store = told.word("store");
  if (store != "sow_at_once") {
    return store.empty() ? "" : fmt::format("Keep it {}.", plain_word("store", store));
  }
  return dies_dry(told)
             ? "Do not keep it; if it has to wait some days or weeks, cool and barely moist."
             : "Do not keep it.";
}

std::string keep_text(const RuleShowAnswer& answer, const Told& told) {
  const RuleValue* life = told.find("half_life_years");
  const std::string lives =
      life == nullptr ? ""
                      : fmt::format("On a dry shelf half of it is alive after {} ({} to {}).",
                                    counted_text(life->value, "year"),
                                    counted_text(life->low, "year"),
                                    counted_text(life->high, "year"));
  return joined({store_text(told), ripening_text(answer, told.style()), lives});
}

std::string seedlings_text(const Told& told) {
  const std::string young = told.with("Young ones stand {}", "seedling_frost_c");
  const std::string older = told.with_plain(", from sixty days on {}", "older_seedling_frost_c");
  const std::string hours = told.with("hours of up to {}", "seedling_heat_c");
  std::string shade =
      told.with_plain("Keep {} of the sun off in the first year", "shade_first_year");
  if (told.word("first_rest") != "dies") {
    shade += told.with_plain(", {} in the second", "shade_second_year") +
             told.with_plain(", {} later", "shade_third_year");
  }
  const std::string_view prick = told.word("transplant");
  return joined(
      {young.empty() ? "" : young + older + (hours.empty() ? "" : ", and " + hours) + '.',
       shade.empty() ? "" : shade + '.',
       prick.empty() ? "" : fmt::format("Pricking out: {}.", plain_word("transplant", prick))});
}

std::string evergreen_rest_text(const Told& told) {
  return joined(
      {"Evergreen: it has no dry rest. Go on watering by need through its resting season, "
       "in shade.",
       told.with("It needs {} of good growth before the next hot season is at its height.",
                 "growth_needed_days")});
}

std::string annual_rest_text(const Told& told) {
  return joined({"Annual: it flowers, sets seed and dies, and has no rest to live through.",
                 told.with("It needs {} of good growth before that.", "growth_needed_days")});
}

std::string rest_text(const Told& told) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 2> ways{
      {{"dry", "In that rest let it go dry, shaded, with a sip now and then."},
       {"barely_moist", "In that rest keep it barely moist: it is not dried off."}}};
  const std::string_view way = told.word("first_rest");
  if (way == "none" || way == "dies") {
    return way == "none" ? evergreen_rest_text(told) : annual_rest_text(told);
  }
  const std::string growth =
      told.with("It needs {} of good growth before its first rest", "growth_needed_days");
  if (growth.empty()) {
    return {};
  }
  const std::string care = phrase_for(way, ways);
  if (told.word("growth") == "summer") {
    return joined({growth + ", which cool nights and days bring.", care});
  }
  const std::string warmth = told.with_plain("Some {} days of full summer warmth and long light "
                                             "bring that rest; milder ones count in part.",
                                             "rest_sum");
  return joined({growth + '.', warmth, care});
}

std::string sure_text(const RuleGround& ground) {
  const std::array<std::pair<int, std::string_view>, 4> grounds{
      {{ground.experiment, "on published experiments"},
       {ground.institution, "on the practice of institutions"},
       {ground.grower, "on one grower"},
       {ground.less, "on less"}}};
  std::vector<std::string> counts;
  for (const auto& [count, what] : grounds) {
    if (count > 0) {
      counts.push_back(fmt::format("{} {}", count, what));
    }
  }
  if (counts.empty()) {
    return {};
  }
  const std::string weakest =
      ground.weakest.empty() ? ""
                             : fmt::format("Known worst: {}.", fmt::join(ground.weakest, "; "));
  return joined({fmt::format("{} that decide much: {}.",
                             counted_text(ground.deciding, "value"),
                             fmt::join(counts, ", ")),
                 weakest});
}

} // namespace

std::vector<PacketBackLine> packet_back(const RuleShowAnswer& answer, const TextStyle& style) {
  const Told told{answer, style};
  std::vector<PacketBackLine> lines{{"when", when_text(told)},
                                    {"how", how_text(told)},
                                    {"expect", expect_text(told)},
                                    {"keep", keep_text(answer, told)},
                                    {"seedlings", seedlings_text(told)},
                                    {"rest", rest_text(told)}};
  // A species may repeat what its genus says.
  std::set<std::string> minded;
  for (const auto& value : answer.values) {
    if (value.key == "cautions" && minded.insert(value.word).second) {
      lines.push_back({"mind", std::string{caution_sentence(value.word)}});
    }
  }
  for (const auto& value : answer.values) {
    if (value.key == "notes") {
      lines.push_back(
          {"notes", fmt::format("{} ({})", value.word, plain_word("evidence", value.evidence))});
    }
  }
  lines.push_back({"how sure", sure_text(answer.ground)});
  std::erase_if(lines, [](const PacketBackLine& line) { return line.text.empty(); });
  return lines;
}

} // namespace nightsow::planner
