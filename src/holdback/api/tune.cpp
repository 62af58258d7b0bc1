#include <algorithm>
#include <cmath>

#include "holdback/api/motion.hpp"
#include "holdback/api/motion_notes.hpp"
#include "holdback/api/stand_job.hpp"

namespace holdback::api {

namespace {

using dynamics::LoopSettings;

bool has_loop(ControlKind kind) { return kind == ControlKind::load_cell || kind == ControlKind::dancer; }

/// The better of two tunings: it keeps the margins, then acts faster against slow disturbances.
bool is_better(const LoopTuning& a, const LoopTuning& b) {
  if (a.state != b.state) return a.state < b.state;
  const auto integral = [](const LoopTuning& t) { return t.integral_time > 0 ? t.gain / t.integral_time : 0; };
  return integral(a) > integral(b);
}

LoopSettings settings_of(const LoopTuning& tuning, const dynamics::TuneRequest& request) {
  return {tuning.gain,
          tuning.integral_time,
          tuning.derivative_time,
          request.delays.sample_time,
          request.full_radius,
          tuning.schedule == GainSchedule::diameter,
          1};
}

class Tuner {
 public:
  Tuner(const Stand& stand, const Request& request)
      : stand_(stand),
        request_(request),
        job_(stand, request),
        kind_(has_loop(stand.control.kind) ? stand.control.kind : ControlKind::load_cell),
        loop_(job_.tune_request(kind_)),
        stands_(dynamics::stands_over_roll(loop_)) {}

  Tuning answer() {
    describe();
    tune_loops();
    look_at_roll();
    run_present();
    if (!made_.holds) try_others();
    made_.advice = advice();
    made_.assumptions = motion_assumptions(stand_, job_, {stand_.control.kind}, request_.idlers == Idlers::each);
    made_.assumptions.push_back(
        {"the loop is tuned for small changes about steady running at the job's speed and tension, at {0} diameters; "
         "each idler by itself, friction as warm as in the middle of the roll; the loop has dead time, hold of the "
         "sample and filters exactly",
         {{static_cast<double>(dynamics::tune_points), Quantity::count}}});
    made_.cautions = motion_cautions(job_);
    return std::move(made_);
  }

 private:
  void tell(const std::string& what, double share) const {
    if (request_.progress) request_.progress(what, share);
  }

  void describe() {
    made_.title = stand_.title;
    made_.job = job_.job().name;
    made_.control = std::string(key_of(stand_.control.kind));
    made_.fit = job_.fit();
    made_.pairs = job_.pairs();
    made_.tension = job_.tension();
    made_.asked_gain_margin = loop_.asked.gain;
    made_.asked_phase_margin = loop_.asked.phase;
    made_.dead_time = loop_.delays.dead_time + loop_.delays.sample_time / 2;
    made_.lag = loop_.plant.air.lag + (kind_ == ControlKind::load_cell ? loop_.delays.cell_lag : 0);
  }

  void tune_loops() {
    for (const bool scheduled : {false, true}) {
      const LoopSettings settings = dynamics::tuned(loop_, stands_, scheduled);
      made_.loops.push_back(dynamics::tuning_of(loop_, stands_, settings));
    }
    std::stable_sort(made_.loops.begin(), made_.loops.end(), is_better);
    advised_ = settings_of(made_.loops.front(), loop_);
    const auto given = job_.settings_in_file(kind_);
    made_.from_file = given.has_value();
    if (given) made_.loops.push_back(dynamics::tuning_of(loop_, stands_, *given));
  }

  void look_at_roll() {
    made_.runout = dynamics::runout_map(loop_, advised_.gain > 0 ? &advised_ : nullptr);
    for (const TunePoint& point : made_.loops.front().points)
      made_.stick_slip_onset = std::max(made_.stick_slip_onset, point.stick_slip_onset);
  }

  MotionRun run(ControlKind kind, const std::optional<LoopSettings>& settings) {
    const bool each = request_.idlers == Idlers::each;
    dynamics::RunRequest run = job_.run_request(kind, job_.scenario(""), each);
    run.controller = job_.controller(kind, settings);
    run.trace_period = 10;
    if (request_.progress) run.progress = [&](double share) { tell(std::string(key_of(kind)), share); };
    return dynamics::run(run);
  }

  void run_present() {
    const ControlKind present = stand_.control.kind;
    made_.run = run(present, has_loop(present) ? std::optional(advised_) : std::nullopt);
    made_.run.trace = {};
    made_.holds = made_.run.state != State::fails;
  }

  void try_others() {
    for (const ControlKind kind :
         {ControlKind::hand, ControlKind::diameter, ControlKind::load_cell, ControlKind::dancer}) {
      if (kind == stand_.control.kind) continue;
      MotionRun other = run(kind, job_.settings(kind));
      const bool has_sensor = kind == ControlKind::hand || (kind == ControlKind::diameter && stand_.diameter_sensor) ||
                              (kind == ControlKind::load_cell && stand_.load_cell) ||
                              (kind == ControlKind::dancer && stand_.dancer);
      if (!has_sensor) other.verdict.text += "; its sensor has the usual values, for the stand has none";
      made_.others.push_back({other.control, other.state != State::fails, other.verdict});
    }
    std::stable_sort(made_.others.begin(), made_.others.end(),
                     [](const ControlAdvice& a, const ControlAdvice& b) { return a.holds > b.holds; });
  }

  Note advice() const {
    const LoopTuning& best = made_.loops.front();
    std::string text;
    if (!has_loop(stand_.control.kind))
      text =
          "The stand's control, " + made_.control + ", has no loop to tune; the settings below are for a load cell. ";
    if (best.state == State::fails) {
      text +=
          "No settings keep the asked margins over the whole roll: shorten dead time and lag of the air, or the "
          "sample time.";
      return {text, {}};
    }
    const std::string how =
        best.schedule == GainSchedule::diameter ? "a gain that follows the diameter" : "one fixed gain";
    text += "Take " + how +
            ": gain {0}, integral time {1}, derivative time {2}. From full to core it keeps a gain margin of {3} and a "
            "phase margin of {4}; tightest at {5}.";
    return {text,
            {{best.gain, Quantity::number},
             {best.integral_time, Quantity::duration},
             {best.derivative_time, Quantity::duration},
             {best.least_gain_margin, Quantity::number},
             {best.least_phase_margin, Quantity::angle},
             {best.worst_diameter, Quantity::short_length}}};
  }

  const Stand& stand_;
  const Request& request_;
  StandJob job_;
  ControlKind kind_;
  dynamics::TuneRequest loop_;
  std::vector<dynamics::LinearStand> stands_;
  LoopSettings advised_{};
  Tuning made_{};
};

}  // namespace

Tuning tune(const Stand& stand, const Request& request) { return Tuner(stand, request).answer(); }

}  // namespace holdback::api
