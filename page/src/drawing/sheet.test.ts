import { describe, expect, it } from 'vitest';
import { example, example_check } from './example';
import { make_sheet, scale_bar } from './sheet';
import { drawn_stand } from './stand';

const stand = drawn_stand(example, example_check, 'clear film');
const overlap = (a: { x: number; y: number; w: number; h: number }, b: typeof a) =>
  Math.max(0, Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x)) * Math.max(0, Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y));

describe('the stand of a file', () => {
  it('takes the chosen job, its roll and the sensors', () => {
    expect(stand).toMatchObject({ full: 0.64, core: 0.168, firstSpan: 2.2, cell: 1, dancer: { behind: 0, travel: 0.22 }, sensor: 'ultrasonic', control: 'load cell' });
  });

  it('takes the disc from the pads as the core does: 3 % beyond them', () => {
    expect(stand.disc!.diameter).toBeCloseTo(0.28 * 1.03, 9);
    expect(stand.disc!.pairs).toBe(4);
  });

  it('draws a file that says nothing', () => {
    for (const file of [null, undefined, {}, { roll: 7, idler: 'x', brake: [null] }, { roll: [{ full_diameter: 'nonsense' }] }]) {
      const made = make_sheet(drawn_stand(file, undefined, ''), 900, 'si');
      expect(Number.isFinite(made.scale) && made.scale > 0).toBe(true);
    }
  });

  it('never draws a roll smaller than its core', () => {
    const made = drawn_stand({ roll: [{ core_diameter: '300 mm', full_diameter: '200 mm' }] }, undefined, '');
    expect(made.full).toBe(made.core);
  });
});

describe.each([[560], [740], [990], [1400]])('a sheet %i px wide', (width) => {
  const sheet = make_sheet(stand, width, 'si');

  it('has the roll and the spans to one scale', () => {
    expect(sheet.full.from.y - sheet.full.to.y).toBeCloseTo(0.64 * sheet.scale, 6);
    const lengths = sheet.spans.map((one) => Math.hypot(one.to.x - one.from.x, one.to.y - one.from.y) / sheet.scale);
    expect(lengths.map((one) => Number(one.toFixed(6)))).toEqual([2.2, 0.55, 1.4]);
    expect(sheet.spans.map((one) => one.text)).toEqual(['2.2 m', '2 × 0.55 m', '1.4 m']);
  });

  it('has everything inside', () => {
    for (const label of sheet.labels) {
      expect(label.box.x).toBeGreaterThanOrEqual(0);
      expect(label.box.x + label.box.w).toBeLessThanOrEqual(width + 1);
    }
    expect(sheet.nip.at.x).toBeLessThan(width);
    expect(sheet.origin.y + 0.32 * sheet.scale).toBeLessThan(sheet.floor);
  });

  it('has labels that hide no other', () => {
    sheet.labels.forEach((a, i) => sheet.labels.slice(i + 1).forEach((b) => expect(overlap(a.box, b.box), `${a.key} on ${b.key}`).toBe(0)));
  });
});

it('redraws the roll larger against the idlers when its full diameter grows', () => {
  const share = (full: string) => {
    const made = drawn_stand({ ...example, roll: [{ ...example.roll[0], full_diameter: full }] }, example_check, 'clear film');
    const sheet = make_sheet(made, 1000, 'si');
    return (sheet.full.from.y - sheet.full.to.y) / (sheet.path.bends[0]!.radius * sheet.scale);
  };
  expect(share('960 mm') / share('640 mm')).toBeCloseTo(1.5, 6);
});

it('has a scale bar as long as it says', () => {
  expect(scale_bar(250, 'si')).toMatchObject({ text: '500 mm', length: 125 });
  expect(scale_bar(60, 'si').length / 60).toBeCloseTo(2, 9);
  expect(scale_bar(180, 'us').length / 180 / 0.3048).toBeCloseTo(2, 9);
});
