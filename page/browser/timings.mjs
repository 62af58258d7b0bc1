// Speed of the built page, as the machine is: file open to first answer, edit to new choice, Run's frames and whole roll.
//   node browser/timings.mjs [repeats] [answers | run]
import { join } from 'node:path';
import { area, answered, browse, fresh, root } from './open.mjs';

const repeats = Number(process.argv[2] ?? 5);
const middle = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
const browser = await browse();

/** [ms] from navigation to the first whole answer on screen, in a window that stands: opening one costs the browser a second. */
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
    settle: 1500,
  });
  const checked = await timed.evaluate(() => window.problemsAt);
  await area(timed, 'Choose');
  await answered(timed);
  const chosen = await timed.evaluate(() => performance.now());
  await timed.context().close();
  return { checked, chosen };
}

/** [ms] from an edit to what answers it on screen: the line beside the inputs, the problems, the matrix, the whole choice. */
async function edits(page) {
  return page.evaluate(async () => {
    const app = window.holdback;
    const painted = () => new Promise((done) => requestAnimationFrame(() => { const port = new MessageChannel(); port.port1.onmessage = () => done(performance.now()); port.port2.postMessage(0); }));
    const until = async (there) => { while (!there()) await new Promise((done) => setTimeout(done)); return painted(); };
    const rest = (ms) => new Promise((done) => setTimeout(done, ms));
    const times = { line: [], matrix: [], core: [], check: [], whole: [] };
    const edit = (i) => app.edit((text) => text.replace(/full_diameter = "10\d\d mm"/, `full_diameter = "10${String(10 + i)} mm"`));
    for (const area of ['describe', 'choose']) {
      app.show({ area });
      await until(() => !app.state.stale);
      await rest(500);
      for (let i = 0; i < 12; ++i) {
        const number = area === 'describe' ? 10 + i : 40 + i;
        const begin = performance.now();
        if (area === 'describe') {
          // As a hand does it: an input event at the field.
          const input = document.querySelector('td[data-row="0"] input[aria-label^="speed of"]');
          input.value = `${200 + number} m/min`;
          input.dispatchEvent(new Event('input', { bubbles: true }));
        } else edit(number);
        const turn = app.state.turn;
        await until(() => app.state.at.size === turn).then((at) => times[area === 'describe' ? 'line' : 'matrix'].push(at - begin));
        times.core.push(app.core.took);
        await until(() => app.state.at.check === turn).then((at) => times.check.push(at - begin));
        await until(() => !app.state.stale).then((at) => times.whole.push(at - begin));
        await rest(120);
      }
    }
    return times;
  });
}

/** Frames a second that the stand moves in, at a speed of time; and the share of them that were drawn late. */
async function frames(page, name, seconds) {
  await page.getByRole('button', { name, exact: true }).click();
  await page.waitForTimeout(500);
  return page.evaluate(async (span) => {
    let [moved, late, last, before] = [0, 0, 0, ''];
    const text = () => document.querySelector('[data-part="roll"] g[transform^="rotate"]')?.getAttribute('transform') ?? '';
    const begin = performance.now();
    await new Promise((done) => {
      const frame = (now) => {
        const turned = text();
        if (turned !== before) moved += 1;
        if (last > 0 && now - last > 25) late += 1;
        [before, last] = [turned, now];
        if (now - begin < span * 1000) requestAnimationFrame(frame); else done();
      };
      requestAnimationFrame(frame);
    });
    return { moved: moved / span, late: late / span };
  }, seconds);
}

/** The stand of example 04 under way, by one control. */
async function running(control) {
  const page = await fresh(browser);
  await page.setInputFiles('#file-input', join(root, '../examples/04-film-in-motion.toml'));
  await area(page, 'Run');
  await page.locator('.rn-choice select').first().selectOption(control);
  await page.waitForSelector('.rn-start:not([disabled])');
  await page.waitForTimeout(1500);
  return page;
}

async function movement() {
  const page = await running('load cell');
  await page.click('.rn-start');
  await page.getByRole('button', { name: /ramp to/ }).click();
  await page.waitForTimeout(3000);
  for (const speed of ['true speed', '10 ×', '100 ×']) {
    const best = [];
    for (let i = 0; i < 3; ++i) best.push(await frames(page, speed, 4));
    best.sort((a, b) => b.moved - a.moved);
    console.log(`Run at ${speed}: ${best[0].moved.toFixed(1)} frames a second moved, ${best[0].late.toFixed(1)} a second late (best of 3)`);
    if (speed === '100 ×') break;
  }
  await page.context().close();
}

async function whole(control) {
  const best = [];
  for (let i = 0; i < repeats; ++i) {
    const page = await running(control);
    const times = await page.evaluate(async () => {
      const button = [...document.querySelectorAll('.rn-transport button')].find((one) => one.textContent === 'whole roll at once');
      const begin = performance.now();
      button.click();
      await new Promise((done) => setTimeout(done, 100));
      while (document.querySelector('.rn-progress')) await new Promise((done) => setTimeout(done, 4));
      const clock = document.querySelector('.rn-clock').textContent.split(':').reduce((sum, part) => sum * 60 + Number(part), 0);
      return { wall: (performance.now() - begin) / 1000, clock };
    });
    best.push(times);
    await page.context().close();
  }
  best.sort((a, b) => b.clock / b.wall - a.clock / a.wall);
  console.log(`whole roll, ${control}: ${best[0].clock.toFixed(0)} s of the line in ${best[0].wall.toFixed(2)} s, ${(best[0].clock / best[0].wall).toFixed(0)} × (best of ${repeats})`);
}

const only = process.argv[3] ?? '';
if (only === '' || only === 'answers') {
  const starts = [];
  for (let i = 0; i < repeats; ++i) starts.push(await first());
  console.log(`file open → first answer on screen (problems, choice in brief): ${middle(starts.map((one) => one.checked)).toFixed(0)} ms (median of ${repeats})`);
  console.log(`file open → Choose with its whole answer: ${middle(starts.map((one) => one.chosen)).toFixed(0)} ms`);
  const page = await fresh(browser);
  await page.waitForFunction(() => window.holdback && !window.holdback.state.stale);
  const times = await edits(page);
  const told = (what, list) => console.log(`${what}: ${middle(list).toFixed(1)} ms (median of ${list.length}, best ${Math.min(...list).toFixed(1)})`);
  told('edit under Describe → problems and what it comes to, painted (22-job example)', times.line);
  told('edit → new matrix and recommendation under Choose, painted', times.matrix);
  told('of this in the core', times.core);
  told('edit → facts of every job', times.check);
  told('edit → the whole choice, the hand at rest for 250 ms of it', times.whole);
  await page.context().close();
}
if (only === '' || only === 'run') {
  await movement();
  for (const control of ['hand', 'load cell', 'dancer']) await whole(control);
}
await browser.close();
