// The jobs that fall out, and the least changes that would bring each in.
import { useApped } from '../ui/context';
import { Looking, Margin, Scroll, Section } from '../ui/parts';
import { noteText } from '../units';
import { limitName } from './words';

export function Uncovered({ choice }: { choice: any }) {
  const units = useApped((s) => s.units);
  if (choice.uncovered.length === 0) return <p class="allin">Every job of the mix is covered by the recommended fit.</p>;
  return (
    <Section title="What falls out, and what would bring it in" id="uncovered">
      {choice.uncovered.slice(0, 20).map((one: any) => (
        <article key={one.job} class="uncovered">
          <h3>{one.job}</h3>
          <p>{noteText(one.why, units)}.</p>
          {choice.brief ? <p><Looking what="looking for changes that would bring it in" /></p> : one.remedies.length === 0 ? <p class="help">None of the changes that were tried is enough.</p> : (
            <Scroll label={`remedies for ${one.job}`}>
              <table class="plain">
                <thead><tr><th scope="col">change</th><th scope="col">then in hand</th><th scope="col">limit that binds then</th><th scope="col">the rest of the mix</th></tr></thead>
                <tbody>
                  {one.remedies.map((remedy: any, i: number) => (
                    <tr key={i}>
                      <td>{noteText(remedy.what, units)}</td>
                      <td><Margin margin={remedy.margin} state={remedy.state} /></td>
                      <td>{limitName(remedy.binding)}</td>
                      <td>{mixWords(remedy)}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </Scroll>
          )}
        </article>
      ))}
      {choice.uncovered.length > 20 ? <p class="help">{choice.uncovered.length - 20} more jobs fall out.</p> : null}
    </Section>
  );
}

function mixWords(remedy: any): string {
  const parts: string[] = [];
  if (remedy.jobs_lost.length > 0) parts.push(`loses ${remedy.jobs_lost.join(', ')}`);
  if (remedy.jobs_won.length > 0) parts.push(`also wins ${remedy.jobs_won.join(', ')}`);
  return parts.length > 0 ? parts.join('; ') : 'unchanged';
}
