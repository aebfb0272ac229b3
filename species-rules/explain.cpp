#include "species-rules/explain.hpp"

#include "species-rules/rule_fields.hpp"

#include <algorithm>
#include <string_view>
#include <utility>

namespace nightsow::species_rules {

namespace {

ExplainedValue explained(const Field& field, const Ground& ground) {
  ExplainedValue told;
  told.key = field.key;
  told.unit = field.unit;
  told.meaning = field.meaning;
  told.evidence = word_of(ground.evidence);
  told.source = ground.source;
  told.origin = word_of(ground.origin);
  return told;
}

class Explainer {
public:
  explicit Explainer(std::vector<ExplainedValue>& values) : values_(&values) {}

  void operator()(const Field& field, const std::optional<Estimate>& estimate) const {
    if (!estimate) {
      return;
    }
    ExplainedValue told = explained(field, estimate->ground);
    told.number = true;
    told.value = estimate->value;
    told.low = estimate->low;
    told.high = estimate->high;
    values_->push_back(std::move(told));
  }

  template <class E>
  void operator()(const Field& field, const std::optional<Choice<E>>& choice) const {
    if (choice) {
      add_words(field, word_of(choice->value), choice->ground);
    }
  }

  void operator()(const Field& field, const std::vector<Remark>& remarks) const {
    for (const Remark& remark : remarks) {
      add_words(field, remark.value, remark.ground);
    }
  }

private:
  void add_words(const Field& field, std::string_view words, const Ground& ground) const {
    ExplainedValue told = explained(field, ground);
    told.word = words;
    values_->push_back(std::move(told));
  }

  std::vector<ExplainedValue>* values_;
};

// Remarks stand beside those of the catalogue, and replace none but one that says the same.
void tell_otherwise(const std::vector<ExplainedValue>& known, ExplainedValue& value) {
  if (value.origin != word_of(Origin::grower)) {
    return;
  }
  const bool remark = value.key == "cautions" || value.key == "notes";
  const auto found = std::ranges::find_if(known, [&](const ExplainedValue& other) {
    return other.key == value.key && (!remark || other.word == value.word);
  });
  if (found != known.end()) {
    value.otherwise = OtherwiseValue{found->value,
                                     found->low,
                                     found->high,
                                     found->word,
                                     found->evidence,
                                     found->source,
                                     found->origin};
  }
}

} // namespace

std::vector<ExplainedValue> explain(const Rule& rule, const std::optional<Rule>& otherwise) {
  std::vector<ExplainedValue> values;
  for_each_field(rule, Explainer{values});
  if (otherwise) {
    std::vector<ExplainedValue> known;
    for_each_field(*otherwise, Explainer{known});
    for (ExplainedValue& value : values) {
      tell_otherwise(known, value);
    }
  }
  return values;
}

} // namespace nightsow::species_rules
