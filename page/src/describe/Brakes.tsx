// The candidates, one at a time: a brake has too many inputs for a row.
import type { Field } from '../schema/fields';
import { table } from '../schema/fields';
import { useStore } from '../store/signal';
import { addRows, copyRow, removeRow, type Row } from '../toml/patch';
import { useApp, useApped } from '../ui/context';
import { Icon } from '../ui/icons';
import { Form } from './Form';
import { Grid } from './Grid';
import { chooseRow, listId, where } from './where';

/** Inputs of a pad known in one way mean nothing for one known in another. */
const ofPad: Record<string, string[]> = {
  sector: ['pad_inner_diameter', 'pad_outer_diameter', 'pad_angle', 'piston_area'],
  round: ['pad_diameter', 'pad_centre_diameter', 'piston_area'],
  'data sheet': ['torque_pressure', 'effective_diameter', 'pad_area'],
};
const always = new Set(['most_brakes', 'cooling_rise', 'usable_pad_depth', 'price', 'pad_price']);

export function Brakes() {
  const app = useApp();
  const brakes = useApped((s) => (Array.isArray(s.file?.brake) ? s.file.brake : [])) as Record<string, unknown>[];
  const at = Math.min(useStore(where, (w) => w.rows[listId(['brake'])] ?? 0), Math.max(0, brakes.length - 1));
  const info = table('brake');
  const brake = brakes[at];
  const pad = String(brake?.['pad'] ?? 'sector');
  const shown = (field: Field) => field.required || always.has(field.key) || (ofPad[pad] ?? []).includes(field.key);
  return (
    <>
      <div class="chips" role="group" aria-label="Brakes">
        {brakes.map((one, i) => (
          <button key={i} type="button" aria-pressed={i === at} onClick={() => chooseRow(['brake'], i)}>{String(one?.['name'] ?? `brake ${i + 1}`)}</button>
        ))}
        <button type="button" class="quiet" onClick={() => app.edit((text) => addRows(addRows(text, ['brake'], [freshBrake(brakes.length)]), ['brake', brakes.length, 'grade'], [freshGrade]))}><Icon name="plus" /> Add a brake</button>
      </div>
      {brake ? (
        <>
          <div class="gridtools">
            <button type="button" class="quiet" onClick={() => app.edit((text) => copyRow(text, ['brake', at], `${String(brake['name'])}, copy`))}><Icon name="copy" /> Copy this brake</button>
            <button type="button" class="quiet" onClick={() => app.edit((text) => removeRow(text, ['brake', at]))}><Icon name="remove" /> Remove it</button>
          </div>
          <Form key={at} info={info} path={['brake', at]} shown={shown} />
          {info.inside.map((inside) => (
            <section key={inside.key} class="nested" aria-label={`${inside.key} of ${String(brake['name'])}`}>
              <h3>{inside.key === 'grade' ? 'Friction grades' : 'Cooling map'}</h3>
              <Grid info={inside} path={['brake', at, inside.key]} />
            </section>
          ))}
        </>
      ) : <p class="empty">No candidate yet. A brake’s numbers come from its maker’s data sheet.</p>}
    </>
  );
}

/** Placeholders from the schema's examples: every one is to be replaced by the data sheet's. */
function freshBrake(count: number): Row {
  const row: Row = { name: `new brake ${count + 1}`, pad: 'sector' };
  const wanted = [...(ofPad['sector'] ?? []), 'cooling_rise'];
  for (const field of table('brake').fields) {
    if (row[field.key] !== undefined || !(field.required || wanted.includes(field.key))) continue;
    row[field.key] = field.kind === 'count' ? Number(field.example) : field.example;
  }
  delete row['cooling_rise']; // belongs to a cooling map, which a new brake does not have
  row['disc_diameter'] = table('brake').fields.find((one) => one.key === 'disc_diameter')?.example ?? '300 mm';
  return row;
}
const freshGrade: Row = { name: 'standard', friction: 0.35, temperature_limit: '250 degC' };
