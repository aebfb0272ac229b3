#include "planner/render/shopping.hpp"

#include <nlohmann/json.hpp>

namespace nightsow::planner {

Json shopping_json(const Shopping& shopping) {
  Json items = Json::array();
  for (const ShoppingItem& item : shopping.items) {
    Json json;
    json["kind"] = name_of(item.kind);
    json["what"] = item.what;
    json["mix"] = json_text(item.mix);
    json["amount"] = json_number(item.amount);
    json["unit"] = item.unit;
    json["pot"] = nullptr;
    if (item.pot) {
      json["pot"] = {{"top_cm", json_number(item.pot->top_cm)},
                     {"base_cm", json_number(item.pot->base_cm)},
                     {"deep_cm", json_number(item.pot->deep_cm)}};
    }
    items.push_back(std::move(json));
  }
  return items;
}

Json amounts_json(const Shopping& shopping) {
  Json json;
  json["mix_shrink"] = json_number(shopping.shrink);
  json["not_counted"] = shopping.not_counted;
  return json;
}

Json free_days_json(const std::optional<FreeDaysAnswer>& free_days) {
  if (!free_days) {
    return {};
  }
  Json json;
  json["sowings"] = free_days->sowings;
  json["left_over"] = free_days->left_over;
  json["value"] = json_number(free_days->value);
  json["bound"] = json_number(free_days->bound);
  json["gap"] = json_number(free_days->gap);
  json["packets_left_over"] = free_days->packets_left_over;
  return json;
}

Json wish_json(const std::optional<Wish>& wish) {
  if (!wish) {
    return {};
  }
  Json json;
  json["plants"] = wish->plants;
  json["seeds_8_in_10"] = json_number(wish->seeds_8_in_10);
  json["seeds_9_in_10"] = json_number(wish->seeds_9_in_10);
  json["seeds_19_in_20"] = json_number(wish->seeds_19_in_20);
  json["chance"] = json_number(wish->chance);
  return json;
}

} // namespace nightsow::planner
