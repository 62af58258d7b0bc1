#include "holdback/files/read_log.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <deque>
#include <limits>
#include <numbers>
#include <utility>

#include "holdback/files/decimal.hpp"
#include "holdback/files/log_clock.hpp"
#include "holdback/files/log_columns.hpp"
#include "holdback/files/log_header.hpp"
#include "holdback/files/log_rows.hpp"
#include "holdback/files/log_troubles.hpp"
#include "holdback/numerics/ahead.hpp"
#include "holdback/numerics/parallel_for.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

constexpr std::size_t stretch = std::size_t{4} << 20U;       // bytes that are read at a time
constexpr std::size_t pieces = 4;                            // in which they are parsed
constexpr std::size_t head_bytes = std::size_t{256} << 10U;  // in which the head must stand
constexpr std::size_t longest_line = std::size_t{1} << 20U;  // bytes
constexpr double lines_that_show = 10'000;                   // after which a log that is bad throughout is given up

/// The text of an option as a value; nothing when it is empty or wrong, and then a problem.
std::optional<double> value_of(const std::string& option, const std::string& text, Quantity kind, Problems& problems) {
  if (text.empty()) return std::nullopt;
  const auto read = units::parse(text, kind);
  if (const double* value = std::get_if<double>(&read)) return *value;
  const auto& fault = std::get<units::Fault>(read);
  problems.push_back(option_problem(option, text, fault.what, fault.accepted));
  return std::nullopt;
}

/// "1000 Hz", "100/s", or a number alone.
std::optional<double> rate_of(const std::string& text, Problems& problems) {
  const auto bare = units::parse(text, Quantity::number);
  const double* number = std::get_if<double>(&bare);
  const auto rate = number != nullptr ? std::optional<double>(*number) : [&] {
    auto frequency = value_of("--rate", text, Quantity::frequency, problems);
    if (frequency) *frequency /= 2 * std::numbers::pi;
    return frequency;
  }();
  if (rate && !(*rate > 0 && *rate <= 1e9)) {
    problems.push_back(option_problem("--rate", text, "the rows a second are more than none and at most 1e9",
                                      "such as 1000 Hz, 100 Hz"));
    return std::nullopt;
  }
  return rate;
}

}  // namespace

struct LogReader::State {
  State(std::string log, LogBytes bytes_of, LogOptions wishes)
      : name(std::move(log)), read(std::move(bytes_of)), options(std::move(wishes)), ahead(options.threads != 1) {}

  void begin();
  bool fill(std::vector<char>& buffer, std::size_t from, std::size_t& filled);
  void work();
  std::vector<std::string_view> split(std::size_t size) const;
  void take(LogRows& piece);
  void close();
  bool next(LogBlock& block);

  std::string name;
  LogBytes read;
  LogOptions options;
  Problems problems{};
  LogReading reading{};
  LogHead head{};

  std::vector<char> now{};    // bytes that are parsed next, with padding behind them
  std::size_t size{};         // of them
  bool ends{};                // they are the last ones
  std::vector<char> later{};  // bytes that are read meanwhile
  std::vector<LogRows> rows{};
  std::optional<Troubles> troubles{};
  std::optional<LogClock> clock{};
  double lines{};
  double bytes{};         // parsed
  double bytes_handed{};  // behind the blocks in `ready`
  bool begun{};
  bool finished{};  // nothing is left to parse
  bool given_up{};
  bool closed{};
  bool working{};
  std::deque<LogBlock> ready{};
  std::vector<LogBlock> spare{};
  numerics::Ahead ahead;  // last: it must end before what it uses
};

/// Reads on behind the first `from` bytes, up to `filled`; true when the log ended.
bool LogReader::State::fill(std::vector<char>& buffer, std::size_t from, std::size_t& filled) {
  const std::size_t most = from + stretch;
  if (buffer.size() < most + decimal_padding) buffer.resize(most + decimal_padding);
  filled = from;
  bool end = false;
  while (filled < most && !end) {
    const std::size_t some = read ? read(buffer.data() + filled, most - filled) : 0;
    end = some == 0;
    filled += std::min(some, most - filled);
  }
  std::fill_n(buffer.begin() + static_cast<std::ptrdiff_t>(filled), decimal_padding, '\0');
  return end;
}

void LogReader::State::begin() {
  begun = true;
  reading.name = name;
  HeadOptions wishes{options.columns, rate_of(options.rate, problems), options.width};
  if (options.rate.empty()) {
    problems.clear();
    wishes.rows_per_second.reset();
  }
  const double from = value_of("--from", options.from, Quantity::duration, problems).value_or(0);
  const double to =
      value_of("--to", options.to, Quantity::duration, problems).value_or(std::numeric_limits<double>::infinity());
  if (from > to)
    problems.push_back(
        option_problem("--from", options.from, "the log would begin behind its end, --to", "an earlier time"));
  ends = fill(now, 0, size);
  const std::size_t looked_at = std::min(size, head_bytes);
  head = read_log_head({now.data(), looked_at}, ends && looked_at == size, name, wishes);
  problems.insert(problems.end(), head.problems.begin(), head.problems.end());
  reading.assumptions = head.assumptions;
  reading.first_stamp = head.plan.first_stamp;
  troubles.emplace(head.plan.cells.size());
  clock.emplace(head.plan, from, to, block_rows);
  finished = has_errors(problems);
  if (finished) return;
  rows.assign(pieces, LogRows(head.plan.cells.size()));
  lines = head.line - 1;
  bytes = static_cast<double>(head.begin);
  now.erase(now.begin(), now.begin() + static_cast<std::ptrdiff_t>(head.begin));
  size -= head.begin;
}

/// Whole lines, in pieces of about the same size; the last one ends where the text does.
std::vector<std::string_view> LogReader::State::split(std::size_t whole) const {
  std::vector<std::string_view> parts;
  std::size_t from = 0;
  for (std::size_t i = 1; i <= pieces && from < whole; ++i) {
    std::size_t to = i == pieces ? whole : std::max(from, whole * i / pieces);
    while (to < whole && to > 0 && now[to - 1] != '\n') ++to;
    if (to > from) parts.emplace_back(now.data() + from, to - from);
    from = std::max(from, to);
  }
  return parts;
}

/// Parses what was read, while the next bytes are read.
void LogReader::State::work() {
  bool cut_off = false;
  if (ends && size > 0 && now[size - 1] != '\n') {
    cut_off = true;
    now[size++] = '\n';  // the padding has room for it
    now.push_back('\0');
  }
  std::size_t whole = size;
  while (whole > 0 && now[whole - 1] != '\n') --whole;
  const std::size_t rest = size - whole;
  if (rest > longest_line) {
    given_up = finished = true;
    Problem problem =
        option_problem("", "", "a line has no end within a million bytes", "a log with a line for each row");
    problem.file = name;
    problem.where = {static_cast<int>(std::min(lines + 1, 2e9)), 1};
    problems.push_back(std::move(problem));
    return;
  }
  const auto parts = split(whole);
  const bool last = ends;
  if (later.size() < rest + decimal_padding) later.resize(rest + decimal_padding);
  std::copy_n(now.begin() + static_cast<std::ptrdiff_t>(whole), rest, later.begin());
  std::size_t filled = rest;
  bool ended = true;
  numerics::parallel_for(parts.size() + 1, options.threads, [&](std::size_t i) {
    if (i == 0) {
      if (!last) ended = fill(later, rest, filled);
      return;
    }
    rows[i - 1].clear();
    read_rows(parts[i - 1], head.plan, cut_off && i == parts.size(), rows[i - 1]);
  });
  for (std::size_t i = 0; i < parts.size(); ++i) take(rows[i]);
  bytes += static_cast<double>(cut_off ? whole - 1 : whole);
  const bool hopeless = lines >= lines_that_show && 2 * troubles->rows_lost() > lines;
  if (last || clock->is_behind() || hopeless) {
    finished = true;
    return clock->finish();
  }
  std::swap(now, later);
  size = filled;
  ends = ended;
}

void LogReader::State::take(LogRows& piece) {
  troubles->add(piece.troubles, lines);
  clock->take(piece, lines);
  lines += static_cast<double>(piece.lines);
}

/// What there is to tell at the end.
void LogReader::State::close() {
  if (std::exchange(closed, true)) return;
  reading.bytes = bytes;
  reading.lines = lines;
  if (!clock || rows.empty()) return;
  reading.rows = clock->rows();
  reading.span = clock->last() - clock->first();
  reading.interval = clock->intervals().percentile(0.5);
  reading.interval_spread = clock->intervals().percentile(0.95) - clock->intervals().percentile(0.05);
  const double body = lines - (head.line - 1);
  Problems found = bad_throughout(*troubles, head.plan, body, body - troubles->rows_lost(), name);
  const bool bad = has_errors(found);
  for (const Problems& more : {told(*troubles, head.plan, name, reading), told(clock->facts(), name, reading)})
    if (!bad) found.insert(found.end(), more.begin(), more.end());
  if (reading.rows == 0 && !bad && !has_errors(problems)) {
    Problem none = option_problem("", "", "no row of the log can be read", "rows of numbers below the head");
    if (!options.from.empty() || !options.to.empty()) none.accepted.text += fmt::format(", between --from and --to");
    none.file = name;
    none.where = {head.line, 1};
    found.push_back(std::move(none));
  }
  problems.insert(problems.end(), found.begin(), found.end());
}

bool LogReader::State::next(LogBlock& block) {
  if (!begun) begin();
  if (block.channel[0].capacity() > 0) spare.push_back(std::move(block));
  block = {};
  const auto start = [&] {
    for (LogBlock& each : spare) clock->recycle(std::move(each));
    spare.clear();
    working = true;
    ahead.start([this] { work(); });
  };
  while (ready.empty()) {
    if (!working && finished) return close(), false;
    if (!working) start();
    ahead.wait();
    working = false;
    ready.swap(clock->blocks());
    bytes_handed = bytes;
    if (!finished) start();
  }
  block = std::move(ready.front());
  ready.pop_front();
  return true;
}

LogReader::LogReader(std::string name, LogBytes read, LogOptions options)
    : state_(std::make_unique<State>(std::move(name), std::move(read), std::move(options))) {}

LogReader::~LogReader() = default;

bool LogReader::next(LogBlock& block) { return state_->next(block); }

const Problems& LogReader::problems() const { return state_->problems; }

const LogReading& LogReader::reading() const { return state_->reading; }

const std::vector<ColumnRead>& LogReader::columns() const { return state_->head.columns; }

double LogReader::bytes() const { return state_->bytes_handed; }

}  // namespace holdback::files
