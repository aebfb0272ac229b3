#include "planner/cli/typed_care.hpp"

#include "planner/cli/typed_entry_parts.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <array>
#include <span>
#include <string>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr NumberRange temperatures{-80.0, 60.0, "°C"};
constexpr NumberRange shares{0.0, 1.0, "share of the sun kept off"};

int maybe_count(std::string_view option, const TypedWords::MaybeText& text) {
  return text ? whole_number(option, *text, 0) : 0;
}

QuickPressTest press_test(const TypedWords& typed, std::string what) {
  if (typed.cause || typed.at) {
    wrong_use(typed.cause ? "--of" : "--at",
              "belongs to seed that was germinated",
              "",
              "type it with --germinated, or leave it out");
  }
  QuickPressTest test;
  test.what = std::move(what);
  test.firm = maybe_count("--firm", typed.firm);
  test.soft = maybe_count("--soft", typed.soft);
  test.on = maybe_date("--on", typed.on);
  if (test.firm + test.soft == 0) {
    wrong_use("nightsow check", "no seed was pressed", "--firm and --soft together 1 or more");
  }
  return test;
}

QuickGerminationTest germination_test(const TypedWords& typed, std::string what) {
  if (!typed.germinated || !typed.cause) {
    wrong_use("nightsow check",
              "a germination test tells how many came up of how many",
              "--germinated 14 --of 20",
              "add what is missing; nothing was written");
  }
  QuickGerminationTest test;
  test.what = std::move(what);
  test.sprouted = whole_number("--germinated", *typed.germinated, 0);
  test.tried = whole_number("--of", *typed.cause, 1);
  if (test.sprouted > test.tried) {
    wrong_use("--germinated", fmt::format("{} of {}", test.sprouted, test.tried), "not more");
  }
  if (typed.at) {
    test.at_c = typed_number("--at", *typed.at, temperatures);
  }
  test.on = maybe_date("--on", typed.on);
  return test;
}

std::optional<WateringKind> watering_kind_typed(const TypedWords& typed) {
  const std::array kinds{std::pair{typed.first, WateringKind::first_water},
                         std::pair{typed.dry_rest, WateringKind::dry_rest},
                         std::pair{typed.rewet, WateringKind::rewet}};
  std::optional<WateringKind> kind;
  for (const auto& [is_typed, of] : kinds) {
    if (is_typed && kind) {
      wrong_use("nightsow water", "two things at once", "one of --first, --dry-rest, --rewet");
    }
    kind = is_typed ? std::optional(of) : kind;
  }
  return kind;
}

PotCommand potting(const TypedWords& typed, std::string_view command, PottingKind kind) {
  QuickPotting potting;
  potting.what =
      name_typed(command, typed.entry_words, fmt::format("{} albuca --plants 7", command));
  potting.kind = kind;
  if (typed.plants) {
    potting.plants = whole_number("--plants", *typed.plants, 1);
  }
  potting.on = maybe_date("--on", typed.on);
  return {potting};
}

struct TypedMove {
  std::string_view option;
  const TypedWords::MaybeText* text;
  MoveKind kind;
};

} // namespace

CheckCommand typed_check(const TypedWords& typed) {
  std::string what =
      name_typed("nightsow check", typed.entry_words, "nightsow check 12 --firm 3 --soft 2");
  const bool pressed = typed.firm || typed.soft;
  const bool germinated = typed.germinated.has_value();
  if (pressed == germinated) {
    wrong_use("nightsow check",
              pressed ? "two tests at once" : "no test is told",
              "--firm and --soft for pressed seed, or --germinated and --of",
              "type one of them; nothing was written");
  }
  return pressed ? CheckCommand{press_test(typed, std::move(what))}
                 : CheckCommand{germination_test(typed, std::move(what))};
}

WaterCommand typed_water(const TypedWords& typed) {
  QuickWatering watering;
  watering.what = name_typed("nightsow water", typed.entry_words, "nightsow water all");
  watering.kind = watering_kind_typed(typed);
  watering.even_so = typed.even_so;
  if (typed.even_so && watering.kind != WateringKind::dry_rest) {
    wrong_use("--even-so", "belongs to --dry-rest", "", "type it with --dry-rest, or leave it out");
  }
  watering.on = maybe_date("--on", typed.on);
  return {watering};
}

PotCommand typed_prick_out(const TypedWords& typed) {
  return potting(typed, "nightsow prick-out", PottingKind::pricked_out);
}

PotCommand typed_pot_on(const TypedWords& typed) {
  return potting(typed, "nightsow pot-on", PottingKind::potted_on);
}

CloseCommand typed_close(const TypedWords& typed) {
  QuickClosing closing;
  closing.what =
      name_typed("nightsow close", typed.entry_words, "nightsow close 12 --why thrown-out");
  // In the order of the enumeration.
  if (typed.closed_why) {
    closing.why = one_of<ClosingReason>(
        "--why", typed.closed_why, {"thrown-out", "emptied", "given-away", "moved-on", "other"});
  }
  closing.on = maybe_date("--on", typed.on);
  return {closing};
}

// The words are quoted, so that they are the last word; with a photo they may be missing.
NoteCommand typed_note(const TypedWords& typed) {
  const auto& words = typed.entry_words;
  QuickNote note;
  note.photo = maybe_text("--photo", typed.photo);
  note.on = maybe_date("--on", typed.on);
  if (words.empty() && note.photo.empty()) {
    wrong_use("nightsow note",
              "there are no words",
              "such as: nightsow note 12 \"gnats about\"",
              "add them; nothing was written");
  }
  if (!words.empty()) {
    note.text = typed_text("nightsow note", words.back());
    const std::span<const std::string> what(words.data(), words.size() - 1);
    note.what = fmt::format("{}", fmt::join(what, " "));
  }
  return {note};
}

MoveCommand typed_move(const TypedWords& typed) {
  QuickMove move;
  move.what =
      name_typed("nightsow journal move", typed.entry_words, "nightsow journal move 12 --bag off");
  move.on = maybe_date("--on", typed.on);
  const std::array<TypedMove, 4> all{{{"--bench", &typed.bench, MoveKind::bench},
                                      {"--shade", &typed.shade, MoveKind::shade},
                                      {"--mat", &typed.mat, MoveKind::mat},
                                      {"--bag", &typed.bag, MoveKind::bag}}};
  for (const TypedMove& one : all) {
    if (*one.text && !move.to.empty()) {
      wrong_use(one.option, "is a second move", "one at a time", "type a command for each");
    }
    if (*one.text) {
      move.kind = one.kind;
      move.to = typed_text(one.option, **one.text);
    }
  }
  if (move.to.empty()) {
    wrong_use("nightsow journal move",
              "where to is not told",
              "one of --bench, --shade, --mat, --bag",
              "add it; nothing was written");
  }
  if (move.kind == MoveKind::shade) {
    static_cast<void>(typed_number("--shade", move.to, shares));
  }
  if (move.kind == MoveKind::bag) {
    static_cast<void>(
        typed_word("--bag", move.to, std::array<std::string, 2>{std::string("on"), "off"}));
  }
  return {move};
}

} // namespace nightsow::planner
