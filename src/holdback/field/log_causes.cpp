#include "holdback/field/log_causes.hpp"

#include <algorithm>

namespace holdback::field {

namespace {

constexpr double likely = 0.5;
constexpr double worth_telling = 0.15;
constexpr double short_run = 30;       // [s] of steady run that says half of what can be said
constexpr double mostly_inside = 0.9;  // [1] below it the window is not kept, whatever the causes

/// What steady run there is; nothing of it when the line never ran steadily.
PhaseTension steady_of(const Diagnosis& diagnosis) {
  for (const PhaseTension& phase : diagnosis.phases)
    if (phase.phase == LogPhase::steady) return phase;
  return {};
}

/// No fault is seen: the stand runs well, or the log does not say why it does not, or it is too short to say.
void tell_nothing(LikelyCause& none, const PhaseTension& steady) {
  if (steady.time > 0 && steady.inside < mostly_inside) {
    none.what = {"The tension lies outside of its window for {0} of steady run, and nothing in this log says why.",
                 {ratio(1 - steady.inside)}};
    none.to_try.push_back(
        {"see whether this job ran, and hold pressure and pairs against its card: `holdback plan`", {}});
    none.to_try.push_back({"hold the tension recorded against another reading of it: `holdback measure`", {}});
    return;
  }
  none.what = {"Nothing in this log points to a fault.", {}};
  if (steady.time < short_run)
    none.to_try.push_back({"log at least some minutes of steady run: {0} of it tell little", {duration(steady.time)}});
  else
    none.to_try.push_back({"keep this log: it is what the stand looks like when it runs well", {}});
}

LikelyCause nothing(const Evidence& evidence, double strongest) {
  LikelyCause none;
  none.kind = CauseKind::none;
  const Diagnosis& diagnosis = evidence.diagnosis;
  const PhaseTension steady = steady_of(diagnosis);
  none.confidence = (1 - strongest) * steady.time / (steady.time + short_run);
  tell_nothing(none, steady);
  for (const PhaseTension& phase : diagnosis.phases)
    if (phase.phase == LogPhase::steady)
      none.evidence.push_back({"in steady run the tension is inside the window for {0} of the time, {1} ± {2}",
                               {ratio(phase.inside), force(phase.mean), force(phase.deviation)}});
  if (!diagnosis.friction.empty())
    none.evidence.push_back({"effective friction is {0} of nominal", {ratio(diagnosis.friction.level)}});
  if (diagnosis.peaks.empty())
    none.evidence.push_back({"no line of the spectra stands out of the noise", {}});
  else
    none.evidence.push_back({"the highest line of the spectra is {0}, {1} of the setpoint",
                             {force(diagnosis.peaks.front().amplitude), ratio(diagnosis.peaks.front().share)}});
  return none;
}

}  // namespace

std::vector<LikelyCause> causes_of(const LogStand& stand, const LogFacts& facts, const SwingVerdict& swing,
                                   const Diagnosis& diagnosis) {
  const Evidence evidence{stand, facts, swing, diagnosis};
  Causes causes;
  causes_of_peaks(evidence, causes);
  causes_of_swings(evidence, causes);
  causes_of_friction(evidence, causes);
  causes_of_setting(evidence, causes);
  std::stable_sort(causes.begin(), causes.end(),
                   [](const LikelyCause& a, const LikelyCause& b) { return a.confidence > b.confidence; });
  causes.erase(std::remove_if(causes.begin(), causes.end(),
                              [](const LikelyCause& cause) { return cause.confidence < worth_telling; }),
               causes.end());
  const double strongest = causes.empty() ? 0 : causes.front().confidence;
  if (strongest < likely) causes.insert(causes.begin(), nothing(evidence, strongest));
  return causes;
}

}  // namespace holdback::field
