// The fields of a stand's history.
#pragma once

#include "holdback/model/date.hpp"
#include "holdback/report/words.hpp"
#include "holdback/results/history.hpp"
#include "holdback/units/units.hpp"

namespace holdback::report {

constexpr auto fields_of(Of<HistoryEntry> /*unused*/) {
  using E = HistoryEntry;
  return record(
      "history_entry", "a dated entry; which values it holds depends on its kind",  //
      field("number", &E::number, "in the order in which entries were added"),
      derived(
          "date", [](const E& it) { return date_text(it.day); }, "year-month-day"),
      field("kind", &E::kind, "what it tells of"),
      field("corrects", &E::corrects, "number of the entry whose place it takes; 0: none"),
      field("corrected_by", &E::corrected_by, "number of the entry that takes its place; 0: none"),
      field("brake", &E::brake, "which brake; empty: all, or the thinnest pad"),
      field("pair", &E::pair, "which pair of pads; empty: all, or the thinnest"),
      field("hottest", &E::hottest, "the pad is the hottest one"),
      field("reason", &E::reason, "why the pads were changed"), field("grade", &E::grade, "friction grade of the pads"),
      field("text", &E::text, "a remark"),
      derived(
          "since", [](const E& it) { return it.since ? date_text(*it.since) : std::string(); },
          "date from which work counts; empty: the entry before"),
      field("thickness", &E::thickness, Quantity::short_length, "of the pad as the gauge reads it"),
      field("limit", &E::limit, Quantity::short_length, "thickness at which the maker calls the pad worn out"),
      field("depth", &E::depth, Quantity::short_length, "left above the maker's limit"),
      field("resolution", &E::resolution, Quantity::short_length, "smallest step of the gauge"),
      field("energy", &E::energy, Quantity::energy, "friction energy of the whole stand"),
      field("running_time", &E::running_time, Quantity::running_time, "since the entry before"),
      field("rolls", &E::rolls, Quantity::number, "unwound since the entry before"),
      field("tension", &E::tension, Quantity::force, "over the whole width"),
      field("pressure", &E::pressure, Quantity::pressure, "gauge, at the brake"),
      field("diameter", &E::diameter, Quantity::short_length, "of the roll"),
      field("speed", &E::speed, Quantity::speed, "of the web"),
      field("temperature", &E::temperature, Quantity::temperature, "of the disc"),
      field("pairs", &E::pairs, Quantity::number, "engaged on each brake"),
      field("torque_per_pressure", &E::torque_per_pressure, Quantity::torque_per_pressure, "of one pair"),
      field("threshold", &E::threshold, Quantity::pressure, "pressure below which pads idle"),
      field("drag", &E::drag, Quantity::torque, "with the pads released"),
      field("friction", &E::friction, Quantity::number, "effective coefficient"));
}

constexpr auto fields_of(Of<Interval> /*unused*/) {
  using I = Interval;
  return record("interval", "quantiles of 5, 50 and 95 %; one that is absent lies beyond all bounds",  //
                field("low", &I::low, Quantity::number, "5 %"), field("middle", &I::middle, Quantity::number, "50 %"),
                field("high", &I::high, Quantity::number, "95 %"));
}

constexpr auto fields_of(Of<DayInterval> /*unused*/) {
  using D = DayInterval;
  return record("dates", "quantiles of 5, 50 and 95 % as dates",  //
                derived(
                    "low", [](const D& it) { return date_text(it.low); }, "5 %"),
                derived(
                    "middle", [](const D& it) { return date_text(it.middle); }, "50 %"),
                derived(
                    "high", [](const D& it) { return it.high ? date_text(*it.high) : std::string(); },
                    "95 %; empty: no end is to be seen"));
}

constexpr auto fields_of(Of<CoursePoint> /*unused*/) {
  using C = CoursePoint;
  return record("course_point", "a depth of a pad",  //
                derived(
                    "date", [](const C& it) { return date_text(it.day); }, "year-month-day"),
                field("use", &C::use, Quantity::number, "since the set began, in the SI unit of the basis"),
                field("depth", &C::depth, Quantity::short_length, "left above the maker's limit"),
                field("fresh", &C::fresh, "of new pads"));
}

constexpr auto fields_of(Of<PadCourse> /*unused*/) {
  using P = PadCourse;
  return record("pad_course", "one pad from new to its change, or to today",  //
                field("pad", &P::pad, "brake and pair; empty: all pads, or the thinnest of them"),
                field("hottest", &P::hottest, "it was called the hottest"),
                derived(
                    "since", [](const P& it) { return date_text(it.since); }, "when it was fitted or first measured"),
                field("fitted", &P::fitted, "the day it was fitted is known"),
                derived(
                    "until", [](const P& it) { return it.until ? date_text(*it.until) : std::string(); },
                    "when it was changed; empty: it is in use"),
                field("use", &P::use, Quantity::number, "in that time, in the SI unit of the basis"),
                field("rate", &P::rate, Quantity::number, "worn depth over use, by regression, m over that unit"),
                field("points", &P::points, "by date"));
}

constexpr auto fields_of(Of<PadForecast> /*unused*/) {
  using P = PadForecast;
  return record(
      "pad_forecast", "what is expected of one pad in use",  //
      field("pad", &P::pad, "brake and pair"), field("measured", &P::measured, "depths measured on this set"),
      field("rate", &P::rate, Quantity::number, "worn depth over use, m over the SI unit of the basis"),
      field("rate_uncertainty", &P::rate_uncertainty, Quantity::number, "standard"),
      field("rate_from_prior", &P::rate_from_prior, Quantity::ratio, "weight of what was known beforehand"),
      field("depth_now", &P::depth_now, Quantity::short_length, "left at the end of the log"),
      field("remaining", &P::remaining, "use until it is worn, in the SI unit of the basis; absent: no end to be seen"),
      field("first", &P::first, Quantity::ratio, "how likely it is worn first"));
}

constexpr auto fields_of(Of<DepthBand> /*unused*/) {
  using B = DepthBand;
  return record("depth_band", "depth of the governing pad in the days to come",  //
                field("day", &B::day, Quantity::number, "days since 1970-01-01"),
                field("low", &B::low, Quantity::short_length, "5 %"),
                field("middle", &B::middle, Quantity::short_length, "50 %"),
                field("high", &B::high, Quantity::short_length, "95 %"));
}

constexpr auto fields_of(Of<Forecast> /*unused*/) {
  using F = Forecast;
  return record(
      "forecast", "when the first pad will be worn to the maker's limit",  //
      field("basis", &F::basis, "what wear is counted by"),
      derived(
          "unit", [](const F& it) { return units::si_unit_of(kind_of(it.basis)); }, "of use"),
      derived(
          "from", [](const F& it) { return date_text(it.from); }, "date from which it looks ahead"),
      field("per_day", &F::per_day, Quantity::number, "use a day, mean of the log"),
      field("per_day_uncertainty", &F::per_day_uncertainty, Quantity::number, "standard"),
      field("pads", &F::pads, "one by one"), field("governs", &F::governs, "the pad most likely worn first"),
      field("remaining", &F::remaining, "use until the first pad is worn"),
      field("running", &F::running, "the same as running time [s], when that was logged too"),
      field("date", &F::date, "of the next change"),
      field("beyond_calendar", &F::beyond_calendar, "the middle lies further away than dates go"),
      field("wear_share", &F::wear_share, Quantity::ratio, "of the spread that comes from the wear, not from the work"),
      field("samples", &F::samples, "random draws"), field("seed", &F::seed, "of their generator"),
      derived(
          "measure_by", [](const F& it) { return date_text(it.measure_by); }, "date by which to measure again"),
      field("band", &F::band, "depth over the days to come"));
}

constexpr auto fields_of(Of<ExpectedWear> /*unused*/) {
  using E = ExpectedWear;
  return record("expected_wear", "a set of pads by the stand file, the mix by its shares",  //
                field("life", &E::life, Quantity::running_time, "until the pads are worn"),
                field("energy", &E::energy, Quantity::energy, "friction energy of the stand in that time"));
}

constexpr auto fields_of(Of<FrictionTrend> /*unused*/) {
  using T = FrictionTrend;
  return record("friction_trend", "a fitted constant over the dates of its fits, a straight line",  //
                field("key", &T::key, "torque_per_pressure, friction, threshold or drag"),
                derived(
                    "unit", [](const T& it) { return units::si_unit_of(it.kind); }, "of its values"),
                field("brake", &T::brake, "which brake; empty: all"), field("count", &T::count, "fits"),
                derived(
                    "from", [](const T& it) { return date_text(it.from); }, "first fit"),
                derived(
                    "until", [](const T& it) { return date_text(it.until); }, "last fit"),
                field("first", &T::first, Quantity::number, "the line at the first fit"),
                field("last", &T::last, Quantity::number, "the line at the last fit"),
                field("per_year", &T::per_year, Quantity::number, "slope"),
                field("low", &T::low, Quantity::number, "of the 90 % interval of the slope"),
                field("high", &T::high, Quantity::number, "of the 90 % interval of the slope"),
                field("seen", &T::seen, "the interval leaves out zero"));
}

constexpr auto fields_of(Of<History> /*unused*/) {
  using T = History;
  return record("history", "what is kept of one stand over the years",  //
                field("stand", &T::stand, "name under which it is kept"),
                field("title", &T::title, "of the stand file; empty without one"),
                field("entries", &T::entries, "by number"), field("courses", &T::courses, "pad by pad, set by set"),
                field("expected", &T::expected, "by the stand file; absent without one"),
                field("forecast", &T::forecast, "absent when too little is known"),
                field("measure_next", &T::measure_next, "what is missing, or would make the forecast sharper"),
                field("trends", &T::trends, "of the fitted constants"),
                field("assumptions", &T::assumptions, "what the models assume"),
                field("cautions", &T::cautions, "what a person must heed"));
}

}  // namespace holdback::report
