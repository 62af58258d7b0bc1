#include "holdback/physics/span.hpp"

#include <cmath>

#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using testing::infinity;
using testing::near;

// The catenary y = a cosh(x/a), a = T/w: its sag is a (cosh(L/2a) − 1). Exact, by hand.
TEST(sag_tension, is_close_to_the_catenary_when_the_sag_is_small) {
  for (const double sag_share : {0.001, 0.005, 0.0125}) {
    const double span = 3;
    const double weight = 0.4;
    const double a = sag_tension(weight, span, sag_share * span) / weight;
    EXPECT_NEAR(a * (std::cosh(span / 2 / a) - 1) / span, sag_share, 1e-3 * sag_share);
  }
}

TEST(sag_tension, is_without_end_where_nothing_may_sag) { EXPECT_EQ(sag_tension(1, 2, 0), infinity); }

TEST(web_weight, of_a_square_metre_of_paper) { EXPECT_TRUE(near(web_weight(0.080, 1), 0.784532)); }

}  // namespace
}  // namespace holdback::physics
