#include "species-rules/rule_file.hpp"

#include "climate/base/celsius.hpp"
#include "climate/base/json_node.hpp"
#include "climate/base/located_json.hpp"
#include "climate/base/nearest_name.hpp"
#include "species-rules/known_keys.hpp"
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
[[noreturn]] void unknown_word(const JsonNode& part,
                               std::string_view what,
                               std::string_view word,
                               const std::vector<std::string>& allowed) {
  const auto nearest = nearest_name(word, allowed);
  part.fail(fmt::format("{} \"{}\"", what, word),
            fmt::format("one of {}", fmt::join(allowed, ", ")),
            nearest && nearest->only ? fmt::format("\"{}\" perhaps", nearest->name) : "");
}

template <class E>
E read_word(const JsonNode& object, std::string_view key, std::string_view what) {
  const JsonNode part =
      required(object, key, fmt::format("one of {}", fmt::join(all_words<E>(), ", ")));
  const std::string text = part.some_text("a word");
  const auto value = from_word<E>(text);
  if (!value) {
    unknown_word(part, what, text, all_words<E>());
  }
  return *value;
}

std::vector<std::string_view> field_keys() {
  std::vector<std::string_view> keys;
  const Rule any;
  for_each_field(
      any, [&keys](const Field& field, const auto& /*member*/) { keys.push_back(field.key); });
  return keys;
}

std::vector<std::string> rule_keys() {
  const std::vector<std::string_view> fields = field_keys();
  std::vector<std::string> keys{fields.begin(), fields.end()};
  keys.emplace_back(only_own_notes_key);
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

/// What the parts of one file have in common.
struct Reading {
  const Sources& sources;
  std::vector<Problem>& faults;
  Written written = Written::for_catalogue;

  [[nodiscard]] Origin origin(Origin level) const {
    return written == Written::by_grower ? Origin::grower : level;
  }
};

// Visits the table of fields; each field finds its own key in the file, or is not given.
class RuleReader {
  template <class Read> [[nodiscard]] auto note(Read&& read) const {
    return read_or_note(reading_->faults, std::forward<Read>(read));
  }

public:
  RuleReader(JsonNode rule,
             Origin level,
             const Reading& reading,
             std::vector<std::string_view>& unread)
      : rule_(std::move(rule)), level_(level), reading_(&reading), unread_(&unread) {}

  void operator()(const Field& field, std::optional<Estimate>& into) const {
    if (const auto part = rule_.member_or_null(field.key)) {
      into = note([&] { return estimate(*part, field); }).value_or(std::nullopt);
      note_unread(field, into.has_value());
    }
  }

  template <class E> void operator()(const Field& field, std::optional<Choice<E>>& into) const {
    if (const auto part = rule_.member_or_null(field.key)) {
      into = note([&] { return choice<E>(*part, field); }).value_or(std::nullopt);
      note_unread(field, into.has_value());
    }
  }

  void operator()(const Field& field, std::vector<Remark>& into) const {
    const auto list = rule_.member_or_null(field.key);
    const auto parts = list ? note([&] { return list->elements(); }) : std::nullopt;
    for (const JsonNode& part : parts.value_or(std::vector<JsonNode>{})) {
      if (auto remark = note([&] { return read_remark(part, field); })) {
        into.push_back(*std::move(remark));
      }
    }
  }

private:
  void note_unread(const Field& field, bool could_be_read) const {
    if (!could_be_read) {
      unread_->push_back(field.key);
    }
  }

  // What stands beside others is compared with them even if its ground is faulty.
  [[nodiscard]] Ground ground_of(const JsonNode& part, const Field& field) const {
    return note([&] { return read_ground(part, field); })
        .value_or(Ground{Evidence::memory, {}, reading_->origin(level_)});
  }

  // A number's parts are read one beside the other, so that all of their faults are told.
  [[nodiscard]] std::optional<Estimate> estimate(const JsonNode& part, const Field& field) const {
    note_unknown_keys(
        part, number_form, {"value", "low", "high", "evidence", "source"}, reading_->faults);
    const auto value = note([&] { return figure(part, field, "value"); });
    const auto low = note([&] { return figure(part, field, "low"); });
    const auto high = note([&] { return figure(part, field, "high"); });
    Ground ground = ground_of(part, field);
    if (value && low && high && (*low > *value || *value > *high)) {
      reading_->faults.push_back(
          part.problem(fmt::format("{}: value {}, low {}, high {}", field.key, *value, *low, *high),
                       "low <= value <= high"));
    }
    return value ? std::optional{Estimate{
                       *value, low.value_or(*value), high.value_or(*value), std::move(ground)}}
                 : std::nullopt;
  }

  template <class E>
  [[nodiscard]] std::optional<Choice<E>> choice(const JsonNode& part, const Field& field) const {
    note_unknown_keys(part, word_form, {"value", "evidence", "source"}, reading_->faults);
    const auto value = note([&] { return read_word<E>(part, "value", field.key); });
    Ground ground = ground_of(part, field);
    return value ? std::optional{Choice<E>{*value, std::move(ground)}} : std::nullopt;
  }

  static double figure(const JsonNode& object, const Field& field, std::string_view key) {
    const std::string bounds =
        with_unit(fmt::format("{} to {}", field.lowest, field.highest), field.unit);
    const JsonNode part = required(object, key, bounds);
    const double value = part.number();
    if (value < field.lowest || value > field.highest) {
      part.fail(
          fmt::format("{}: {} {}", field.key, key, value), bounds, fahrenheit_remedy(field, value));
    }
    return value;
  }

  [[nodiscard]] Ground read_ground(const JsonNode& object, const Field& field) const {
    const auto evidence = read_word<Evidence>(object, "evidence", "evidence");
    const auto part = object.member("source");
    if (!part) {
      if (needs_source(evidence) && reading_->written == Written::for_catalogue) {
        object.fail(fmt::format("{}: no source", field.key),
                    fmt::format("a source beside evidence \"{}\"", word_of(evidence)),
                    "");
      }
      return {evidence, {}, reading_->origin(level_)};
    }
    std::string source = part->some_text("the id of a source");
    check_listed(source, *part);
    return {evidence, std::move(source), reading_->origin(level_)};
  }

  void check_listed(const std::string& id, const JsonNode& part) const {
    if (reading_->sources.contains(id)) {
      return;
    }
    std::vector<std::string> ids;
    std::ranges::transform(
        reading_->sources, std::back_inserter(ids), [](const auto& entry) { return entry.first; });
    const auto nearest = nearest_name(id, ids);
    part.fail(fmt::format("source \"{}\" is not listed", id),
              "an id of sources.json",
              nearest && nearest->only ? fmt::format("\"{}\" perhaps", nearest->name) : "");
  }

  [[nodiscard]] Remark read_remark(const JsonNode& part, const Field& field) const {
    note_unknown_keys(part, word_form, {"value", "evidence", "source"}, reading_->faults);
    const JsonNode value = required(part, "value", "a text");
    std::string text = value.some_text("a text");
    auto ground = read_ground(part, field);
    if (!field.codes.empty() && std::ranges::find(field.codes, text) == field.codes.end()) {
      unknown_word(value, field.key, text, {field.codes.begin(), field.codes.end()});
    }
    return {std::move(text), std::move(ground)};
  }

  JsonNode rule_;
  Origin level_;
  const Reading* reading_;
  std::vector<std::string_view>* unread_;
};

// true and false alone are taken.
bool read_only_own_notes(const JsonNode& rule, const Reading& reading) {
  const auto part = rule.member_or_null(only_own_notes_key);
  return part && read_or_note(reading.faults, [&] { return part->yes_or_no(); }).value_or(false);
}

Rule read_rule(const JsonNode& part, Origin level, const Reading& reading) {
  note_unknown_keys(part, "an object of rule fields", rule_keys(), reading.faults);
  Rule rule;
  std::vector<std::string_view> unread;
  for_each_field(rule, RuleReader{part, level, reading, unread});
  rule.unread = std::move(unread);
  rule.only_own_notes = read_only_own_notes(part, reading);
  return rule;
}

// Of a rule that is no object nothing is known.
Rule unreadable_rule() {
  Rule rule;
  rule.unread = field_keys();
  return rule;
}

Rule read_own_rule(const std::optional<JsonNode>& part, Origin level, const Reading& reading) {
  if (!part) {
    return {};
  }
  return read_or_note(reading.faults, [&] { return read_rule(*part, level, reading); })
      .value_or(unreadable_rule());
}

// A name of the wanted form; throws InputError otherwise.
template <class Test>
std::string read_name(const JsonNode& part, std::string_view form, Test is_of_form) {
  std::string text = part.some_text(form);
  if (!is_of_form(text)) {
    part.fail(fmt::format("{} \"{}\"", part.name(), text), std::string{form}, "");
  }
  return text;
}

Place place_of(const JsonNode& part) {
  Problem here = part.problem({}, {});
  return {std::move(here.where), here.line, here.column, std::move(here.pointer)};
}

// A list of an entry; empty where there is none, or where it is no list and a fault.
std::vector<JsonNode> elements_of(const JsonNode& entry,
                                  std::string_view key,
                                  const Reading& reading) {
  const auto list = entry.member_or_null(key);
  if (!list) {
    return {};
  }
  return read_or_note(reading.faults, [&] { return list->elements(); })
      .value_or(std::vector<JsonNode>{});
}

template <class Test>
std::vector<OldName> read_synonyms(const JsonNode& entry,
                                   std::string_view form,
                                   Test is_of_form,
                                   const Reading& reading) {
  std::vector<OldName> names;
  for (const JsonNode& part : elements_of(entry, "synonyms", reading)) {
    const auto text =
        read_or_note(reading.faults, [&] { return read_name(part, form, is_of_form); });
    if (const auto name = text ? parse_taxon(*text) : std::nullopt) {
      names.push_back({to_full_text(*name), place_of(part)});
    }
  }
  return names;
}

constexpr std::string_view genus_form = "one word that begins with a capital";
constexpr std::string_view epithet_form = "one word of small letters";
constexpr std::string_view species_form = "genus and epithet, such as \"Sarcocaulon crassicaule\"";

SpeciesEntry read_species(const JsonNode& part, const Reading& reading) {
  note_unknown_keys(part,
                    "an object with species, synonyms and rule",
                    {"species", "synonyms", "rule"},
                    reading.faults);
  SpeciesEntry entry;
  entry.place = place_of(part);
  entry.synonyms = read_synonyms(part, species_form, is_species_name, reading);
  entry.rule = read_own_rule(part.member_or_null("rule"), Origin::species, reading);
  entry.epithet = read_name(required(part, "species", epithet_form), epithet_form, is_epithet);
  return entry;
}

GenusEntry read_genus(const JsonNode& part, const Reading& reading) {
  note_unknown_keys(part,
                    "an object with genus, synonyms, rule and species",
                    {"genus", "accepted_genus", "synonyms", "rule", "species"},
                    reading.faults);
  GenusEntry entry;
  entry.place = place_of(part);
  if (const auto accepted = part.member_or_null("accepted_genus")) {
    entry.accepted_genus = read_or_note(reading.faults, [&] {
                             return read_name(*accepted, genus_form, is_genus);
                           }).value_or("");
  }
  entry.synonyms = read_synonyms(part, genus_form, is_genus, reading);
  entry.rule = read_own_rule(part.member_or_null("rule"), Origin::genus, reading);
  for (const JsonNode& species : elements_of(part, "species", reading)) {
    if (auto read = read_or_note(reading.faults, [&] { return read_species(species, reading); })) {
      entry.species.push_back(*std::move(read));
    }
  }
  entry.genus = read_name(required(part, "genus", genus_form), genus_form, is_genus);
  return entry;
}

// Fills the file; what hinders the whole of it is thrown.
void read_family(FamilyFile& file, const JsonNode& whole, const Reading& reading) {
  file.rule_place = place_of(whole);
  note_unknown_keys(whole,
                    "an object with schema, family, rule and genera",
                    {"schema", "family", "rule", "genera"},
                    file.faults);
  check_schema(whole, file.faults);
  file.family = read_or_note(file.faults, [&] {
                  return read_name(required(whole, "family", genus_form), genus_form, is_genus);
                }).value_or("");
  const bool partial = reading.written == Written::by_grower;
  auto rule = whole.member_or_null("rule");
  if (!rule && !partial) {
    file.faults.push_back(
        whole.problem("the file has no \"rule\"", "an object with the family's defaults"));
  }
  if (rule) {
    file.rule_place = place_of(*rule);
    file.rule = read_own_rule(rule, Origin::family, reading);
  }
  if (!partial || !rule) {
    static_cast<void>(required(whole, "genera", "a list of genera"));
  }
  for (const JsonNode& part : elements_of(whole, "genera", reading)) {
    if (auto genus = read_or_note(file.faults, [&] { return read_genus(part, reading); })) {
      file.genera.push_back(*std::move(genus));
    }
  }
}

} // namespace

FamilyFile read_family_file(std::string_view text,
                            std::string_view where,
                            const Sources& sources,
                            Written written) {
  const LocatedJson json = LocatedJson::parse(text, where);
  FamilyFile file;
  const Reading reading{sources, file.faults, written};
  try {
    read_family(file, JsonNode{json}, reading);
  } catch (const InputError& error) {
    file.faults.push_back(error.problem());
  }
  return file;
}

} // namespace nightsow::species_rules
