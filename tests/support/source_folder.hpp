#pragma once

#include <filesystem>

namespace nightsow::support {

/// The project's own folder, for tests that read what stands in it. Known to one file only, so that
/// a checkout elsewhere compiles the tests no other way.
[[nodiscard]] std::filesystem::path source_folder();

/// The folder of open weather series and samples beside the project; it may be missing.
[[nodiscard]] std::filesystem::path shared_weather();

} // namespace nightsow::support
