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

const browser = await browse();
for (const theme of themes) {
  for (const [width, height] of sizes) {
    const page = await fresh(browser, { context: { viewport: { width, height }, colorScheme: theme } });
    for (const name of areas) {
      await area(page, name);
      await page.waitForTimeout(900);
      const base = join(folder, `${name.toLowerCase()}-${theme}-${width}`);
      await page.screenshot({ path: `${base}.png` });
      if (width === 1440 && (name === 'Choose' || name === 'Papers')) await page.screenshot({ path: `${base}-whole.png`, fullPage: true });
    }
    if (page.seen.faults.length > 0) console.log(page.seen.faults);
    await page.context().close();
  }
}
await browser.close();
console.log(`written to ${folder}`);
