/** What starts, speeds and stops the run, and what controls it. */
import type { StandView } from '../contract';
import { clock_text } from './events';
import { Words } from './Readouts';
import { controls, type Run } from './useRun';

const speeds = [{ factor: 1, name: 'true speed' }, { factor: 10, name: '10 ×' }, { factor: 100, name: '100 ×' }];
const sensor_of: Record<string, string> = { diameter: 'diameter_sensor', 'load cell': 'load_cell', dancer: 'dancer' };

export function Bar({ r }: { r: Run }) {
  const { shown, ready, over, loop } = r;
  const running = shown.whole !== undefined;
  return (
    <div class="rn-bar" role="group" aria-label="Running">
      <div class="rn-transport">
        <button type="button" class="primary rn-start" disabled={!ready || over || running} onClick={() => r.play(!loop.playing)}>
          {loop.playing ? '❚❚ pause' : '▶ start'}
        </button>
        <div class="rn-row" role="group" aria-label="Speed of time">
          {speeds.map((one) => <button key={one.factor} type="button" aria-pressed={r.speed === one.factor} onClick={() => r.faster(one.factor)}>{one.name}</button>)}
          <button type="button" disabled={!ready || over} onClick={() => void r.whole()}>{running ? 'halt' : 'whole roll at once'}</button>
        </div>
        {running && <label class="rn-progress">unwound <progress max={1} value={shown.whole!} /> {Math.floor(100 * shown.whole!)} %</label>}
        <button type="button" disabled={shown.opening} onClick={r.anew}>start anew</button>
        <span class="rn-clock" role="timer" aria-label="time of the run">{clock_text(ready ? r.time() : 0)}</span>
        {r.hand.stopped && <button type="button" disabled={!ready} onClick={r.reset}>reset emergency stop</button>}
      </div>
      <button type="button" class="rn-emergency" disabled={!ready || over} aria-pressed={r.hand.stopped} aria-keyshortcuts="Escape" onClick={r.emergency}>
        EMERGENCY STOP <small>Esc</small>
      </button>
    </div>
  );
}

export function Choice({ r, stand }: { r: Run; stand: StandView }) {
  const lacks = (name: string) => sensor_of[name] !== undefined && stand.file?.[sensor_of[name]!] === undefined;
  const option = (name: string) => <option key={name} value={name} disabled={lacks(name)}>{name}{lacks(name) ? ' (no sensor in the file)' : ''}</option>;
  const two = r.tracks.length > 1;
  return (
    <div class="rn-choice">
      <label>Control <select value={r.control} onChange={(event) => r.choose(event.currentTarget.value)}>{controls.map(option)}</select></label>
      <label>Compare with <select value={r.other ?? ''} onChange={(event) => r.setOther(event.currentTarget.value || undefined)}>
        <option value="">nothing</option>
        {controls.filter((one) => one !== r.control).map(option)}
      </select></label>
      {two && <label>Drawing shows <select value={String(r.looked)} onChange={(event) => r.setLooked(Number(event.currentTarget.value))}>
        {r.tracks.map((one, i) => <option key={one.run} value={String(i)}>{one.control}</option>)}
      </select></label>}
      <div class="rn-states">
        {r.ready && r.tracks.map((one) => <Words key={one.run} track={one} name={two ? one.control : ''} />)}
        {r.shown.opening && <p class="rn-words">The stand is being set up.</p>}
      </div>
    </div>
  );
}
