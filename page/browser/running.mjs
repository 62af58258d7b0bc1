// Run as a person runs it: start, emergency stop, slack said.
import { join } from 'node:path';
import { assert, check } from './check.mjs';
import { area, fresh, root } from './open.mjs';

export function runChecks(browser) {
  check('the stand runs, and an emergency stop is obeyed', async () => {
    const page = await fresh(browser);
    await page.setInputFiles('#file-input', join(root, '../examples/04-film-in-motion.toml'));
    await area(page, 'Run');
    await page.getByRole('button', { name: /start/i }).first().click();
    await page.waitForTimeout(300);
    const ramp = page.getByRole('button', { name: /ramp to/i });
    if (await ramp.count()) await ramp.first().click();
    await page.getByRole('button', { name: '10 ×' }).click();
    // Fast enough that a stop without a brake must throw web, however slow the machine that shows it.
    const fast = () => [...document.querySelectorAll('main tr, main dl > div, main li')].some((row) => {
      const told = /^line\s*([\d.]+)\s*m\/min/.exec(row.innerText.trim());
      return told !== null && Number(told[1]) > 60;
    });
    await page.waitForFunction(fast, undefined, { timeout: 60000 });
    // Without air the brake cannot hold the roll back: the stop must throw slack, and the page must say so.
    await page.getByRole('button', { name: /fail the air/i }).click();
    await page.getByRole('button', { name: /emergency stop/i }).click();
    await page.waitForFunction(() => /slack/i.test(document.querySelector('main')?.innerText ?? ''), undefined, { timeout: 15000 });
    assert.deepEqual(page.seen.faults, []);
    assert.match(await page.textContent('main'), /emergency stop/i);
    await page.context().close();
  });
}
