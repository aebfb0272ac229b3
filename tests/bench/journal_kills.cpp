// Kills a program that writes to a journal 1,000 times (or as often as is said), and tells whether
// an acknowledged entry was lost.

#include "planner/journal/journal.hpp"
#include "tests/support/invented_journal.hpp"
#include "tests/support/killed_writer.hpp"

#include <fmt/format.h>

#include <cstdlib>
#include <exception>
#include <filesystem>
#include <string>
#include <vector>

namespace {

using namespace nightsow;

int measure(const std::vector<std::string>& words) {
  if (words.empty()) {
    fmt::print("journal_kills FOLDER [TIMES]\n");
    return 2;
  }
  const std::filesystem::path file = std::filesystem::path(words.at(0)) / "killed.db";
  planner::Journal(file).add_sowing(support::invented_sowing());
  const int times = words.size() > 1 ? std::stoi(words.at(1)) : 1000;
  const support::KillReport report = support::kill_while_writing(file, times);
  fmt::print("journal: killed {} times while writing, {} entries acknowledged, {} kept: {}\n",
             report.rounds + (report.lost || report.invented ? 1 : 0),
             report.acknowledged,
             report.kept,
             report.lost       ? "an acknowledged entry was LOST"
             : report.invented ? "MORE than was written"
                               : "none lost, none half written");
  return report.lost || report.invented ? 1 : 0;
}

} // namespace

int main(int count, char** words) {
  try {
    return measure({words + 1, words + count});
  } catch (const std::exception& error) {
    fmt::print("{}\n", error.what());
    return 1;
  }
}
