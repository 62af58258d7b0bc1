// The page: state, core in its workers, and what is on screen.
import { firstBegun, startWorker as start } from './core/start';
import { render } from 'preact';
import { CoreClient, coreOf } from './core/client';
import { App } from './store/app';
import { AppContext } from './ui/context';
import { Shell } from './ui/Shell';
import './look/base.css';
import './look/shell.css';
import './look/forms.css';
import './look/answers.css';
import './look/paper.css';

const say = {
  restarted: 'The calculation stopped and was started again. Your file is untouched, and the last edit is asked for once more.',
  unable: 'This browser cannot run the calculation (it lacks WebAssembly, or forbids it). You can still look at the file, edit and save it. Any browser of the last three years computes it; so does the command line.',
};
const tell = (what: keyof typeof say) => app.tell(say[what], 'warning');
const tellOfRun = (what: keyof typeof say) => app.tell(what === 'restarted' ? 'The run stopped by a fault of the calculation, which was started again. Start the run anew; your file is untouched.' : say[what], 'warning');

const answers = new CoreClient({ start, tell });
const live = new CoreClient({ start, tell: tellOfRun });
// The whole choice takes long; its core starts when it is first asked for.
const long = new CoreClient({ start, tell });
const app = new App(answers, long);
// For scripts that test or time the page, and for the curious.
(window as unknown as { holdback: App }).holdback = app;
answers.warm();
app.ask();
addEventListener('pagehide', () => app.keepNow());
addEventListener('beforeunload', (event) => app.atRisk && event.preventDefault());

const page = document.getElementById('page');
if (!page) throw new Error('the page has no place to draw on');
void firstBegun.then(() => {
  page.textContent = '';
  render(
    <AppContext.Provider value={{ app, core: coreOf(answers, live) }}>
      <Shell />
    </AppContext.Provider>,
    page,
  );
});
