#include "planner/render/journal_words.hpp"

#include "planner/journal/entry_words.hpp"
#include "planner/render/plain_words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace nightsow::planner {

namespace {

std::string counted(int number, std::string_view what) {
  return fmt::format("{} {}{}", number, what, number == 1 ? "" : "s");
}

std::string water_words(const RecordedSowing& sowing) {
  if (!sowing.first_water) {
    return "dry";
  }
  return *sowing.first_water == sowing.on
             ? "watered that day"
             : fmt::format("watered {}", format_iso_date(*sowing.first_water));
}

std::string words(const RecordedSowing& sowing) {
  std::string text = fmt::format("{} of {}", counted(sowing.seeds, "seed"), sowing.taxon);
  const auto add = [&](std::string_view lead, const std::string& value) {
    text += value.empty() ? "" : fmt::format(", {}{}", lead, value);
  };
  add("packet ", sowing.packet_id);
  add("in ", counted(sowing.pots, "pot"));
  add("on ", sowing.bench);
  add("mat ", sowing.mat);
  add("covered with ", sowing.cover);
  add("mix ", sowing.mix);
  add("", sowing.treatment);
  add("trial ", sowing.trial);
  add("arm ", sowing.arm);
  add("", water_words(sowing));
  return text;
}

std::string words(const SeedlingCount& count) {
  std::string text = fmt::format("sowing {}: {} up", count.sowing, count.seen);
  if (count.dead > 0) {
    text += fmt::format(", {} dead ({})", count.dead, spoken(journal_word(count.why)));
  }
  return text + (count.phase == CountPhase::emerged
                     ? ""
                     : fmt::format(", {}", spoken(journal_word(count.phase))));
}

std::string words(const PressTest& test) {
  return fmt::format("sowing {}: {} firm, {} soft", test.sowing, test.firm, test.soft);
}

std::string words(const PacketTest& of) {
  return fmt::format("packet {}: {} of {} up", of.packet_id, of.test.sprouted, of.test.of);
}

std::string words(const Watering& watering) {
  return fmt::format("sowing {}: {}", watering.sowing, spoken(journal_word(watering.kind)));
}

std::string words(const Move& move) {
  return fmt::format("sowing {}: {} {}",
                     move.sowing,
                     move.kind == MoveKind::bench ? "moved to" : journal_word(move.kind),
                     move.to);
}

std::string words(const Potting& potting) {
  const std::string plants = potting.plants ? counted(*potting.plants, "plant") + " " : "";
  return fmt::format("sowing {}: {}{}", potting.sowing, plants, spoken(journal_word(potting.kind)));
}

std::string words(const Closing& closing) {
  return fmt::format("sowing {} is closed{}", closing.sowing, closed_because(closing.why));
}

std::string words(const Note& note) {
  std::string text = note.sowing               ? fmt::format("sowing {}: ", *note.sowing)
                     : !note.packet_id.empty() ? fmt::format("packet {}: ", note.packet_id)
                                               : "";
  text += note.text;
  return text + (note.photo.empty() ? "" : fmt::format(" [{}]", note.photo));
}

std::string words(const Undo& undo) {
  return fmt::format("entry {} does not count", undo.undone);
}

std::string words(const PacketUse& use) {
  return fmt::format("packet {}: {} {}",
                     use.packet_id,
                     counted(use.seeds, "seed"),
                     use.kind == PacketUseKind::given   ? "given away"
                     : use.kind == PacketUseKind::other ? "used otherwise"
                                                        : journal_word(use.kind));
}

} // namespace

std::string spoken(std::string_view word) {
  std::string text(word);
  std::replace(text.begin(), text.end(), '_', ' ');
  return text;
}

std::string closed_because(ClosingReason why) {
  return why == ClosingReason::other ? "" : ": " + plain_word("closed", journal_word(why));
}

std::string entry_words(const EntryValue& value) {
  return std::visit([](const auto& told) { return words(told); }, value);
}

} // namespace nightsow::planner
