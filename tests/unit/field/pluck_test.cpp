// Sounds of known frequency, made here of sines that lie as the partials of a web which carries air; recordings from
// NumPy with the air of a SciPy solution are read in tests/cli.
#include "holdback/field/pluck.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "holdback/field/measure_foretell.hpp"
#include "holdback/physics/measure.hpp"

namespace holdback::field {
namespace {

constexpr double turn = 2 * std::numbers::pi;

struct Swing {
  double frequency, level, decay;
};

/// A span of web between two rollers in free air of 1.2 kg/m³.
struct Web {
  double mass, width, span, tension_per_width;
  double partial(int n) const {
    const double carried = physics::carried_air(width, span / n, 1.2);
    return physics::span_frequency(tension_per_width, mass + carried, span, n);
  }
  PartialSpread spread() const {
    MeasureInput input;
    input.method = measure_method("pluck");
    const auto read = [&](const std::string& key, double value) {
      input.readings.push_back({key, {value}, {}, 0, ResolutionFrom::stated, 0});
    };
    read("span", span);
    read("width", width);
    read("basis_weight", mass);
    return partial_spread(input);
  }
};

// Light film a metre wide, wide paper over a short span, a narrow strip of board, foil: partials 1 : 2.53 to 1 : 2.05.
constexpr Web webs[] = {
    {12e-6 * 1390, 1, 1, 150}, {0.08, 1.2, 0.5, 250}, {0.25, 0.1, 1.5, 900}, {20e-6 * 2700, 0.6, 0.8, 300}};

std::vector<Swing> partials(const Web& web, const std::vector<std::pair<int, double>>& levels) {
  std::vector<Swing> tones;
  for (const auto& [n, level] : levels) tones.push_back({web.partial(n), level, 1.0 + 0.2 * n});
  return tones;
}

/// A tap at 0.1 s, then tones that die away; noise of a fixed small kind.
Sound ringing(const std::vector<Swing>& tones, double rate = 8000, double duration = 2) {
  Sound sound;
  sound.rate = rate;
  unsigned state = 1;
  for (int k = 0; k < static_cast<int>(rate * duration); ++k) {
    const double t = k / rate - 0.1;
    state = state * 1664525U + 1013904223U;
    double value = 0.001 * (state / 4294967296.0 - 0.5);
    if (t >= 0 && t < 0.01) value += 0.8 * std::sin(turn * 900 * t);
    for (const Swing& tone : tones)
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
  for (const Web& web : webs)
    for (const PartialSpread spread : {PartialSpread{}, web.spread()}) {
      Problems problems;
      const auto sound = ringing(partials(web, {{1, 0.06}, {2, 0.25}, {3, 0.05}}));
      const auto found = pluck_frequency(sound, {{}, spread}, "a.wav", problems);
      ASSERT_TRUE(found) << web.mass;
      EXPECT_NEAR(found->frequency / turn, web.partial(1), 0.1) << web.mass;
      EXPECT_EQ(found->partial, 1) << web.mass;
      EXPECT_TRUE(warned(problems, "higher partial")) << web.mass;
      EXPECT_EQ(problems.front().file, "a.wav");
    }
}

TEST(pluck_frequency, partials_that_air_spreads_are_named) {
  for (const Web& web : webs) {
    Problems problems;
    const auto sound = ringing(partials(web, {{1, 0.3}, {2, 0.15}, {3, 0.1}, {4, 0.06}}));
    const auto found = pluck_frequency(sound, {{}, web.spread()}, "", problems);
    ASSERT_TRUE(found) << web.mass;
    ASSERT_EQ(found->peaks.size(), 4U) << web.mass;
    for (int n = 1; n <= 4; ++n) EXPECT_EQ(found->peaks[static_cast<std::size_t>(n - 1)].partial, n) << web.mass;
    EXPECT_TRUE(problems.empty()) << problems.front().what.text;
  }
}

// The lowest tone taken for the first would make the tension more than four times as high.
TEST(pluck_frequency, a_first_partial_that_is_not_heard_is_noticed) {
  for (const Web& web : webs)
    for (const PartialSpread spread : {PartialSpread{}, web.spread()}) {
      Problems problems;
      const auto found =
          pluck_frequency(ringing(partials(web, {{2, 0.3}, {3, 0.2}, {4, 0.1}})), {{}, spread}, "", problems);
      ASSERT_TRUE(found) << web.mass;
      EXPECT_EQ(found->partial, 2) << web.mass;
      EXPECT_NEAR(found->frequency / turn, web.partial(2), 0.1) << web.mass;
      EXPECT_TRUE(warned(problems, "not heard")) << web.mass;
    }
}

// A tap in the middle rings the odd partials alone.
TEST(pluck_frequency, of_odd_partials_without_the_first) {
  for (const Web& web : webs) {
    Problems problems;
    const auto sound = ringing(partials(web, {{3, 0.3}, {5, 0.2}, {7, 0.1}}));
    const auto found = pluck_frequency(sound, {{}, web.spread()}, "", problems);
    ASSERT_TRUE(found) << web.mass;
    EXPECT_EQ(found->partial, 3) << web.mass;
    EXPECT_TRUE(warned(problems, "not heard")) << web.mass;
  }
}

TEST(pluck_frequency, two_tones_that_fit_as_second_and_third_are_warned_of) {
  for (const Web& web : webs) {
    Problems problems;
    const auto sound = ringing(partials(web, {{2, 0.3}, {3, 0.2}}));
    const auto found = pluck_frequency(sound, {{}, web.spread()}, "", problems);
    ASSERT_TRUE(found) << web.mass;
    EXPECT_EQ(found->partial, 1) << web.mass;
    EXPECT_TRUE(warned(problems, "not heard")) << web.mass;
  }
}

TEST(pluck_frequency, neither_rumble_below_nor_a_faint_tone_at_half_is_taken_for_the_first) {
  const Web& web = webs[3];
  for (const Swing& other : {Swing{web.partial(1) / 3.9, 0.06, 0.5}, Swing{web.partial(1) / 2, 0.01, 1}}) {
    auto tones = partials(web, {{1, 0.3}, {2, 0.15}, {3, 0.1}});
    tones.push_back(other);
    Problems problems;
    const auto found = pluck_frequency(ringing(tones), {{}, web.spread()}, "", problems);
    ASSERT_TRUE(found);
    EXPECT_NEAR(found->frequency / turn, web.partial(1), 0.1) << other.frequency;
    EXPECT_EQ(found->partial, 1);
  }
}

Sound noise(unsigned seed, double kept, double duration) {
  Sound sound;
  sound.rate = 8000;
  std::mt19937 engine(seed);
  double value = 0;
  for (int k = 0; k < static_cast<int>(8000 * duration); ++k) {
    value = kept * value + 0.05 * (static_cast<double>(engine()) / 4294967296.0 - 0.5);
    sound.samples.push_back(static_cast<float>(value));
  }
  return sound;
}

// White, and darker the more of each value is kept for the next.
TEST(pluck_frequency, noise_alone_is_an_error_that_says_what_to_do) {
  for (const double kept : {0.0, 0.5, 0.95})
    for (const double duration : {0.5, 2.0})
      for (unsigned seed = 1; seed <= 4; ++seed) {
        Problems problems;
        EXPECT_FALSE(pluck_frequency(noise(seed, kept, duration), {}, "", problems)) << kept << " " << seed;
        ASSERT_TRUE(has_errors(problems)) << kept << " " << seed;
        EXPECT_TRUE(warned(problems, "no tone stands out")) << problems.front().what.text << kept << duration;
        EXPECT_TRUE(warned(problems, "tap the span"));
        EXPECT_FALSE(problems.front().accepted.text.empty());
      }
}

TEST(pluck_frequency, a_tone_in_noise_as_loud_as_itself_is_found) {
  for (unsigned seed = 1; seed <= 4; ++seed) {
    Sound sound = noise(seed, 0, 2);  // deviation 0.0144
    for (std::size_t k = 0; k < sound.samples.size(); ++k)
      sound.samples[k] += static_cast<float>(0.02 * std::sin(turn * 43 * static_cast<double>(k) / 8000));
    Problems problems;
    const auto found = pluck_frequency(sound, {}, "", problems);
    ASSERT_TRUE(found) << seed;
    EXPECT_NEAR(found->frequency / turn, 43, 0.2) << seed;
  }
}

// A wide sheet's air goes with the length of the waves: m ∝ 1/n, f ∝ n^1.5; a web without air rings at 1 : 2 : 3.
TEST(partial_spread, between_no_air_and_nothing_but_air) {
  const Web wide{1e-6, 50, 0.5, 100};
  EXPECT_NEAR(wide.spread().most, 1.5, 1e-12);
  EXPECT_NEAR(wide.spread().least, 1.5 - 0.04, 0.01);
  const Web heavy{100, 0.1, 0.5, 100};
  EXPECT_EQ(heavy.spread().least, 1);
  EXPECT_NEAR(heavy.spread().most, 1 + 0.04, 0.001);
  MeasureInput nothing;
  nothing.method = measure_method("pluck");
  EXPECT_EQ(partial_spread(nothing).least, 1);
  EXPECT_EQ(partial_spread(nothing).most, 1.5);
}

// carried(pi) and carried(2 pi) of tests/published/scripts/carried_air.py for a web as wide as the span: 0.440397 and
// 0.267703 of ρ W, so that with 12 µm of film f₂/f₁ = 2 √(0.54516/0.33792) = 2.540, a power of 1.345.
TEST(partial_spread, of_light_film_by_the_potential_flow) {
  const PartialSpread spread = webs[0].spread();
  EXPECT_LT(spread.least, 1.345);
  EXPECT_GT(spread.most, 1.345);
  EXPECT_LT(spread.most - spread.least, 0.13);
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

TEST(pluck_frequency, warns_when_it_would_be_the_second_partial_at_the_jobs_tension) {
  for (const Web& web : webs) {
    Problems problems;
    const PluckKnown known{web.partial(1) * turn, web.spread()};
    ASSERT_TRUE(pluck_frequency(ringing({{web.partial(2), 0.3, 1}}), known, "", problems));
    EXPECT_TRUE(warned(problems, "2. partial") || warned(problems, "{1}. partial")) << web.mass;
    Problems none;
    ASSERT_TRUE(pluck_frequency(ringing({{1.2 * web.partial(1), 0.3, 1}}), known, "", none));
    EXPECT_TRUE(none.empty() || warned(none, "hum")) << web.mass;
  }
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
