// The core's problems by the field at which they stand.
import { useMemo } from 'preact/hooks';
import { useApped } from '../ui/context';
import { noteText, type Units } from '../units';

export interface Trouble {
  severity: 'error' | 'warning';
  field: string;
  text: string;
  line: number;
  file: string;
}

const none: any[] = [];

export function troubleOf(problem: any, units: Units): Trouble {
  const accepted = problem.accepted?.text ? ` Accepted: ${noteText(problem.accepted, units)}.` : '';
  const what = noteText(problem.what, units).replace(/\.$/, '');
  return {
    severity: problem.severity,
    field: problem.field,
    text: `${what.charAt(0).toUpperCase()}${what.slice(1)}.${accepted}`,
    line: problem.line,
    file: problem.file,
  };
}

export function useTroubles(): Trouble[] {
  const problems = useApped((s) => (s.problems?.problems as any[] | undefined) ?? none);
  const units = useApped((s) => s.units);
  return useMemo(() => problems.map((one) => troubleOf(one, units)), [problems, units]);
}

export function useTroubleAt(): Map<string, Trouble> {
  const troubles = useTroubles();
  return useMemo(() => {
    const map = new Map<string, Trouble>();
    for (const one of troubles) if (one.field && (!map.has(one.field) || one.severity === 'error')) map.set(one.field, one);
    return map;
  }, [troubles]);
}
