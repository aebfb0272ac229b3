#include "planner/render/plan_files.hpp"
#include "planner/render/task_words.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <libical/ical.h>

#include <memory>
#include <new>
#include <vector>

namespace nightsow::planner {

namespace {

// libical takes what it is given; only the calendar itself is ours to free.
struct FreeComponent {
  void operator()(icalcomponent* component) const { icalcomponent_free(component); }
};

struct FreeText {
  void operator()(char* text) const { icalmemory_free_buffer(text); }
};

icaltimetype all_day(Date day) {
  const date::year_month_day parts{day};
  icaltimetype time = icaltime_null_time(); // all naught: no hour either
  time.is_date = 1;
  time.year = static_cast<int>(parts.year());
  time.month = static_cast<int>(static_cast<unsigned>(parts.month()));
  time.day = static_cast<int>(static_cast<unsigned>(parts.day()));
  return time;
}

icaltimetype midnight_utc(Date day) {
  icaltimetype time = all_day(day);
  time.is_date = 0;
  time.zone = icaltimezone_get_utc_timezone();
  return time;
}

// The garden's name as the right side of an id.
std::string garden_word(const std::string& name) {
  std::string word;
  for (const char c : name) {
    if (c >= 'A' && c <= 'Z') {
      word += static_cast<char>(c - 'A' + 'a');
    } else if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
      word += c;
    } else if (!word.empty() && word.back() != '-') {
      word += '-';
    }
  }
  while (!word.empty() && word.back() == '-') {
    word.pop_back();
  }
  return word.empty() ? "garden" : word;
}

std::string uid_of(const DiaryEntry& entry, const PlanAnswer& answer) {
  return fmt::format("{}-{}-{}-{}@{}",
                     entry.group,
                     answer.season,
                     name_of(entry.kind),
                     entry.number,
                     garden_word(answer.garden.name));
}

std::string description_of(const DiaryEntry& entry, const PlanAnswer& answer) {
  std::vector<std::string> lines = entry_sentences(entry, answer.lots, {});
  for (const Lot& lot : answer.lots) {
    if (!concerns(entry, lot)) {
      continue;
    }
    std::vector<std::string> packets;
    for (const LotPacket& packet : lot.packets) {
      packets.push_back(packet.packet + " " + packet.taxon);
    }
    lines.push_back(fmt::format("{}: {}", lot.id, fmt::join(packets, ", ")));
  }
  return fmt::format("{}", fmt::join(lines, "\n"));
}

icalcomponent* alarm_of(const DiaryEntry& entry) {
  icalcomponent* alarm = icalcomponent_new(ICAL_VALARM_COMPONENT);
  icalcomponent_add_property(alarm, icalproperty_new_action(ICAL_ACTION_DISPLAY));
  icalcomponent_add_property(alarm,
                             icalproperty_new_description(task_title(TaskKind::get_ready).c_str()));
  icaltriggertype trigger{};
  trigger.time = icaltime_null_time();
  trigger.duration = icaldurationtype_from_int(-*entry.alarm_days * 24 * 60 * 60);
  icalcomponent_add_property(alarm, icalproperty_new_trigger(trigger));
  return alarm;
}

icalcomponent* event_of(const DiaryEntry& entry, const PlanAnswer& answer) {
  icalcomponent* event = icalcomponent_new(ICAL_VEVENT_COMPONENT);
  const auto add = [&](icalproperty* property) { icalcomponent_add_property(event, property); };
  const std::string title =
      fmt::format("{}: {}", entry_title(entry), entry_trays(entry, answer.lots));
  add(icalproperty_new_uid(uid_of(entry, answer).c_str()));
  add(icalproperty_new_dtstamp(midnight_utc(answer.today)));
  add(icalproperty_new_sequence(answer.saves));
  add(icalproperty_new_dtstart(all_day(entry.on)));
  add(icalproperty_new_summary(title.c_str()));
  add(icalproperty_new_description(description_of(entry, answer).c_str()));
  add(icalproperty_new_transp(ICAL_TRANSP_TRANSPARENT));
  if (entry.alarm_days && !entry.done()) {
    icalcomponent_add_component(event, alarm_of(entry));
  }
  return event;
}

} // namespace

std::string plan_calendar(const PlanAnswer& answer) {
  const std::unique_ptr<icalcomponent, FreeComponent> calendar{
      icalcomponent_new(ICAL_VCALENDAR_COMPONENT)};
  icalcomponent_add_property(calendar.get(), icalproperty_new_version("2.0"));
  icalcomponent_add_property(calendar.get(),
                             icalproperty_new_prodid("-//nightsow//nightsow plan//EN"));
  for (const DiaryEntry& entry : answer.diary) {
    icalcomponent_add_component(calendar.get(), event_of(entry, answer));
  }
  const std::unique_ptr<char, FreeText> text{icalcomponent_as_ical_string_r(calendar.get())};
  if (!text) {
    throw std::bad_alloc{};
  }
  return text.get();
}

} // namespace nightsow::planner
