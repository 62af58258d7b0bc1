// What goes on paper: the set-up card of a job for the machine, the summary of a choice for the meeting. One page each.
import { useState } from 'preact/hooks';
import { NoAnswer } from '../choose/NoAnswer';
import { planOf } from '../store/app';
import { useApp, useApped } from '../ui/context';
import { Icon } from '../ui/icons';
import { useJob } from '../ui/stand';
import { SetupCard } from './SetupCard';
import { Summary } from './Summary';

export function Papers() {
  const app = useApp();
  const [paper, setPaper] = useState<'card' | 'summary'>('card');
  const job = useJob();
  const size = useApped((s) => s.size);
  const plan = useApped(planOf);
  const stale = useApped((s) => s.stale);
  if (!size?.choice?.recommended) return <NoAnswer answer={size} what="paper" />;
  const whole = !stale;
  const jobs: string[] = size.choice.recommended.jobs.map((one: any) => one.job);
  const planned = plan?.plan?.jobs?.find((one: any) => one.job === job);
  return (
    <div class="papers">
      <div class="papertools" role="group" aria-label="Paper">
        <div class="switch" role="group" aria-label="Which paper">
          <button type="button" aria-pressed={paper === 'card'} onClick={() => setPaper('card')}>Set-up card</button>
          <button type="button" aria-pressed={paper === 'summary'} onClick={() => setPaper('summary')}>Summary of the choice</button>
        </div>
        {paper === 'card' ? (
          <label class="picker">
            <span>Job </span>
            <select value={job} onChange={(event) => app.choose(event.currentTarget.value)}>{jobs.map((one) => <option key={one}>{one}</option>)}</select>
          </label>
        ) : null}
        <button type="button" class="primary" disabled={!whole} onClick={() => print()}><Icon name="print" /> Print, or save as PDF</button>
      </div>
      {!whole ? <p class="empty" role="status">The core is at work on the paper.</p> : paper === 'summary' ? <Summary choice={size.choice} /> : planned ? <SetupCard plan={plan.plan} job={planned} check={size.choice.recommended.jobs.find((one: any) => one.job === job)} /> : <p class="empty" role="status">The core is at work on the card.</p>}
    </div>
  );
}
