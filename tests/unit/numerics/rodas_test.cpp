#include "holdback/numerics/rodas.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "holdback/numerics/ode.hpp"

namespace holdback::numerics {
namespace {

template <class AnyStepper>
void run_to_end(AnyStepper& stepper) {
  while (stepper.step() == Stepped::accepted) {
  }
}

// The classical coefficients of the method from those of its transformed stages: with u = Γ k (Γ lower triangular, γ on
// the diagonal) the table holds a = α Γ⁻¹, c = diag(1/γ) − Γ⁻¹ [hairer1996] section IV.7.
struct Classical {
  double alpha[6][6]{}, beta[6][6]{}, b[6]{}, b_embedded[6]{};
};

Classical classical() {
  double inverse[6][6]{};
  double gamma[6][6]{};
  for (int i = 0; i < 6; ++i) {
    for (int j = 0; j < i; ++j) inverse[i][j] = -RodasTable::c[i][j];
    inverse[i][i] = 1 / RodasTable::gamma;
  }
  for (int j = 0; j < 6; ++j)
    for (int i = j; i < 6; ++i) {
      double sum = i == j ? 1 : 0;
      for (int k = j; k < i; ++k) sum -= inverse[i][k] * gamma[k][j];
      gamma[i][j] = sum / inverse[i][i];
    }
  Classical made;
  for (int i = 0; i < 6; ++i)
    for (int j = 0; j < 6; ++j) {
      for (int k = 0; k < i && k < 5; ++k) made.alpha[i][j] += RodasTable::a[i][k] * gamma[k][j];
      made.beta[i][j] = made.alpha[i][j] + gamma[i][j];
    }
  for (int j = 0; j < 6; ++j) {
    made.b_embedded[j] = made.alpha[5][j];       // the state the sixth stage starts from
    made.b[j] = made.alpha[5][j] + gamma[5][j];  // with its solution
  }
  return made;
}

// Sums of the conditions of order up to 4 for Rosenbrock methods, beside what they must be [hairer1996] section IV.7.
void expect_conditions(const double (&b)[6], const Classical& method, int order) {
  double node[6]{};
  double total[6]{};
  for (int i = 0; i < 6; ++i)
    for (int j = 0; j < 6; ++j) {
      node[i] += method.alpha[i][j];
      total[i] += method.beta[i][j];
    }
  double b_1 = 0, b_total = 0, b_node2 = 0, b_total_total = 0, b_node3 = 0, b_node_total = 0, b_beta_node2 = 0,
         b_beta_beta = 0;
  for (int i = 0; i < 6; ++i) {
    b_1 += b[i];
    b_total += b[i] * total[i];
    b_node2 += b[i] * node[i] * node[i];
    b_node3 += b[i] * std::pow(node[i], 3);
    for (int j = 0; j < 6; ++j) {
      b_total_total += b[i] * method.beta[i][j] * total[j];
      b_node_total += b[i] * node[i] * method.alpha[i][j] * total[j];
      b_beta_node2 += b[i] * method.beta[i][j] * node[j] * node[j];
      for (int k = 0; k < 6; ++k) b_beta_beta += b[i] * method.beta[i][j] * method.beta[j][k] * total[k];
    }
  }
  EXPECT_NEAR(b_1, 1, 1e-13);
  EXPECT_NEAR(b_total, 1.0 / 2, 1e-13);
  EXPECT_NEAR(b_node2, 1.0 / 3, 1e-13);
  EXPECT_NEAR(b_total_total, 1.0 / 6, 1e-13);
  if (order < 4) return;
  EXPECT_NEAR(b_node3, 1.0 / 4, 1e-13);
  EXPECT_NEAR(b_node_total, 1.0 / 8, 1e-13);
  EXPECT_NEAR(b_beta_node2, 1.0 / 12, 1e-13);
  EXPECT_NEAR(b_beta_beta, 1.0 / 24, 1e-13);
}

TEST(Rodas, fulfils_the_conditions_of_order_four_and_three) {
  const Classical method = classical();
  expect_conditions(method.b, method, 4);
  expect_conditions(method.b_embedded, method, 3);
}

TEST(Rodas, has_nodes_that_are_the_sums_of_its_stages) {
  const Classical method = classical();
  for (int i = 0; i < 6; ++i) {
    double node = 0;
    double slope = 0;
    for (int j = 0; j < 6; ++j) {
      node += method.alpha[i][j];
      slope += method.beta[i][j] - method.alpha[i][j];
    }
    EXPECT_NEAR(node, RodasTable::alpha[i], 1e-13) << i;
    EXPECT_NEAR(slope, RodasTable::gammas[i], 1e-13) << i;
  }
}

// y' = −y² (1 + sin t): closed form 1/(2 + t − cos t) from 1 at 0; sees the state and the time.
State<1> decay(double t, const State<1>& y) { return {-y[0] * y[0] * (1 + std::sin(t))}; }
Slopes<1> decay_slopes(double t, const State<1>& y) {
  return {{{{-2 * y[0] * (1 + std::sin(t))}}}, {-y[0] * y[0] * std::cos(t)}};
}
double decay_at(double t) { return 1 / (2 + t - std::cos(t)); }

TEST(stiff_stepper, is_of_order_four_with_a_cubic_inside_the_step) {  // closed form
  const auto errors = [](double length) {
    StepControl<1> control = StepControl<1>::even(1e-8, 1e200);
    control.first = control.smallest = control.largest = length;
    auto stepper = stiff_stepper<1>(decay, control, decay_slopes);
    stepper.start(0, {1}, length);
    stepper.step();
    double inside = 0;
    for (double s = 0.1; s < 1; s += 0.1)
      inside = std::max(inside, std::abs(stepper.at(s * length)[0] - decay_at(s * length)));
    stepper.set_end(4);
    run_to_end(stepper);
    return std::array<double, 2>{std::abs(stepper.state()[0] - decay_at(4)), inside};
  };
  for (const double length : {0.03125, 0.015625, 0.0078125}) {
    const auto coarse = errors(length);
    const auto fine = errors(length / 2);
    EXPECT_NEAR(std::log2(coarse[0] / fine[0]), 4, 0.3) << length;
    EXPECT_GT(std::log2(coarse[1] / fine[1]), 3.7) << length;  // of one step: order 3 goes with h^4
  }
}

TEST(stiff_stepper, gets_on_without_the_jacobian) {
  auto given = stiff_stepper<1>(decay, StepControl<1>::even(1e-9, 0), decay_slopes);
  auto differences = stiff_stepper<1>(decay, StepControl<1>::even(1e-9, 0));
  given.start(0, {1}, 50);
  differences.start(0, {1}, 50);
  run_to_end(given);
  run_to_end(differences);
  EXPECT_NEAR(given.state()[0] / decay_at(50), 1, 1e-8);
  EXPECT_NEAR(differences.state()[0] / decay_at(50), 1, 1e-8);
  EXPECT_LE(differences.counts().steps, given.counts().steps + 2);
}

TEST(stiff_stepper, follows_a_slow_solution_in_a_stiff_field) {
  // Prothero and Robinson: y' = −λ (y − cos t) − sin t, solution cos t. The explicit pair would need λ/3 steps a
  // second.
  const double rate = 1e8;
  auto stepper = stiff_stepper<1>(
      [rate](double t, const State<1>& y) { return State<1>{-rate * (y[0] - std::cos(t)) - std::sin(t)}; },
      StepControl<1>::even(1e-7, 1e-7));
  stepper.start(0, {1}, 10);
  run_to_end(stepper);
  EXPECT_NEAR(stepper.state()[0], std::cos(10.0), 1e-6);
  EXPECT_LT(stepper.counts().steps, 400U);
}

TEST(stiff_stepper, damps_what_is_infinitely_stiff_in_one_step) {
  // L-stable: of a step in y' = −λ y nothing is left as λh grows.
  StepControl<1> control = StepControl<1>::even(1, 1e200);
  control.first = control.largest = 1;
  for (const double rate : {1e6, 1e9, 1e12}) {
    auto stepper = stiff_stepper<1>([rate](double, const State<1>& y) { return State<1>{-rate * y[0]}; }, control,
                                    [rate](double, const State<1>&) {
                                      return Slopes<1>{{{{-rate}}}, {}};
                                    });
    stepper.start(0, {1}, 1);
    EXPECT_EQ(stepper.step(), Stepped::accepted);
    EXPECT_LT(std::abs(stepper.state()[0]), 100 / rate);
  }
}

TEST(stiff_stepper, solves_van_der_pols_equation_as_published) {
  // Test Set for IVP Solvers, problem VDPOL: y'' = 1000 (1 − y²) y' − y from (2, 0), at t = 2000. Values of its file
  // vdpol.f, read in public copies [found].
  auto stepper = stiff_stepper<2>(
      [](double, const State<2>& y) {
        return State<2>{y[1], 1000 * (1 - y[0] * y[0]) * y[1] - y[0]};
      },
      StepControl<2>::even(1e-9, 1e-10),
      [](double, const State<2>& y) {
        return Slopes<2>{{{{0, 1}, {-2000 * y[0] * y[1] - 1, 1000 * (1 - y[0] * y[0])}}}, {}};
      });
  stepper.start(0, {2, 0}, 2000);
  run_to_end(stepper);
  EXPECT_NEAR(stepper.state()[0] / 0.1706167732170469e1, 1, 1e-6);
  EXPECT_NEAR(stepper.state()[1] / -0.8928097010248125e-3, 1, 1e-6);
  EXPECT_LT(stepper.counts().steps, 10000U);
}

TEST(stiff_stepper, solves_robertsons_kinetics_as_published) {
  // Test Set for IVP Solvers, problem ROBER, at t = 1e11. Reference values read in public copies [found].
  auto stepper = stiff_stepper<3>(
      [](double, const State<3>& y) {
        const double forth = 0.04 * y[0] - 1e4 * y[1] * y[2];
        const double on = 3e7 * y[1] * y[1];
        return State<3>{-forth, forth - on, on};
      },
      StepControl<3>::even(1e-8, 1e-16),
      [](double, const State<3>& y) {
        return Slopes<3>{
            {{{-0.04, 1e4 * y[2], 1e4 * y[1]}, {0.04, -1e4 * y[2] - 6e7 * y[1], -1e4 * y[1]}, {0, 6e7 * y[1], 0}}}, {}};
      });
  stepper.start(0, {1, 0, 0}, 1e11);
  run_to_end(stepper);
  EXPECT_NEAR(stepper.state()[0] / 0.2083340149701255e-7, 1, 1e-5);
  EXPECT_NEAR(stepper.state()[1] / 0.8333360770334713e-13, 1, 1e-5);
  EXPECT_NEAR(stepper.state()[2] / 0.9999999791665050, 1, 1e-9);
}

TEST(stiff_stepper, fails_as_the_explicit_one_does) {
  auto root = stiff_stepper<1>([](double t, const State<1>&) { return State<1>{std::sqrt(1 - t)}; },
                               StepControl<1>::even(1e-8, 1e-8));
  root.start(0, {0}, 2);
  run_to_end(root);
  EXPECT_EQ(root.failure(), OdeFailure::not_finite);
  EXPECT_LE(root.t(), 1);
  EXPECT_TRUE(std::isfinite(root.state()[0]));
}

TEST(Elimination, solves_with_pivots_and_says_when_it_cannot) {
  Elimination<3> elimination;
  ASSERT_TRUE(elimination.prepare({{{0, 2, 1}, {1, 0, 0}, {3, 0, 4}}}));
  const State<3> x = elimination.solve({7, 1, 15});  // 2 x1 + x2 = 7, x0 = 1, 3 x0 + 4 x2 = 15
  EXPECT_NEAR(x[0], 1, 1e-15);
  EXPECT_NEAR(x[1], 2, 1e-15);
  EXPECT_NEAR(x[2], 3, 1e-15);
  EXPECT_FALSE(elimination.prepare({{{1, 2, 3}, {2, 4, 6}, {0, 0, 1}}}));
  EXPECT_FALSE(elimination.prepare({{{std::nan(""), 2, 3}, {2, 4, 6}, {0, 0, 1}}}));
}

}  // namespace
}  // namespace holdback::numerics
