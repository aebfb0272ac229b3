#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace nightsow::planner {

/// What was typed, sorted to its options, before any of it is understood.
// There is one in a run: that each command's words stand together is worth its padding.
// NOLINTNEXTLINE(clang-analyzer-optin.performance.Padding)
struct TypedWords {
  using MaybeText = std::optional<std::string>;

  std::string command; ///< "plan", "rules show"; empty: only `show` is asked for
  std::string show;    ///< the text of --help or --version; empty: neither was asked for

  // Before or after any command.
  MaybeText garden;
  MaybeText today;
  MaybeText season;
  bool json = false;
  bool quiet = false;
  bool strict = false;
  bool fahrenheit = false;
  // plan
  std::vector<std::string> asked_packets;
  MaybeText only;
  bool why = false;
  bool work = false;
  bool save = false;
  MaybeText calendar;
  MaybeText csv; // of whatif, too
  MaybeText sheet;
  MaybeText labels;
  // nights
  std::vector<std::string> genera;
  bool past = false;
  bool exit_code = false;
  MaybeText limit;
  MaybeText day_limit;
  // whatif
  bool mirror = false;
  MaybeText warmer;
  MaybeText bench;
  MaybeText packets;
  std::vector<std::string> rules;
  MaybeText place; // and `latitude`, `longitude`, `elevation`
  MaybeText sweep;
  // climate, rules gaps, account
  bool all = false;
  // fetch; its place is start's
  bool nearest = false;
  MaybeText station;
  bool archive = false;
  bool forecast = false;
  bool power = false;
  MaybeText from;
  MaybeText base_url;
  MaybeText timeout;
  bool dry_run = false;
  // rules show, and `why`
  std::vector<std::string> taxon;
  // rules list; `family` and `in_hand` are rules gaps' too, with `all`
  std::vector<std::string> files;
  std::vector<std::string> text;
  MaybeText family;
  MaybeText start;
  MaybeText growth;
  MaybeText mat;
  MaybeText seed_size;
  MaybeText first_rest;
  MaybeText evidence_below;
  bool in_hand = false;
  MaybeText age;
  MaybeText stored;
  MaybeText tested;
  // sow, count and account; `mat` is also rules list's, `bench` also what-if's
  std::vector<std::string> entry_words;
  MaybeText on;
  MaybeText pots;
  MaybeText cover;
  MaybeText mix;
  MaybeText treatment;
  MaybeText trial;
  MaybeText arm;
  bool dry = false;
  MaybeText dead;
  MaybeText cause;
  MaybeText phase;
  bool as_sheet = false;
  bool anyway = false;
  // prick-out, pot-on, close
  MaybeText plants;
  MaybeText closed_why;
  // packet; `stored`, `tested`, `bench`, `from` are others' too
  MaybeText id;
  MaybeText harvested;
  MaybeText received;
  MaybeText wanted;
  MaybeText grown_in;
  MaybeText number;
  MaybeText provenance;
  MaybeText source;
  MaybeText notes;
  MaybeText purpose;
  bool irreplaceable = false;
  // check; its --of is `cause`
  MaybeText firm;
  MaybeText soft;
  MaybeText germinated;
  MaybeText at;
  // water, note, journal move
  bool first = false;
  bool dry_rest = false;
  bool even_so = false;
  bool rewet = false;
  MaybeText photo;
  MaybeText shade;
  MaybeText bag;
  // journal list
  MaybeText packet;
  MaybeText since;
  // journal undo, journal salvage, journal import, which also has `dry_run`; export has `csv`
  MaybeText entry;
  MaybeText into;
  bool partial = false;
  // learn, and `taxon`
  bool write = false;
  MaybeText share;
  std::vector<std::string> others;
  bool plan_trial = false;
  MaybeText seed_number;
  // start
  MaybeText folder;
  MaybeText latitude;
  MaybeText longitude;
  MaybeText readings;
  MaybeText name;
  MaybeText elevation;
  MaybeText time_zone;
  MaybeText column; // and `station`, as with fetch
};

/// Sorts the words behind the program's name.
/// Throws UsageError on a word that has no place, with the nearest right one; on an option without
/// its value or given twice; and when no command is there.
[[nodiscard]] TypedWords sort_words(std::span<const std::string> words);

} // namespace nightsow::planner
