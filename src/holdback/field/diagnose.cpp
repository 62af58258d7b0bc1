#include "holdback/field/diagnose.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <stdexcept>
#include <utility>

#include "holdback/field/friction_track.hpp"
#include "holdback/field/log_changes.hpp"
#include "holdback/field/log_channels.hpp"
#include "holdback/field/log_facts.hpp"
#include "holdback/field/log_notes.hpp"
#include "holdback/field/log_phases.hpp"
#include "holdback/field/log_trace.hpp"
#include "holdback/field/orders.hpp"
#include "holdback/field/plateaus.hpp"
#include "holdback/results/motion.hpp"

namespace holdback::field {

namespace {

using std::numbers::pi;

constexpr std::size_t rows_to_begin = 4000;  // from which the interval is learnt
constexpr double usual_bucket = 0.25;        // [s]
constexpr double least_rows = 5;             // in a bucket
constexpr double settled_after = 2;          // [s] of steady speed, before swings are looked for
constexpr std::size_t most_gaps = 20;
constexpr std::size_t held_rows = 5;  // without a tension that are bridged

/// Tension over one kind of phase, summed up.
struct PhaseSums {
  double time{}, inside{}, below{}, above{}, sum{}, squares{}, shift{};
  double lowest{1e300}, highest{-1e300};
  bool begun{};

  void add(double tension, double step, const TensionTarget& target) {
    if (!begun) {
      begun = true;
      shift = tension;
    }
    time += step;
    const double off = tension - shift;
    sum += off * step;
    squares += off * off * step;
    (tension < target.low ? below : tension > target.high ? above : inside) += step;
    lowest = std::min(lowest, tension);
    highest = std::max(highest, tension);
  }

  PhaseTension facts(LogPhase phase, double all) const {
    const double mean = sum / time;
    return {phase,
            time,
            all > 0 ? time / all : 0,
            inside / time,
            below / time,
            above / time,
            shift + mean,
            std::sqrt(std::max(0.0, squares / time - mean * mean)),
            lowest,
            highest};
  }
};

/// The first group of a spectrum's entries that is at most `most` long: the highest of each group.
LogSpectrum shown(const numerics::Spectrum& density, double to_place, std::size_t most) {
  LogSpectrum made;
  if (density.value.size() < 2) return made;
  made.resolution = density.step * to_place;
  made.segments = density.segments;
  const auto floor = numerics::noise_floor(density, 40);
  const std::size_t group = (density.value.size() - 1 + most - 1) / most;
  // Amplitude of a line whose density this is: a Hann line is 1.5 entries wide.
  const auto amplitude = [&](double value) { return std::sqrt(3 * value * density.step); };
  for (std::size_t begin = 1; begin < density.value.size(); begin += group) {
    const std::size_t end = std::min(begin + group, density.value.size());
    double highest = 0, noise = 0;
    for (std::size_t i = begin; i < end; ++i) {
      highest = std::max(highest, density.value[i]);
      noise += floor[i] / static_cast<double>(end - begin);
    }
    made.place.push_back(to_place * density.step * (static_cast<double>(begin) + static_cast<double>(group - 1) / 2));
    made.amplitude.push_back(amplitude(highest));
    made.floor.push_back(amplitude(noise));
  }
  return made;
}

}  // namespace

struct LogJudge::State {
  explicit State(LogStand known)
      : stand(std::move(known)), phases(stand), changes(stand), friction(stand), plateaus(stand) {}

  LogStand stand;
  std::array<bool, log_channels> has{};
  bool shaped{};

  // before the interval is known
  std::vector<LogRow> waiting{};
  bool begun{};
  double interval{};
  double bucket_length{};
  double hole{};

  // rows
  double rows{};
  double first_time{}, last_time{};
  bool any{};
  double held_speed{no_reading};
  double longest_gap{};
  double gaps{};
  std::vector<LogGap> longest_gaps{};
  std::vector<ChannelWatch> watches{};
  std::vector<LogChannel> watched{};
  std::vector<double> pairs_time{};  // [s] with so many pairs
  LogBucket bucket{};
  double bucket_run{};
  double web_run{};
  double moving{};

  // buckets
  std::optional<DiameterTrack> diameter{};
  PhaseFinder phases;
  ChangeFinder changes;
  FrictionKeeper friction;
  PlateauFinder plateaus;
  TraceKeeper trace{};
  std::array<PhaseSums, static_cast<std::size_t>(last_log_phase) + 1> sums{};

  // swings
  std::optional<LogSpectra> spectra{};
  bool feeding{};
  double angle{};
  double fed_run{};
  double last_tension{no_reading};
  std::size_t held{};
  SteadyRun steady{};
  double last_diameter{};

  bool has_channel(LogChannel c) const { return has[static_cast<std::size_t>(c)]; }

  void shape(const LogBlock& block) {
    for (std::size_t c = 0; c < log_channels; ++c) has[c] = !block.channel[c].empty();
    if (!has_channel(LogChannel::time) || !has_channel(LogChannel::tension))
      throw std::invalid_argument("a log needs times and tensions");
    shaped = true;
  }

  void begin() {
    begun = true;
    std::vector<double> steps;
    for (std::size_t i = 1; i < waiting.size(); ++i) steps.push_back(waiting[i].time() - waiting[i - 1].time());
    interval = steps.empty() ? 1 : median_of(std::move(steps));
    if (!(interval > 0)) interval = 1e-3;
    interval = std::max(interval, least_log_interval);  // else filters would grow without end
    bucket_length = std::max(usual_bucket, least_rows * interval);
    hole = std::max(8 * interval, 0.02);
    moving = moving_from(stand);
    diameter.emplace(stand, has_channel(LogChannel::diameter), has_channel(LogChannel::turns));
    spectra.emplace(stand, 1 / interval);
    for (std::size_t c = 1; c < log_channels; ++c) {
      if (!has[c]) continue;
      const auto channel = static_cast<LogChannel>(c);
      watched.push_back(channel);
      watches.emplace_back(channel, scale_of(channel));
    }
    for (LogRow& row : waiting) take(row);
    waiting.clear();
    waiting.shrink_to_fit();
  }

  double scale_of(LogChannel channel) const {
    switch (channel) {
      case LogChannel::tension:
        return stand.tension.setpoint;
      case LogChannel::speed:
        return std::max(stand.speed, 1e-3);
      case LogChannel::diameter:
        return stand.core_radius;
      default:
        return 1e300;  // nothing is far off
    }
  }

  void take(LogRow& row) {
    const double time = row.time();
    row.step = any ? time - last_time : 0;
    const bool broken = any && row.step > hole;
    if (any) longest_gap = std::max(longest_gap, row.step);
    if (broken) {
      ++gaps;
      note_gap({last_time, time});
      row.step = 0;
      flush();
      bucket.after_hole = true;
      held_speed = no_reading;
    }
    if (!any) {
      first_time = time;
      bucket.begin = time;
      bucket.after_hole = true;
    }
    any = true;
    last_time = time;
    ++rows;
    double& speed = row[LogChannel::speed];
    if (!has_channel(LogChannel::speed)) speed = stand.speed;
    const double speed_now = std::isnan(speed) ? held_speed : speed;
    for (std::size_t i = 0; i < watches.size(); ++i) {
      const std::size_t odd = watches[i].put(row[watched[i]], time, row.step, speed_now > moving);
      if (odd > 0) forget(watched[i], odd);
    }
    if (!std::isnan(speed)) held_speed = speed;
    if (bucket.rows.empty()) bucket.begin = time;
    if (!std::isnan(speed_now)) bucket_run += std::max(0.0, speed_now) * row.step;
    const double pairs = row[LogChannel::pairs];
    if (pairs >= 0 && pairs < 1000) {
      const auto which = static_cast<std::size_t>(pairs + 0.5);
      if (pairs_time.size() <= which) pairs_time.resize(which + 1);
      pairs_time[which] += row.step;
    }
    bucket.rows.push_back(row);
    if (time - bucket.begin >= bucket_length - 1.5 * interval) flush();
  }

  void note_gap(const LogGap& gap) {
    const auto length = [](const LogGap& g) { return g.end - g.begin; };
    if (longest_gaps.size() < most_gaps) {
      longest_gaps.push_back(gap);
      return;
    }
    const auto least = std::min_element(longest_gaps.begin(), longest_gaps.end(),
                                        [&](const LogGap& a, const LogGap& b) { return length(a) < length(b); });
    if (length(*least) < length(gap)) *least = gap;
  }

  /// A dropout came to its end: its rows, those before this one, have no reading. Rows of the bucket before are left.
  void forget(LogChannel channel, std::size_t count) {
    const std::size_t here = bucket.rows.size();
    for (std::size_t i = here - std::min(count, here); i < here; ++i) bucket.rows[i][channel] = no_reading;
  }

  void flush() {
    if (bucket.rows.empty()) return;
    LogBucket full = std::move(bucket);
    bucket = LogBucket{};
    full.end = full.rows.back().time() + interval;
    for (const LogRow& row : full.rows)
      for (std::size_t c = 1; c < log_channels; ++c) full.mean[c].add(row.value[c]);
    web_run += bucket_run;
    full.web_run = web_run;
    diameter->put(full, bucket_run);
    full.radius = diameter->radius();
    full.new_roll = diameter->new_roll();
    bucket_run = 0;
    LogBucket judged;
    if (phases.put(std::move(full), judged)) judge(judged);
  }

  void judge(const LogBucket& judged) {
    PhaseSums& sum = sums[static_cast<std::size_t>(judged.phase)];
    for (const LogRow& row : judged.rows) {
      const double tension = row[LogChannel::tension];
      if (!std::isnan(tension)) sum.add(tension, row.step > 0 ? row.step : interval, stand.tension);
    }
    changes.put(judged);
    trace.put(judged);
    friction.put(judged);
    plateaus.put(judged);
    if (judged.radius > 0) last_diameter = 2 * judged.radius;
    feed(judged);
  }

  void stop_feeding() {
    if (feeding) spectra->cut();
    feeding = false;
  }

  /// Rows of steady run into the spectra.
  void feed(const LogBucket& judged) {
    const double speed = judged.of(LogChannel::speed);
    if (judged.phase != LogPhase::steady || judged.settled < settled_after || judged.after_hole || judged.new_roll ||
        std::isnan(speed)) {
      stop_feeding();
      return;
    }
    const double weight = judged.length();
    steady.speed = (steady.speed * steady.time + speed * weight) / (steady.time + weight);
    steady.slowest = std::min(steady.slowest, speed);
    steady.fastest = std::max(steady.fastest, speed);
    if (judged.radius > 0) {
      steady.radius = (steady.radius * steady.time + judged.radius * weight) / (steady.time + weight);
      steady.smallest = std::min(steady.smallest, judged.radius);
      steady.largest = std::max(steady.largest, judged.radius);
    }
    steady.time += weight;
    const double per_metre = judged.radius > 0 ? 1 / judged.radius : no_reading;
    for (const LogRow& row : judged.rows) {
      const double tension = row[LogChannel::tension];
      if (std::isnan(tension) ? ++held > held_rows || std::isnan(last_tension) : false) {
        stop_feeding();
        continue;
      }
      if (!std::isnan(tension)) {
        held = 0;
        last_tension = tension;
      }
      const double own = row[LogChannel::speed];
      const double run = std::max(0.0, std::isnan(own) ? speed : own) * row.step;
      fed_run += run;
      angle = per_metre > 0 ? (std::isnan(angle) ? 0 : angle) + run * per_metre : no_reading;
      feeding = true;
      spectra->put(row.time(), last_tension, angle, fed_run, row[LogChannel::pressure]);
    }
  }

  Diagnosis finish();
};

LogJudge::LogJudge(LogStand stand) : state_(std::make_unique<State>(std::move(stand))) {}
LogJudge::~LogJudge() = default;

void LogJudge::put(const LogBlock& block) {
  if (block.rows == 0) return;
  State& s = *state_;
  if (!s.shaped) s.shape(block);
  for (std::size_t c = 0; c < log_channels; ++c)
    if (block.channel[c].size() != (s.has[c] ? block.rows : 0))
      throw std::invalid_argument("a block of another shape than the first");
  LogRow row;
  for (std::size_t i = 0; i < block.rows; ++i) {
    for (std::size_t c = 0; c < log_channels; ++c) row.value[c] = s.has[c] ? block.channel[c][i] : no_reading;
    if (s.begun) {
      s.take(row);
      continue;
    }
    s.waiting.push_back(row);
    if (s.waiting.size() == rows_to_begin) s.begin();
  }
}

Diagnosis LogJudge::finish() { return state_->finish(); }

Diagnosis LogJudge::State::finish() {
  if (!begun && !waiting.empty()) begin();
  Diagnosis made;
  made.title = stand.title;
  made.log = stand.log;
  made.job = stand.job;
  made.tension = stand.tension;
  made.control = std::string(key_of(stand.control));
  made.pairs = stand.pairs;
  if (!pairs_time.empty())
    made.pairs = static_cast<int>(std::max_element(pairs_time.begin(), pairs_time.end()) - pairs_time.begin());
  if (!begun) {  // no row at all
    made.state = holdback::State::fails;
    LikelyCause none;
    none.what = {"The log has no rows.", {}};
    made.causes.push_back(none);
    made.verdict = none.what;
    return made;
  }
  flush();
  LogBucket judged;
  while (phases.finish(judged)) judge(judged);
  changes.finish();
  plateaus.finish();

  made.rows = rows;
  made.begin = first_time;
  made.end = last_time;
  made.interval = interval;
  made.longest_gap = longest_gap;
  made.gaps = gaps;
  made.longest_gaps = longest_gaps;
  std::sort(made.longest_gaps.begin(), made.longest_gaps.end(),
            [](const LogGap& a, const LogGap& b) { return a.begin < b.begin; });
  for (const ChannelWatch& watch : watches) made.channels.push_back(watch.facts());
  made.diameter_source = diameter->source();
  made.first_diameter = diameter->first_diameter();
  made.last_diameter = last_diameter;
  made.web_run = web_run;
  made.steady_speed = steady.speed;
  made.steady_diameter = 2 * steady.radius;
  double all = 0;
  for (const PhaseSums& sum : sums) all += sum.time;
  for (std::size_t i = 0; i < sums.size(); ++i)
    if (sums[i].time > 0) made.phases.push_back(sums[i].facts(static_cast<LogPhase>(i), all));
  made.changes = changes.changes();
  made.changes_found = changes.found();
  made.friction = friction.track();
  made.hand_turns = plateaus.turns();
  made.hand_turns_found = plateaus.turns_found();
  made.trace = trace.trace(has_channel(LogChannel::pressure));

  LogFacts facts;
  facts.steady = steady;
  facts.steady.rate = 1 / interval;
  facts.by_time = spectra->by_time();
  facts.by_order = spectra->by_order();
  facts.by_web = spectra->by_web();
  facts.swings = spectra->swings().swings();
  facts.stretch = spectra->swings().stretch();
  facts.plateaus = plateaus.facts();
  facts.friction_line = friction.line();
  facts.friction = friction.stretches();
  made.by_frequency = shown(facts.by_time, 2 * pi, 2000);
  made.by_order = shown(facts.by_order, 1, 2000);
  const LoopPoint point = loop_at(stand, steady.radius);
  made.loop_frequency = point.crossover;
  made.mode_frequency = point.mode;
  const SwingVerdict swing = judge_swings(stand, facts);
  made.peaks = peaks_of(stand, facts, swing);
  made.causes = causes_of(stand, facts, swing, made);
  made.verdict = made.causes.front().what;
  made.state = state_of_log(stand, made);
  log_notes(stand, has, made);
  return made;
}

}  // namespace holdback::field
