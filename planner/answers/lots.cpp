#include "planner/answers/lots.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
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

using Members = std::vector<const Sowing*>;

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

// Two benches never get the same word.
std::string id_word(std::string_view name) {
  std::string word;
  for (const char c : name) {
    if (is_ascii_letter_or_digit(c)) {
      word += c;
    } else if (c == ' ') {
      word += '-';
    } else {
      word += fmt::format("_{:02x}", static_cast<unsigned char>(c));
    }
  }
  return word;
}

// `place`: among the groups of this kind, by date.
std::string group_id(const WaterKind& kind, std::size_t place) {
  std::string id = id_word(kind.bench) + "-" + kind.start;
  if (kind.limit_from_c) {
    id += fmt::format("-{}", *kind.limit_from_c);
  }
  return place == 0 ? id : fmt::format("{}-no{}", id, place + 1);
}

std::string lot_id(const std::string& group, const TrayKind& kind) {
  return group + "-" + kind.cover + (kind.bag ? "-bag" : "") + (kind.mat ? "-mat" : "");
}

std::optional<Date> earlier(const std::optional<Date>& a, const std::optional<Date>& b) {
  return a && b ? std::min(a, b) : a ? a : b;
}

// Empty, "no day", comes last.
bool waits_less(const Sowing* a, const Sowing* b) {
  const auto key = [](const Sowing* sowing) {
    return std::tuple{sowing->verdict != Verdict::water_now,
                      sowing->first_water.expected.p50.value_or(Date::max()),
                      sowing->packet};
  };
  return key(a) < key(b);
}

// Whether a packet that is watered last of all would still be in time for all, and near the first.
bool may_join(const Members& group, const Sowing& sowing) {
  const Sowing& first = *group.front();
  if ((first.verdict == Verdict::water_now) != (sowing.verdict == Verdict::water_now)) {
    return false;
  }
  const std::optional<Date>& from = first.first_water.expected.p50;
  const std::optional<Date>& water = sowing.first_water.expected.p50;
  if (!from || !water) {
    return !from && !water;
  }
  const bool in_time = std::all_of(group.begin(), group.end(), [&](const Sowing* other) {
    const std::optional<Date>& latest = other->first_water.no_later_than;
    return !latest || *water <= *latest;
  });
  return in_time && *water <= *from + Days{near_days};
}

// What gets first water together.
std::vector<Members> groups_of(Members members) {
  std::sort(members.begin(), members.end(), waits_less);
  std::vector<Members> groups;
  for (const Sowing* sowing : members) {
    if (groups.empty() || !may_join(groups.back(), *sowing)) {
      groups.emplace_back();
    }
    groups.back().push_back(sowing);
  }
  return groups;
}

FirstWater water_of(const Members& group) {
  FirstWater water = group.back()->first_water;
  for (const Sowing* sowing : group) {
    const FirstWater& own = sowing->first_water;
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

Verdict verdict_of(const Members& group) {
  const auto has = [&](Verdict verdict) {
    return std::any_of(group.begin(), group.end(), [&](const Sowing* sowing) {
      return sowing->verdict == verdict;
    });
  };
  if (has(Verdict::unknown)) {
    return Verdict::unknown;
  }
  return has(Verdict::wait) ? Verdict::wait : Verdict::water_now;
}

void add_packet(const Sowing& sowing, Lot& lot) {
  lot.packets.push_back({sowing.packet,
                         sowing.taxon,
                         sowing.accepted,
                         sowing.seeds,
                         sowing.how.pots,
                         sowing.work.number,
                         sowing.work.provenance});
  if (sowing.how.pots) {
    lot.pots = lot.pots.value_or(0) + *sowing.how.pots;
  }
  lot.mat_off_at_night = lot.mat_off_at_night || sowing.work.mat_off_at_night;
  lot.shade = std::max(lot.shade, sowing.work.shade_first_year);
}

/// What all trays share that get first water together.
Lot group_of(const WaterKind& kind, const Members& group, std::size_t place, Date today) {
  Lot lot;
  lot.group = group_id(kind, place);
  lot.bench = kind.bench;
  lot.start = kind.start;
  lot.verdict = verdict_of(group);
  lot.first_water = water_of(group);
  for (const Sowing* sowing : group) {
    lot.sow_on = earlier(lot.sow_on, sowing->sow_on);
  }
  const std::optional<Date> water = day_of_water(lot.verdict, lot.first_water, today);
  if (water && lot.sow_on) {
    lot.waters = std::max(*water, *lot.sow_on);
  }
  return lot;
}

void add_trays(const Lot& shared, const Members& group, std::vector<Lot>& lots) {
  std::map<TrayKind, Lot> trays;
  for (const Sowing* sowing : group) {
    const TrayKind kind = tray_kind(*sowing);
    Lot& lot = trays.try_emplace(kind, shared).first->second;
    lot.id = lot_id(shared.group, kind);
    lot.cover = kind.cover;
    lot.bag = kind.bag;
    lot.mat = kind.mat;
    add_packet(*sowing, lot);
  }
  for (auto& [kind, lot] : trays) {
    std::sort(lot.packets.begin(), lot.packets.end(), [](const auto& a, const auto& b) {
      return a.packet < b.packet;
    });
    lots.push_back(std::move(lot));
  }
}

} // namespace

std::vector<Lot> lots_of(const std::vector<Sowing>& sowings, Date today) {
  std::map<WaterKind, Members> kinds;
  for (const Sowing& sowing : sowings) {
    kinds[water_kind(sowing)].push_back(&sowing);
  }
  std::vector<Lot> lots;
  for (const auto& [kind, members] : kinds) {
    const std::vector<Members> groups = groups_of(members);
    for (std::size_t place = 0; place < groups.size(); ++place) {
      add_trays(group_of(kind, groups[place], place, today), groups[place], lots);
    }
  }
  std::sort(lots.begin(), lots.end(), [](const Lot& a, const Lot& b) {
    return std::tuple{a.waters.value_or(Date::max()), a.id} <
           std::tuple{b.waters.value_or(Date::max()), b.id};
  });
  return lots;
}

} // namespace nightsow::planner
