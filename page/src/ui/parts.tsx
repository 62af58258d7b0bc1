// Small parts that every area uses.
import type { ComponentChildren } from 'preact';
import { inHand, show, type Units } from '../units';

export type LimitState = 'holds' | 'tight' | 'fails';

/** A number of the core for a reader; its SI value stays readable for scripts and tests. */
export function Num({ value, kind, units }: { value: number; kind: string; units: Units }) {
  return <data class="num" value={String(value)}>{show(value, kind, units)}</data>;
}

/** Ring, triangle, cross: the marks of the core's own figures. */
export function Mark({ state }: { state: LimitState }) {
  const shape = { holds: <circle cx="8" cy="8" r="5" />, tight: <path d="M8 2.5 14 13H2Z" />, fails: <path d="m3 3 10 10M13 3 3 13" /> }[state];
  return (
    <svg class={`mark ${state}`} viewBox="0 0 16 16" width="14" height="14" aria-hidden="true" focusable="false">
      {shape}
    </svg>
  );
}

/** Margin in hand with its mark and its word, so that nothing hangs on colour. */
export function Margin({ margin, state }: { margin: number; state: LimitState }) {
  return (
    <span class={`margin ${state}`}>
      <Mark state={state} />
      <data class="num" value={String(margin)}>{inHand(margin)}</data>
      <span class="unseen"> {state}</span>
    </span>
  );
}

/** What is still being worked out, in the place where it will stand. */
export const Looking = ({ what }: { what: string }) => <span class="looking">{what}…</span>;

export function StateWord({ state }: { state: LimitState }) {
  return (
    <span class={`stateword ${state}`}>
      <Mark state={state} /> {state}
    </span>
  );
}

export function Facts({ rows }: { rows: [string, ComponentChildren][] }) {
  return (
    <dl class="facts">
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

export function Section({ title, id, aside, children }: { title: string; id?: string; aside?: ComponentChildren; children: ComponentChildren }) {
  const name = id ?? title.toLowerCase().replace(/[^a-z]+/g, '-');
  return (
    <section class="block" aria-labelledby={name}>
      <header class="blockhead">
        <h2 id={name}>{title}</h2>
        {aside}
      </header>
      {children}
    </section>
  );
}

/** A table wider than its place scrolls, by keyboard too. */
export function Scroll({ label, children, tall }: { label: string; children: ComponentChildren; tall?: boolean }) {
  return (
    <div class={tall ? 'scroll tall' : 'scroll'} role="region" aria-label={label} tabIndex={0}>
      {children}
    </div>
  );
}

/** Steps through long lists; nothing when one page holds all. */
export function Pages({ page, size, count, go, what }: { page: number; size: number; count: number; go(page: number): void; what: string }) {
  if (count <= size) return null;
  const last = Math.ceil(count / size) - 1;
  return (
    <nav class="pages" aria-label={`pages of ${what}`}>
      <button type="button" disabled={page <= 0} onClick={() => go(page - 1)}>Before</button>
      <span>{what} {page * size + 1} to {Math.min(count, (page + 1) * size)} of {count}</span>
      <button type="button" disabled={page >= last} onClick={() => go(page + 1)}>Next</button>
    </nav>
  );
}
