// The built page in Debian's Chromium, opened as a person opens it: from a file.
import { chromium } from 'playwright-core';
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

export const root = join(dirname(fileURLToPath(import.meta.url)), '..');
export const built = join(root, 'dist', 'holdback.html');
const flags = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];

export async function browse() {
  if (!existsSync(built)) throw new Error(`${built} is missing. Remedy: npm run build`);
  return chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: flags });
}

/** A fresh page without anything kept. Requests and faults are noted in `page.seen`. `settle` [ms]: for the window, before. */
export async function fresh(browser, options = {}) {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, acceptDownloads: true, ...options.context });
  context.setDefaultTimeout(120_000); // [ms] a machine that does much else is slow, not wrong
  const page = await context.newPage();
  page.seen = { requests: [], faults: [] };
  page.on('request', (request) => page.seen.requests.push(request.url()));
  page.on('pageerror', (error) => page.seen.faults.push(String(error)));
  page.on('console', (message) => message.type() === 'error' && page.seen.faults.push(message.text()));
  if (options.before) await page.addInitScript(options.before);
  if (options.settle) await page.waitForTimeout(options.settle);
  await page.goto(pathToFileURL(built).href);
  return page;
}

/** Waits until the answer to the newest text is on screen (Choose). */
export async function answered(page) {
  await page.waitForSelector('.answers[aria-busy="false"]', { timeout: 20000 });
}
export const area = (page, name) => page.click(`.areas button:has-text("${name}")`);
