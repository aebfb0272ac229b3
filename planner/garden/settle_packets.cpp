#include "planner/garden/settle_packets.hpp"

#include "planner/garden/plain_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <set>
#include <string>
#include <utility>

namespace nightsow::planner {

namespace {

// A note that lists packets names this many and counts the rest.
constexpr std::size_t most_named = 10;

// The first free one of name, name-2, name-3 ...
std::string free_id(const std::string& name, const std::set<std::string>& taken) {
  std::string id = name;
  for (int number = 2; taken.contains(id); ++number) {
    id = fmt::format("{}-{}", name, number);
  }
  return id;
}

std::string list_of(std::span<const std::string> ids) {
  const auto named = ids.first(std::min(ids.size(), most_named));
  const std::string list = fmt::format("{}", fmt::join(named.begin(), named.end(), ", "));
  return named.size() < ids.size() ? fmt::format("{} and {} more", list, ids.size() - named.size())
                                   : list;
}

Problem note_on(std::span<const std::string> ids,
                std::string_view where,
                std::string_view found,
                std::string remedy) {
  return {Severity::note,
          std::string(where),
          0,
          0,
          fmt::format("{}: {}", found, list_of(ids)),
          "",
          std::move(remedy)};
}

Problem warning_on(const Packet& packet,
                   std::string_view where,
                   std::string found,
                   std::string expected,
                   std::string remedy) {
  return {Severity::warning,
          std::string(where),
          packet.line,
          0,
          std::move(found),
          std::move(expected),
          std::move(remedy)};
}

std::string made_up_name(const Packet& packet) {
  const std::string taxon = slug(packet.taxon);
  return packet.harvested ? taxon + '-' + format_date_range(*packet.harvested) : taxon;
}

DateRange guessed_harvest(const DateRange& received) {
  return {months_before(received.first, guessed_harvest_months_most),
          months_before(received.last, guessed_harvest_months_least)};
}

bool harvested_after_receipt(const Packet& packet) {
  return packet.harvested && packet.received && packet.harvested->first > packet.received->last;
}

Problem odd_harvest(const Packet& packet, std::string_view where) {
  return warning_on(packet,
                    where,
                    fmt::format("{} was harvested {}, after it was received {}",
                                packet.id,
                                format_date_range(*packet.harvested),
                                format_date_range(*packet.received)),
                    "a harvest before that",
                    "correct one of the two; the harvest is used");
}

} // namespace

void give_ids(std::span<Packet> packets, std::string_view where, std::vector<Problem>& problems) {
  std::set<std::string> taken;
  for (Packet& packet : packets) {
    if (packet.id.empty()) {
      continue;
    }
    const std::string id = free_id(packet.id, taken);
    if (id != packet.id) {
      problems.push_back(warning_on(packet,
                                    where,
                                    fmt::format("a second packet \"{}\"", packet.id),
                                    "every packet with an id of its own",
                                    fmt::format("it is called {} until one is renamed", id)));
    }
    packet.id = id;
    taken.insert(id);
  }
  std::vector<std::string> made_up;
  for (Packet& packet : packets) {
    if (packet.id.empty()) {
      packet.id = free_id(made_up_name(packet), taken);
      taken.insert(packet.id);
      made_up.push_back(packet.id);
    }
  }
  if (!made_up.empty()) {
    problems.push_back(note_on(made_up,
                               where,
                               "no id in the column packet, so named after taxon and harvest",
                               "write ids of your own if these must never change"));
  }
}

void settle_harvests(std::span<Packet> packets,
                     std::string_view where,
                     std::vector<Problem>& problems) {
  std::vector<std::string> guessed;
  std::vector<std::string> unknown;
  for (Packet& packet : packets) {
    if (harvested_after_receipt(packet)) {
      problems.push_back(odd_harvest(packet, where));
    } else if (packet.harvested && packet.received) {
      packet.harvested->last = std::min(packet.harvested->last, packet.received->last);
    } else if (packet.received) {
      packet.harvested = guessed_harvest(*packet.received);
      packet.harvest_guessed = true;
      guessed.push_back(packet.id);
    } else if (!packet.harvested) {
      unknown.push_back(packet.id);
    }
  }
  if (!guessed.empty()) {
    problems.push_back(
        note_on(guessed,
                where,
                fmt::format("harvest not given, so taken to be {} to {} months before receipt",
                            guessed_harvest_months_least,
                            guessed_harvest_months_most),
                "fill in harvested where you know it; a year is enough"));
  }
  if (!unknown.empty()) {
    problems.push_back(
        note_on(unknown,
                where,
                "neither harvested nor received is given, so the age of the seed is unknown",
                "fill in one of the two; a year is enough"));
  }
}

} // namespace nightsow::planner
