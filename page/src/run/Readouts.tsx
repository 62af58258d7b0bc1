/** The run in numbers and words, a few times a second. */
import { show, type Units } from '../drawing/quantity';
import { clock_text, state_words } from './events';
import type { Track } from './loop';
import { strip_kinds, type View } from './plot';
import { gauge, length_kind } from './words';

const rows: { name: string; value: (state: any, units: Units) => string }[] = [
  { name: 'time', value: (s) => clock_text(s.time) },
  { name: 'tension', value: (s, u) => show(s.tension, 'force', u) },
  { name: 'asked for', value: (s, u) => show(s.setpoint, 'force', u) },
  { name: 'slack', value: (s, u) => show(s.slack, length_kind(s.slack), u) },
  { name: 'diameter', value: (s, u) => show(s.diameter, 'short_length', u) },
  { name: 'roll', value: (s, u) => show(s.roll_speed, 'rotational_speed', u) },
  { name: 'line', value: (s, u) => show(s.line_speed, 'speed', u) },
  { name: 'at brake', value: (s, u) => show(gauge(s.pressure), 'pressure', u) },
  { name: 'torque', value: (s, u) => show(s.torque, 'torque', u) },
  { name: 'slip power', value: (s, u) => show(s.slip_power, 'power', u) },
  { name: 'disc', value: (s, u) => show(s.disc, 'temperature', u) },
  { name: 'pads', value: (s, u) => show(s.pads, 'temperature', u) },
  { name: 'web run', value: (s, u) => show(s.web_run, 'web_length', u) },
  { name: 'into brake', value: (s, u) => show(s.slipped, 'energy', u) },
  { name: 'pad wear', value: (s, u) => show(s.pad_wear, 'ratio', u) },
];

export function Words({ track, name }: { track: Track; name: string }) {
  return (
    <p class="rn-words">
      {name && <strong>{name}</strong>}
      {state_words(track.state).map((one) => <span key={one.key} class={one.bad ? 'rn-word is-bad' : 'rn-word'}>{one.bad ? '▲ ' : '● '}{one.word}</span>)}
    </p>
  );
}

export function Readouts({ tracks, units }: { tracks: Track[]; units: Units }) {
  if (tracks.length === 1) return (
    <dl class="rn-readouts">{rows.map((row) => <div key={row.name}><dt>{row.name}</dt><dd>{row.value(tracks[0]!.state, units)}</dd></div>)}</dl>
  );
  return (
    <table class="rn-table">
      <caption class="unseen">The two runs now</caption>
      <thead><tr><th scope="col">now</th>{tracks.map((one) => <th key={one.run} scope="col">{one.control}</th>)}</tr></thead>
      <tbody>{rows.map((row) => <tr key={row.name}><th scope="row">{row.name}</th>{tracks.map((one) => <td key={one.run}>{row.value(one.state, units)}</td>)}</tr>)}</tbody>
    </table>
  );
}

/** The strips as numbers: lowest and highest over what is shown. */
export function StripTable({ tracks, view, units }: { tracks: Track[]; view: View; units: Units }) {
  return (
    <table class="rn-table">
      <caption>Lowest and highest from {clock_text(view.begin)} to {clock_text(view.end)}</caption>
      <thead><tr><th scope="col">strip</th>{tracks.map((one) => [
        <th key={`l${one.run}`} scope="col">lowest{tracks.length > 1 ? `, ${one.control}` : ''}</th>,
        <th key={`h${one.run}`} scope="col">highest{tracks.length > 1 ? `, ${one.control}` : ''}</th>,
      ])}</tr></thead>
      <tbody>{strip_kinds.flatMap((kind) => kind.traces.map((trace) => (
        <tr key={trace.channel}>
          <th scope="row">{kind.traces.length > 1 ? `${kind.name}, ${trace.label}` : kind.name}</th>
          {tracks.map((one) => {
            const found = one.strips.extremes(trace.channel, view.begin, view.end);
            return [0, 1].map((i) => <td key={`${one.run}${i}`}>{found ? show(found[i]!, kind.kind, units) : '—'}</td>);
          })}
        </tr>
      )))}</tbody>
    </table>
  );
}
