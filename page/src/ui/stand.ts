// The stand as Run and the drawing take it.
import { useMemo } from 'preact/hooks';
import type { StandView } from '../contract';
import { isCurrent } from '../store/app';
import { useApp, useApped } from './context';

/** The job looked at: the chosen one while it is in the file, else the hardest, else the first. */
export function useJob(): string {
  const job = useApped((s) => s.job);
  const hardest = useApped((s) => s.size?.choice?.envelope?.job ?? '');
  const jobs = useApped((s) => s.check?.check?.jobs as { job: string }[] | undefined);
  const first = useApped((s) => String(s.file?.job?.[0]?.name ?? ''));
  const inFile = useApped((s) => Array.isArray(s.file?.job) && s.file.job.some((one: any) => one?.name === job));
  if (job !== '' && (inFile || !jobs || jobs.some((one) => one.job === job))) return job;
  return hardest || first;
}

export function useStand(): StandView {
  const text = useApped((s) => s.history.now);
  const file = useApped((s) => s.file);
  const check = useApped((s) => s.check);
  const units = useApped((s) => s.units);
  const job = useJob();
  const app = useApp();
  const sheet = useApped((s) => s.sheet);
  const fit = useApped((s) => (isCurrent(s) ? s.size?.choice?.recommended?.fit : undefined));
  const key = JSON.stringify(fit); // of another answer, though the same
  const jobs = useMemo(() => app.jobsTable(), [sheet]);
  return useMemo(() => ({ text, file, check, units, job, jobs, fit }), [text, file, check, units, job, jobs, key]);
}
