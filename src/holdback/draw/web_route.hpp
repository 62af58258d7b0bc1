// The way of the web laid out to scale, from the roll over its idlers to the nip.
#pragma once

#include <vector>

namespace holdback::draw {

/// A place on the stand [m], y upwards, from the axis of the roll.
struct Place {
  double x{};
  double y{};
};

/// A roller that the web turns.
struct Turn {
  int idler{};      // its index in the stand; −1: the dancer
  double radius{};  // [m] > 0
  double wrap{};    // [rad] > 0; drawn as 250° at most: what turns further says too little about a way in the plane
};
inline constexpr int dancer_turn = -1;

/// A straight span. The first leaves the roll, the last ends in the nip.
struct Leg {
  Place from{};
  Place to{};
  double heading{};  // [rad] from level, upwards positive
  double length{};   // [m] as the stand says
  bool shortened{};  // it is drawn shorter
};

/// The web around a roller, between two legs.
struct Bend {
  Turn turn{};
  Place centre{};
  bool left{};       // it turns to the left of its way
  double heading{};  // [rad] where it comes in
};

/// bends[i] stands between legs[i] and legs[i + 1]. The web leaves the roll over its top: the roll turns clockwise.
struct Route {
  std::vector<Leg> legs{};
  std::vector<Bend> bends{};
};

/// Lays the web out. The stand says how far and how much it turns, not which way round: of all ways to turn left or
/// right the one is taken that stays clear of the roll, crosses nothing and fills a sheet of that `aspect` (width over
/// height). `spans` [m] > 0 has one more than `turns`; one above `longest` [m] is drawn as that. `radius` [m] > 0 of
/// the full roll. Any finite positive input gives a route; where none is free of faults, the least faulty one.
Route web_route(double radius, const std::vector<double>& spans, const std::vector<Turn>& turns, double longest,
                double aspect);

/// Room that something takes on the stand [m], y upwards.
struct Extent {
  double left{};
  double low{};
  double right{};
  double high{};
  void take(const Place& place, double by);
};

/// That of the route and its roll, with `nip` [m] around its end.
Extent extent_of(const Route& route, double radius, double nip);

/// From a place so far in a direction [rad].
Place ahead(const Place& place, double heading, double by);

/// The web's line over the bends, from where it leaves the roll to the nip, arcs in small steps.
std::vector<Place> line_of(const Route& route);

}  // namespace holdback::draw
