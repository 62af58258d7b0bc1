// Everything that is wrong, all at once; touching one goes to its input.
import { useApped } from '../ui/context';
import { Mark } from '../ui/parts';
import { useTroubles } from './problems';
import { pathOf } from './values';
import { goTo, where } from './where';

const most = 60;

export function ProblemList() {
  const troubles = useTroubles();
  const found = useApped((s) => Number(s.problems?.problems_found ?? 0));
  const known = useApped((s) => s.problems !== null);
  const errors = troubles.filter((one) => one.severity === 'error').length;
  return (
    <aside class="problems" aria-labelledby="problems-title">
      <h2 id="problems-title">Problems</h2>
      <p class="help" role="status">{!known ? 'Looking at the file.' : troubles.length === 0 ? 'None. The file can be computed.' : `${errors} to mend, ${troubles.length - errors} to know.`}</p>
      <ol>
        {troubles.slice(0, most).map((one, i) => (
          <li key={i} class={one.severity}>
            <button type="button" onClick={() => (one.field ? goTo(pathOf(one.field)) : where.set({ section: 'text' }))}>
              <Mark state={one.severity === 'error' ? 'fails' : 'tight'} />
              <span>
                <strong>{one.severity === 'error' ? 'Mend' : 'Know'}{one.field ? `: ${one.field}` : ''}</strong> {one.text}
                {one.place ? <span class="range"> {one.place}</span> : null}
              </span>
            </button>
          </li>
        ))}
      </ol>
      {found > most ? <p class="help">{found - most} more follow.</p> : null}
    </aside>
  );
}
