// What the cards at the machine share: finding a thing in the dossier, and words for a reader who stands there.
#pragma once

#include <string>
#include <string_view>

#include "holdback/papers/dossier.hpp"
#include "holdback/papers/paper.hpp"

namespace holdback::papers::cards {

/// The job of that name, its facts on the recommended fit, what was measured of it in advance; null: none.
const Job* find_job(const Dossier& dossier, std::string_view job);
const JobFit* find_fit(const Dossier& dossier, std::string_view job);
const Measurement* find_push(const Dossier& dossier, std::string_view job);

/// The brake and the friction grade of a fit; null where the stand has none of that name.
const Brake* find_brake(const Stand& stand, const Fit& fit);
const Grade* find_grade(const Stand& stand, const Fit& fit);

/// A time to wait, never shown shorter than it is: "40 s", "25 min", "4 h".
std::string waiting(double seconds);

/// A temperature in whole degrees: "153 °C".
std::string degrees(double kelvin, units::System system);

/// "67.5 to 82.5 N": both ends as results with three digits, one unit.
std::string range(double from, double to, Quantity kind, units::System system);

/// Lower-case ASCII letters, digits and dashes: "Paper labels" is "paper-labels"; "job" when nothing is left.
std::string file_part(std::string_view name);

/// The brakes of a fit without their pairs: "2 × disc 330, grade middle".
std::string brakes_of(const Fit& fit);

}  // namespace holdback::papers::cards
