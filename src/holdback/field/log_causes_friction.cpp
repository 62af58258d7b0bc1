// Causes that change how much torque a pressure gives: pairs, grade, glaze, heat, the gauge.
#include <algorithm>
#include <cmath>

#include "holdback/field/log_causes.hpp"

namespace holdback::field {

namespace {

constexpr double model_doubt = 0.025;  // [1] of drag, diameter and inertia in the effective friction
constexpr double least_drift = 0.06;   // [1]

/// A step in the ratios, where it explains them better than a slope.
struct Step {
  double time{};
  double before{}, after{};
  bool clear{};
};

double squares(const std::vector<double>& values, std::size_t from, std::size_t to, double* mean) {
  double sum = 0, rest = 0;
  for (std::size_t i = from; i < to; ++i) sum += values[i];
  *mean = sum / static_cast<double>(to - from);
  for (std::size_t i = from; i < to; ++i) rest += (values[i] - *mean) * (values[i] - *mean);
  return rest;
}

Step step_of(const FrictionTrack& track) {
  Step best;
  const std::size_t n = track.ratio.size();
  if (n < 12) return best;
  double least = 1e300;
  for (std::size_t i = 4; i + 4 <= n; ++i) {
    double before = 0, after = 0;
    const double rest = squares(track.ratio, 0, i, &before) + squares(track.ratio, i, n, &after);
    if (rest < least) {
      least = rest;
      best = {track.time[i], before, after, false};
    }
  }
  const double slope = track.change / std::max(1e-9, track.time[n - 1] - track.time[0]);
  double sloped = 0;
  for (std::size_t i = 0; i < n; ++i) {
    const double off = track.ratio[i] - track.first - slope * (track.time[i] - track.time[0]);
    sloped += off * off;
  }
  best.clear = least < 0.3 * sloped && std::abs(best.after - best.before) > 0.05;
  return best;
}

/// How well a level fits what a cause foretells [1]: 1 on it, 0.6 one standard width off.
double fits(double level, double foretold, double band) {
  const double width = band / 2 + model_doubt;
  const double off = std::log(level / foretold) / width;
  return std::exp(-off * off / 2);
}

double correlation(const std::vector<double>& x, const std::vector<double>& y) {
  double mx = 0, my = 0;
  const auto n = static_cast<double>(x.size());
  for (std::size_t i = 0; i < x.size(); ++i) {
    mx += x[i] / n;
    my += y[i] / n;
  }
  double xx = 0, yy = 0, xy = 0;
  for (std::size_t i = 0; i < x.size(); ++i) {
    xx += (x[i] - mx) * (x[i] - mx);
    yy += (y[i] - my) * (y[i] - my);
    xy += (x[i] - mx) * (y[i] - my);
  }
  return xx > 0 && yy > 0 ? xy / std::sqrt(xx * yy) : 0;
}

class Judge {
 public:
  Judge(const Evidence& evidence, Causes& causes)
      : stand_(evidence.stand),
        track_(evidence.diagnosis.friction),
        line_(evidence.facts.friction_line),
        stretches_(evidence.facts.friction),
        causes_(causes),
        total_(stand_.pairs * stand_.brakes),
        band_(stand_.friction_band) {}

  void go() {
    if (track_.ratio.size() < 4 || !(track_.level > 0.05) || !(track_.first > 0.05)) return;
    const Step step = step_of(track_);
    if (step.clear && pair_went(step)) return;
    const bool drifts = std::abs(track_.change) > std::max(least_drift * track_.first, 4 * track_.change_uncertainty);
    // With a drift the level is that of its better end: what was there before it.
    const double level = drifts && track_.change < 0 ? track_.first : track_.level;
    if (off_by(level) > 0) {
      if (!gauge(level)) wrong_level(level);
    } else if (drifts && gauge_drift()) {
      return;
    }
    if (drifts && track_.change < 0) drift();
  }

 private:
  /// By how much a level lies beyond the band [1]; 0 within.
  double off_by(double level) const {
    const double low = 1 - band_ - model_doubt, high = 1 + band_ + model_doubt;
    return level < low ? low - level : level > high ? level - high : 0;
  }

  LikelyCause start(CauseKind kind, double confidence, Note what) const {
    LikelyCause cause;
    cause.kind = kind;
    cause.confidence = confidence;
    cause.what = std::move(what);
    cause.evidence.push_back(
        {"the tension asks for {0} of the torque that nominal friction gives at the pressure "
         "recorded (± {1}); the grade's band is ± {2}",
         {ratio(track_.level), ratio(2 * track_.level_uncertainty), ratio(band_)}});
    return cause;
  }

  void tries_of_pair(LikelyCause& cause) const {
    cause.to_try.push_back(
        {"stand the line, feel which caliper does not grip; listen for its valve and for leaks", {}});
    cause.to_try.push_back({"look for a pad that is worn to its end or a piston that sticks", {}});
    if (cause.to_tell_apart.text.empty())
      cause.to_tell_apart = {
          "a pair that is dead and friction that is low look alike here: pull at standstill with one "
          "pair after another engaged; a dead one gives nothing, low friction takes the same share "
          "from each",
          {}};
  }

  /// A pair that stopped, or began, within the log.
  bool pair_went(const Step& step) {
    const double change = step.after / step.before;
    double best = 0;
    int lost = 0;
    for (int k = 1; k < total_; ++k) {
      const double fit = fits(change, static_cast<double>(total_ - k) / total_, 0.06);
      if (fit > best) {
        best = fit;
        lost = k;
      }
    }
    if (best < 0.3 || total_ < 2) return false;
    LikelyCause cause =
        start(CauseKind::dead_pair, 0.55 + 0.42 * best,
              {"{0} of {1} pad pairs stopped gripping at {2}.", {count(lost), count(total_), duration(step.time)}});
    cause.evidence.push_back(
        {"friction stepped from {0} to {1} of nominal within a few seconds", {ratio(step.before), ratio(step.after)}});
    tries_of_pair(cause);
    cause.to_tell_apart = {};
    causes_.push_back(cause);
    return true;
  }

  /// A level that no pressure offset explains, outside of the grade's band.
  void wrong_level(double level) {
    struct Candidate {
      CauseKind kind;
      double weight;
      int lost;
      std::string grade;
    };
    std::vector<Candidate> candidates;
    for (int k = 1; k < total_; ++k)
      candidates.push_back({CauseKind::dead_pair,
                            (k == 1 ? 1 : 0.35) * fits(level, static_cast<double>(total_ - k) / total_, band_), k, ""});
    for (const OtherGrade& other : stand_.grades)
      candidates.push_back({CauseKind::wrong_grade, 0.5 * fits(level, other.ratio, band_), 0, other.name});
    if (level < 1) candidates.push_back({CauseKind::glazing, 0.12, 0, ""});
    if (level > 1) candidates.push_back({CauseKind::wrong_grade, 0.15, 0, ""});
    double sum = 0.03;
    for (const Candidate& candidate : candidates) sum += candidate.weight;
    std::stable_sort(candidates.begin(), candidates.end(),
                     [](const Candidate& a, const Candidate& b) { return a.weight > b.weight; });
    const double sure = 0.5 + 0.5 * rises(off_by(level), 0, 0.04);
    bool told[2]{};
    for (const Candidate& one : candidates) {
      const double confidence = sure * one.weight / sum;
      if (confidence < 0.1) continue;
      if (one.kind == CauseKind::dead_pair) {
        if (told[0]) continue;
        told[0] = true;
        LikelyCause cause =
            start(one.kind, confidence, {"{0} of {1} pad pairs gives nothing.", {count(one.lost), count(total_)}});
        cause.evidence.push_back(
            {"so many pairs less would leave {0}", {ratio(static_cast<double>(total_ - one.lost) / total_)}});
        tries_of_pair(cause);
        causes_.push_back(cause);
      } else if (one.kind == CauseKind::wrong_grade) {
        if (told[1]) continue;
        told[1] = true;
        LikelyCause cause = start(one.kind, confidence,
                                  {one.grade.empty() ? "The friction is unlike that of the grade in the stand file."
                                                     : "The pads may be of grade \"" + one.grade + "\".",
                                   {}});
        cause.to_try.push_back({"read the mark on the pads; measure by `holdback fit` and keep what it finds", {}});
        cause.to_tell_apart = {
            "pull at standstill with one pair after another engaged: another grade changes each "
            "alike",
            {}};
        causes_.push_back(cause);
      } else {
        LikelyCause cause = start(one.kind, confidence,
                                  {"The friction is lower than the grade's band allows: glaze, oil or dust.", {}});
        tries_of_glaze(cause);
        causes_.push_back(cause);
      }
    }
  }

  void tries_of_glaze(LikelyCause& cause) const {
    cause.to_try.push_back(
        {"look at the pads: a mirror is glaze, a dark film is oil; break the glaze or change them", {}});
    cause.to_try.push_back({"find where oil comes from: a bearing seal, air that carries it from the compressor", {}});
  }

  /// Torque that is off by the same everywhere: the pressure is read or set too high or too low.
  bool gauge(double level) {
    if (!line_) return false;
    const double off = -line_->offset / stand_.torque_per_pressure;  // [Pa] gauge over the true pressure
    const double needed = std::max(4 * line_->offset_uncertainty, 0.05 * stand_.tension.setpoint * stand_.core_radius);
    if (std::abs(line_->slope - 1) > band_ + model_doubt || std::abs(line_->offset) < needed) return false;
    LikelyCause cause = start(CauseKind::pressure_gauge, 0.75,
                              {off > 0 ? "The pressure at the pads is {0} lower than recorded."
                                       : "The pressure at the pads is {0} higher than recorded.",
                               {pressure(std::abs(off))}});
    cause.evidence.push_back(
        {"torque rises with pressure as it should ({0} of nominal), but from another zero", {ratio(line_->slope)}});
    cause.evidence.push_back({"the level alone would be {0} of nominal", {ratio(level)}});
    cause.to_try.push_back({"read the gauge with the air off; hold a second gauge at the caliper against it", {}});
    cause.to_try.push_back({"look for springs or seals that hold the pads back: they act as a threshold", {}});
    causes_.push_back(cause);
    return true;
  }

  /// A ratio that drifts because the pressure falls with the roll and the gauge has an offset.
  bool gauge_drift() {
    if (!line_) return false;
    // The line through torque and pressure must explain the torques far better than a drift with time does.
    const double slope = track_.change / std::max(1e-9, track_.time.back() - track_.time.front());
    double by_line = 0, by_time = 0;
    for (const FrictionStretch& s : stretches_) {
      const double straight = s.asked - line_->offset - line_->slope * s.expected;
      const double drifted = s.asked - s.expected * (track_.first + slope * (s.time - track_.time.front()));
      by_line += straight * straight;
      by_time += drifted * drifted;
    }
    return by_line < 0.4 * by_time && gauge(track_.level);
  }

  void drift() {
    const bool warm = track_.temperature.size() == track_.ratio.size() && track_.ratio.size() > 5;
    double by_heat = 0, by_time = 0, rise = 0;
    if (warm) {
      by_heat = correlation(track_.temperature, track_.ratio);
      by_time = correlation(track_.time, track_.ratio);
      const auto [low, high] = std::minmax_element(track_.temperature.begin(), track_.temperature.end());
      rise = *high - *low;
    }
    const bool heat = warm && rise > 15 && by_heat < -0.5 && by_heat < by_time - 0.05;
    const double size = -track_.change / track_.first;
    const double confidence = 0.6 + 0.37 * rises(size, least_drift, 0.1);
    LikelyCause cause = start(
        heat ? CauseKind::fade : CauseKind::glazing, confidence,
        heat ? Note{"The friction fades with heat, by {0} so far.", {ratio(size)}}
             : Note{"The friction falls as time goes on, by {0} in this log: glaze, oil or dust.", {ratio(size)}});
    cause.evidence.push_back(
        {"effective friction went from {0} to {1} of nominal", {ratio(track_.first), ratio(track_.last)}});
    if (warm)
      cause.evidence.push_back({"it goes with the disc's temperature by {0}, with time by {1} (correlation)",
                                {number(by_heat), number(by_time)}});
    if (heat) {
      cause.to_try.push_back(
          {"bring the disc more air through a guard with more openings, engage more pairs, run slower, or take a "
           "larger "
           "disc; the guard stays on",
           {}});
      cause.to_try.push_back({"take a grade that fades later", {}});
    } else {
      tries_of_glaze(cause);
      if (!warm)
        cause.to_tell_apart = {
            "heat does the same: log the disc's temperature; friction that fades comes back when it "
            "is cold again, glaze stays",
            {}};
    }
    causes_.push_back(cause);
  }

  const LogStand& stand_;
  const FrictionTrack& track_;
  const std::optional<FrictionLine>& line_;
  const std::vector<FrictionStretch>& stretches_;
  Causes& causes_;
  int total_;
  double band_;
};

}  // namespace

void causes_of_friction(const Evidence& evidence, Causes& causes) {
  Causes found;
  Judge(evidence, found).go();
  // Means over hard swings are no steady running: what they tell of friction is in doubt.
  const SwingVerdict& swing = evidence.swing;
  const bool hard = !swing.empty() && swing.share > 0.2 && swing.amplitude > 0.15 * evidence.stand.tension.setpoint;
  for (LikelyCause& cause : found) {
    if (hard) cause.confidence *= 0.5;
    // Friction that falls with speed makes the brake stick, and looks like a drift when the speed changes.
    else if (swing.source == PeakSource::stick_slip && swing.confidence > 0.5)
      cause.confidence *= 0.7;
    causes.push_back(std::move(cause));
  }
}

}  // namespace holdback::field
