#pragma once

#include <chrono>
#include <filesystem>
#include <string>

namespace nightsow::planner {

/// How a command ended that could be carried out; main alone turns it into an exit code.
enum class Ending {
  answered,
  not_all_open, ///< only where --exit-code asks for it
  faults_found, ///< a check was asked for, and has something to tell
  refused,      ///< --strict, and not all that was read is as it should be
};

/// What a command has to say.
struct Outcome {
  std::string answer; ///< for stdout, whole; empty unless answered
  std::string notes;  ///< for stderr, lines ended
  Ending ending = Ending::answered;
};

/// What a command may know of the world around it, looked up once, in main.
struct Surroundings {
  std::chrono::system_clock::time_point now;
  bool colour = false;                  ///< stdout is a terminal and nobody asked for plain text
  std::filesystem::path cache_folder{}; ///< of this person on this machine; need not be there
};

} // namespace nightsow::planner
