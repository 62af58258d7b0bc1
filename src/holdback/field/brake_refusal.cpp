#include "holdback/field/brake_refusal.hpp"

#include <cmath>
#include <string>

namespace holdback::field {

namespace {

/// Share from which a cause keeps the fit out of the file: a tenth. Another grade whose band overlaps, and a dead pair
/// at one number of pairs, have 11 to 15 % by how often they are met alone, without any reading that speaks for them.
double most_doubt(BrakeCause cause) {
  return cause == BrakeCause::wrong_grade || cause == BrakeCause::dead_pair ? 0.16 : 0.1;
}

/// Share of a cause, whatever the grade or the pair.
double share_of(const BrakeFit& fit, BrakeCause cause) {
  double share = 0;
  for (const BrakeVerdict& each : fit.verdicts)
    if (each.cause == cause) share += each.share.value_or(0);
  return share;
}

/// The likeliest cause that stands against the fit.
const BrakeVerdict* doubt_of(const BrakeFit& fit) {
  const double expected = share_of(fit, BrakeCause::as_expected);
  for (const BrakeVerdict& each : fit.verdicts) {
    if (each.cause == BrakeCause::as_expected || !each.share) continue;
    const double share = share_of(fit, each.cause);
    if (share >= expected || share > most_doubt(each.cause)) return &each;
  }
  return nullptr;
}

std::string words_of(const BrakeFit& fit, const BrakeVerdict& doubt) {
  const double share = share_of(fit, doubt.cause);
  const bool first = share >= share_of(fit, BrakeCause::as_expected);
  // "the pads seem worn (70 % likely)" or "worn pads are not ruled out (12 % likely)"
  const auto found = [&](const std::string& seems, const std::string& doubted) {
    const std::string likely = share > 0.99 ? "more than 99" : std::to_string(std::lround(100 * share));
    return (first ? seems : doubted + " not ruled out") + " (" + likely + " % likely)";
  };
  const std::string own =
      "if the pads are clean and rub so all the same, they are another grade: enter it in the file under a name of "
      "its own, and fit with that";
  switch (doubt.cause) {
    case BrakeCause::wrong_grade: {
      return found("another grade seems to be fitted", "another grade is") + ", most of all \"" + doubt.grade +
             "\"; read the mark on the pads, and if it is another grade, fit with that one: \"" + fit.fit.grade +
             "\" keeps its own friction";
    }
    case BrakeCause::dead_pair:
      return found("a pair does not seem to bite", "a pair that does not bite is") +
             ", and the file would be wrong as soon as it does; engage the pairs one by one, mend the one that adds "
             "nothing, and read again at two numbers of pairs";
    case BrakeCause::low_friction:
      return found("the pads seem glazed or oily", "glazed or oily pads are") +
             ", and the file would plan with the fault; clean, roughen or replace them, run in and read again; " + own;
    case BrakeCause::worn:
      return found("the pads seem worn", "worn pads are") +
             ", and the file would plan with the fault; measure them, replace worn ones, vent the line to see that "
             "the gauge reads zero, and read again";
    case BrakeCause::gauge_offset:
      return found("the gauge seems to be off", "a gauge that is off is") +
             ", and the file would carry its error; vent the line, set the gauge to zero or take another, and read "
             "again";
    case BrakeCause::as_expected:
    case BrakeCause::unexplained:
    case BrakeCause::readings:
      break;
  }
  if (fit.friction_share.low > fit.band_high)
    return found("friction is above the band, and no grade of the file explains it", "another fault is") +
           "; check scale, diameter and number of pairs; " + own;
  return found("no single cause explains the readings", "a fault that none of the causes explains is") +
         "; check gauge, scale, diameter, number of pairs and brake, and read again";
}

}  // namespace

std::optional<Note> refusal_of(const BrakeFit& fit) {
  const std::string more = fit.next.empty() ? "; take more, as far apart in pressure as brake and web allow"
                                            : "; take those that are listed as the next";
  if (!fit.sufficient)
    return Note{(fit.torque_per_pressure.value > 0
                     ? "the readings do not carry it: too few or badly placed, the interval is too wide"
                     : "torque does not rise with pressure in these readings") +
                more};
  if (const BrakeVerdict* doubt = doubt_of(fit)) return Note{words_of(fit, *doubt)};
  if (share_of(fit, BrakeCause::as_expected) <= 0)
    return Note{"nothing shows that the brake does what the file says; read again"};
  if (fit.threshold.high < 0)
    return Note{
        "the line meets zero torque below zero pressure, where no brake bites; set the gauge to zero and read again"};
  return std::nullopt;
}

}  // namespace holdback::field
