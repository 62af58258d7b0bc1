// Each area at the three sizes, light; Describe and Choose dark too. Into page/screenshots/, which is not kept.
//   node screenshots.mjs [area] [theme]
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { area, browse, fresh, root } from './browser/open.mjs';

const folder = join(root, 'screenshots');
mkdirSync(folder, { recursive: true });
const [onlyArea, onlyTheme] = process.argv.slice(2);
const sizes = [[1440, 900], [1024, 768], [820, 1180]];
const areas = ['Describe', 'Choose', 'Run', 'Measure', 'Papers'].filter((one) => !onlyArea || one.toLowerCase() === onlyArea);
const themes = ['light', 'dark'].filter((one) => !onlyTheme || one === onlyTheme);

/** Each part of Measure with something in it. */
async function measured(page, base) {
  await page.fill('#reading-span', '1200 mm');
  await page.fill('#reading-push', '20.0 mm');
  await page.fill('#reading-force', '79.8 N; 80.3 N; 80.1 N');
  await page.waitForSelector('#measured');
  await page.screenshot({ path: `${base}-tension.png`, fullPage: true });
  const given = { Brake: 'examples/05-label-slitter-readings.csv' };
  for (const topic of ['Brake', 'Log', 'History']) {
    await page.click(`.measuring > .sections button:has-text("${topic}")`);
    if (given[topic]) {
      await page.setInputFiles('.filedrop input[type="file"]', join(root, '..', given[topic]));
      await page.waitForSelector('#fitted, .found.errors');
    }
    await page.waitForTimeout(500);
    await page.screenshot({ path: `${base}-${topic.toLowerCase()}.png`, fullPage: true });
  }
}

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
      if (width === 1440 && (name === 'Choose' || name === 'Papers')) await page.screenshot({ path: `${base}-whole.png`, fullPage: true });
    }
    if (page.seen.faults.length > 0) console.log(page.seen.faults);
    await page.context().close();
  }
}
await browser.close();
console.log(`written to ${folder}`);
