#include "planner/journal/schema.hpp"

#include <array>

namespace nightsow::planner {

namespace {

// Days are YYYY-MM-DD. Each kind of entry has a table beside `entries`; the kind stands in both, so
// that no entry can have the values of another kind. The names of the checks are what a person
// reads when one fails. Empty text stands for "not written down".
constexpr std::string_view first_version = R"sql(
PRAGMA application_id = 1853058935;

CREATE TABLE entries (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  kind TEXT NOT NULL,
  on_day TEXT NOT NULL,
  entered_at TEXT NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%SZ', 'now')),
  UNIQUE (id, kind),
  CONSTRAINT the_kind_is_one_of_those_known CHECK (kind IN ('sowing', 'count', 'press_test',
    'germination_test', 'watering', 'move', 'note', 'undo')),
  CONSTRAINT the_day_is_a_day_of_the_calendar CHECK (date(on_day) IS on_day)
) STRICT;

CREATE TABLE sowings (
  entry INTEGER PRIMARY KEY,
  kind TEXT NOT NULL DEFAULT 'sowing' CHECK (kind = 'sowing'),
  packet_id TEXT NOT NULL,
  taxon TEXT NOT NULL,
  first_water TEXT,
  seeds INTEGER NOT NULL,
  pots INTEGER NOT NULL,
  bench TEXT NOT NULL,
  mat TEXT NOT NULL,
  cover TEXT NOT NULL,
  mix TEXT NOT NULL,
  treatment TEXT NOT NULL,
  trial TEXT NOT NULL,
  arm TEXT NOT NULL,
  packet TEXT NOT NULL,
  FOREIGN KEY (entry, kind) REFERENCES entries (id, kind),
  CONSTRAINT the_taxon_is_named CHECK (taxon <> ''),
  CONSTRAINT the_first_water_is_a_day_of_the_calendar CHECK (date(first_water) IS first_water),
  CONSTRAINT seeds_are_1_or_more CHECK (seeds >= 1),
  CONSTRAINT pots_are_1_or_more CHECK (pots >= 1),
  CONSTRAINT an_arm_belongs_to_a_trial CHECK (arm = '' OR trial <> ''),
  CONSTRAINT the_copy_of_the_packet_is_JSON CHECK (json_valid(packet))
) STRICT;

CREATE TABLE counts (
  entry INTEGER PRIMARY KEY,
  kind TEXT NOT NULL DEFAULT 'count' CHECK (kind = 'count'),
  sowing INTEGER NOT NULL REFERENCES sowings (entry),
  seen INTEGER NOT NULL,
  dead INTEGER NOT NULL,
  why TEXT NOT NULL,
  phase TEXT NOT NULL,
  FOREIGN KEY (entry, kind) REFERENCES entries (id, kind),
  CONSTRAINT an_entry_comes_after_its_sowing CHECK (sowing < entry),
  CONSTRAINT seedlings_seen_are_0_or_more CHECK (seen >= 0),
  CONSTRAINT dead_seedlings_are_0_or_more CHECK (dead >= 0),
  CONSTRAINT the_cause_is_one_of_those_known CHECK (why IN ('unknown', 'damping_off', 'gnats',
    'snails', 'heat', 'dry', 'frost', 'other')),
  CONSTRAINT the_phase_is_one_of_those_known CHECK (phase IN ('emerged', 'before_rest',
    'back_after_rest'))
) STRICT;

CREATE TABLE press_tests (
  entry INTEGER PRIMARY KEY,
  kind TEXT NOT NULL DEFAULT 'press_test' CHECK (kind = 'press_test'),
  sowing INTEGER NOT NULL REFERENCES sowings (entry),
  firm INTEGER NOT NULL,
  soft INTEGER NOT NULL,
  FOREIGN KEY (entry, kind) REFERENCES entries (id, kind),
  CONSTRAINT an_entry_comes_after_its_sowing CHECK (sowing < entry),
  CONSTRAINT firm_and_soft_are_0_or_more CHECK (firm >= 0 AND soft >= 0),
  CONSTRAINT firm_and_soft_together_are_1_or_more CHECK (firm + soft >= 1)
) STRICT;

CREATE TABLE germination_tests (
  entry INTEGER PRIMARY KEY,
  kind TEXT NOT NULL DEFAULT 'germination_test' CHECK (kind = 'germination_test'),
  packet_id TEXT NOT NULL,
  sprouted INTEGER NOT NULL,
  tried INTEGER NOT NULL,
  at_c REAL,
  FOREIGN KEY (entry, kind) REFERENCES entries (id, kind),
  CONSTRAINT the_packet_is_named CHECK (packet_id <> ''),
  CONSTRAINT seeds_tried_are_1_or_more CHECK (tried >= 1),
  CONSTRAINT seeds_up_are_0_to_those_tried CHECK (sprouted BETWEEN 0 AND tried),
  CONSTRAINT the_temperature_is_minus_80_to_60_C CHECK (at_c BETWEEN -80 AND 60)
) STRICT;

CREATE TABLE waterings (
  entry INTEGER PRIMARY KEY,
  kind TEXT NOT NULL DEFAULT 'watering' CHECK (kind = 'watering'),
  sowing INTEGER NOT NULL REFERENCES sowings (entry),
  what TEXT NOT NULL,
  FOREIGN KEY (entry, kind) REFERENCES entries (id, kind),
  CONSTRAINT an_entry_comes_after_its_sowing CHECK (sowing < entry),
  CONSTRAINT the_watering_is_one_of_those_known CHECK (what IN ('first_water', 'watered',
    'dry_rest', 'rewet'))
) STRICT;

CREATE TABLE moves (
  entry INTEGER PRIMARY KEY,
  kind TEXT NOT NULL DEFAULT 'move' CHECK (kind = 'move'),
  sowing INTEGER NOT NULL REFERENCES sowings (entry),
  what TEXT NOT NULL,
  target TEXT NOT NULL,
  FOREIGN KEY (entry, kind) REFERENCES entries (id, kind),
  CONSTRAINT an_entry_comes_after_its_sowing CHECK (sowing < entry),
  CONSTRAINT the_move_is_one_of_those_known CHECK (what IN ('bench', 'shade', 'mat', 'bag')),
  CONSTRAINT where_to_is_named CHECK (target <> ''),
  CONSTRAINT shade_is_0_to_1 CHECK (what <> 'shade' OR (target GLOB '[0-9]*'
    AND CAST(target AS REAL) BETWEEN 0 AND 1)),
  CONSTRAINT a_bag_is_on_or_off CHECK (what <> 'bag' OR target IN ('on', 'off'))
) STRICT;

CREATE TABLE notes (
  entry INTEGER PRIMARY KEY,
  kind TEXT NOT NULL DEFAULT 'note' CHECK (kind = 'note'),
  sowing INTEGER REFERENCES sowings (entry),
  packet_id TEXT NOT NULL,
  text TEXT NOT NULL,
  photo TEXT NOT NULL,
  FOREIGN KEY (entry, kind) REFERENCES entries (id, kind),
  CONSTRAINT an_entry_comes_after_its_sowing CHECK (sowing < entry),
  CONSTRAINT a_note_has_a_text_or_a_photo CHECK (text <> '' OR photo <> '')
) STRICT;

CREATE TABLE undos (
  entry INTEGER PRIMARY KEY,
  kind TEXT NOT NULL DEFAULT 'undo' CHECK (kind = 'undo'),
  undone INTEGER NOT NULL REFERENCES entries (id),
  FOREIGN KEY (entry, kind) REFERENCES entries (id, kind),
  CONSTRAINT only_an_earlier_entry_is_undone CHECK (undone < entry)
) STRICT;

CREATE INDEX undos_by_entry_undone ON undos (undone);

CREATE TRIGGER entries_no_update BEFORE UPDATE ON entries
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER entries_no_delete BEFORE DELETE ON entries
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER sowings_no_update BEFORE UPDATE ON sowings
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER sowings_no_delete BEFORE DELETE ON sowings
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER counts_no_update BEFORE UPDATE ON counts
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER counts_no_delete BEFORE DELETE ON counts
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER press_tests_no_update BEFORE UPDATE ON press_tests
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER press_tests_no_delete BEFORE DELETE ON press_tests
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER germination_tests_no_update BEFORE UPDATE ON germination_tests
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER germination_tests_no_delete BEFORE DELETE ON germination_tests
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER waterings_no_update BEFORE UPDATE ON waterings
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER waterings_no_delete BEFORE DELETE ON waterings
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER moves_no_update BEFORE UPDATE ON moves
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER moves_no_delete BEFORE DELETE ON moves
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER notes_no_update BEFORE UPDATE ON notes
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER notes_no_delete BEFORE DELETE ON notes
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER undos_no_update BEFORE UPDATE ON undos
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER undos_no_delete BEFORE DELETE ON undos
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
)sql";

// The list of kinds is a check of `entries`, which no ALTER TABLE can change. Its text alone is
// changed, as https://www.sqlite.org/lang_altertable.html (section 8) has it for what leaves the
// rows as they are; the version of the schema goes up with the new table.
constexpr std::string_view second_version = R"sql(
CREATE TABLE packet_uses (
  entry INTEGER PRIMARY KEY,
  kind TEXT NOT NULL DEFAULT 'packet_use' CHECK (kind = 'packet_use'),
  packet_id TEXT NOT NULL,
  seeds INTEGER NOT NULL,
  what_for TEXT NOT NULL,
  FOREIGN KEY (entry, kind) REFERENCES entries (id, kind),
  CONSTRAINT the_packet_is_named CHECK (packet_id <> ''),
  CONSTRAINT seeds_are_1_or_more CHECK (seeds >= 1),
  CONSTRAINT the_use_is_one_of_those_known CHECK (what_for IN ('given', 'tested', 'lost', 'other'))
) STRICT;

CREATE TRIGGER packet_uses_no_update BEFORE UPDATE ON packet_uses
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER packet_uses_no_delete BEFORE DELETE ON packet_uses
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;

PRAGMA writable_schema = ON;
UPDATE sqlite_master SET sql = replace(sql, '''undo'')', '''undo'', ''packet_use'')')
  WHERE type = 'table' AND name = 'entries';
PRAGMA writable_schema = RESET;
)sql";

// The list of kinds is widened as before.
constexpr std::string_view third_version = R"sql(
CREATE TABLE pottings (
  entry INTEGER PRIMARY KEY,
  kind TEXT NOT NULL DEFAULT 'potting' CHECK (kind = 'potting'),
  sowing INTEGER NOT NULL REFERENCES sowings (entry),
  what TEXT NOT NULL,
  plants INTEGER,
  FOREIGN KEY (entry, kind) REFERENCES entries (id, kind),
  CONSTRAINT an_entry_comes_after_its_sowing CHECK (sowing < entry),
  CONSTRAINT the_potting_is_one_of_those_known CHECK (what IN ('pricked_out', 'potted_on')),
  CONSTRAINT plants_are_1_or_more CHECK (plants >= 1)
) STRICT;

CREATE TABLE closings (
  entry INTEGER PRIMARY KEY,
  kind TEXT NOT NULL DEFAULT 'closing' CHECK (kind = 'closing'),
  sowing INTEGER NOT NULL REFERENCES sowings (entry),
  why TEXT NOT NULL,
  FOREIGN KEY (entry, kind) REFERENCES entries (id, kind),
  CONSTRAINT an_entry_comes_after_its_sowing CHECK (sowing < entry),
  CONSTRAINT why_it_is_closed_is_one_of_those_known CHECK (why IN ('thrown_out', 'emptied',
    'given_away', 'moved_on', 'other'))
) STRICT;

CREATE TRIGGER pottings_no_update BEFORE UPDATE ON pottings
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER pottings_no_delete BEFORE DELETE ON pottings
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER closings_no_update BEFORE UPDATE ON closings
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;
CREATE TRIGGER closings_no_delete BEFORE DELETE ON closings
  BEGIN SELECT RAISE(ABORT, 'an entry is undone, never changed'); END;

PRAGMA writable_schema = ON;
UPDATE sqlite_master SET sql = replace(
  sql, '''packet_use'')', '''packet_use'', ''potting'', ''closing'')')
  WHERE type = 'table' AND name = 'entries';
PRAGMA writable_schema = RESET;
)sql";

constexpr auto migrations =
    std::to_array<Migration>({{1, first_version}, {2, second_version}, {3, third_version}});

} // namespace

std::span<const Migration> journal_migrations() {
  return migrations;
}

int journal_version() {
  return migrations.back().to;
}

} // namespace nightsow::planner
