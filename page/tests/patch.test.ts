import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { addRows, copyRow, read, removeRow, safely, setValue, setValues, Unpatchable } from '../src/toml/patch';
import { scan, type Path } from '../src/toml/scan';

const examples = readdirSync('../examples').filter((name) => name.endsWith('.toml')).map((name) => readFileSync(`../examples/${name}`, 'utf8'));
const fileOf = (text: string): any => {
  const result = read(text);
  if ('fault' in result) throw new Error(result.fault);
  return result.file;
};
const at = (file: any, path: Path): any => path.reduce((inside, part) => inside?.[part], file);

/** Every scalar that a parsed file holds, with its path. */
function leaves(value: any, path: Path = []): { path: Path; value: unknown }[] {
  if (Array.isArray(value)) return value.flatMap((one, i) => leaves(one, [...path, i]));
  if (value && typeof value === 'object') return Object.entries(value).flatMap(([key, one]) => leaves(one, [...path, key]));
  return [{ path, value }];
}

describe('scan', () => {
  it('finds every value of every example where the parser finds it', () => {
    for (const text of examples) {
      const { statements } = scan(text);
      for (const { path, value } of leaves(fileOf(text))) {
        const found = statements.find((one) => JSON.stringify(one.path) === JSON.stringify(path));
        expect(found, path.join('.')).toBeDefined();
        expect(fileOf(`x = ${text.slice(found!.valueStart, found!.valueEnd)}`).x).toEqual(value);
      }
    }
  });
  it('is not misled by brackets, signs and quotes inside strings and comments', () => {
    const text = 'a = "x # no comment [y]" # comment = "z"\nb = \'c:\\d\'\n[t] # [u]\nc = """\n[v]\nd = 1\n"""\n"e f"."g" = 1\n';
    expect(scan(text).statements.map((one) => one.path)).toEqual([['a'], ['b'], ['t', 'c'], ['t', 'e f', 'g']]);
    expect(scan(text).tables.map((one) => one.path)).toEqual([[], ['t']]);
  });
  it('comes to an end on any text', () => {
    for (const text of ['[', '[[', '=', 'a', 'a =', '"', "'''", '[a\nb', 'a = [', 'a = {', 'a = [1,,', '\u0000', ']]]', 'a = "\\', '{}', 'é = 1']) expect(() => scan(text)).not.toThrow();
  });
});

describe('setValue', () => {
  it('changes one value of an example and not one other byte, for every value of every example', () => {
    for (const text of examples.slice(0, 2)) {
      for (const { path } of leaves(fileOf(text))) {
        const after = setValue(text, path, 'changed');
        const { statements } = scan(text);
        const found = statements.find((one) => JSON.stringify(one.path) === JSON.stringify(path))!;
        expect(after).toBe(text.slice(0, found.valueStart) + '"changed"' + text.slice(found.valueEnd));
        expect(at(fileOf(after), path)).toBe('changed');
      }
    }
  });
  it('keeps the comment behind a value, the spaces around it and the spelling of its neighbours', () => {
    const text = '[line]\n  top_speed   =  "300 m/min"   # as built\nuptime = 0.700\n';
    expect(setValue(text, ['line', 'top_speed'], '310 m/min')).toBe('[line]\n  top_speed   =  "310 m/min"   # as built\nuptime = 0.700\n');
  });
  it('keeps line ends as they are', () => {
    const text = '[line]\r\ntop_speed = "1 m/s"\r\n\r\n[air]\r\n';
    expect(setValue(text, ['line', 'uptime'], 0.5)).toBe('[line]\r\ntop_speed = "1 m/s"\r\nuptime = 0.5\r\n\r\n[air]\r\n');
  });
  it('adds a key at the end of its table, before the comment that belongs to the next', () => {
    const text = '[line]\ntop_speed = "1 m/s"\n\n# air of the plant\n[air]\nlag = "1 s"\n';
    expect(setValue(text, ['line', 'uptime'], 0.5)).toBe('[line]\ntop_speed = "1 m/s"\nuptime = 0.5\n\n# air of the plant\n[air]\nlag = "1 s"\n');
  });
  it('adds a key to the right item of a list, before the tables of that item', () => {
    const text = '[[brake]]\nname = "a"\n[[brake.grade]]\nname = "g"\n[[brake]]\nname = "b"\n';
    expect(setValue(text, ['brake', 0, 'pairs'], 4)).toBe('[[brake]]\nname = "a"\npairs = 4\n[[brake.grade]]\nname = "g"\n[[brake]]\nname = "b"\n');
    expect(setValue(text, ['brake', 0, 'grade', 0, 'friction'], 0.3)).toContain('name = "g"\nfriction = 0.3\n[[brake]]');
  });
  it('adds a table that is not there, once, with all its new keys', () => {
    const text = setValues('[line]\ntop_speed = "1 m/s"', [{ path: ['air', 'lag'], value: '1 s' }, { path: ['air', 'dead_time'], value: '2 s' }]);
    expect(text).toBe('[line]\ntop_speed = "1 m/s"\n\n[air]\nlag = "1 s"\ndead_time = "2 s"\n');
  });
  it('writes top-level keys before the first table', () => {
    expect(setValue('# a stand\n\n[line]\na = 1\n', ['holdback'], 1)).toBe('# a stand\nholdback = 1\n\n[line]\na = 1\n');
    expect(setValue('', ['line', 'a'], 1)).toBe('[line]\na = 1\n');
  });
  it('takes a key away with its line, but leaves what a comment says', () => {
    expect(setValue('[line]\na = 1\nb = 2\nc = 3\n', ['line', 'b'], null)).toBe('[line]\na = 1\nc = 3\n');
    expect(setValue('[line]\nb = 2  # measured in May\nc = 3\n', ['line', 'b'], null)).toBe('[line]\n# measured in May\nc = 3\n');
    expect(setValue('[line]\nc = 3\n', ['line', 'b'], null)).toBe('[line]\nc = 3\n');
  });
  it('works inside inline tables', () => {
    const text = 'cooling = [ { speed = "1 rev/min", power = "2 W" }, { power = "3 W" } ] # map\n';
    expect(setValue(text, ['cooling', 0, 'power'], '5 W')).toContain('{ speed = "1 rev/min", power = "5 W" }');
    expect(setValue(text, ['cooling', 1, 'speed'], '9 rev/min')).toContain('{ power = "3 W", speed = "9 rev/min" }');
    expect(setValue(text, ['cooling', 0, 'speed'], null)).toContain('[ { power = "2 W" }, { power = "3 W" } ] # map');
  });
  it('writes any text so that it reads back', () => {
    for (const value of ['quote " and \\ slash', 'tab\tand\nline', 'µ ° ² — 漢字', '\u0007', '#', ']']) {
      expect(fileOf(setValue('[a]\nb = 1\n', ['a', 'b'], value)).a.b).toBe(value);
    }
  });
  it('undoes itself: the old value put back gives the old bytes', () => {
    for (const text of examples) {
      const path: Path = ['roll', 0, 'full_diameter'];
      const before = at(fileOf(text), path) as string;
      expect(setValue(setValue(text, path, '777 mm'), path, before)).toBe(text);
    }
  });
});

describe('rows', () => {
  const text = '[[job]]\nname = "a"\nspeed = "1 m/s"\n\n# the fast one\n[[job]]\nname = "b"\n\n# --- brakes ---\n\n[[brake]]\nname = "x"\n';
  it('are added behind the last of their list, spaced as the others', () => {
    expect(addRows(text, ['job'], [{ name: 'c', share: 2 }])).toBe(text.replace('name = "b"\n', 'name = "b"\n\n[[job]]\nname = "c"\nshare = 2\n'));
  });
  it('are removed with what is theirs alone', () => {
    expect(removeRow(text, ['job', 0])).toBe('# the fast one\n[[job]]\nname = "b"\n\n# --- brakes ---\n\n[[brake]]\nname = "x"\n');
  });
  it('take their own tables with them', () => {
    const nested = '[[web]]\nname = "a"\n\n[[web.ply]]\ncaliper = "1 um"\n\n[[web]]\nname = "b"\n';
    expect(removeRow(nested, ['web', 0])).toBe('[[web]]\nname = "b"\n');
    const copied = fileOf(copyRow(nested, ['web', 0], 'a2'));
    expect(copied.web).toEqual([{ name: 'a', ply: [{ caliper: '1 um' }] }, { name: 'b' }, { name: 'a2', ply: [{ caliper: '1 um' }] }]);
  });
  it('of a list that is not there yet begin one', () => {
    expect(fileOf(addRows(text, ['roll'], [{ name: 'r' }])).roll).toEqual([{ name: 'r' }]);
    const graded = addRows(addRows(text, ['brake'], [{ name: 'y' }]), ['brake', 0, 'grade'], [{ name: 'g' }]);
    expect(fileOf(graded).brake).toEqual([{ name: 'x', grade: [{ name: 'g' }] }, { name: 'y' }]);
  });
  it('in brackets are added and removed in brackets', () => {
    const map = 'cooling = [\n  { speed = "1 rev/min" },\n  { speed = "2 rev/min" }, # hot\n]\n';
    const more = addRows(map, ['cooling'], [{ speed: '3 rev/min' }]);
    expect(more).toBe('cooling = [\n  { speed = "1 rev/min" },\n  { speed = "2 rev/min" },\n  { speed = "3 rev/min" }, # hot\n]\n');
    expect(fileOf(removeRow(map, ['cooling', 1])).cooling).toEqual([{ speed: '1 rev/min' }]);
    expect(fileOf(removeRow(map, ['cooling', 0])).cooling).toEqual([{ speed: '2 rev/min' }]);
    expect(fileOf(addRows('[[brake]]\nname = "a"\n', ['brake', 0, 'cooling'], [{ speed: '1 rev/min' }], true)).brake[0].cooling).toEqual([{ speed: '1 rev/min' }]);
  });
  it('can each be removed and copied in every example, and the rest stays what it was', () => {
    for (const example of examples) {
      for (const list of ['web', 'roll', 'job', 'brake', 'idler', 'scenario']) {
        const rows: any[] = fileOf(example)[list] ?? [];
        rows.forEach((_, i) => {
          const without = fileOf(removeRow(example, [list, i]));
          expect({ ...without, [list]: without[list] ?? [] }).toEqual({ ...fileOf(example), [list]: rows.filter((__, j) => j !== i) });
          expect(fileOf(copyRow(example, [list, i], 'n'))[list]).toEqual([...rows, { ...rows[i], name: 'n' }]);
        });
      }
    }
  });
});

describe('safely', () => {
  it('refuses an edit that would break the file', () => {
    expect(() => safely('a = 1\n', () => 'a = = 1\n')).toThrow(Unpatchable);
  });
});
