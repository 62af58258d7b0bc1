// A sound, as a recording holds it.
#pragma once

#include <vector>

namespace holdback {

struct Sound {
  double rate{};                 // [1/s] > 0, samples a second
  std::vector<float> samples{};  // channels averaged; full scale is 1
  int channels{};                // of the recording
  bool cut{};                    // the recording goes on: only its first part is here
  double duration() const { return static_cast<double>(samples.size()) / rate; }
};

}  // namespace holdback
