// What `measure` answers: the tension that readings on site speak of, and how sure it is.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/model/problem.hpp"

namespace holdback {

/// One input of the tension, and what it makes unsure. Contributions add up as squares.
struct BudgetLine {
  std::string key{};   // "force"
  std::string name{};  // "force on the gauge, square to the web"
  Amount value{};
  Amount uncertainty{};   // standard
  double sensitivity{};   // [N per SI unit of the input]
  double contribution{};  // [N] standard
  double share{};         // [1] of the variance of the tension
  int readings{};         // how often it was read; 0: from the stand's job, or taken
  Note origin{};          // where value and uncertainty are from
};

/// A value beside the tension, with its standard uncertainty.
struct MeasuredPart {
  std::string key{};   // "pushed_tension"
  std::string name{};  // "tension while pushed"
  Amount value{};
  Amount uncertainty{};
};

/// The same question put to draws from the inputs' distributions (JCGM 101).
struct DrawnCheck {
  int draws{};
  std::string points{};  // "quasi-random (Sobol)" or "pseudo-random (Mersenne twister)"
  int seed{};
  double mean{};                        // [N]
  std::optional<double> uncertainty{};  // [N] standard; none where two or three readings have none
  double low{};                         // [N] 95 %
  double high{};                        // [N]
  double tolerance{};                   // [N] by which the ends of both intervals may differ
  bool agrees{};                        // the linear interval is as good
  double linear_low{};                  // [N] 95 % by linear propagation
  double linear_high{};                 // [N]
};

/// How the tension lies in the window of the job.
struct MeasuredWindow {
  std::string job{};
  double low{};          // [N]
  double high{};         // [N]
  double setpoint{};     // [N]
  double probability{};  // [1] that the tension is inside
  std::string state{};   // "inside", "may be outside", "outside"
  Note verdict{};
  double below{};  // [1] probability that it is below the window
  double above{};  // [1] that it is above
};

/// The usual short cut, and how wrong it is here.
struct SimpleFormula {
  std::string formula{};  // "F S/(4 push)"
  double tension{};       // [N]
  double error{};         // [N] too high where positive
  double error_share{};   // [1] of the tension
};

/// The reading that would help most.
struct BetterReading {
  std::string key{};
  Note what{};           // what to do
  double uncertainty{};  // [N] standard, then
};

/// What a method would be worth on this web and span, with usual instruments.
struct MethodOutlook {
  std::string method{};
  bool possible{};
  double uncertainty{};  // [N] standard; 0 when not possible
  double share{};        // [1] of the tension
  Note why{};            // what limits it, or what is missing
};

/// One peak of the spectrum of a plucked span.
struct SpectrumPeak {
  double frequency{};  // [rad/s]
  double level{};      // [1] of the highest
  int partial{};       // which one of the span's; 0: none
};

/// What a recording of a plucked span says.
struct PluckSound {
  double rate{};                      // [rad/s] sampling
  double duration{};                  // [s] that was used
  double frequency{};                 // [rad/s] of the span
  double uncertainty{};               // [rad/s] standard
  std::vector<SpectrumPeak> peaks{};  // from low to high
  int partial{1};                     // which one of the span's tones `frequency` is; 1 the lowest
};

/// A key of the method, for a form.
struct ReadingField {
  std::string key{};
  Quantity kind{};
  bool needed{};
  bool from_web{};  // the job of the stand gives it
  std::string help{};
  std::optional<Amount> otherwise{};
  std::optional<Amount> step{};  // what the usual instrument shows
};

/// How to take the readings, to be printed and taken to the machine.
struct Instruction {
  std::string title{};
  std::string idea{};  // one sentence
  std::vector<Note> steps{};
  std::vector<Note> cautions{};
  std::vector<Note> expected{};  // what to expect on the job's web
  std::vector<ReadingField> fields{};
};

/// The tension of a web, from readings by one method. Without readings only the instruction is filled in.
struct Measurement {
  std::string method{};                 // "push", "sag", "pluck", "pull", "cell"
  std::string job{};                    // of the stand; empty when none was named
  std::optional<double> tension{};      // [N] over the whole width
  std::optional<double> per_width{};    // [N/m] where the width is known
  std::optional<double> uncertainty{};  // [N] standard
  std::optional<double> freedom{};      // effective degrees of freedom; none: above a thousand, or by draws
  std::optional<double> coverage{};     // [1] expanded over standard uncertainty
  std::optional<double> expanded{};     // [N] half of the 95 % interval
  std::optional<double> low{};          // [N] 95 % interval
  std::optional<double> high{};         // [N]
  bool by_draws{};                      // interval and window are those of the draws, since these reject the linear one
  std::vector<BudgetLine> budget{};     // the largest first
  std::vector<MeasuredPart> parts{};
  std::optional<DrawnCheck> drawn{};
  std::optional<MeasuredWindow> window{};
  std::optional<SimpleFormula> simple{};
  std::optional<BetterReading> better{};
  std::vector<MethodOutlook> methods{};  // the best first
  std::optional<PluckSound> sound{};
  Instruction instruction{};
  std::vector<Note> assumptions{};
  std::vector<Note> cautions{};
};

}  // namespace holdback
