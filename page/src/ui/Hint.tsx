// One hint at the first start, no tour.
import { useApp, useApped } from './context';

export function Hint() {
  const app = useApp();
  const seen = useApped((s) => s.hintSeen);
  if (seen) return null;
  return (
    <aside class="hint" aria-label="First steps">
      <p>
        This is an invented stand, open to try things on. Touch a part of the drawing to change it, then look at <em>Choose</em>.
        Nothing leaves this page; <em>Save</em> writes the file that the command line reads too.
      </p>
      <button type="button" onClick={() => app.show({ hintSeen: true })}>Understood</button>
    </aside>
  );
}
