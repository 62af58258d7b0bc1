// A chart over plain columns: drawn as SVG with its colours inside, so that what is saved is what is seen. Lines are
// told apart by dashes and by their names at their ends; the numbers stand behind a button as a table.
import { useId, useMemo, useRef, useState } from 'preact/hooks';
import { save } from '../store/files';
import { Scroll } from '../ui/parts';
import { inUnits, show, unitOf, type Units } from '../units';
import { chartCsv } from './csv';
import { layOut, type Laid } from './layout';
import { svgFile } from './svgFile';

export interface Series {
  name: string;
  values: readonly (number | null)[]; // SI
  role: 'main' | 'second' | 'third' | 'fourth' | 'fifth' | 'limit';
  side?: 'above' | 'below'; // of a limit: where it is forbidden
  marks?: 'points' | 'stems'; // each value by itself: no line between them
  at?: readonly number[]; // its own x, where it is known at other places than the rest; SI
}
export interface ChartData {
  title: string;
  x: { name: string; kind: string; values: readonly number[] };
  y: { name: string; kind: string };
  series: Series[];
}

const width = 720;
const height = 340;

export function Chart({ data, units, note }: { data: ChartData; units: Units; note?: string }) {
  const id = useId();
  const svg = useRef<SVGSVGElement>(null);
  const [open, setOpen] = useState(false);
  const [at, setAt] = useState<number | null>(null);
  const laid = useMemo(() => layOut(data, units, width, height), [data, units]);
  const file = data.title.toLowerCase().replace(/[^a-z0-9]+/g, '-');
  const point = (event: PointerEvent) => {
    const box = svg.current?.getBoundingClientRect();
    if (box) setAt(laid.nearest(((event.clientX - box.left) / box.width) * width));
  };
  return (
    <figure class="chart" aria-labelledby={`${id}-title`}>
      <figcaption id={`${id}-title`}>{data.title}</figcaption>
      <svg ref={svg} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={described(data, units)} onPointerMove={point} onPointerLeave={() => setAt(null)}>
        <Drawing laid={laid} data={data} units={units} at={at} id={id.replace(/\W/g, '')} />
      </svg>
      <div class="charttools">
        <button type="button" class="quiet" aria-expanded={open} aria-label={`${open ? 'Hide numbers' : 'Numbers'} of ${data.title}`} onClick={() => setOpen(!open)}>{open ? 'Hide numbers' : 'Numbers'}</button>
        <button type="button" class="quiet" aria-label={`Save SVG of ${data.title}`} onClick={() => svg.current && save(`${file}.svg`, svgFile(svg.current), 'image/svg+xml')}>Save SVG</button>
        <button type="button" class="quiet" aria-label={`Save CSV of ${data.title}`} onClick={() => save(`${file}.csv`, chartCsv(data, units), 'text/csv')}>Save CSV</button>
      </div>
      <p class="readout" aria-hidden="true">{at === null ? note ?? 'Point at the chart to read it.' : readOut(data, units, at)}</p>
      {open ? parted(data).map((one) => <Numbers key={one.title} data={one} units={units} />) : null}
    </figure>
  );
}

function Drawing({ laid, data, units, at, id }: { laid: Laid; data: ChartData; units: Units; at: number | null; id: string }) {
  const { left, right, top, bottom } = laid.box;
  return (
    <>
      <defs>
        <pattern id={`${id}-hatch`} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V7" class="hatch" /></pattern>
        <clipPath id={`${id}-clip`}><rect x={left} y={top} width={right - left} height={bottom - top} /></clipPath>
      </defs>
      {laid.yTicks.map((tick) => (
        <g key={tick.word}><path class="grid" d={`M${left} ${tick.at}H${right}`} /><text class="tick" x={left - 8} y={tick.at + 4} text-anchor="end">{tick.word}</text></g>
      ))}
      {laid.xTicks.map((tick) => (
        <g key={tick.word}><path class="grid" d={`M${tick.at} ${bottom}v5`} /><text class="tick" x={tick.at} y={bottom + 19} text-anchor="middle">{tick.word}</text></g>
      ))}
      <path class="axis" d={`M${left} ${top}V${bottom}H${right}`} />
      <text class="axisname" x={(left + right) / 2} y={bottom + 38} text-anchor="middle">{withUnit(data.x.name, unitOf(data.x.kind, units))}</text>
      <text class="axisname" x={left - 46} y={top - 10}>{withUnit(data.y.name, unitOf(data.y.kind, units))}</text>
      <g clip-path={`url(#${id}-clip)`}>
        {laid.lines.map((line) => (line.area ? <path key={`${line.name} area`} d={line.area} fill={`url(#${id}-hatch)`} stroke="none" /> : null))}
        {laid.lines.map((line) => (line.points ? null : <path key={line.name} class={`line ${line.role}`} d={line.path} />))}
        {laid.lines.map((line) => line.points && <path key={line.name} class={`line ${line.role}`} d={line.path} />)}
      </g>
      {laid.lines.map((line) => line.points?.map((one, i) => (line.role === 'limit'
        ? <path key={`${line.name} ${i}`} class="point limit" d={`M${one.x - 4.5} ${one.y - 4.5}l9 9m0 -9l-9 9`} />
        : <circle key={`${line.name} ${i}`} class={`point ${line.role}`} cx={one.x} cy={one.y} r={4} />)))}
      {laid.labels.map((label) => <text key={label.name} class={`label ${label.role}`} x={right + 8} y={label.at + 4}>{label.name}</text>)}
      {at === null ? null : <path class="cursor" d={`M${laid.xAt(at)} ${top}V${bottom}`} />}
    </>
  );
}

const withUnit = (name: string, unit: string): string => (unit ? `${name}, ${unit}` : name);

function readOut(data: ChartData, units: Units, at: number): string {
  const value = (one: Series) => (one.at ? null : one.values[at]);
  const parts = data.series.filter((one) => value(one) !== null && value(one) !== undefined).map((one) => `${one.name} ${show(value(one)!, data.y.kind, units)}`);
  return `${data.x.name} ${show(data.x.values[at] ?? 0, data.x.kind, units)}: ${parts.join(', ')}`;
}

function described(data: ChartData, units: Units): string {
  const range = (one: Series) => {
    const values = one.values.filter((v): v is number => v !== null);
    return values.length === 0 ? one.name : `${one.name} ${show(Math.min(...values), data.y.kind, units)} to ${show(Math.max(...values), data.y.kind, units)}`;
  };
  return `${data.title}: ${data.y.name} over ${data.x.name}. ${data.series.map(range).join('; ')}.`;
}

/** A chart as tables: one for the series over the common x, one for each that has its own. */
export function parted(data: ChartData): ChartData[] {
  const own = data.series.filter((one) => one.at);
  const common = { ...data, series: data.series.filter((one) => !one.at) };
  return [common, ...own.map((one) => ({ ...data, title: `${data.title}, ${one.name}`, x: { ...data.x, values: one.at! }, series: [one] }))];
}

function Numbers({ data, units }: { data: ChartData; units: Units }) {
  const cell = (value: number | null | undefined, kind: string) => (value === null || value === undefined ? '' : Number(inUnits(value, kind, units).toPrecision(5)).toString());
  return (
    <Scroll label={`numbers of ${data.title}`} tall>
      <table class="plain numbers">
        <thead><tr><th scope="col">{withUnit(data.x.name, unitOf(data.x.kind, units))}</th>{data.series.map((one) => <th key={one.name} scope="col">{withUnit(one.name, unitOf(data.y.kind, units))}</th>)}</tr></thead>
        <tbody>
          {data.x.values.map((x, i) => (
            <tr key={i}><th scope="row">{cell(x, data.x.kind)}</th>{data.series.map((one) => <td key={one.name}>{cell(one.values[i], data.y.kind)}</td>)}</tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}
