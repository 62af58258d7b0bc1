// A workbook of jobs dropped on the page gives what the command line makes of it.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { assert, check } from './check.mjs';
import { answered, area, fresh, root } from './open.mjs';
import { close, example, matrix, native, openFile } from './main-job.mjs';

const folder = mkdtempSync(join(tmpdir(), 'holdback-book-'));

/** A workbook as tests/cli/workbooks.py makes it: `made` is Python that leaves its bytes in `content`. */
function workbook(name, made) {
  const path = join(folder, name);
  const script = `import sys\nsys.path.insert(0, ${JSON.stringify(join(root, '../tests/cli'))})\nfrom workbooks import *\n${made}\nopen(${JSON.stringify(path)}, "wb").write(content)`;
  const done = spawnSync('/usr/bin/python3', ['-c', script], { encoding: 'utf8' });
  assert.equal(done.status, 0, done.stderr);
  return path;
}
const head = '["Job", "Web", "Roll", "Speed [m/min]", "Tension [N]", "Share"]';
const notice = (page, text) => page.waitForSelector(`.notice:has-text("${text}")`, { timeout: 20000 });

async function opened(browser, path) {
  const page = await fresh(browser);
  await openFile(page, example);
  await openFile(page, path);
  return page;
}

export function workbookChecks(browser) {
  check('a workbook gives the jobs and margins that the command line finds in it', async () => {
    const path = workbook('mix.xlsx', `
texts = "<si><t>PET 23</t></si><si><r><t>800 </t></r><r><t>on 152</t></r></si>"
styles = '<cellXfs><xf numFmtId="0"/><xf numFmtId="9"/></cellXfs>'
rows = rows_xml([["Trials of May"], [], ${head}], 1) + "".join(
  f'<row r="{y}">' + cell(f"A{y}", f"trial, \\"{y}\\"") + cell(f"B{y}", ("s", "<v>0</v>")) + cell(f"C{y}", ("s", "<v>1</v>"))
  + cell(f"D{y}", 180.5 + y) + f'<c r="E{y}"><f>100+{y}</f><v>{100 + y}</v></c>' + cell(f"F{y}", 0.07, 1) + "</row>" for y in range(4, 9))
content = packed(parts([("Notes", sheet_xml(""), ""), ("Old", sheet_xml(rows_xml([["x"]])), "hidden"), ("Mix", sheet_xml(rows), "")], texts, styles))`);
    const page = await opened(browser, path);
    await notice(page, 'Sheet Mix of mix.xlsx');
    await area(page, 'Choose');
    await answered(page);
    const choice = native('size', example, '--jobs', path, '--sheet', 'Mix', '--all').choice;
    const shown = await matrix(page);
    assert.equal(shown.length, 27);
    assert.deepEqual(shown.map((row) => row.job), choice.recommended.jobs.map((one) => one.job));
    shown.forEach((row, i) => row.margins.forEach((margin, column) => close(margin, choice.all[column].jobs[i].margin, `${row.job} on fit ${column}`)));
    await page.context().close();
  });

  check('what is wrong in a workbook is told by its cell, as the command line tells it', async () => {
    const path = workbook('wrong.xlsx', `content = simple([${head}, ["a", "PET 23", "800 on 152", 200, 150], ["b", "PET 32", "800 on 152", "fast", 150]])`);
    const page = await opened(browser, path);
    await page.waitForFunction(() => window.holdback.state.problems?.problems?.some((one) => one.cell));
    const cells = await page.evaluate(() => window.holdback.state.problems.problems.filter((one) => one.cell).map((one) => `${one.cell} ${one.what.text}`));
    const done = spawnSync(process.env.HOLDBACK_CLI ?? process.env.HOLDBACK_PROGRAM ?? join(root, '../build/release/apps/cli/holdback'), ['size', example, '--jobs', path, '--json'], { encoding: 'utf8', maxBuffer: 100e6 });
    assert.deepEqual(cells, JSON.parse(done.stdout).problems.filter((one) => one.cell).map((one) => `${one.cell} ${one.what.text}`));
    assert.ok(cells.length >= 2);
    await page.waitForSelector('.problems li:has-text("B3")');
    await page.context().close();
  });

  check('of several sheets the page asks which, and another may be taken later', async () => {
    const sheet = (name, job) => `("${name}", sheet_xml(rows_xml([${head}, ["${job}", "PET 23", "800 on 152", 200, 150]])), "")`;
    const path = workbook('months.xlsx', `content = packed(parts([${sheet('May', 'm1')}, ${sheet('June', 'j1')}]))`);
    const page = await opened(browser, path);
    await page.waitForSelector('.question');
    assert.equal(await page.evaluate(() => window.holdback.state.sheet), null);
    await page.click('.question button:has-text("June")');
    await page.waitForFunction(() => window.holdback.state.check?.check?.jobs.some((one) => one.job === 'j1'));
    assert.equal(await page.locator('.question').count(), 0);
    await page.locator('.nested select').selectOption({ label: 'May' });
    await page.waitForFunction(() => window.holdback.state.check?.check?.jobs.some((one) => one.job === 'm1'));
    await page.context().close();
  });

  check('a file that is no workbook, an old one and an encrypted one are refused in words', async () => {
    const page = await fresh(browser);
    const before = await page.evaluate(() => window.holdback.state.history.now);
    const file = (name, bytes) => {
      const path = join(folder, name);
      writeFileSync(path, bytes);
      return path;
    };
    await openFile(page, file('text.xlsx', 'name,web\n'));
    await notice(page, 'no workbook, whatever its name says');
    await openFile(page, file('old.xls', Buffer.from('d0cf11e0a1b11ae1' + '00'.repeat(5000), 'hex')));
    await notice(page, 'old workbook (.xls) or one with a password');
    await openFile(page, workbook('locked.xlsx', `
content = bytearray(simple([${head}]))
for at in range(len(content) - 4):
  if content[at:at + 4] == b"PK\\x03\\x04": content[at + 6] |= 1
  if content[at:at + 4] == b"PK\\x01\\x02": content[at + 8] |= 1`));
    await notice(page, 'is encrypted');
    await openFile(page, workbook('bomb.xlsx', `content = packed(parts([("Mix", sheet_xml(" " * (70 << 20)), "")]))`));
    await notice(page, 'more than 64 MB');
    assert.equal(await page.evaluate(() => window.holdback.state.history.now), before);
    assert.deepEqual(page.seen.faults, []);
    await page.context().close();
  });
}
