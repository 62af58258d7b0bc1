// A size answer with every fit holds each limit of each job on each fit: megabytes. The matrix needs a line of each.
// What is left out is left out whole; no number is changed.

function slimJob(job: any): any {
  return {
    job: job.job,
    pairs: job.pairs,
    state: job.state,
    binding: job.binding,
    margin: job.margin,
    limits: job.limits.filter((limit: any) => limit.key === job.binding || limit.state === 'fails'),
  };
}

/** While somebody types only one job is looked at in depth: the limits of the others come with the whole choice. */
function slimBrief(choice: any): void {
  const looked = choice.job?.job ?? choice.envelope?.job;
  for (const job of choice.recommended?.jobs ?? []) if (job.job !== looked) job.limits = [];
}

export function slim(answer: any): any {
  if (answer?.choice?.brief) slimBrief(answer.choice);
  for (const fit of answer?.choice?.all ?? []) fit.jobs = fit.jobs.map(slimJob);
  return answer;
}
