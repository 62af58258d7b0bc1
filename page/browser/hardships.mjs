// What goes wrong at a customer's: each has a clear message, and nothing is lost.
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { assert, check } from './check.mjs';
import { answered, area, fresh } from './open.mjs';

const folder = mkdtempSync(join(tmpdir(), 'holdback-hard-'));
const file = (name, content) => {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
};
const notice = (page, text) => page.waitForSelector(`.notice:has-text("${text}")`, { timeout: 20000 });

export function hardshipChecks(browser) {
  check('a wrong file is shown as text with what is wrong, and undo brings the old one back', async () => {
    const page = await fresh(browser);
    const before = await page.evaluate(() => window.holdback.state.history.now);
    await page.setInputFiles('#file-input', file('wrong.toml', 'this is = = no stand\n'));
    await notice(page, 'is no stand file');
    await page.waitForSelector('.textpane textarea');
    await page.click('button[title^="Undo"]');
    assert.equal(await page.evaluate(() => window.holdback.state.history.now), before);
    await page.setInputFiles('#file-input', file('picture.toml', Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0x80])));
    await notice(page, 'no text in UTF-8');
    await page.setInputFiles('#file-input', file('mix.xlsx', 'PK'));
    await notice(page, 'is no workbook, whatever its name says');
    assert.equal(await page.evaluate(() => window.holdback.state.history.now), before);
    await page.context().close();
  });

  check('a huge paste is refused, a large one is taken', async () => {
    const page = await fresh(browser);
    await page.waitForSelector('td[data-row="0"] input');
    const paste = (text) => page.evaluate((pasted) => {
      const data = new DataTransfer();
      data.setData('text/plain', pasted);
      document.querySelector('td[data-row="0"] input').dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
    }, text);
    await paste('a\tb\n'.repeat(200_000));
    await notice(page, 'Too much to paste');
    const rows = Array.from({ length: 500 }, (_, i) => `more ${i}\tPET 12\t800 on 152\t200 m/min`).join('\n');
    await paste(`name\tweb\troll\tspeed\n${rows}`);
    await page.waitForFunction(() => window.holdback.state.file.job.length === 522);
    assert.ok((await page.locator('.grid tbody tr').count()) <= 40);
    await page.context().close();
  });

  check('a worker that dies is started again and said so, and nothing is lost', async () => {
    const page = await fresh(browser, {
      before: () => {
        const Real = window.Worker;
        window.workers = [];
        window.Worker = class extends Real {
          constructor(...args) {
            super(...args);
            window.workers.push(this);
          }
        };
      },
    });
    await area(page, 'Choose');
    await answered(page);
    const text = await page.evaluate(() => window.holdback.state.history.now);
    await page.evaluate(() => window.workers[0].dispatchEvent(new ErrorEvent('error')));
    await notice(page, 'was started again');
    await page.evaluate(() => window.holdback.choose('PET 12 fast'));
    await page.waitForSelector('#depth:has-text("PET 12 fast")');
    await page.waitForFunction(() => window.holdback.state.size.choice.job?.job === 'PET 12 fast');
    assert.equal(await page.evaluate(() => window.holdback.state.history.now), text);
    await page.context().close();
  });

  check('a worker that dies before it has its core is started again too', async () => {
    const page = await fresh(browser, {
      before: () => {
        const Real = window.Worker;
        let first = true;
        window.Worker = class extends Real {
          constructor(...args) {
            super(...args);
            if (first) this.postMessage = () => undefined; // it never gets the core
            if (first) setTimeout(() => this.dispatchEvent(new ErrorEvent('error')));
            first = false;
          }
        };
      },
    });
    await notice(page, 'was started again');
    await page.waitForFunction(() => window.holdback.state.size?.choice);
    await area(page, 'Choose');
    await answered(page);
    await page.context().close();
  });

  check('storage that is refused or full is said once, and work goes on', async () => {
    for (const [name, words] of [['QuotaExceededError', 'is full'], ['SecurityError', 'keeps nothing']]) {
      const page = await fresh(browser, { before: `Storage.prototype.setItem = () => { throw new DOMException('${name === 'QuotaExceededError' ? 'exceeded the quota' : 'no'}', '${name}'); };` });
      await page.click('.switch button:has-text("US")');
      await notice(page, words);
      await area(page, 'Choose');
      await answered(page);
      assert.equal(await page.locator(`.notice:has-text("${words}")`).count(), 1);
      await page.context().close();
    }
  });

  check('a browser without WebAssembly says so and still edits and saves', async () => {
    const page = await fresh(browser, { before: 'delete window.WebAssembly;' });
    await notice(page, 'cannot run the calculation');
    await page.click('.sections button:has-text("Line")');
    await page.fill('#in-line-top_speed', '333 m/min');
    const [download] = await Promise.all([page.waitForEvent('download'), page.click('#save')]);
    assert.equal(download.suggestedFilename(), '02-film-laminator.toml');
    await page.context().close();
  });
}
