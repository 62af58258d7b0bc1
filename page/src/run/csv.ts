/** A run as a table: a row for each look, lowest and highest where they may differ. RFC 4180, numbers with a point. */
import { in_unit, unit_of, type Units } from '../drawing/quantity';
import type { Track } from './loop';
import type { Channel } from './strips';

const kinds: Record<Channel, string> = {
  tension: 'force', setpoint: 'force', low: 'force', high: 'force', slack: 'short_length', set_pressure: 'pressure',
  pressure: 'pressure', line_speed: 'speed', rim_speed: 'speed', slip_power: 'power', disc: 'temperature', diameter: 'short_length',
};
const columns: { name: string; channel: Channel; end: 'lo' | 'hi' }[] = [
  { name: 'lowest tension', channel: 'tension', end: 'lo' },
  { name: 'highest tension', channel: 'tension', end: 'hi' },
  { name: 'setpoint', channel: 'setpoint', end: 'hi' },
  { name: 'window from', channel: 'low', end: 'lo' },
  { name: 'window to', channel: 'high', end: 'hi' },
  { name: 'slack', channel: 'slack', end: 'hi' },
  { name: 'pressure asked', channel: 'set_pressure', end: 'hi' },
  { name: 'pressure at brake', channel: 'pressure', end: 'hi' },
  { name: 'line speed', channel: 'line_speed', end: 'hi' },
  { name: 'roll surface speed', channel: 'rim_speed', end: 'hi' },
  { name: 'slip power', channel: 'slip_power', end: 'hi' },
  { name: 'disc temperature', channel: 'disc', end: 'hi' },
  { name: 'diameter', channel: 'diameter', end: 'lo' },
];

const number = (value: number) => String(Number(value.toPrecision(7)));
const quoted = (text: string) => (/[",\r\n]/.test(text) ? `"${text.replace(/"/g, '""')}"` : text);

export function run_csv(tracks: Pick<Track, 'control' | 'strips'>[], units: Units): string {
  const head = ['control', 'from [s]', 'to [s]', ...columns.map((one) => `${one.name} [${unit_of(kinds[one.channel], units)}]`)];
  const rows = [head.map(quoted).join(',')];
  for (const { control, strips } of tracks)
    for (let row = 0; row < strips.count; ++row)
      rows.push([quoted(control), number(strips.from[row]!), number(strips.to[row]!),
        ...columns.map((one) => number(in_unit(strips[one.end][one.channel][row]!, kinds[one.channel], units)))].join(','));
  return rows.join('\r\n') + '\r\n';
}
