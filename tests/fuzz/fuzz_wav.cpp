// Generated recordings: each is a sound whose samples are all finite, or a problem; and what rings in it is a
// frequency.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>
#include <variant>

#include "holdback/field/pluck.hpp"
#include "holdback/files/wav.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace holdback;
  const auto read = files::read_wav({reinterpret_cast<const char*>(data), size}, "fuzzed.wav");
  if (const auto* problem = std::get_if<Problem>(&read)) {
    if (problem->what.text.empty()) std::abort();
    return 0;
  }
  const auto& sound = std::get<Sound>(read);
  if (sound.samples.empty() || sound.samples.size() > files::most_samples || !(sound.rate > 0)) std::abort();
  for (const float sample : sound.samples)
    if (!std::isfinite(sample)) std::abort();
  Problems problems;
  const auto rings = field::pluck_frequency(sound, {100.0, {}}, "fuzzed.wav", problems);
  if (!rings && !has_errors(problems)) std::abort();
  if (rings && !(std::isfinite(rings->frequency) && rings->frequency > 0 && rings->uncertainty > 0)) std::abort();
  return 0;
}
