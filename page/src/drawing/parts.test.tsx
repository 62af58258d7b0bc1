import { describe, expect, it } from 'vitest';
import { SheetDrawing } from './Elevation';
import { example, example_check } from './example';
import type { Drawing } from './parts';
import { make_sheet } from './sheet';
import { drawn_stand } from './stand';

interface Seen { type: string; props: Record<string, any> }

/** All elements of a markup without state. */
function elements(node: any, into: Seen[] = []): Seen[] {
  if (Array.isArray(node)) node.forEach((one) => elements(one, into));
  else if (node && typeof node === 'object' && node.props) {
    if (typeof node.type === 'function') elements(node.type(node.props), into);
    else {
      into.push({ type: node.type, props: node.props });
      elements(node.props.children, into);
    }
  }
  return into;
}

function drawn(file: any, press?: (part: string) => void, selected?: string): Seen[] {
  const stand = drawn_stand(file, example_check, 'clear film');
  const d: Drawing = { stand, sheet: make_sheet(stand, 1000, 'si'), units: 'si', id: 't', selected, press, hold: () => () => undefined };
  return elements(<SheetDrawing d={d} />);
}
const buttons = (all: Seen[]) => all.filter((one) => one.props['role'] === 'button');

/** Its title, or its label where nothing is written on it. */
const name_of = (one: Seen) => String(one.props['aria-label'] ?? elements(one.props['children']).find((child) => child.type === 'title')?.props['children'] ?? '');

describe('parts of the drawing', () => {
  it('are reached by keyboard and have names', () => {
    const all = buttons(drawn(example, () => undefined));
    expect(all.map((one) => one.props['data-part']).sort()).toEqual([
      'air', 'brake', 'control', 'dancer', 'diameter_sensor', 'guard', 'idler:0', 'idler:1', 'limits', 'line', 'load_cell', 'path', 'roll', 'web',
    ]);
    for (const one of all) {
      expect(one.props['tabindex']).toBe(0);
      expect(name_of(one).length).toBeGreaterThan(3);
    }
    expect(name_of(all.find((one) => one.props['data-part'] === 'idler:1')!)).toBe('Idler weighing idler, diameter 90 mm, wrap 170°');
  });

  it('have names where there are too many idlers to write on each', () => {
    const many = { ...example, idler: Array.from({ length: 12 }, (_, i) => ({ name: `idler ${i}`, diameter: '80 mm', wrap: '90 deg', span: '0.5 m' })) };
    const all = buttons(drawn(many, () => undefined)).filter((one) => String(one.props['data-part']).startsWith('idler:'));
    expect(all.map(name_of)).toEqual(many.idler.map((one) => `Idler ${one.name}, diameter 80 mm, wrap 90°`));
  });

  it('call on a click, on Enter and on Space, not on other keys', () => {
    const called: string[] = [];
    const roll = buttons(drawn(example, (part) => called.push(part))).find((one) => one.props['data-part'] === 'roll')!;
    const key = (name: string) => roll.props['onKeyDown']({ key: name, preventDefault: () => undefined });
    roll.props['onClick']();
    key('Enter'); key(' '); key('Tab'); key('a');
    expect(called).toEqual(['roll', 'roll', 'roll']);
  });

  it('say which one is selected', () => {
    const all = buttons(drawn(example, () => undefined, 'brake'));
    expect(all.filter((one) => one.props['aria-pressed'] === true).map((one) => one.props['data-part'])).toEqual(['brake']);
  });

  it('offer what the stand has not, so that it can be added', () => {
    const { load_cell: _cell, dancer: _dancer, diameter_sensor: _sensor, ...bare } = example;
    const parts = buttons(drawn(bare, () => undefined)).map((one) => one.props['data-part']);
    for (const part of ['load_cell', 'dancer', 'diameter_sensor']) expect(parts.filter((one) => one === part)).toHaveLength(1);
  });

  it('are a picture without anybody to call', () => {
    expect(buttons(drawn(example))).toEqual([]);
  });

  it('draw the roll, its core and the disc to scale', () => {
    const stand = drawn_stand(example, example_check, 'clear film');
    const sheet = make_sheet(stand, 1000, 'si');
    const radius = (name: string) => Number(drawn(example).find((one) => one.props['class'] === name)!.props['r']);
    expect(radius('el-roll') / sheet.scale).toBeCloseTo(0.32, 9);
    expect(radius('el-core') / sheet.scale).toBeCloseTo(0.084, 9);
  });
});
