// Measure as a person uses it at the machine; every number shown is that of the command line for the same readings.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { assert, check } from './check.mjs';
import { makeHistory } from './history.mjs';
import { area, fresh, root } from './open.mjs';
import { close, openFile, program } from './main-job.mjs';

const folder = mkdtempSync(join(tmpdir(), 'holdback-measure-'));
const stand = join(root, '../examples/01-label-slitter.toml');
const sounds = join(root, '../tests/support/sounds');

function cli(...args) {
  const done = spawnSync(program, args, { encoding: 'utf8', maxBuffer: 100e6 });
  assert.ok(done.status === 0 || done.status === 1, `${program} ${args.join(' ')}: ${done.status} ${done.stderr}`);
  return done.stdout;
}
const json = (...args) => JSON.parse(cli(...args, '--json'));
async function opened(browser, topic) {
  const page = await fresh(browser);
  await openFile(page, stand);
  await page.waitForFunction(() => window.holdback.state.check?.check);
  await area(page, 'Measure');
  await page.click(`.measuring > .sections button:has-text("${topic}")`);
  return page;
}
const job = (page) => page.locator('.measurehead select').first().inputValue();
const settled = (page, id) => page.waitForSelector(`#${id}[aria-busy="false"]`, { timeout: 20000 });
const numbers = (page, selector) => page.$$eval(`${selector} data`, (all) => all.map((one) => Number(one.value)));
async function fill(page, readings) {
  for (const [key, text] of Object.entries(readings)) await page.fill(`#reading-${key}`, text);
}
const words = (readings) => Object.entries(readings).flatMap(([key, text]) => text.split(';').map((one) => `${key}=${one.trim()}`));

export function measureChecks(browser) {
  check('each method has its instruction, its drawing and its form, and gives the numbers of the command line', async () => {
    const page = await opened(browser, 'Tension');
    const methods = {
      Push: ['push', { span: '1200 mm', push: '20.0 mm', force: '11.9 N; 12.1 N; 12.0 N' }],
      Sag: ['sag', { span: '2.50 m', sag: '3.5 mm; 3.0 mm' }],
      Pull: ['pull', { pull: '46 N', back: '40 N', released: '5 N', released_back: '4 N', diameter: '500 mm' }],
      'Load cell': ['cell', { reading: '153.4 N', tare: '12.0 N', wrap: '90 deg' }],
    };
    for (const [name, [method, readings]] of Object.entries(methods)) {
      await page.click(`.measurehead .switch button:has-text("${name}")`);
      await page.waitForFunction((title) => document.querySelector('.howto h2')?.textContent === title, json('measure', method, '--instruction', '--stand', stand, '--job', await job(page)).measurement.instruction.title);
      assert.equal(await page.locator('.sketch svg').count(), 1);
      await fill(page, readings);
      await settled(page, 'measured');
      const found = json('measure', method, ...words(readings), '--stand', stand, '--job', await job(page)).measurement;
      await page.waitForFunction((budget) => document.querySelectorAll('#measured .plain tbody tr').length >= budget, found.budget.length);
      const [tension, ...interval] = await numbers(page, '#measured .big');
      close(tension, found.tension, `${method}: tension`);
      const told = found.by_draws ? [found.low, found.high] : [found.expanded];
      assert.equal(interval.length, told.length, `${method}: interval`);
      told.forEach((value, i) => close(interval[i], value, `${method}: interval`));
      const shares = await page.$$eval('#measured section[aria-labelledby="budget"] tbody tr', (rows) => rows.map((row) => Number([...row.querySelectorAll('data')].at(-1).value)));
      found.budget.forEach((line, i) => close(shares[i], line.share, `${method}: share of ${line.key}`));
      assert.equal(await page.locator('#measured .windowstate').count(), found.window ? 1 : 0);
    }
    assert.deepEqual(page.seen.faults, []);
    await page.context().close();
  });

  check('a recording of a plucked span gives its frequency', async () => {
    const page = await opened(browser, 'Tension');
    await page.click('.measurehead .switch button:has-text("Pluck")');
    await fill(page, { span: '1200 mm' });
    const sound = join(sounds, 'span-47.wav');
    await page.setInputFiles('.filedrop input[type="file"]', sound);
    await settled(page, 'measured');
    const found = json('measure', 'pluck', 'span=1200mm', '--recording', sound, '--stand', stand, '--job', await job(page)).measurement;
    const [frequency] = await numbers(page, 'section[aria-labelledby="sound"]');
    close(frequency, found.sound.frequency, 'frequency');
    close((await numbers(page, '#measured .big'))[0], found.tension, 'tension');
    await page.setInputFiles('.filedrop input[type="file"]', { name: 'no.wav', mimeType: 'audio/wav', buffer: Buffer.from('this is no sound') });
    await page.waitForSelector('.found.errors:has-text("recording")');
    await page.context().close();
  });

  check('a wrong reading is told at its place, and the readings stay', async () => {
    const page = await opened(browser, 'Tension');
    await fill(page, { span: '1200 mm', push: '20', force: '-3 N' });
    await page.waitForSelector('#reading-push-trouble:has-text("unit")');
    assert.equal(await page.getAttribute('#reading-push', 'aria-invalid'), 'true');
    await area(page, 'Describe');
    await area(page, 'Measure');
    assert.equal(await page.inputValue('#reading-push'), '20');
    await page.waitForTimeout(600);
    await page.reload();
    await area(page, 'Measure');
    await page.waitForSelector('#reading-push');
    assert.equal(await page.inputValue('#reading-push'), '20');
    await page.context().close();
  });

  check('readings at a brake are fitted as the command line fits them, and taken over into the stand file', async () => {
    const page = await opened(browser, 'Brake');
    const table = join(root, '../examples/05-label-slitter-readings.csv');
    await page.locator('.measurehead select').nth(0).selectOption('disc 330');
    await page.locator('.measurehead select').nth(1).selectOption('middle');
    await page.setInputFiles('.filedrop input[type="file"]', table);
    await settled(page, 'fitted');
    const written = join(folder, 'stand.toml');
    writeFileSync(written, readFileSync(stand));
    const { fit } = json('fit', table, '--stand', written, '--brake', 'disc 330', '--grade', 'middle', '--write');
    const shown = await page.$$eval('section[aria-labelledby="constants"] tbody tr', (rows) => rows.map((row) => Number(row.querySelector('data').value)));
    const keys = ['torque_per_pressure', 'friction_share', 'threshold', 'drag', 'hysteresis'].filter((key) => fit[key] !== undefined);
    keys.forEach((key, i) => close(shown[i], fit[key], key));
    assert.equal(await page.locator('.chart .point').count(), fit.readings.length);
    await page.click('button:has-text("Take over into the stand file")');
    assert.equal(await page.evaluate(() => window.holdback.state.history.now), readFileSync(written, 'utf8'));
    await page.keyboard.press('Control+z');
    assert.equal(await page.evaluate(() => window.holdback.state.history.now), readFileSync(stand, 'utf8'));
    await page.context().close();
  });

  check('a log is judged as the command line judges it', async () => {
    const page = await opened(browser, 'Log');
    // A line at 180 m/min with a tension that swings once a turn of a roll of 400 mm (invented).
    const rows = Array.from({ length: 12000 }, (_, i) => {
      const time = i / 100;
      return `${time.toFixed(2)},180,${(90 + 8 * Math.sin((time * 3) / 0.2) + 0.6 * Math.sin(i * 12.9898)).toFixed(3)},400`;
    });
    const log = join(folder, 'line.csv');
    writeFileSync(log, `time [s],speed [m/min],tension [N],diameter [mm]\n${rows.join('\n')}\n`);
    await page.setInputFiles('.filedrop input[type="file"]', log);
    await settled(page, 'diagnosed');
    const { diagnosis } = json('diagnose', log, '--stand', stand, '--job', await job(page));
    const normal = (text) => text.replace(/[\u00a0\s]+/g, ' ').replace(/\.$/, '').toLowerCase();
    assert.equal(normal(await page.textContent('#diagnosed .big')), normal(diagnosis.verdict.text));
    const confidences = await page.$$eval('section[aria-labelledby="causes"] .share data', (all) => all.map((one) => Number(one.value)));
    assert.equal(confidences.length, diagnosis.causes.length);
    diagnosis.causes.forEach((one, i) => close(confidences[i], one.confidence, one.kind));
    const amplitudes = await page.$$eval('section[aria-labelledby="peaks"] tbody tr', (all) => all.map((row) => row.textContent));
    assert.equal(amplitudes.length, Math.min(15, diagnosis.peaks.length));
    assert.ok((await page.locator('#diagnosed .chart').count()) >= 2);
    // A part of it, and with the rows counted at half their rate.
    await page.fill('#log-from', '20 s');
    await page.fill('#log-to', '1.5 min');
    await page.fill('#log-rate', '50');
    await page.waitForFunction((lines) => !document.querySelector('#diagnosed')?.textContent.includes(lines), '12000');
    await settled(page, 'diagnosed');
    const part = json('diagnose', log, '--stand', stand, '--job', await job(page), '--from', '20 s', '--to', '1.5 min', '--rate', '50').diagnosis;
    assert.equal(normal(await page.textContent('#diagnosed .big')), normal(part.verdict.text));
    assert.match(await page.textContent('section[aria-labelledby="log-read"] dl'), new RegExp(`rows\\s*${part.reading.rows}\\D`));
    await page.fill('#log-rate', 'soon');
    await page.waitForSelector('#log-rate-trouble');
    assert.equal(await page.getAttribute('#log-rate', 'aria-invalid'), 'true');
    await page.context().close();
  });

  check('a history is read from the table that the command line writes', async () => {
    const page = await opened(browser, 'History');
    const { store, table } = makeHistory(folder, cli);
    await page.setInputFiles('.filedrop input[type="file"]', table);
    await settled(page, 'kept');
    const { history } = json('history', 'show', store, 'Slitter 2', '--stand', stand);
    assert.equal(await page.textContent('[data-test="due"]'), history.forecast.date.middle);
    assert.equal(await page.locator('section[aria-labelledby="entries"] tbody tr').count(), history.entries.length);
    await page.context().close();
  });
}
