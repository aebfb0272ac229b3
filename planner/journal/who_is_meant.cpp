#include "planner/journal/who_is_meant.hpp"

#include "climate/base/nearest_name.hpp"
#include "climate/base/problem.hpp"
#include "planner/garden/open_sowings.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <iterator>
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

std::vector<Packet> packets_called(const std::string& what, const std::vector<Packet>& in_hand) {
  return first_found(
      in_hand,
      [&](const Packet& packet) { return packet.id == what; },
      [&](const Packet& packet) { return edit_distance(packet.taxon, what) == 0; },
      [&](const Packet& packet) { return begins_as(packet.taxon, what); });
}

// Each with its genus alone, since that is how people call them.
void add_taxon(const std::string& taxon, std::vector<std::string>& names) {
  names.push_back(taxon);
  names.push_back(taxon.substr(0, taxon.find(' ')));
}

std::vector<std::string> names_of(const Records& records, std::vector<std::string> names) {
  for (const RecordedSowing& sowing : records.sowings) {
    if (!sowing.packet_id.empty()) {
      names.push_back(sowing.packet_id);
    }
    add_taxon(sowing.taxon, names);
  }
  return names;
}

std::vector<std::string> names_of(const std::vector<Packet>& packets) {
  std::vector<std::string> names;
  for (const Packet& packet : packets) {
    names.push_back(packet.id);
    add_taxon(packet.taxon, names);
  }
  return names;
}

std::string nearly_called(const std::string& what, const std::vector<std::string>& names) {
  const auto nearest = nearest_name(what, names);
  return nearest ? fmt::format("did you mean \"{}\"? ", nearest->name) : "";
}

} // namespace

Date day_meant(const std::optional<Date>& typed, Date today) {
  if (typed && *typed > today) {
    refuse(fmt::format("{} is after today, {}", format_iso_date(*typed), format_iso_date(today)),
           "a day up to today",
           "correct the day; nothing was written");
  }
  return typed.value_or(today);
}

std::vector<RecordedSowing> sowings_called(const std::string& what, const Records& records) {
  return first_found(
      records.sowings,
      [&](const RecordedSowing& sowing) { return std::to_string(sowing.id) == what; },
      [&](const RecordedSowing& sowing) { return sowing.packet_id == what; },
      [&](const RecordedSowing& sowing) { return edit_distance(sowing.taxon, what) == 0; },
      [&](const RecordedSowing& sowing) { return begins_as(sowing.taxon, what); });
}

RecordedSowing sowing_called(const std::string& what,
                             const Records& records,
                             const std::vector<std::string>& others) {
  std::vector<RecordedSowing> sowings = sowings_called(what, records);
  if (sowings.empty()) {
    refuse(fmt::format("no sowing is called \"{}\"", what),
           "the number of a sowing, the id of its packet, or its taxon",
           nearly_called(what, names_of(records, others)) +
               "`nightsow journal list` shows what was sown; nothing was written");
  }
  const auto open = those(sowings, [&](const RecordedSowing& sowing) {
    return closing_of(records, sowing.id) == nullptr;
  });
  sowings = open.empty() ? sowings : open;
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
    refuse(fmt::format("{} sowings are called \"{}\"", sowings.size(), what),
           fmt::format("one of {}", fmt::join(names, ", ")),
           "type the number of the sowing; nothing was written");
  }
  return sowings.front();
}

RecordedSowing looked_after(const std::string& what,
                            const Records& records,
                            Date on,
                            const std::vector<std::string>& others) {
  RecordedSowing sowing = sowing_called(what, records, others);
  const Closing* const closing = closing_of(records, sowing.id);
  if (closing != nullptr && closing->on < on) {
    refuse(
        fmt::format("sowing {} ({}) was closed on {}",
                    sowing.id,
                    sowing.taxon,
                    format_iso_date(closing->on)),
        "a sowing that is looked after, or --on that day or before",
        fmt::format("`nightsow journal undo {}` opens it again; nothing was written", closing->id));
  }
  return sowing;
}

std::optional<Packet> packet_called(const std::string& what, const std::vector<Packet>& packets) {
  const std::vector<Packet> called = packets_called(what, packets);
  if (called.size() > 1) {
    std::vector<std::string> names;
    names.reserve(called.size());
    for (const Packet& packet : called) {
      names.push_back(fmt::format("{} ({})", packet.id, packet.taxon));
    }
    refuse(fmt::format("{} packets are called \"{}\"", called.size(), what),
           fmt::format("one of {}", fmt::join(names, ", ")),
           "type the packet's id; nothing was written");
  }
  return called.empty() ? std::nullopt : std::optional(called.front());
}

bool is_called(const std::string& what,
               const Records& records,
               const std::vector<Packet>& packets) {
  return !sowings_called(what, records).empty() || !packets_called(what, packets).empty();
}

bool looks_like_a_packet(const std::string& what) {
  const auto is = [&](char from, char to) {
    return std::any_of(what.begin(), what.end(), [=](char c) { return c >= from && c <= to; });
  };
  if (what.find(' ') != std::string::npos) {
    return false;
  }
  return is('0', '9') || (is('A', 'Z') && !is('a', 'z'));
}

void refuse_packet(const std::string& what, const std::vector<Packet>& packets) {
  refuse(fmt::format("no packet is called \"{}\"", what),
         "the id of a packet, or its taxon",
         nearly_called(what, names_of(packets)) +
             "`nightsow packet list` shows them; nothing was written");
}

Packet packet_meant(const std::string& what, const std::vector<Packet>& packets) {
  auto packet = packet_called(what, packets);
  if (!packet) {
    refuse_packet(what, packets);
  }
  return *std::move(packet);
}

} // namespace nightsow::planner
