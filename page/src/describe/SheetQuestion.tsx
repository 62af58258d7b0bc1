// A workbook with several sheets that hold something: which one holds the jobs?
import { useEffect, useRef } from 'preact/hooks';
import { useApp, useApped } from '../ui/context';

export function SheetQuestion() {
  const app = useApp();
  const book = useApped((s) => s.asking);
  const place = useRef<HTMLElement>(null);
  useEffect(() => place.current?.focus(), [book]);
  if (!book) return null;
  return (
    <section class="question" ref={place} tabIndex={-1} aria-labelledby="which-sheet">
      <h2 id="which-sheet">Which sheet of {book.name} holds the jobs?</h2>
      <div class="chips">
        {book.sheets.map((one, i) => (
          <button key={one.name} type="button" onClick={() => app.chooseSheet(book, i)}>
            {one.name}<small>{rowsIn(one.text)}</small>
          </button>
        ))}
        <button type="button" class="quiet" onClick={() => app.askNothing()}>None of them</button>
      </div>
    </section>
  );
}

function rowsIn(text: string): string {
  const rows = text.split('\n').filter((one) => one !== '').length;
  return `${rows} row${rows === 1 ? '' : 's'}`;
}
