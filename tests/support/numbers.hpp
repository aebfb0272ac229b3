#pragma once

namespace nightsow::support {

/// A fixed stream of small whole numbers (Lehmer, multiplier 48271), for made-up cases that are the
/// same on every machine. Requires: seed not 0.
class Numbers {
public:
  explicit Numbers(unsigned seed) : state_(seed) {}

  /// 0 to `most`, both included.
  int upto(int most) {
    state_ = state_ * 48271ULL % 2147483647ULL;
    return static_cast<int>(state_ % static_cast<unsigned long long>(most + 1));
  }

private:
  unsigned long long state_;
};

} // namespace nightsow::support
