#include "planner/cli/command_options.hpp"

#include "planner/cli/option_parts.hpp"
#include "planner/cli/record_options.hpp"
#include "planner/version.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <string>
#include <string_view>

namespace nightsow::planner {

namespace {

void add_common(CLI::App& app, TypedWords& typed) {
  option(app, "--garden", typed.garden, "DIR", "the garden's folder (default: the present folder)");
  option(app, "--today", typed.today, "DATE", "answer as if it were this day, YYYY-MM-DD");
  option(
      app, "--season", typed.season, "YEAR", "the season asked about (default: the one of today)");
  flag(app, "--json", typed.json, "print JSON instead of text, temperatures in °C");
  flag(app, "--quiet", typed.quiet, "no notes and warnings on stderr");
  flag(app, "--strict", typed.strict, "no answer, and exit code 3, when rows or cells are faulty");
  flag(app, "--fahrenheit", typed.fahrenheit, "show temperatures in °F (options stay in °C)");
}

void add_plan(CLI::App& app, TypedWords& typed) {
  CLI::App& plan =
      command(app, "plan", "this season: what to sow, when to water first, how, what waits");
  plan.add_option(
          "PACKET", typed.asked_packets, "only these: ids, or how their names begin (default: all)")
      ->type_name("");
  option(plan, "--only", typed.only, "cool|hot", "only what starts in cool nights, or in hot ones");
  flag(plan, "--why", typed.why, "every reason, not only the first of each line");
  flag(plan, "--work", typed.work, "trays, and the season's work on them day by day");
  flag(plan, "--save", typed.save, "keep the plan in plans/, to be compared with later on");
  option(plan, "--calendar", typed.calendar, "FILE", "write that work as an iCalendar file");
  option(plan, "--csv", typed.csv, "FILE", "write the plan as a table, a row a packet");
  option(plan, "--sheet", typed.sheet, "FILE", "write a sheet to print and pencil counts in");
  option(plan, "--labels", typed.labels, "FILE", "write labels to print, one a pot, as HTML");
  plan.footer(command_footer("--garden my-garden plan --only cool\n"
                             "  nightsow --garden my-garden plan --why Albuca"));
}

void add_today(CLI::App& app) {
  CLI::App& today = command(app, "today", "what to do now, in ten lines, with frost and heat");
  today.footer(command_footer("--garden my-garden today"));
}

void add_nights(CLI::App& app, TypedWords& typed) {
  CLI::App& nights =
      command(app, "nights", "are nights cool enough yet; if not, when, and how sure");
  nights.add_option("GENUS", typed.genera, "genera to ask about (default: those in hand)")
      ->type_name("");
  flag(nights, "--past", typed.past, "the dates of every past season instead");
  option(nights, "--limit", typed.limit, "C", "with --past: a night limit of your own, in °C");
  option(nights, "--day-limit", typed.day_limit, "C", "with --limit: a limit for days, in °C");
  flag(nights, "--exit-code", typed.exit_code, "end with exit code 1 unless all are open");
  nights.footer(
      command_footer("--garden my-garden nights Bulbine Lachenalia\n"
                     "  nightsow --garden my-garden nights --past --limit 13 --day-limit 25"));
}

void add_whatif(CLI::App& app, TypedWords& typed) {
  CLI::App& whatif = command(app, "whatif", "the plan under a change beside the plan as it is");
  flag(whatif,
       "--mirror",
       typed.mirror,
       "as if the garden lay as far on the other side of the equator");
  option(whatif,
         "--warmer",
         typed.warmer,
         "K",
         "as if all nights and days were K °C warmer; -10 to 10");
  option(whatif, "--bench", typed.bench, "NAME", "as if all packets stood on that bench");
  option(whatif, "--packets", typed.packets, "FILE", "the packets of another packets.csv");
  whatif
      .add_option("--rule",
                  typed.rules,
                  "as if a rule said so: a field of rules show --why; may be repeated")
      ->type_name("TAXON.FIELD=VALUE")
      ->expected(1)
      ->take_all();
  option(whatif,
         "--place",
         typed.place,
         "GARDEN|FILE",
         "as if in another garden's place, or at a weather file's station");
  option(whatif, "--latitude", typed.latitude, "DEG", "with --place FILE that does not tell it");
  option(whatif, "--longitude", typed.longitude, "DEG", "the same");
  option(whatif, "--elevation", typed.elevation, "M", "the same, metres above the sea");
  option(whatif,
         "--sweep",
         typed.sweep,
         "warmer=A..B",
         "one row for each kelvin from A to B; warmer=A..B:0.5 in other steps");
  option(
      whatif, "--csv", typed.csv, "FILE", "write a table for a spreadsheet; - for standard output");
  whatif.footer(
      command_footer("--garden my-garden whatif --warmer 2 --bench \"cold frame\"\n"
                     "  nightsow --garden my-garden whatif --sweep warmer=-2..4\n"
                     "  nightsow --garden my-garden whatif --rule Bulbine.night_limit_c=11"));
}

void add_climate(CLI::App& app, TypedWords& typed) {
  CLI::App& climate =
      command(app, "climate", "what the readings are, what is wrong with them, the year's course");
  flag(climate, "--all", typed.all, "every finding, not only the ten worst");
  climate.footer(command_footer("--garden my-garden climate --all"));
}

void add_backtest(CLI::App& app) {
  CLI::App& backtest =
      command(app, "backtest", "how good the outlook of nights would have been in past years here");
  backtest.footer(command_footer("--garden my-garden backtest"));
}

void add_fetch(CLI::App& app, TypedWords& typed) {
  CLI::App& fetch = command(app, "fetch", "bring readings from an open archive into readings/");
  flag(fetch,
       "--nearest",
       typed.nearest,
       "the best station near the garden (what is done if left out)");
  option(
      fetch, "--station", typed.station, "ID", "this station of GHCN-Daily, such as USW00094728");
  flag(fetch, "--archive", typed.archive, "the past at the garden as models have it (reanalysis)");
  flag(fetch, "--forecast", typed.forecast, "the next days at the garden");
  flag(fetch, "--power", typed.power, "the past at the garden by NASA POWER, coarser");
  option(
      fetch, "--from", typed.from, "DATE", "with --archive, --power: the first day; or 30 years");
  flag(fetch, "--dry-run", typed.dry_run, "weigh stations and show addresses, fetch no readings");
  option(fetch, "--latitude", typed.latitude, "DEG", "a place instead of garden.json's");
  option(fetch, "--longitude", typed.longitude, "DEG", "degrees, west negative");
  option(fetch, "--elevation", typed.elevation, "M", "metres above the sea");
  option(fetch, "--timeout", typed.timeout, "S", "seconds for one attempt, 1 to 3600; or 600");
  option(fetch, "--base-url", typed.base_url, "URL", "a copy of the archive elsewhere")
      ->envname("NIGHTSOW_BASE_URL");
  fetch.footer(command_footer("--garden my-garden fetch --nearest --dry-run"));
}

void add_rules_list(CLI::App& rules, TypedWords& typed) {
  CLI::App& list = command(rules, "list", "all rules in one table, or those that fit");
  list.add_option("TEXT", typed.text, "a part of a name, old names too")->type_name("");
  option(list, "--family", typed.family, "FAMILY", "of this family");
  option(list, "--start", typed.start, "cool|hot|any|at_once", "what starts the seed");
  option(list, "--growth", typed.growth, "WORD", "winter, summer or opportunist");
  option(list, "--mat", typed.mat, "WORD", "a heat mat is needed, helpful, useless or harmful");
  option(list, "--seed-size", typed.seed_size, "WORD", "dust, fine, small, medium, large, fleshy");
  option(list, "--first-rest", typed.first_rest, "WORD", "dry, barely_moist, none or dies");
  option(list,
         "--evidence-below",
         typed.evidence_below,
         "WORD",
         "over three weighty values on weaker ground than, say, grower");
  flag(list, "--in-hand", typed.in_hand, "kinds of the garden's packets only");
  list.footer(command_footer("rules list --family Iridaceae --start cool\n"
                             "  nightsow --garden my-garden rules list --in-hand"));
}

void add_rules_gaps(CLI::App& rules, TypedWords& typed) {
  CLI::App& gaps =
      command(rules, "gaps", "where least is known of what decides most, and what to try");
  option(gaps, "--family", typed.family, "FAMILY", "of this family");
  flag(gaps, "--in-hand", typed.in_hand, "kinds of the garden's packets only");
  flag(gaps, "--all", typed.all, "every field and value, not only the worst");
  gaps.footer(command_footer("rules gaps --family Aizoaceae"));
}

void add_rules(CLI::App& app, TypedWords& typed) {
  CLI::App& rules = command(app, "rules", "what is known of each genus, and where from");
  rules.footer(command_footer("rules show Bulbine annua"));
  rules.require_subcommand(0, 1);
  add_rules_list(rules, typed);
  CLI::App& show = command(rules, "show", "what is known of a genus or species, as on a packet");
  show.add_option("TAXON", typed.taxon, "a genus or species, in one word or several")
      ->type_name("");
  flag(show, "--why", typed.why, "every value with its range, evidence, source and origin");
  option(show, "--age", typed.age, "AGE", "18mo, 2y, 90d, 6w: seed of that age, alive and ripe?");
  option(show, "--stored", typed.stored, "STORE", "with --age: where, as in packets.csv");
  option(show, "--tested", typed.tested, "COUNT", "with --age: a germination test, as 14/20");
  show.footer(command_footer("rules show Bulbine annua --why\n"
                             "  nightsow rules show Albuca --age 18mo --stored fridge"));
  CLI::App& check = command(rules, "check", "every fault of a file of rules, and where it stands");
  check.add_option("FILE", typed.files, "files as a garden's rules/ holds them")->type_name("");
  check.footer(command_footer("rules check my-garden/rules/bulbine.json"));
  CLI::App& exported =
      command(rules, "export", "a whole rule as a file to edit and put into the garden's rules/");
  exported.add_option("TAXON", typed.taxon, "a genus or species, in one word or several")
      ->type_name("");
  exported.footer(command_footer("rules export Bulbine annua"));
  add_rules_gaps(rules, typed);
  CLI::App& schema = command(rules, "schema", "the form of a file of rules, as JSON Schema");
  schema.footer(command_footer("rules schema > rule.schema.json"));
}

void add_learn(CLI::App& app, TypedWords& typed) {
  CLI::App& learn = command(app, "learn", "what your record says: shares, times, trials, limits");
  learn.add_option("TAXON", typed.taxon, "families, genera or species (default: all sown)")
      ->type_name("");
  flag(learn, "--write", typed.write, "write the rules that the record justifies into rules/");
  option(
      learn, "--share", typed.share, "FILE", "write counts to give away, without place or names");
  learn.add_option("--import", typed.others, "counts that others gave; may be repeated")
      ->type_name("FILE")
      ->expected(1)
      ->take_all();
  flag(learn, "--trial", typed.plan_trial, "next year's trial with the seed in hand, instead");
  option(learn, "--seed", typed.seed_number, "N", "with --trial: draw the pots by this number");
  learn.footer(command_footer("--garden my-garden learn Lachenalia\n"
                              "  nightsow --garden my-garden learn --trial --seed 7"));
}

void add_review(CLI::App& app) {
  CLI::App& review = command(app, "review", "a season in one page: promised, came, failed, learnt");
  review.footer(command_footer("--garden my-garden review --season 2025"));
}

void add_start(CLI::App& app, TypedWords& typed) {
  CLI::App& start = command(app, "start", "make a garden folder from a weather file");
  option(start, "DIR", typed.folder, "", "the folder to make (default: the present folder)");
  option(start, "--latitude", typed.latitude, "DEG", "degrees, south negative; needed");
  option(start, "--longitude", typed.longitude, "DEG", "degrees, west negative; needed");
  option(start, "--readings", typed.readings, "FILE", "daily or hourly temperatures; needed");
  option(start, "--name", typed.name, "TEXT", "what the garden is called");
  option(start, "--elevation", typed.elevation, "M", "metres above the sea");
  option(start, "--time-zone", typed.time_zone, "ZONE", "such as Africa/Johannesburg");
  option(start, "--station", typed.station, "NAME", "of several places in the file");
  option(start, "--column", typed.column, "NAME", "of several thermometers in the file");
  start.footer(command_footer("start my-garden --latitude -33.1 --longitude 19.2 "
                              "--readings station.csv"));
}

} // namespace

void add_commands(CLI::App& app, TypedWords& typed) {
  app.name("nightsow");
  app.set_help_flag("-h,--help", "show this and end");
  app.set_version_flag(
      "--version", fmt::format("nightsow {}", version), "show the version and end");
  app.get_formatter()->column_width(26);
  app.get_formatter()->label("SUBCOMMAND", "COMMAND");
  app.footer(example("start my-garden --latitude -33.1 --longitude 19.2 --readings station.csv\n"
                     "  nightsow --garden my-garden plan") +
             "\nnightsow COMMAND --help says more about a command.");
  // Before the commands are added: they take this setting over from here.
  app.fallthrough();
  // Words left over are reported by ourselves, with the nearest right one.
  app.allow_extras();
  app.require_subcommand(0, 1);
  add_common(app, typed);
  add_plan(app, typed);
  add_today(app);
  add_nights(app, typed);
  add_whatif(app, typed);
  add_climate(app, typed);
  add_backtest(app);
  add_fetch(app, typed);
  add_rules(app, typed);
  add_record_commands(app, typed);
  add_learn(app, typed);
  add_review(app);
  add_start(app, typed);
}

} // namespace nightsow::planner
