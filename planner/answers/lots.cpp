#include "planner/answers/lots.hpp"

#include "planner/model/sowing_days.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>
#include <tuple>

namespace nightsow::planner {

namespace {

/// What decides the day of first water, besides the date that is expected.
struct WaterKind {
  std::string bench;
  std::string start;
  std::optional<int> limit_from_c; ///< empty: nights do not decide

  auto operator<=>(const WaterKind&) const = default;
};

/// What else the pots of a tray share.
struct TrayKind {
  std::string cover;
  bool bag = false;
  bool mat = false;

  bool operator<(const TrayKind& other) const {
    return std::tie(cover, bag, mat) < std::tie(other.cover, other.bag, other.mat);
  }
};

std::string cover_class(const How& how) {
  const std::string cover = how.cover.value_or("");
  if (cover.empty() || cover == "none" || cover == "dusting") {
    return "surface";
  }
  return cover == "deep" || cover == "half_buried" ? "deep" : "thin";
}

WaterKind water_kind(const Sowing& sowing) {
  WaterKind kind{sowing.bench, sowing.start, std::nullopt};
  if (const auto& when = sowing.first_water.when) {
    kind.limit_from_c =
        static_cast<int>(std::floor(when->at_or_under_c / limit_step_k)) * limit_step_k;
  }
  return kind;
}

TrayKind tray_kind(const Sowing& sowing) {
  return {cover_class(sowing.how), sowing.how.humidity_cover == "useful", sowing.work.on_mat};
}

bool is_ascii_letter_or_digit(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

// Two names never get the same word. `hyphen` is the character that becomes one.
std::string id_word(std::string_view name, char hyphen) {
  std::string word;
  for (const char c : name) {
    if (is_ascii_letter_or_digit(c)) {
      word += c;
    } else if (c == hyphen) {
      word += '-';
    } else {
      word += fmt::format("_{:02x}", static_cast<unsigned char>(c));
    }
  }
  return word;
}

std::string bench_and_start(std::string_view bench, std::string_view start) {
  return fmt::format("{}-{}", id_word(bench, ' '), start);
}

// Named by what decides its first water, and by its first packet: other groups come and go.
std::string group_id(const WaterKind& kind, const std::string& first_packet) {
  std::string id = bench_and_start(kind.bench, kind.start);
  if (kind.limit_from_c) {
    id += fmt::format("-{}", *kind.limit_from_c);
  }
  return id + "-" + id_word(first_packet, '-');
}

std::string lot_id(const std::string& group, const TrayKind& kind) {
  return group + "-" + kind.cover + (kind.bag ? "-bag" : "") + (kind.mat ? "-mat" : "");
}

std::optional<Date> earlier(const std::optional<Date>& a, const std::optional<Date>& b) {
  return a && b ? std::min(a, b) : a ? a : b;
}

/// A sowing with the first day on which it could be watered: planned for, and in its pots.
struct Ready {
  const Sowing* sowing = nullptr;
  Date on{};
};

using Group = std::vector<Ready>;

std::optional<Ready> ready(const Sowing& sowing, Date today) {
  const std::optional<Date> water = day_of_water(sowing.verdict, sowing.first_water, today);
  if (!water || !sowing.sow_on) {
    return std::nullopt;
  }
  const Date from = std::max(*water, sowing.first_water.not_before.value_or(*water));
  return Ready{&sowing, std::max(from, *sowing.sow_on)};
}

// Seed that dies dry waits for no other: only what is sown on one day stands together. All of any
// other group would be watered when the one that is ready last is: still in time for each, and
// near the first. Groups are filled by the day on which their members are ready.
bool may_join(const Group& group, const Ready& last) {
  const Ready& first = group.front();
  if (first.sowing->verdict != last.sowing->verdict) {
    return false;
  }
  if (last.sowing->start == "at_once") {
    return last.on == first.on;
  }
  const int near = last.sowing->verdict == Verdict::water_now ? near_days_now : near_days;
  return last.on <= first.on + Days{near} &&
         std::all_of(group.begin(), group.end(), [&](const Ready& other) {
           const std::optional<Date>& latest = other.sowing->first_water.no_later_than;
           return !latest || last.on <= *latest;
         });
}

// What gets first water together.
std::vector<Group> groups_of(Group members) {
  std::sort(members.begin(), members.end(), [](const Ready& a, const Ready& b) {
    return std::tuple{a.sowing->verdict, a.on, a.sowing->packet} <
           std::tuple{b.sowing->verdict, b.on, b.sowing->packet};
  });
  std::vector<Group> groups;
  for (const Ready& member : members) {
    if (groups.empty() || !may_join(groups.back(), member)) {
      groups.emplace_back();
    }
    groups.back().push_back(member);
  }
  return groups;
}

FirstWater water_of(const Group& group) {
  FirstWater water = group.front().sowing->first_water;
  for (const Ready& member : group) {
    const FirstWater& own = member.sowing->first_water;
    if (own.expected.p50 > water.expected.p50) {
      water.expected = own.expected;
    }
    if (water.when && own.when) {
      water.when->at_or_under_c = std::min(water.when->at_or_under_c, own.when->at_or_under_c);
      if (own.when->no_day_over_c) {
        water.when->no_day_over_c = std::min(
            water.when->no_day_over_c.value_or(*own.when->no_day_over_c), *own.when->no_day_over_c);
      }
    }
    water.not_before = std::max(water.not_before, own.not_before);
    water.no_later_than = earlier(water.no_later_than, own.no_later_than);
  }
  return water;
}

LotPacket lot_packet(const Sowing& sowing) {
  return {sowing.packet,
          sowing.taxon,
          sowing.accepted,
          sowing.seeds,
          sowing.how.pots,
          sowing.work.number,
          sowing.work.provenance,
          sowing.sow_on};
}

void add_packet(const Sowing& sowing, Lot& lot) {
  lot.sow_on = lot.packets.empty() ? *sowing.sow_on : std::min(lot.sow_on, *sowing.sow_on);
  lot.sown_by = lot.packets.empty() ? *sowing.sow_on : std::max(lot.sown_by, *sowing.sow_on);
  lot.packets.push_back(lot_packet(sowing));
  if (sowing.how.pots) {
    lot.pots = lot.pots.value_or(0) + *sowing.how.pots;
  }
  lot.mat_off_at_night = lot.mat_off_at_night || sowing.work.mat_off_at_night;
  lot.shade = std::max(lot.shade, sowing.work.shade_first_year);
}

/// What all trays share that get first water together.
Lot group_of(const WaterKind& kind, const Group& group, const Presence& presence) {
  const auto by_name = [](const Ready& a, const Ready& b) {
    return a.sowing->packet < b.sowing->packet;
  };
  Lot lot;
  lot.group = group_id(kind, std::min_element(group.begin(), group.end(), by_name)->sowing->packet);
  lot.bench = kind.bench;
  lot.start = kind.start;
  lot.verdict = group.front().sowing->verdict;
  lot.first_water = water_of(group);
  const Date wanted = group.back().on;
  Date earliest = std::max(presence.today, lot.first_water.not_before.value_or(presence.today));
  for (const Ready& member : group) {
    earliest = std::max(earliest, *member.sowing->sow_on);
  }
  lot.waters = nearest_day_there(presence.away, wanted, earliest);
  if (lot.waters != wanted) {
    lot.waters_if_there = wanted;
  }
  return lot;
}

void add_trays(const Lot& shared, const Group& group, std::vector<Lot>& lots) {
  std::map<TrayKind, Lot> trays;
  for (const Ready& member : group) {
    const TrayKind kind = tray_kind(*member.sowing);
    Lot& lot = trays.try_emplace(kind, shared).first->second;
    lot.id = lot_id(shared.group, kind);
    lot.cover = kind.cover;
    lot.bag = kind.bag;
    lot.mat = kind.mat;
    add_packet(*member.sowing, lot);
  }
  for (auto& [kind, lot] : trays) {
    std::sort(lot.packets.begin(), lot.packets.end(), [](const auto& a, const auto& b) {
      return std::tie(a.sow_on, a.packet) < std::tie(b.sow_on, b.packet);
    });
    lots.push_back(std::move(lot));
  }
}

} // namespace

std::vector<Lot> lots_of(const std::vector<Sowing>& sowings, const Presence& presence) {
  std::map<WaterKind, Group> kinds;
  for (const Sowing& sowing : sowings) {
    if (const std::optional<Ready> member = ready(sowing, presence.today)) {
      kinds[water_kind(sowing)].push_back(*member);
    }
  }
  std::vector<Lot> lots;
  for (const auto& [kind, members] : kinds) {
    for (const Group& group : groups_of(members)) {
      add_trays(group_of(kind, group, presence), group, lots);
    }
  }
  std::sort(lots.begin(), lots.end(), [](const Lot& a, const Lot& b) {
    return std::tie(a.waters, a.id) < std::tie(b.waters, b.id);
  });
  return lots;
}

void tell_trays(const std::vector<Lot>& lots, std::vector<Sowing>& sowings) {
  std::map<std::string_view, TrayPlace> places;
  for (const Lot& lot : lots) {
    for (const LotPacket& packet : lot.packets) {
      places[packet.packet] = {lot.id, lot.waters};
    }
  }
  for (Sowing& sowing : sowings) {
    if (const auto place = places.find(sowing.packet); place != places.end()) {
      sowing.tray = place->second;
    }
  }
}

std::string bench_and_start(const Lot& lot) {
  return bench_and_start(lot.bench, lot.start);
}

std::vector<LotPacket> without_day(const std::vector<Sowing>& sowings, Date today) {
  std::vector<LotPacket> packets;
  for (const Sowing& sowing : sowings) {
    if (!ready(sowing, today)) {
      packets.push_back(lot_packet(sowing));
    }
  }
  std::sort(packets.begin(), packets.end(), [](const LotPacket& a, const LotPacket& b) {
    return a.packet < b.packet;
  });
  return packets;
}

} // namespace nightsow::planner
