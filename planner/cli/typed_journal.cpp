#include "planner/cli/typed_journal.hpp"

#include "planner/cli/typed_values.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <charconv>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace nightsow::planner {

namespace {

// Nobody counts higher by eye; a longer number is a slip.
constexpr int most = 1'000'000;

int whole_number(std::string_view option, std::string_view text, int least) {
  int number = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (fault != std::errc{} || end != text.data() + text.size() || number < least || number > most) {
    wrong_use(option,
              shown(text) + " is no such number",
              fmt::format("a whole number from {} to {}", least, most));
  }
  return number;
}

std::string maybe_text(std::string_view option, const TypedWords::MaybeText& text) {
  return text ? typed_text(option, *text) : std::string{};
}

std::optional<Date> maybe_date(const TypedWords::MaybeText& text) {
  return text ? std::optional(typed_date("--on", *text)) : std::nullopt;
}

/// "Albuca spiralis 25", in two words or three.
std::pair<std::string, int> name_and_number(std::string_view command,
                                            const std::vector<std::string>& words,
                                            int least) {
  if (words.size() < 2) {
    wrong_use(command,
              "a name and a number are needed",
              fmt::format("such as: {} albuca 7", command),
              "add what is missing; nothing was written");
  }
  const std::span<const std::string> name(words.data(), words.size() - 1);
  return {typed_text(command, fmt::format("{}", fmt::join(name, " "))),
          whole_number(command, words.back(), least)};
}

template <typename Kind>
Kind one_of(std::string_view option,
            const TypedWords::MaybeText& text,
            const std::vector<std::string>& words) {
  return text ? static_cast<Kind>(typed_word(option, *text, words)) : Kind{};
}

} // namespace

SowCommand typed_sow(const TypedWords& typed) {
  const auto [what, seeds] = name_and_number("nightsow sow", typed.entry_words, 1);
  QuickSowing sowing;
  sowing.what = what;
  sowing.seeds = seeds;
  sowing.on = maybe_date(typed.on);
  if (typed.pots) {
    sowing.pots = whole_number("--pots", *typed.pots, 1);
  }
  sowing.dry = typed.dry;
  sowing.bench = maybe_text("--bench", typed.bench);
  sowing.mat = maybe_text("--mat", typed.mat);
  sowing.cover = maybe_text("--cover", typed.cover);
  sowing.mix = maybe_text("--mix", typed.mix);
  sowing.treatment = maybe_text("--treatment", typed.treatment);
  sowing.trial = maybe_text("--trial", typed.trial);
  sowing.arm = maybe_text("--arm", typed.arm);
  if (!sowing.arm.empty() && sowing.trial.empty()) {
    wrong_use("--arm", "belongs to a trial", "", "add --trial");
  }
  return {sowing};
}

CountCommand typed_count(const TypedWords& typed) {
  const auto [what, seen] = name_and_number("nightsow count", typed.entry_words, 0);
  QuickCount count;
  count.what = what;
  count.seen = seen;
  count.on = maybe_date(typed.on);
  if (typed.cause && !typed.dead) {
    wrong_use("--of", "is what seedlings died of", "", "add --dead");
  }
  if (typed.dead) {
    count.dead = whole_number("--dead", *typed.dead, 1);
  }
  // In the order of the two enumerations.
  count.why = one_of<DeathCause>(
      "--of",
      typed.cause,
      {"unknown", "damping-off", "gnats", "snails", "heat", "dry", "frost", "other"});
  count.phase =
      one_of<CountPhase>("--phase", typed.phase, {"emerged", "before-rest", "back-after-rest"});
  return {count};
}

JournalUndoCommand typed_journal_undo(const TypedWords& typed) {
  if (!typed.entry) {
    wrong_use("nightsow journal undo",
              "no entry is named",
              "its number",
              "`nightsow journal list` shows the numbers");
  }
  return {whole_number("nightsow journal undo", *typed.entry, 1)};
}

JournalExportCommand typed_journal_export(const TypedWords& typed) {
  return {maybe_text("--csv", typed.csv)};
}

JournalImportCommand typed_journal_import(const TypedWords& typed) {
  if (!typed.into) {
    wrong_use("nightsow journal import",
              "no file is named",
              "a table as `nightsow journal export` writes it",
              "add its name");
  }
  return {typed_text("FILE", *typed.into), typed.partial, typed.dry_run};
}

JournalSalvageCommand typed_journal_salvage(const TypedWords& typed) {
  if (!typed.into) {
    wrong_use("nightsow journal salvage", "no file is named", "the name of a new file", "add one");
  }
  return {typed_text("FILE", *typed.into)};
}

} // namespace nightsow::planner
