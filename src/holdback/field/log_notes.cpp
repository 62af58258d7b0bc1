#include "holdback/field/log_notes.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "holdback/field/log_causes.hpp"

namespace holdback::field {

namespace {

constexpr double short_log = 60;  // [s] of steady run, below which a spectrum says little

double steady_time(const Diagnosis& diagnosis) {
  for (const PhaseTension& phase : diagnosis.phases)
    if (phase.phase == LogPhase::steady) return phase.time;
  return 0;
}

}  // namespace

State state_of_log(const LogStand& /*stand*/, const Diagnosis& diagnosis) {
  State state = State::holds;
  for (const LogChange& change : diagnosis.changes) state = std::max(state, change.state);
  for (const PhaseTension& phase : diagnosis.phases) {
    if (phase.phase != LogPhase::steady) continue;
    if (phase.inside < 0.9) state = State::fails;
    if (phase.inside < 0.99) state = std::max(state, State::tight);
  }
  return state;
}

void log_notes(const LogStand& stand, const std::array<bool, log_channels>& has, Diagnosis& diagnosis) {
  const auto lacks = [&](LogChannel channel) { return !has[static_cast<std::size_t>(channel)]; };
  std::vector<Note>& assumed = diagnosis.assumptions;
  std::vector<Note>& cautions = diagnosis.cautions;
  if (lacks(LogChannel::speed))
    assumed.push_back(
        {"the log has no speed: the line is taken to run at the job's {0} all the time", {speed(stand.speed)}});
  if (diagnosis.diameter_source == DiameterSource::turns)
    assumed.push_back({"the diameter follows from speed and turns, smoothed over half a minute of running", {}});
  if (diagnosis.diameter_source == DiameterSource::web_run)
    assumed.push_back(
        {"the log has neither diameter nor turns: the roll is taken to be full, {0}, at its first row and to "
         "shrink by the caliper of the job",
         {length(2 * stand.full_radius)}});
  if (lacks(LogChannel::pressure))
    assumed.push_back({"the log has no pressure: nothing can be said of friction, pairs and regulator", {}});
  if (lacks(LogChannel::temperature) && stand.fade_start)
    assumed.push_back(
        {"the log has no disc temperature: friction is taken as warm as it is computed to be when rolls "
         "repeat",
         {}});
  if (lacks(LogChannel::pairs))
    assumed.push_back({"{0} pairs on each of {1} brakes are taken to be engaged, as chosen for the job",
                       {count(stand.pairs), count(stand.brakes)}});
  assumed.push_back({"the tension recorded is that of the whole width; idlers take {0} of it by their drag",
                     {force(stand.cell_offset)}});
  assumed.push_back({"causes are told apart by what is logged alone; two at once may hide each other", {}});
  if (steady_time(diagnosis) < short_log)
    cautions.push_back({"Only {0} of steady run: slow drifts and fine lines cannot be seen in so little.",
                        {duration(steady_time(diagnosis))}});
  const double fastest_seen = diagnosis.interval > 0 ? std::numbers::pi / diagnosis.interval : 0;
  if (diagnosis.mode_frequency > fastest_seen)
    cautions.push_back(
        {"The rows are too far apart to see roll and web swing ({0}): log at least {1} rows a second.",
         {frequency(diagnosis.mode_frequency), count(std::ceil(diagnosis.mode_frequency / std::numbers::pi * 4))}});
  for (const ChannelFacts& channel : diagnosis.channels)
    if (channel.channel == LogChannel::temperature && stand.rated_disc > 0 && channel.highest > stand.rated_disc)
      cautions.push_back({"The disc reached {0}, above its rating of {1}: do not run on like this.",
                          {temperature(channel.highest), temperature(stand.rated_disc)}});
  cautions.push_back(
      {"A diagnosis points to where to look first. Stop the line and lock it out before touching roll, brake "
       "or rollers; release the air.",
       {}});
}

}  // namespace holdback::field
