// Parts of the stand as they are drawn in its elevation, each keeping its room clear of words.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "holdback/draw/placer.hpp"
#include "holdback/draw/scene.hpp"
#include "holdback/draw/web_route.hpp"
#include "holdback/model/stand.hpp"
#include "holdback/units/units.hpp"

namespace holdback::draw {

/// A finite value within its ends, else the usual one.
double within_or(double value, double usual, double least, double most);

/// Where the stand stands on the page: one scale for all of it.
struct View {
  double scale{};  // [mm on the page per m]
  Point origin{};  // the axis of the roll
  Point at(const Place& place) const { return {origin.x + scale * place.x, origin.y - scale * place.y}; }
  Point polar(double radius, double angle) const { return at(ahead({}, angle, radius)); }
};

/// Draws marks and tells the placer where they are.
class Pen {
 public:
  Pen(Scene& scene, const Box& room) : scene_(scene), placer_(room) {}

  void line(std::vector<Point> points, Style style);
  void ring(Point centre, double radius, Style style);
  /// Filled; words may not stand there when `clear` is asked for.
  void disc(Point centre, double radius, Style style, bool clear = false);
  void area(std::vector<Point> points, Style style);
  void arrow(Point from, Point to, Style style, bool both = false);
  void words(Point at, const std::string& text, Anchor anchor, Weight weight, MarkRole role, double rotation = 0);
  /// A ring of that radius with a cross; what is too small to be seen is a dot.
  void roller(Point centre, double radius);
  void keep_clear(const Box& box) { placer_.taken(box); }
  /// Lines of words at a leader's end; the first is the weighty one. False when there is no room.
  bool note(Point anchor, const std::vector<std::string>& lines, double prefer);
  /// Words at a line, clear of all others; else at a leader from its middle. False when there is no room.
  bool caption(const std::vector<Point>& along, const std::string& text);
  Scene& scene() { return scene_; }

  /// Whether less of what is drawn lies in the first room than in the second one.
  bool emptier(const Box& first, const Box& second) const {
    return placer_.crossings(first) < placer_.crossings(second);
  }

 private:
  static std::vector<std::pair<std::string, Weight>> cut(const std::vector<std::string>& lines);
  std::optional<Box> room_for(Point anchor, const std::vector<std::pair<std::string, Weight>>& set,
                              double prefer) const;

  Scene& scene_;
  Placer placer_;
};

/// A disc with its pads as they are drawn [m].
struct DrawnDisc {
  enum class Shape { sector, round, square };
  double diameter{};
  double bore{};
  Shape shape{};
  double radius{};  // of the circle on which the pads' middles run
  double size{};    // of a pad along the radius
  double angle{};   // [rad] of a sector
  int pairs{1};
};
DrawnDisc drawn_disc(const Brake& brake, int pairs);

/// The disc around a place at a scale [mm/m]. The pairs bear their numbers where these can be read.
void draw_disc(Pen& pen, const DrawnDisc& disc, Point centre, double scale, bool numbered);

/// The floor from the left to the right, and the frame from the axis down to it.
void draw_ground(Pen& pen, const View& view, double floor, double left, double right, double roll, double core);

/// Full roll with its windings up to where the web leaves it, core, and the sense in which it turns. The core is a
/// hidden line where a disc of that radius lies before it.
void draw_roll(Pen& pen, const View& view, double radius, double core, double leaves, double disc);
void draw_core(Pen& pen, const View& view, double core, double shaft, bool hidden);

/// The box of the guard around the disc; nothing without one.
void draw_guard(Pen& pen, const View& view, Guard guard, double half);

/// The web with its breaks where it is drawn shorter.
void draw_web(Pen& pen, const View& view, const Route& route);

/// The driven nip at the end of the web, a symbol, and an arrow on.
inline constexpr double nip_size = 1.8;  // [mm] radius of its rollers
void draw_nip(Pen& pen, const View& view, const Leg& end);

/// What weighs the roller of the bend: a foot on its inner side. Returns where its leader ends.
Point draw_load_cell(Pen& pen, const View& view, const Bend& bend);

/// The dancer's travel, true to scale, beside its roller.
void draw_travel(Pen& pen, const View& view, const Bend& bend, double travel);

/// What measures the diameter. Returns where its leader ends.
Point draw_sensor(Pen& pen, const View& view, DiameterMethod method, double roll, double shaft);

/// Supply, regulator and gauge from the left, and the pipe to the disc.
void draw_air(Pen& pen, double left, double y, Point disc, double disc_radius);

/// A bar about as long as wanted [mm] with its length in words, ending at the right there.
void draw_scale_bar(Pen& pen, Point right_end, double scale, double wanted, units::System system);

/// An aligned dimension beside a leg, `away` [mm] to the left of its heading, with its words.
bool draw_span(Pen& pen, const View& view, const Leg& leg, double away, const std::string& words);

/// An upright dimension with its words along it.
void draw_upright(Pen& pen, Point top, Point bottom, double x, const std::string& words);

}  // namespace holdback::draw
