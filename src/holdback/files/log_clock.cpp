#include "holdback/files/log_clock.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/model/date.hpp"

namespace holdback::files {
namespace {

/// Rows in succession, each behind the one before, that show that a clock was set back; fewer are rows that came late.
constexpr std::size_t rows_that_show_a_step = 16;

}  // namespace

void Intervals::add(const double* times, std::size_t count) {
  if (count == 0) return;
  // Interval i ends at times[i]; the first one begins at the last time before.
  for (; next_ < count; next_ += stride_) {
    const double before = next_ == 0 ? last_ : times[next_ - 1];
    if (!std::isnan(before)) kept_.push_back(times[next_] - before);
    if (kept_.size() < most) continue;
    std::size_t left = 0;
    for (std::size_t i = 0; i < kept_.size(); i += 2) kept_[left++] = kept_[i];
    kept_.resize(left);
    stride_ *= 2;
  }
  next_ -= count;
  last_ = times[count - 1];
}

double Intervals::percentile(double share) const {
  if (kept_.empty()) return 0;
  std::vector<double> sorted = kept_;
  const auto at = static_cast<std::ptrdiff_t>(share * static_cast<double>(sorted.size() - 1) + 0.5);
  std::nth_element(sorted.begin(), sorted.begin() + at, sorted.end());
  return sorted[static_cast<std::size_t>(at)];
}

LogClock::LogClock(const LogPlan& plan, double from, double to, std::size_t block_rows)
    : plan_(plan), from_(from), to_(to), block_rows_(block_rows) {}

void LogClock::take(LogRows& piece, double lines) {
  if (piece.rows == 0) return;
  if (!plan_.has_time) count_times(piece);
  const std::span<double> times(piece.time.data(), piece.rows);
  if (plan_.clock_alone) unwrap_days(times);
  if (!begun_) {
    begun_ = true;
    origin_ = times.front();
  }
  for (double& time : times) time -= origin_;
  if (held_.empty() && all_rise(times)) {
    if (shift_ != 0)
      for (double& time : times) time += shift_;
    last_ = times.back();
    return hand_on(piece, 0, piece.rows);
  }
  take_one_by_one(piece, lines);
}

void LogClock::recycle(LogBlock&& block) {
  block.rows = 0;
  for (auto& each : block.channel) each.clear();
  spare_.push_back(std::move(block));
}

void LogClock::finish() {
  drop_held();
  if (open_.rows > 0) blocks_.push_back(std::move(open_));
  open_ = {};
}

void LogClock::count_times(LogRows& piece) {
  piece.time.resize(piece.rows);
  for (double& time : piece.time) time = plan_.seconds_per_row * counted_++;
}

/// Times of day that fall by more than half a day go on in the next one; rows that came late over midnight go back.
void LogClock::unwrap_days(std::span<double> times) {
  for (double& time : times) {
    if (begun_ || &time != &times.front()) {
      if (time < stamp_ - seconds_a_day / 2) days_ += seconds_a_day;
      if (time > stamp_ + seconds_a_day / 2) days_ -= seconds_a_day;
    }
    stamp_ = time;
    time += days_;
  }
}

bool LogClock::all_rise(std::span<const double> times) const {
  bool rise = times.front() + shift_ > last_;
  for (std::size_t i = 1; i < times.size(); ++i) rise &= times[i] > times[i - 1];
  return rise;
}

void LogClock::take_one_by_one(LogRows& piece, double lines) {
  std::size_t run = 0;  // rows from here on rise and are not handed on yet
  for (std::size_t row = 0; row < piece.rows; ++row) {
    const double time = piece.time[row] + shift_;
    piece.time[row] = time;
    if (time > last_) {
      drop_held();
      last_ = time;
      continue;
    }
    hand_on(piece, run, row);
    run = row + 1;
    const double line = lines + piece.line_of(row);
    if (time == last_)
      repeat(piece, row, line);
    else
      step_back(piece, row, line);
  }
  hand_on(piece, run, piece.rows);
}

/// A row with the stamp of the row above gives it the readings that it lacks: recorders write channels apart.
void LogClock::repeat(const LogRows& piece, std::size_t row, double line) {
  if (++facts_.repeated == 1) facts_.repeated_line = line;
  if (open_.rows == 0) return;
  for (std::size_t i = 1; i < log_channels; ++i) {
    if (!plan_.has[i]) continue;
    double& reading = open_.channel[i].back();
    if (std::isnan(reading)) reading = piece.channel[i][row];
  }
}

/// A row before the one above waits until those behind it show what it is.
void LogClock::step_back(const LogRows& piece, std::size_t row, double line) {
  const double time = piece.time[row];
  if (!held_.empty() && time <= held_.back().time) drop_held();
  Held held;
  held.time = time;
  held.line = line;
  for (std::size_t i = 1; i < log_channels; ++i)
    if (plan_.has[i]) held.reading[i] = piece.channel[i][row];
  held_.push_back(held);
  if (held_.size() == rows_that_show_a_step) set_back();
}

/// The rows held go on from the last one, one usual interval later.
void LogClock::set_back() {
  if (++facts_.set_back == 1) facts_.set_back_line = held_.front().line;
  const double step = last_ + intervals_.percentile(0.5) - held_.front().time;
  shift_ += step;
  for (Held& held : held_) {
    held.time += step;
    if (!(held.time > last_)) continue;  // without any usual interval the first one repeats the last stamp
    last_ = held.time;
    hand_on(held);
  }
  held_.clear();
}

void LogClock::drop_held() {
  if (held_.empty()) return;
  if (facts_.before == 0) facts_.before_line = held_.front().line;
  facts_.before += static_cast<double>(held_.size());
  held_.clear();
}

void LogClock::hand_on(const Held& row) {
  LogRows one(0);
  one.rows = 1;
  one.time = {row.time};
  for (std::size_t i = 1; i < log_channels; ++i)
    if (plan_.has[i]) one.channel[i] = {row.reading[i]};
  hand_on(one, 0, 1);
}

void LogClock::hand_on(const LogRows& piece, std::size_t begin, std::size_t end) {
  const double* times = piece.time.data();
  if (begin < end) intervals_.add(times + begin, end - begin);
  const double* const first = std::lower_bound(times + begin, times + end, from_);
  const double* const stop = std::upper_bound(first, times + end, to_);
  behind_ = behind_ || stop < times + end;
  begin = static_cast<std::size_t>(first - times);
  end = static_cast<std::size_t>(stop - times);
  if (begin == end) return;
  if (rows_ == 0) first_ = times[begin];
  last_handed_ = times[end - 1];
  rows_ += static_cast<double>(end - begin);
  while (begin < end) {
    const std::size_t some = std::min(end - begin, block_rows_ - open_.rows);
    append(piece, begin, begin + some);
    begin += some;
    if (open_.rows < block_rows_) continue;
    blocks_.push_back(std::move(open_));
    open_ = {};
    if (spare_.empty()) continue;
    open_ = std::move(spare_.back());
    spare_.pop_back();
  }
}

void LogClock::append(const LogRows& piece, std::size_t begin, std::size_t end) {
  const auto copy = [&](const std::vector<double>& from, std::vector<double>& to) {
    if (to.capacity() < block_rows_) to.reserve(block_rows_);
    to.insert(to.end(), from.begin() + static_cast<std::ptrdiff_t>(begin),
              from.begin() + static_cast<std::ptrdiff_t>(end));
  };
  copy(piece.time, open_.of(LogChannel::time));
  for (std::size_t i = 1; i < log_channels; ++i)
    if (plan_.has[i]) copy(piece.channel[i], open_.channel[i]);
  open_.rows += end - begin;
}

}  // namespace holdback::files
