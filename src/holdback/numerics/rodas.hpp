// The method RODAS of Hairer and Wanner, order 4 with an embedded order 3, for stiff problems: linearly implicit, six
// stages that share one elimination of N × N, L-stable and stiffly accurate. It needs the Jacobian of f at the start of
// the step, exact or by differences. Source: [hairer1996] sections IV.7 and VI.4; the coefficients as in public copies
// of its program, and the tests compute the conditions of order anew.
//
// A stage solves (1/(γh) I − J) u_i = f(t + α_i h, y + Σ a_ij u_j) + Σ c_ij/h u_j + h γ_i ∂f/∂t.
#pragma once

#include <utility>

#include "holdback/numerics/ode_step.hpp"

namespace holdback::numerics {

/// A square matrix, row by row.
template <std::size_t N>
using Matrix = std::array<State<N>, N>;

/// How f changes at (t, y): rows ∂f_i/∂y_j, and ∂f/∂t (zero where f does not see the time).
template <std::size_t N>
struct Slopes {
  Matrix<N> by_state{};
  State<N> by_time{};
};

/// The slopes of f by forward differences, N + 1 evaluations of f. The relative width is the root of the rounding;
/// `least` [unit of y] is what a component counts for where it is nearer to zero.
struct Differences {
  double least{1e-3};
};

/// A x = b by elimination with the largest pivot of the column, made once for several b.
template <std::size_t N>
class Elimination {
 public:
  /// False where the matrix is singular or not finite; then nothing may be solved.
  bool prepare(const Matrix<N>& matrix) {
    rows_ = matrix;
    for (std::size_t k = 0; k < N; ++k) {
      std::size_t best = k;
      for (std::size_t i = k + 1; i < N; ++i)
        if (std::abs(rows_[i][k]) > std::abs(rows_[best][k])) best = i;
      std::swap(rows_[k], rows_[best]);
      from_[k] = best;
      if (!(std::abs(rows_[k][k]) > 0) || !std::isfinite(rows_[k][k])) return false;
      const double inverse = 1 / rows_[k][k];
      for (std::size_t i = k + 1; i < N; ++i) {
        const double share = rows_[i][k] *= inverse;
        for (std::size_t j = k + 1; j < N; ++j) rows_[i][j] -= share * rows_[k][j];
      }
    }
    return true;
  }

  /// x for the right side `b`.
  State<N> solve(State<N> b) const {
    for (std::size_t k = 0; k < N; ++k) std::swap(b[k], b[from_[k]]);
    for (std::size_t i = 1; i < N; ++i)
      for (std::size_t j = 0; j < i; ++j) b[i] -= rows_[i][j] * b[j];
    for (std::size_t i = N; i-- > 0;) {
      for (std::size_t j = i + 1; j < N; ++j) b[i] -= rows_[i][j] * b[j];
      b[i] /= rows_[i][i];
    }
    return b;
  }

 private:
  Matrix<N> rows_{};
  std::array<std::size_t, N> from_{};
};

/// The coefficients, for the stages as transformed above.
struct RodasTable {
  static constexpr double gamma = 0.25;
  static constexpr double alpha[6] = {0, 0.386, 0.21, 0.63, 1, 1};
  static constexpr double gammas[6] = {0.25, -0.1043, 0.1035, -0.03620000000000023, 0, 0};
  // The sixth stage starts from the state of the fifth and its solution; the step ends at that of the sixth.
  static constexpr double a[6][5] = {{},
                                     {1.544},
                                     {0.9466785280815826, 0.2557011698983284},
                                     {3.314825187068521, 2.896124015972201, 0.9986419139977817},
                                     {1.221224509226641, 6.019134481288629, 12.53708332932087, -0.6878860361058950},
                                     {1.221224509226641, 6.019134481288629, 12.53708332932087, -0.6878860361058950, 1}};
  static constexpr double c[6][5] = {
      {},
      {-5.6688},
      {-2.430093356833875, -0.2063599157091915},
      {-0.1073529058151375, -9.594562251023355, -20.47028614809616},
      {7.496443313967647, -10.24680431464352, -33.99990352819905, 11.70890893206160},
      {8.083246795921522, -7.981132988064893, -31.52159432874371, 16.31930543123136, -6.058818238834054}};
  // The curve inside the step.
  static constexpr double d2[5] = {10.12623508344586, -7.487995877610167, -34.80091861555747, -7.992771707568823,
                                   1.025137723295662};
  static constexpr double d3[5] = {-0.6762803392801253, 6.087714651680015, 16.43084320892478, 24.76722511418386,
                                   -6.594389125716872};
};

/// One step of RODAS; `Stepper` holds the state and chooses the length. `Jacobian` is Differences, or is called as
/// jacobian(t, y) and returns Slopes<N>.
template <std::size_t N, class Jacobian = Differences>
class Rodas {
 public:
  static constexpr int error_power = 4;  ///< the estimated error goes with this power of the step

  explicit Rodas(Jacobian jacobian = Jacobian{}) : jacobian_(std::move(jacobian)) {}

  /// A step of length `h` = `t1` − `t` [s] from `y`, where the derivative is `f`; not finite where the elimination
  /// fails.
  template <class Rhs>
  Trial<N> attempt(const Rhs& rhs, double t, double t1, double h, const State<N>& y, const State<N>& f) {
    if (!have_slopes_) slopes_ = slopes_at(jacobian_, rhs, t, y, f);
    have_slopes_ = true;
    Trial<N> made{};
    made.y.fill(std::numeric_limits<double>::infinity());
    if (!prepare(h)) return made;
    for (std::size_t stage = 0; stage < 6; ++stage) {
      State<N> right = stage == 0 ? f : rhs(stage < 4 ? t + RodasTable::alpha[stage] * h : t1, stage_state(stage, y));
      add_before(stage, h, right);
      u_[stage] = elimination_.solve(right);
    }
    made.error = u_[5];
    made.y = stage_state(5, y);
    for (std::size_t i = 0; i < N; ++i) made.y[i] += u_[5][i];
    made.f = rhs(t1, made.y);
    return made;
  }

  /// The cubic through the step just made.
  Dense<N> dense(double t0, const State<N>& y0, const State<N>&, double t1, const State<N>& y1, const State<N>&) const {
    Dense<N> curve{t0, t1, y0, y1, {}, {}, {}};
    for (std::size_t stage = 0; stage < 5; ++stage)
      for (std::size_t i = 0; i < N; ++i) {
        curve.c2[i] += RodasTable::d2[stage] * u_[stage][i];
        curve.c3[i] += RodasTable::d3[stage] * u_[stage][i];
      }
    return curve;
  }

  /// The state has moved on: the slopes are due anew.
  void forget() { have_slopes_ = false; }

 private:
  template <class Given, class Rhs>
  static Slopes<N> slopes_at(const Given& given, const Rhs&, double t, const State<N>& y, const State<N>&) {
    return given(t, y);
  }

  template <class Rhs>
  static Slopes<N> slopes_at(const Differences& given, const Rhs& rhs, double t, const State<N>& y, const State<N>& f) {
    constexpr double width = 1.4901161193847656e-8;  // 2^-26, the root of the rounding
    const auto difference = [&](double later, const State<N>& z, double by) {
      State<N> slope = rhs(later, z);
      for (std::size_t i = 0; i < N; ++i) slope[i] = (slope[i] - f[i]) / by;
      return slope;
    };
    Slopes<N> slopes;
    for (std::size_t j = 0; j < N; ++j) {
      State<N> z = y;
      z[j] += width * std::max(std::abs(y[j]), given.least);
      const State<N> column = difference(t, z, z[j] - y[j]);  // the width that was really taken
      for (std::size_t i = 0; i < N; ++i) slopes.by_state[i][j] = column[i];
    }
    const double later = t + width * std::max(std::abs(t), given.least);
    slopes.by_time = difference(later, y, later - t);
    return slopes;
  }

  bool prepare(double h) {
    Matrix<N> matrix{};
    for (std::size_t i = 0; i < N; ++i) {
      for (std::size_t j = 0; j < N; ++j) matrix[i][j] = -slopes_.by_state[i][j];
      matrix[i][i] += 1 / (RodasTable::gamma * h);
    }
    return elimination_.prepare(matrix);
  }

  State<N> stage_state(std::size_t stage, const State<N>& y) const {
    State<N> z = y;
    for (std::size_t j = 0; j < stage; ++j)
      for (std::size_t i = 0; i < N; ++i) z[i] += RodasTable::a[stage][j] * u_[j][i];
    return z;
  }

  void add_before(std::size_t stage, double h, State<N>& right) const {
    for (std::size_t j = 0; j < stage; ++j)
      for (std::size_t i = 0; i < N; ++i) right[i] += RodasTable::c[stage][j] / h * u_[j][i];
    for (std::size_t i = 0; i < N; ++i) right[i] += h * RodasTable::gammas[stage] * slopes_.by_time[i];
  }

  Jacobian jacobian_;
  Slopes<N> slopes_{};
  bool have_slopes_{false};
  Elimination<N> elimination_;
  std::array<State<N>, 6> u_{};
};

}  // namespace holdback::numerics
