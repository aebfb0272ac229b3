#include "planner/journal/packet_copy.hpp"

#include <nlohmann/json.hpp>

#include <stdexcept>
#include <utility>

namespace nightsow::planner {

namespace {

using Json = nlohmann::json;

Json json_of(const DateRange& range) {
  return {format_iso_date(range.first), format_iso_date(range.last)};
}

template <typename Value>
void put(Json& into, const char* name, const std::optional<Value>& value) {
  if (value) {
    into[name] = *value;
  }
}

void put(Json& into, const char* name, const std::string& text) {
  if (!text.empty()) {
    into[name] = text;
  }
}

void put_day(Json& into, const char* name, const std::optional<Date>& day) {
  if (day) {
    into[name] = format_iso_date(*day);
  }
}

Json json_of(const StoreStage& stage) {
  Json copy{{"place", stage.place},
            {"store_c", stage.store_c},
            {"humidity", stage.humidity},
            {"known", stage.known}};
  put_day(copy, "until", stage.until);
  return copy;
}

Json json_of(const GerminationTest& test) {
  Json copy{{"sprouted", test.sprouted}, {"of", test.of}};
  put_day(copy, "on", test.on);
  put(copy, "at_c", test.at_c);
  return copy;
}

Json json_of(const SeedCount& seeds) {
  Json copy = Json::object();
  put(copy, "low", seeds.low);
  put(copy, "high", seeds.high);
  put(copy, "grams", seeds.grams);
  return copy;
}

Date day_from(const Json& text) {
  const auto day = parse_iso_date(text.get_ref<const std::string&>());
  if (!day) {
    throw std::invalid_argument("no day of the calendar");
  }
  return *day;
}

std::optional<Date> day_in(const Json& copy, const char* name) {
  const auto at = copy.find(name);
  return at == copy.end() ? std::nullopt : std::optional(day_from(*at));
}

std::optional<DateRange> range_in(const Json& copy, const char* name) {
  const auto at = copy.find(name);
  if (at == copy.end()) {
    return std::nullopt;
  }
  return DateRange{day_from(at->at(0)), day_from(at->at(1))};
}

template <typename Value> std::optional<Value> value_in(const Json& copy, const char* name) {
  const auto at = copy.find(name);
  return at == copy.end() ? std::nullopt : std::optional(at->template get<Value>());
}

std::string text_in(const Json& copy, const char* name) {
  return value_in<std::string>(copy, name).value_or("");
}

StoreStage stage_from(const Json& copy) {
  return {copy.at("place"),
          copy.at("store_c"),
          day_in(copy, "until"),
          copy.at("humidity"),
          copy.at("known")};
}

GerminationTest test_from(const Json& copy) {
  return {copy.at("sprouted"), copy.at("of"), day_in(copy, "on"), value_in<double>(copy, "at_c")};
}

Packet packet_from(const Json& copy) {
  Packet packet;
  packet.id = text_in(copy, "id");
  packet.taxon = text_in(copy, "taxon");
  const Json& seeds = copy.at("seeds");
  packet.seeds = {value_in<double>(seeds, "low"),
                  value_in<double>(seeds, "high"),
                  value_in<double>(seeds, "grams")};
  packet.harvested = range_in(copy, "harvested");
  packet.harvest_guessed = value_in<bool>(copy, "harvest_guessed").value_or(false);
  packet.received = range_in(copy, "received");
  for (const Json& stage : copy.at("stored")) {
    packet.stored.push_back(stage_from(stage));
  }
  if (const auto test = copy.find("tested"); test != copy.end()) {
    packet.tested = test_from(*test);
  }
  packet.bench = text_in(copy, "bench");
  packet.wanted_plants = value_in<int>(copy, "wanted_plants");
  packet.grown_in = text_in(copy, "grown_in");
  packet.number = text_in(copy, "number");
  packet.provenance = text_in(copy, "provenance");
  packet.irreplaceable = value_in<bool>(copy, "irreplaceable").value_or(false);
  packet.source = text_in(copy, "source");
  packet.notes = text_in(copy, "notes");
  packet.line = value_in<std::size_t>(copy, "line").value_or(0);
  return packet;
}

} // namespace

std::string packet_copy(const Packet& packet) {
  Json copy{{"seeds", json_of(packet.seeds)}, {"stored", Json::array()}};
  put(copy, "id", packet.id);
  put(copy, "taxon", packet.taxon);
  if (packet.harvested) {
    copy["harvested"] = json_of(*packet.harvested);
    copy["harvest_guessed"] = packet.harvest_guessed;
  }
  if (packet.received) {
    copy["received"] = json_of(*packet.received);
  }
  for (const StoreStage& stage : packet.stored) {
    copy["stored"].push_back(json_of(stage));
  }
  if (packet.tested) {
    copy["tested"] = json_of(*packet.tested);
  }
  put(copy, "bench", packet.bench);
  put(copy, "wanted_plants", packet.wanted_plants);
  put(copy, "grown_in", packet.grown_in);
  put(copy, "number", packet.number);
  put(copy, "provenance", packet.provenance);
  copy["irreplaceable"] = packet.irreplaceable;
  put(copy, "source", packet.source);
  put(copy, "notes", packet.notes);
  copy["line"] = packet.line;
  return copy.dump();
}

std::optional<Packet> packet_from_copy(std::string_view text) {
  try {
    return packet_from(Json::parse(text));
  } catch (const std::exception&) {
    return std::nullopt;
  }
}

} // namespace nightsow::planner
