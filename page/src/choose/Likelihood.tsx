// How likely the limits hold while the inputs lie anywhere in their bands, and which input drives that.
import { useApped } from '../ui/context';
import { Num, Scroll } from '../ui/parts';
import { inHand } from '../units';
import { limitName } from './words';

export function Likelihood({ likelihood }: { likelihood: any }) {
  const units = useApped((s) => s.units);
  if (!likelihood) return null;
  return (
    <div class="likelihood">
      <h3>How likely it holds</h3>
      <p>
        Every limit holds with a probability of <Num value={likelihood.probability} kind="ratio" units={units} />; the least margin is {inHand(likelihood.middle_margin)} in
        the middle of {likelihood.samples} samples, and 95 % of them keep at least {inHand(likelihood.low_margin)}.
      </p>
      <div class="side">
        {likelihood.limits.length > 0 ? (
          <table class="plain">
            <caption>Limits that do not hold in every sample</caption>
            <thead><tr><th scope="col">limit</th><th scope="col">holds with</th></tr></thead>
            <tbody>{likelihood.limits.map((one: any) => <tr key={one.key}><th scope="row">{limitName(one.key)}</th><td><Num value={one.probability} kind="ratio" units={units} /></td></tr>)}</tbody>
          </table>
        ) : null}
        <Scroll label="what drives the uncertainty">
          <table class="plain">
            <caption>What drives the spread of the least margin</caption>
            <thead><tr><th scope="col">input</th><th scope="col">share by itself</th><th scope="col">gone if it were known</th></tr></thead>
            <tbody>
              {likelihood.drivers.map((one: any) => (
                <tr key={one.input}>
                  <th scope="row">{one.input}</th>
                  <td><Bar share={one.alone} /> <Num value={one.alone} kind="ratio" units={units} /></td>
                  <td><Num value={one.total} kind="ratio" units={units} /></td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      </div>
    </div>
  );
}

const Bar = ({ share }: { share: number }) => (
  <svg class="bar" viewBox="0 0 100 10" width="100" height="10" aria-hidden="true"><rect class="barback" width="100" height="10" /><rect class="barfront" width={Math.max(0, Math.min(1, share)) * 100} height="10" /></svg>
);
