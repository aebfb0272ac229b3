#include "species-rules/rule_file.hpp"

#include "climate/base/celsius.hpp"
#include "climate/base/located_json.hpp"
#include "climate/base/nearest_name.hpp"
#include "species-rules/json_part.hpp"
#include "species-rules/rule_fields.hpp"
#include "species-rules/taxon_name.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <utility>

namespace nightsow::species_rules {

namespace {

constexpr std::string_view number_form = "an object with value, low, high, evidence and source";
constexpr std::string_view word_form = "an object with value, evidence and source";

template <class E> std::vector<std::string> all_words() {
  std::vector<std::string> words;
  words.reserve(Words<E>::table.size());
  for (const auto& [value, word] : Words<E>::table) {
    words.emplace_back(word);
  }
  return words;
}

// Few words are best listed; when one of them is near, it was meant.
void unknown_word(const JsonPart& part,
                  std::string_view what,
                  std::string_view word,
                  const std::vector<std::string>& allowed) {
  const auto nearest = nearest_name(word, allowed);
  part.fault(fmt::format("{} \"{}\"", what, word),
             fmt::format("one of {}", fmt::join(allowed, ", ")),
             nearest && nearest->only ? fmt::format("\"{}\" perhaps", nearest->name) : "");
}

template <class E>
std::optional<E> read_word(const JsonPart& object, std::string_view key, std::string_view what) {
  const auto part = object.required(key, fmt::format("one of {}", fmt::join(all_words<E>(), ", ")));
  const auto text = part ? part->text("a word") : std::nullopt;
  if (!text) {
    return std::nullopt;
  }
  const auto value = from_word<E>(*text);
  if (!value) {
    unknown_word(*part, what, *text, all_words<E>());
  }
  return value;
}

std::vector<std::string> field_keys() {
  std::vector<std::string> keys;
  const Rule any;
  for_each_field(
      any, [&keys](const Field& field, const auto& /*member*/) { keys.emplace_back(field.key); });
  return keys;
}

std::string with_unit(std::string_view number, std::string_view unit) {
  return unit.empty() || unit == "share" ? std::string{number} : fmt::format("{} {}", number, unit);
}

// 57 in a field of °C is a temperature of a grower who thinks in °F.
std::string fahrenheit_remedy(const Field& field, double value) {
  if (field.unit != "°C" || value <= field.highest) {
    return {};
  }
  const double celsius = from_fahrenheit(value).degrees();
  if (celsius < field.lowest || celsius > field.highest) {
    return {};
  }
  return fmt::format("Fahrenheit suspected: {} °F is {:.1f} °C", value, celsius);
}

// Visits the table of fields; each field finds its own key in the file, or is not given.
class RuleReader {
public:
  RuleReader(JsonPart rule, Origin origin, const Sources& sources)
      : rule_(std::move(rule)), origin_(origin), sources_(&sources) {}

  void operator()(const Field& field, std::optional<Estimate>& into) const {
    const auto part = rule_.member(field.key);
    if (!part || !part->is_object(number_form)) {
      return;
    }
    part->allow_keys({"value", "low", "high", "evidence", "source"});
    const auto value = figure(*part, field, "value");
    const auto low = figure(*part, field, "low");
    const auto high = figure(*part, field, "high");
    auto ground = read_ground(*part, field);
    if (!value || !low || !high || !ground) {
      return;
    }
    if (*low > *value || *value > *high) {
      part->fault(fmt::format("{}: value {}, low {}, high {}", field.key, *value, *low, *high),
                  "low <= value <= high");
      return;
    }
    into = Estimate{*value, *low, *high, *std::move(ground)};
  }

  template <class E> void operator()(const Field& field, std::optional<Choice<E>>& into) const {
    const auto part = rule_.member(field.key);
    if (!part || !part->is_object(word_form)) {
      return;
    }
    part->allow_keys({"value", "evidence", "source"});
    const auto value = read_word<E>(*part, "value", field.key);
    auto ground = read_ground(*part, field);
    if (value && ground) {
      into = Choice<E>{*value, *std::move(ground)};
    }
  }

  void operator()(const Field& field, std::vector<Remark>& into) const {
    const auto list = rule_.member(field.key);
    if (!list) {
      return;
    }
    for (const JsonPart& part : list->items()) {
      if (auto remark = read_remark(part, field)) {
        into.push_back(*std::move(remark));
      }
    }
  }

private:
  static std::optional<double> figure(const JsonPart& object,
                                      const Field& field,
                                      std::string_view key) {
    const std::string bounds =
        with_unit(fmt::format("{} to {}", field.lowest, field.highest), field.unit);
    const auto part = object.required(key, bounds);
    const auto value = part ? part->number() : std::nullopt;
    if (value && (*value < field.lowest || *value > field.highest)) {
      part->fault(fmt::format("{}: {} {}", field.key, key, *value),
                  bounds,
                  fahrenheit_remedy(field, *value));
      return std::nullopt;
    }
    return value;
  }

  [[nodiscard]] std::optional<Ground> read_ground(const JsonPart& object,
                                                  const Field& field) const {
    const auto evidence = read_word<Evidence>(object, "evidence", "evidence");
    const auto part = object.member("source");
    if (!part || part->is_null()) {
      if (!evidence) {
        return std::nullopt;
      }
      if (needs_source(*evidence) && origin_ != Origin::grower) {
        object.fault(fmt::format("{}: no source", field.key),
                     fmt::format("a source beside evidence \"{}\"", word_of(*evidence)));
        return std::nullopt;
      }
      return Ground{*evidence, {}, origin_};
    }
    const auto source = part->text("the id of a source");
    if (!source || !is_listed(*source, *part) || !evidence) {
      return std::nullopt;
    }
    return Ground{*evidence, *source, origin_};
  }

  [[nodiscard]] bool is_listed(const std::string& id, const JsonPart& part) const {
    if (sources_->contains(id)) {
      return true;
    }
    std::vector<std::string> ids;
    std::ranges::transform(
        *sources_, std::back_inserter(ids), [](const auto& entry) { return entry.first; });
    const auto nearest = nearest_name(id, ids);
    part.fault(fmt::format("source \"{}\" is not listed", id),
               "an id of sources.json",
               nearest && nearest->only ? fmt::format("\"{}\" perhaps", nearest->name) : "");
    return false;
  }

  [[nodiscard]] std::optional<Remark> read_remark(const JsonPart& part, const Field& field) const {
    if (!part.is_object(word_form)) {
      return std::nullopt;
    }
    part.allow_keys({"value", "evidence", "source"});
    const auto value = part.required("value", "a text");
    const auto text = value ? value->text("a text") : std::nullopt;
    auto ground = read_ground(part, field);
    if (!text || !ground) {
      return std::nullopt;
    }
    if (!field.codes.empty() && std::ranges::find(field.codes, *text) == field.codes.end()) {
      unknown_word(*value, field.key, *text, {field.codes.begin(), field.codes.end()});
      return std::nullopt;
    }
    return Remark{*text, *std::move(ground)};
  }

  JsonPart rule_;
  Origin origin_;
  const Sources* sources_;
};

Rule read_rule(const JsonPart& part, Origin origin, const Sources& sources) {
  Rule rule;
  if (part.is_object("an object of rule fields")) {
    part.allow_keys(field_keys());
    for_each_field(rule, RuleReader{part, origin, sources});
  }
  return rule;
}

Rule read_own_rule(const JsonPart& entry, Origin origin, const Sources& sources) {
  const auto part = entry.member("rule");
  return part ? read_rule(*part, origin, sources) : Rule{};
}

// A name of the wanted form, or a fault and nothing.
template <class Test>
std::string read_name(const std::optional<JsonPart>& part, std::string_view form, Test is_of_form) {
  const auto text = part ? part->text(form) : std::nullopt;
  if (!text) {
    return {};
  }
  if (!is_of_form(*text)) {
    part->fault(fmt::format("{} \"{}\"", part->name(), *text), std::string{form});
    return {};
  }
  return *text;
}

template <class Test>
std::vector<OldName> read_synonyms(const JsonPart& entry, std::string_view form, Test is_of_form) {
  std::vector<OldName> names;
  const auto list = entry.member("synonyms");
  if (!list) {
    return names;
  }
  for (const JsonPart& part : list->items()) {
    if (const auto name = parse_taxon(read_name(part, form, is_of_form))) {
      names.push_back({to_full_text(*name), part.place()});
    }
  }
  return names;
}

constexpr std::string_view genus_form = "one word that begins with a capital";
constexpr std::string_view epithet_form = "one word of small letters";
constexpr std::string_view species_form = "genus and epithet, such as \"Sarcocaulon crassicaule\"";

/// What the parts of one file have in common.
struct Reading {
  const Sources& sources;
  Written written = Written::for_catalogue;

  [[nodiscard]] Origin origin(Origin level) const {
    return written == Written::by_grower ? Origin::grower : level;
  }
};

std::optional<SpeciesEntry> read_species(const JsonPart& part, const Reading& reading) {
  if (!part.is_object("an object with species, synonyms and rule")) {
    return std::nullopt;
  }
  part.allow_keys({"species", "synonyms", "rule"});
  SpeciesEntry entry;
  entry.place = part.place();
  entry.epithet = read_name(part.required("species", epithet_form), epithet_form, is_epithet);
  entry.synonyms = read_synonyms(part, species_form, is_species_name);
  entry.rule = read_own_rule(part, reading.origin(Origin::species), reading.sources);
  return entry.epithet.empty() ? std::nullopt : std::optional{std::move(entry)};
}

std::optional<GenusEntry> read_genus(const JsonPart& part, const Reading& reading) {
  if (!part.is_object("an object with genus, synonyms, rule and species")) {
    return std::nullopt;
  }
  part.allow_keys({"genus", "accepted_genus", "synonyms", "rule", "species"});
  GenusEntry entry;
  entry.place = part.place();
  entry.genus = read_name(part.required("genus", genus_form), genus_form, is_genus);
  entry.accepted_genus = read_name(part.member("accepted_genus"), genus_form, is_genus);
  entry.synonyms = read_synonyms(part, genus_form, is_genus);
  entry.rule = read_own_rule(part, reading.origin(Origin::genus), reading.sources);
  if (const auto list = part.member("species")) {
    for (const JsonPart& species : list->items()) {
      if (auto read = read_species(species, reading)) {
        entry.species.push_back(*std::move(read));
      }
    }
  }
  return entry.genus.empty() ? std::nullopt : std::optional{std::move(entry)};
}

} // namespace

FamilyFile read_family_file(std::string_view text,
                            std::string_view where,
                            const Sources& sources,
                            Written written) {
  const LocatedJson json = LocatedJson::parse(text, where);
  const Reading reading{sources, written};
  FamilyFile file;
  const JsonPart whole{json, file.faults};
  file.rule_place = whole.place();
  if (!whole.is_object("an object with schema, family, rule and genera")) {
    return file;
  }
  whole.allow_keys({"schema", "family", "rule", "genera"});
  whole.check_schema();
  file.family = read_name(whole.required("family", genus_form), genus_form, is_genus);
  const bool partial = written == Written::by_grower;
  const auto rule = partial ? whole.member("rule")
                            : whole.required("rule", "an object with the family's defaults");
  if (rule) {
    file.rule_place = rule->place();
    file.rule = read_rule(*rule, reading.origin(Origin::family), sources);
  }
  const auto list =
      partial && rule ? whole.member("genera") : whole.required("genera", "a list of genera");
  if (list) {
    for (const JsonPart& genus : list->items()) {
      if (auto read = read_genus(genus, reading)) {
        file.genera.push_back(*std::move(read));
      }
    }
  }
  return file;
}

} // namespace nightsow::species_rules
