// Recordings written by NumPy (tests/published/scripts/plucked_spans.py), and files that are none.
#include "holdback/files/wav.hpp"

#include <gtest/gtest.h>

#include "support/files.hpp"

namespace holdback::files {
namespace {

std::string recording(const std::string& name) { return test::read_source("tests/support/sounds/" + name + ".wav"); }

Sound sound_of(const std::string& bytes) {
  auto read = read_wav(bytes, "a.wav");
  if (const auto* problem = std::get_if<Problem>(&read)) throw std::runtime_error(problem->what.text);
  return std::get<Sound>(std::move(read));
}

std::string fault_of(const std::string& bytes) {
  const auto read = read_wav(bytes, "a.wav");
  const auto* problem = std::get_if<Problem>(&read);
  if (problem == nullptr) return {};
  EXPECT_EQ(problem->file, "a.wav");
  EXPECT_FALSE(problem->accepted.text.empty());
  return problem->what.text;
}

// Bytes of a field of the fmt chunk replaced; it begins at 20.
std::string with(std::string bytes, std::size_t at, const std::string& those) {
  return bytes.replace(20 + at, those.size(), those);
}

TEST(read_wav, every_form_of_sample) {
  for (const std::string form : {"8", "16", "24", "32", "float32", "float64"}) {
    const Sound sound = sound_of(recording("ramp-" + form));
    EXPECT_EQ(sound.rate, 8000);
    EXPECT_EQ(sound.channels, 1);
    EXPECT_EQ(sound.samples, (std::vector<float>{0, 0.5F, -0.5F, -1})) << form;
  }
}

TEST(read_wav, channels_are_averaged_and_remarks_passed_over) {
  const Sound stereo = sound_of(recording("second-loud"));
  EXPECT_EQ(stereo.channels, 2);
  EXPECT_EQ(stereo.samples.size(), static_cast<std::size_t>(11025 * 1.4));
  EXPECT_EQ(sound_of(recording("float")).samples.size(), 10000U);
}

TEST(read_wav, a_recording_cut_short_is_read_as_far_as_it_goes) {
  const std::string whole = recording("span-47");
  const Sound sound = sound_of(whole.substr(0, 44 + 2001));
  EXPECT_EQ(sound.samples.size(), 1000U);
}

TEST(read_wav, what_is_no_recording_is_told) {
  const std::string ramp = recording("ramp-16");
  EXPECT_NE(fault_of("").find("RIFF"), std::string::npos);
  EXPECT_NE(fault_of("OggS, and something else").find("RIFF"), std::string::npos);
  EXPECT_NE(fault_of(ramp.substr(0, 12)).find("no sound"), std::string::npos);
  EXPECT_NE(fault_of(ramp.substr(0, 30)).find("too short"), std::string::npos);
  EXPECT_NE(fault_of(ramp.substr(0, 44)).find("no sound"), std::string::npos);
  EXPECT_NE(fault_of(with(ramp, 0, {2, 0})).find("compressed"), std::string::npos);
  EXPECT_NE(fault_of(with(ramp, 2, std::string(2, '\0'))).find("0 channels"), std::string::npos);
  EXPECT_NE(fault_of(with(ramp, 4, std::string(4, '\0'))).find("0 samples a second"), std::string::npos);
  EXPECT_NE(fault_of(with(ramp, 14, {12, 0})).find("12 bits"), std::string::npos);
  EXPECT_NE(fault_of(with(ramp, 12, {7, 0})).find("contradicts"), std::string::npos);
  EXPECT_NE(fault_of(ramp.substr(0, 12) + ramp.substr(36)).find("before its description"), std::string::npos);
}

TEST(read_wav, a_chunk_that_says_it_is_longer_than_the_file_is_no_trap) {
  std::string ramp = recording("ramp-16");
  ramp.replace(40, 4, 4, '\xFF');
  EXPECT_EQ(sound_of(ramp).samples.size(), 4U);
}

TEST(read_wav, what_is_not_finite_is_silence) {
  std::string ramp = recording("ramp-float32");
  ramp.replace(44, 4, std::string("\0\0\xC0\x7F", 4));  // not a number
  EXPECT_EQ(sound_of(ramp).samples.front(), 0.0F);
}

TEST(read_wav, of_a_long_recording_the_first_part) {
  std::string bytes = recording("ramp-8").substr(0, 44);
  bytes += std::string(most_samples + 5, '\x80');
  bytes.replace(40, 4, 4, '\xFF');
  const Sound sound = sound_of(bytes);
  EXPECT_TRUE(sound.cut);
  EXPECT_EQ(sound.samples.size(), most_samples);
}

}  // namespace
}  // namespace holdback::files
