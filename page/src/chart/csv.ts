import { inUnits, unitOf, type Units } from '../units';
import { parted, type ChartData } from './Chart';

const quoted = (text: string): string => (/[",\n]/.test(text) ? `"${text.replace(/"/g, '""')}"` : text);
const named = (name: string, kind: string, units: Units): string => quoted(unitOf(kind, units) ? `${name} [${unitOf(kind, units)}]` : name);

/** The chart's numbers to full precision in the reader's units; a line without text parts its tables. */
export const chartCsv = (data: ChartData, units: Units): string => parted(data).map((one) => tableCsv(one, units)).join('\r\n');

function tableCsv(data: ChartData, units: Units): string {
  const head = [named(data.x.name, data.x.kind, units), ...data.series.map((one) => named(one.name, data.y.kind, units))];
  const rows = data.x.values.map((x, i) => [
    inUnits(x, data.x.kind, units),
    ...data.series.map((one) => {
      const value = one.values[i];
      return value === null || value === undefined ? '' : inUnits(value, data.y.kind, units);
    }),
  ]);
  return [head, ...rows].map((row) => row.join(',')).join('\r\n') + '\r\n';
}
