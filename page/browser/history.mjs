// An invented history of the pads of a slitter, as the command line keeps it and writes it.
import { join } from 'node:path';
import { writeFileSync } from 'node:fs';

/** Writes the store and its table into a folder. `cli` runs the command line and gives what it says. */
export function makeHistory(folder, cli) {
  const store = join(folder, 'stands.db');
  const table = join(folder, 'history.csv');
  const add = (date, ...entry) => cli('history', 'add', store, '--stand-name', 'Slitter 2', '--date', date, ...entry);
  add('2026-01-12', 'pads', 'depth=12mm');
  for (const [date, energy, depth] of [['2026-02-02', '60GJ', '11.2mm'], ['2026-03-02', '95GJ', '10.0mm'], ['2026-04-01', '90GJ', '8.9mm']]) {
    add(date, 'energy', `energy=${energy}`, 'running_time=160h');
    add(date, 'wear', 'brake=front', 'pair=2', `depth=${depth}`, 'hottest=yes');
  }
  writeFileSync(table, cli('history', 'show', store, 'Slitter 2', '--csv'));
  return { store, table };
}
