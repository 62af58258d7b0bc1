// An invented log of any length: time, speed, tension, pressure and turns at 1 kHz, as a recorder writes them.
#pragma once

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <functional>
#include <string>

namespace log_bench {

/// Hands the log over piece by piece.
inline void write(std::size_t rows, const std::function<void(const char*, std::size_t)>& to) {
  const char* head = "time [s],speed [m/min],tension [N],pressure [bar],turns [rev]\n";
  to(head, std::char_traits<char>::length(head));
  std::uint64_t random = 1;
  const auto noise = [&random] {  // a linear congruential generator, in [−1, 1)
    random = random * 6364136223846793005U + 1442695040888963407U;
    return static_cast<double>(random >> 11U) * 0x1p-52 - 1;
  };
  double turns = 0;
  char line[160];
  for (std::size_t i = 0; i < rows; ++i) {
    const double time = 1e-3 * static_cast<double>(i);
    turns += 5e-3 / (3.14159265358979 * 0.8);
    const int size = std::snprintf(line, sizeof line, "%.3f,%.2f,%.2f,%.4f,%.4f\n", time, 300 + 0.4 * noise(),
                                   150 + 3 * std::sin(12.5 * time) + 2 * noise(), 2.5 + 0.01 * noise(), turns);
    to(line, static_cast<std::size_t>(size));
  }
}

inline std::string text(std::size_t rows) {
  std::string all;
  write(rows, [&all](const char* piece, std::size_t size) { all.append(piece, size); });
  return all;
}

}  // namespace log_bench
