#include "holdback/files/wav.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <optional>

namespace holdback::files {

namespace {

constexpr const char* wanted = "a .wav file of uncompressed sound: PCM of 8, 16, 24 or 32 bits, or floating point";
constexpr int pcm = 1;
constexpr int floating = 3;
constexpr int extensible = 0xFFFE;
constexpr unsigned most_channels = 64;
constexpr unsigned slowest = 100;     // [1/s]
constexpr unsigned fastest = 768000;  // [1/s]

Problem fault(const std::string& what, const std::string& name) {
  Problem problem;
  problem.what = {what};
  problem.accepted = {wanted};
  problem.file = name;
  return problem;
}

/// Little-endian number of so many bytes at a place; the place must be inside.
std::uint64_t number_at(std::string_view bytes, std::size_t at, std::size_t size) {
  std::uint64_t value = 0;
  for (std::size_t i = size; i-- > 0;) value = value << 8 | static_cast<unsigned char>(bytes[at + i]);
  return value;
}

/// What the fmt chunk says.
struct Format {
  int code{};
  unsigned channels{};
  unsigned rate{};
  unsigned frame{};  // bytes of one sample of every channel
  unsigned bits{};
  unsigned sample_bytes() const { return (bits + 7) / 8; }
};

std::variant<Format, Problem> format_of(std::string_view chunk, const std::string& name) {
  if (chunk.size() < 16) return fault("its description of the sound is too short", name);
  Format format;
  format.code = static_cast<int>(number_at(chunk, 0, 2));
  format.channels = static_cast<unsigned>(number_at(chunk, 2, 2));
  format.rate = static_cast<unsigned>(number_at(chunk, 4, 4));
  format.frame = static_cast<unsigned>(number_at(chunk, 12, 2));
  format.bits = static_cast<unsigned>(number_at(chunk, 14, 2));
  if (format.code == extensible && chunk.size() >= 26) format.code = static_cast<int>(number_at(chunk, 24, 2));
  const bool whole =
      format.code == pcm && (format.bits == 8 || format.bits == 16 || format.bits == 24 || format.bits == 32);
  const bool real = format.code == floating && (format.bits == 32 || format.bits == 64);
  if (format.code != pcm && format.code != floating)
    return fault(fmt::format("the sound is compressed (format {})", format.code), name);
  if (!whole && !real) return fault(fmt::format("samples of {} bits are not read", format.bits), name);
  if (format.channels < 1 || format.channels > most_channels)
    return fault(fmt::format("{} channels are not read", format.channels), name);
  if (format.rate < slowest || format.rate > fastest)
    return fault(fmt::format("{} samples a second are not read", format.rate), name);
  if (format.frame != format.channels * format.sample_bytes())
    return fault("its description of the sound contradicts itself", name);
  return format;
}

/// One sample; full scale is 1. What is not finite is silence.
float sample_at(std::string_view data, std::size_t at, const Format& format) {
  const std::uint64_t raw = number_at(data, at, format.sample_bytes());
  if (format.code == floating) {
    double value = 0;
    if (format.bits == 64) {
      std::memcpy(&value, &raw, sizeof value);
    } else {
      const auto bits = static_cast<std::uint32_t>(raw);
      float narrow = 0;
      std::memcpy(&narrow, &bits, sizeof narrow);
      value = static_cast<double>(narrow);
    }
    return std::isfinite(value) ? static_cast<float>(std::clamp(value, -1e6, 1e6)) : 0.0F;
  }
  if (format.bits == 8) return (static_cast<float>(raw) - 128.0F) / 128.0F;
  const auto high = static_cast<std::int64_t>(raw << (64 - format.bits)) >> (64 - format.bits);
  return static_cast<float>(static_cast<double>(high) / std::ldexp(1.0, static_cast<int>(format.bits) - 1));
}

Sound sound_of(std::string_view data, const Format& format) {
  Sound sound;
  sound.rate = format.rate;
  sound.channels = static_cast<int>(format.channels);
  const std::size_t frames = data.size() / format.frame;
  const std::size_t kept = std::min(frames, most_samples);
  sound.cut = frames > kept;
  sound.samples.reserve(kept);
  for (std::size_t k = 0; k < kept; ++k) {
    float sum = 0;
    for (unsigned c = 0; c < format.channels; ++c)
      sum += sample_at(data, k * format.frame + c * format.sample_bytes(), format);
    sound.samples.push_back(sum / static_cast<float>(format.channels));
  }
  return sound;
}

/// A chunk of the file: its name and what is in it, as far as the file goes.
struct Chunk {
  std::string_view id;
  std::string_view body;
  std::size_t next{};
};

std::optional<Chunk> chunk_at(std::string_view bytes, std::size_t at) {
  if (at + 8 > bytes.size()) return std::nullopt;
  const auto size = static_cast<std::size_t>(number_at(bytes, at + 4, 4));
  const std::size_t there = std::min(size, bytes.size() - at - 8);
  return Chunk{bytes.substr(at, 4), bytes.substr(at + 8, there), at + 8 + there + (there % 2)};
}

}  // namespace

std::variant<Sound, Problem> read_wav(std::string_view bytes, const std::string& name) {
  if (bytes.size() < 12 || bytes.substr(0, 4) != "RIFF" || bytes.substr(8, 4) != "WAVE")
    return fault("this is no .wav file: it does not begin with RIFF and WAVE", name);
  std::optional<Format> format;
  for (auto chunk = chunk_at(bytes, 12); chunk; chunk = chunk_at(bytes, chunk->next)) {
    if (chunk->id == "fmt ") {
      auto read = format_of(chunk->body, name);
      if (auto* problem = std::get_if<Problem>(&read)) return std::move(*problem);
      format = std::get<Format>(read);
    } else if (chunk->id == "data") {
      if (!format) return fault("the sound comes before its description", name);
      Sound sound = sound_of(chunk->body, *format);
      if (sound.samples.empty()) return fault("the file holds no sound", name);
      return sound;
    }
  }
  return fault("the file holds no sound", name);
}

}  // namespace holdback::files
