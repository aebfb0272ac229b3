#pragma once

#include <cstddef>
#include <vector>

namespace nightsow {

/// Tells the system that these bytes, not yet touched, will all be used: it may then give them in
/// large pages, which spares most page faults (where they are dear, as on virtual machines, they
/// cost more than reading the text does). Only a hint: nothing changes but speed.
void expect_much(const void* memory, std::size_t bytes);

/// Reserves room for `count` more values at the end of a vector that will be filled.
template <class T> void reserve_much(std::vector<T>& values, std::size_t count) {
  values.reserve(values.size() + count);
  expect_much(values.data() + values.size(), count * sizeof(T));
}

} // namespace nightsow
