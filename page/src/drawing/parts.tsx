/** Groups of the drawing, each for one part of the stand. No state: what moves is reached through `hold`. */
import type { ComponentChildren } from 'preact';
import { heat_word, pair_angles, spiral, web_path } from './moving';
import { show, size as size_text, type Units } from './quantity';
import type { Point } from './path';
import { to_sheet, type Dimension, type Label, type Sheet } from './sheet';
import type { DrawnDisc, DrawnStand } from './stand';

export type Hold = (key: string) => (element: Element | null) => void;
export interface Drawing {
  stand: DrawnStand; sheet: Sheet; units: Units; id: string; selected: string | undefined;
  press: ((part: string) => void) | undefined; hold: Hold;
}

const deg = (rad: number) => (rad * 180) / Math.PI;

/** The name that a screen reader gives a part. */
export function part_name(part: string, stand: DrawnStand, units: Units): string {
  const size = (value: number) => size_text(value, units);
  const idler = /^idler:(\d+)$/.exec(part);
  if (idler) {
    const one = stand.idlers[Number(idler[1])]!;
    return `Idler ${one.name}, diameter ${size(one.diameter)}, wrap ${size_text(one.wrap, units, 'angle')}`;
  }
  switch (part) {
    case 'roll': return `Roll, diameter ${size(stand.full)}, core ${size(stand.core)}`;
    case 'web': return `Web ${stand.webName}${stand.tension === undefined ? '' : `, tension ${show(stand.tension, 'force', units)}`}`;
    case 'brake': return stand.disc
      ? `Brake ${stand.disc.name}, disc ${size(stand.disc.diameter)}, ${stand.disc.pairs} pad pairs` : 'Brake, none yet';
    case 'air': return `Air line and regulator${stand.supply === undefined ? '' : `, supply ${show(stand.supply, 'pressure', units)}`}`;
    case 'line': return `Line${stand.speed === undefined ? '' : `, ${show(stand.speed, 'speed', units)}`}, and its nip`;
    case 'path': return `Web path, first span ${show(stand.firstSpan, 'web_length', units)}`;
    case 'load_cell': return stand.cell === undefined && !stand.cellAtNip ? 'Load cell, not fitted' : 'Load cell';
    case 'dancer': return stand.dancer ? `Dancer, travel ${size(stand.dancer.travel)}` : 'Dancer, not fitted';
    case 'guard': return `Guard, ${stand.guard}`;
    case 'limits': return 'Limits, what counts as good enough';
    case 'control': return `Control, by ${stand.control}`;
    case 'diameter_sensor': return stand.sensor ? `Diameter sensor, ${stand.sensor}` : 'Diameter sensor, not fitted';
    default: return part;
  }
}

/** A part that is touched, or reached by keyboard; without anybody to call it is a picture with a name. */
export function Part({ part, d, children, screenOnly }: { part: string; d: Drawing; children?: ComponentChildren; screenOnly?: boolean }) {
  const name = part_name(part, d.stand, d.units);
  if (!d.press) return <g class="el-part" data-part={part}>{children}</g>;
  const press = d.press;
  // Where something is written on the part, a title names it: a label would hide the writing from those who speak it.
  const written = !part.startsWith('idler:') || d.sheet.labels.some((one) => one.part === part);
  return (
    <g class={`el-part el-touch${d.selected === part ? ' is-selected' : ''}`} data-part={part} data-screen-only={screenOnly} role="button" tabindex={0}
      aria-label={written ? undefined : name} aria-pressed={d.selected === undefined ? undefined : d.selected === part}
      onClick={() => press(part)}
      onKeyDown={(event: KeyboardEvent) => {
        if (event.key !== 'Enter' && event.key !== ' ') return;
        event.preventDefault();
        press(part);
      }}>
      {written && <title>{name}</title>}
      {children}
    </g>
  );
}

export function Labels({ d, part }: { d: Drawing; part: string }) {
  return <>{d.sheet.labels.filter((one) => one.part === part).map((one) => <LabelText key={one.key} label={one} hold={d.hold} />)}</>;
}

export const leader = (from: Point, to: Point) => `M${from.x.toFixed(1)} ${from.y.toFixed(1)}L${to.x.toFixed(1)} ${to.y.toFixed(1)}`;

function LabelText({ label, hold }: { label: Label; hold: Hold }) {
  const { box, at, anchor } = label;
  const h = Math.max(box.h, 44), w = Math.max(box.w, 44);
  const right = anchor.x > box.x + box.w, left = anchor.x < box.x;
  const below = label.key === 'disc';
  const x = below ? anchor.x : right ? box.x + box.w - 4 : left ? box.x + 4 : box.x + box.w / 2;
  return (
    <>
      <path class="el-leader" ref={hold(`${label.key}.leader`)} d={leader(at, anchor)} />
      {!below && <circle class="el-dot" ref={hold(`${label.key}.dot`)} cx={anchor.x} cy={anchor.y} r={2} />}
      <rect class="el-hit" data-screen-only x={box.x + (box.w - w) / 2} y={box.y + (box.h - h) / 2} width={w} height={h} rx={3} />
      <text class="el-text" text-anchor={below ? 'middle' : right ? 'end' : left ? 'start' : 'middle'}>
        {label.lines.map((line, i) => (
          <tspan key={i} class={i === 0 ? 'el-number' : 'el-word'} x={x} y={box.y + 16 + 17 * i} ref={hold(`${label.key}.${i}`)}>{line}</tspan>
        ))}
      </text>
    </>
  );
}

/** A dimension line with its arrows; the number lies on it, readable from below or from the right. */
export const dimension_line = (length: number) => `M${-length / 2} 0H${length / 2}M${-length / 2} -5V5M${length / 2} -5V5`;
export const dimension_arrows = (length: number) => `M${-length / 2} 0l8 -2.6v5.2zM${length / 2} 0l-8 -2.6v5.2z`;

export function DimensionLine({ dim, hold }: { dim: Dimension; hold?: Hold }) {
  const { from, to } = dim;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  let turn = deg(Math.atan2(to.y - from.y, to.x - from.x));
  if (turn > 89.9 || turn <= -90.1) turn += turn > 0 ? -180 : 180;
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const inside = length > dim.text.length * 7 + 26;
  return (
    <g class="el-dimension" transform={`translate(${middle.x.toFixed(1)} ${middle.y.toFixed(1)}) rotate(${turn.toFixed(2)})`}>
      <path class="el-thin" ref={hold?.(`${dim.key}.line`)} d={dimension_line(length)} />
      <path class="el-arrow" ref={hold?.(`${dim.key}.arrows`)} d={dimension_arrows(length)} />
      {dim.shortened && <path class="el-break" d={`M${-length / 4 - 6} 8l5 -16m4 16l5 -16`} />}
      {inside && <rect class="el-behind" x={-dim.text.length * 3.6 - 3} y={-7} width={dim.text.length * 7.2 + 6} height={14} />}
      <text class="el-text el-size" text-anchor="middle" y={inside ? 4 : -6} ref={hold?.(`${dim.key}.0`)}>
        {dim.shortened ? `${dim.text}, drawn shorter` : dim.text}
      </text>
    </g>
  );
}

export function Floor({ d }: { d: Drawing }) {
  const { sheet } = d;
  const { origin, floor, scale } = sheet;
  const foot = 0.42 * d.stand.full * scale, head = 0.7 * d.stand.core * scale;
  return (
    <g aria-hidden="true">
      <path class="el-floor" d={`M14 ${floor}H${sheet.width - 14}`} />
      <rect x={14} y={floor} width={sheet.width - 28} height={9} fill={`url(#${d.id}-floor)`} />
      <path class="el-frame" d={`M${origin.x - head / 2} ${origin.y}L${origin.x - foot / 2} ${floor}H${origin.x + foot / 2}L${origin.x + head / 2} ${origin.y}`} />
    </g>
  );
}

export const spiral_turns = (core: number, full: number) => Math.round(Math.min(16, Math.max(2, (full - core) / 7)));

export function RollPart({ d }: { d: Drawing }) {
  const { stand, sheet, hold } = d;
  const { origin, scale } = sheet;
  const full = (stand.full / 2) * scale, core = (stand.core / 2) * scale, shaft = (stand.shaft / 2) * scale;
  const turns = spiral_turns(core, full);
  const arc = full + 12;
  const on = (angle: number) => `${(arc * Math.cos(angle)).toFixed(1)} ${(-arc * Math.sin(angle)).toFixed(1)}`;
  return (
    <Part part="roll" d={d}>
      <g transform={`translate(${origin.x.toFixed(2)} ${origin.y.toFixed(2)})`}>
        <circle class="el-ghost" r={full} />
        <circle class="el-roll" r={full} ref={hold('roll')} />
        <g ref={hold('turning')} class="el-turning">
          <path class="el-spiral" ref={hold('spiral')} d={spiral(core, full, turns)} />
          <path class="el-mark" ref={hold('mark')} d={`M${core + 2} 0H${full}`} />
        </g>
        <circle class="el-core" r={core} />
        <path class="el-centre" d={`M${-full - 18} 0H${full + 18}M0 ${-full - 18}V${full + 18}`} />
        <path class="el-thin" d={`M${on(-0.45)}A${arc} ${arc} 0 0 1 ${on(-1.05)}`} marker-end={`url(#${d.id}-arrow)`} />
        <circle class="el-shaft" r={shaft} />
        <g ref={hold('key')}><rect class="el-key" x={-shaft * 0.18} y={-shaft} width={shaft * 0.36} height={shaft * 0.4} /></g>
      </g>
      <path class="el-thin" ref={hold('extension')} d={extension(sheet, stand.full / 2)} />
      <DimensionLine dim={sheet.full} hold={hold} />
      <Labels d={d} part="roll" />
    </Part>
  );
}

/** Extension lines of the roll's dimension, from its highest and lowest point. */
export function extension(sheet: Sheet, radius: number): string {
  const { origin, scale, full } = sheet;
  const r = radius * scale;
  return `M${(origin.x - 4).toFixed(1)} ${(origin.y - r).toFixed(1)}H${(full.from.x - 6).toFixed(1)}`
    + `M${(origin.x - 4).toFixed(1)} ${(origin.y + r).toFixed(1)}H${(full.from.x - 6).toFixed(1)}`;
}

function pad_outline(disc: DrawnDisc, scale: number): string {
  const { pads } = disc;
  const r = pads.radius * scale, size = pads.size * scale;
  if (pads.shape === 'round') return `M${r - size / 2} 0a${size / 2} ${size / 2} 0 1 0 ${size} 0a${size / 2} ${size / 2} 0 1 0 ${-size} 0z`;
  if (pads.shape === 'square') return `M${r - size / 2} ${-size / 2}h${size}v${size}h${-size}z`;
  const half = Math.min(pads.angle, (2 * Math.PI * 0.9) / Math.max(1, disc.pairs)) / 2;
  const at = (radius: number, angle: number) => `${(radius * Math.cos(angle)).toFixed(1)} ${(radius * Math.sin(angle)).toFixed(1)}`;
  const inner = r - size / 2, outer = r + size / 2;
  return `M${at(inner, -half)}L${at(outer, -half)}A${outer} ${outer} 0 0 1 ${at(outer, half)}L${at(inner, half)}A${inner} ${inner} 0 0 0 ${at(inner, -half)}z`;
}

/** The caliper that straddles the disc's edge, lying along +x. */
function caliper(disc: DrawnDisc, scale: number): { x: number; w: number; h: number } {
  const edge = (disc.diameter / 2) * scale;
  const from = (disc.pads.radius + 0.1 * disc.pads.size) * scale;
  const room = (2 * Math.PI * edge) / disc.pairs - 3;
  return { x: from, w: edge * 1.1 - from, h: Math.max(3, Math.min(disc.pads.size * 1.1 * scale, 0.5 * edge, room)) };
}

/** Disc and pad pairs around the origin, at a scale: once true, once enlarged. */
function DiscView({ d, disc, scale, view }: { d: Drawing; disc: DrawnDisc; scale: number; view: 'true' | 'large' }) {
  const r = (disc.diameter / 2) * scale, bore = (disc.bore / 2) * scale;
  const body = caliper(disc, scale);
  const ring = `M${-r} 0a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0zM${-bore} 0a${bore} ${bore} 0 1 1 ${2 * bore} 0a${bore} ${bore} 0 1 1 ${-2 * bore} 0z`;
  const numbered = view === 'large' && body.h >= 12;
  return (
    <>
      <g ref={d.hold(`${view}:disc`)} class="el-disc">
        <path class="el-disc-face" fill-rule="evenodd" d={ring} />
        <path class="el-disc-heat" fill-rule="evenodd" d={ring} fill={`url(#${d.id}-heat)`} />
      </g>
      <g ref={d.hold(`${view}:marks`)}>
        {[0, 1, 2, 3, 4, 5].map((i) => (
          <path key={i} class="el-slot" transform={`rotate(${60 * i})`} d={`M${bore * 0.7} 0H${bore}`} />
        ))}
      </g>
      {pair_angles(disc.pairs).map((angle, i) => (
        <g key={i} transform={`rotate(${(-deg(angle)).toFixed(2)})`}>
          <g class="el-pair is-engaged" ref={d.hold(`${view}:pair:${i}`)}>
            <path class="el-pad" d={pad_outline(disc, scale)} />
            <rect class="el-caliper" x={body.x} y={-body.h / 2} width={body.w} height={body.h} rx={3} />
            {numbered && <text class="el-pair-number" text-anchor="middle"
              transform={`translate(${body.x + body.w / 2} 0) rotate(${deg(angle).toFixed(2)})`} y={4}>{i + 1}</text>}
          </g>
        </g>
      ))}
    </>
  );
}

export function BrakePart({ d }: { d: Drawing }) {
  const { stand, sheet } = d;
  const { disc } = stand;
  const { origin, scale, detail } = sheet;
  if (!disc) return <Part part="brake" d={d}><Labels d={d} part="brake" /></Part>;
  const r = (disc.diameter / 2) * scale;
  return (
    <Part part="brake" d={d}>
      <g transform={`translate(${origin.x.toFixed(2)} ${origin.y.toFixed(2)})`}>
        <circle class="el-hit" data-screen-only r={Math.max(r, 22)} />
        <DiscView d={d} disc={disc} scale={scale} view="true" />
      </g>
      <circle class="el-ghost" cx={origin.x} cy={origin.y} r={1.12 * r} />
      <g transform={`translate(${detail.at.x} ${detail.at.y})`}>
        <circle class="el-lens" r={detail.r} />
        <circle class="el-hit" data-screen-only r={detail.r} />
        <circle class="el-shaft" r={Math.min((stand.shaft / 2) * detail.scale, 0.8 * (disc.bore / 2) * detail.scale)} />
        <DiscView d={d} disc={disc} scale={detail.scale} view="large" />
      </g>
      <text class="el-text">
        <tspan class="el-number" x={origin.x + 0.86 * r} y={origin.y - 0.86 * r - 2}>A</tspan>
        <tspan class="el-number" x={14} y={detail.at.y + detail.r + 2}>A</tspan>
        <tspan class="el-word" dx={5}>{`${(detail.scale / scale).toFixed(1)} ×`}</tspan>
      </text>
      <Labels d={d} part="brake" />
    </Part>
  );
}

export function GuardPart({ d }: { d: Drawing }) {
  const box = d.sheet.guard;
  return (
    <Part part="guard" d={d}>
      {box && <rect class={`el-guard el-guard-${d.stand.guard.replace(' ', '-')}`} x={box.x} y={box.y} width={box.w} height={box.h} rx={8} />}
      <Labels d={d} part="guard" />
    </Part>
  );
}

export function AirPart({ d }: { d: Drawing }) {
  const { stand, sheet, hold } = d;
  const { x, y, w, h } = sheet.air;
  const disc = ((stand.disc?.diameter ?? stand.core) / 2) * sheet.scale;
  const end = { x: sheet.origin.x - disc * 0.78, y: sheet.origin.y + disc * 0.78 };
  const pipe = `M${x + w} ${y + 46}H${Math.max(x + w + 10, end.x - 14).toFixed(1)}L${end.x.toFixed(1)} ${end.y.toFixed(1)}`;
  return (
    <Part part="air" d={d}>
      <path class="el-halo" d={pipe} />
      <path class="el-pipe" d={pipe} />
      <path class="el-pipe" d={`M14 ${y + 46}H${x}`} />
      <rect class="el-hit" data-screen-only x={x - 16} y={y - 44} width={w + 40} height={h + 50} />
      <rect class="el-box" x={x} y={y + 34} width={w} height={h - 34} rx={3} />
      <path class="el-thin" d={`M${x + 8} ${y + 56}l${w - 16} -14m-6 -2l6 2l-3 6`} />
      <path class="el-thin" d={`M${x + w / 2} ${y + 34}v-6`} />
      <circle class="el-gauge" cx={x + w / 2} cy={y + 12} r={17} />
      {[-135, -90, -45, 0, 45, 90, 135].map((a) => (
        <path key={a} class="el-thin" d="M0 -17v4" transform={`translate(${x + w / 2} ${y + 12}) rotate(${a})`} />
      ))}
      <g transform={`translate(${x + w / 2} ${y + 12})`}><path class="el-needle" d="M0 4V-12" ref={hold('needle')} transform="rotate(-135)" /></g>
      <text class="el-text" text-anchor="middle">
        <tspan class="el-number" x={x + w / 2} y={y - 26} ref={hold('air.0')}>{stand.supply === undefined ? '—' : show(stand.supply, 'pressure', d.units)}</tspan>
        <tspan class="el-word" x={x + w / 2} y={y - 11} ref={hold('air.1')}>air supply</tspan>
      </text>
    </Part>
  );
}

export function WebPart({ d }: { d: Drawing }) {
  const { sheet, stand, hold } = d;
  const path = web_path(sheet, { radius: stand.full / 2, slack: 0, broken: false, dancer: 0 });
  return (
    <Part part="web" d={d}>
      <path class="el-web-hit" data-screen-only d={path} />
      <path class="el-web" d={path} ref={hold('web')} />
      <Labels d={d} part="web" />
    </Part>
  );
}

export function PathPart({ d }: { d: Drawing }) {
  return (
    <Part part="path" d={d}>
      {d.sheet.spans.map((one) => <g key={one.key}>
        <path class="el-web-hit" data-screen-only d={`M${one.from.x} ${one.from.y}L${one.to.x} ${one.to.y}`} />
        <DimensionLine dim={one} />
      </g>)}
    </Part>
  );
}

export function IdlerPart({ d, index }: { d: Drawing; index: number }) {
  const part = `idler:${index}`;
  const bend = d.sheet.path.bends.find((one) => one.part === part)!;
  const at = to_sheet(d.sheet, bend.centre);
  const r = bend.radius * d.sheet.scale;
  return (
    <Part part={part} d={d}>
      <circle class="el-hit" data-screen-only cx={at.x} cy={at.y} r={Math.max(22, r + 4)} />
      <circle class="el-idler" cx={at.x} cy={at.y} r={r} />
      <g transform={`translate(${at.x.toFixed(2)} ${at.y.toFixed(2)})`}>
        <path class="el-idler-mark" ref={d.hold(`spin:${index}`)} d={`M0 0H${r.toFixed(1)}`} />
        <path class="el-centre" d={`M${-r - 6} 0H${r + 6}M0 ${-r - 6}V${r + 6}`} />
      </g>
      <Labels d={d} part={part} />
    </Part>
  );
}

export function DancerPart({ d }: { d: Drawing }) {
  const bend = d.sheet.path.bends.find((one) => one.part === 'dancer');
  if (!bend || !d.stand.dancer) return null;
  const at = to_sheet(d.sheet, bend.centre);
  const r = bend.radius * d.sheet.scale, half = (d.stand.dancer.travel / 2) * d.sheet.scale;
  return (
    <Part part="dancer" d={d}>
      <g transform={`translate(${at.x.toFixed(2)} ${at.y.toFixed(2)}) rotate(${(-deg(bend.heading)).toFixed(2)})`}>
        <path class="el-travel" d={`M${-half} ${-r - 6}V${r + 6}M${half} ${-r - 6}V${r + 6}M${-half} 0H${half}`} />
        <g ref={d.hold('dancer')}>
          <circle class="el-hit" data-screen-only r={Math.max(22, r + 4)} />
          <circle class="el-idler el-dancer" r={r} />
          <path class="el-thin" d={`M${-r * 0.6} 0H${r * 0.6}M0 ${-r * 0.6}V${r * 0.6}`} />
        </g>
      </g>
      <Labels d={d} part="dancer" />
    </Part>
  );
}

export function CellPart({ d }: { d: Drawing }) {
  const { stand, sheet } = d;
  if (stand.cell === undefined) return null;
  const bend = sheet.path.bends.find((one) => one.part === `idler:${stand.cell}`)!;
  const at = to_sheet(sheet, bend.centre);
  const r = bend.radius * sheet.scale;
  return (
    <Part part="load_cell" d={d}>
      <rect class="el-hit" data-screen-only x={at.x - 22} y={at.y + r} width={44} height={36} />
      <path class="el-box" d={`M${at.x} ${at.y + r + 2}l-9 13h18z`} />
      <rect class="el-box" x={at.x - 14} y={at.y + r + 15} width={28} height={11} />
      <path class="el-thin" d={`M${at.x - 9} ${at.y + r + 23}l6 -5l6 5l6 -5`} />
      <Labels d={d} part="load_cell" />
    </Part>
  );
}

export function SensorPart({ d }: { d: Drawing }) {
  const { stand, sheet, hold } = d;
  if (!stand.sensor) return null;
  const r = (stand.full / 2) * sheet.scale;
  if (stand.sensor === 'turns') return (
    <Part part="diameter_sensor" d={d}>
      <circle class="el-ghost" cx={sheet.origin.x} cy={sheet.origin.y} r={(stand.shaft / 2) * sheet.scale + 4} />
      <Labels d={d} part="diameter_sensor" />
    </Part>
  );
  return (
    <Part part="diameter_sensor" d={d}>
      <g transform={`translate(${sheet.origin.x.toFixed(2)} ${sheet.origin.y.toFixed(2)}) rotate(${(-deg(sheet.sensor.angle)).toFixed(2)})`}>
        <circle class="el-hit" data-screen-only cx={sheet.sensor.reach} r={22} />
        <path class="el-beam" ref={hold('beam')} d={beam(sheet, r)} />
        <rect class="el-box" x={sheet.sensor.reach} y={-9} width={14} height={18} rx={2} />
      </g>
      <Labels d={d} part="diameter_sensor" />
    </Part>
  );
}

/** From the sensor to the surface of the roll [px], lying along +x. */
export const beam = (sheet: Sheet, r: number) =>
  `M${sheet.sensor.reach.toFixed(1)} -5L${r.toFixed(1)} 0L${sheet.sensor.reach.toFixed(1)} 5`;

export function NipPart({ d }: { d: Drawing }) {
  const { at, heading, radius } = d.sheet.nip;
  return (
    <Part part="line" d={d}>
      <g transform={`translate(${at.x.toFixed(2)} ${at.y.toFixed(2)}) rotate(${(-deg(heading)).toFixed(2)})`}>
        <circle class="el-hit" data-screen-only r={24} />
        <circle class="el-nip" cy={-radius} r={radius} />
        <circle class="el-nip" cy={radius} r={radius} />
        <path class="el-web" d="M0 0H16" />
        <path class="el-thin" d={`M${radius * 0.4 + 10} 0H${radius + 30}`} marker-end={`url(#${d.id}-arrow)`} />
      </g>
      <Labels d={d} part="line" />
    </Part>
  );
}

/** Along the foot: the scale, what is drawn, how it is controlled, what counts as good enough. */
export function TitleBlock({ d }: { d: Drawing }) {
  const { sheet, stand } = d;
  const top = sheet.height - 50, right = sheet.width - 14;
  const control = 150, limits = 196, bar = 190;
  const xs = { limits: right - limits, control: right - limits - control };
  const cell = (x: number, w: number, word: string, number: string, key: string) => (
    <>
      <rect class="el-cell" x={x} y={top} width={w} height={46} />
      <text class="el-text">
        <tspan class="el-word" x={x + 10} y={top + 18}>{word}</tspan>
        <tspan class="el-number" x={x + 10} y={top + 36} ref={d.hold(key)}>{number}</tspan>
      </text>
    </>
  );
  const room = Math.max(8, Math.floor((xs.control - 14 - bar) / 7.4));
  const cut = (text: string) => (text.length > room ? `${text.slice(0, room - 1)}…` : text);
  const span = stand.low === undefined || stand.high === undefined ? 'tolerance, reserve'
    : `${show(stand.low, 'force', d.units)} to ${show(stand.high, 'force', d.units)}`;
  return (
    <>
      <g class="el-scale">
        <rect class="el-cell" x={14} y={top} width={bar} height={46} />
        <path class="el-thin" d={`M26 ${top + 30}h${sheet.bar.length}m0 -5v10m${-sheet.bar.length} 0v-10`} />
        <path class="el-bar" d={`M26 ${top + 28}h${sheet.bar.length / 2}v4h${-sheet.bar.length / 2}z`} />
        <text class="el-text"><tspan class="el-word" x={26} y={top + 18}>{`scale, ${sheet.bar.text}`}</tspan></text>
      </g>
      <rect class="el-cell" x={14 + bar} y={top} width={Math.max(0, xs.control - 14 - bar)} height={46} />
      <text class="el-text">
        <tspan class="el-number" x={24 + bar} y={top + 18}>{cut(stand.job || stand.title)}</tspan>
        <tspan class="el-word" x={24 + bar} y={top + 36}>{cut(stand.title)}</tspan>
      </text>
      <Part part="control" d={d}>{cell(xs.control, control, 'control by', stand.control, 'control.1')}</Part>
      <Part part="limits" d={d}>{cell(xs.limits, limits, 'window', span, 'limits.1')}</Part>
    </>
  );
}

/** Parts that the stand has not, as places to add them. */
export function Missing({ d }: { d: Drawing }) {
  const { stand, sheet } = d;
  const missing = [
    { part: 'load_cell', word: 'load cell', there: stand.cell !== undefined },
    { part: 'dancer', word: 'dancer', there: stand.dancer !== undefined },
    { part: 'diameter_sensor', word: 'diameter sensor', there: stand.sensor !== undefined },
  ].filter((one) => !one.there);
  if (!d.press || missing.length === 0) return null;
  let x = sheet.width - 10;
  return <>{missing.reverse().map(({ part, word }) => {
    const w = word.length * 7.2 + 38;
    x -= w + 6;
    const cellHere = part === 'load_cell' && stand.cellAtNip;
    return (
      <Part key={part} part={part} d={d} screenOnly>
        <rect class="el-hit" x={x} y={2} width={w} height={44} />
        <rect class="el-chip" x={x} y={9} width={w} height={30} rx={15} />
        <text class="el-text"><tspan class="el-word" x={x + 13} y={28}>{cellHere ? `● ${word}` : `+ ${word}`}</tspan></text>
      </Part>
    );
  })}</>;
}

export const disc_words = (temperature: number, share: number, units: Units) => `${show(temperature, 'temperature', units)}, ${heat_word(share)}`;
