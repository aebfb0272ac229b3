// How fast a daily CSV is read, beside counting its lines and beside a plain line-by-line reader of
// iostreams, all in one process on the same bytes. Prints ratios; nothing is asserted.

#include "climate/base/file.hpp"
#include "climate/readers/read_readings.hpp"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

namespace {

constexpr int repeats = 15;

template <class Work> double median_seconds(Work work) {
  std::vector<double> times;
  for (int i = 0; i < repeats; ++i) {
    const auto start = std::chrono::steady_clock::now();
    work();
    times.push_back(
        std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
  }
  std::nth_element(times.begin(), times.begin() + repeats / 2, times.end());
  return times[repeats / 2];
}

// What `wc -l` does: the whole file through a buffer, line feeds counted.
std::size_t count_lines(const char* file) {
  std::FILE* input = std::fopen(file, "rb");
  std::vector<char> buffer(1U << 18U);
  std::size_t lines = 0;
  while (const std::size_t got = std::fread(buffer.data(), 1, buffer.size(), input)) {
    const char* at = buffer.data();
    const char* end = at + got;
    while ((at = static_cast<const char*>(
                std::memchr(at, '\n', static_cast<std::size_t>(end - at)))) != nullptr) {
      ++lines;
      ++at;
    }
  }
  std::fclose(input);
  return lines;
}

// The reader most people write first.
std::size_t read_with_iostreams(const char* file) {
  std::ifstream input(file);
  std::string line;
  std::size_t rows = 0;
  double sum = 0.0;
  std::getline(input, line);
  while (std::getline(input, line)) {
    std::istringstream fields(line);
    std::string date;
    std::string night;
    std::string day;
    std::getline(fields, date, ',');
    std::getline(fields, night, ',');
    std::getline(fields, day, ',');
    sum += night.empty() ? 0.0 : std::stod(night);
    sum += day.empty() ? 0.0 : std::stod(day);
    ++rows;
  }
  return sum == 0.5 ? 0 : rows;
}

} // namespace

int main(int argc, char** argv) {
  if (argc != 2 && argc != 3) {
    std::fprintf(stderr, "usage: reading_speed FILE [SECONDS THAT PANDAS TOOK]\n");
    return 2;
  }
  const char* file = argv[1];
  std::size_t lines = 0;
  std::size_t rows = 0;
  std::size_t bytes = 0;
  const double counting = median_seconds([&] { lines = count_lines(file); });
  const double ours = median_seconds([&] {
    const std::string text = nightsow::read_whole_file(file, "the bench");
    bytes = text.size();
    rows = nightsow::climate::read_readings(text, file).rows.size();
  });
  std::printf("%s: %.1f MB, %zu lines, %zu rows read\n",
              std::strrchr(file, '/') + 1,
              static_cast<double>(bytes) / 1e6,
              lines,
              rows);
  std::printf("  %.0f MB/s, %.1f times as long as counting the lines\n",
              static_cast<double>(bytes) / ours / 1e6,
              ours / counting);
  if (std::string_view{file}.ends_with(".csv")) {
    const double plain = median_seconds([&] { (void)read_with_iostreams(file); });
    std::printf("  %.1f times as fast as a line-by-line iostream reader\n", plain / ours);
  }
  if (argc == 3) {
    std::printf("  %.1f times as fast as pandas\n", std::strtod(argv[2], nullptr) / ours);
  }
  return 0;
}
