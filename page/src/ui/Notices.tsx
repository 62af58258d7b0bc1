// What a person should know, said once, until it is put away.
import { useApp, useApped } from './context';

export function Notices() {
  const app = useApp();
  const notices = useApped((s) => s.notices);
  return (
    <div class="notices" role="status" aria-live="polite">
      {notices.map((one) => (
        <div key={one.id} class={`notice ${one.tone}`}>
          <span>{one.tone === 'warning' ? <strong>Mind: </strong> : null}{one.text}</span>
          <button type="button" onClick={() => app.dismiss(one.id)}>Put away</button>
        </div>
      ))}
    </div>
  );
}
