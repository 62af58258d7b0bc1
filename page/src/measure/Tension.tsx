// The tension from readings: which method, how it is done, what was read, what that says.
import { useMemo } from 'preact/hooks';
import { sentence } from '../choose/words';
import { titleOf } from '../schema/fields';
import { troublesAt } from '../describe/problems';
import { useStore } from '../store/signal';
import { useApped } from '../ui/context';
import { Icon } from '../ui/icons';
import { useJob } from '../ui/stand';
import { noteText, show } from '../units';
import { inOtherUnits } from '../unitText';
import { base64Of, entered, methods, parted, readingsOf, type Method } from './entered';
import { Measured } from './Measured';
import { exampleOf, FileDrop, JobPicker, Mind, Problems, TypedInput } from './parts';
import { Sketch } from './Sketch';
import { useAnswer } from './useAnswer';

const methodWords: Record<Method, string> = { push: 'Push', sag: 'Sag', pluck: 'Pluck', pull: 'Pull', cell: 'Load cell' };
export const mostRecording = 20_000_000; // bytes

export function Tension() {
  const method = useStore(entered, (s) => s.method);
  const typed = useStore(entered, (s) => s.readings[s.method]);
  const recording = useStore(entered, (s) => s.recording);
  const job = useJob();
  const how = useAnswer('measure-how', useMemo(() => ({ command: 'measure', method, instruction: true, ...(job ? { job } : {}) }), [method, job]));
  const request = useMemo(() => {
    const readings = readingsOf(typed);
    const sound = method === 'pluck' && recording ? { recording } : {};
    if (Object.keys(readings).length === 0 && !('recording' in sound)) return null;
    return { command: 'measure', method, readings, ...sound, ...(job ? { job } : {}) };
  }, [method, typed, recording, job]);
  const got = useAnswer('measure', request);
  const instruction = how.answer?.measurement?.method === method ? how.answer.measurement.instruction : null;
  const fields: any[] = instruction?.fields ?? [];
  const measured = got.answer?.measurement?.method === method ? got.answer.measurement : null;
  const keys = fields.map((one) => String(one.key));
  return (
    <>
      <div class="measurehead">
        <div class="switch" role="group" aria-label="Method">
          {methods.map((one) => <button key={one} type="button" aria-pressed={one === method} onClick={() => entered.set({ method: one })}>{methodWords[one]}</button>)}
        </div>
        <JobPicker />
        <button type="button" class="quiet" onClick={() => print()}><Icon name="print" /> Print the instruction</button>
      </div>
      <Problems answer={how.answer?.measurement ? null : how.answer} />
      {instruction ? <HowTo instruction={instruction} method={method} measured={measured} /> : <p class="empty" role="status">{how.fault || (how.answer ? 'The stand file has to be mended first.' : 'The core is at work on the instruction.')}</p>}
      <Mind label="Mind while measuring" notes={instruction?.cautions} />
      <section class="block" aria-labelledby="readings">
        <header class="blockhead"><h2 id="readings">Readings</h2><span class="help">As the instrument shows them, with the unit; readings of one thing parted by semicolons: “11.9 N; 12.1 N”.</span></header>
        <div class="fields">
          {fields.map((field) => <ReadingInput key={field.key} field={field} method={method} answer={got.answer} />)}
        </div>
        {method === 'pluck' ? <SoundFile /> : null}
        <div class="gridtools"><button type="button" class="quiet" disabled={!request} onClick={() => entered.set({ readings: { ...entered.get().readings, [method]: {} }, ...(method === 'pluck' ? { recording: null } : {}) })}>Clear these readings</button></div>
        <Problems answer={got.answer} except={keys} />
        {got.fault ? <p class="trouble error" role="alert">No answer: {got.fault}.</p> : null}
      </section>
      {!request ? <Outlook methods={how.answer?.measurement?.methods} /> : null}
      {measured ? <div class={got.behind ? 'stale' : ''} aria-busy={got.behind} id="measured"><Measured measured={measured} /></div> : null}
      {measured?.methods ? <Outlook methods={measured.methods} /> : null}
    </>
  );
}

function HowTo({ instruction, method, measured }: { instruction: any; method: Method; measured: any }) {
  const units = useApped((s) => s.units);
  const text = (note: any) => sentence(noteText(note, units));
  return (
    <section class="block howto" aria-labelledby="howto">
      <header class="blockhead"><h2 id="howto">{instruction.title}</h2></header>
      <div class="howtoparts">
        <div>
          <p>{sentence(instruction.idea)}</p>
          <ol>{instruction.steps.map((one: any, i: number) => <li key={i}>{text(one)}</li>)}</ol>
          {instruction.expected.map((one: any, i: number) => <p key={i} class="help">To expect: {text(one)}</p>)}
        </div>
        <Sketch method={method} measured={measured} />
      </div>
    </section>
  );
}

function ReadingInput({ field, method, answer }: { field: any; method: Method; answer: any }) {
  const units = useApped((s) => s.units);
  const value = useStore(entered, (s) => s.readings[method]?.[field.key] ?? '');
  const other = parted(value).map((one) => inOtherUnits(one, field.kind, units)).filter((one) => one !== '').join('; ');
  const taken = field.otherwise ? `taken: ${show(field.otherwise.value, field.kind, units)}` : field.from_web ? 'from the job' : '';
  const write = (text: string) => {
    const { readings } = entered.get();
    entered.set({ readings: { ...readings, [method]: { ...readings[method], [field.key]: text } } });
  };
  return (
    <TypedInput
      id={`reading-${field.key}`} label={titleOf(field.key)} needed={field.needed} value={value} other={other} placeholder={taken || exampleOf(field.kind, units)}
      help={<>{sentence(field.help)}{field.step ? <span class="range"> read to {show(field.step.value, field.kind, units)} as a rule</span> : null}</>}
      troubles={troublesAt(answer, field.key, units)} onType={write}
    />
  );
}

function SoundFile() {
  const recording = useStore(entered, (s) => s.recording);
  return (
    <FileDrop label="Open a recording (.wav)" accept=".wav,audio/wav" most={mostRecording} onFile={(name, bytes) => entered.set({ recording: { name, base64: base64Of(bytes) } })}>
      {recording ? <span><strong>{recording.name}</strong> <button type="button" class="quiet" onClick={() => entered.set({ recording: null })}>Take it away</button></span> : <span class="help">It gives the frequency itself; at most {mostRecording / 1e6} MB.</span>}
    </FileDrop>
  );
}

function Outlook({ methods: list }: { methods: any[] | undefined }) {
  const units = useApped((s) => s.units);
  if (!list?.length) return null;
  return (
    <section class="block" aria-labelledby="outlook">
      <header class="blockhead"><h2 id="outlook">What each method is worth here</h2><span class="help">On this web and span, with usual instruments; the surest first.</span></header>
      <ol class="outlook">
        {list.map((one) => (
          <li key={one.method}>
            <button type="button" onClick={() => entered.set({ method: one.method })}>{methodWords[one.method as Method] ?? one.method}</button>
            <span><strong>{one.possible ? `± ${show(one.uncertainty, 'force', units)} (${show(one.share, 'ratio', units)})` : 'not to be told'}</strong>{one.why?.text ? ` ${sentence(noteText(one.why, units))}` : ''}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}
