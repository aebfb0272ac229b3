#include "planner/journal/entry_words.hpp"
#include "planner/journal/packet_copy.hpp"
#include "planner/render/journal.hpp"
#include "planner/render/json_parts.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

namespace {

void put(Json& json, const RecordedSowing& sowing) {
  json["packet"] = json_text(sowing.packet_id);
  json["taxon"] = sowing.taxon;
  json["first_water"] = json_date(sowing.first_water);
  json["seeds"] = sowing.seeds;
  json["pots"] = sowing.pots;
  json["bench"] = json_text(sowing.bench);
  json["mat"] = json_text(sowing.mat);
  json["cover"] = json_text(sowing.cover);
  json["mix"] = json_text(sowing.mix);
  json["treatment"] = json_text(sowing.treatment);
  json["trial"] = json_text(sowing.trial);
  json["arm"] = json_text(sowing.arm);
}

void put(Json& json, const SeedlingCount& count) {
  json["sowing"] = count.sowing;
  json["seen"] = count.seen;
  json["dead"] = count.dead;
  json["why"] = count.dead > 0 ? Json(journal_word(count.why)) : Json(nullptr);
  json["phase"] = journal_word(count.phase);
}

void put(Json& json, const PressTest& test) {
  json["sowing"] = test.sowing;
  json["firm"] = test.firm;
  json["soft"] = test.soft;
}

void put(Json& json, const PacketTest& of) {
  json["packet"] = of.packet_id;
  json["sprouted"] = of.test.sprouted;
  json["tried"] = of.test.of;
  json["at_c"] = json_number(of.test.at_c);
}

void put(Json& json, const Watering& watering) {
  json["sowing"] = watering.sowing;
  json["what"] = journal_word(watering.kind);
}

void put(Json& json, const Move& move) {
  json["sowing"] = move.sowing;
  json["what"] = journal_word(move.kind);
  json["to"] = move.to;
}

void put(Json& json, const Potting& potting) {
  json["sowing"] = potting.sowing;
  json["what"] = journal_word(potting.kind);
  json["plants"] = potting.plants ? Json(*potting.plants) : Json(nullptr);
}

void put(Json& json, const Closing& closing) {
  json["sowing"] = closing.sowing;
  json["why"] = journal_word(closing.why);
}

void put(Json& json, const Note& note) {
  json["sowing"] = note.sowing ? Json(*note.sowing) : Json(nullptr);
  json["packet"] = json_text(note.packet_id);
  json["text"] = json_text(note.text);
  json["photo"] = json_text(note.photo);
}

void put(Json& json, const Undo& undo) {
  json["entry_undone"] = undo.undone;
}

void put(Json& json, const PacketUse& use) {
  json["packet"] = use.packet_id;
  json["seeds"] = use.seeds;
  json["used_for"] = journal_word(use.kind);
}

Json json_of(EntryId id, const EntryValue& value) {
  Json json;
  json["entry"] = id;
  json["kind"] = journal_word(kind_of(value));
  json["day"] = format_iso_date(day_of(value));
  return json;
}

} // namespace

std::string journal_json(const std::vector<Entry>& entries) {
  Json json = json_top();
  json["entries"] = Json::array();
  for (const Entry& entry : entries) {
    Json one = json_of(entry.id, entry.value);
    one["undone"] = entry.undone;
    one["entered_at"] = entry.entered_at;
    std::visit([&](const auto& told) { put(one, told); }, entry.value);
    if (const auto* sowing = std::get_if<RecordedSowing>(&entry.value)) {
      one["packet_row"] = Json::parse(packet_copy(sowing->packet));
    }
    json["entries"].push_back(std::move(one));
  }
  return json_dump(json);
}

std::string entered_rows_json(const std::vector<EnteredRow>& rows, bool tried) {
  Json json = json_top();
  json["written"] = !tried;
  json["entered"] = Json::array();
  for (const EnteredRow& row : rows) {
    Json one = json_of(row.id, row.value);
    if (tried) {
      one["entry"] = nullptr;
    }
    std::visit([&](const auto& told) { put(one, told); }, row.value);
    json["entered"].push_back(std::move(one));
  }
  return json_dump(json);
}

std::string entered_json(EntryId id, const EntryValue& value) {
  Json json = json_top();
  Json& one = json["entered"] = json_of(id, value);
  std::visit([&](const auto& told) { put(one, told); }, value);
  return json_dump(json);
}

} // namespace nightsow::planner
