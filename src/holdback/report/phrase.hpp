// The phrases that every text answer shares: what is in hand, where a limit binds, how a stand is equipped.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "holdback/report/sheet.hpp"
#include "holdback/report/table.hpp"
#include "holdback/results/answer.hpp"

namespace holdback::report {

/// What a margin has in hand: 1.18 is "+18 %", 0.9 is "−10 %"; from ten times on ">+900 %".
std::string in_hand(double margin);

/// A value with its unit, kept on one line.
std::string shown(double si, Quantity kind, units::System system);

/// A value of which three digits are meant, thousands apart: "35 000 000 m".
std::string rounded(double si, Quantity kind, units::System system);

/// Slack as a length near at hand, or as web when it is long.
std::string slack_of(double slack, units::System system);

/// A note with its amounts filled in, each kept on one line.
std::string filled(const Note& note, units::System system);

/// "3 jobs", "1 job".
std::string counted(int count, std::string_view word);

/// A name in quotes: “Label stock”.
std::string named(std::string_view name);

/// Names in quotes, with commas; of many, the first few and how many more.
std::string names(const std::vector<std::string>& names);

/// "2 × D300, 3 pairs each, grade M".
std::string words_of(const Fit& fit);

/// "at Ø 600 mm"; empty when the roll is no matter (0).
std::string at_diameter(double diameter, units::System system);

/// "stop torque 312 N·m against at most 240 N·m at Ø 1000 mm".
std::string words_of(const Limit& limit, units::System system);

/// The limit of that kind; null when it was not checked.
const Limit* find(const std::vector<Limit>& limits, LimitId id);

/// The word of a state, in its colour.
Cell cell_of(State state);
draw::Ink ink_of(State state);

/// Each note as a paragraph that starts with a dash.
void notes(Sheet& sheet, const std::vector<Note>& notes);

/// The closing sections: assumptions with the defaults that were used, then cautions.
void closing(Sheet& sheet, const std::vector<DefaultUsed>& defaults, const std::vector<Note>& assumptions,
             const std::vector<Note>& cautions);

}  // namespace holdback::report
