/** A small invented stand for the tests of drawing and run. */
export const example = {
  stand: { title: 'Film converter (invented)', guard: 'mesh', ambient: '27 degC' },
  air: { supply_pressure: '5.6 bar', highest_pressure: '6 bar' },
  line: { top_speed: '240 m/min' },
  path: { first_span: '2.2 m' },
  idler: [
    { name: 'turning idler', diameter: '90 mm', wrap: '150 deg', span: '1.1 m' },
    { name: 'weighing idler', diameter: '90 mm', wrap: '170 deg', span: '1.4 m' },
  ],
  control: { kind: 'load cell' },
  load_cell: { idler: 'weighing idler' },
  dancer: { idler: 'turning idler', travel: '220 mm' },
  diameter_sensor: { method: 'ultrasonic' },
  web: [{ name: 'film 30', width: '900 mm', caliper: '30 um' }],
  roll: [{ name: 'big', core_diameter: '168 mm', full_diameter: '640 mm' }],
  job: [{ name: 'clear film', web: 'film 30', roll: 'big', speed: '180 m/min', tension: '88 N' }],
  brake: [{ name: 'disc 300', pad: 'round', pad_diameter: '40 mm', pad_centre_diameter: '240 mm', pairs: 4, rated_temperature: '250 degC' }],
};
export const example_check = {
  check: { jobs: [{ job: 'clear film', web: 'film 30', roll: 'big', speed: 3, tension: { setpoint: 88, low: 77.44, high: 98.56 } }] },
};
/** A state as the core gives it, with what a test changes. */
export const example_state = (changed: Record<string, unknown> = {}) => ({
  time: 1, line_speed: 3, rim_speed: 3, roll_speed: 9.4, angle: 1, diameter: 0.64, tension: 88, lowest_tension: 85, highest_tension: 91,
  measured_tension: 88, setpoint: 88, low: 77.44, high: 98.56, slack: 0, pressure: 3e5, set_pressure: 3.1e5, torque: 28, slip_power: 260,
  disc: 357, pads: 340, dancer: 0, web_run: 10, pulled: 0, slipped: 0, pad_wear: 0, pairs: 2, held: false, broken: false, at_core: false,
  failed: false, fault: '', ...changed,
});
