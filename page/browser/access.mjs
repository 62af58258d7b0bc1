// axe-core on every area and every part of the description, in both themes; touch targets of 44 px.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { assert, check } from './check.mjs';
import { area, fresh, root } from './open.mjs';

const axe = readFileSync(join(root, 'node_modules/axe-core/axe.min.js'), 'utf8');

async function violations(page, where) {
  const found = await page.evaluate(async () => {
    const { violations: list } = await window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] });
    return list.map((one) => `${one.id}: ${one.nodes.slice(0, 3).map((node) => `${node.target.join(' ')} ${node.any[0]?.message ?? ''}`).join(' | ')}`);
  });
  return found.map((one) => `${where}: ${one}`);
}

/** Buttons, inputs and lists that a finger would miss. Those inside of a drawing have areas of their own. */
const small = (page) => page.$$eval('button, select, input:not(.unseen), textarea, summary', (all) => all
  .filter((one) => one.offsetParent && !one.closest('svg') && one.type !== 'range')
  .map((one) => ({ name: one.textContent || one.ariaLabel || one.id, box: one.getBoundingClientRect() }))
  .filter(({ box }) => box.width > 0 && (box.height < 43.5 || box.width < 43.5))
  .map(({ name, box }) => `${name.trim().slice(0, 40)} ${box.width.toFixed(0)}×${box.height.toFixed(0)}`));

export function accessCheck(browser) {
  for (const theme of ['light', 'dark']) {
    check(`no barrier on any area (${theme})`, async () => {
      const page = await fresh(browser, { context: { colorScheme: theme, reducedMotion: 'reduce', bypassCSP: true } });
      await page.addScriptTag({ content: axe });
      const all = [];
      for (const name of ['Describe', 'Choose', 'Run', 'Measure', 'Papers']) {
        await area(page, name);
        await page.waitForTimeout(1200);
        all.push(...(await violations(page, name)));
        all.push(...(await small(page)).map((one) => `${name}: too small to touch: ${one}`));
      }
      await area(page, 'Describe');
      for (const part of await page.$$eval('.sections button', (list) => list.map((one) => one.textContent))) {
        await page.click(`.sections button:has-text("${part}")`);
        await page.waitForTimeout(80);
        all.push(...(await violations(page, `Describe, ${part}`)));
      }
      await area(page, 'Measure');
      for (const topic of ['Brake', 'Log', 'History', 'Tension']) {
        await page.click(`.measuring > .sections button:has-text("${topic}")`);
        await page.waitForTimeout(200);
        all.push(...(await violations(page, `Measure, ${topic}`)));
        all.push(...(await small(page)).map((one) => `Measure, ${topic}: too small to touch: ${one}`));
      }
      for (const method of ['Sag', 'Pluck', 'Pull', 'Load cell', 'Push']) {
        await page.click(`.measurehead .switch button:has-text("${method}")`);
        await page.waitForTimeout(200);
        all.push(...(await violations(page, `Measure, ${method}`)));
      }
      await page.fill('#reading-span', '1200 mm');
      await page.fill('#reading-push', '20 mm');
      await page.fill('#reading-force', '80 N'); // the hardest job of this example is a stiff foil
      await page.waitForSelector('#measured');
      all.push(...(await violations(page, 'Measure, with an answer')));
      await area(page, 'Describe');
      // With something wrong: messages at fields, the list, no answer under Choose.
      await page.click('.sections button:has-text("Line")');
      await page.fill('#in-line-top_speed', '400');
      await page.waitForSelector('.problems li.error');
      all.push(...(await violations(page, 'Describe, with a problem')));
      await area(page, 'Choose');
      await page.waitForSelector('section.empty');
      all.push(...(await violations(page, 'Choose, with a problem')));
      assert.deepEqual([...new Set(all)], []);
      await page.context().close();
    });
  }
}
