// How each method is done, as a drawing that is not to scale; with what was read where it was.
import type { ComponentChildren } from 'preact';
import { useApped } from '../ui/context';
import { show } from '../units';
import type { Method } from './entered';

const width = 480;
const height = 250;

/** "span 1200 mm" where it was read, "span" where not. */
type Words = (key: string, name?: string) => string;

export function Sketch({ method, measured }: { method: Method; measured: any }) {
  const units = useApped((s) => s.units);
  const words: Words = (key, name = key) => {
    const line = measured?.budget?.find((one: any) => one.key === key);
    return line ? `${name} ${show(line.value.value, line.value.kind, units)}` : name;
  };
  const tension = measured?.tension === undefined ? 'tension' : `tension ${show(measured.tension, 'force', units)}`;
  const Drawn = { push: Push, sag: Sag, pluck: Pluck, pull: Pull, cell: Cell }[method];
  return (
    <figure class="sketch">
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={`How it is done, not to scale: ${captions[method]}.`}>
        <defs><marker id="sk-arrow" viewBox="0 0 10 8" refX={9} refY={4} markerWidth={9} markerHeight={7} markerUnits="userSpaceOnUse" orient="auto-start-reverse"><path class="sk-solid" d="M0 0L10 4L0 8z" /></marker></defs>
        <Drawn words={words} tension={tension} />
      </svg>
      <figcaption class="help">Not to scale.</figcaption>
    </figure>
  );
}

const captions: Record<Method, string> = {
  push: 'a gauge pushes a bar over the whole width aside in the middle of a free span',
  sag: 'a thin line from roller to roller, and the web hanging below it in the middle',
  pluck: 'a free span that is tapped once in its middle, a microphone close to it',
  pull: 'the web is pulled off the roll with a scale, brake on and then released',
  cell: 'a roller on a load cell that the web wraps',
};

interface Drawn { words: Words; tension: string }
const Text = ({ x, y, anchor = 'start', bold, soft, children }: { x: number; y: number; anchor?: 'start' | 'middle' | 'end'; bold?: boolean; soft?: boolean; children: ComponentChildren }) =>
  <text class={`sk-text${bold ? ' is-bold' : ''}${soft ? ' is-soft' : ''}`} x={x} y={y} text-anchor={anchor}>{children}</text>;

/** A dimension with arrows at both ends and its words in the middle. */
function Dimension({ x1, y1, x2, y2, children, side = 0 }: { x1: number; y1: number; x2: number; y2: number; children: ComponentChildren; side?: number }) {
  return (
    <>
      <path class="sk-thin" d={`M${x1} ${y1}L${x2} ${y2}`} marker-start="url(#sk-arrow)" marker-end="url(#sk-arrow)" />
      <Text x={(x1 + x2) / 2 + side} y={(y1 + y2) / 2 + (side === 0 ? -6 : 4)} anchor={side === 0 ? 'middle' : 'start'}>{children}</Text>
    </>
  );
}

const left = 80;
const right = 400;
const top = 100;
const Rollers = () => (
  <>
    {[left, right].map((x) => <g key={x}><circle class="sk-steel" cx={x} cy={top + 18} r={18} /><circle class="sk-solid" cx={x} cy={top + 18} r={2} /></g>)}
    <path class="sk-web" d={`M${left - 18} ${top + 62}V${top + 18}A18 18 0 0 1 ${left} ${top}`} />
    <path class="sk-web" d={`M${right + 18} ${top + 62}V${top + 18}A18 18 0 0 0 ${right} ${top}`} />
  </>
);
const Span = ({ words, y = 206 }: { words: Words; y?: number }) => (
  <>
    <path class="sk-thin" d={`M${left} ${top + 40}V${y + 8}M${right} ${top + 40}V${y + 8}`} />
    <Dimension x1={left} y1={y} x2={right} y2={y}>{words('span')}</Dimension>
  </>
);

function Push({ words, tension }: Drawn) {
  const at = 240;
  return (
    <>
      <Rollers />
      <path class="sk-ghost" d={`M${left} ${top}H${right}`} />
      <path class="sk-web" d={`M${left} ${top}L${at} ${top + 46}L${right} ${top}`} />
      <rect class="sk-bar" x={at - 9} y={top + 34} width={18} height={9} rx={4} />
      <path class="sk-force" d={`M${at} 16V${top + 30}`} marker-end="url(#sk-arrow)" />
      <Text x={at + 10} y={26} bold>{words('force')}</Text>
      <Text x={at + 10} y={44} soft>on a bar over the whole width</Text>
      <path class="sk-thin" d={`M${at + 54} ${top}v46`} marker-start="url(#sk-arrow)" marker-end="url(#sk-arrow)" />
      <Text x={at + 40} y={top + 68}>{words('push')}</Text>
      <path class="sk-ghost" d={`M${at + 10} ${top + 46}H${at + 62}`} />
      <Text x={left + 14} y={top - 10}>{tension}</Text>
      <Span words={words} />
    </>
  );
}

function Sag({ words, tension }: Drawn) {
  return (
    <>
      <Rollers />
      <path class="sk-ghost" d={`M${left} ${top}H${right}`} />
      <path class="sk-web" d={`M${left} ${top}Q240 ${top + 104} ${right} ${top}`} />
      <Dimension x1={240} y1={top} x2={240} y2={top + 52} side={10}>{words('sag')}</Dimension>
      <Text x={240} y={top - 10} anchor="middle" soft>a thin line from roller to roller, level</Text>
      <Text x={left + 20} y={top - 32}>{tension}</Text>
      <Text x={right - 20} y={top - 32} anchor="end">{words('basis_weight', 'basis weight')}</Text>
      <Span words={words} />
    </>
  );
}

function Pluck({ words, tension }: Drawn) {
  return (
    <>
      <Rollers />
      <path class="sk-ghost" d={`M${left} ${top}Q240 ${top + 44} ${right} ${top}`} />
      <path class="sk-web" d={`M${left} ${top}Q240 ${top - 44} ${right} ${top}`} />
      <path class="sk-force" d={`M240 14V${top - 28}`} marker-end="url(#sk-arrow)" />
      <Text x={250} y={28} soft>tap once, flat hand, in the middle</Text>
      <Text x={240} y={top + 4} anchor="middle" bold>{words('frequency')}</Text>
      <circle class="sk-steel" cx={240} cy={top + 46} r={8} />
      <path class="sk-thin" d={`M240 ${top + 54}v22`} />
      <Text x={256} y={top + 52} soft>microphone,</Text>
      <Text x={256} y={top + 70} soft>not touching</Text>
      <Text x={left + 20} y={top - 32}>{tension}</Text>
      <Span words={words} y={212} />
    </>
  );
}

function Pull({ words, tension }: Drawn) {
  const [x, y, r] = [130, 140, 84];
  return (
    <>
      <circle class="sk-roll" cx={x} cy={y} r={r} />
      <circle class="sk-paper" cx={x} cy={y} r={22} />
      <circle class="sk-ghost" cx={x} cy={y} r={52} />
      <rect class="sk-bar" x={x - 11} y={y + 34} width={22} height={20} />
      <path class="sk-web" d={`M${x} ${y - r}H352`} />
      <rect class="sk-steel" x={352} y={y - r - 11} width={60} height={22} rx={3} />
      <Text x={382} y={y - r + 5} anchor="middle">scale</Text>
      <path class="sk-force" d={`M412 ${y - r}H462`} marker-end="url(#sk-arrow)" />
      <Text x={462} y={y - r - 14} anchor="end" bold>{words('pull')}</Text>
      <Text x={240} y={y - r - 14} anchor="middle">{tension}</Text>
      <path class="sk-thin" d={`M${x + 96} ${y - 52}A110 110 0 0 1 ${x + 104} ${y + 40}`} marker-start="url(#sk-arrow)" />
      <Text x={x + 124} y={y - 6}>slowly, through a full turn</Text>
      <Text x={x + 124} y={y + 16} soft>then back, with a strap: {words('back', '')}</Text>
      <Text x={x + 124} y={y + 38} soft>then both ways, brake released</Text>
      <Text x={x} y={y + r + 20} anchor="middle" soft>{words('diameter')}</Text>
      <Text x={x} y={y + 71} anchor="middle" soft>brake</Text>
    </>
  );
}

function Cell({ words, tension }: Drawn) {
  const [x, y, r] = [240, 96, 40];
  return (
    <>
      <path class="sk-web" d={`M40 196L${x - 24} ${y - 32}A${r} ${r} 0 0 1 ${x + 24} ${y - 32}L440 196`} />
      <circle class="sk-steel" cx={x} cy={y} r={r - 2} />
      <circle class="sk-solid" cx={x} cy={y} r={3} />
      <path class="sk-paper" d={`M${x} ${y + r}l-18 26h36z`} />
      <rect class="sk-paper" x={x - 34} y={y + r + 26} width={68} height={24} rx={3} />
      <Text x={x} y={y + r + 43} anchor="middle">cell</Text>
      <path class="sk-force" d={`M${x} ${y}V${y + r + 22}`} marker-end="url(#sk-arrow)" />
      <Text x={x} y={y + r + 72} anchor="middle" bold>{words('reading')}</Text>
      <Text x={x} y={y + r + 92} anchor="middle" soft>{words('tare', 'less the tare')}</Text>
      <path class="sk-thin" d={`M${x - 52} ${y - 30}A60 60 0 0 1 ${x + 52} ${y - 30}`} marker-start="url(#sk-arrow)" marker-end="url(#sk-arrow)" />
      <Text x={x} y={y - 66} anchor="middle">{words('wrap')}</Text>
      <Text x={58} y={132} anchor="start">{tension}</Text>
    </>
  );
}
