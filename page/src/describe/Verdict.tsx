// What the file as it is comes to, in one line beside the inputs: it follows every edit.
import { fitWords, limitName } from '../choose/words';
import { isCurrent } from '../store/app';
import { useApp, useApped } from '../ui/context';
import { Margin } from '../ui/parts';
import { useJob } from '../ui/stand';

export function Verdict() {
  const app = useApp();
  const choice = useApped((s) => s.size?.choice);
  const current = useApped(isCurrent);
  const name = useJob();
  const best = choice?.recommended;
  const job = best?.jobs.find((one: any) => one.job === name);
  return (
    <div class={current ? 'standing' : 'standing stale'} role="group" aria-label="What it comes to">
      {!best ? <span class="help">{current ? 'No answer until the problems are mended.' : 'The core is at work on the first answer.'}</span> : (
        <div>
          <p><strong>{fitWords(best.fit)}</strong> covers <data value={best.covered}>{best.covered}</data> of {best.jobs.length}</p>
          {job ? <p>{job.job}: <Margin margin={job.margin} state={job.state} /> {limitName(job.binding)}</p> : null}
        </div>
      )}
      <button type="button" class="quiet" onClick={() => app.show({ area: 'choose' })}>Choose</button>
    </div>
  );
}
