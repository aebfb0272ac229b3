#include "planner/journal/quick_care.hpp"

#include "climate/base/problem.hpp"
#include "planner/garden/plain_text.hpp"
#include "planner/journal/who_is_meant.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <utility>

namespace nightsow::planner {

namespace {

[[noreturn]] void refuse(std::string found, std::string expected, std::string remedy) {
  throw UsageError(
      {Severity::error, "", 0, 0, std::move(found), std::move(expected), std::move(remedy)});
}

/// The sowings of "all" or of a bench; empty when neither is meant.
std::optional<std::vector<OpenSowing>> group_meant(const std::string& what,
                                                   const std::vector<OpenSowing>& open) {
  if (what == "all") {
    return open;
  }
  std::vector<OpenSowing> on_bench;
  std::copy_if(open.begin(), open.end(), std::back_inserter(on_bench), [&](const auto& one) {
    return !one.bench.empty() && lower_case(one.bench) == lower_case(what);
  });
  return on_bench.empty() ? std::nullopt : std::optional(std::move(on_bench));
}

/// The one sowing meant, as it stands; of one long untouched only its row.
OpenSowing one_meant(const std::string& what,
                     const std::vector<OpenSowing>& open,
                     const Records& records,
                     Date on) {
  std::vector<std::string> groups{"all"};
  for (const OpenSowing& one : open) {
    groups.push_back(one.bench);
  }
  const RecordedSowing sowing = looked_after(what, records, on, groups);
  const auto at = std::find_if(
      open.begin(), open.end(), [&](const OpenSowing& one) { return one.sowing.id == sowing.id; });
  return at == open.end() ? OpenSowing{sowing, sowing.bench, {}, {}} : *at;
}

WateringKind kind_guessed(const OpenSowing& one) {
  return !one.wetted()   ? WateringKind::first_water
         : one.resting() ? WateringKind::rewet
                         : WateringKind::watered;
}

void refuse_nothing_to_do(const std::string& what, const CareMeant& care) {
  if (care.entries.empty()) {
    refuse(fmt::format("of \"{}\" there is no sowing that this goes for", what),
           "",
           "`nightsow count --sheet` shows the sowings and where they stand; nothing was written");
  }
}

} // namespace

PressTest press_test_meant(const QuickPressTest& typed, const Records& records, Date today) {
  const Date on = day_meant(typed.on, today);
  return {0, looked_after(typed.what, records, on).id, on, typed.firm, typed.soft};
}

Potting potting_meant(const QuickPotting& typed, const Records& records, Date today) {
  const Date on = day_meant(typed.on, today);
  return {0, looked_after(typed.what, records, on).id, on, typed.kind, typed.plants};
}

Closing closing_meant(const QuickClosing& typed, const Records& records, Date today) {
  const Date on = day_meant(typed.on, today);
  const RecordedSowing sowing = sowing_called(typed.what, records);
  if (const Closing* const closing = closing_of(records, sowing.id)) {
    refuse(
        fmt::format("sowing {} ({}) is closed already, since {}",
                    sowing.id,
                    sowing.taxon,
                    format_iso_date(closing->on)),
        "a sowing that is looked after",
        fmt::format("`nightsow journal undo {}` opens it again; nothing was written", closing->id));
  }
  if (const Date last = last_day_told(records, sowing); on < last) {
    refuse(fmt::format("of sowing {} something is told on {}, after {}",
                       sowing.id,
                       format_iso_date(last),
                       format_iso_date(on)),
           "that day or later",
           fmt::format("`nightsow journal show {}` shows it; nothing was written", sowing.id));
  }
  return {0, sowing.id, on, typed.why};
}

PacketTest germination_test_meant(const QuickGerminationTest& typed,
                                  const std::vector<Packet>& packets,
                                  Date today) {
  PacketTest of;
  of.packet_id = packet_meant(typed.what, packets).id;
  of.test = {typed.sprouted, typed.tried, day_meant(typed.on, today), typed.at_c};
  return of;
}

PacketUse packet_use_meant(const QuickPacketUse& typed,
                           const std::vector<Packet>& packets,
                           Date today) {
  return {
      0, packet_meant(typed.what, packets).id, day_meant(typed.on, today), typed.seeds, typed.kind};
}

Note note_meant(const QuickNote& typed,
                const Records& records,
                const std::vector<Packet>& packets,
                Date today) {
  Note note;
  note.on = day_meant(typed.on, today);
  note.text = typed.text;
  note.photo = typed.photo;
  if (typed.what.empty()) {
    return note;
  }
  if (!sowings_called(typed.what, records).empty()) {
    note.sowing = sowing_called(typed.what, records).id;
    return note;
  }
  const auto packet = packet_called(typed.what, packets);
  if (!packet) {
    refuse(fmt::format("no sowing and no packet is called \"{}\"", typed.what),
           "a sowing's number, a packet, or a taxon; or the note alone, in quotes",
           "put the whole note in quotes; nothing was written");
  }
  note.packet_id = packet->id;
  return note;
}

CareMeant waterings_meant(const QuickWatering& typed,
                          const std::vector<OpenSowing>& open,
                          const Records& records,
                          const std::vector<NotDriedOff>& not_dried_off,
                          Date today) {
  const Date on = day_meant(typed.on, today);
  CareMeant care;
  const auto kept_moist = [&](EntryId sowing) -> const NotDriedOff* {
    const auto found = std::find_if(not_dried_off.begin(),
                                    not_dried_off.end(),
                                    [&](const NotDriedOff& one) { return one.sowing == sowing; });
    const bool asked = typed.kind == WateringKind::dry_rest && !typed.even_so;
    return asked && found != not_dried_off.end() ? &*found : nullptr;
  };
  const auto group = group_meant(typed.what, open);
  if (!group) {
    const OpenSowing one = one_meant(typed.what, open, records, on);
    if (const NotDriedOff* kept = kept_moist(one.sowing.id)) {
      refuse(fmt::format("sowing {}, {}, {}", one.sowing.id, one.sowing.taxon, kept->why),
             "",
             "if it was left dry all the same, add --even-so; nothing was written");
    }
    care.entries.emplace_back(
        Watering{0, one.sowing.id, on, typed.kind.value_or(kind_guessed(one))});
    return care;
  }
  care.group = true;
  const WateringKind kind = typed.kind.value_or(WateringKind::watered);
  const bool for_dry = kind == WateringKind::first_water;
  const bool for_resting = kind == WateringKind::rewet;
  for (const OpenSowing& one : *group) {
    if (one.sowing.on > on) {
      continue;
    }
    if (kept_moist(one.sowing.id) != nullptr) {
      care.left_out_not_dried_off.push_back(one.sowing.id);
    } else if (one.wetted() != for_dry && one.resting() == for_resting) {
      care.entries.emplace_back(Watering{0, one.sowing.id, on, kind});
    } else if (!for_dry && !for_resting) {
      (one.wetted() ? care.left_out_resting : care.left_out_dry).push_back(one.sowing.id);
    }
  }
  refuse_nothing_to_do(typed.what, care);
  return care;
}

CareMeant moves_meant(const QuickMove& typed,
                      const std::vector<OpenSowing>& open,
                      const Records& records,
                      Date today) {
  const Date on = day_meant(typed.on, today);
  CareMeant care;
  const auto add = [&](const OpenSowing& one) {
    care.entries.emplace_back(Move{0, one.sowing.id, on, typed.kind, typed.to});
  };
  if (const auto group = group_meant(typed.what, open)) {
    care.group = true;
    std::for_each(group->begin(), group->end(), add);
    refuse_nothing_to_do(typed.what, care);
  } else {
    add(one_meant(typed.what, open, records, on));
  }
  return care;
}

} // namespace nightsow::planner
