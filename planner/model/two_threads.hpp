#pragma once

#include <cstddef>
#include <future>
#include <thread>

namespace nightsow::planner {

/// Calls work(i) once for every i under `count`: the even ones here, the odd ones on a second
/// thread, where there are two and `count` is at least `worth_it`. Comes back when all is done;
/// throws what work throws. Requires: calls of two numbers do not get in each other's way, so that
/// two threads give the same as one.
template <class Work> void on_two_threads(std::size_t count, std::size_t worth_it, Work work) {
  const auto every = [&](std::size_t first, std::size_t step) {
    for (std::size_t i = first; i < count; i += step) {
      work(i);
    }
  };
  if (count < worth_it || std::thread::hardware_concurrency() < 2) {
    every(0, 1);
    return;
  }
  auto odd = std::async(std::launch::async, every, 1, 2);
  every(0, 2);
  odd.get();
}

} // namespace nightsow::planner
