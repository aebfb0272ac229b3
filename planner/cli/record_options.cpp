#include "planner/cli/record_options.hpp"

#include "planner/cli/option_parts.hpp"

#include <CLI/CLI.hpp>

namespace nightsow::planner {

namespace {

void add_on(CLI::App& app, TypedWords& typed) {
  option(app, "--on", typed.on, "DATE", "the day (default: today)");
}

void add_packet(CLI::App& app, TypedWords& typed) {
  CLI::App& packet = command(app, "packet", "seed in hand: what is left, what comes and goes");
  packet.footer(command_footer("--garden my-garden packet list"));
  packet.require_subcommand(0, 1);
  CLI::App& list = command(packet, "list", "every packet: seeds left, age, test, what was sown");
  list.add_option("TEXT", typed.text, "a packet, or a part of a taxon")->type_name("");
  flag(list, "--all", typed.all, "also those of which nothing is left");
  list.footer(command_footer("--garden my-garden packet list albuca"));
  CLI::App& add = command(packet, "add", "a packet more: a row of packets.csv");
  add.add_option("TAXON SEEDS",
                 typed.entry_words,
                 "the plant's name, then the seeds: 40, ~40, 30-60 or 0.2g")
      ->type_name("");
  option(add, "--id", typed.id, "NAME", "what the packet is called (default: taxon and harvest)");
  option(add, "--harvested", typed.harvested, "DATE", "2025, 2025-11 or 2025-11-03");
  option(add, "--received", typed.received, "DATE", "the same");
  option(add, "--stored", typed.stored, "STORE", "shelf, fridge, freezer, or stages");
  option(add, "--tested", typed.tested, "TEST", "14/20 2026-01-10 15C");
  option(add, "--bench", typed.bench, "NAME", "where it is to be sown");
  option(add, "--wanted", typed.wanted, "N", "so many plants are wanted");
  option(add, "--grown-in", typed.grown_in, "TEXT", "where the parents grew");
  option(add, "--number", typed.number, "TEXT", "collection number");
  option(add, "--provenance", typed.provenance, "TEXT", "where the wild ancestors grew");
  option(add, "--source", typed.source, "TEXT", "who gave or sold it");
  option(add, "--notes", typed.notes, "TEXT", "other words");
  flag(add, "--irreplaceable", typed.irreplaceable, "never sown all at once");
  option(add,
         "--from",
         typed.from,
         "SOWING",
         "own harvest of its plants: keeps taxon, number and provenance");
  add.footer(command_footer("--garden my-garden packet add Albuca spiralis 40 --harvested 2025-11\n"
                            "  nightsow --garden my-garden packet add 60 --from 12"));
  CLI::App& undo =
      command(packet, "undo", "take a packet's row out of packets.csv again, if nothing uses it");
  undo.add_option("PACKET", typed.entry_words, "the packet's id")->type_name("");
  undo.footer(command_footer("--garden my-garden packet undo albuca-spiralis-2025-11"));
  CLI::App& use = command(packet, "use", "write down that seed was given away, tested or lost");
  use.add_option("PACKET SEEDS", typed.entry_words, "a packet or taxon, then the number of seeds")
      ->type_name("");
  option(use, "--for", typed.purpose, "WORD", "given, tested, lost or other");
  add_on(use, typed);
  use.footer(command_footer("--garden my-garden packet use albuca 5 --for given"));
}

void add_sow(CLI::App& app, TypedWords& typed) {
  CLI::App& sow = command(app, "sow", "write down that seed was sown");
  sow.add_option("WHAT SEEDS", typed.entry_words, "a packet or taxon, then the number of seeds")
      ->type_name("");
  option(sow, "--on", typed.on, "DATE", "the day of sowing (default: today)");
  option(sow, "--pots", typed.pots, "N", "in so many pots (default: 1)");
  option(sow, "--bench", typed.bench, "NAME", "where (default: the packet's bench, or the first)");
  option(sow, "--mat", typed.mat, "NAME", "on this heat mat");
  option(sow, "--cover", typed.cover, "TEXT", "what covers the seed: grit, sand, none");
  option(sow, "--mix", typed.mix, "TEXT", "the recipe of the mix");
  option(sow, "--treatment", typed.treatment, "TEXT", "soaked, smoked, filed");
  option(sow, "--trial", typed.trial, "NAME", "part of this trial");
  option(sow, "--arm", typed.arm, "NAME", "with --trial: this arm of it");
  flag(sow, "--dry", typed.dry, "not watered that day");
  flag(sow,
       "--anyway",
       typed.anyway,
       "although the packet holds fewer seeds; not for a packet that is not there");
  sow.footer(command_footer("--garden my-garden sow Albuca spiralis 25 --cover grit"));
}

void add_count(CLI::App& app, TypedWords& typed) {
  CLI::App& count = command(app, "count", "write down how many seedlings of a sowing are up");
  count
      .add_option("WHAT SEEN",
                  typed.entry_words,
                  "a sowing's number, packet or taxon, then seedlings alive")
      ->type_name("");
  option(count, "--on", typed.on, "DATE", "the day of the count (default: today)");
  option(count, "--dead", typed.dead, "N", "so many died since the count before");
  option(
      count, "--of", typed.cause, "CAUSE", "damping-off, gnats, snails, heat, dry, frost, other");
  option(count, "--phase", typed.phase, "WORD", "before-rest or back-after-rest");
  flag(count,
       "--sheet",
       typed.as_sheet,
       "print the sowings in tray order; or enter such a sheet from standard input");
  flag(count, "--dry-run", typed.dry_run, "with --sheet: only show what would be entered");
  count.footer(command_footer("--garden my-garden count albuca 7 --dead 2 --of damping-off\n"
                              "  nightsow --garden my-garden count --sheet < numbers.txt"));
}

void add_check(CLI::App& app, TypedWords& typed) {
  CLI::App& check = command(app, "check", "write down a test: pressed seed, or seed germinated");
  check
      .add_option("WHAT",
                  typed.entry_words,
                  "a sowing whose seed was dug out and pressed, or a packet that was tested")
      ->type_name("");
  option(check, "--firm", typed.firm, "N", "pressed seed that is firm, which is alive");
  option(check, "--soft", typed.soft, "N", "pressed seed that is soft, which is dead");
  option(check, "--germinated", typed.germinated, "N", "of a packet: so many came up");
  option(check, "--of", typed.cause, "N", "with --germinated: of so many tried");
  option(check, "--at", typed.at, "C", "with --germinated: at this temperature, °C");
  add_on(check, typed);
  check.footer(
      command_footer("--garden my-garden check 12 --firm 3 --soft 2\n"
                     "  nightsow --garden my-garden check albuca --germinated 14 --of 20"));
}

void add_water(CLI::App& app, TypedWords& typed) {
  CLI::App& water = command(app, "water", "write down that pots were watered, or left dry");
  water
      .add_option("WHAT", typed.entry_words, "a sowing's number, packet or taxon; a bench; or all")
      ->type_name("");
  flag(water, "--first", typed.first, "the first water of seed that was sown dry");
  flag(water, "--dry-rest", typed.dry_rest, "left dry from that day on");
  flag(water, "--even-so", typed.even_so, "with --dry-rest: though its kind is not dried off");
  flag(water, "--rewet", typed.rewet, "wet again after a dry rest");
  add_on(water, typed);
  water.footer(command_footer("--garden my-garden water all\n"
                              "  nightsow --garden my-garden water 12 --dry-rest"));
}

void add_potting(
    CLI::App& app, TypedWords& typed, const char* name, const char* what, const char* such_as) {
  CLI::App& potting = command(app, name, what);
  potting.add_option("WHAT", typed.entry_words, "a sowing's number, packet or taxon")
      ->type_name("");
  option(potting, "--plants", typed.plants, "N", "so many");
  add_on(potting, typed);
  potting.footer(command_footer(such_as));
}

void add_close(CLI::App& app, TypedWords& typed) {
  CLI::App& close = command(app, "close", "write down that a sowing is looked after no longer");
  close.add_option("WHAT", typed.entry_words, "a sowing's number, packet or taxon")->type_name("");
  option(close,
         "--why",
         typed.closed_why,
         "WORD",
         "thrown-out, emptied, given-away, moved-on (the plants) or other");
  add_on(close, typed);
  close.footer(command_footer("--garden my-garden close 12 --why thrown-out"));
}

void add_note(CLI::App& app, TypedWords& typed) {
  CLI::App& note = command(app, "note", "write down words or a photo");
  note.add_option("WHAT TEXT",
                  typed.entry_words,
                  "a sowing or packet (or nothing: the garden), then the words, in quotes")
      ->type_name("");
  option(note, "--photo", typed.photo, "FILE", "a photo, by its path from the garden's folder");
  add_on(note, typed);
  note.footer(command_footer("--garden my-garden note 12 \"gnats about\" --photo photos/12.jpg"));
}

void add_account(CLI::App& app, TypedWords& typed) {
  CLI::App& account =
      command(app, "account", "where the seeds of a sowing are that are not up, and what to do");
  account
      .add_option("SOWING",
                  typed.entry_words,
                  "a sowing's number, packet or taxon (default: all that are open)")
      ->type_name("");
  flag(account, "--all", typed.all, "closed sowings, too: all up, or all their seasons over");
  account.footer(command_footer("--garden my-garden account albuca"));
}

void add_journal_move(CLI::App& journal, TypedWords& typed) {
  CLI::App& move = command(journal, "move", "write down that pots were moved or shaded");
  move.add_option("WHAT", typed.entry_words, "a sowing's number, packet or taxon; a bench; or all")
      ->type_name("");
  option(move, "--bench", typed.bench, "NAME", "to this bench");
  option(move, "--shade", typed.shade, "SHARE", "under shade that keeps off 0 to 1 of the sun");
  option(move, "--mat", typed.mat, "NAME|off", "onto this heat mat, or off it");
  option(move, "--bag", typed.bag, "on|off", "a bag or dome over the pot");
  add_on(move, typed);
  move.footer(command_footer("--garden my-garden journal move 12 --bag off"));
}

void add_journal_files(CLI::App& journal, TypedWords& typed) {
  CLI::App& exported =
      command(journal, "export", "all entries as a table for spreadsheets (CSV), or with --json");
  option(exported, "--csv", typed.csv, "FILE", "write it to a file (default: standard output)");
  exported.footer(command_footer("--garden my-garden journal export --csv journal.csv"));
  CLI::App& imported =
      command(journal, "import", "write down the entries of such a table, each once");
  option(imported, "FILE", typed.into, "", "the table; `journal export` shows its columns");
  flag(imported, "--partial", typed.partial, "the sound rows although others are faulty");
  flag(imported, "--dry-run", typed.dry_run, "only tell what would be written down");
  imported.footer(command_footer("--garden my-garden journal import counts.csv"));
  CLI::App& salvage =
      command(journal, "salvage", "copy what can be read of a damaged journal into a new file");
  option(salvage, "FILE", typed.into, "", "the new file");
  salvage.footer(command_footer("--garden my-garden journal salvage my-garden/saved.db"));
}

void add_journal(CLI::App& app, TypedWords& typed) {
  CLI::App& journal = command(app, "journal", "what was written down, and how to undo it");
  journal.footer(command_footer("--garden my-garden journal list"));
  journal.require_subcommand(0, 1);
  CLI::App& list = command(journal, "list", "every entry, undone ones too");
  option(list, "--packet", typed.packet, "PACKET", "of this packet and what was sown of it");
  option(list, "--since", typed.since, "DATE", "of this day and later ones");
  list.footer(command_footer("--garden my-garden journal list --since 2026-03-01"));
  CLI::App& show = command(journal, "show", "one sowing with all that belongs to it, or one entry");
  show.add_option("WHAT", typed.entry_words, "an entry's number, a packet or taxon")->type_name("");
  show.footer(command_footer("--garden my-garden journal show albuca"));
  CLI::App& undo = command(journal, "undo", "an entry counts no more; undo its undoing to go back");
  option(undo, "ENTRY", typed.entry, "", "the number of the entry, or several as 12-20");
  undo.footer(command_footer("--garden my-garden journal undo 12"));
  add_journal_move(journal, typed);
  add_journal_files(journal, typed);
}

} // namespace

void add_record_commands(CLI::App& app, TypedWords& typed) {
  add_packet(app, typed);
  add_sow(app, typed);
  add_count(app, typed);
  add_check(app, typed);
  add_water(app, typed);
  add_potting(app,
              typed,
              "prick-out",
              "write down that seedlings were pricked out",
              "--garden my-garden prick-out albuca --plants 7");
  add_potting(app,
              typed,
              "pot-on",
              "write down that plants were given larger pots",
              "--garden my-garden pot-on 12 --plants 5");
  add_close(app, typed);
  add_note(app, typed);
  add_account(app, typed);
  add_journal(app, typed);
}

} // namespace nightsow::planner
