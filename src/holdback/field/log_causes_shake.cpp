// Causes that shake the tension: the roll, idlers, the mains; what swings by itself.
#include <algorithm>
#include <cmath>

#include "holdback/field/log_causes.hpp"

namespace holdback::field {

namespace {

constexpr double least_share = 0.01;  // [1] of the setpoint, below which a shake harms nothing

/// Amplitude at the roll's own frequency, medians below and above the middle of the speeds.
struct RollBySpeed {
  double slow_speed{}, fast_speed{};
  double slow{}, fast{};
  bool known() const { return slow > 0 && fast > 0 && fast_speed > 1.4 * slow_speed; }
};

RollBySpeed roll_by_speed(const std::vector<Swing>& swings) {
  RollBySpeed made;
  std::vector<double> speeds;
  for (const Swing& swing : swings)
    if (swing.roll > 0) speeds.push_back(swing.speed);
  if (speeds.size() < 4) return made;
  const auto [low, high] = std::minmax_element(speeds.begin(), speeds.end());
  const double middle = std::sqrt(*low * *high);
  std::vector<double> slow, fast, slow_speed, fast_speed;
  for (const Swing& swing : swings) {
    if (!(swing.roll > 0)) continue;
    (swing.speed > middle ? fast : slow).push_back(swing.roll);
    (swing.speed > middle ? fast_speed : slow_speed).push_back(swing.speed);
  }
  if (slow.size() < 2 || fast.size() < 2) return made;
  return {median_of(slow_speed), median_of(fast_speed), median_of(slow), median_of(fast)};
}

void roll(const Evidence& evidence, Causes& causes) {
  const LogStand& stand = evidence.stand;
  const LogPeak* highest = nullptr;
  double squares = 0;
  for (const LogPeak& peak : evidence.diagnosis.peaks) {
    if (peak.source != PeakSource::roll) continue;
    squares += peak.amplitude * peak.amplitude;
    if (highest == nullptr) highest = &peak;
  }
  if (highest == nullptr) return;
  const double amplitude = std::sqrt(squares);
  const double declared = loop_at(stand, evidence.facts.steady.radius).runout_tension;
  const double share = amplitude / stand.tension.setpoint;
  if (share < least_share || amplitude < 1.6 * declared) return;
  LikelyCause cause;
  cause.kind = CauseKind::runout;
  cause.confidence = highest->confidence * (0.6 + 0.4 * rises(share, least_share, 0.02));
  if (evidence.swing.confidence > 0.5 && amplitude < 1.5 * evidence.swing.amplitude) cause.confidence *= 0.7;
  cause.what = {"The roll shakes the tension by {0} each way, {1} of the setpoint: it is out of round.",
                {force(amplitude), ratio(share)}};
  for (const LogPeak& peak : evidence.diagnosis.peaks)
    if (peak.source == PeakSource::roll && cause.evidence.size() < 4)
      cause.evidence.push_back(
          {"a line of {0} at {1} times a turn of the roll", {force(peak.amplitude), number(peak.harmonic)}});
  cause.evidence.push_back(highest->why);
  if (declared > 0) cause.evidence.push_back({"the runout in the stand file would make {0}", {force(declared)}});
  const RollBySpeed by_speed = roll_by_speed(evidence.facts.swings);
  const bool once = highest->harmonic == 1;
  if (once && by_speed.known()) {
    const double grows = std::log(by_speed.fast / by_speed.slow) / std::log(by_speed.fast_speed / by_speed.slow_speed);
    cause.evidence.push_back(
        {"once a turn it is {0} at {1} and {2} at {3}",
         {force(by_speed.slow), speed(by_speed.slow_speed), force(by_speed.fast), speed(by_speed.fast_speed)}});
    if (grows < 0.25) {
      LikelyCause weight = cause;
      weight.kind = CauseKind::off_centre;
      weight.confidence *= 0.6;
      weight.what = {"A weight off the axis pulls {0} each way once a turn, {1} of the setpoint, at any speed.",
                     {force(amplitude), ratio(share)}};
      weight.evidence.push_back(
          {"it hardly grows with speed: weight does that; a roll that sits off its axis has it too", {}});
      weight.to_try.push_back({"let the roll hang free with the brake off: a heavy side turns down", {}});
      weight.to_tell_apart = {"hold a dial gauge against the turning roll: one that runs true is heavy on one side",
                              {}};
      causes.push_back(weight);
      cause.to_tell_apart = weight.to_tell_apart;
    }
  } else if (once) {
    cause.to_tell_apart = {
        "a weight off the axis looks the same at one speed: log a run at half the speed; a roll out "
        "of round shakes less then, a weight as much",
        {}};
  }
  cause.to_try.push_back(
      {"turn the roll by hand and hold a dial gauge or a pen against it; look how it was stored", {}});
  cause.to_try.push_back(
      {"look whether core, chucks and shaft run true, and whether the core is clamped in the middle", {}});
  cause.to_try.push_back({"run such rolls slower, or let a dancer take up the length", {}});
  causes.push_back(cause);
}

void other_lines(const Evidence& evidence, Causes& causes) {
  for (const LogPeak& peak : evidence.diagnosis.peaks) {
    if (peak.share < least_share) continue;
    LikelyCause cause;
    cause.confidence = peak.confidence * (0.6 + 0.4 * rises(peak.share, least_share, 0.02));
    // What swings hard by itself makes lines of its own at every speed.
    if (!evidence.swing.empty() && peak.amplitude < 0.7 * evidence.swing.amplitude) cause.confidence *= 0.4;
    if (peak.source == PeakSource::idler) {
      cause.kind = CauseKind::idler;
      cause.what = {"A roller of {0} shakes the tension by {1} each way, {2} of the setpoint.",
                    {length(peak.diameter), force(peak.amplitude), ratio(peak.share)}};
      if (!peak.idler.empty()) cause.evidence.push_back({"the stand's \"" + peak.idler + "\" has this diameter", {}});
      cause.to_try.push_back({"spin that roller by hand: listen to its bearings, hold a gauge against its face", {}});
      cause.to_try.push_back({"clean it: a lump of adhesive shakes as a bent roller does", {}});
      if (!(peak.confidence > 0.9))
        cause.to_tell_apart = {"log a run at another speed: the line of a roller moves with it", {}};
    } else if (peak.source == PeakSource::hum) {
      cause.kind = CauseKind::hum;
      cause.what = {"The signal carries {0} of hum from the mains; the web does not.", {force(peak.amplitude)}};
      cause.to_try.push_back(
          {"check screen and earth of the sensor's cable; log with a filter ahead of the sampling", {}});
    } else {
      continue;
    }
    const bool told =
        std::any_of(causes.begin(), causes.end(), [&](const LikelyCause& other) { return other.kind == cause.kind; });
    if (told) continue;
    cause.evidence.push_back({"a line of {0} at {1}", {force(peak.amplitude), frequency(peak.frequency)}});
    cause.evidence.push_back(peak.why);
    causes.push_back(cause);
  }
}

Note seen_at_speeds(const SwingVerdict& swing) {
  return {"it swings in {0} of the slower stretches and {1} of the faster ones",
          {ratio(swing.slow_share), ratio(swing.fast_share)}};
}

}  // namespace

void causes_of_peaks(const Evidence& evidence, Causes& causes) {
  roll(evidence, causes);
  other_lines(evidence, causes);
}

void causes_of_swings(const Evidence& evidence, Causes& causes) {
  const SwingVerdict& swing = evidence.swing;
  if (swing.empty() || swing.source == PeakSource::unknown) return;
  const double share = swing.amplitude / evidence.stand.tension.setpoint;
  LikelyCause cause;
  cause.confidence = swing.confidence;
  cause.evidence.push_back({"{0} of the stretches of steady run swing by themselves at {1}, {2} each way",
                            {ratio(swing.share), frequency(swing.frequency), force(swing.amplitude)}});
  if (swing.to_turnover > 0)
    cause.evidence.push_back(
        {"a loop too tight would swing near {0}", {frequency(swing.frequency / swing.to_turnover)}});
  if (swing.to_mode > 0)
    cause.evidence.push_back(
        {"roll and web swing against each other at {0}", {frequency(swing.frequency / swing.to_mode)}});
  if (swing.speeds) cause.evidence.push_back(seen_at_speeds(swing));
  if (swing.answer > 1.5 && swing.source == PeakSource::loop)
    cause.evidence.push_back(
        {"the pressure answers the tension {0} times as much as the loop as set in the stand file would",
         {number(swing.answer)}});
  if (swing.second > 0.1)
    cause.evidence.push_back({"its second harmonic is {0} of it: not a pure swing", {ratio(swing.second)}});
  if (swing.source == PeakSource::loop) {
    cause.kind = CauseKind::hunting;
    cause.what = {"The loop hunts: the tension swings by {0} each way, {1} of the setpoint, and never settles.",
                  {force(swing.amplitude), ratio(share)}};
    cause.to_try.push_back({"halve the gain; when it is quiet, tune anew with `holdback tune`", {}});
    cause.to_try.push_back(
        {"look for air that comes late: long hoses, a small valve, a leak, a regulator that sticks", {}});
    if (swing.to_mode > 0)
      cause.to_tell_apart = {"set the loop to hand at one pressure: a loop that hunts is quiet then, stick-slip stays",
                             {}};
  } else {
    cause.kind = CauseKind::stick_slip;
    cause.what = {"The brake sticks and slips: the tension swings by {0} each way, {1} of the setpoint.",
                  {force(swing.amplitude), ratio(share)}};
    cause.to_try.push_back({"engage fewer pairs at more pressure, or clean the disc of dust and glaze", {}});
    cause.to_try.push_back({"take a grade whose friction does not fall with speed", {}});
    cause.to_try.push_back({"run through the slow speeds quickly", {}});
    if (swing.to_turnover > 0)
      cause.to_tell_apart = {"set the loop to hand at one pressure: a loop that hunts is quiet then, stick-slip stays",
                             {}};
    else if (!swing.speeds)
      cause.to_tell_apart = {"log a run at twice the speed: stick-slip fades away there", {}};
  }
  causes.push_back(cause);
}

}  // namespace holdback::field
