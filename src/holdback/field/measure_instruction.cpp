// How to take the readings of each method, for paper.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "holdback/field/measure.hpp"
#include "holdback/field/measure_foretell.hpp"

namespace holdback::field {

namespace {

using Notes = std::vector<Note>;

Note say(const std::string& text, std::vector<Amount> amounts = {}) { return {text, std::move(amounts)}; }

Amount length(double value) { return {value, Quantity::short_length}; }

struct Text {
  std::string idea;
  Notes steps;
  Notes cautions;
};

const Note stand_still = say(
    "Measure with the line standing still and locked off; the one at the controls knows of it and waits for a word.");
const Note nips =
    say("Keep hands, sleeves and hair out of the nips where the web runs onto a roller, also when it creeps.");
const Note heavy = say("A heavy roll turns back by itself when brake or lock lets go; nobody stands in its way.");

Text push_text() {
  return {
      "Pushing a taut web aside takes a force that grows with its tension; what the push itself adds is taken off.",
      {say("Choose the longest free span that can be reached, without a roller, a guide or a fold in it."),
       say("Let the web come to rest at its running tension, and stop the line with the brake as it runs. Web held by "
           "the brake at one end and by a nip at the other is what is meant; note the web between the two as held "
           "when idlers between them turn freely. A dancer, or a brake that slips, lets the web give: then lock it, or "
           "the push adds less than is taken off."),
       say("Measure the span between the lines where the web leaves both rollers: span."),
       say("Lay a straight bar over the whole width in the middle of the span. Mark where the web lies at rest."),
       say("Push the bar square to the web with the gauge, by {0} or a sixtieth of the span, and hold it: read push "
           "and "
           "force. The bar's own weight must not be in the reading; hang it, or push level.",
           {length(20e-3)}),
       say("Let go, see that the web comes back to its mark, and read again, five times in all. Write every reading."),
       say("Pushed elsewhere than in the middle: measure from the nearer roller, place.")},
      {stand_still, nips, say("A thin web may tear under a narrow bar; use a rounded one and stand beside the span.")}};
}

Text sag_text() {
  return {
      "A level span hangs deeper the less tension it has; its own weight is the gauge.",
      {say("Choose the longest level span; both rollers must stand equally high, check with a level."),
       say("Let the web come to rest. No draught, and no static that draws it to a plate."),
       say("Stretch a thin line between the tops of both rollers, or lay a straight edge along one side of the web."),
       say("Measure in the middle from the line down to the web: sag. Do it at both edges and in the middle of the "
           "width, "
           "and write each as a reading."),
       say("Measure the span between the lines where the web leaves both rollers: span."),
       say("Weigh a piece of the web of known area when its basis weight is not certain: every per cent of it is a per "
           "cent of tension.")},
      {stand_still, nips}};
}

Text pluck_text() {
  return {"A free span rings like a string; light webs carry air with them, which is counted.",
          {say("Choose a free span of at least {0}, with nothing near either side of it.", {length(0.5)}),
           say("Let the web come to rest, line standing still."),
           say("Tap it once with the flat hand in the middle of the span and of the width, and let it ring."),
           say("Read its frequency: count the swings with a strobe lamp or a light gate, or record the sound with the "
               "microphone close to the middle of the span, without touching it, fans and pumps off. Save it as a .wav "
               "file; a second or two after the tap is enough."),
           say("Do it five times. A microphone hears little below {0}: a slow, long span is better counted.",
               {{2 * std::numbers::pi * 20, Quantity::frequency}}),
           say("Measure the span between the lines where the web leaves both rollers: span.")},
          {stand_still, nips,
           say("A strobe lamp makes moving parts look still: use it only where all of them are guarded.")}};
}

Text pull_text() {
  return {
      "A roll that is turned slowly by its web needs just the force that brake and drag hold back.",
      {say("Set the brake pressure that is used in running, thread the web off the line, and fix a scale to its end "
           "with "
           "a clamp over the whole width."),
       say("Pull along the line that the web leaves the roll on, slowly and evenly, through a full turn: read pull. "
           "The "
           "mean over the turn counts, not the peak at the start; write that as breakaway."),
       say("Wind a strap round the roll the other way and pull it back through a full turn at the same diameter: back. "
           "Half the sum is brake and drag; the difference is drag that is not alike both ways. Over a full turn the "
           "roll's own weight off its axis pulls as much back as forward."),
       say("Release the brake and pull again both ways: released, released_back. That is bearings, seals and dragging "
           "pads alone."),
       say("Measure the diameter where the web leaves the roll: diameter. Another diameter may be asked for: "
           "at_diameter."),
       say("Do each three times or more.")},
      {say("One person pulls, another stands at the controls; nobody else is near. The line is locked off."), heavy,
       say("The disc may be hot after running: let it cool before hands come near it."),
       say("Air is stored behind a closed valve: before a hose is opened, shut off and vent it."), nips}};
}

Text cell_text() {
  return {
      "A roller that the web wraps is pulled into the wrap by twice the tension times the sine of half of it.",
      {say("Write down what the display shows with the web off the roller, roller turning freely: tare. Where the web "
           "cannot come off, give roller_mass and tilt."),
       say("Measure the wrap: the angle between where the web meets the roller and where it leaves it. A drawing to "
           "scale "
           "will do; the roll's diameter changes it when the first span comes straight from the roll."),
       say("Find the measuring axis on the cell, and its angle to the line that halves both runs of the web: axis."),
       say("Thread the web, run or stand at tension, and read the sum of both ends: reading. Read ten times over some "
           "turns of the roll."),
       say("Hang a known weight on a strap along the web's way once: the display must show what this method says. That "
           "is the best calibration there is.")},
      {say("Thread and take the web off only with the line standing still and locked off."), nips,
       say("Read the display from outside of the guards while the line runs.")}};
}

Text text_of(const std::string& method) {
  if (method == "push") return push_text();
  if (method == "sag") return sag_text();
  if (method == "pluck") return pluck_text();
  if (method == "pull") return pull_text();
  return cell_text();
}

std::optional<double> made_up(const Foretold& foretold, const std::string& key) {
  return read_value(foretold.input, key);
}

/// What the gauge will show at the job's tension.
Notes expected(const MeasureInput& input) {
  if (!input.target || !(input.target->setpoint > 0)) return {};
  const double tension = input.target->setpoint;
  const Foretold foretold = foretell(input, *input.method, tension);
  const Amount at{tension, Quantity::force};
  if (!foretold.cannot.text.empty()) return {};
  const auto force = [&](const char* key) { return Amount{made_up(foretold, key).value_or(0), Quantity::force}; };
  const auto of = [&](const char* key, Quantity kind) { return Amount{made_up(foretold, key).value_or(0), kind}; };
  const std::string_view method = input.method->key;
  if (method == "push")
    return {say("at the job's {0}, a push of {1} on a span of {2} takes about {3}",
                {at, of("push", Quantity::short_length), of("span", Quantity::short_length), force("force")})};
  if (method == "sag")
    return {say("at the job's {0}, a span of {1} hangs by about {2}",
                {at, of("span", Quantity::short_length), of("sag", Quantity::short_length)})};
  if (method == "pluck")
    return {say("at the job's {0}, a span of {1} rings at about {2}",
                {at, of("span", Quantity::short_length), of("frequency", Quantity::frequency)})};
  if (method == "pull") return {say("at the job's tension the scale shows about {0}", {at})};
  return {say("at the job's {0}, a wrap of {1} adds about {2} to the tare",
              {at, of("wrap", Quantity::angle), {force("reading").value - force("tare").value, Quantity::force}})};
}

ReadingField field_of(const ReadingKey& key) {
  ReadingField out;
  out.key = key.key;
  out.needed = key.due == Due::always;
  out.from_web = key.due == Due::web || key.key == "modulus" || key.key == "caliper" || key.key == "width";
  out.help = key.help;
  out.kind = key.kind;
  if (key.otherwise) out.otherwise = Amount{*key.otherwise, key.kind};
  if (key.step > 0) out.step = Amount{key.step, key.kind};
  return out;
}

}  // namespace

Instruction instruction_of(const MeasureInput& input) {
  const Text text = text_of(std::string(input.method->key));
  Instruction out;
  out.title = input.method->title;
  out.idea = text.idea;
  out.steps = text.steps;
  out.cautions = text.cautions;
  out.expected = expected(input);
  for (const ReadingKey& key : input.method->keys) out.fields.push_back(field_of(key));
  return out;
}

}  // namespace holdback::field
