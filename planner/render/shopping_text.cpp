#include "planner/render/figure_text.hpp"
#include "planner/render/plain_words.hpp"
#include "planner/render/shopping.hpp"
#include "planner/render/table.hpp"

#include <fmt/format.h>

#include <map>
#include <optional>

namespace nightsow::planner {

namespace {

using Kind = ShoppingItem::Kind;

void append(std::string& list, std::string_view part) {
  list += list.empty() ? "" : ", ";
  list += part;
}

std::string litres_text(const ShoppingItem& item, std::string_view what) {
  return fmt::format("{} l {}", number_text(item.amount), what);
}

std::string pots_text(const ShoppingItem& item) {
  std::string text =
      fmt::format("{} {}", whole_text(item.amount), plain_word("pot_depth", item.what));
  if (item.pot) {
    text += fmt::format(" ({} cm across, {} cm deep)",
                        number_text(item.pot->top_cm),
                        number_text(item.pot->deep_cm));
  }
  return text;
}

std::string list_of(const Shopping& shopping, Kind kind) {
  std::string list;
  for (const ShoppingItem& item : shopping.items) {
    if (item.kind != kind) {
      continue;
    }
    if (kind == Kind::pots) {
      append(list, pots_text(item));
    } else if (kind == Kind::labels) {
      append(list, whole_text(item.amount));
    } else {
      append(list, litres_text(item, fmt::format("for {}", plain_word("cover", item.what))));
    }
  }
  return list;
}

std::string mixes_text(const Shopping& shopping) {
  std::map<std::string, std::string> mixes;
  for (const ShoppingItem& item : shopping.items) {
    if (item.kind == Kind::mix) {
      append(mixes[item.mix], litres_text(item, item.what));
    }
  }
  std::string text;
  for (const auto& [name, list] : mixes) {
    const std::string lead = name.empty() ? "  Mix: " : fmt::format("  Mix \"{}\": ", name);
    text += paragraph(lead, list);
  }
  if (!text.empty()) {
    text += paragraph("  ",
                      fmt::format("Parts are measured loose; {} of their volume is lost when they "
                                  "are mixed.",
                                  percent_text(shopping.shrink)));
  }
  return text;
}

std::string line(std::string_view lead, const std::string& list) {
  return list.empty() ? "" : paragraph(lead, list);
}

} // namespace

std::string_view name_of(ShoppingItem::Kind kind) {
  switch (kind) {
  case Kind::mix:
    return "mix";
  case Kind::cover:
    return "cover";
  case Kind::pots:
    return "pots";
  case Kind::labels:
    break;
  }
  return "labels";
}

std::string shopping_text(const Shopping& shopping, const TextStyle& style) {
  if (shopping.items.empty() && shopping.not_counted.empty()) {
    return {};
  }
  std::string text = '\n' + heading_text("To have ready for these sowings", style);
  text += line("  Pots: ", list_of(shopping, Kind::pots));
  text += mixes_text(shopping);
  text += line("  Cover: ", list_of(shopping, Kind::cover));
  text += line("  Labels: ", list_of(shopping, Kind::labels));
  std::string uncounted;
  for (const std::string& packet : shopping.not_counted) {
    append(uncounted, packet);
  }
  return text + line("  Not in it, as their seeds are not counted: ", uncounted);
}

std::string free_days_text(const std::optional<FreeDaysAnswer>& free_days, const TextStyle& style) {
  if (!free_days || (free_days->left_over == 0 && !style.why)) {
    return {};
  }
  std::string text =
      '\n' + heading_text("On your free days", style) +
      paragraph("  ",
                fmt::format("{} laid, {} left over. As they lie they are worth about {} plants; "
                            "no other way is worth more than {} (a gap of {}).",
                            counted_text(free_days->sowings - free_days->left_over, "sowing"),
                            free_days->left_over,
                            number_text(free_days->value),
                            number_text(free_days->bound),
                            percent_text(free_days->gap)));
  std::string left_over;
  for (const std::string& packet : free_days->packets_left_over) {
    append(left_over, packet);
  }
  return text + line("  Left over: ", left_over);
}

std::string wish_text(const Sowing& sowing) {
  if (!sowing.wish) {
    return {};
  }
  const Wish& wish = *sowing.wish;
  std::string text;
  const auto add = [&](const std::optional<int>& seeds, std::string_view how_sure) {
    if (seeds) {
      append(text, fmt::format("{} ({})", counted_text(*seeds, "seed"), how_sure));
    }
  };
  add(wish.seeds_8_in_10, "8 in 10");
  add(wish.seeds_9_in_10, "9 in 10");
  add(wish.seeds_19_in_20, "19 in 20");
  if (text.empty()) {
    text = "no number of seeds that anybody would sow makes it likely this way";
  }
  return fmt::format("{}: {}", counted_text(wish.plants, "plant"), text);
}

} // namespace nightsow::planner
