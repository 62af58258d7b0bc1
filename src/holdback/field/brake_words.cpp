#include "holdback/field/brake_words.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <utility>

#include "holdback/physics/brake.hpp"

namespace holdback::field {

namespace {

using Q = Quantity;

/// "Torque per pressure is {share} of the grade's nominal ({low} to {high} with 95 % confidence); its band goes from …
/// "
Note slope_and_threshold(const BrakeFit& fit) {
  return {
      "Friction comes out at {0} of the grade's nominal ({1} to {2}), whose band is {3} to {4}; the threshold at "
      "{5} ({6} to {7}), in the file {8}.",
      {{fit.friction_share.value, Q::ratio},
       {fit.friction_share.low, Q::ratio},
       {fit.friction_share.high, Q::ratio},
       {fit.band_low, Q::ratio},
       {fit.band_high, Q::ratio},
       {fit.threshold.value, Q::pressure},
       {fit.threshold.low, Q::pressure},
       {fit.threshold.high, Q::pressure},
       {fit.threshold.in_file, Q::pressure}}};
}

void as_expected(BrakeVerdict& verdict, const BrakeFit& fit) {
  verdict.what = {"The brake does what the file says."};
  verdict.evidence = slope_and_threshold(fit);
  verdict.remedy = {"Nothing to mend; the fitted constants are closer than the file's."};
}

void wrong_grade(BrakeVerdict& verdict, const BrakeFit& fit, int alike, const FitSetup& setup) {
  verdict.what = {"Another grade seems to be fitted: \"" + verdict.grade + "\" fits better than \"" + setup.grade.name +
                  "\"."};
  const auto found = std::find_if(setup.brake.grades.begin(), setup.brake.grades.end(),
                                  [&](const Grade& grade) { return grade.name == verdict.grade; });
  const GradeBand band = band_of(setup.brake, *found, fit.torque_per_pressure.in_file);
  verdict.evidence = {"Friction comes out at {0} of the nominal of \"" + setup.grade.name +
                          "\", whose band is {1} to {2}; \"" + verdict.grade + "\" would give {3} to {4}.",
                      {{fit.friction_share.value, Q::ratio},
                       {fit.band_low, Q::ratio},
                       {fit.band_high, Q::ratio},
                       {band.low, Q::ratio},
                       {band.high, Q::ratio}}};
  if (alike > 0)
    verdict.evidence.text += " " + std::to_string(alike) + (alike == 1 ? " more grade" : " more grades") +
                             " of the file would give about the same.";
  verdict.remedy = {"Read the mark on the pads; if it is another grade, fit again with that grade."};
}

void dead_pair(BrakeVerdict& verdict, const std::vector<BrakeModel>& models, int dead, const FitSetup& setup) {
  const auto found =
      std::find_if(models.begin(), models.end(), [&](const BrakeModel& each) { return each.dead == dead; });
  const BrakeModel& sound = models.front();
  const double share = found->slope() / sound.slope();
  const std::string which = verdict.pair > 0 && setup.brakes == 1
                                ? "the one that comes on as number " + std::to_string(verdict.pair)
                                : "which one, these readings do not tell";
  verdict.what = {"One pair of pads does not seem to bite (" + which + ")."};
  if (sound.scale > 1.5 * found->scale)
    verdict.evidence = {"With one pair less the readings scatter by {0} about the fit, with all pairs by {1}.",
                        {{found->scale, Q::torque}, {sound.scale, Q::torque}}};
  else
    verdict.evidence = {
        "Counted with one pair less, each pair that bites gives {0} of the torque that all of them "
        "together would show, which lies in the grade's band. At one number of pairs low friction looks "
        "the same.",
        {{share, Q::ratio}}};
  verdict.remedy = {
      "Engage the pairs one by one at the same pressure: each must add the same torque. Look for a "
      "closed valve, a pinched hose, a stuck piston."};
}

void low_friction(BrakeVerdict& verdict, const BrakeFit& fit) {
  verdict.what = {"Friction is below the band: the pads seem glazed or oily."};
  verdict.evidence = slope_and_threshold(fit);
  verdict.remedy = {
      "Look at disc and pads for a mirror-like face, oil or grease. Glazed pads are roughened or "
      "replaced, oily ones replaced; then run in and read again."};
}

void worn(BrakeVerdict& verdict, const BrakeFit& fit) {
  verdict.what = {"The pads seem worn: the threshold is up and the torque per pressure is as it was."};
  verdict.evidence = slope_and_threshold(fit);
  verdict.remedy = {
      "Measure the pads' thickness. A gauge that reads too high looks the same: vent the line, the "
      "gauge must fall to zero."};
}

void gauge_offset(BrakeVerdict& verdict, const BrakeFit& fit) {
  const double shift = fit.threshold.value - fit.threshold.in_file;
  verdict.what = {shift < 0 ? "The pressure gauge seems to read too low by {0}."
                            : "The pressure gauge seems to read too high by {0}.",
                  {{std::abs(shift), Q::pressure}}};
  verdict.evidence = fit.threshold.value < 0
                         ? Note{"The line meets zero torque at a gauge pressure of {0} ({1} to {2}): no brake bites below "
                                "zero. The torque per pressure is as it should be.",
                                {{fit.threshold.value, Q::pressure},
                                 {fit.threshold.low, Q::pressure},
                                 {fit.threshold.high, Q::pressure}}}
                         : slope_and_threshold(fit);
  verdict.remedy = {shift < 0
                        ? std::string("Vent the line: the gauge must read zero; else set it or take another. ") +
                              (fit.drag_read ? ""
                                             : "More drag than the file states looks the same: read the torque "
                                               "with the brake released.")
                        : "Vent the line: the gauge must read zero; else set it or take another. Worn pads look the "
                          "same: measure them."};
}

void unexplained(BrakeVerdict& verdict, const BrakeFit& fit) {
  verdict.what = {"No single cause explains these readings."};
  verdict.evidence = slope_and_threshold(fit);
  if (fit.friction_share.low > fit.band_high) {
    verdict.what = {"Friction is above the band, and no other grade of the file explains it."};
    verdict.remedy = {
        "Pulls that only broke loose show the static friction: read again while the roll turns slowly. Then "
        "check scale, diameter, number of pairs, and whether this is the brake and the grade of the file."};
    return;
  }
  verdict.remedy = {"Check what was taken for granted: gauge, scale, diameter, number of pairs, the brake itself."};
}

/// The lowest and the highest pressure of the number of pairs that was read over most of it.
std::pair<BrakeReading, BrakeReading> widest_apart(const std::vector<BrakeReading>& readings) {
  const auto lower = [](const BrakeReading& a, const BrakeReading& b) { return a.pressure < b.pressure; };
  const auto ends_of = [&](const std::vector<BrakeReading>& some) {
    const auto [low, high] = std::minmax_element(some.begin(), some.end(), lower);
    return std::pair(*low, *high);
  };
  std::map<int, std::vector<BrakeReading>> by_pairs;
  for (const auto& reading : readings) by_pairs[reading.pairs].push_back(reading);
  auto widest = ends_of(readings);
  double most = 0;
  for (const auto& [pairs, some] : by_pairs) {
    const auto ends = ends_of(some);
    const double apart = ends.second.pressure - ends.first.pressure;
    if (apart <= most) continue;
    most = apart;
    widest = ends;
  }
  return widest;
}

std::size_t pair_counts(const std::vector<BrakeReading>& readings) {
  std::set<int> counts;
  for (const auto& reading : readings) counts.insert(reading.pairs);
  return counts.size();
}

void tell_outliers(BrakeFit& fit) {
  for (const FittedReading& each : fit.readings)
    if (each.outlier)
      fit.cautions.push_back({"The reading in row " + std::to_string(each.row) +
                                  " was left out: {0} at {1}, where the others ask for {2}. Read it again.",
                              {{each.torque, Q::torque}, {each.pressure, Q::pressure}, {each.fitted, Q::torque}}});
}

void tell_check(BrakeFit& fit) {
  const double median = fit.median_torque_per_pressure;
  const double half = (fit.torque_per_pressure.high - fit.torque_per_pressure.low) / 2;
  if (median <= 0 || std::abs(median - fit.torque_per_pressure.value) <= std::max(2 * half, 0.05 * median)) return;
  fit.cautions.push_back(
      {"Repeated medians, which half of the readings cannot bend, give {0} instead of {1}: some of "
       "the readings do not belong to one line.",
       {{median, Q::torque_per_pressure}, {fit.torque_per_pressure.value, Q::torque_per_pressure}}});
}

}  // namespace

void tell(BrakeVerdict& verdict, const BrakeFit& fit, const std::vector<BrakeModel>& models, const WeighedCause& cause,
          const FitSetup& setup) {
  switch (verdict.cause) {
    case BrakeCause::as_expected:
      return as_expected(verdict, fit);
    case BrakeCause::wrong_grade:
      return wrong_grade(verdict, fit, cause.alike, setup);
    case BrakeCause::dead_pair:
      return dead_pair(verdict, models, cause.pair, setup);
    case BrakeCause::low_friction:
      return low_friction(verdict, fit);
    case BrakeCause::worn:
      return worn(verdict, fit);
    case BrakeCause::gauge_offset:
      return gauge_offset(verdict, fit);
    case BrakeCause::unexplained:
    case BrakeCause::readings:
      break;
  }
  unexplained(verdict, fit);
}

BrakeVerdict too_few_words(const BrakeFit& fit, const BrakeModel& model, const std::vector<BrakeReading>& readings) {
  BrakeVerdict verdict;
  verdict.cause = BrakeCause::readings;
  verdict.what = {"The readings are too few or badly placed for a sure fit."};
  if (model.fit.freedom < 1)
    verdict.evidence = {"With " + std::to_string(readings.size()) +
                        " readings the line goes through all of them; nothing is left to tell how sure it is."};
  else
    verdict.evidence = {"The torque per pressure is known to ±{0}, the threshold to ±{1} (95 % confidence).",
                        {{(fit.friction_share.high - fit.friction_share.low) / 2 / fit.friction_share.value, Q::ratio},
                         {(fit.threshold.high - fit.threshold.low) / 2, Q::pressure}}};
  verdict.remedy = {fit.next.empty() ? "Take more readings, as far apart in pressure as brake and web allow."
                                     : "Take the readings that are listed as the next ones."};
  return verdict;
}

BrakeVerdict no_line_words(const BrakeModel* model, const std::vector<BrakeReading>& readings, const FitSetup& setup) {
  const auto [first, last] = widest_apart(readings);
  const double slope = physics::pair_torque_per_pressure(setup.brake, setup.grade).capacity;
  const auto in_file = [&](const BrakeReading& reading) {
    return biting_pairs(reading, setup, 0) *
           physics::pad_torque(slope, reading.pressure, setup.brake.threshold_pressure);
  };
  BrakeVerdict verdict;
  verdict.cause = BrakeCause::readings;
  verdict.evidence = {"From {0} to {1} the torque goes from {2} to {3}, where the brake of the file would add {4}",
                      {{first.pressure, Q::pressure},
                       {last.pressure, Q::pressure},
                       {first.torque, Q::torque},
                       {last.torque, Q::torque},
                       {in_file(last) - in_file(first), Q::torque}}};
  if (model != nullptr) {
    verdict.what = {"Torque does not rise clearly with pressure in these readings."};
    verdict.evidence.text += "; the readings scatter by {5} about any line, and no line through them is sure to rise.";
    verdict.evidence.amounts.push_back({model->scale, Q::torque});
    verdict.remedy = {"Take readings farther apart, from a low to a high pressure, each two or three times."};
    return verdict;
  }
  verdict.what = {"Torque does not rise with pressure in these readings."};
  verdict.evidence.text +=
      ": either all lie below the threshold, or pressure and torque were mixed up or stand in another unit, or the "
      "brake does not bite at all.";
  verdict.remedy = {"Take readings from a low to a high pressure and look whether the pistons move."};
  return verdict;
}

void tell_may_replace(BrakeFit& fit) {
  for (BrakeVerdict& verdict : fit.verdicts)
    if (verdict.cause == BrakeCause::as_expected)
      verdict.remedy = {"Nothing to mend; the fitted constants are closer than the file's and may replace them."};
}

void tell_assumptions(BrakeFit& fit, const std::vector<BrakeReading>& readings, const FitSetup& setup) {
  auto& notes = fit.assumptions;
  if (setup.noted) notes.push_back(*setup.noted);
  if (setup.web_noted) notes.push_back(*setup.web_noted);
  notes.push_back(
      {"torque is that of all pairs that bite, each with the same torque per pressure above one threshold, "
       "and of the drag of shaft and released brakes"});
  notes.push_back(
      {"tension was read at a steady slow run or a steady slow pull, so that torque is tension times half "
       "the diameter and no inertia takes part"});
  if (std::abs(setup.grade.static_ratio - 1) > 1e-9)
    notes.push_back(
        {"a pull that only breaks loose reads the static friction, {0} times the sliding one of this grade; "
         "such readings make the friction look higher",
         {{setup.grade.static_ratio, Q::number}}});
  const bool warm = std::any_of(readings.begin(), readings.end(), [](const auto& each) { return each.temperature; });
  if (warm && setup.grade.fade_start)
    notes.push_back({"torque read on a hot disc is set against the friction that the grade's fade leaves"});
  notes.push_back(
      {"intervals hold with 95 % confidence for scatter that is alike in all readings, at least 0.3 % of the "
       "highest torque"});
  notes.push_back(
      {"how often each cause is met before anything is read is common practice: as expected 62 %, low "
       "friction 9 %, another grade 8 %, a dead pair 8 %, worn 6 %, gauge 5 %, something else 2 %"});
}

void tell_limits_of(BrakeFit& fit, const BrakeModel& model, const std::vector<BrakeReading>& readings,
                    const FitSetup& setup) {
  if (!model.parts.drag)
    fit.not_told.push_back(
        {"drag and threshold: all readings engage the same pairs above the threshold, or scatter too "
         "much; the drag of the file, {0}, is taken",
         {{model.given_drag, Q::torque}}});
  if (pair_counts(readings) == 1 && setup.brakes * readings.front().pairs > 1)
    fit.not_told.push_back(
        {"a pair that does not bite and low friction of all of them: every reading engages the same "
         "number of pairs"});
  if (!model.parts.hysteresis)
    fit.not_told.push_back({"hysteresis: it takes at least two readings each with rising and with falling pressure"});
  tell_outliers(fit);
  tell_check(fit);
  const double extra = fit.drag.value - fit.drag.in_file;
  if (fit.drag_read && fit.drag.low > 1.5 * fit.drag.in_file && extra > 2 * fit.scatter)
    fit.cautions.push_back({"Drag is {0}, in the file {1}: look for pads that drag, tight seals or a bad bearing.",
                            {{fit.drag.value, Q::torque}, {fit.drag.in_file, Q::torque}}});
  tell_dangers(fit, setup);
}

void tell_dangers(BrakeFit& fit, const FitSetup& setup) {
  fit.cautions.push_back(
      {"Readings are taken at a machine that may turn: guard the nips, keep away from disc and web, "
       "and never go above the rated pressure of {0}.",
       {{setup.brake.rated_pressure, Q::pressure}}});
}

}  // namespace holdback::field
