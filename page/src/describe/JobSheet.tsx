// A table of jobs beside the stand file: where it comes from, and how the core read its columns.
import { useApp, useApped } from '../ui/context';
import { Scroll } from '../ui/parts';

export function JobSheet() {
  const app = useApp();
  const sheet = useApped((s) => s.sheet);
  const columns = useApped((s) => s.problems?.columns as any[] | undefined);
  if (!sheet) return <p class="help">A workbook (.xlsx) or a CSV of jobs dropped on this page is read beside the file, by the column names that people give.</p>;
  const { book } = sheet;
  return (
    <section class="nested" aria-label={`Columns of ${sheet.name}`}>
      <h3>{sheet.name}</h3>
      <p class="help">Its jobs are added to those of the file in every answer. They are not saved with the stand file.</p>
      {book && book.sheets.length > 1 ? (
        <label class="picker">
          <span>Sheet </span>
          <select value={String(book.chosen)} onChange={(event) => app.chooseSheet(book, Number(event.currentTarget.value))}>
            {book.sheets.map((one, i) => <option key={one.name} value={String(i)}>{one.name}</option>)}
          </select>
        </label>
      ) : book ? <p class="help">Sheet {book.sheets[0]?.name}.</p> : null}
      <Scroll label={`how ${sheet.name} was read`}>
        <table class="plain">
          <thead><tr><th scope="col">column</th><th scope="col">read as</th><th scope="col">unit</th></tr></thead>
          <tbody>
            {(columns ?? []).map((one) => (
              <tr key={one.column}><td>{one.header || one.column}</td><td>{one.field || 'not read'}</td><td>{one.unit}</td></tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <button type="button" onClick={() => app.addSheet(null)}>Take {sheet.name} away</button>
    </section>
  );
}
