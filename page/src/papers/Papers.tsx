// What goes on paper: the core's own papers, as the command line sets them, and the summary of a choice for the meeting.
import { useMemo, useState } from 'preact/hooks';
import { NoAnswer } from '../choose/NoAnswer';
import { useAnswer } from '../measure/useAnswer';
import { bytesOf, save, textOf } from '../store/files';
import { useApp, useApped } from '../ui/context';
import { Icon } from '../ui/icons';
import { useJob } from '../ui/stand';
import { noteText, type Units } from '../units';
import { Paper, type PaperText } from './Paper';
import { Summary } from './Summary';

const choices = [
  ['cards', 'Set-up card'], ['summary', 'Summary of the choice'], ['report', 'Selection report'], ['maintenance', 'Maintenance card'],
  ['commissioning', 'Commissioning sheet'], ['changes', 'Changes'], ['comparison', 'Comparison'],
] as const;
type Choice = (typeof choices)[number][0];
interface Other { name: string; text: string }

const today = () => new Date().toISOString().slice(0, 10);

export function Papers() {
  const app = useApp();
  const [choice, setChoice] = useState<Choice>('cards');
  const [other, setOther] = useState<Other | null>(null);
  const job = useJob();
  const size = useApped((s) => s.size);
  const units = useApped((s) => s.units);
  const stale = useApped((s) => s.stale);
  const saved = useApped((s) => s.saved);
  const name = useApped((s) => s.name);
  const now = useApped((s) => s.history.now);
  const request = useMemo(() => requestOf(choice, job, units, other ?? (saved === now ? null : { name, text: saved }), other), [choice, job, units, saved, now, name, other]);
  const got = useAnswer('papers', stale ? null : request, true);
  if (!size?.choice?.recommended) return <NoAnswer answer={size} what="paper" />;
  const jobs: string[] = size.choice.recommended.jobs.map((one: any) => one.job);
  const papers: PaperText[] = got.behind ? [] : got.answer?.papers ?? [];
  const ready = !stale && (choice === 'summary' || papers.length > 0);
  const take = async (files: FileList | null) => {
    const file = files?.[0];
    if (!file) return;
    try {
      setOther({ name: file.name, text: textOf(file.name, await bytesOf(file)) });
    } catch (error) {
      app.tell((error as Error).message, 'warning');
    }
  };
  return (
    <div class="papers">
      <div class="papertools" role="group" aria-label="Paper">
        <div class="switch" role="group" aria-label="Which paper">
          {choices.map(([key, word]) => <button key={key} type="button" aria-pressed={choice === key} onClick={() => setChoice(key)}>{word}</button>)}
        </div>
        {choice === 'cards' || choice === 'report' ? (
          <label class="picker">
            <span>Job </span>
            <select value={job} onChange={(event) => app.choose(event.currentTarget.value)}>{jobs.map((one) => <option key={one}>{one}</option>)}</select>
          </label>
        ) : null}
        {choice === 'comparison' || choice === 'changes' ? (
          <label class="picker filepicker">
            <span>{choice === 'changes' ? 'Since another file ' : 'With the stand file '}</span>
            <input type="file" accept=".toml,text/plain" onChange={(event) => void take(event.currentTarget.files)} />
          </label>
        ) : null}
        {choice === 'commissioning' && ready ? (
          <button type="button" onClick={() => got.answer.attachments.forEach((one: any) => save(one.file, one.text, 'text/csv'))}>Save its table as CSV</button>
        ) : null}
        <button type="button" class="primary" disabled={!ready} onClick={() => print()}><Icon name="print" /> Print, or save as PDF</button>
      </div>
      <Shown choice={choice} size={size} units={units} papers={papers} waiting={stale || got.behind || !got.answer} needsFile={request === null && choice !== 'summary'} fault={got.fault} problems={got.behind ? [] : got.answer?.problems ?? []} />
    </div>
  );
}

function Shown({ choice, size, papers, waiting, needsFile, fault, problems, units }: { choice: Choice; size: any; units: Units; papers: PaperText[]; waiting: boolean; needsFile: boolean; fault: string; problems: any[] }) {
  if (choice === 'summary') return <Summary choice={size.choice} />;
  if (needsFile) return <p class="empty">{choice === 'changes' ? 'Nothing has been changed since this file was opened. Choose an earlier revision of it above.' : 'Choose the stand file to compare with above.'}</p>;
  if (fault) return <p class="empty" role="alert">No paper: {fault}.</p>;
  if (waiting) return <p class="empty" role="status">The core is at work on the paper.</p>;
  if (papers.length === 0) return <ul class="empty" role="alert">{problems.map((one, i) => <li key={i}>{[one.file, noteText(one.what, units)].filter(Boolean).join(': ')}</li>)}</ul>;
  return <>{papers.map((paper) => <Paper key={paper.file} paper={paper} />)}</>;
}

/** What is asked of the core; null while something to compare with is missing. */
export function requestOf(choice: Choice, job: string, units: string, before: Other | null, other: Other | null): Record<string, unknown> | null {
  const asked = { command: 'papers', papers: [choice], units, date: today() };
  switch (choice) {
    case 'summary': return null;
    case 'cards': case 'report': return { ...asked, job };
    case 'maintenance': case 'commissioning': return asked;
    case 'changes': return before ? { ...asked, before } : null;
    case 'comparison': return other ? { ...asked, beside: other } : null;
  }
}
