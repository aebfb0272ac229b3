#include "planner/journal/quick_entry.hpp"

#include "climate/base/nearest_name.hpp"
#include "climate/base/problem.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <string_view>
#include <utility>

namespace nightsow::planner {

namespace {

template <typename Value, typename Fits>
std::vector<Value> those(const std::vector<Value>& all, Fits fits) {
  std::vector<Value> found;
  std::copy_if(all.begin(), all.end(), std::back_inserter(found), fits);
  return found;
}

/// What the first test finds that finds anything.
template <typename Value, typename... Fits>
std::vector<Value> first_found(const std::vector<Value>& all, Fits... tests) {
  std::vector<Value> found;
  ((found.empty() ? static_cast<void>(found = those(all, tests)) : static_cast<void>(0)), ...);
  return found;
}

[[noreturn]] void refuse(std::string found, std::string expected, std::string remedy) {
  throw UsageError(
      {Severity::error, "", 0, 0, std::move(found), std::move(expected), std::move(remedy)});
}

// An entry of a day to come would be of no account until then.
Date day_meant(const std::optional<Date>& typed, Date today) {
  if (typed && *typed > today) {
    refuse(fmt::format("{} is after today, {}", format_iso_date(*typed), format_iso_date(today)),
           "a day up to today",
           "correct the day; nothing was written");
  }
  return typed.value_or(today);
}

std::vector<Packet> packets_called(const std::string& what, const std::vector<Packet>& in_hand) {
  return first_found(
      in_hand,
      [&](const Packet& packet) { return packet.id == what; },
      [&](const Packet& packet) { return edit_distance(packet.taxon, what) == 0; },
      [&](const Packet& packet) { return begins_as(packet.taxon, what); });
}

} // namespace

std::vector<RecordedSowing> sowings_called(const std::string& what, const Records& records) {
  return first_found(
      records.sowings,
      [&](const RecordedSowing& sowing) { return std::to_string(sowing.id) == what; },
      [&](const RecordedSowing& sowing) { return sowing.packet_id == what; },
      [&](const RecordedSowing& sowing) { return edit_distance(sowing.taxon, what) == 0; },
      [&](const RecordedSowing& sowing) { return begins_as(sowing.taxon, what); });
}

RecordedSowing sowing_meant(const QuickSowing& typed,
                            const std::vector<Packet>& in_hand,
                            const std::string& first_bench,
                            Date today) {
  const std::vector<Packet> packets = packets_called(typed.what, in_hand);
  if (packets.size() > 1) {
    std::vector<std::string> names;
    names.reserve(packets.size());
    for (const Packet& packet : packets) {
      names.push_back(fmt::format("{} ({})", packet.id, packet.taxon));
    }
    refuse(fmt::format("{} packets are called \"{}\"", packets.size(), typed.what),
           fmt::format("one of {}", fmt::join(names, ", ")),
           "type the packet's id; nothing was written");
  }
  RecordedSowing sowing;
  if (!packets.empty()) {
    sowing.packet = packets.front();
    sowing.packet_id = sowing.packet.id;
  }
  sowing.taxon = packets.empty() ? typed.what : sowing.packet.taxon;
  sowing.packet.taxon = sowing.taxon;
  sowing.on = day_meant(typed.on, today);
  if (!typed.dry) {
    sowing.first_water = sowing.on;
  }
  sowing.seeds = typed.seeds;
  sowing.pots = typed.pots.value_or(1);
  sowing.bench = !typed.bench.empty()           ? typed.bench
                 : !sowing.packet.bench.empty() ? sowing.packet.bench
                                                : first_bench;
  sowing.mat = typed.mat;
  sowing.cover = typed.cover;
  sowing.mix = typed.mix;
  sowing.treatment = typed.treatment;
  sowing.trial = typed.trial;
  sowing.arm = typed.arm;
  return sowing;
}

SeedlingCount count_meant(const QuickCount& typed, const Records& records, Date today) {
  const std::vector<RecordedSowing> sowings = sowings_called(typed.what, records);
  if (sowings.empty()) {
    refuse(fmt::format("no sowing is called \"{}\"", typed.what),
           "the number of a sowing, the id of its packet, or its taxon",
           "`nightsow journal list` shows what was sown; nothing was written");
  }
  if (sowings.size() > 1) {
    std::vector<std::string> names;
    names.reserve(sowings.size());
    for (const RecordedSowing& sowing : sowings) {
      names.push_back(fmt::format("{} ({}, {} seeds, {})",
                                  sowing.id,
                                  sowing.taxon,
                                  sowing.seeds,
                                  format_iso_date(sowing.on)));
    }
    refuse(fmt::format("{} sowings are called \"{}\"", sowings.size(), typed.what),
           fmt::format("one of {}", fmt::join(names, ", ")),
           "type the number of the sowing; nothing was written");
  }
  return {0,
          sowings.front().id,
          day_meant(typed.on, today),
          typed.seen,
          typed.dead,
          typed.why,
          typed.phase};
}

} // namespace nightsow::planner
