#include "tests/support/killed_writer.hpp"

#include "planner/journal/journal.hpp"
#include "planner/journal/read_records.hpp"
#include "tests/support/invented_journal.hpp"

#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <cstddef>
#include <system_error>

namespace nightsow::support {

namespace {

// Between 1 and 13 ms, another each time: about as long as it takes to open and write a few.
constexpr int first_kill_us = 1000;
constexpr int kill_step_us = 7919;
constexpr int kill_range_us = 12000;

[[noreturn]] void write_until_killed(const std::filesystem::path& file, int acknowledge_to) {
  try {
    planner::Journal journal(file);
    for (;;) {
      journal.add_count(invented_count(1, "2026-04-01", 1));
      if (::write(acknowledge_to, "x", 1) != 1) {
        ::_exit(1);
      }
    }
  } catch (...) {
    ::_exit(2);
  }
}

// How many entries were acknowledged.
int one_round(const std::filesystem::path& file, int after_us) {
  std::array<int, 2> ends{};
  if (::pipe(ends.data()) != 0) {
    throw std::system_error(errno, std::generic_category(), "pipe");
  }
  const pid_t child = ::fork();
  if (child < 0) {
    throw std::system_error(errno, std::generic_category(), "fork");
  }
  if (child == 0) {
    ::close(ends[0]);
    write_until_killed(file, ends[1]);
  }
  ::close(ends[1]);
  ::usleep(static_cast<useconds_t>(after_us));
  ::kill(child, SIGKILL);
  int acknowledged = 0;
  char one = 0;
  while (::read(ends[0], &one, 1) == 1) {
    ++acknowledged;
  }
  ::close(ends[0]);
  ::waitpid(child, nullptr, 0);
  return acknowledged;
}

} // namespace

KillReport kill_while_writing(const std::filesystem::path& journal, int rounds) {
  KillReport report;
  for (int round = 0; round < rounds; ++round) {
    const int acknowledged =
        one_round(journal, first_kill_us + (round * kill_step_us) % kill_range_us);
    const auto there = static_cast<int>(planner::read_records(journal).counts.size());
    report.lost = there < report.kept + acknowledged;
    report.invented = there > report.kept + acknowledged + 1;
    report.acknowledged += acknowledged;
    report.kept = there;
    if (report.lost || report.invented) {
      return report;
    }
    ++report.rounds;
  }
  return report;
}

} // namespace nightsow::support
