/**
 * The stand in side elevation, true to scale: the drawing that is the form in Describe and that moves in Run. What
 * stands still is rendered when the stand, the size or the selection changes; what moves is set by `mover` on the
 * elements themselves, sixty times a second, without a rendering.
 */
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { ElevationProps } from '../contract';
import './elevation.css';
import { mover, type Elements, type Move } from './mover';
import {
  AirPart, BrakePart, CellPart, DancerPart, Floor, GuardPart, IdlerPart, Missing, NipPart, PathPart, RollPart, SensorPart,
  TitleBlock, WebPart, type Drawing,
} from './parts';
import { show } from './quantity';
import { make_sheet } from './sheet';
import { drawn_stand } from './stand';

/** The markup of a sheet, without state. */
export function SheetDrawing({ d }: { d: Drawing }) {
  const { stand, sheet, id } = d;
  const symbols = ['nip', 'regulator', ...(stand.shaftIsSymbol ? ['shaft'] : []), ...(stand.dancer ? ['dancer roller'] : []), 'frame'];
  const about = `Side elevation to scale: roll ${show(stand.full, 'short_length', d.units)} on core ${show(stand.core, 'short_length', d.units)}, `
    + `${stand.idlers.length} idlers, guard ${stand.guard}. Symbols, not to scale: ${symbols.join(', ')}.`;
  return (
    <svg class="el-sheet" width={sheet.width} height={sheet.height} viewBox={`0 0 ${sheet.width} ${sheet.height}`}
      role="group" aria-label={about}>
      <defs>
        <marker id={`${id}-arrow`} viewBox="0 0 10 8" refX={9} refY={4} markerWidth={10} markerHeight={8} markerUnits="userSpaceOnUse" orient="auto">
          <path class="el-arrow" d="M0 0L10 4L0 8z" />
        </marker>
        <pattern id={`${id}-floor`} width={10} height={10} patternUnits="userSpaceOnUse"><path class="el-hatch" d="M-1 11L11 -1" /></pattern>
        <pattern id={`${id}-heat`} width={6} height={6} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path class="el-heat-line" d="M0 3H6" />
        </pattern>
      </defs>
      <rect class="el-border" x={4} y={4} width={sheet.width - 8} height={sheet.height - 8} />
      <Floor d={d} />
      <RollPart d={d} />
      <GuardPart d={d} />
      <BrakePart d={d} />
      <AirPart d={d} />
      <PathPart d={d} />
      <WebPart d={d} />
      {stand.idlers.map((_, i) => <IdlerPart key={i} d={d} index={i} />)}
      <CellPart d={d} />
      <DancerPart d={d} />
      <SensorPart d={d} />
      <NipPart d={d} />
      <TitleBlock d={d} />
      <Missing d={d} />
    </svg>
  );
}

export interface MovableElevationProps extends ElevationProps {
  /** The brake that is drawn, where the stand has several candidates. */
  brake?: string | undefined;
  /** The control in use, where it is not the file's own. */
  control?: string | undefined;
  /** Takes the function that moves the drawing, for hosts with a frame loop of their own. */
  onMover?: ((move: Move) => void) | undefined;
}

let drawings = 0;

export function Elevation(props: MovableElevationProps) {
  const { stand: view, live, onPart, selected, brake, control, onMover } = props;
  const box = useRef<HTMLDivElement>(null);
  const elements = useRef<Elements>(new Map());
  const [id] = useState(() => `el${++drawings}`);
  const [width, setWidth] = useState(0);

  useLayoutEffect(() => {
    const measure = () => setWidth(Math.round(box.current?.clientWidth || 960));
    measure();
    if (typeof ResizeObserver === 'undefined' || !box.current) return undefined;
    const watch = new ResizeObserver(measure);
    watch.observe(box.current);
    return () => watch.disconnect();
  }, []);

  const stand = useMemo(() => {
    const made = drawn_stand(view.file, view.check, view.job, brake);
    return control ? { ...made, control } : made;
  }, [view.file, view.check, view.job, brake, control]);
  const sheet = useMemo(() => (width > 0 ? make_sheet(stand, width, view.units) : undefined), [stand, width, view.units]);

  const press = useRef(onPart);
  press.current = onPart;
  const touchable = onPart !== undefined;
  const drawing = useMemo(() => {
    if (!sheet) return undefined;
    elements.current = new Map();
    const into = elements.current;
    const d: Drawing = {
      stand, sheet, units: view.units, id, selected,
      press: touchable ? (part) => press.current?.(part) : undefined,
      hold: (key) => (element) => { if (element) into.set(key, element as SVGElement); },
    };
    return { markup: <SheetDrawing d={d} />, move: mover(d, into) };
  }, [stand, sheet, view.units, id, selected, touchable]);

  const move = drawing?.move;
  useLayoutEffect(() => { if (live && move) move(live); }, [live, move]);
  useEffect(() => { if (move && onMover) onMover(move); }, [move, onMover]);

  return <div class="elevation" ref={box}>{drawing?.markup}</div>;
}
