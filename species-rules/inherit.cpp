#include "species-rules/inherit.hpp"

#include "species-rules/rule_fields.hpp"

#include <algorithm>
#include <any>
#include <cstddef>
#include <type_traits>
#include <vector>

namespace nightsow::species_rules {

namespace {

template <class Value>
void lay_over(std::optional<Value>& field, const std::optional<Value>& given) {
  if (given) {
    field = given;
  }
}

void lay_over(std::vector<Remark>& remarks, const std::vector<Remark>& given) {
  for (const Remark& remark : given) {
    const auto same = std::ranges::find(remarks, remark.value, &Remark::value);
    if (same == remarks.end()) {
      remarks.push_back(remark);
    } else {
      *same = remark;
    }
  }
}

// What stands in the child's file and could not be read hides what the parent says.
template <class Value>
void hide_if_unread(std::optional<Value>& field, const Rule& child, std::string_view key) {
  if (was_unread(child, key)) {
    field.reset();
  }
}

void hide_if_unread(const std::vector<Remark>& /*remarks*/,
                    const Rule& /*child*/,
                    std::string_view /*key*/) {}

template <class Value> bool is_given(const std::optional<Value>& field) {
  return field.has_value();
}

bool is_given(const std::vector<Remark>& remarks) {
  return !remarks.empty();
}

} // namespace

Rule inherit(Rule parent, const Rule& child) {
  if (child.only_own_notes) {
    parent.notes.clear();
    parent.only_own_notes = true;
  }
  // The table walks one rule at a time, always in the same order. So the child's members are noted
  // first; any_cast throws should the order ever differ.
  std::vector<std::any> given;
  for_each_field(
      child, [&given](const Field& /*field*/, const auto& member) { given.emplace_back(&member); });
  std::size_t next = 0;
  for_each_field(parent, [&](const Field& field, auto& member) {
    using Member = std::remove_reference_t<decltype(member)>;
    const Member& given_member = *std::any_cast<const Member*>(given.at(next));
    hide_if_unread(member, child, field.key);
    lay_over(member, given_member);
    if (is_given(given_member)) {
      std::erase(parent.unread, field.key);
    }
    ++next;
  });
  parent.unread.insert(parent.unread.end(), child.unread.begin(), child.unread.end());
  return parent;
}

bool was_unread(const Rule& rule, std::string_view key) {
  return std::ranges::find(rule.unread, key) != rule.unread.end();
}

bool gives_anything(const Rule& rule) {
  bool anything = rule.only_own_notes;
  for_each_field(rule, [&anything](const Field& /*field*/, const auto& member) {
    anything = anything || is_given(member);
  });
  return anything;
}

} // namespace nightsow::species_rules
