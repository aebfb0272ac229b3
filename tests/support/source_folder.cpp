#include "tests/support/source_folder.hpp"

namespace nightsow::support {

std::filesystem::path source_folder() {
  return NIGHTSOW_SOURCE_DIR;
}

std::filesystem::path shared_weather() {
  return source_folder().parent_path() / "shared" / "weather";
}

} // namespace nightsow::support
