// The drawing is the form: it stays on top, and touching a part of it opens that part's inputs.
import { table, titleOf } from '../schema/fields';
import { useStore } from '../store/signal';
import { useApp, useApped } from '../ui/context';
import { saveDrawing } from '../drawing/save';
import { Elevation } from '../ui/other';
import { useJob, useStand } from '../ui/stand';
import { Brakes } from './Brakes';
import { Form, OptionalForm } from './Form';
import { Grid } from './Grid';
import { JobSheet } from './JobSheet';
import { ProblemList } from './ProblemList';
import { useTroubles } from './problems';
import { TextPane } from './TextPane';
import { Verdict } from './Verdict';
import { listId, sectionOf, sectionOfPart, sections, where, type SectionKey } from './where';
import { pathOf } from './values';

export function Describe() {
  const stand = useStand();
  const section = useStore(where, (w) => w.section);
  const brake = useDrawnBrake(section);
  const open = (part: string) => {
    where.set({ section: sectionOfPart(part) });
    setTimeout(() => document.getElementById('inputs')?.focus());
  };
  return (
    <>
      <div class="describing">
        <div class="drawing">
          <Elevation stand={stand} onPart={open} selected={section} brake={brake} />
          <div class="drawingtools">
            <span class="help">{stand.job ? `Drawn for the job ${stand.job}${brake ? `, with the brake ${brake}` : ''}.` : ''}</span>
            <button type="button" class="quiet" onClick={() => saveDrawing(stand.job)}>Save the drawing as SVG</button>
          </div>
        </div>
        <div class="entering">
          <Verdict />
          <SectionList />
          <div id="inputs" class="inputs" tabIndex={-1} role="region" aria-label={`Inputs: ${sections.find((one) => one.key === section)?.title}`}>
            <SectionOf section={section} />
          </div>
        </div>
        <ProblemList />
      </div>
    </>
  );
}

/** Of several candidates: the one whose inputs are open, else the recommended one. */
function useDrawnBrake(section: SectionKey): string | undefined {
  const chosen = useStore(where, (w) => w.rows[listId(['brake'])] ?? 0);
  const open = useApped((s) => s.file?.brake?.[chosen]?.name as string | undefined);
  const best = useApped((s) => s.size?.choice?.recommended?.fit?.brake as string | undefined);
  const there = useApped((s) => Array.isArray(s.file?.brake) && s.file.brake.some((one: any) => one?.name === best));
  return section === 'brake' || !there ? open : best;
}

function SectionList() {
  const section = useStore(where, (w) => w.section);
  const troubles = useTroubles().filter((one) => one.severity === 'error');
  const count = (key: SectionKey) => troubles.filter((one) => one.field && sectionOf(String(pathOf(one.field)[0])) === key).length;
  return (
    <nav class="sections" aria-label="Parts of the description">
      {sections.map(({ key, title }) => (
        <button key={key} type="button" aria-current={key === section ? 'true' : undefined} onClick={() => where.set({ section: key })}>
          {title}
          {count(key) > 0 ? <span class="count">{count(key)}<span class="unseen"> problems</span></span> : null}
        </button>
      ))}
    </nav>
  );
}

function SectionOf({ section }: { section: SectionKey }) {
  const fault = useApped((s) => s.fault);
  if (section === 'text' || fault) return <TextPane />;
  if (section === 'job') return <Jobs />;
  if (section === 'web') return <WithInside name="web" title="Webs" />;
  if (section === 'roll') return <><h2>Rolls</h2><Grid info={table('roll')} path={['roll']} /></>;
  if (section === 'brake') return <><h2>Brakes</h2><Brakes /></>;
  if (section === 'scenario') return <WithInside name="scenario" title="Scenarios" />;
  if (section === 'path') return <><h2>Web path</h2><Form info={table('path')} path={['path']} /><h3>Idlers</h3><Grid info={table('idler')} path={['idler']} /></>;
  if (section === 'shaft') return <Shaft />;
  if (section === 'control') {
    return <>{(['control', 'load_cell', 'dancer', 'diameter_sensor'] as const).map((one) => <section key={one} aria-label={titleOf(one)}><h2>{headed(titleOf(one))}</h2>{one === 'control' ? <Form info={table(one)} path={[one]} /> : <OptionalForm info={table(one)} />}</section>)}</>;
  }
  if (section === 'limits') return <><h2>Limits</h2><Form info={table('limits')} path={['limits']} /><h2>How sure the inputs are</h2><Form info={table('uncertainty')} path={['uncertainty']} /></>;
  return <><h2>{headed(section)}</h2><p class="help">{table(section).help}.</p><Form info={table(section)} path={[section]} /></>;
}

const headed = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function Jobs() {
  const app = useApp();
  const jobs = useApped((s) => s.file?.job) as any[] | undefined;
  const looked = useJob();
  const choose = (row: number) => {
    const name: unknown = jobs?.[row]?.name;
    if (typeof name === 'string') app.choose(name);
  };
  const at = jobs?.findIndex((one) => one?.name === looked) ?? -1;
  return <><h2>Jobs</h2><Grid chosen={at} info={table('job')} path={['job']} onChoose={choose} /><JobSheet /></>;
}

/** A list whose chosen row has a list of its own. */
function WithInside({ name, title }: { name: 'web' | 'scenario'; title: string }) {
  const info = table(name);
  const at = useStore(where, (w) => w.rows[listId([name])] ?? 0);
  const row = useApped((s) => s.file?.[name]?.[at]);
  return (
    <>
      <h2>{title}</h2>
      <Grid info={info} path={[name]} />
      {row ? info.inside.map((inside) => (
        <section key={inside.key} class="nested" aria-label={`${inside.key} of ${String(row.name)}`}>
          <h3>{inside.key === 'ply' ? 'Plies' : 'Events'} of {String(row.name)}</h3>
          <Grid info={inside} path={[name, at, inside.key]} />
        </section>
      )) : null}
    </>
  );
}

function Shaft() {
  const there = useApped((s) => s.file?.shaft !== undefined);
  return (
    <>
      <h2>Shaft</h2>
      <OptionalForm info={table('shaft')} />
      {there ? <><h3>Sections</h3><Grid info={table('shaft').inside[0]!} path={['shaft', 'section']} /></> : null}
    </>
  );
}
