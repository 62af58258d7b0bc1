#include "holdback/physics/conduction.hpp"

#include <numbers>
#include <vector>

#include "unit/physics/numbers.hpp"

namespace holdback::physics {
namespace {

using testing::derivative;
using testing::infinity;
using testing::near;

// Cast iron of published check H-10.
constexpr double k = 48, density = 7200, specific_heat = 460;
const double alpha = diffusivity(k, density, specific_heat);
const double iron = effusivity(k, density, specific_heat);
constexpr double flux = 1.2e6, stop = 4;

TEST(diffusivity, falls_with_what_must_be_warmed) {
  EXPECT_TRUE(near(diffusivity(36, 7085, 502), 1.01218e-5, 1e-5));  // computed: H-11; the printed digits are a row
  EXPECT_EQ(diffusivity(48, 0, 460), infinity);
  EXPECT_EQ(diffusivity(0, 0, 0), 0);
}

TEST(effusivity, is_conductivity_over_the_root_of_diffusivity) {
  EXPECT_TRUE(near(effusivity(k, density, specific_heat), k / std::sqrt(alpha)));
  EXPECT_EQ(effusivity(-1, 1, 1), 0);
}

TEST(fourier_number, is_one_when_the_way_is_the_root_of_diffusion) {
  EXPECT_TRUE(near(fourier_number(1e-5, 10, 0.01), 1));
  EXPECT_EQ(fourier_number(1e-5, 10, 0), infinity);
  EXPECT_EQ(fourier_number(1e-5, 0, 0), 0);
}

TEST(heat_depth, is_where_a_slab_begins_to_feel_its_middle) {
  const double depth = heat_depth(alpha, stop);
  EXPECT_EQ(fourier_number(alpha, stop, depth), 0.25);
  const double half_space = half_space_flux(flux, 0, stop, k, alpha);
  const double slab = slab_flux_rise(flux, 0, stop, k, alpha, depth);
  EXPECT_GT(slab, half_space);
  EXPECT_LT(slab, 1.004 * half_space);
}

TEST(half_space_step, solves_the_equation_of_heat) {
  const double x = 0.01, t = 20, d = 1e-4;
  const auto at = [](double depth, double time) { return half_space_step(100, depth, time, alpha); };
  const double rate = derivative([&](double time) { return at(x, time); }, t);
  const double curvature = (at(x + d, t) - 2 * at(x, t) + at(x - d, t)) / (d * d);
  EXPECT_TRUE(near(rate, alpha * curvature, 1e-4));
  EXPECT_EQ(at(0, t), 100);
  EXPECT_EQ(at(x, 0), 0);
}

TEST(half_space_flux, has_the_flux_at_its_surface_and_the_equation_inside) {
  const double x = 0.01, t = 20, d = 1e-4;
  const auto at = [](double depth, double time) { return half_space_flux(flux, depth, time, k, alpha); };
  const double rate = derivative([&](double time) { return at(x, time); }, t);
  const double curvature = (at(x + d, t) - 2 * at(x, t) + at(x - d, t)) / (d * d);
  EXPECT_TRUE(near(rate, alpha * curvature, 1e-4));
  EXPECT_TRUE(near((at(0, t) - at(1e-7, t)) / 1e-7, flux / k, 1e-4));
  EXPECT_EQ(at(x, 0), 0);
}

TEST(stop_surface_rise, is_duhamel_s_sum_of_small_changes_of_flux) {
  // Independent of the closed form: the flux as a staircase, each step a constant flux from its own time on.
  const double time = 3;
  const int steps = 20000;
  double rise = half_space_flux(flux, 0, time, k, alpha);
  for (int i = 0; i < steps; ++i) {
    const double at = (i + 0.5) * time / steps;
    rise -= half_space_flux(flux * time / stop / steps, 0, time - at, k, alpha);
  }
  EXPECT_TRUE(near(stop_surface_rise(flux, stop, time, iron), rise, 1e-6));
  EXPECT_EQ(stop_surface_rise(flux, stop, 9, iron), stop_surface_rise(flux, stop, stop, iron));
  EXPECT_EQ(stop_surface_rise(flux, stop, -1, iron), 0);
  EXPECT_EQ(stop_surface_rise(flux, stop, 1, 0), infinity);
}

TEST(stop_surface_peak, is_the_highest_of_all_times) {
  double highest = 0;
  for (double time = 0; time <= stop; time += 1e-4)
    highest = std::max(highest, stop_surface_rise(flux, stop, time, iron));
  EXPECT_TRUE(near(stop_surface_peak(flux, stop, iron), highest, 1e-8));
}

/// Surface of a slab by finite volumes, trapezoidal in time: even cells, the flux into the first, nothing out of the
/// last. Order 2 in both.
double finite_volumes(double thickness, double until, bool falling, int cells) {
  const double dx = thickness / cells;
  const int steps = 4 * cells;
  const double dt = until / steps;
  const double r = alpha * dt / (dx * dx) / 2;
  const auto n = static_cast<std::size_t>(cells);
  std::vector<double> t(n, 0.0), b(n), upper(n);
  const auto flux_at = [&](double time) { return falling ? flux * (1 - time / stop) : flux; };
  for (int s = 0; s < steps; ++s) {
    for (std::size_t i = 0; i < n; ++i) {
      const double left = i > 0 ? t[i - 1] - t[i] : 0;
      const double right = i + 1 < n ? t[i + 1] - t[i] : 0;
      b[i] = t[i] + r * (left + right);
    }
    b[0] += flux_at((s + 0.5) * dt) * dt / (density * specific_heat * dx);
    for (std::size_t i = 0; i < n; ++i) {  // the tridiagonal system, downwards …
      const double below = i > 0 ? -r : 0;
      const double above = i + 1 < n ? -r : 0;
      const double pivot = 1 - below - above - (i > 0 ? below * upper[i - 1] : 0);
      upper[i] = above / pivot;
      b[i] = (b[i] - (i > 0 ? below * b[i - 1] : 0)) / pivot;
    }
    for (std::size_t i = n; i-- > 0;) t[i] = b[i] - (i + 1 < n ? upper[i] * t[i + 1] : 0);  // … and back
  }
  // From the middle of the first cell to the surface: half a cell of gradient, and the curvature that warming takes.
  const double gradient = flux_at(until) / k;
  const double inner_gradient = (t[0] - t[1]) / dx;
  return t[0] + dx / 2 * gradient - dx * dx / 8 * (gradient - inner_gradient) / dx;
}

void expect_second_order(double exact, double thickness, double until, bool falling) {
  const double coarse = std::abs(finite_volumes(thickness, until, falling, 100) - exact);
  const double fine = std::abs(finite_volumes(thickness, until, falling, 200) - exact);
  EXPECT_LT(fine, 1e-4 * exact);
  EXPECT_LT(fine, 0.35 * coarse);
}

TEST(slab_flux_rise, agrees_with_finite_volumes) {
  for (const double thickness : {0.03, 0.012, 0.006})
    for (const double until : {1.0, 4.0})
      expect_second_order(slab_flux_rise(flux, 0, until, k, alpha, thickness), thickness, until, false);
}

TEST(slab_flux_rise, has_two_forms_that_meet) {
  const double thickness = 0.012;
  const double meet = 0.3 * thickness * thickness / alpha;
  for (const double depth : {0.0, 0.004, 0.012}) {
    const double images = slab_flux_rise(flux, depth, meet * (1 - 1e-13), k, alpha, thickness);
    const double series = slab_flux_rise(flux, depth, meet * (1 + 1e-13), k, alpha, thickness);
    EXPECT_TRUE(near(images, series, 1e-12)) << depth;
  }
}

TEST(slab_flux_rise, is_a_half_space_when_thick_and_keeps_its_energy_when_thin) {
  EXPECT_TRUE(near(slab_flux_rise(flux, 0.01, 1, k, alpha, 0.3), half_space_flux(flux, 0.01, 1, k, alpha)));
  double mean = 0;
  for (int i = 0; i < 1000; ++i) mean += slab_flux_rise(flux, (i + 0.5) * 0.006 / 1000, 2, k, alpha, 0.006) / 1000;
  EXPECT_TRUE(near(mean, flux * 2 / (density * specific_heat * 0.006), 1e-6));
}

TEST(slab_stop_rise, agrees_with_finite_volumes) {
  for (const double thickness : {0.03, 0.012, 0.006})
    for (const double until : {1.0, 2.5, 4.0})
      expect_second_order(slab_stop_rise(flux, stop, until, k, alpha, thickness), thickness, until, true);
}

TEST(slab_stop_rise, is_a_half_space_when_thick_and_waits_for_the_stop) {
  EXPECT_TRUE(near(slab_stop_rise(flux, stop, 1.7, k, alpha, 1), stop_surface_rise(flux, stop, 1.7, iron)));
  EXPECT_EQ(slab_stop_rise(flux, stop, 0, k, alpha, 0.012), 0);
  EXPECT_EQ(slab_stop_rise(flux, stop, 7, k, alpha, 0.012), slab_stop_rise(flux, stop, stop, k, alpha, 0.012));
}

TEST(slab_stop_peak, is_the_highest_of_all_times) {
  for (double thickness = 0.0005; thickness < 0.1; thickness *= 1.5) {
    double highest = 0;
    for (int i = 0; i <= 40000; ++i)
      highest = std::max(highest, slab_stop_rise(flux, stop, stop * i / 40000, k, alpha, thickness));
    const double peak = slab_stop_peak(flux, stop, k, alpha, thickness);
    EXPECT_TRUE(near(peak, highest, 1e-7)) << thickness;
    EXPECT_GE(peak, highest * (1 - 1e-13)) << thickness;
  }
}

TEST(slab_stop_peak, lies_between_half_space_and_bulk) {
  EXPECT_TRUE(near(slab_stop_peak(flux, stop, k, alpha, 1), stop_surface_peak(flux, stop, iron)));
  const auto bulk = [](double thickness) { return flux * stop / 2 / (density * specific_heat * thickness); };
  double before = infinity;
  for (const double thickness : {0.001, 0.003, 0.006, 0.012, 0.02}) {
    const double peak = slab_stop_peak(flux, stop, k, alpha, thickness);
    EXPECT_GT(peak, bulk(thickness));
    EXPECT_GT(peak, stop_surface_peak(flux, stop, iron));
    EXPECT_LT(peak, before);
    before = peak;
  }
  EXPECT_TRUE(near(slab_stop_peak(flux, stop, k, alpha, 0.0005), bulk(0.0005), 1e-4));
  EXPECT_EQ(slab_stop_peak(flux, stop, k, alpha, 0), infinity);
  EXPECT_EQ(slab_stop_peak(flux, 0, k, alpha, 0.01), 0);
}

TEST(disc_heat_share, is_even_between_equals_and_all_without_a_pad) {
  EXPECT_EQ(disc_heat_share(iron, iron, 1), 0.5);
  EXPECT_EQ(disc_heat_share(iron, 0, 0.2), 1);
  EXPECT_EQ(disc_heat_share(0, 0, 1), 1);
  // Both faces equally hot: flux of each over its effusivity, the disc's spread over the whole rubbed area.
  const double pad = 1500, cover = 0.2;
  const double share = disc_heat_share(iron, pad, cover);
  EXPECT_TRUE(near(share / iron, (1 - share) / cover / pad));
}

TEST(conduction, is_a_number_for_any_input) {
  const std::vector<double> wild{-1e308, -1, 0, 1e-308, 0.01, 300, 1e9, 1e308};
  for (const double a : wild)
    for (const double b : wild)
      for (const double c : wild) {
        ASSERT_FALSE(std::isnan(diffusivity(a, b, c)) || std::isnan(effusivity(a, b, c)));
        ASSERT_FALSE(std::isnan(fourier_number(a, b, c)) || std::isnan(heat_depth(a, b)));
        ASSERT_FALSE(std::isnan(stop_surface_peak(a, b, c)) || std::isnan(disc_heat_share(a, b, c)));
        for (const double d : wild) {
          ASSERT_FALSE(std::isnan(half_space_step(a, b, c, d)));
          ASSERT_FALSE(std::isnan(stop_surface_rise(a, b, c, d)));
          for (const double e : wild) {
            ASSERT_FALSE(std::isnan(half_space_flux(a, b, c, d, e)));
            ASSERT_FALSE(std::isnan(slab_stop_peak(a, b, c, d, e)));
            ASSERT_FALSE(std::isnan(slab_flux_rise(a, b, c, d, e, a)) || std::isnan(slab_flux_rise(a, b, c, d, e, 1)));
            ASSERT_FALSE(std::isnan(slab_stop_rise(a, b, c, d, e, a)) || std::isnan(slab_stop_rise(a, b, c, d, e, 1)));
          }
        }
      }
}

}  // namespace
}  // namespace holdback::physics
