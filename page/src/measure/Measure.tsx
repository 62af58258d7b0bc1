// The frame of a later part. It names the ways; it computes nothing yet, and says so.
const ways: [string, string, string][] = [
  ['Tension from the idler’s load', 'Weigh an idler with a known wrap, web running and web slack.', 'wrap, two readings'],
  ['Tension from the loaded dancer', 'A dancer at rest in the middle of its travel balances the web: its loading force over its strands.', 'loading force, strands'],
  ['Tension from the sag of a level span', 'Lay a straight edge along the span, measure the sag in its middle.', 'span, sag, basis weight'],
  ['Torque by a lever at the shaft', 'Line at rest, web off, pads on: pull a lever on the shaft with a spring balance until it slips.', 'lever length, force, pressure'],
  ['Drag by letting the roll run out', 'Bring the roll to speed with the pads released and time its run-out. Nobody near web and nips.', 'speeds, time'],
  ['Friction from pressure and torque', 'Torque at some pressures; the slope is friction, the foot is the threshold.', 'pairs of readings'],
];

export function Measure() {
  return (
    <div class="answers">
      <section class="verdict" aria-labelledby="measure">
        <div>
          <h2 id="measure">Measure on the machine</h2>
          <p class="big">Not computed here yet</p>
          <p>These are the ways in which readings on the machine will tell tension, torque, drag and friction. Until then, write what you measure into the stand file under Describe.</p>
        </div>
      </section>
      <section class="cautions" aria-labelledby="measure-mind">
        <h2 id="measure-mind">Mind</h2>
        <ul>
          <li>Measure with the machine locked out wherever a hand comes near web, nip, roll or disc; a running roll draws in.</li>
          <li>Discs stay hot long after a stop. Air stays in lines and cylinders until it is let out.</li>
        </ul>
      </section>
      <ol class="ways">
        {ways.map(([name, how, takes]) => (
          <li key={name}>
            <h3>{name}</h3>
            <p>{how}</p>
            <p class="help">Takes: {takes}. <strong>Comes later.</strong></p>
          </li>
        ))}
      </ol>
    </div>
  );
}
