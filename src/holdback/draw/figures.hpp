// The figures of an answer: each a scene of its own, from the result structs and nothing else.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "holdback/draw/scene.hpp"
#include "holdback/model/stand.hpp"
#include "holdback/results/answer.hpp"
#include "holdback/units/units.hpp"

namespace holdback::draw {

/// Brake torque over the roll: what run, ramp, stop, emergency stop and hold ask for against what the fit gives; what
/// goes beyond is marked. `job` brings in how holding is judged; null: unknown. `under` stands under the title.
Scene torque_figure(const Envelope& envelope, const JobFit* job, const std::string& under, units::System system);

/// Disc temperature over the roll: steady, and in the state that repeats when the job has it, against the ratings of
/// disc and pads when the job has them.
Scene temperature_figure(const Envelope& envelope, const JobFit* job, const std::string& under, units::System system);

/// Temperatures of disc, pads, calipers and hub over one roll and its change-over, in the state that repeats. `job`
/// brings the ratings; null: none are drawn.
Scene heat_figure(const ThermalFacts& thermal, const JobFit* job, const std::string& under, units::System system);

/// Pressure over the roll for automatic control and as steps of the hand card, with the tension to expect.
Scene pressure_figure(const JobPlan& plan, units::System system);

/// Pressure over the roll at nominal friction.
Scene pressure_figure(const Envelope& envelope, const JobFit* job, const std::string& under, units::System system);

/// How much of a mix its figure shows; the figure says what it leaves out.
struct MatrixRoom {
  std::size_t jobs{60};
  std::size_t columns{12};
};

/// Least in hand of every job: on each fit tried when the answer holds their jobs, else limit by limit on the
/// recommended one. Seven columns are as wide as the other figures, 180 mm.
Scene coverage_figure(const Choice& choice, const MatrixRoom& most = {});

/// Which input drives the spread of what is in hand, and how likely the limits hold.
Scene drivers_figure(const Likelihood& likelihood, const std::string& under);

/// The tension window over speed and over the roll, with what governs it and where the job's tension lies.
Scene window_figure(const TensionWindow& window, const TensionTarget& tension, const std::string& under,
                    units::System system);

/// One run of a simulation in time, as strips over one axis: tension with its band, setpoint and window, slack and the
/// dancer's place when there is any, pressure, speeds, slip power, temperatures; the phases named along the top. An
/// index beyond the runs gives axes without values.
Scene motion_figure(const Simulation& simulation, std::size_t run, units::System system);

/// The tensions of several controls below each other on one scale, with slack marked; eight at most.
Scene comparison_figure(const Simulation& simulation, units::System system);

/// Gain margin [dB] and phase margin of each loop over the roll, against what was asked.
Scene tuning_figure(const Tuning& tuning, units::System system);

/// How far a roll that is out of round shakes the tension over speed, at five diameters at most, with where its turns
/// meet the mode of roll and web.
Scene runout_figure(const Tuning& tuning, units::System system);

/// How a way to find the tension is done, not to scale; with what was read where there are readings.
Scene measure_figure(const Measurement& found, units::System system);

/// The tension with its interval against the window of the job, and what makes its uncertainty. Only axes and words
/// without a tension.
Scene measured_figure(const Measurement& found, units::System system);

/// Depth of the pads over the dates: measured points set by set, changes of pads, the band of the forecast down to the
/// maker's limit. Six pads at most; the figure says how many it leaves out.
Scene history_figure(const History& history, units::System system);

/// A brake fitted to readings: torque over pressure, each reading beside the fitted line of its pairs and the band of
/// the grade; readings left out are crosses with their row.
Scene fit_figure(const BrakeFit& fit, units::System system);

/// A log in time: the tension with its band against the window, stops and ramps named, above speed, pressure and
/// diameter where these are known.
Scene log_figure(const Diagnosis& found, units::System system);

/// The spectrum of a log's tension over frequency and over orders of the roll, peaks named where they are.
Scene log_spectra_figure(const Diagnosis& found, units::System system);

/// The friction that a log shows as it goes on, against the nominal one.
Scene log_friction_figure(const Diagnosis& found, units::System system);

/// A figure with the name of its file, without an ending: "torque-paper-labels".
struct NamedFigure {
  std::string file{};
  std::string title{};
  Scene scene{};
};

/// All that an answer can show. `size`: the mix, then the job that was asked for, else the one with the least in hand;
/// `plan`: a figure a job, 50 at most; `simulate`: the comparison when there are several runs, then each run that has a
/// trace; `tune`: margins and runout; `measure`: how it is done, and the tension found; `history`: the pads' depths
/// over the dates, when any is known. With the stand that was sized also its elevation, first, with the roll of that
/// one job and the recommended fit. File names differ and are safe on every file system: lower-case ASCII letters,
/// digits and dashes. Empty for an answer without a result.
std::vector<NamedFigure> figures_of(const Answer& answer, units::System system, const Stand* stand = nullptr);

}  // namespace holdback::draw
