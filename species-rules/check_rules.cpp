#include "species-rules/check_rules.hpp"

#include "species-rules/inherit.hpp"
#include "species-rules/rule_fields.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <utility>

namespace nightsow::species_rules {

namespace {

using Problems = std::vector<Problem>;

void check_family_defaults(const FamilyFile& file, Problems& faults) {
  for_each_field(file.rule, [&](const Field& field, const auto& member) {
    if constexpr (requires { member.has_value(); }) {
      if (field.in_family && !member && !was_unread(file.rule, field.key)) {
        faults.push_back(fault_at(file.rule_place,
                                  fmt::format("{} gives no {}", file.family, field.key),
                                  "a default in every family, so that no entry has to guess",
                                  fmt::format("add \"{}\" to the family's rule", field.key)));
      }
    }
  });
}

bool in_order(const std::optional<Estimate>& earlier, const std::optional<Estimate>& later) {
  return !earlier || !later || earlier->value <= later->value;
}

/// Says what of one rule does not fit together.
class RuleCheck {
public:
  RuleCheck(const std::string& name, const Place& place, Problems& faults)
      : name_(&name), place_(&place), faults_(&faults) {}

  void expect(bool fits, std::string_view found, std::string_view expected) const {
    if (!fits) {
      faults_->push_back(
          fault_at(*place_, fmt::format("{} {}", *name_, found), std::string{expected}, {}));
    }
  }

private:
  const std::string* name_;
  const Place* place_;
  Problems* faults_;
};

template <class E> bool is(const std::optional<Choice<E>>& choice, E value) {
  return choice && choice->value == value;
}

bool under(const std::optional<Estimate>& lower, const std::optional<Estimate>& upper) {
  return !lower || !upper || lower->value < upper->value;
}

void check_temperatures(const Rule& rule, const RuleCheck& check) {
  const DevelopmentRule& development = rule.development;
  check.expect(under(development.base_c, development.optimum_c) &&
                   under(development.optimum_c, development.ceiling_c),
               "has its temperatures out of order",
               "base under optimum under ceiling");
  check.expect(!is(rule.gate.start, Start::cool) ||
                   in_order(rule.gate.night_limit_c, development.ceiling_c),
               "waits for nights warmer than its ceiling",
               "a night limit at or under the ceiling");
  check.expect(in_order(rule.seedling.older_seedling_frost_c, rule.seedling.seedling_frost_c),
               "stands less frost when older",
               "older seedlings that stand as much as young ones, or more");
}

// Depths in mm that a cover of such seed does not pass (common practice, no source).
constexpr double deepest_on_dust_mm = 1.5;
constexpr double deepest_on_fine_mm = 3.0;
constexpr double deepest_none_mm = 1.0;
constexpr double deepest_dusting_mm = 2.0;

void check_cover(const Rule& rule, const RuleCheck& check) {
  const auto cover = rule.sowing.cover;
  const auto size = rule.seed.size;
  const double cover_mm = rule.sowing.cover_mm ? rule.sowing.cover_mm->value : 0.0;
  const bool barely = !cover || cover->value == Cover::none || cover->value == Cover::dusting;
  check.expect(!is(size, SeedSize::dust) || (barely && cover_mm <= deepest_on_dust_mm),
               "buries seed like dust",
               "no cover or a dusting, at most 1.5 mm");
  check.expect(!is(size, SeedSize::fine) || cover_mm <= deepest_on_fine_mm,
               "buries fine seed",
               "a cover of at most 3 mm");
  check.expect(!is(size, SeedSize::large) ||
                   (!is(cover, Cover::none) && !is(cover, Cover::dusting)),
               "leaves large seed uncovered or dusted",
               "a cover as thick as the seed, or another that buries it");
  check.expect(!is(cover, Cover::dusting) || cover_mm <= deepest_dusting_mm,
               "calls a dusting what buries",
               "at most 2 mm of dusting, or a thin layer");
  check.expect(!is(cover, Cover::half_buried) || is(size, SeedSize::large) ||
                   is(size, SeedSize::fleshy),
               "half buries seed that is not large",
               "large or fleshy seed, or another cover");
  check.expect(!is(cover, Cover::none) || cover_mm <= deepest_none_mm,
               "covers by so many mm what it leaves uncovered",
               "at most 1 mm where there is no cover");
  check.expect(!is(rule.sowing.light, Light::needed) || !is(cover, Cover::deep),
               "buries deep what needs light",
               "a thinner cover, or seed that needs no light");
}

template <class... Treatments> bool any_helps(const Treatments&... treatments) {
  return ((is(treatments, Treatment::needed) || is(treatments, Treatment::helpful)) || ...);
}

void check_deferral(const Rule& rule, const RuleCheck& check) {
  const auto& treated = rule.seed.deferral_treated_share;
  check.expect(in_order(treated, rule.seed.deferral_share),
               "waits a year longer when it was treated",
               "a share of treated seed at or under that of seed left whole");
  check.expect(!treated || any_helps(rule.sowing.smoke, rule.sowing.leach, rule.sowing.scarify),
               "tells of treated seed but of no treatment that helps",
               "smoke, leach or scarify \"helpful\" or \"needed\"");
}

void check_keeping(const Rule& rule, const RuleCheck& check) {
  check.expect(!is(rule.seed.size, SeedSize::fleshy) || is(rule.seed.store, Store::sow_at_once),
               "stores fleshy seed",
               "store \"sow_at_once\"");
  check.expect(in_order(rule.seedling.shade_second_year, rule.seedling.shade_first_year) &&
                   in_order(rule.seedling.shade_third_year, rule.seedling.shade_second_year),
               "is shaded more from year to year",
               "shade that does not grow with the years");
}

void check_gate(const Rule& rule, const RuleCheck& check) {
  const GateRule& gate = rule.gate;
  const bool cool = is(gate.start, Start::cool);
  const bool hot = is(gate.start, Start::hot);
  check.expect(!cool || gate.night_limit_c || was_unread(rule, "night_limit_c"),
               "starts in the cool but has no night limit",
               "a night limit, here or in the family");
  check.expect(!hot || gate.warm_night_c || was_unread(rule, "warm_night_c"),
               "starts in the heat but has no warm night",
               "a warm night, here or in the family");
  check.expect(in_order(gate.nights, gate.of),
               "wants more cool nights than it counts",
               "at most as many as the nights counted");
  check.expect(in_order(gate.night_limit_c, gate.day_limit_c),
               "waits for nights warmer than its days may be",
               "a night limit at or under the day limit");
  check.expect(in_order(rule.development.optimum_c, gate.day_limit_c),
               "has its day limit under its optimum",
               "days as warm as those on which it comes up fastest, or warmer");
  check.expect(!hot || (under(rule.development.base_c, gate.warm_night_c) &&
                        under(gate.warm_night_c, rule.development.ceiling_c)),
               "waits for warm nights in which it makes no progress",
               "a warm night over the base and under the ceiling");
}

void check_seed(const Rule& rule, const RuleCheck& check) {
  const SeedRule& seed = rule.seed;
  const SeedlingRule& seedling = rule.seedling;
  check.expect(in_order(seedling.first_look_days, seedling.main_look_days) &&
                   in_order(seedling.main_look_days, seedling.last_look_days),
               "has its looks out of order",
               "first look, main look, last look");
  const auto& ripening = seed.after_ripening_c_d;
  check.expect(!ripening || ripening->value > 0.0 || ripening->high <= 0.0,
               "needs no after-ripening and perhaps some",
               "0 to 0 where it needs none, or a value over 0: half of such seed is judged unripe");
  check.expect(!is(seedling.first_rest, FirstRestWay::dies) ||
                   (!is(seedling.transplant, Transplant::after_first_rest) &&
                    !is(seedling.transplant, Transplant::late)),
               "is pricked out later than it lives",
               "transplant \"easy\" or \"never\" where first_rest is \"dies\"");
}

void check_whole_rule(const std::string& name,
                      const Rule& rule,
                      const Place& place,
                      Problems& faults) {
  const RuleCheck check{name, place, faults};
  check_gate(rule, check);
  check_seed(rule, check);
  check_temperatures(rule, check);
  check_cover(rule, check);
  check_keeping(rule, check);
  check_deferral(rule, check);
}

// Every name of the catalogue with the entry to which it leads.
class NameBook {
public:
  explicit NameBook(Problems& faults) : faults_(&faults) {}

  void add_entry(const std::string& name, const Place& place) { add(name, name, place); }

  void add_synonym(const OldName& old, const std::string& entry) {
    add(old.name, entry, old.place);
  }

  [[nodiscard]] bool is_entry(const std::string& name) const {
    const auto found = entry_of_.find(name);
    return found != entry_of_.end() && found->second == name;
  }

private:
  void add(const std::string& name, const std::string& entry, const Place& place) {
    const auto [known, fresh] = entry_of_.try_emplace(name, entry);
    if (fresh) {
      return;
    }
    const std::string before = known->second == name
                                   ? "an entry of its own"
                                   : fmt::format("a synonym of {}", known->second);
    faults_->push_back(fault_at(
        place,
        name == entry ? fmt::format("{} stands here, and as {}", name, before)
                      : fmt::format("{} is called a synonym of {}, and is {}", name, entry, before),
        "each name once",
        {}));
  }

  Problems* faults_;
  std::map<std::string, std::string> entry_of_;
};

std::string accepted_genus(const GenusEntry& entry) {
  return entry.accepted_genus.empty() ? entry.genus : entry.accepted_genus;
}

// Entries before synonyms, so that a synonym that has an entry is told of at the synonym.
void add_entries(const GenusEntry& genus, NameBook& names) {
  names.add_entry(genus.genus, genus.place);
  for (const SpeciesEntry& species : genus.species) {
    names.add_entry(accepted_genus(genus) + ' ' + species.epithet, species.place);
  }
}

void add_synonyms(const GenusEntry& genus, NameBook& names) {
  for (const OldName& old : genus.synonyms) {
    names.add_synonym(old, genus.genus);
  }
  for (const SpeciesEntry& species : genus.species) {
    for (const OldName& old : species.synonyms) {
      names.add_synonym(old, accepted_genus(genus) + ' ' + species.epithet);
    }
  }
}

template <class Do> void for_each_genus(std::span<const FamilyFile> files, Do&& act) {
  for (const FamilyFile& file : files) {
    for (const GenusEntry& genus : file.genera) {
      act(genus);
    }
  }
}

} // namespace

std::vector<Problem> check_rules(const FamilyFile& file) {
  Problems faults;
  check_family_defaults(file, faults);
  for (const GenusEntry& genus : file.genera) {
    const Rule of_genus = inherit(file.rule, genus.rule);
    check_whole_rule(genus.genus, of_genus, genus.place, faults);
    for (const SpeciesEntry& species : genus.species) {
      if (gives_anything(species.rule)) {
        check_whole_rule(genus.genus + ' ' + species.epithet,
                         inherit(of_genus, species.rule),
                         species.place,
                         faults);
      }
    }
  }
  return faults;
}

std::vector<Problem> check_names(std::span<const FamilyFile> files) {
  Problems faults;
  NameBook families{faults};
  for (const FamilyFile& file : files) {
    families.add_entry(file.family, file.rule_place);
  }
  NameBook names{faults};
  std::map<std::string, std::string> holder_of;
  for_each_genus(files, [&](const GenusEntry& genus) {
    add_entries(genus, names);
    holder_of[genus.genus] = genus.accepted_genus;
  });
  for_each_genus(files, [&](const GenusEntry& genus) {
    add_synonyms(genus, names);
    if (genus.accepted_genus.empty()) {
      return;
    }
    const auto holder = holder_of.find(genus.accepted_genus);
    if (holder == holder_of.end() || !holder->second.empty()) {
      faults.push_back(
          fault_at(genus.place,
                   fmt::format("{} is placed in {}", genus.genus, genus.accepted_genus),
                   "an accepted genus that has an entry of its own",
                   {}));
    }
  });
  return faults;
}

} // namespace nightsow::species_rules
