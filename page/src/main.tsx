// The page: state, core in its workers, and what is on screen.
import { render } from 'preact';
import { CoreClient, coreOf, type WorkerLike } from './core/client';
import CoreWorker from './core/worker?worker&inline';
import { App } from './store/app';
import { AppContext } from './ui/context';
import { Shell } from './ui/Shell';
import './look/base.css';
import './look/shell.css';
import './look/forms.css';
import './look/answers.css';
import './look/paper.css';

const start = (): WorkerLike => {
  if (typeof WebAssembly === 'undefined' || typeof DecompressionStream === 'undefined') return unableWorker();
  return new CoreWorker() as unknown as WorkerLike;
};

/** Stands in where the browser lacks what the core needs: it says so and answers nothing. */
function unableWorker(): WorkerLike {
  const worker: WorkerLike = { postMessage: () => undefined, terminate: () => undefined, onmessage: null, onerror: null };
  setTimeout(() => worker.onmessage?.({ data: { kind: 'unable', what: 'WebAssembly or DecompressionStream is missing' } }));
  return worker;
}

const say = {
  restarted: 'The calculation stopped and was started again. Your file is untouched, and the last edit is asked for once more.',
  unable: 'This browser cannot run the calculation (it lacks WebAssembly, or forbids it). You can still look at the file, edit and save it. Any browser of the last three years computes it; so does the command line.',
};
const tell = (what: keyof typeof say) => app.tell(say[what], 'warning');
const tellOfRun = (what: keyof typeof say) => app.tell(what === 'restarted' ? 'The run stopped by a fault of the calculation, which was started again. Start the run anew; your file is untouched.' : say[what], 'warning');

const answers = new CoreClient({ start, tell });
const live = new CoreClient({ start, tell: tellOfRun });
const app = new App(answers);
// For scripts that test or time the page, and for the curious.
(window as unknown as { holdback: App }).holdback = app;
answers.warm();
app.ask();
addEventListener('pagehide', () => app.keepNow());
addEventListener('beforeunload', (event) => app.atRisk && event.preventDefault());

const page = document.getElementById('page');
if (!page) throw new Error('the page has no place to draw on');
page.textContent = '';
render(
  <AppContext.Provider value={{ app, core: coreOf(answers, live) }}>
    <Shell />
  </AppContext.Provider>,
  page,
);
