// The stand of motion.hpp stepped by SUNDIALS: the same derivative, the same drive every sample, the same events, by
// ARKODE's explicit and implicit Runge–Kutta methods and by CVODE. No dancer. Nothing is allocated after the start, and
// while neither rest nor slack is near it goes without root functions, as the mover of ours does.
#pragma once

#include <arkode/arkode_arkstep.h>
#include <arkode/arkode_erkstep.h>
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_context.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>

#include <cmath>
#include <memory>
#include <string>

#include "holdback/dynamics/mover_of.hpp"

namespace holdback::bench {

using namespace dynamics;

enum class Solver { erk, dirk, adams, bdf };

/// One SUNDIALS integrator of a stand's rate, with or without root functions.
template <class L>
class Integrator {
 public:
  static constexpr int size = static_cast<int>(L::size);
  using State = numerics::State<L::size>;

  Integrator(Solver solver, Rate<L>& rate, double relative, const State& y, bool with_roots)
      : solver_(solver), rate_(&rate) {
    SUNContext_Create(nullptr, &context_);
    y_ = N_VNew_Serial(size, context_);
    absolute_ = N_VNew_Serial(size, context_);
    put(y);
    double* a = N_VGetArrayPointer(absolute_);
    std::fill(a, a + size, 1e-3 * relative);  // as in MoverOf
    a[pressure] = 1e3 * relative;
    a[angle] = relative;
    a[slip_work] = a[pull_work] = 1e5 * relative;
    std::fill(a + first_web, a + L::first_idler, 1e-4 * relative);
    if (solver == Solver::dirk || solver == Solver::bdf) {
      matrix_ = SUNDenseMatrix(size, size, context_);
      linear_ = SUNLinSol_Dense(y_, matrix_, context_);
    }
    const int roots = with_roots ? 3 : 0;
    switch (solver) {
      case Solver::erk:
        memory_ = ERKStepCreate(f, 0, y_, context_);
        ERKStepSetTableNum(memory_, ARKODE_DORMAND_PRINCE_7_4_5);
        ERKStepSVtolerances(memory_, relative, absolute_);
        ERKStepSetUserData(memory_, this);
        ERKStepSetMaxNumSteps(memory_, 1000000);
        if (roots > 0) ERKStepRootInit(memory_, roots, g);
        break;
      case Solver::dirk:
        memory_ = ARKStepCreate(nullptr, f, 0, y_, context_);
        ARKStepSetOrder(memory_, 4);
        ARKStepSVtolerances(memory_, relative, absolute_);
        ARKStepSetUserData(memory_, this);
        ARKStepSetMaxNumSteps(memory_, 1000000);
        ARKStepSetLinearSolver(memory_, linear_, matrix_);
        ARKStepSetJacFn(memory_, jacobian);
        if (roots > 0) ARKStepRootInit(memory_, roots, g);
        break;
      default:
        memory_ = CVodeCreate(solver == Solver::bdf ? CV_BDF : CV_ADAMS, context_);
        CVodeInit(memory_, f, 0, y_);
        CVodeSVtolerances(memory_, relative, absolute_);
        CVodeSetUserData(memory_, this);
        CVodeSetMaxNumSteps(memory_, 1000000);
        if (solver == Solver::bdf) {
          CVodeSetLinearSolver(memory_, linear_, matrix_);
          CVodeSetJacFn(memory_, jacobian);
        } else {
          fixed_point_ = SUNNonlinSol_FixedPoint(y_, 0, context_);
          CVodeSetNonlinearSolver(memory_, fixed_point_);
        }
        if (roots > 0) CVodeRootInit(memory_, roots, g);
    }
  }

  Integrator(const Integrator&) = delete;
  Integrator& operator=(const Integrator&) = delete;

  ~Integrator() {
    if (solver_ == Solver::erk)
      ERKStepFree(&memory_);
    else if (solver_ == Solver::dirk)
      ARKStepFree(&memory_);
    else
      CVodeFree(&memory_);
    if (fixed_point_ != nullptr) SUNNonlinSolFree(fixed_point_);
    if (linear_ != nullptr) SUNLinSolFree(linear_);
    if (matrix_ != nullptr) SUNMatDestroy(matrix_);
    N_VDestroy(y_);
    N_VDestroy(absolute_);
    SUNContext_Free(&context_);
  }

  /// Goes on from a time and state after a change; `step` [s] is tried first, 0 has it guessed.
  void restart(double t, const State& y, double step) {
    put(y);
    if (solver_ == Solver::erk) {
      ERKStepReset(memory_, t, y_);
      ERKStepSetInitStep(memory_, step);
    } else if (solver_ == Solver::dirk) {
      ARKStepReset(memory_, t, y_);
      ARKStepSetInitStep(memory_, step);
    } else {
      CVodeReInit(memory_, t, y_);
      CVodeSetInitStep(memory_, step);
    }
  }

  /// Steps to `to` [s] exactly or to a root; below zero: failed.
  int go(double to, double* t) {
    if (solver_ == Solver::erk) {
      ERKStepSetStopTime(memory_, to);
      return ERKStepEvolve(memory_, to, y_, t, ARK_NORMAL);
    }
    if (solver_ == Solver::dirk) {
      ARKStepSetStopTime(memory_, to);
      return ARKStepEvolve(memory_, to, y_, t, ARK_NORMAL);
    }
    CVodeSetStopTime(memory_, to);
    return CVode(memory_, to, y_, t, CV_NORMAL);
  }

  static bool is_root(int flag) { return flag == 2; }  // ARK_ROOT_RETURN and CV_ROOT_RETURN

  std::array<int, 3> roots() {
    std::array<int, 3> found{};
    if (solver_ == Solver::erk)
      ERKStepGetRootInfo(memory_, found.data());
    else if (solver_ == Solver::dirk)
      ARKStepGetRootInfo(memory_, found.data());
    else
      CVodeGetRootInfo(memory_, found.data());
    return found;
  }

  /// Length that it would like next [s].
  double next_length() {
    double h = 0;
    if (solver_ == Solver::erk)
      ERKStepGetCurrentStep(memory_, &h);
    else if (solver_ == Solver::dirk)
      ARKStepGetCurrentStep(memory_, &h);
    else
      CVodeGetCurrentStep(memory_, &h);
    return h;
  }

  long steps() {
    long count = 0;
    if (solver_ == Solver::erk)
      ERKStepGetNumSteps(memory_, &count);
    else if (solver_ == Solver::dirk)
      ARKStepGetNumSteps(memory_, &count);
    else
      CVodeGetNumSteps(memory_, &count);
    return count;
  }

  State state() const {
    State y;
    std::copy_n(N_VGetArrayPointer(y_), size, y.begin());
    return y;
  }

 private:
  void put(const State& y) { std::copy(y.begin(), y.end(), N_VGetArrayPointer(y_)); }

  static const State& seen(N_Vector y) { return *reinterpret_cast<const State*>(N_VGetArrayPointer(y)); }

  static int f(double t, N_Vector y, N_Vector rate, void* self) {
    const State made = (*static_cast<Integrator*>(self)->rate_)(t, seen(y));
    std::copy(made.begin(), made.end(), N_VGetArrayPointer(rate));
    return 0;
  }

  static int g(double t, N_Vector y, double* out, void* self) {
    const Rate<L>& rate = *static_cast<Integrator*>(self)->rate_;
    const auto values = Guards<L>::values(rate, t, seen(y));
    const bool held = rate.motion.roll == Motion::Roll::held;
    out[0] = held ? 1 : values[0];
    out[1] = held ? values[1] : -1;
    out[2] = values[2];
    return 0;
  }

  static int jacobian(double t, N_Vector y, N_Vector, SUNMatrix out, void* self, N_Vector, N_Vector, N_Vector) {
    const auto slopes = RateSlopes<L>{static_cast<Integrator*>(self)->rate_}(t, seen(y));
    for (std::size_t j = 0; j < L::size; ++j) {
      double* column = SUNDenseMatrix_Column(out, static_cast<sunindextype>(j));
      for (std::size_t i = 0; i < L::size; ++i) column[i] = slopes.by_state[i][j];
    }
    return 0;
  }

  Solver solver_;
  Rate<L>* rate_;
  SUNContext context_{};
  N_Vector y_{}, absolute_{};
  SUNMatrix matrix_{};
  SUNLinearSolver linear_{};
  SUNNonlinearSolver fixed_point_{};
  void* memory_{};
};

/// A mover like that of mover_of.hpp, stepped by SUNDIALS.
template <class L>
class SundialsMover : public Mover {
 public:
  using State = numerics::State<L::size>;

  /// `keeps_history`: a multistep method goes on over changes of the set pressure instead of starting anew.
  SundialsMover(const Plant& plant, const Start& start, double relative, Solver solver, bool keeps_history)
      : plant_(plant), rate_{&plant_, fixed_of(plant_), {}, {}}, keeps_history_(keeps_history) {
    y_ = steady_state<L>(plant_, start.line_speed, start.tension, start.radius, start.brake_share);
    rate_.drive.line_speed = start.line_speed;
    rate_.drive.brake_share = start.brake_share;
    rate_.drive.set_pressure = y_[pressure];
    rate_.motion.roll = y_[speed] > 0 ? Motion::Roll::forward : resting();
    quiet_ = std::make_unique<Integrator<L>>(solver, rate_, relative, y_, false);
    watchful_ = std::make_unique<Integrator<L>>(solver, rate_, relative, y_, true);
    look();
  }

  bool advance(const Drive& drive, double to) override {
    const bool same = going_ && drive.line_speed == rate_.drive.line_speed && drive.acceleration == 0 &&
                      rate_.drive.acceleration == 0 && drive.brake_share == rate_.drive.brake_share &&
                      drive.broken == rate_.drive.broken;
    if (drive.broken && !rate_.drive.broken) y_[first_web] = plant_.path.spans[0];
    if (plant_.air.lag <= 0) y_[pressure] = drive.set_pressure;
    rate_.drive = drive;
    if (y_[speed] == 0) rate_.motion.roll = resting();
    sight_.lowest_tension = sight_.highest_tension = sight_.tension;
    const State before = y_;
    double t = sight_.time;
    went_ = true;
    if (is_far_from_events()) {
      if (!(keeps_history_ && same)) quiet_->restart(t, y_, length_);
      const int flag = quiet_->go(to, &t);
      y_ = quiet_->state();
      going_ = keeps_history_;
      if (flag >= 0 && is_far_from_events()) {
        length_ = keeps_history_ ? 0 : std::max(quiet_->next_length(), 1e-9);
        sight_.time = to;
        look();
        return true;
      }
      y_ = before;
      t = sight_.time;
    }
    going_ = false;
    watch(t, to);
    if (went_) sight_.time = to;
    look();
    return went_;
  }

  const Sight& sight() const override { return sight_; }
  double stored() const override { return stored_energy<L>(plant_, rate_.drive, y_); }
  void change_roll(double, double) override {}
  std::size_t steps() const override { return static_cast<std::size_t>(quiet_->steps() + watchful_->steps()); }
  double stick_events() const override { return sticks_; }
  double dancer_hits() const override { return 0; }
  std::string fault() const override { return "SUNDIALS"; }

 private:
  bool is_far_from_events() const {
    const double web = plant_.path.spans[0] - plant_.roll.lobes * plant_.roll.runout - y_[first_web];
    return rate_.motion.roll == Motion::Roll::forward && y_[speed] > 0.2 && web > 2e-4 && !rate_.drive.broken;
  }

  auto web(const Surface<double>& rim) const {
    const double drawn = rate_.drive.speed_at(sight_.time);
    return web_of<L, double>(plant_, rate_.fixed, rate_.drive, rate_.motion, drawn, y_, rim);
  }

  double pull() const {
    const auto rim = surface(plant_.roll, y_[radius], y_[angle]);
    const double tension = web(rim).tension[0];
    return pull_on_roll(plant_.roll, y_[radius], y_[angle], rim.h, tension);
  }

  Motion::Roll resting() const {
    if (std::abs(pull()) <= static_torque(plant_.brake, y_[pressure], rate_.drive.brake_share))
      return Motion::Roll::held;
    return pull() > 0 ? Motion::Roll::forward : Motion::Roll::backward;
  }

  void watch(double t, double to) {
    watchful_->restart(t, y_, 0);
    for (int events = 0; events < 10000; ++events) {
      const int flag = watchful_->go(to, &t);
      y_ = watchful_->state();
      went_ = flag >= 0;
      if (!Integrator<L>::is_root(flag)) return;
      const auto roots = watchful_->roots();
      if (roots[0] != 0) {
        y_[speed] = 0;
        rate_.motion.roll = resting();
        ++sticks_;
      }
      if (roots[1] != 0) {
        rate_.motion.roll = pull() > 0 ? Motion::Roll::forward : Motion::Roll::backward;
        ++sticks_;
      }
      if (!(t < to)) return;
      watchful_->restart(t, y_, 0);
    }
    went_ = false;
  }

  void look() {
    const auto rim = surface(plant_.roll, y_[radius], y_[angle]);
    const auto span = web(rim);
    const std::size_t count = plant_.path.spans.size();
    sight_.roll_speed = y_[speed];
    sight_.angle = y_[angle];
    sight_.radius = y_[radius];
    sight_.rim_speed = y_[speed] * (rim.h + rim.bend);
    sight_.out_of_round = rim.h - y_[radius];
    sight_.pressure = y_[pressure];
    sight_.tension = span.tension[0];
    sight_.lowest_tension = std::min(sight_.lowest_tension, sight_.tension);
    sight_.highest_tension = std::max(sight_.highest_tension, sight_.tension);
    sight_.cell_tension = span.tension[0];
    if constexpr (L::spans == 1) {
      if (span.tension[0] > 0) sight_.cell_tension = std::max(0.0, span.tension[0] + plant_.path.cell_drag);
    } else {
      const std::size_t k = std::clamp<std::size_t>(plant_.path.cell_span, 1, count - 1);
      sight_.cell_tension = (span.tension[k - 1] + span.tension[k]) / 2;
    }
    sight_.slack = 0;
    for (std::size_t i = 0; i < count; ++i) sight_.slack += std::max(0.0, y_[first_web + i] - span.length[i]);
    sight_.torque = sliding_torque(plant_.brake, y_[pressure], rate_.drive.brake_share, y_[speed]);
    sight_.slip_work = y_[slip_work];
    sight_.pull_work = y_[pull_work];
    sight_.motion = rate_.motion;
  }

  const Plant plant_;
  Rate<L> rate_;
  bool keeps_history_;
  bool going_{};
  bool went_{true};
  double length_{0.01};
  State y_{};
  std::unique_ptr<Integrator<L>> quiet_, watchful_;
  Sight sight_{};
  double sticks_{};
};

}  // namespace holdback::bench
