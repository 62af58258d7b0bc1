// One .html that opens from file://: everything inside, the core among it. See README.md.
import preact from '@preact/preset-vite';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build, type Plugin } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';
import { defineConfig } from 'vitest/config';

const here = dirname(fileURLToPath(import.meta.url));
const core = resolve(here, process.env['HOLDBACK_WASM'] ?? '../build/wasm/apps/wasm');

const partLength = 400_000; // of base64: some are compiled while the next are still being read; a multiple of 4

/** The core's .wasm, gzipped, as base64 in parts. A third of its size in the page. */
function packedCore(): string[] {
  const file = resolve(core, 'holdback.wasm');
  if (!existsSync(file)) throw new Error(`${file} is missing. Remedy: ./run wasm, or set HOLDBACK_WASM.`);
  const text = gzipSync(readFileSync(file), { level: 9 }).toString('base64');
  return Array.from({ length: Math.ceil(text.length / partLength) }, (_, i) => text.slice(partLength * i, partLength * (i + 1)));
}

async function workerText(): Promise<string> {
  const made = await build({
    configFile: false,
    root: here,
    logLevel: 'warn',
    resolve: { alias: { '@core': core } },
    build: { write: false, target: 'es2022', lib: { entry: resolve(here, 'src/core/worker.ts'), formats: ['iife'], name: 'core', fileName: 'core' } },
  });
  const [bundle] = [made].flat() as { output: { code?: string }[] }[];
  const code = bundle?.output[0]?.code ?? '';
  if (code === '' || /<\/script|<!--/i.test(code)) throw new Error('the worker cannot stand in the page as text');
  return code;
}

/**
 * Puts the core into the head of the page: its worker as text, a line of script that begins it, then the core itself, each
 * part handed to the worker as soon as it is read. So the core is compiled while the page is still being read and drawn;
 * a worker that is started from the page's own module would wait for both.
 */
function corePieces(): Plugin {
  const mark = '<!-- core -->'; // below the policy, above all else that takes time to read
  const give = (what: string) => `<script>window.earlyWorker?.postMessage({ part: ${what} })</script>`;
  return {
    name: 'holdback-core-pieces',
    transformIndexHtml: {
      order: 'post',
      async handler(html) {
        if (!html.includes(mark)) throw new Error(`index.html has no ${mark}`);
        const begin = readFileSync(resolve(here, 'src/core/early.js'), 'utf8').replace(/^\/\/.*\n/gm, '');
        const pieces = [
          `<script type="text/plain" id="core-worker">${await workerText()}</script>`,
          `<script>${begin}</script>`,
          ...packedCore().flatMap((part) => [`<script type="text/plain" class="core-part">${part}</script>`, give('document.currentScript.previousElementSibling.textContent')]),
          give("''"),
        ];
        return html.replace(mark, () => pieces.join('\n'));
      },
    },
  };
}

export default defineConfig({
  plugins: [preact(), corePieces(), viteSingleFile()],
  resolve: { alias: { '@core': core, '@repo': resolve(here, '..') } },
  server: { fs: { allow: [resolve(here, '..'), core] } },
  // light-dark() is left as it is: a paper is light inside of a dark page.
  build: { target: 'es2022', cssTarget: ['chrome123', 'firefox120', 'safari17.5'], assetsInlineLimit: 100_000_000, chunkSizeWarningLimit: 4000 },
  test: { include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx', 'src/**/*.test.ts', 'src/**/*.test.tsx'] },
});
