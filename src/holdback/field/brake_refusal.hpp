// Which fits may not go into the stand file.
#pragma once

#include <optional>

#include "holdback/results/brake_fit.hpp"

namespace holdback::field {

/// Why the file is to be left as it is, and what to do first; nothing when the fit may go in. A stand file says what a
/// sound brake does: a fault that is likelier than "as expected", or cannot be ruled out, is to be mended and not to be
/// planned with.
std::optional<Note> refusal_of(const BrakeFit& fit);

}  // namespace holdback::field
