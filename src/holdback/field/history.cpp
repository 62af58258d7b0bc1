#include "holdback/field/history.hpp"

#include <algorithm>
#include <string_view>

#include "holdback/field/trend.hpp"
#include "holdback/model/date.hpp"

namespace holdback::field {

namespace {

constexpr std::size_t most_draws = 400'000;  // of one pad each
constexpr std::size_t few_measured = 3;
constexpr double wide = 1.0;  // [1] width of the interval over its middle from which it is called wide

std::string pad_words(const std::string& pad) { return pad.empty() ? "the thinnest pad" : pad; }

std::string joined(const std::vector<std::string>& words) {
  constexpr std::size_t most = 5;
  std::string out;
  for (std::size_t i = 0; i < std::min(words.size(), most); ++i) out += (i > 0 ? ", " : "") + words[i];
  if (words.size() > most) out += " and " + std::to_string(words.size() - most) + " more";
  return out;
}

bool last_is_worn(const PadCourse& course) { return !course.points.empty() && !(course.points.back().depth > 0); }

/// What is missing, in the order in which it helps.
class Advice {
 public:
  Advice(const std::vector<HistoryEntry>& held, const UseLog& log, const Courses& courses, History& history)
      : held_(held), log_(log), courses_(courses), history_(history) {}

  void write() {
    limits();
    depths();
    work();
    sharper();
  }

 private:
  void add(std::string text, std::vector<Amount> amounts = {}) {
    history_.measure_next.push_back({std::move(text), std::move(amounts)});
  }
  bool has(EntryKind kind) const {
    return std::any_of(held_.begin(), held_.end(), [kind](const HistoryEntry& each) { return each.kind == kind; });
  }

  void limits() {
    if (courses_.no_limit.empty()) return;
    add("the maker's wear limit is not known, so that the thickness of " + joined(courses_.no_limit) +
        " tells no depth: give `limit` with one measurement");
  }

  void depths() {
    if (!has(EntryKind::wear))
      return add(has(EntryKind::pads) ? "no pad was measured: measure the depth left of the hottest pad of each brake"
                                      : "neither a change of pads nor a depth was written down: begin with the depth "
                                        "left of the hottest pad of each brake");
    if (history_.forecast) return few();
    const bool any = std::any_of(courses_.in_use.begin(), courses_.in_use.end(), can_forecast);
    if (any) return add("the depths measured so far show no wear: measure again after more work");
    if (courses_.no_limit.empty())
      add("one depth of a set tells no rate: measure again after more work, the same pads at the same place");
  }

  void few() {
    std::vector<std::string> seldom;
    for (const PadForecast& pad : history_.forecast->pads)
      if (pad.measured < static_cast<int>(few_measured)) seldom.push_back(pad_words(pad.pad));
    if (seldom.empty()) return;
    add("measured fewer than three times since new: " + joined(seldom) +
        "; how far readings scatter is then assumed more than seen, so measure again, the same pads at the same place");
  }

  void work() {
    if (!log_.empty() && history_.forecast && log_.periods().size() < few_measured)
      add("the log has fewer than three periods, so that the spread of the work to come is assumed rather than seen: "
          "go "
          "on logging");
    if (log_.empty() && has(EntryKind::energy))
      add("nothing says from when the entries `energy` count: give `since` with the first of them");
    else if (log_.empty())
      add("no work is logged, so that wear is counted by days: log the friction energy (or running time, or rolls) "
          "since "
          "the last entry");
  }

  void sharper() {
    if (!history_.forecast) return;
    const Forecast& forecast = *history_.forecast;
    const int ahead = std::max(forecast.date.middle - forecast.from, 1);
    const bool broad = !forecast.date.high || *forecast.date.high - forecast.date.low > wide * ahead;
    if (forecast.date.low <= forecast.from) return add("the change may be due already: measure every pad now");
    add(std::string(broad ? "the interval is wide, and most of it comes from " : "most of the interval comes from ") +
        (forecast.wear_share > 0.5 ? "the wear: measure every pad again by "
                                   : "the work to come, which only time tells; "
                                     "measure every pad again by ") +
        date_text(forecast.measure_by));
  }

  const std::vector<HistoryEntry>& held_;
  const UseLog& log_;
  const Courses& courses_;
  History& history_;
};

/// What the models assume, as far as it matters here.
class Assumed {
 public:
  Assumed(const UseLog& log, UseBasis basis, const Courses& courses, History& history)
      : log_(log), basis_(basis), courses_(courses), history_(history) {}

  void write() {
    if (history_.courses.empty()) return;
    add("depth is what is left of a pad above the maker's wear limit; of several pads measured under one name on one "
        "day "
        "the thinnest counts");
    if (courses_.usable_depth_taken)
      add("pads without a depth of their own when new are as deep as the stand file says");
    if (!history_.forecast) return;
    lines();
    work();
  }

 private:
  void add(std::string text, std::vector<Amount> amounts = {}) {
    history_.assumptions.push_back({std::move(text), std::move(amounts)});
  }

  void lines() {
    add("each pad wears straight in " + std::string(words_of(basis_)) +
            "; the readings of all pads scatter alike: by what is seen of it, and by the gauge's step of {0} with the "
            "weight of two readings",
        {{courses_.resolution, Quantity::short_length}});
    if (courses_.prior_from_stand)
      add("before pads were measured their rate is that of the stand file, within a factor of two nine times out of "
          "ten "
          "(common practice, no source)");
    if (courses_.prior_from_sets)
      add("a set of pads wears like the sets before it, within {0} (standard; common practice, no source)",
          {{set_share, Quantity::ratio}});
    add("interval of 90 %: quantiles of 5 and 95 % of " + std::to_string(history_.forecast->samples) +
        " random draws with a fixed seed, of the pad that is worn first");
  }

  void work() {
    if (basis_ == UseBasis::calendar) return;
    add("the work goes on as in the last two years of the log, and varies from month to month as there; {0} a month "
        "with "
        "the weight of three periods is assumed beside it",
        {{work_spread, Quantity::ratio}});
    double days = 0;
    for (const PadCourse& course : history_.courses)
      if (!course.until) days = std::max(days, log_.uncovered(course.since, courses_.from));
    if (days > 0)
      add("{0} days since the pads were new are in no entry of the log; they count at its mean",
          {{days, Quantity::number}});
  }

  const UseLog& log_;
  UseBasis basis_;
  const Courses& courses_;
  History& history_;
};

std::optional<Interval> running_time(const std::vector<HistoryEntry>& held, UseBasis basis, const Forecast& forecast) {
  if (basis == UseBasis::running_time || basis == UseBasis::calendar) return std::nullopt;
  double time = 0;
  double use = 0;
  for (const HistoryEntry& entry : held) {
    const auto done = basis == UseBasis::energy ? entry.energy : entry.rolls;
    if (entry.kind != EntryKind::energy || !entry.running_time || !done) continue;
    time += *entry.running_time;
    use += *done;
  }
  if (!(time > 0) || !(use > 0)) return std::nullopt;
  Interval out = forecast.remaining;
  out.low *= time / use;
  if (out.middle) out.middle = *out.middle * time / use;
  if (out.high) out.high = *out.high * time / use;
  return out;
}

void look_ahead(const std::vector<HistoryEntry>& held, const UseLog& log, UseBasis basis, const Courses& courses,
                History& history) {
  const bool any = std::any_of(courses.in_use.begin(), courses.in_use.end(), can_forecast);
  if (!any) return;
  ForecastCase of;
  of.basis = basis;
  of.pads = courses.in_use;
  of.resolution = courses.resolution;
  of.periods = log.periods();
  of.from = courses.from;
  of.samples = std::min(of.samples, static_cast<int>(most_draws / of.pads.size()));
  history.forecast = forecast(of);
  if (history.forecast) history.forecast->running = running_time(held, basis, *history.forecast);
}

void caution(History& history) {
  std::vector<std::string> worn;
  for (const PadCourse& course : history.courses)
    if (!course.until && last_is_worn(course)) worn.push_back(pad_words(course.pad));
  if (!worn.empty())
    history.cautions.push_back({"Worn to the maker's limit at the last measurement: " + joined(worn) +
                                ". Change these pads before the brake is used again."});
  history.cautions.push_back(
      {"The maker's wear limit rules. A forecast moves no limit: pads that are found at it are changed at once, "
       "whatever "
       "date stands here."});
  history.cautions.push_back(
      {"Before hands go between pads and disc: stop and isolate the line, release the air of the brake and lock it "
       "out, "
       "take the roll off or block it, and let the disc cool."});
  history.cautions.push_back(
      {"Pads of one disc are changed together and of one grade; bed them in as their maker says before tension is "
       "trusted."});
}

}  // namespace

History history_of(std::vector<HistoryEntry> entries, const std::optional<StandWear>& wear) {
  History history;
  link_corrections(entries);
  const auto held = in_force(entries);
  std::stable_sort(entries.begin(), entries.end(),
                   [](const HistoryEntry& a, const HistoryEntry& b) { return a.number < b.number; });
  if (!entries.empty()) history.stand = entries.front().stand;
  history.entries = std::move(entries);
  const UseBasis basis = basis_of(held);
  const UseLog log(held, basis);
  Courses courses = courses_of(held, log, basis, wear);
  history.courses = std::move(courses.all);
  if (wear) history.expected = wear->expected;
  look_ahead(held, log, basis, courses, history);
  history.trends = trends_of(held);
  Advice(held, log, courses, history).write();
  Assumed(log, basis, courses, history).write();
  caution(history);
  return history;
}

bool worn_out(const History& history) {
  return std::any_of(history.courses.begin(), history.courses.end(),
                     [](const PadCourse& course) { return !course.until && last_is_worn(course); });
}

}  // namespace holdback::field
