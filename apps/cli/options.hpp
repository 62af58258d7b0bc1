// Options and exit codes that several commands share.
#pragma once

#include "commands.hpp"

namespace holdback::cli::options {

using S = Settings;

inline const Option help{"--help,-h", "", "show this help", &S::help, Completes::nothing, {}};
inline const Option units{"--units", "si|us",          "units of the text and of CSV; JSON is always SI",
                          &S::units, Completes::words, {"si", "us"}};
inline const Option json{"--json",           "", "the whole answer as JSON, problems of the input in it", &S::json,
                         Completes::nothing, {}};
inline const Option svg{"--svg", "DIR",           "figures as SVG into this folder, made when it is not there",
                        &S::svg, Completes::file, {}};
inline const Option out{"--out", "FILE",          "write there instead of to standard output; whole or not at all",
                        &S::out, Completes::file, {}};
inline const Option colour{
    "--colour,--color", "WHEN",           "colour beside the words: auto (on a terminal), always, never",
    &S::colour,         Completes::words, {"auto", "always", "never"}};
inline const Option brake{"--brake", "NAME", "only fits with this brake", &S::brake, Completes::nothing, {}};
inline const Option grade{"--grade", "NAME", "only fits with this friction grade", &S::grade, Completes::nothing, {}};
inline const Option brakes{"--brakes",         "N", "only fits with so many brakes on the shaft", &S::brakes,
                           Completes::nothing, {}};
inline const Option threads{
    "--threads",        "N", "work on N threads; the answer is the same to the last digit", &S::threads,
    Completes::nothing, {}};
inline const Option force{"--force", "", "replace a file that is there", &S::force, Completes::nothing, {}};
inline const std::vector<ExitCode> plain{
    {0, "done"}, {2, "bad input: the file or the call"}, {3, "a fault of the program itself"}};

}  // namespace holdback::cli::options
