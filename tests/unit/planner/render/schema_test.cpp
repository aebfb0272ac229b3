#include "planner/render/to_json.hpp"
#include "tests/support/source_folder.hpp"
#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>

namespace nightsow::planner {
namespace {

using nlohmann::json;

json schema(const std::string& name) {
  std::ifstream file{support::source_folder() / "planner" / name};
  return json::parse(file);
}

/// As much of JSON Schema as our schemas use to say which names there are.
struct Checker {
  const json& root;
  std::vector<std::string> faults{};

  const json& resolved(const json& rule) const {
    return rule.contains("$ref")
               ? root.at(json::json_pointer(rule["$ref"].get<std::string>().substr(1)))
               : rule;
  }

  bool fits(const json& rule, const json& value) const {
    Checker trial{root};
    trial.check(rule, value, "");
    return trial.faults.empty();
  }

  static bool is_type(const json& type, const json& value) {
    if (type.is_array()) {
      return std::any_of(
          type.begin(), type.end(), [&](const json& one) { return is_type(one, value); });
    }
    const std::string name = type;
    return (name == "null" && value.is_null()) || (name == "object" && value.is_object()) ||
           (name == "array" && value.is_array()) || (name == "string" && value.is_string()) ||
           (name == "boolean" && value.is_boolean()) || (name == "number" && value.is_number()) ||
           (name == "integer" && value.is_number_integer());
  }

  void check_object(const json& rule, const json& value, const std::string& where) {
    for (const json& name : rule.value("required", json::array())) {
      if (!value.contains(name)) {
        faults.push_back(where + '/' + name.get<std::string>() + " is missing");
      }
    }
    for (const auto& [name, part] : value.items()) {
      if (rule.at("properties").contains(name)) {
        check(rule["properties"][name], part, where + '/' + name);
      } else {
        faults.push_back(where + '/' + name + " is not in the schema");
      }
    }
  }

  void check(const json& given, const json& value, const std::string& where) {
    const json& rule = resolved(given);
    if (rule.contains("anyOf")) {
      const json& any = rule["anyOf"];
      if (std::none_of(any.begin(), any.end(), [&](const json& one) { return fits(one, value); })) {
        faults.push_back(where + " fits none of its forms: " + value.dump());
      }
      return;
    }
    if (rule.contains("type") && !is_type(rule["type"], value)) {
      faults.push_back(where + " is of another type: " + value.dump());
      return;
    }
    if (rule.contains("enum") &&
        std::find(rule["enum"].begin(), rule["enum"].end(), value) == rule["enum"].end()) {
      faults.push_back(where + " is none of the words: " + value.dump());
    }
    if (value.is_object()) {
      check_object(rule, value, where);
    }
    for (std::size_t i = 0; value.is_array() && i < value.size(); ++i) {
      rule.contains("items") ? check(rule["items"], value[i], where + '/' + std::to_string(i))
                             : faults.push_back(where + " is not empty");
    }
  }
};

std::vector<std::string> faults(const std::string& name, const std::string& text) {
  const json rules = schema(name);
  Checker checker{rules};
  checker.check(rules, json::parse(text), "");
  return checker.faults;
}

// Every object of a schema is closed, so that a name added to an answer has to be added there.
std::vector<std::string> open_objects(const json& rule, const std::string& where) {
  std::vector<std::string> open;
  if (rule.is_object() && rule.value("type", json()) == "object" &&
      rule.value("additionalProperties", json(true)) != json(false)) {
    open.push_back(where);
  }
  if (rule.is_structured()) {
    for (const auto& [name, part] : rule.items()) {
      const std::vector<std::string> inner = open_objects(part, where + '/' + name);
      open.insert(open.end(), inner.begin(), inner.end());
    }
  }
  return open;
}

using None = std::vector<std::string>;

TEST(Schema, APlanHasEveryNameThatItsSchemaAsksForAndNoOther) {
  EXPECT_EQ(faults("plan.schema.json", to_json(small_plan())), None{});
}

TEST(Schema, NightsHaveEveryNameThatTheirSchemaAsksForAndNoOther) {
  EXPECT_EQ(faults("nights.schema.json", to_json(small_nights())), None{});
}

TEST(Schema, AnAnswerWithNothingInItFits) {
  EXPECT_EQ(faults("plan.schema.json", to_json(PlanAnswer{})), None{});
  EXPECT_EQ(faults("nights.schema.json", to_json(NightsAnswer{})), None{});
}

TEST(Schema, AReasonOfEveryCodeFits) {
  PlanAnswer plan = small_plan();
  NightsAnswer nights = small_nights();
  plan.warnings.clear();
  nights.warnings.clear();
  for (const Wording& wording : wordings()) {
    plan.warnings.push_back(complete_reason(wording));
    nights.warnings.push_back(complete_reason(wording));
  }
  EXPECT_EQ(faults("plan.schema.json", to_json(plan)), None{});
  EXPECT_EQ(faults("nights.schema.json", to_json(nights)), None{});
}

TEST(Schema, ANameThatItDoesNotKnowIsAFault) {
  json plan = json::parse(to_json(small_plan()));
  plan["sowings"][0]["horoscope"] = "good";
  plan["sowings"][0].erase("gate");
  EXPECT_EQ(faults("plan.schema.json", plan.dump()).size(), 2U);
}

TEST(Schema, EveryObjectIsClosed) {
  EXPECT_EQ(open_objects(schema("plan.schema.json"), ""), None{});
  EXPECT_EQ(open_objects(schema("nights.schema.json"), ""), None{});
}

} // namespace
} // namespace nightsow::planner
