// Sound out of a .wav file: RIFF with uncompressed PCM of 8, 16, 24 or 32 bits or floating point of 32 or 64.
#pragma once

#include <string>
#include <string_view>
#include <variant>

#include "holdback/model/problem.hpp"
#include "holdback/model/sound.hpp"

namespace holdback::files {

/// Most samples (of one channel) that are kept: three minutes at 48 kHz. What comes after is left out, which the sound
/// says.
inline constexpr std::size_t most_samples = std::size_t{180} * 48000;

/// The sound of a file, its channels averaged; or what is wrong with it. Never throws for any bytes. Chunks that are
/// not sound are passed over; a data chunk that is cut short, as by a recorder that lost power, is read as far as it
/// goes.
std::variant<Sound, Problem> read_wav(std::string_view bytes, const std::string& name);

}  // namespace holdback::files
