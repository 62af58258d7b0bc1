// The stand seen from the side, as a drawing to scale.
#pragma once

#include "holdback/draw/scene.hpp"
#include "holdback/model/stand.hpp"
#include "holdback/results/choice.hpp"
#include "holdback/units/units.hpp"

namespace holdback::draw {

/// Side elevation of the stand with the roll of that job: roll, core, shaft, disc with its pad pairs (enlarged beside
/// it), guard, air line, web over its idlers to the nip, load cell, dancer and diameter sensor where there are any,
/// with a scale bar, dimensions, and the job's speed and tension. All that the stand gives a size of is to scale; the
/// rest are symbols, and the figure says so. `fit`: the brake that is drawn; null, or one the stand does not know: its
/// first candidate. Nothing is reckoned but where things lie.
Scene elevation_figure(const Stand& stand, const Job& job, const Fit* fit, units::System system);

}  // namespace holdback::draw
