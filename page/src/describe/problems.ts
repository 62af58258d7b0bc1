// The core's problems by the field at which they stand.
import { useMemo } from 'preact/hooks';
import { useApped } from '../ui/context';
import { noteText, type Units } from '../units';

export interface Trouble {
  severity: 'error' | 'warning';
  field: string;
  text: string;
  place: string; // in its file: "line 12", "mix.xlsx:B7"; empty where it has none
}

const none: any[] = [];

/** `stand` names the stand file, which need not be named. */
export function troubleOf(problem: any, units: Units, stand = ''): Trouble {
  const accepted = problem.accepted?.text ? ` Accepted: ${noteText(problem.accepted, units)}.` : '';
  const what = noteText(problem.what, units).replace(/\.$/, '');
  return {
    severity: problem.severity,
    field: problem.field,
    text: `${what.charAt(0).toUpperCase()}${what.slice(1)}.${accepted}`,
    place: problem.cell ? `${problem.file}:${problem.cell}` : problem.line > 0 ? `${stand === '' || problem.file === stand ? '' : `${problem.file}, `}line ${problem.line}` : '',
  };
}

/** What an answer says of one field, errors first. */
export function troublesAt(answer: any, field: string, units: Units): Trouble[] {
  const found = ((answer?.problems ?? []) as any[]).filter((one) => one.field === field).map((one) => troubleOf(one, units));
  return [...found.filter((one) => one.severity === 'error'), ...found.filter((one) => one.severity !== 'error')];
}

export function useTroubles(): Trouble[] {
  const problems = useApped((s) => (s.problems?.problems as any[] | undefined) ?? none);
  const units = useApped((s) => s.units);
  const name = useApped((s) => s.name);
  return useMemo(() => problems.map((one) => troubleOf(one, units, name)), [problems, units, name]);
}

export function useTroubleAt(): Map<string, Trouble> {
  const troubles = useTroubles();
  return useMemo(() => {
    const map = new Map<string, Trouble>();
    for (const one of troubles) if (one.field && (!map.has(one.field) || one.severity === 'error')) map.set(one.field, one);
    return map;
  }, [troubles]);
}
