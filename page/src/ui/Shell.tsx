// What is always there: the areas, the file's tools, messages; and the area that is looked at.
import { useEffect } from 'preact/hooks';
import { Choose } from '../choose/Choose';
import { Describe } from '../describe/Describe';
import { SheetQuestion } from '../describe/SheetQuestion';
import { Measure } from '../measure/Measure';
import { Papers } from '../papers/Papers';
import { areas, type Area } from '../store/app';
import { useApp, useApped, useCore } from './context';
import { FileTools, readInto } from './FileTools';
import { Hint } from './Hint';
import { Notices } from './Notices';
import { RunArea } from './other';
import { useStand } from './stand';

const areaWords: Record<Area, [string, string]> = {
  describe: ['Describe', 'the stand, its webs, rolls, jobs and brakes'],
  choose: ['Choose', 'the fit that covers the mix'],
  run: ['Run', 'the stand in motion'],
  measure: ['Measure', 'what is on the machine'],
  papers: ['Papers', 'set-up cards and summary'],
};

export function Shell() {
  const app = useApp();
  const area = useApped((s) => s.area);
  const theme = useApped((s) => s.theme);
  useEffect(() => {
    document.documentElement.dataset['theme'] = theme;
  }, [theme]);
  useEffect(() => listen(app), [app]);
  return (
    <div class="shell" onDragOver={(e) => e.preventDefault()} onDrop={(e) => dropped(e, app)}>
      <a class="skip" href="#area">Skip to the work area</a>
      <header class="titleblock">
        <Title />
        <nav class="areas" aria-label="Areas">
          {areas.map((one) => (
            <button key={one} type="button" aria-current={one === area ? 'page' : undefined} title={areaWords[one][1]} onClick={() => app.show({ area: one })}>
              {areaWords[one][0]}
            </button>
          ))}
        </nav>
        <FileTools />
      </header>
      <Notices />
      <Hint />
      <SheetQuestion />
      <main id="area" tabIndex={-1} class={`area ${area}`} aria-label={areaWords[area][0]}>
        <AreaOf area={area} />
      </main>
    </div>
  );
}

function Title() {
  const name = useApped((s) => s.name);
  const changed = useApped((s) => s.history.now !== s.saved);
  const title = useApped((s) => String(s.file?.stand?.title ?? 'untitled stand'));
  return (
    <div class="title">
      <h1>Holdback</h1>
      <p>
        <strong title={title}>{title}</strong>
        <span class="filename">{name}{changed ? ' · not saved' : ''}</span>
      </p>
    </div>
  );
}

function AreaOf({ area }: { area: Area }) {
  if (area === 'describe') return <Describe />;
  if (area === 'choose') return <Choose />;
  if (area === 'measure') return <Measure />;
  if (area === 'papers') return <Papers />;
  return <Running />;
}

function Running() {
  const core = useCore();
  const stand = useStand();
  const theme = useApped((s) => s.theme);
  const fault = useApped((s) => s.fault);
  if (fault) return <p class="empty">The file is no stand file as it is ({fault}). Mend it under Describe, File as text.</p>;
  return <RunArea core={core} stand={stand} theme={theme} />;
}

/** Ctrl+Z and the like act on the file, except where a field has text of its own that is being typed. */
function listen(app: ReturnType<typeof useApp>): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    const typing = event.target instanceof HTMLElement && event.target.dataset['typing'] === 'yes';
    if (key === 's') document.getElementById('save')?.click();
    else if (key === 'o') document.getElementById('open-file')?.click();
    else if (typing) return;
    else if (key === 'z' && event.shiftKey) app.redo();
    else if (key === 'z') app.undo();
    else if (key === 'y') app.redo();
    else return;
    event.preventDefault();
  };
  addEventListener('keydown', onKey);
  return () => removeEventListener('keydown', onKey);
}

function dropped(event: DragEvent, app: ReturnType<typeof useApp>): void {
  const file = event.dataTransfer?.files[0];
  if (!file) return;
  event.preventDefault();
  void readInto(app, file);
}
