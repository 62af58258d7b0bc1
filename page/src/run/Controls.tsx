/** What a hand does at the stand. Says what is wanted and knows nothing of runs. */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { from_unit, in_unit, readable, show, unit_of, type Units } from '../drawing/quantity';
import type { Inputs } from './loop';
import type { Hand } from './useRun';

export interface ControlsProps {
  units: Units;
  state: any;
  ready: boolean;
  pairs: number;           // fitted
  highest: number;         // [Pa] of the regulator
  topSpeed: number;        // [m/s]
  jobSpeed: number | undefined;
  hand: Hand;              // what it has set
  act: (inputs: Inputs, text: string) => void;
}

const rounded = (si: number, kind: string, units: Units) => Number(in_unit(si, kind, units).toPrecision(3));

function Group({ title, children }: { title: string; children: ComponentChildren }) {
  return <fieldset class="rn-group"><legend>{title}</legend>{children}</fieldset>;
}

/** A number in the reader's unit that is sent when it is meant: on Enter, on leaving, on the button. */
function Amount({ label, kind, units, value, most, disabled, onValue }: {
  label: string; kind: string; units: Units; value: number; most?: number; disabled?: boolean; onValue: (si: number) => void;
}) {
  const [text, setText] = useState<string>();
  const shown = text ?? String(rounded(value, kind, units));
  const send = () => {
    const number = Number(shown);
    setText(undefined);
    if (text === undefined || text.trim() === '' || !Number.isFinite(number)) return;
    onValue(Math.min(most ?? Infinity, Math.max(0, from_unit(number, kind, units))));
  };
  return (
    <label class="rn-amount">
      <span>{label} <small>[{unit_of(kind, units)}]</small></span>
      <input type="number" min={0} step="any" inputMode="decimal" value={shown} disabled={disabled}
        onInput={(event) => setText(event.currentTarget.value)} onBlur={send}
        onKeyDown={(event) => { if (event.key === 'Enter') send(); if (event.key === 'Escape') setText(undefined); }} />
    </label>
  );
}

function Pairs({ p }: { p: ControlsProps }) {
  const { state, pairs, act, ready } = p;
  const now = state?.pairs ?? 0;
  const set = (count: number) => act({ pairs: count }, `${count} of ${pairs} pad pairs engaged`);
  return (
    <Group title="Pad pairs engaged">
      <div class="rn-row rn-pairs">
        <button type="button" aria-label="release a pair" disabled={!ready || now <= 0} onClick={() => set(now - 1)}>−</button>
        <output class="rn-big" aria-label="pairs engaged">{now}<small> of {pairs}</small></output>
        <button type="button" aria-label="engage a pair" disabled={!ready || now >= pairs} onClick={() => set(now + 1)}>+</button>
      </div>
    </Group>
  );
}

function Regulator({ p }: { p: ControlsProps }) {
  const { state, units, highest, act, ready } = p;
  const { byHand, air } = p.hand;
  const slider = useRef<HTMLInputElement>(null);
  const asked = state?.set_pressure ?? 0;
  useEffect(() => {
    // While a hand is on the slider its value is the hand's.
    if (slider.current && document.activeElement !== slider.current) slider.current.value = String(asked);
  }, [asked]);
  const turn = (pressure: number) => act({ pressure }, `regulator to ${show(pressure, 'pressure', units)} by hand`);
  return (
    <Group title="Regulator">
      <input ref={slider} class="rn-slider" type="range" min={0} max={highest} step={highest / 300} disabled={!ready}
        aria-label="regulator pressure by hand" aria-valuetext={show(asked, 'pressure', units)}
        onInput={(event) => turn(Number(event.currentTarget.value))} />
      <div class="rn-row">
        <Amount label="pressure" kind="pressure" units={units} value={asked} most={highest} disabled={!ready} onValue={turn} />
        <button type="button" aria-pressed={!byHand} disabled={!ready} onClick={() => act({ automatic: true }, 'the control has the regulator')}>automatic</button>
        <button type="button" class="rn-switch" aria-pressed={!air} disabled={!ready}
          onClick={() => act({ air: !air }, air ? 'the air fails' : 'the air is back')}>{air ? 'fail the air' : 'air back on'}</button>
      </div>
    </Group>
  );
}

function Line({ p }: { p: ControlsProps }) {
  const { state, units, topSpeed, jobSpeed, act, ready } = p;
  const [within, setWithin] = useState('');
  const off = !ready || p.hand.stopped;  // latched until it is reset
  const to = (speed: number) => {
    const seconds = Number(within);
    const inputs: Inputs = { line_speed: speed };
    if (within.trim() !== '' && Number.isFinite(seconds) && seconds >= 0) inputs['within'] = seconds;
    act(inputs, `line to ${show(speed, 'speed', units)}${inputs['within'] === undefined ? '' : ` in ${readable(seconds)} s`}`);
  };
  return (
    <Group title="Line">
      <div class="rn-row">
        <Amount label="speed" kind="speed" units={units} value={state?.line_speed ?? 0} most={topSpeed} disabled={off} onValue={to} />
        <label class="rn-amount"><span>within <small>[s]</small></span>
          <input type="number" min={0} step="any" placeholder="as the job" value={within} disabled={off} onInput={(event) => setWithin(event.currentTarget.value)} />
        </label>
      </div>
      <div class="rn-row">
        <button type="button" disabled={off || jobSpeed === undefined} onClick={() => to(jobSpeed!)}>ramp to {jobSpeed === undefined ? 'job speed' : show(jobSpeed, 'speed', units)}</button>
        <button type="button" disabled={off} onClick={() => act({ stop: true }, 'normal stop')}>stop</button>
      </div>
    </Group>
  );
}

function Web({ p }: { p: ControlsProps }) {
  const { state, units, act, ready } = p;
  const broken = Boolean(state?.broken);
  return (
    <Group title="Web">
      <div class="rn-row">
        <Amount label="setpoint" kind="force" units={units} value={state?.setpoint ?? 0} disabled={!ready}
          onValue={(setpoint) => { if (setpoint > 0) act({ setpoint }, `setpoint ${show(setpoint, 'force', units)}`); }} />
        <button type="button" disabled={!ready || broken} onClick={() => act({ splice: true }, 'splice: a full roll at line speed')}>splice</button>
        <button type="button" disabled={!ready || broken} onClick={() => act({ break_web: true }, 'the web is cut')}>break web</button>
      </div>
    </Group>
  );
}

export function Controls(p: ControlsProps) {
  return <div class="rn-controls"><Line p={p} /><Pairs p={p} /><Regulator p={p} /><Web p={p} /></div>;
}
