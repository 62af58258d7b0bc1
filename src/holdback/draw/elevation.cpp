#include "holdback/draw/elevation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "holdback/draw/chart_layout.hpp"
#include "holdback/draw/elevation_parts.hpp"
#include "holdback/draw/figure_parts.hpp"
#include "holdback/draw/web_route.hpp"

namespace holdback::draw {

namespace {

constexpr double pi = std::numbers::pi;
constexpr double height = 78;          // [mm] of the room for the drawing
constexpr double column = 44;          // [mm] left of the view: the brake enlarged, the air supply
constexpr double lens = 16;            // [mm] radius of the enlarged view
constexpr std::size_t most_named = 8;  // idlers that bear their names
constexpr double usual_idler = 0.09;   // [m] a dancer's roller where there is no idler to go by

double degrees(double angle) { return angle * pi / 180; }

/// What of the stand is drawn, with every size within what a drawing can bear.
struct Subject {
  const Stand& stand;
  const Job& job;
  const Fit* fit;
  units::System system;
  const Brake* brake{};
  DrawnDisc disc{};  // with a brake
  double full{};     // [m] diameter
  double core{};     // [m] diameter
  double shaft{};    // [m] diameter
  bool shaft_known{};
  Route route{};

  std::string length(double metres) const { return shown(metres, Quantity::short_length, system); }
  double radius() const { return full / 2; }
  double disc_radius() const { return brake != nullptr ? disc.diameter / 2 : 0; }
};

/// The turns of the path: idlers, and the dancer in the middle of the span that it hangs in.
std::pair<std::vector<double>, std::vector<Turn>> turns_of(const Stand& stand) {
  std::vector<double> spans{within_or(stand.path.first_span, 1.5, 0.02, 100)};
  std::vector<Turn> turns;
  double sum = 0;
  for (const Idler& idler : stand.idlers) sum += within_or(idler.diameter, 0.1, 0.005, 3);
  const double mean = stand.idlers.empty() ? usual_idler : sum / static_cast<double>(stand.idlers.size());
  const int count = static_cast<int>(stand.idlers.size());
  int hangs_behind = count / 2 - 1;  // −1: behind the roll
  if (stand.dancer)
    for (int i = 0; i < count; ++i)
      if (stand.idlers[static_cast<std::size_t>(i)].name == stand.dancer->idler) hangs_behind = i;
  const auto hang = [&](int behind) {
    if (!stand.dancer || behind != hangs_behind) return;
    const double half = spans.back() / 2;
    spans.back() = half;
    spans.push_back(half);
    turns.push_back({dancer_turn, mean / 2, pi});
  };
  hang(-1);
  for (int i = 0; i < count; ++i) {
    const Idler& idler = stand.idlers[static_cast<std::size_t>(i)];
    turns.push_back({i, within_or(idler.diameter, 0.1, 0.005, 3) / 2, within_or(idler.wrap, pi / 2, 0.01, 4 * pi)});
    spans.push_back(within_or(idler.span, 1, 0.02, 100));
    hang(i);
  }
  return {spans, turns};
}

/// The idler that the load cell sits on; none without one.
const Bend* weighed(const Subject& subject) {
  if (!subject.stand.load_cell || subject.stand.idlers.empty()) return nullptr;
  int on = static_cast<int>(subject.stand.idlers.size()) - 1;
  for (std::size_t i = 0; i < subject.stand.idlers.size(); ++i)
    if (subject.stand.idlers[i].name == subject.stand.load_cell->idler) on = static_cast<int>(i);
  for (const Bend& bend : subject.route.bends)
    if (bend.turn.idler == on) return &bend;
  return nullptr;
}

const Bend* hung(const Subject& subject) {
  for (const Bend& bend : subject.route.bends)
    if (bend.turn.idler == dancer_turn) return &bend;
  return nullptr;
}

/// Room on the page for what is to scale: clear of the column, of the roll's dimension, and of labels around.
Box view_room(const Box& room) { return {room.left + column + 11, room.top + 9, room.right - 21, room.bottom - 20}; }

Subject subject_of(const Stand& stand, const Job& job, const Fit* fit, units::System system) {
  Subject subject{stand, job, fit, system};
  subject.core = within_or(job.roll.core_diameter, 0.1, 0.01, 5);
  subject.full = std::max(within_or(job.roll.full_diameter, 0.8, 0.01, 5), 1.02 * subject.core);
  double widest = 0;
  if (stand.shaft)
    for (const ShaftSection& section : stand.shaft->sections) widest = std::max(widest, section.diameter);
  subject.shaft_known = widest > 0 && std::isfinite(widest);
  subject.shaft = subject.shaft_known ? std::min(widest, subject.full) : 0.45 * subject.core;
  if (!stand.brakes.empty()) subject.brake = &stand.brakes.front();
  bool fitted_one = false;
  if (fit != nullptr)
    for (const Brake& brake : stand.brakes)
      if (!fitted_one && brake.name == fit->brake) {
        subject.brake = &brake;
        fitted_one = true;
      }
  if (!fitted_one) subject.fit = nullptr;
  if (subject.brake != nullptr)
    subject.disc = drawn_disc(*subject.brake, subject.fit != nullptr ? subject.fit->pairs : subject.brake->pairs);
  const auto [spans, turns] = turns_of(stand);
  const Box room = view_room({8, 0, 172, height});
  const double aspect = (room.right - room.left) / (room.bottom - room.top);
  subject.route = web_route(subject.radius(), spans, turns, std::max(4.0, 6 * subject.full), aspect);
  return subject;
}

/// The largest scale at which all fits.
View view_of(const Subject& subject, const Box& room) {
  Extent extent = extent_of(subject.route, subject.radius(), 0);
  const double guard = 1.15 * subject.disc_radius();
  extent.take({}, guard);
  const Box box = view_room(room);
  const double wide = extent.right - extent.left;
  const double high = extent.high - extent.low;
  View view;
  view.scale = std::min((box.right - box.left) / wide, (box.bottom - box.top) / high);
  const double spare_x = box.right - box.left - view.scale * wide;
  const double spare_y = box.bottom - box.top - view.scale * high;
  view.origin = {box.left + 0.35 * spare_x - view.scale * extent.left,
                 box.top + 0.5 * spare_y + view.scale * extent.high};
  return view;
}

/// What is fitted, and how: two lines.
std::pair<std::string, std::string> brake_words(const Subject& subject) {
  const auto pairs = [](int count) { return fmt::format("{} pair{}", count, count == 1 ? "" : "s"); };
  if (subject.fit == nullptr) return {subject.brake->name, pairs(subject.brake->pairs) + ", the first candidate"};
  const Fit& fit = *subject.fit;
  return {fmt::format("{} × {}", fit.brakes, fit.brake),
          fmt::format("{}{}, grade {}", pairs(fit.pairs), fit.brakes > 1 ? " each" : "", fit.grade)};
}

void draw_detail(Pen& pen, const Subject& subject, const Box& room, double scale) {
  const double x = room.left;
  double y = room.top + 2 * lens + 4.4;
  const auto line = [&](const std::string& text, Weight weight, MarkRole role) {
    pen.words({x, y}, fitted(text, column - 2, measure::number, weight), Anchor::start, weight, role);
    y += 3.6;
  };
  if (subject.brake == nullptr) {
    y = room.top + 4;
    line("no brake in the file", Weight::bold, MarkRole::text);
    return;
  }
  const Point centre{x + lens + 2, room.top + lens + 0.5};
  const double enlarged = lens / (1.16 * subject.disc_radius());
  pen.ring(centre, lens, {MarkRole::muted, Pattern::dashed});
  draw_disc(pen, subject.disc, centre, enlarged, true);
  const double shaft = std::min(subject.shaft, 0.8 * subject.disc.bore) / 2;
  pen.disc(centre, enlarged * shaft, {MarkRole::muted});
  pen.ring(centre, enlarged * shaft, {MarkRole::axis});
  pen.keep_clear({x, room.top, centre.x + lens, centre.y + lens});
  const auto [what, how] = brake_words(subject);
  line(what, Weight::bold, MarkRole::text);
  line(how, Weight::normal, MarkRole::muted);
  line(fmt::format("disc Ø {}", subject.length(subject.disc.diameter)), Weight::normal, MarkRole::muted);
  line(fmt::format("detail A, {:.1f} times as large", enlarged / scale), Weight::normal, MarkRole::muted);
}

void draw_supply(Pen& pen, const Subject& subject, const View& view, const Box& room, double floor) {
  const double y = floor - 5;
  draw_air(pen, room.left, y, view.origin, view.scale * std::max(subject.disc_radius(), subject.shaft / 2));
  const auto& air = subject.stand.air;
  const auto line = [&](double up, const std::string& text, Weight weight, MarkRole role) {
    pen.words({room.left, y - up}, fitted(text, column - 2, measure::number, weight), Anchor::start, weight, role);
  };
  line(15.0, "air supply " + shown(air.supply_pressure, Quantity::pressure, subject.system), Weight::bold,
       MarkRole::text);
  line(11.4, "regulator to " + shown(air.highest_pressure, Quantity::pressure, subject.system), Weight::normal,
       MarkRole::muted);
}

std::string guard_words(Guard guard) {
  switch (guard) {
    case Guard::none:
      return "no guard";
    case Guard::mesh:
      return "mesh guard";
    case Guard::partly_closed:
      return "guard, partly closed";
    case Guard::closed:
      break;
  }
  return "closed guard";
}

std::string control_words(ControlKind kind) {
  switch (kind) {
    case ControlKind::hand:
      return "set by hand";
    case ControlKind::diameter:
      return "set by the diameter";
    case ControlKind::load_cell:
      return "set by the load cell";
    case ControlKind::dancer:
      break;
  }
  return "set by the dancer";
}

/// Draws what is to scale; words come later, where these leave room.
struct Anchors {
  Point load_cell{};
  Point sensor{};
};

Anchors draw_machine(Pen& pen, const Subject& subject, const View& view, const Box& room, double floor) {
  Anchors anchors;
  const double disc = subject.disc_radius();
  draw_ground(pen, view, floor, room.left, room.right, subject.full, subject.core);
  const double leaves = subject.route.legs.front().heading + pi / 2;
  draw_roll(pen, view, subject.radius(), subject.core / 2, leaves, disc);
  if (subject.brake != nullptr) draw_disc(pen, subject.disc, view.origin, view.scale, false);
  draw_core(pen, view, subject.core / 2, subject.shaft / 2, disc > subject.core / 2);
  if (subject.brake != nullptr) draw_guard(pen, view, subject.stand.guard, 1.15 * disc);
  for (const Bend& bend : subject.route.bends) pen.roller(view.at(bend.centre), view.scale * bend.turn.radius);
  draw_web(pen, view, subject.route);
  draw_nip(pen, view, subject.route.legs.back());
  if (const Bend* bend = weighed(subject)) anchors.load_cell = draw_load_cell(pen, view, *bend);
  if (const Bend* bend = hung(subject))
    draw_travel(pen, view, *bend, within_or(subject.stand.dancer->travel, 0.2, 0.001, 10));
  if (subject.stand.diameter_sensor)
    anchors.sensor = draw_sensor(pen, view, subject.stand.diameter_sensor->method, subject.radius(), subject.shaft / 2);
  return anchors;
}

std::string tension_words(const Subject& subject) {
  return subject.job.tension ? shown(*subject.job.tension, Quantity::force, subject.system) : "as recommended";
}

/// Labels with their leaders, what matters most first. Returns how many found no room.
int draw_notes(Pen& pen, const Subject& subject, const View& view, const Anchors& anchors) {
  const Stand& stand = subject.stand;
  int lost = 0;
  const auto note = [&](Point anchor, const std::vector<std::string>& lines, double prefer) {
    if (!pen.note(anchor, lines, prefer)) ++lost;
  };
  const Leg& first = subject.route.legs.front();
  const Leg& last = subject.route.legs.back();
  const Place on_web =
      ahead(first.from, first.heading, 0.5 * std::hypot(first.to.x - first.from.x, first.to.y - first.from.y));
  note(view.at(on_web), {tension_words(subject), "web tension"}, first.heading - pi / 2);
  note(view.at(last.to), {shown(subject.job.speed, Quantity::speed, subject.system), "line speed, at the nip"}, 0);
  note(view.polar(subject.core / 2, degrees(215)), {"core Ø " + subject.length(subject.core)}, degrees(230));
  const double disc = std::max(subject.disc_radius(), subject.shaft / 2);
  if (subject.brake != nullptr && stand.guard != Guard::none)
    note(view.at({1.15 * disc, -1.15 * disc}), {guard_words(stand.guard)}, degrees(-40));
  if (subject.brake != nullptr) note(view.polar(disc, degrees(40)), {"A"}, degrees(40));
  note(view.polar(subject.shaft / 2, degrees(-60)),
       {subject.shaft_known ? "shaft Ø " + subject.length(subject.shaft) : "shaft"}, degrees(-65));
  const Bend* cell = weighed(subject);
  const bool named = stand.idlers.size() <= most_named;
  if (cell != nullptr && !named) note(anchors.load_cell, {"load cell"}, degrees(-90));
  if (const Bend* bend = hung(subject))
    note(view.at(bend->centre), {"dancer", "travel " + subject.length(stand.dancer->travel)}, bend->heading);
  if (stand.diameter_sensor)
    note(anchors.sensor,
         {stand.diameter_sensor->method == DiameterMethod::turns ? "diameter by turns" : "diameter by sound"},
         degrees(130));
  if (!named) return lost;
  for (const Bend& bend : subject.route.bends) {
    if (bend.turn.idler == dancer_turn) continue;
    const Idler& idler = stand.idlers[static_cast<std::size_t>(bend.turn.idler)];
    const double out = bend.heading + (bend.left ? 1 : -1) * (bend.turn.wrap / 2) + (bend.left ? -pi / 2 : pi / 2);
    note(view.at(bend.centre),
         {&bend == cell ? fitted(idler.name, 24, measure::number, Weight::bold) + ", load cell" : idler.name,
          fmt::format("Ø {}, wrap {}", subject.length(idler.diameter),
                      shown(idler.wrap, Quantity::angle, subject.system))},
         out);
  }
  return lost;
}

/// How far [mm] to the left of a leg its dimension has to stand, or to the right (< 0), to pass the rollers at its
/// ends.
double dimension_side(const Subject& subject, const View& view, std::size_t leg) {
  const auto& [legs, bends] = subject.route;
  double left = 2.6;
  double right = leg == 0 ? 1e3 : 2.6;  // the roll lies there
  const auto pass = [&](double& side, double radius) { side = std::max(side, 2 * radius + 1.2); };
  if (leg > 0) pass(bends[leg - 1].left ? left : right, view.scale * bends[leg - 1].turn.radius);
  if (leg < bends.size()) pass(bends[leg].left ? left : right, view.scale * bends[leg].turn.radius);
  if (leg == bends.size())
    for (double* side : {&left, &right}) pass(*side, nip_size);
  return left <= right ? left : -right;
}

/// Returns how many found no room.
int draw_spans(Pen& pen, const Subject& subject, const View& view) {
  if (subject.stand.idlers.size() > most_named) return 0;
  int lost = 0;
  const auto& [legs, bends] = subject.route;
  for (std::size_t i = 0; i < legs.size(); ++i) {
    // The dancer's two strands are one span of the file: told at the first.
    if (i > 0 && bends[i - 1].turn.idler == dancer_turn) continue;
    const bool twice = i < bends.size() && bends[i].turn.idler == dancer_turn;
    auto words = (twice ? "2 × " : "") + shown(legs[i].length, Quantity::web_length, subject.system);
    if (legs[i].shortened) words += ", drawn shorter";
    if (!draw_span(pen, view, legs[i], dimension_side(subject, view, i), words)) ++lost;
  }
  return lost;
}

std::string notes_of(const Subject& subject) {
  std::string symbols = "Symbols: nip, regulator, frame, height of the axis";
  if (!subject.shaft_known) symbols += ", shaft";
  if (hung(subject) != nullptr) symbols += ", the dancer's roller";
  std::string out = symbols + "; the rest is to scale. The rollers stand where the spans leave them room. " +
                    fmt::format("The pressure is {}.", control_words(subject.stand.control.kind));
  if (subject.stand.idlers.size() <= most_named) return out;
  const auto [least, most] = std::minmax_element(subject.stand.idlers.begin(), subject.stand.idlers.end(),
                                                 [](const Idler& a, const Idler& b) { return a.span < b.span; });
  return out + fmt::format(" {} idlers, with spans of {} to {} behind them.", subject.stand.idlers.size(),
                           units::show_number(least->span, Quantity::web_length, subject.system),
                           shown(most->span, Quantity::web_length, subject.system));
}

std::string description_of(const Subject& subject) {
  const auto& stand = subject.stand;
  std::string out = fmt::format(
      "The stand from the side, to scale: a full roll of {} on a core of {}; the web leaves over the top and runs over "
      "{} idler{} to the nip at {}.",
      subject.length(subject.full), subject.length(subject.core), stand.idlers.size(),
      stand.idlers.size() == 1 ? "" : "s", shown(subject.job.speed, Quantity::speed, subject.system));
  if (subject.brake != nullptr)
    out += " Brake: " + brake_words(subject).first + ", " + brake_words(subject).second + "; " +
           guard_words(stand.guard) + ".";
  if (stand.load_cell) out += " A load cell weighs the web.";
  if (stand.dancer) out += " A dancer hangs in the web.";
  if (stand.diameter_sensor) out += " The diameter is measured.";
  return out;
}

/// The dimension of the full roll, on the side where less is in its way.
void draw_full(Pen& pen, const Subject& subject, const View& view) {
  const double full = view.scale * subject.radius();
  const Point& axis = view.origin;
  const auto strip = [&](double x) { return Box{x - 4, axis.y - full, x + 1, axis.y + full}; };
  const double left = axis.x - full - 5.5;
  const double right = axis.x + full + 7.5;
  const double x = pen.emptier(strip(right), strip(left)) ? right : left;
  draw_upright(pen, {axis.x, axis.y - full}, {axis.x, axis.y + full}, x, "Ø " + subject.length(subject.full));
}

}  // namespace

Scene elevation_figure(const Stand& stand, const Job& job, const Fit* fit, units::System system) {
  const Subject subject = subject_of(stand, job, fit, system);
  Page sheet =
      page("Stand from the side", fmt::format("{} · {}", stand.title, job.name), height, {{notes_of(subject)}});
  sheet.scene.description = description_of(subject);
  const Box room = sheet.room;
  const double floor = room.bottom - 5;
  const View view = view_of(subject, room);
  Pen pen(sheet.scene, {room.left, room.top, room.right, floor - 0.5});
  const Anchors anchors = draw_machine(pen, subject, view, room, floor);
  draw_detail(pen, subject, room, view.scale);
  draw_supply(pen, subject, view, room, floor);
  draw_scale_bar(pen, {room.right, room.bottom}, view.scale, 24, system);
  draw_full(pen, subject, view);
  draw_spans(pen, subject, view);
  draw_notes(pen, subject, view, anchors);
  return std::move(sheet.scene);
}

}  // namespace holdback::draw
