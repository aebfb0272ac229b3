#include "planner/cli/typed_record.hpp"

#include "planner/cli/typed_care.hpp"
#include "planner/cli/typed_journal.hpp"
#include "planner/cli/typed_packet.hpp"

#include <array>
#include <string_view>

namespace nightsow::planner {

namespace {

struct Reader {
  std::string_view command;
  Command (*read)(const TypedWords& typed);
};

template <auto Read> Command as_command(const TypedWords& typed) {
  return Read(typed);
}

Command count_or_sheet(const TypedWords& typed) {
  return typed.as_sheet ? Command(typed_count_sheet(typed)) : Command(typed_count(typed));
}

AccountCommand typed_account(const TypedWords& typed) {
  return {typed.entry_words, typed.all};
}

constexpr auto readers = std::to_array<Reader>({
    {"packet list", as_command<typed_packet_list>},
    {"packet add", as_command<typed_packet_add>},
    {"packet undo", as_command<typed_packet_undo>},
    {"packet use", as_command<typed_packet_use>},
    {"sow", as_command<typed_sow>},
    {"count", count_or_sheet},
    {"check", as_command<typed_check>},
    {"water", as_command<typed_water>},
    {"prick-out", as_command<typed_prick_out>},
    {"pot-on", as_command<typed_pot_on>},
    {"close", as_command<typed_close>},
    {"note", as_command<typed_note>},
    {"account", as_command<typed_account>},
    {"journal move", as_command<typed_move>},
    {"journal list", as_command<typed_journal_list>},
    {"journal show", as_command<typed_journal_show>},
    {"journal undo", as_command<typed_journal_undo>},
    {"journal export", as_command<typed_journal_export>},
    {"journal import", as_command<typed_journal_import>},
    {"journal salvage", as_command<typed_journal_salvage>},
});

} // namespace

std::optional<Command> typed_record(const TypedWords& typed) {
  for (const Reader& reader : readers) {
    if (reader.command == typed.command) {
      return reader.read(typed);
    }
  }
  return std::nullopt;
}

} // namespace nightsow::planner
