#include "holdback/field/pad_course.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "holdback/model/date.hpp"

namespace holdback::field {

namespace {

constexpr double usual_resolution = 1e-4;  // [m]
constexpr int years_that_count = 2 * 365;  // [days] of the log, for the work to come

std::optional<double> use_of(const HistoryEntry& entry, UseBasis basis) {
  if (basis == UseBasis::energy) return entry.energy;
  return basis == UseBasis::running_time ? entry.running_time : entry.rolls;
}

/// The day from which an entry of work counts.
int begin_of(const std::vector<HistoryEntry>& held, std::size_t index) {
  const HistoryEntry& entry = held[index];
  if (entry.since) return *entry.since;
  for (std::size_t i = index; i-- > 0;)
    if (held[i].kind == EntryKind::energy) return held[i].day;
  for (std::size_t i = index; i-- > 0;)
    if (held[i].kind == EntryKind::pads) return held[i].day;
  return held.front().day;
}

}  // namespace

UseLog::UseLog(const std::vector<HistoryEntry>& held, UseBasis basis) {
  if (basis == UseBasis::calendar) return;
  for (std::size_t i = 0; i < held.size(); ++i) {
    const auto use = held[i].kind == EntryKind::energy ? use_of(held[i], basis) : std::nullopt;
    if (!use) continue;
    int from = begin_of(held, i);
    if (!stretches_.empty()) from = std::max(from, stretches_.back().to);  // no day counts twice
    if (from >= held[i].day && !stretches_.empty())
      stretches_.back().use += *use;  // two entries of one day
    else if (from < held[i].day)
      stretches_.push_back({from, held[i].day, *use});
  }
  if (stretches_.empty()) return;
  first_ = stretches_.front().from;
  last_ = stretches_.back().to;
  double days = 0;
  double use = 0;
  for (const Stretch& each : stretches_) {
    days += each.to - each.from;
    use += each.use;
    if (each.to > last_ - years_that_count) periods_.push_back({static_cast<double>(each.to - each.from), each.use});
  }
  mean_ = use / days;
}

double UseLog::until(int day) const {
  const int from = std::min(first_, day);
  const int to = std::max(first_, day);
  double use = uncovered(from, to) * mean_;
  for (const Stretch& each : stretches_) {
    const int days = std::min(each.to, to) - std::max(each.from, from);
    if (days > 0) use += each.use * days / (each.to - each.from);
  }
  return day < first_ ? -use : use;
}

double UseLog::uncovered(int from, int to) const { return to > from ? to - from - covered(from, to) : 0; }

double UseLog::covered(int from, int to) const {
  double days = 0;
  for (const Stretch& each : stretches_) days += std::max(std::min(each.to, to) - std::max(each.from, from), 0);
  return days;
}

UseBasis basis_of(const std::vector<HistoryEntry>& held) {
  UseBasis best = UseBasis::calendar;
  double most = 0;
  for (const UseBasis basis : {UseBasis::energy, UseBasis::running_time, UseBasis::rolls}) {
    double days = 0;
    double use = 0;
    const UseLog log(held, basis);
    for (const UsePeriod& period : log.periods()) {
      days += period.days;
      use += period.use;
    }
    if (days <= most || !(use > 0)) continue;
    most = days;
    best = basis;
  }
  return best;
}

namespace {

using Pad = std::pair<std::string, std::string>;  // brake, pair

bool renews(const HistoryEntry& change, const Pad& pad) {
  return (change.brake.empty() || change.brake == pad.first) && (change.pair.empty() || change.pair == pad.second);
}

/// Follows one pad through the entries.
class Follower {
 public:
  Follower(const std::vector<HistoryEntry>& held, const UseLog& log, UseBasis basis,
           const std::optional<StandWear>& stand, Courses& out)
      : held_(held), log_(log), basis_(basis), stand_(stand), out_(out) {}

  void follow(const Pad& pad) {
    pad_ = pad;
    open_ = false;
    rates_.clear();
    limit_ = limit_known();
    for (const HistoryEntry& entry : held_) {
      if (entry.kind == EntryKind::pads && renews(entry, pad)) change(entry);
      if (entry.kind == EntryKind::wear && entry.brake == pad.first && entry.pair == pad.second) measure(entry);
    }
    if (!open_) return;
    close(out_.from, false);
    in_use();
  }

 private:
  double use_at(int day) const {
    if (basis_ == UseBasis::calendar) return day * seconds_a_day;
    return log_.until(day);
  }

  void begin(const HistoryEntry& entry, bool fitted) {
    HistoryEntry named;
    named.brake = pad_.first;
    named.pair = pad_.second;
    out_.all.emplace_back();
    PadCourse& course = out_.all.back();
    course.pad = pad_of(named);
    course.since = entry.day;
    course.fitted = fitted;
    open_ = true;
    measured_ = 0;
  }

  void close(int day, bool changed) {
    PadCourse& course = out_.all.back();
    course.use = std::max(use_at(day) - use_at(course.since), 0.0);
    if (changed) course.until = day;
    const WearLine line = line_of(course);
    if (line.spread > 0) course.rate = line.rate;
    open_ = false;
    if (changed && measured_ > 0 && line.spread > 0 && line.rate > 0) rates_.push_back(line.rate);
  }

  static WearLine line_of(const PadCourse& course) {
    std::vector<double> use;
    std::vector<double> depth;
    for (const CoursePoint& point : course.points) {
      use.push_back(point.use);
      depth.push_back(point.depth);
    }
    return wear_line(use, depth);
  }

  void change(const HistoryEntry& entry) {
    if (open_) close(entry.day, true);
    begin(entry, true);
    auto depth = depth_of(entry);
    if (!depth && !entry.thickness && stand_) {
      depth = stand_->usable_depth;
      out_.usable_depth_taken = true;
    }
    if (depth) out_.all.back().points.push_back({entry.day, 0, *depth, true});
  }

  void measure(const HistoryEntry& entry) {
    if (!open_) begin(entry, false);
    PadCourse& course = out_.all.back();
    course.hottest = course.hottest || entry.hottest;
    const auto depth = depth_of(entry);
    if (!depth) return out_.no_limit.push_back(name_of(entry));
    out_.resolution = std::max(out_.resolution, entry.resolution.value_or(usual_resolution));
    auto& points = course.points;
    if (!points.empty() && !points.back().fresh && points.back().day == entry.day) {
      points.back().depth = std::min(points.back().depth, *depth);  // the thinnest of what was measured together
      return;
    }
    points.push_back({entry.day, std::max(use_at(entry.day) - use_at(course.since), 0.0), *depth, false});
    ++measured_;
  }

  std::optional<double> depth_of(const HistoryEntry& entry) const {
    if (entry.depth) return entry.depth;
    const auto limit = entry.limit ? entry.limit : limit_;
    if (!entry.thickness || !limit) return std::nullopt;
    return *entry.thickness - *limit;
  }

  /// The maker's limit: the latest that was told for this pad, else for any, else new thickness less usable depth.
  std::optional<double> limit_known() const {
    std::optional<double> any;
    std::optional<double> own;
    std::optional<double> derived;
    for (const HistoryEntry& entry : held_) {
      const bool mine =
          entry.brake.empty() || (entry.brake == pad_.first && (entry.pair.empty() || entry.pair == pad_.second));
      if (entry.limit) any = entry.limit;
      if (entry.limit && mine) own = entry.limit;
      if (entry.kind == EntryKind::pads && entry.thickness && stand_ && *entry.thickness > stand_->usable_depth)
        derived = *entry.thickness - stand_->usable_depth;
    }
    return own ? own : any ? any : derived;
  }

  void in_use() {
    const PadCourse& course = out_.all.back();
    if (course.points.empty()) return;
    PadCase pad;
    pad.pad = course.pad;
    pad.measured = measured_;
    pad.used = course.use;
    for (const CoursePoint& point : course.points) {
      pad.use.push_back(point.use);
      pad.depth.push_back(point.depth);
    }
    pad.prior = prior();
    out_.in_use.push_back(std::move(pad));
  }

  /// Sets before this one, and the stand file; together by their inverse variances.
  std::optional<WearPrior> prior() {
    double precision = 0;
    double sum = 0;
    const auto add = [&](double rate, double uncertainty) {
      precision += 1 / (uncertainty * uncertainty);
      sum += rate / (uncertainty * uncertainty);
    };
    if (!rates_.empty()) {
      const auto count = static_cast<double>(rates_.size());
      double mean = 0;
      for (const double rate : rates_) mean += rate / count;
      add(mean, set_share * mean * std::sqrt(1 + 1 / count));
      out_.prior_from_sets = true;
    }
    if (const auto rate = expected_rate()) {
      add(*rate, data_sheet_share * *rate);
      out_.prior_from_stand = true;
    }
    if (!(precision > 0)) return std::nullopt;
    return WearPrior{sum / precision, 1 / std::sqrt(precision)};
  }

  std::optional<double> expected_rate() const {
    if (!stand_) return std::nullopt;
    const double life = basis_ == UseBasis::energy         ? stand_->expected.energy
                        : basis_ == UseBasis::running_time ? stand_->expected.life
                                                           : 0;
    if (!(life > 0) || !std::isfinite(life)) return std::nullopt;
    return stand_->usable_depth / life;
  }

  const std::vector<HistoryEntry>& held_;
  const UseLog& log_;
  UseBasis basis_;
  const std::optional<StandWear>& stand_;
  Courses& out_;
  Pad pad_{};
  std::optional<double> limit_{};  // [m] the maker's, for entries that do not tell it
  bool open_{};
  int measured_{};
  std::vector<double> rates_{};  // of sets that were changed
};

/// The pads that were measured; without any, those that were fitted.
std::vector<Pad> pads_of(const std::vector<HistoryEntry>& held) {
  for (const EntryKind kind : {EntryKind::wear, EntryKind::pads}) {
    std::vector<Pad> pads;
    std::set<Pad> seen;
    for (const HistoryEntry& entry : held)
      if (entry.kind == kind && seen.insert({entry.brake, entry.pair}).second)
        pads.emplace_back(entry.brake, entry.pair);
    if (!pads.empty()) return pads;
  }
  return {};
}

}  // namespace

Courses courses_of(const std::vector<HistoryEntry>& held, const UseLog& log, UseBasis basis,
                   const std::optional<StandWear>& stand) {
  Courses out;
  out.resolution = 0;
  for (const HistoryEntry& entry : held)
    if (entry.kind == EntryKind::pads || entry.kind == EntryKind::wear || entry.kind == EntryKind::energy)
      out.from = out.from == 0 ? entry.day : std::max(out.from, entry.day);
  Follower follower(held, log, basis, stand, out);
  for (const Pad& pad : pads_of(held)) follower.follow(pad);
  if (!(out.resolution > 0)) out.resolution = usual_resolution;
  std::sort(out.no_limit.begin(), out.no_limit.end());
  out.no_limit.erase(std::unique(out.no_limit.begin(), out.no_limit.end()), out.no_limit.end());
  return out;
}

}  // namespace holdback::field
