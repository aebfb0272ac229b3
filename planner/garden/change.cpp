#include "planner/garden/change.hpp"

#include <algorithm>

namespace nightsow::planner {

namespace {

constexpr Days half_a_year{mirror_days};

void shift(Date& day) {
  day += half_a_year;
}

void shift(std::optional<Date>& day) {
  if (day) {
    shift(*day);
  }
}

void shift(std::optional<DateRange>& range) {
  if (range) {
    shift(range->first);
    shift(range->last);
  }
}

void shift(Packet& packet) {
  shift(packet.harvested);
  shift(packet.received);
  for (StoreStage& stage : packet.stored) {
    shift(stage.until);
  }
  if (packet.tested) {
    shift(packet.tested->on);
  }
}

void shift(climate::DailySeries& series) {
  climate::DailySeries shifted{series.first() + half_a_year, series.size()};
  for (std::size_t i = 0; i < series.size(); ++i) {
    shifted.set_night(i, series.night_c()[i], series.night_mark()[i]);
    shifted.set_day(i, series.day_c()[i]);
  }
  series = shifted;
}

void shift(std::vector<climate::Finding>& findings) {
  for (climate::Finding& finding : findings) {
    shift(finding.date);
  }
}

// Six months, since a value for a month cannot move by 183 days.
void shift(MonthlyNormals& normals) {
  for (std::vector<double>* months : {&normals.night_c, &normals.day_c}) {
    std::rotate(months->begin(),
                months->begin() + static_cast<std::ptrdiff_t>(months->size() / 2),
                months->end());
  }
}

void shift(Garden& garden) {
  garden.latitude = -garden.latitude;
  for (AwayPeriod& away : garden.away) {
    shift(away.from);
    shift(away.to);
  }
  for (Bench& bench : garden.benches) {
    shift(bench.from);
    shift(bench.to);
  }
  if (garden.monthly_normals) {
    shift(*garden.monthly_normals);
  }
}

void make(const Mirror& /*mirror*/, LoadedGarden& garden) {
  shift(garden.garden);
  shift(garden.today);
  shift(garden.station);
  shift(garden.forecast);
  for (auto& [bench, logger] : garden.bench_loggers) {
    shift(logger);
  }
  shift(garden.findings);
  for (auto& [bench, doubts] : garden.logger_doubts) {
    shift(doubts.findings);
  }
  for (Packet& packet : garden.packets) {
    shift(packet);
  }
}

float warmer_by(float reading_c, CelsiusDelta by) {
  return static_cast<float>(static_cast<double>(reading_c) + by.kelvin());
}

void warm(climate::DailySeries& series, CelsiusDelta by) {
  for (std::size_t i = 0; i < series.size(); ++i) {
    series.set_night(i, warmer_by(series.night_c()[i], by), series.night_mark()[i]);
    series.set_day(i, warmer_by(series.day_c()[i], by));
  }
}

// Benches grow warmer with their station. Findings stay: they tell what the files hold.
void make(const Warmer& warmer, LoadedGarden& garden) {
  warm(garden.station, warmer.by);
  warm(garden.forecast, warmer.by);
  for (auto& [bench, logger] : garden.bench_loggers) {
    warm(logger, warmer.by);
  }
  if (garden.garden.monthly_normals) {
    MonthlyNormals& normals = *garden.garden.monthly_normals;
    for (std::vector<double>* months : {&normals.night_c, &normals.day_c}) {
      for (double& month_c : *months) {
        month_c += warmer.by.kelvin();
      }
    }
  }
}

} // namespace

LoadedGarden apply(Change change, LoadedGarden garden) {
  std::visit([&](const auto& kind) { make(kind, garden); }, change);
  return garden;
}

} // namespace nightsow::planner
