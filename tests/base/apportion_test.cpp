#include "base/apportion.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

#include <catch2/catch.hpp>

using namespace bulbwright;

namespace {

std::vector<int> shared(int count, const std::vector<double>& shares) {
  return apportion(count, shares);
}

}  // namespace

TEST_CASE("whole pieces go by largest remainders", "[apportion]") {
  CHECK(shared(10, {2, 1}) == std::vector{7, 3});       // 6.67 and 3.33
  CHECK(shared(7, {1, 1, 1}) == std::vector{3, 2, 2});  // ties by order
  CHECK(shared(12, {0.5, 0.25, 0.25}) == std::vector{6, 3, 3});
  CHECK(shared(0, {2, 1}) == std::vector{0, 0});
}

TEST_CASE("a small share gets one while they last", "[apportion]") {
  CHECK(shared(5, {10, 1}) == std::vector{4, 1});
  CHECK(shared(5, {1, 10}) == std::vector{1, 4});
  CHECK(shared(4, {1000, 1, 1, 1}) == std::vector{1, 1, 1, 1});
  CHECK(shared(2, {1000, 1, 1}) == std::vector{1, 1, 0});
  CHECK(shared(1, {1, 1}) == std::vector{1, 0});
}

TEST_CASE("nothing is lost, none goes without while there are enough, and large shares are fair",
          "[apportion][law]") {
  for (int count = 0; count <= 60; ++count) {
    for (const std::vector<double>& shares :
         {std::vector<double>{3}, {2, 1}, {1, 1, 1}, {10, 1, 5}, {0.001, 1000}, {7, 5, 3, 2, 1}}) {
      const std::vector<int> counts = shared(count, shares);
      const double all = std::accumulate(shares.begin(), shares.end(), 0.0);
      CAPTURE(count, shares, counts);
      CHECK(std::accumulate(counts.begin(), counts.end(), 0) == count);
      const int kinds = static_cast<int>(shares.size());
      CHECK((*std::min_element(counts.begin(), counts.end()) > 0) == (count >= kinds));
      // The quota rule holds where every kind is due one at least.
      const double least = *std::min_element(shares.begin(), shares.end());
      if (count * least < all) continue;
      for (std::size_t i = 0; i < shares.size(); ++i) {
        CHECK(std::abs(counts[i] - count * shares[i] / all) < 1.0);
      }
    }
  }
}
