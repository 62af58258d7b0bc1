// What the on-site commands read: the stand, and the readings, the recording or the log.
#pragma once

#include "holdback/api/answer.hpp"
#include "settings.hpp"

namespace holdback::cli {

/// Whether the call is of readings taken on site.
bool is_on_site(const Settings& settings);

/// Reads what such a call names into the request; what cannot be read is added to `problems`. A log is opened, not
/// read: the core takes it piece by piece.
void read_on_site(const Settings& settings, api::Request& request, Problems& problems);

/// With fit --write: puts the changed text in the place of the stand file, beside it first, then renamed.
void write_fitted_brake(const Answer& answer, const Settings& settings);

}  // namespace holdback::cli
