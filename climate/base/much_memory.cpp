#include "climate/base/much_memory.hpp"

#include <sys/mman.h>

#include <cstdint>

namespace nightsow {

void expect_much(const void* memory, std::size_t bytes) {
  // A page of the larger size; below two of them there is nothing to gain.
  constexpr std::size_t large_page = std::size_t{1} << 21U;
  constexpr std::uintptr_t small_page = 4096;
  if (bytes < 2 * large_page) {
    return;
  }
  const auto begin = reinterpret_cast<std::uintptr_t>(memory);
  const std::uintptr_t first = (begin + small_page - 1) / small_page * small_page;
  const std::uintptr_t last = (begin + bytes) / small_page * small_page;
  // NOLINTNEXTLINE(performance-no-int-to-ptr): madvise wants the address of a page.
  (void)::madvise(reinterpret_cast<void*>(first), last - first, MADV_HUGEPAGE);
}

} // namespace nightsow
