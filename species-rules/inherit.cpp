#include "species-rules/inherit.hpp"

#include "species-rules/rule_fields.hpp"

#include <algorithm>
#include <any>
#include <cstddef>
#include <type_traits>

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

} // namespace

Rule inherit(Rule parent, const Rule& child) {
  // The table walks one rule at a time, always in the same order. So the child's members are noted
  // first; any_cast throws should the order ever differ.
  std::vector<std::any> given;
  for_each_field(
      child, [&given](const Field& /*field*/, const auto& member) { given.emplace_back(&member); });
  std::size_t next = 0;
  for_each_field(parent, [&given, &next](const Field& /*field*/, auto& member) {
    using Member = std::remove_reference_t<decltype(member)>;
    lay_over(member, *std::any_cast<const Member*>(given.at(next)));
    ++next;
  });
  return parent;
}

bool gives_anything(const Rule& rule) {
  bool anything = false;
  for_each_field(rule, [&anything](const Field& /*field*/, const auto& member) {
    if constexpr (requires { member.has_value(); }) {
      anything = anything || member.has_value();
    } else {
      anything = anything || !member.empty();
    }
  });
  return anything;
}

} // namespace nightsow::species_rules
