// Causes that lie in how the pressure is set, and in the sensors.
#include <algorithm>
#include <cmath>

#include "holdback/field/log_causes.hpp"

namespace holdback::field {

namespace {

void regulator(const Evidence& evidence, Causes& causes) {
  const LogStand& stand = evidence.stand;
  const PlateauFacts& plateaus = evidence.facts.plateaus;
  const double radius = evidence.facts.steady.radius;
  if (stand.control == ControlKind::hand || plateaus.steps < 6 || !(radius > 0)) return;
  const double step = plateaus.median_step * stand.torque_per_pressure / radius / stand.tension.setpoint;
  const double flat = plateaus.steady > 0 ? plateaus.flat / plateaus.steady : 0;
  // What the stand file says of the regulator is no fault.
  if (step < 0.02 || flat < 0.5 || plateaus.median_step < 1.5 * (stand.hysteresis + stand.resolution)) return;
  LikelyCause cause;
  cause.kind = CauseKind::regulator;
  cause.confidence = 0.45 + 0.4 * rises(step, 0.02, 0.06);
  cause.what = {"The pressure moves in steps of {0}, each {1} of the setpoint's tension.",
                {pressure(plateaus.median_step), ratio(step)}};
  cause.evidence.push_back({"{0} steps, {1} from one to the next, where the control should follow smoothly",
                            {count(plateaus.steps), duration(plateaus.median_length)}});
  cause.to_try.push_back(
      {"look at the regulator: dirt, a sticking spool, a range far too wide for the pressure used", {}});
  cause.to_try.push_back({"engage fewer pairs: the same step of pressure then moves the tension less", {}});
  causes.push_back(cause);
}

void hand_card(const Evidence& evidence, Causes& causes) {
  const LogStand& stand = evidence.stand;
  const PlateauFacts& plateaus = evidence.facts.plateaus;
  const double window = stand.tension.high / std::max(stand.tension.low, 1e-9);
  const double flat = plateaus.steady > 0 ? plateaus.flat / plateaus.steady : 0;
  if (flat < 0.6 || plateaus.tension_rise < 1.1 * window || plateaus.diameter_fall < 1.05) return;
  const double explained = std::log(plateaus.diameter_fall) / std::log(plateaus.tension_rise);
  if (explained < 0.6 || explained > 1.6) return;
  LikelyCause cause;
  cause.kind = CauseKind::hand_card;
  cause.confidence = 0.6 + 0.35 * rises(plateaus.tension_rise / window, 1.1, 1.4);
  cause.what = {
      "The pressure was left where it was while the roll shrank: the tension rose by a factor of {0} on one "
      "setting.",
      {number(plateaus.tension_rise)}};
  cause.evidence.push_back({"the diameter fell by a factor of {0} meanwhile: at one pressure the tension goes as 1/D",
                            {number(plateaus.diameter_fall)}});
  cause.evidence.push_back({"the window allows a factor of {0} for each setting", {number(window)}});
  cause.to_try.push_back({"print the card with `holdback plan` and turn the regulator at its diameters", {}});
  causes.push_back(cause);
}

void sensors(const Evidence& evidence, Causes& causes) {
  for (const ChannelFacts& channel : evidence.diagnosis.channels) {
    const bool counts = channel.channel == LogChannel::tension || channel.channel == LogChannel::pressure ||
                        channel.channel == LogChannel::speed || channel.channel == LogChannel::diameter;
    if (!counts || (channel.dropouts < 3 && channel.stuck <= 0)) continue;
    // A web that goes slack and comes back with every swing looks like a sensor that drops out.
    const bool swings_hard =
        !evidence.swing.empty() && evidence.swing.amplitude > 0.3 * evidence.stand.tension.setpoint;
    if (swings_hard && channel.channel == LogChannel::tension) continue;
    LikelyCause cause;
    cause.kind = CauseKind::sensor;
    const std::string name(key_of(channel.channel));
    if (channel.dropouts >= 3) {
      cause.confidence = 0.6 + 0.35 * rises(channel.dropouts, 3, 10);
      cause.what = {"The sensor of the " + name + " drops out: {0} times in this log.", {count(channel.dropouts)}};
      cause.evidence.push_back(
          {"readings fall away from one row to the next and come back as suddenly, faster than "
           "roll and web can move",
           {}});
      cause.to_try.push_back({"check its plug, cable and supply; move the cable while it is read", {}});
    } else {
      cause.confidence = 0.6 + 0.3 * rises(channel.stuck, 3, 30);
      cause.what = {"The " + name + " stood at one value for {0} while the line ran.", {duration(channel.stuck)}};
      cause.evidence.push_back({"it changes from row to row else", {}});
      cause.to_try.push_back(
          {"check the sensor and the logger's channel; what is judged from it here is in doubt", {}});
    }
    causes.push_back(cause);
  }
}

/// Errors that stay long after each change of speed, though a loop should take them away.
void loose_loop(const Evidence& evidence, Causes& causes) {
  const LogStand& stand = evidence.stand;
  if (stand.control != ControlKind::load_cell && stand.control != ControlKind::dancer) return;
  if (!evidence.swing.empty()) return;
  const double crossover = loop_at(stand, evidence.facts.steady.radius).crossover;
  double late = 0, all = 0, longest = 0;
  for (const LogChange& change : evidence.diagnosis.changes) {
    if (std::abs(change.to_speed) < 0.05 * stand.top_speed) continue;
    ++all;
    if (change.settling > std::max(8.0, 15 / std::max(crossover, 1e-3))) ++late;
    longest = std::max(longest, change.settling);
  }
  if (all < 3 || late < 0.7 * all || crossover <= 0) return;
  LikelyCause cause;
  cause.kind = CauseKind::loose_loop;
  cause.confidence = 0.55;
  cause.what = {"The loop is slow: after {0} of {1} changes of speed the tension is out of its window for long.",
                {count(late), count(all)}};
  cause.evidence.push_back(
      {"the longest took {0}; the loop as set should need about {1}", {duration(longest), duration(5 / crossover)}});
  cause.to_try.push_back({"tune with `holdback tune`: more gain or a shorter integral time", {}});
  causes.push_back(cause);
}

}  // namespace

void causes_of_setting(const Evidence& evidence, Causes& causes) {
  regulator(evidence, causes);
  hand_card(evidence, causes);
  sensors(evidence, causes);
  loose_loop(evidence, causes);
}

}  // namespace holdback::field
