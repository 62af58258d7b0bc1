// What stands where an answer would: the file's problems, or that the core is at work.
import { useApp, useApped } from '../ui/context';
import { troubleOf } from '../describe/problems';

export function NoAnswer({ answer, what }: { answer: any; what: string }) {
  const app = useApp();
  const units = useApped((s) => s.units);
  if (!answer) return <p class="empty" role="status">The core is at work on the first answer.</p>;
  const errors = answer.problems.filter((one: any) => one.severity === 'error');
  return (
    <section class="empty" aria-label={`No ${what.toLowerCase()} yet`}>
      <p><strong>No answer: the file has to be mended first.</strong></p>
      <ul>{errors.slice(0, 8).map((one: any, i: number) => <li key={i}>{one.field ? `${one.field}: ` : ''}{troubleOf(one, units).text}</li>)}</ul>
      {errors.length > 8 ? <p>{errors.length - 8} more.</p> : null}
      <button type="button" class="primary" onClick={() => app.show({ area: 'describe' })}>To Describe</button>
    </section>
  );
}
