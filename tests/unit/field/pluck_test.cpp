// Sounds of known frequency, made here of sines; recordings from NumPy are read in tests/unit/api.
#include "holdback/field/pluck.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace holdback::field {
namespace {

constexpr double turn = 2 * std::numbers::pi;

struct Tone {
  double frequency, level, decay;
};

/// A tap at 0.1 s, then tones that die away; noise of a fixed small kind.
Sound ringing(const std::vector<Tone>& tones, double rate = 8000, double duration = 2) {
  Sound sound;
  sound.rate = rate;
  unsigned state = 1;
  for (int k = 0; k < static_cast<int>(rate * duration); ++k) {
    const double t = k / rate - 0.1;
    state = state * 1664525U + 1013904223U;
    double value = 0.001 * (state / 4294967296.0 - 0.5);
    if (t >= 0 && t < 0.01) value += 0.8 * std::sin(turn * 900 * t);
    for (const Tone& tone : tones)
      if (t >= 0) value += tone.level * std::exp(-tone.decay * t) * std::sin(turn * tone.frequency * t);
    sound.samples.push_back(static_cast<float>(value));
  }
  return sound;
}

bool warned(const Problems& problems, const std::string& word) {
  for (const Problem& problem : problems)
    if (problem.what.text.find(word) != std::string::npos) return true;
  return false;
}

TEST(pluck_frequency, of_one_tone_within_its_uncertainty) {
  for (const double frequency : {7.3, 23.7, 47.4152, 131.9, 480.25}) {
    Problems problems;
    const auto found = pluck_frequency(ringing({{frequency, 0.3, 1.5}}), {}, "", problems);
    ASSERT_TRUE(found) << frequency;
    EXPECT_NEAR(found->frequency / turn, frequency, 3 * found->uncertainty / turn) << frequency;
    EXPECT_NEAR(found->frequency / turn, frequency, 0.05) << frequency;
    EXPECT_LT(found->uncertainty / turn, 0.3) << frequency;
    EXPECT_GT(found->uncertainty, 0) << frequency;
  }
}

TEST(pluck_frequency, names_the_partials) {
  Problems problems;
  const auto found =
      pluck_frequency(ringing({{30, 0.3, 1}, {60.4, 0.1, 2}, {91, 0.05, 2}, {73, 0.05, 1}}), {}, "", problems);
  ASSERT_TRUE(found);
  ASSERT_EQ(found->peaks.size(), 4U);
  EXPECT_EQ(found->peaks[0].partial, 1);
  EXPECT_EQ(found->peaks[1].partial, 2);
  EXPECT_EQ(found->peaks[2].partial, 0);
  EXPECT_EQ(found->peaks[3].partial, 3);
  EXPECT_FALSE(has_errors(problems));
}

TEST(pluck_frequency, a_second_partial_that_is_louder_is_seen_through) {
  Problems problems;
  const auto found = pluck_frequency(ringing({{31.25, 0.06, 1}, {62.6, 0.25, 1.5}}), {}, "a.wav", problems);
  ASSERT_TRUE(found);
  EXPECT_NEAR(found->frequency / turn, 31.25, 0.1);
  EXPECT_TRUE(warned(problems, "higher partial"));
  EXPECT_EQ(problems.front().file, "a.wav");
}

TEST(pluck_frequency, warns_of_hum) {
  for (const double mains : {50.0, 60.0, 120.0}) {
    Problems problems;
    ASSERT_TRUE(pluck_frequency(ringing({{mains, 0.3, 0.2}}), {}, "", problems));
    EXPECT_TRUE(warned(problems, "hum")) << mains;
  }
  Problems none;
  ASSERT_TRUE(pluck_frequency(ringing({{55, 0.3, 0.2}}), {}, "", none));
  EXPECT_FALSE(warned(none, "hum"));
}

TEST(pluck_frequency, warns_when_the_job_speaks_of_half_of_it) {
  Problems problems;
  ASSERT_TRUE(pluck_frequency(ringing({{84, 0.3, 1}}), 41.5 * turn, "", problems));
  EXPECT_TRUE(warned(problems, "partial"));
}

TEST(pluck_frequency, a_frequency_that_glides_is_less_sure) {
  Sound gliding;
  gliding.rate = 8000;
  double phase = 0;
  for (int k = 0; k < 16000; ++k) {
    const double t = k / 8000.0;
    phase += turn * (40 + 2 * std::exp(-2 * t)) / 8000;
    gliding.samples.push_back(static_cast<float>(0.4 * std::exp(-t) * std::sin(phase)));
  }
  Problems problems;
  const auto found = pluck_frequency(gliding, {}, "", problems);
  ASSERT_TRUE(found);
  EXPECT_GT(found->uncertainty / turn, 0.15);
}

TEST(pluck_frequency, silence_and_snippets_are_problems) {
  for (const std::size_t samples : {std::size_t{0}, std::size_t{10}, std::size_t{300}}) {
    Sound sound;
    sound.rate = 8000;
    sound.samples.assign(samples, 0.0F);
    Problems problems;
    EXPECT_FALSE(pluck_frequency(sound, {}, "", problems));
    EXPECT_TRUE(has_errors(problems)) << samples;
  }
  Sound silent;
  silent.rate = 8000;
  silent.samples.assign(16000, 0.0F);
  Problems problems;
  EXPECT_FALSE(pluck_frequency(silent, {}, "", problems));
  EXPECT_TRUE(warned(problems, "nothing rings"));
}

}  // namespace
}  // namespace holdback::field
