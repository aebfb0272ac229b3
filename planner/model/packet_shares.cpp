#include "planner/model/packet_shares.hpp"

#include "species-rules/germination_evidence.hpp"
#include "species-rules/ripeness.hpp"
#include "species-rules/viability.hpp"

#include <algorithm>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr int month_days = 30;

double germination_of(double germination_share) {
  return species_rules::germination_of_living(
             {germination_share, germination_share, germination_share, {}})
      .share;
}

} // namespace

PacketShares::PacketShares(Packet packet, const species_rules::Rule& rule, Date today)
    : packet_(std::move(packet)), rule_(&rule), today_(today) {}

const std::vector<Kept>& PacketShares::kept_by(Date day) {
  const auto [entry, fresh] = kept_.try_emplace(day);
  if (fresh && packet_.harvested) {
    const Date harvested = std::min(packet_.harvested->middle(), day);
    for (const auto& stages : store_histories(packet_, harvested)) {
      entry->second.push_back(kept(stages, harvested, day, species_rules::storage_of(*rule_)));
    }
  }
  return entry->second;
}

const ToldByTest& PacketShares::told_by_test(Date day) {
  const int months = days_between(today_, day) / month_days;
  const auto [entry, fresh] = told_.try_emplace(months);
  const Date then = today_ + Days{months * month_days};
  const std::optional<UsableTest> test = fresh ? usable_test(packet_, then) : std::nullopt;
  if (test) {
    const Date harvested = packet_.harvested ? std::min(packet_.harvested->last, then) : test->on;
    const auto [known, unread] = readings_.try_emplace({test->on, harvested});
    if (unread) {
      known->second = reading_of_test(packet_, *rule_, *test, then);
    }
    entry->second = planner::told_by_test(packet_, *rule_, *test, known->second, then);
  }
  return entry->second;
}

SeedShares PacketShares::on(Date day, const species_rules::SeedParameters& drawn) {
  const Date then = std::max(day, today_);
  const std::vector<Kept>& ways = kept_by(then);
  double alive = fresh_share_alive;
  double alive_and_ripe = alive;
  if (!ways.empty()) {
    alive = 0.0;
    alive_and_ripe = 0.0;
    for (const Kept& kept : ways) {
      const double share = species_rules::share_alive(drawn.half_life_years, kept.room_years) /
                           static_cast<double>(ways.size());
      alive += share;
      alive_and_ripe +=
          share * species_rules::ripe_share(kept.ripened_c_d(drawn.after_ripening_base_c),
                                            drawn.after_ripening_c_d);
    }
  }
  const ToldByTest& told = told_by_test(then);
  const double ripe_by_age = alive > 0.0 ? alive_and_ripe / alive : 0.0;
  const double ripe = species_rules::ripe_or_needs_none(ripe_by_age, told.needs_no_ripening);
  const double germination =
      std::min(1.0, germination_of(drawn.germination_share) * told.germination);
  return {std::min(1.0, alive * told.alive) * germination, std::min(1.0, ripe)};
}

} // namespace nightsow::planner
