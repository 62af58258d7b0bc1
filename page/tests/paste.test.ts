import { describe, expect, it } from 'vitest';
import { cellsOf, signOf, mostCharacters, pasted, unitAbove } from '../src/describe/paste';
import { fieldName, pathOf } from '../src/describe/values';
import { table } from '../src/schema/fields';

const fields = table('job').fields.filter((one) => ['name', 'web', 'roll', 'speed', 'tension', 'share'].includes(one.key));
const none = () => '';

describe('cellsOf', () => {
  it('reads what spreadsheets put on the clipboard', () => {
    expect(cellsOf('a\tb\r\nc\t"d ""e""\nf"\r\n')).toEqual([['a', 'b'], ['c', 'd "e"\nf']]);
    expect(cellsOf('a,"b, c"\n1,2')).toEqual([['a', 'b, c'], ['1', '2']]);
    expect(cellsOf('a;b\n1;2')).toEqual([['a', 'b'], ['1', '2']]);
  });
});

describe('pasted', () => {
  it('fills columns from the cell on', () => {
    expect(pasted('300 m/min\t105 N\n310 m/min\t90 N', fields, 3, none)?.rows).toEqual([{ speed: '300 m/min', tension: '105 N' }, { speed: '310 m/min', tension: '90 N' }]);
  });
  it('goes by a header, takes units from it, and says what it left out', () => {
    const result = pasted('Name\tSpeed [m/min]\tOperator\tshare\nfirst\t300\tday\t2', fields, 0, none);
    expect(result).toMatchObject({ withHeader: true, left: ['Operator'], rows: [{ name: 'first', speed: '300 m/min', share: 2 }] });
  });
  it('lends bare numbers the unit of the rows above, and says so', () => {
    const result = pasted('a\tw\tr\t300', fields, 0, (key) => (key === 'speed' ? 'm/min' : ''));
    expect(result?.rows).toEqual([{ name: 'a', web: 'w', roll: 'r', speed: '300 m/min' }]);
    expect(result?.lent).toEqual([{ column: 'speed', unit: 'm/min', count: 1 }]);
  });
  it('refuses what is too much', () => {
    expect(pasted('x'.repeat(mostCharacters + 1), fields, 0, none)).toBeNull();
    expect(pasted('1\t2\t3\n'.repeat(80_000), fields, 0, none)).toBeNull();
  });
});

describe('names of fields', () => {
  it('go both ways', () => {
    expect(pathOf('brake[1].grade[0].friction')).toEqual(['brake', 1, 'grade', 0, 'friction']);
    expect(fieldName(['brake', 1, 'grade', 0, 'friction'])).toBe('brake[1].grade[0].friction');
  });
  it('find the unit above', () => expect(unitAbove([{ speed: '5 m/s' }, { speed: '300' }], 'speed')).toBe('m/s'));
});

describe('a file of readings', () => {
  it('is parted by the sign that its rows have, whatever stands above them', () => {
    expect(signOf('"a title; with signs; in it"\na,b\n1,2\n')).toBe(',');
    expect(signOf('a;b\n1,5;2\n2,5;3\n')).toBe(';');
    expect(signOf('a\tb, c\n1\t2\n')).toBe('\t');
    expect(cellsOf('t;i\na,b\n', ',')).toEqual([['t;i'], ['a', 'b']]);
  });
});
