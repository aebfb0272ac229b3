#include "planner/journal/entry_columns.hpp"

#include <array>

namespace nightsow::planner {

namespace {

using Kinds = unsigned;

constexpr Kinds only(EntryKind kind) {
  return 1U << static_cast<unsigned>(kind);
}

constexpr Kinds sowings = only(EntryKind::sowing);
constexpr Kinds counts = only(EntryKind::count);
constexpr Kinds press_tests = only(EntryKind::press_test);
constexpr Kinds germination_tests = only(EntryKind::germination_test);
constexpr Kinds waterings = only(EntryKind::watering);
constexpr Kinds moves = only(EntryKind::move);
constexpr Kinds notes = only(EntryKind::note);
constexpr Kinds undos = only(EntryKind::undo);
constexpr Kinds uses = only(EntryKind::packet_use);
constexpr Kinds pottings = only(EntryKind::potting);
constexpr Kinds closings = only(EntryKind::closing);
constexpr Kinds belongings = counts | press_tests | waterings | moves | notes | pottings | closings;
constexpr Kinds all = ~0U;

constexpr auto names = std::to_array<ColumnName>({
    {"entry", "no number id key entryno entrynumber"},
    {"what", "kind type event"},
    {"day", "date on when"},
    {"sowing", "sowingno sowingnumber pot sown"},
    {"packet", "packetid packetno lot"},
    {"taxon", "species name plant plantname latinname taxa"},
    {"seeds", "seed noofseeds numberofseeds seedssown"},
    {"pots", "noofpots numberofpots"},
    {"first_water", "watered firstwatered wateredon"},
    {"bench", "benchname place"},
    {"mat", "heatmat"},
    {"cover", "coveredwith"},
    {"mix", "recipe substrate soil"},
    {"treatment", "treated"},
    {"trial", "experiment"},
    {"arm", ""},
    {"seen", "up alive seedlings count seedlingsup counted"},
    {"dead", "died deaths"},
    {"cause", "why of diedof causeofdeath"},
    {"phase", "stage"},
    {"firm", ""},
    {"soft", ""},
    {"sprouted", "germinated"},
    {"tried", "outof"},
    {"at_c", "at temperature temperaturec"},
    {"water", "watering"},
    {"move", "moved"},
    {"to", "movedto target"},
    {"potting", "potted repotted repotting"},
    {"plants", "plantspotted"},
    {"closed", "closing stopped"},
    {"used_for", "use usedfor purpose"},
    {"text", "note notes remark remarks comment comments"},
    {"photo", "picture image"},
    {"undoes", "undo"},
    {"undone", ""},
    {"entered_at", "entered"},
    {"harvested", "harvest"},
    {"stored", "storage store"},
    {"packet_copy", ""},
});

// In the order of the columns.
constexpr auto kinds = std::to_array<Kinds>({
    all,
    all,
    all,
    belongings,
    sowings | germination_tests | uses | belongings,
    sowings | belongings,
    sowings | uses,
    sowings,
    sowings,
    sowings,
    sowings,
    sowings,
    sowings,
    sowings,
    sowings,
    sowings,
    counts,
    counts,
    counts,
    counts,
    press_tests,
    press_tests,
    germination_tests,
    germination_tests,
    germination_tests,
    waterings,
    moves,
    moves,
    pottings,
    pottings,
    closings,
    uses,
    notes,
    notes,
    undos,
    all,
    all,
    sowings,
    sowings,
    sowings,
});

static_assert(names.size() == entry_column_count && kinds.size() == entry_column_count);

} // namespace

std::span<const ColumnName> entry_column_names() {
  return names;
}

std::string_view name_of(EntryColumn column) {
  return names.at(static_cast<std::size_t>(column)).name;
}

bool goes_with(EntryColumn column, EntryKind kind) {
  return (kinds.at(static_cast<std::size_t>(column)) & only(kind)) != 0;
}

bool tells(EntryColumn column, EntryKind kind) {
  return kinds.at(static_cast<std::size_t>(column)) == only(kind);
}

} // namespace nightsow::planner
