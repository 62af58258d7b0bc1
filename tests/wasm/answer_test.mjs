// The wasm core answers as the native program does. One `size` request over the smallest example: every text equal,
// every number within 1e-9 (the hosts have different maths libraries, so the last digits may differ). One request that
// is no request, and one stand that is none: refused, not crashed.
//
// usage: node answer_test.mjs <folder of holdback.js> <native holdback> <examples folder>
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const [folder, program, examples] = process.argv.slice(2);
for (const file of ['holdback.js', 'holdback.wasm']) {
  if (!existsSync(join(folder, file))) {
    console.error(`${join(folder, file)} is missing. Remedy: ./run wasm (./run test builds it too).`);
    process.exit(1);
  }
}

const { default: createHoldback } = await loadModule(join(folder, 'holdback.js'));
const core = await createHoldback({ wasmBinary: readFileSync(join(folder, 'holdback.wasm')) });

/// The module says `export default`, but its name ends in .js; Node would read it as CommonJS in a folder without package.json.
async function loadModule(path) {
  const text = readFileSync(path);
  return import(`data:text/javascript;base64,${text.toString('base64')}`);
}

/// Sends a request text, gives back the answer text; both live in the core's memory only meanwhile.
function answerText(request, call = core._holdback_answer) {
  const size = core.lengthBytesUTF8(request) + 1;
  const sent = core._malloc(size);
  core.stringToUTF8(request, sent, size);
  const got = call(sent);
  core._free(sent);
  const text = core.UTF8ToString(got);
  core._free(got);
  return text;
}
const answer = (request) => JSON.parse(answerText(JSON.stringify(request)));

/// Counts the numbers compared, so that an empty answer cannot pass.
function sameWithin(wasm, native, tolerance, path = '$') {
  if (typeof native === 'number' && typeof wasm === 'number') {
    const room = tolerance * Math.max(Math.abs(wasm), Math.abs(native)) + 1e-12;
    assert.ok(Math.abs(wasm - native) <= room, `${path}: wasm ${wasm}, native ${native}`);
    return 1;
  }
  if (native !== null && typeof native === 'object' && wasm !== null && typeof wasm === 'object') {
    assert.deepEqual(Object.keys(wasm), Object.keys(native), `${path}: other keys`);
    return Object.keys(native).reduce((count, key) => count + sameWithin(wasm[key], native[key], tolerance, `${path}.${key}`), 0);
  }
  assert.deepEqual(wasm, native, path);
  return 0;
}

// The comparison itself must be able to fail.
assert.throws(() => sameWithin({ a: 1 }, { a: 1 + 1e-8 }, 1e-9), /wasm 1, native/);
assert.throws(() => sameWithin({ a: 'x' }, { a: 'y' }, 1e-9));
assert.throws(() => sameWithin({ a: 1 }, { a: 1, b: 2 }, 1e-9), /other keys/);

const stands = readdirSync(examples).filter((name) => name.endsWith('.toml')).map((name) => join(examples, name));
assert.ok(stands.length > 0, `no stand in ${examples}`);
const smallest = stands.reduce((a, b) => (statSync(b).size < statSync(a).size ? b : a));

const native = spawnSync(program, ['size', smallest, '--json'], { encoding: 'utf8' });
assert.ok(native.status === 0 || native.status === 1, `native program: exit code ${native.status}\n${native.stderr}`);
const request = { version: 1, command: 'size', stand: { name: smallest, text: readFileSync(smallest, 'utf8') } };
const first = answer(request);
const numbers = sameWithin(first, JSON.parse(native.stdout), 1e-9);
assert.ok(numbers >= 20, `only ${numbers} numbers in the answer`);
assert.equal(first.outcome, native.status === 0 ? 'holds' : 'fails');
assert.deepEqual(answer(request), first, 'the second answer differs from the first');

for (const nonsense of ['', 'no request', '{}', '[1, 2', '{"version":1,"command":"dance"}']) {
  const refused = JSON.parse(answerText(nonsense));
  assert.ok(['bad_input', 'internal'].includes(refused.outcome), `${nonsense || 'empty text'}: ${refused.outcome}`);
}
const wrong = answer({ ...request, stand: { name: 'wrong.toml', text: 'colour = "green"\n' } });
assert.equal(wrong.outcome, 'bad_input');
assert.ok(wrong.problems.length > 0, 'a wrong stand has problems');

// A tuning: the motion layer, linear. A live run: opened, ramped, looked at, closed.
const film = join(examples, stands.map((path) => path.split('/').pop()).find((name) => name.includes('in-motion')));
const moving = { version: 1, stand: { name: 'film.toml', text: readFileSync(film, 'utf8') }, job: 'clear film' };
const tuned = answer({ ...moving, command: 'tune', idlers: 'following' });
const nativeTuned = spawnSync(program, ['tune', film, '--job', 'clear film', '--idlers', 'following', '--json'], { encoding: 'utf8' });
const loops = sameWithin(tuned.tuning.loops, JSON.parse(nativeTuned.stdout).tuning.loops, 1e-6);
assert.ok(loops >= 100, `only ${loops} numbers in the loops`);
const live = (call, request) => JSON.parse(answerText(JSON.stringify(request), call));
const opened = live(core._holdback_live_open, moving);
assert.equal(opened.state.held, true);
const ramped = live(core._holdback_live_advance, { run: opened.run, for: 8, inputs: { line_speed: 1, within: 5 } });
assert.ok(Math.abs(ramped.state.line_speed - 1) < 1e-9 && ramped.state.tension > 50, JSON.stringify(ramped.state));
assert.ok('problem' in live(core._holdback_live_advance, { run: opened.run, inputs: { nonsense: 1 } }));
core._holdback_live_close(opened.run);
assert.ok('problem' in live(core._holdback_live_advance, { run: opened.run, for: 1 }));

console.log(`${smallest}: ${numbers} numbers within 1e-9 of the native answer; 6 bad requests refused`);
