/** Files of a run. */
import type { Units } from '../drawing/quantity';
import type { Happening } from './events';
import type { Track } from './loop';
import { SvgPen } from './pen';
import { draw_strips, palettes, strip_kinds, strip_range, type View } from './plot';

/** The strips of all runs side by side, for paper: always in the light colours. */
export function run_svg(tracks: Track[], view: View, units: Units, happenings: Happening[], title: string): string {
  const ink = palettes.light;
  const width = tracks.length > 1 ? 620 : 960, height = 640, head = 44;
  const ranges = strip_kinds.map((kind) => strip_range(kind, tracks.map((one) => one.strips), view));
  const pen = new SvgPen();
  tracks.forEach((track, i) => {
    pen.move(i * width, head);
    draw_strips(pen, { width, height }, track.strips, ranges, view, units, ink, happenings.filter((one) => one.track < 0 || one.track === i));
    pen.move(i * width, 0);
    pen.text(62, 40, `control by ${track.control}`, 'start', ink.ink, true);
  });
  pen.move(0, 0);
  pen.text(62, 20, title, 'start', ink.ink, true);
  return pen.document(width * tracks.length, height + head, ink.paper, title);
}

export function download(name: string, text: string, type: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

export const file_name = (job: string, end: string) => `${job.toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '') || 'run'}-run.${end}`;
