#include "holdback/api/motion_notes.hpp"

#include <algorithm>
#include <numeric>

namespace holdback::api {

namespace {

bool holds(const std::vector<ControlKind>& kinds, ControlKind kind) {
  return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

}  // namespace

std::vector<Note> motion_assumptions(const Stand& stand, const StandJob& job, const std::vector<ControlKind>& kinds,
                                     bool each) {
  std::vector<Note> notes{
      {"the fit, its pairs and the card for setting by hand are those that `size` and `plan` choose"}};
  const double length = std::accumulate(stand.idlers.begin(), stand.idlers.end(), stand.path.first_span,
                                        [](double sum, const Idler& idler) { return sum + idler.span; });
  notes.push_back(
      {"the web between roll and nip, {0}, stretches as a spring without mass, does not slip on its "
       "idlers and is paid out stress-free unless the web states the tension it was wound with; frame and "
       "shaft are stiff",
       {{length, Quantity::web_length}}});
  if (!stand.idlers.empty())
    notes.push_back({each ? "every idler and its spans move by themselves"
                          : "idlers follow the line; their own swings are left out"});
  if (job.job().roll.runout > 0 && job.job().roll.lobes == 1)
    notes.push_back({"the roll is off centre by {0}; its weight pulls on it too, the web leaving level",
                     {{job.job().roll.runout, Quantity::short_length}}});
  notes.push_back(
      {"friction is the grade's nominal one, faded by the disc's temperature; the brake starts as warm as "
       "after many rolls of this job"});
  notes.push_back(
      {"the controller knows which pairs are engaged and, for ramps and stops, what the line is told to "
       "do; how much of the roll's inertia it makes good for is control.inertia_compensation"});
  if (holds(kinds, ControlKind::hand))
    notes.push_back(
        {"by hand the regulator is set at once at each diameter of the card; nothing is done in ramps and "
         "stops"});
  if (holds(kinds, ControlKind::dancer))
    notes.push_back({"the dancer's force follows the setpoint at once and its seals have no friction"});
  return notes;
}

std::vector<Note> motion_cautions(const StandJob& job) {
  std::vector<Note> notes = job.cautions();
  notes.push_back(
      {"A run shows what the model does with the values of the file. Try stops and emergency stops on the "
       "machine at low speed first, with nobody near web, nips and disc."});
  return notes;
}

}  // namespace holdback::api
