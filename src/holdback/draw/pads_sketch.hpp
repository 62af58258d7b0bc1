// Which pad pairs to engage: each disc seen along its shaft, its pad pairs around it.
#pragma once

#include "holdback/draw/scene.hpp"

namespace holdback::draw {

/// What the sketch shows.
struct PadPairs {
  int brakes{1};   // ≥ 1, on the shaft
  int fitted{1};   // ≥ 1, pairs on each brake
  int engaged{1};  // 0 … fitted, on each brake
};

/// Engaged pairs are filled and numbered as they come in, clockwise from the top; released ones are open. Nothing hangs
/// on colour. Of more than three brakes the first three are drawn and the others told. Numbers outside of the ranges
/// above are brought into them.
Scene pads_sketch(PadPairs pairs);

/// Width [mm] of that drawing over that of the widest one, so that discs come out alike on every card.
double share_of_width(const Scene& sketch);

}  // namespace holdback::draw
