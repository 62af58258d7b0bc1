// Speed of the built page, as the machine is: file open to first answer, edit to problems, edit to new choice.
//   node browser/timings.mjs [repeats]
import { area, answered, browse, fresh } from './open.mjs';

const repeats = Number(process.argv[2] ?? 5);
const middle = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
const browser = await browse();

/** [ms] from navigation to the first whole answer on screen. */
async function first() {
  const timed = await fresh(browser, {
    before: () => {
      window.waitFor = (pick) => new Promise((done) => {
        const look = () => (pick() ? done(performance.now()) : requestAnimationFrame(look));
        look();
      });
      document.addEventListener('DOMContentLoaded', () => {
        window.problemsAt = window.waitFor(() => document.querySelector('.problems .help')?.textContent?.startsWith('None'));
      });
    },
  });
  const checked = await timed.evaluate(() => window.problemsAt);
  await area(timed, 'Choose');
  await answered(timed);
  const chosen = await timed.evaluate(() => performance.now());
  await timed.context().close();
  return { checked, chosen };
}

/** [ms] from an input event to the check's and to the choice's answer on screen. */
async function edits(page) {
  return page.evaluate(async () => {
    const input = document.querySelector('td[data-row="0"] input[aria-label^="speed of"]');
    const times = { first: [], check: [], size: [] };
    for (let i = 0; i < 12; ++i) {
      const begin = performance.now();
      input.value = `${210 + i} m/min`;
      input.dispatchEvent(new Event('input', { bubbles: true }));
      const app = window.holdback;
      await new Promise((done) => {
        const before = app.state;
        let [told, checked] = [false, false];
        const stop = app.store.watch(() => {
          const took = performance.now() - begin;
          if (!told && app.state.problems !== before.problems) (told = true) && times.first.push(took);
          if (!checked && app.state.check !== before.check) (checked = true) && times.check.push(took);
          if (app.state.size !== before.size && !app.state.stale) { times.size.push(app.core.took); stop(); done(); }
        });
      });
      await new Promise((done) => setTimeout(done, 60));
    }
    return times;
  });
}

const starts = [];
for (let i = 0; i < repeats; ++i) starts.push(await first());
console.log(`file open → first answer on screen (problems, pressures of a job): ${middle(starts.map((one) => one.checked)).toFixed(0)} ms (median of ${repeats})`);
console.log(`file open → Choose with its whole answer: ${middle(starts.map((one) => one.chosen)).toFixed(0)} ms`);
const page = await fresh(browser);
await page.waitForFunction(() => window.holdback && !window.holdback.state.stale);
const times = await edits(page);
console.log(`edit → problems and pressures of the job (22-job example): ${middle(times.first).toFixed(1)} ms (median of ${times.first.length})`);
console.log(`edit → facts of every job: ${middle(times.check).toFixed(1)} ms`);
console.log(`the core's time for the whole choice, every fit and job: ${middle(times.size).toFixed(1)} ms`);
await browser.close();
