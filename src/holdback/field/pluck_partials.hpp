// Which of the tones of a recording belong to the span, and which of its partials each one is.
#pragma once

#include <vector>

namespace holdback::field {

/// A tone of a recording.
struct Tone {
  double frequency{};  // [Hz] > 0
  double level{};      // > 0, any scale
};

/// How far the partials of a span spread: the n-th stands at n to some power between these times the first. Air that
/// swings with a wide web weighs less the shorter the waves are, so the power is 1 without air and 1.5 where the air of
/// a wide web is nearly all that swings (physics::carried_air()); any between them where nothing is known.
struct PartialSpread {
  double least{1};
  double most{1.5};
};

/// The tones as partials of one span.
struct Partials {
  std::vector<int> of{};  // partial of each tone, in their order; 0: none of the span's
  std::size_t first{};    // place of the lowest tone of the span
  int number{1};          // which partial that is
  double power{1};        // of the spread that fits best
  int lower{};            // the same tones fit as well as partials `lower`, `lower` + 1, … of a lower tone; 0: none
  double lower_first{};   // [Hz] which that tone would be
};

/// Tones → partials. `tones` from low to high, one at least; `line` [Hz] the width of a line. The loudest is taken for
/// one of the span's. It is the first, unless a lower tone, whose second or third partial it would be, accounts for a
/// twentieth more of what is heard; the lowest tone is the first partial, unless three tones in a row (2, 3, 4 or 3, 4,
/// 5 or 3, 5, 7) account for a twentieth more when it is the second or third. Two in a row are told in `lower`.
Partials partials_of(const std::vector<Tone>& tones, PartialSpread spread, double line);

}  // namespace holdback::field
