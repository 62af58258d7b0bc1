// `measure`, `fit`, `diagnose`, `history`: what readings taken on site say. Each adds its result to the answer, or the
// problems that its readings have.
#pragma once

#include "holdback/api/answer.hpp"

namespace holdback::api {

/// The tension from readings by one method. Without a stand (null) the readings must say what the web is.
void measure(const Stand* stand, const Request& request, Answer& answer);

/// What the real brake does, from readings of pressure, torque or tension, and diameter.
void fit(const Stand& stand, const Request& request, Answer& answer);

/// What a log says of the tension, and the likely causes.
void diagnose(const Stand& stand, const Request& request, Answer& answer);

/// The history of one stand, with the next change of pads. The stand (or null) gives what the entries do not.
void history(const Stand* stand, const Request& request, Answer& answer);

}  // namespace holdback::api
