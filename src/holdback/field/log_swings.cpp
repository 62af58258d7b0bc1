// What swings by itself: which of loop and stick-slip its frequency follows, and at which speeds.
#include <algorithm>
#include <cmath>

#include <numbers>

#include "holdback/field/log_causes.hpp"

namespace holdback::field {

namespace {

using std::numbers::pi;

constexpr double least_amplitude = 0.015;  // [1] of the setpoint
constexpr double least_share = 0.2;        // [1] of the variance of a stretch

bool swings_freely(const LogStand& stand, const Swing& swing) {
  // Hard swings with slack in between are pulses: their fundamental makes a small share.
  const bool hard = swing.deviation > 0.2 * stand.tension.setpoint && swing.share > 0.03;
  return swing.frequency > 0 && swing.amplitude > least_amplitude * stand.tension.setpoint &&
         (swing.share > least_share || hard);
}

/// Lines that the roll and known idlers make for certain: sharp by turn or by web.
class Explained {
 public:
  Explained(const LogStand& stand, const LogFacts& facts) : stand_(stand) {
    const double least = 0.5 * least_amplitude * stand.tension.setpoint;
    keep(facts.by_order, least, orders_);
    keep(facts.by_web, least, webs_);
    keep(facts.by_time, least, times_);
    order_step_ = facts.by_order.step;
    web_step_ = facts.by_web.step;
  }

  bool is(const Swing& swing, double resolution) const {
    if (swing.radius > 0 && swing.speed > 0) {
      const double order = swing.frequency * swing.radius / swing.speed;
      const double off = 1.6 * resolution * swing.radius / swing.speed;
      for (const Sharp& line : orders_) {
        const double whole = std::round(line.place);
        if (whole < 1 || whole > 8 || std::abs(line.place - whole) > 0.4 * order_step_ + 0.006 * whole) continue;
        if (std::abs(order - whole) < off + 0.01 * whole && swing.amplitude < 4 * line.amplitude &&
            !is_sharper_by_time(swing.frequency, resolution, line))
          return true;
      }
    }
    for (const KnownIdler& idler : stand_.idlers) {
      const double place = 1 / (pi * idler.diameter);
      for (const Sharp& line : webs_)
        if (std::abs(line.place - place) < 1.2 * web_step_ + 0.006 * place &&
            std::abs(swing.frequency - 2 * pi * place * swing.speed) < 1.6 * resolution &&
            swing.amplitude < 1.6 * line.amplitude)
          return true;
    }
    return false;
  }

 private:
  struct Sharp {
    double place, amplitude, sharp;
  };
  static void keep(const numerics::Spectrum& density, double least, std::vector<Sharp>& to) {
    if (density.value.empty()) return;
    for (const numerics::Line& line : numerics::find_lines(density, numerics::noise_floor(density, 40), 1e-4)) {
      if (line.amplitude < least || to.size() > 30) break;
      const auto at = static_cast<std::size_t>(std::lround(line.place / density.step));
      const double sharp = std::sqrt(3 * density.value[at] * density.step);
      if (sharp > 0.45 * line.amplitude) to.push_back({line.place, line.amplitude, sharp});
    }
  }
  bool is_sharper_by_time(double frequency, double resolution, const Sharp& line) const {
    return std::any_of(times_.begin(), times_.end(), [&](const Sharp& other) {
      return std::abs(2 * pi * other.place - frequency) < 1.6 * resolution && other.sharp > 1.2 * line.sharp;
    });
  }
  const LogStand& stand_;
  std::vector<Sharp> orders_{}, webs_{}, times_{};
  double order_step_{}, web_step_{};
};

double at(std::vector<double> values, double share) {
  std::sort(values.begin(), values.end());
  return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
}

/// 1 within the band, falling to 0 at a third beyond.
double within(double value, double low, double high) {
  if (value <= 0) return 0;
  if (value < low) return std::clamp(1 - std::log(low / value) / std::log(1.35), 0.0, 1.0);
  if (value > high) return std::clamp(1 - std::log(value / high) / std::log(1.35), 0.0, 1.0);
  return 1;
}

/// Shares of the stretches that swing, below and above a speed.
void by_speed(const LogStand& stand, const std::vector<Swing>& swings, SwingVerdict& verdict) {
  std::vector<double> speeds;
  for (const Swing& swing : swings) speeds.push_back(swing.speed);
  const double slow = at(speeds, 0.05), fast = at(speeds, 0.95);
  verdict.speeds = fast > 1.3 * slow;
  verdict.slow_share = verdict.fast_share = verdict.share;
  if (!verdict.speeds) return;
  const double middle = std::sqrt(slow * fast);
  double count[2]{}, free[2]{};
  for (const Swing& swing : swings) {
    const int which = swing.speed > middle ? 1 : 0;
    ++count[which];
    if (swings_freely(stand, swing)) ++free[which];
  }
  if (count[0] > 0) verdict.slow_share = free[0] / count[0];
  if (count[1] > 0) verdict.fast_share = free[1] / count[1];
}

}  // namespace

SwingVerdict judge_swings(const LogStand& stand, const LogFacts& facts) {
  SwingVerdict verdict;
  std::vector<double> frequency, amplitude, to_mode, to_turnover, quick, answer, pressure, second;
  std::vector<Swing> all = facts.swings;
  const Explained explained(stand, facts);
  for (Swing& swing : all)
    if (explained.is(swing, 2 * pi / std::max(facts.stretch, 1e-3))) swing.frequency = 0;
  for (const Swing& swing : all) {
    if (!swings_freely(stand, swing)) continue;
    frequency.push_back(swing.frequency);
    amplitude.push_back(swing.amplitude);
    pressure.push_back(swing.pressure);
    second.push_back(swing.second);
    const LoopPoint point = loop_at(stand, swing.radius > 0 ? swing.radius : facts.steady.radius);
    if (point.mode > 0) to_mode.push_back(swing.frequency / point.mode);
    if (point.turnover > 0) {
      to_turnover.push_back(swing.frequency / point.turnover);
      quick.push_back(std::max(1.0, point.quick_turnover / point.turnover));
      const double as_set = answer_of(stand, point, swing.frequency);
      if (as_set > 0) answer.push_back(swing.pressure / swing.amplitude / as_set);
    }
  }
  const auto found = static_cast<double>(frequency.size());
  if (frequency.empty()) return verdict;
  verdict.share = found / static_cast<double>(facts.swings.size());
  if (found < 2 && verdict.share < 0.5) return verdict;
  verdict.frequency = at(frequency, 0.5);
  verdict.lowest = at(frequency, 0.05);
  verdict.highest = at(frequency, 0.95);
  verdict.amplitude = at(amplitude, 0.5);
  verdict.pressure = at(pressure, 0.5);
  verdict.second = at(second, 0.5);
  if (!to_mode.empty()) verdict.to_mode = at(to_mode, 0.5);
  if (!to_turnover.empty()) verdict.to_turnover = at(to_turnover, 0.5);
  const double to_quick = quick.empty() ? 1 : at(quick, 0.5);
  if (!answer.empty()) verdict.answer = at(answer, 0.5);
  by_speed(stand, all, verdict);

  // A loop too tight swings where its phase turns over, faster while its integral stands at the end of its range,
  // slower when that is too quick, the air later than thought, or the web goes slack in between. Sticking makes the
  // roll's own swing slower, never faster.
  const bool slack = verdict.amplitude > 0.4 * stand.tension.setpoint;
  double loop = within(verdict.to_turnover, slack ? 0.12 : 0.35, 1.1 * to_quick);
  double stick = within(verdict.to_mode, slack ? 0.06 : 0.35, 1.12);
  const bool only_slow = verdict.speeds && verdict.slow_share > 0.4 && verdict.fast_share < 0.5 * verdict.slow_share;
  const bool at_all_speeds = verdict.speeds && verdict.fast_share > 0.7 * verdict.slow_share;
  // Torque that the pressure's swing makes, over the setpoint's; and over what would make this swing of the tension,
  // roll against web being a swing without loss: below it the pressure only follows.
  const double reach = facts.steady.radius > 0 ? verdict.pressure * stand.torque_per_pressure /
                                                     (facts.steady.radius * stand.tension.setpoint)
                                               : 0;
  const double needed =
      verdict.amplitude / stand.tension.setpoint * std::max(0.1, std::abs(1 - verdict.to_mode * verdict.to_mode));
  const bool driven = slack ? reach > 0.08 : reach > 0.3 * needed;
  if (only_slow) loop *= 0.35;
  if (loop > 0 && stick > 0) {
    // A pressure that answers the tension far more than the settings in the stand file would: the loop is tighter.
    if (verdict.answer > 1.6 && driven)
      stick *= 0.4;
    else if (verdict.answer > 0 && !driven)
      loop *= 0.3;
    else if (at_all_speeds)
      stick *= 0.4;
    // Nearer to one than to the other.
    const double low = std::log(verdict.to_turnover), high = std::log(verdict.to_turnover / to_quick);
    const double off_loop = std::max({0.0, -low, high}), off_mode = std::abs(std::log(verdict.to_mode));
    if (!slack && driven) (off_loop < off_mode ? stick : loop) *= 0.6;
  }
  const double strength = std::min(1.0, verdict.amplitude / (2 * least_amplitude * stand.tension.setpoint)) *
                          rises(std::max(verdict.share, verdict.speeds ? verdict.slow_share : 0), 0.05, 0.35);
  if (std::max(loop, stick) > 0.2) {
    verdict.source = loop >= stick ? PeakSource::loop : PeakSource::stick_slip;
    const double best = std::max(loop, stick), other = std::min(loop, stick);
    verdict.confidence = strength * best * (1 - 0.45 * other / best) * 0.97;
  } else if (verdict.amplitude > 0.1 * stand.tension.setpoint) {
    // Neither has this frequency; but without a loop nothing else swings so far by itself.
    verdict.source = verdict.to_turnover > 0 ? PeakSource::loop : PeakSource::stick_slip;
    verdict.confidence = 0.55 * strength;
  }
  return verdict;
}

}  // namespace holdback::field
