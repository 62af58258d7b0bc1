// The file as it is: for what the forms do not reach, and to mend a text that does not parse.
import { useRef } from 'preact/hooks';
import { useApp, useApped } from '../ui/context';
import { where } from './where';

let sessions = 0;

export function TextPane() {
  const app = useApp();
  const text = useApped((s) => s.history.now);
  const fault = useApped((s) => s.fault);
  const session = useRef(0);
  const write = (typed: string) => {
    // A text that parses again must not swap this pane for a form under the fingers.
    if (where.get().section !== 'text') where.set({ section: 'text' });
    app.write(typed, `text#${session.current}`);
  };
  return (
    <div class="textpane">
      <p class="help" id="text-help">
        Comments, order and spelling stay as they are; the forms change single values in this text.
      </p>
      {fault ? <p class="trouble error" role="alert">No stand file as it is: {fault}. The forms show the last text that was one.</p> : null}
      <textarea
        aria-label="Stand file as text"
        aria-describedby="text-help"
        data-typing="yes"
        spellcheck={false}
        rows={26}
        value={text}
        onFocus={() => (session.current = ++sessions)}
        onInput={(event) => write(event.currentTarget.value)}
      />
    </div>
  );
}
