// One .html that opens from file://: everything inside, the core among it. See README.md.
import preact from '@preact/preset-vite';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';
import { defineConfig } from 'vitest/config';

const here = dirname(fileURLToPath(import.meta.url));
const core = resolve(here, process.env['HOLDBACK_WASM'] ?? '../build/wasm/apps/wasm');

/** `import packed from 'virtual:core-wasm'`: the core's .wasm, gzipped, as base64. A third of its size in the page. */
function packedCore(): Plugin {
  const id = 'virtual:core-wasm';
  return {
    name: 'holdback-packed-core',
    resolveId: (source) => (source === id ? '\0' + id : null),
    load(asked) {
      if (asked !== '\0' + id) return null;
      const file = resolve(core, 'holdback.wasm');
      if (!existsSync(file)) throw new Error(`${file} is missing. Remedy: ./run wasm, or set HOLDBACK_WASM.`);
      return `export default ${JSON.stringify(gzipSync(readFileSync(file), { level: 9 }).toString('base64'))};`;
    },
  };
}

export default defineConfig({
  plugins: [preact(), packedCore(), viteSingleFile()],
  resolve: { alias: { '@core': core, '@repo': resolve(here, '..') } },
  server: { fs: { allow: [resolve(here, '..'), core] } },
  // A module worker from a Blob does not load from file:// in Chromium; a classic one does.
  worker: { format: 'iife', plugins: () => [packedCore()] },
  // light-dark() is left as it is: a paper is light inside of a dark page.
  build: { target: 'es2022', cssTarget: ['chrome123', 'firefox120', 'safari17.5'], assetsInlineLimit: 100_000_000, chunkSizeWarningLimit: 4000 },
  test: { include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx', 'src/**/*.test.ts', 'src/**/*.test.tsx'] },
});
