// Each area at the three sizes, light; Describe and Choose dark too. Into page/screenshots/, which is not kept.
//   node screenshots.mjs [area] [theme]
// Needs the command line, which writes the history that Measure shows (HOLDBACK_PROGRAM).
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { makeHistory } from './browser/history.mjs';
import { openFile, program } from './browser/main-job.mjs';
import { area, browse, fresh, root } from './browser/open.mjs';

const folder = join(root, 'screenshots');
mkdirSync(folder, { recursive: true });
const [onlyArea, onlyTheme] = process.argv.slice(2);
const sizes = [[1440, 900], [1024, 768], [820, 1180]];
const areas = ['Describe', 'Choose', 'Run', 'Papers', 'Measure'].filter((one) => !onlyArea || one.toLowerCase() === onlyArea);
const themes = ['light', 'dark'].filter((one) => !onlyTheme || one === onlyTheme);

/** Each part of Measure with something in it. */
async function measured(page, base) {
  await page.fill('#reading-span', '1200 mm');
  await page.fill('#reading-push', '20.0 mm');
  await page.fill('#reading-force', '79.8 N; 80.3 N; 80.1 N');
  await page.waitForSelector('#measured');
  await page.screenshot({ path: `${base}-tension.png`, fullPage: true });
  const example = (name) => join(root, '../examples', name);
  const given = { Brake: example('05-label-slitter-readings.csv'), Log: example('06-film-in-motion-log.csv'), History: history.table };
  for (const topic of ['Brake', 'Log', 'History']) {
    if (topic === 'Log') await openFile(page, example('04-film-in-motion.toml')); // the stand that was logged
    await page.click(`.measuring > .sections button:has-text("${topic}")`);
    await page.setInputFiles('.filedrop input[type="file"]', given[topic]);
    await page.waitForSelector('#fitted[aria-busy="false"], #diagnosed[aria-busy="false"], #kept[aria-busy="false"], .found.errors');
    await page.evaluate(() => window.holdback.state.notices.forEach((one) => window.holdback.dismiss(one.id)));
    await page.waitForTimeout(500);
    await page.screenshot({ path: `${base}-${topic.toLowerCase()}.png`, fullPage: true });
  }
}

const history = makeHistory(mkdtempSync(join(tmpdir(), 'holdback-screens-')), (...args) => execFileSync(program, args, { encoding: 'utf8' }));
const browser = await browse();
for (const theme of themes) {
  for (const [width, height] of sizes) {
    const page = await fresh(browser, { context: { viewport: { width, height }, colorScheme: theme } });
    for (const name of areas) {
      await area(page, name);
      await page.waitForTimeout(900);
      const base = join(folder, `${name.toLowerCase()}-${theme}-${width}`);
      if (name === 'Measure') await page.waitForSelector('#reading-span');
      await page.screenshot({ path: `${base}.png` });
      if (name === 'Measure') await measured(page, base);
      if (name === 'Papers') await page.waitForSelector('.paper', { timeout: 60_000 });
      if (width === 1440 && (name === 'Choose' || name === 'Papers')) await page.screenshot({ path: `${base}-whole.png`, fullPage: true });
    }
    if (page.seen.faults.length > 0) console.log(page.seen.faults);
    await page.context().close();
  }
}
await browser.close();
console.log(`written to ${folder}`);
