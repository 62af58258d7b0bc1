import { describe, expect, it } from 'vitest';
import { lay_path, leaves_at, meets_at, type Path, type Turn } from './path';

const deg = Math.PI / 180;
const turn = (part: string, diameter: number, wrap: number): Turn => ({ part, radius: diameter / 2, wrap: wrap * deg });
const film: [number, number[], Turn[]] = [0.32, [2.2, 1.1, 1.4], [turn('idler:0', 0.09, 150), turn('idler:1', 0.09, 170)]];

function lengths_hold(path: Path, spans: number[]): void {
  path.legs.forEach((leg, i) => {
    expect(Math.hypot(leg.to.x - leg.from.x, leg.to.y - leg.from.y)).toBeCloseTo(spans[i]!, 9);
    expect(leg.shortened).toBe(false);
  });
}

describe('the path of the web', () => {
  it('keeps every span to its length', () => {
    const [radius, spans, turns] = film;
    lengths_hold(lay_path(radius, spans, turns, 100), spans);
  });

  it('leaves the roll and every idler along a tangent, at its radius', () => {
    const [radius, spans, turns] = film;
    const path = lay_path(radius, spans, turns, 100);
    const first = path.legs[0]!;
    expect(Math.hypot(first.from.x, first.from.y)).toBeCloseTo(radius, 9);
    expect(first.from.x * Math.cos(first.heading) + first.from.y * Math.sin(first.heading)).toBeCloseTo(0, 9);
    path.bends.forEach((bend, i) => {
      for (const [point, heading] of [[path.legs[i]!.to, path.legs[i]!.heading], [path.legs[i + 1]!.from, path.legs[i + 1]!.heading]] as const) {
        const away = { x: point.x - bend.centre.x, y: point.y - bend.centre.y };
        expect(Math.hypot(away.x, away.y)).toBeCloseTo(bend.radius, 9);
        expect(away.x * Math.cos(heading) + away.y * Math.sin(heading)).toBeCloseTo(0, 9);
      }
      const turned = path.legs[i + 1]!.heading - path.legs[i]!.heading;
      expect(Math.abs(turned)).toBeCloseTo(turns[i]!.wrap, 9);
    });
  });

  it('keeps clear of the roll', () => {
    const [radius, spans, turns] = film;
    const path = lay_path(radius, spans, turns, 100);
    for (const bend of path.bends) expect(Math.hypot(bend.centre.x, bend.centre.y)).toBeGreaterThan(radius + bend.radius);
  });

  it('goes straight to the nip without idlers', () => {
    const path = lay_path(0.4, [1.5], [], 100);
    expect(path.bends).toEqual([]);
    lengths_hold(path, [1.5]);
    expect(path.legs[0]!.to.x).toBeGreaterThan(0.4);
  });

  it('marks a span that is drawn shorter than it is', () => {
    const path = lay_path(0.3, [60], [], 4);
    expect(path.legs[0]).toMatchObject({ length: 60, shortened: true });
    expect(Math.hypot(path.legs[0]!.to.x - path.legs[0]!.from.x, path.legs[0]!.to.y - path.legs[0]!.from.y)).toBeCloseTo(4, 9);
  });

  it('lays out two hundred idlers', () => {
    const turns = Array.from({ length: 200 }, (_, i) => turn(`idler:${i}`, 0.08, 180));
    const spans = Array.from({ length: 201 }, () => 0.6);
    lengths_hold(lay_path(0.4, spans, turns, 100), spans);
  });

  it('touches a smaller roll and the first idler when the roll has shrunk', () => {
    const [radius, spans, turns] = film;
    const path = lay_path(radius, spans, turns, 100);
    const bend = path.bends[0]!;
    for (const r of [0.32, 0.2, 0.084]) {
      const from = leaves_at(path, r), to = meets_at(path, r);
      const run = Math.hypot(to.x - from.x, to.y - from.y);
      const ux = (to.x - from.x) / run, uy = (to.y - from.y) / run;
      expect(Math.hypot(from.x, from.y)).toBeCloseTo(r, 9);
      expect(from.x * ux + from.y * uy).toBeCloseTo(0, 9);
      expect(Math.hypot(to.x - bend.centre.x, to.y - bend.centre.y)).toBeCloseTo(bend.radius, 9);
      expect((to.x - bend.centre.x) * ux + (to.y - bend.centre.y) * uy).toBeCloseTo(0, 9);
    }
    expect(leaves_at(path, radius).x).toBeCloseTo(path.legs[0]!.from.x, 9);
    expect(meets_at(path, radius).y).toBeCloseTo(path.legs[0]!.to.y, 9);
  });
});
