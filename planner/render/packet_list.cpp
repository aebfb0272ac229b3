#include "planner/render/packet_list.hpp"

#include "planner/render/figure_text.hpp"
#include "planner/render/json_parts.hpp"
#include "planner/render/table.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <vector>

namespace nightsow::planner {

namespace {

std::string seeds_text(const SeedsKnown& seeds) {
  if (!seeds.low || !seeds.high) {
    return seeds.grams ? number_text(*seeds.grams) + " g" : "";
  }
  const std::string low = whole_text(*seeds.low);
  const std::string high = whole_text(*seeds.high);
  return low == high ? low : low + "-" + high;
}

std::string age_text(const ListedPacket& packet) {
  if (!packet.age_years) {
    return "unknown";
  }
  return fmt::format("{}{:.1f} years", packet.harvest_guessed ? "about " : "", *packet.age_years);
}

std::string used_text(const ListedPacket& packet) {
  std::string text;
  if (packet.sowings > 0) {
    text = fmt::format("{} in {}", packet.sown, packet.sowings);
  }
  if (packet.used > 0) {
    text += fmt::format("{}{} used", text.empty() ? "" : ", ", packet.used);
  }
  return text;
}

Json json_of(const SeedsKnown& seeds) {
  Json json;
  json["low"] = json_number(seeds.low);
  json["high"] = json_number(seeds.high);
  json["grams"] = json_number(seeds.grams);
  return json;
}

Json json_of(const ListedTest& test) {
  Json json;
  json["germinated"] = test.germinated;
  json["of"] = test.of;
  json["on"] = json_date(test.on);
  json["at_c"] = json_number(test.at_c);
  return json;
}

Json json_of(const ListedPacket& packet) {
  Json json;
  json["packet"] = packet.packet;
  json["taxon"] = packet.taxon;
  json["seeds"] = json_of(packet.acquired);
  json["left"] = json_of(packet.left);
  json["sown"] = packet.sown;
  json["sowings"] = packet.sowings;
  json["used"] = packet.used;
  json["harvested"] = packet.harvested_from ? Json{{"from", json_date(packet.harvested_from)},
                                                   {"to", json_date(packet.harvested_to)}}
                                            : Json(nullptr);
  json["harvest_guessed"] = packet.harvest_guessed;
  json["age_years"] = json_number(packet.age_years);
  json["tested"] = packet.tested ? json_of(*packet.tested) : Json(nullptr);
  json["bench"] = json_text(packet.bench);
  json["irreplaceable"] = packet.irreplaceable;
  return json;
}

} // namespace

std::string packet_list_text(const PacketListAnswer& answer, const TextStyle& style) {
  std::string text;
  if (answer.packets.empty() && answer.used_up == 0) {
    text = "No packet is called so, or none is in hand. "
           "Begin with: nightsow packet add TAXON SEEDS\n";
  }
  std::vector<TableRow> rows;
  rows.reserve(answer.packets.size());
  for (const ListedPacket& packet : answer.packets) {
    rows.push_back(
        {{packet.packet,
          packet.taxon,
          seeds_text(packet.left),
          seeds_text(packet.acquired),
          age_text(packet),
          packet.tested ? fmt::format("{}/{}", packet.tested->germinated, packet.tested->of) : "",
          used_text(packet)}});
  }
  text += table_text({{"Packet"},
                      {"Taxon", Align::left, true},
                      {"Left", Align::right},
                      {"Of", Align::right},
                      {"Age", Align::right},
                      {"Tested", Align::right},
                      {"Sown (seeds in sowings)"}},
                     rows,
                     style);
  if (answer.used_up > 0) {
    text += fmt::format("  {} {} of which no seed is left: packet list --all\n",
                        answer.used_up,
                        answer.used_up == 1 ? "packet" : "packets");
  }
  return text;
}

std::string to_json(const PacketListAnswer& answer) {
  Json json = json_top();
  json["today"] = json_date(answer.today);
  json["packets"] = Json::array();
  for (const ListedPacket& packet : answer.packets) {
    json["packets"].push_back(json_of(packet));
  }
  json["used_up"] = answer.used_up;
  return json_dump(json);
}

} // namespace nightsow::planner
