// A few words of a test runner: named checks one after another, so that one Chromium serves all.
import assert from 'node:assert/strict';

export { assert };
const checks = [];
export const check = (name, run) => checks.push({ name, run });

export async function runAll(only) {
  let failed = 0;
  const chosen = checks.filter((one) => !only || one.name.includes(only));
  for (const { name, run } of chosen) {
    const begin = performance.now();
    try {
      await run();
      console.log(`ok    ${name} (${(performance.now() - begin).toFixed(0)} ms)`);
    } catch (error) {
      failed += 1;
      console.log(`FAILS ${name}\n      ${String(error?.message ?? error).split('\n').slice(0, 12).join('\n      ')}`);
    }
  }
  console.log(failed === 0 ? `all ${chosen.length} browser checks pass` : `${failed} of ${chosen.length} browser checks fail`);
  return failed;
}
