/** One way to draw a strip, on a canvas sixty times a second or into an SVG once. Pixels, y downwards. */
export interface Stroke { colour: string; width?: number; dash?: number[] }
export interface Pen {
  line(points: ArrayLike<number>, stroke: Stroke): void;                       // x0 y0 x1 y1 …; NaN lifts the pen
  band(x: number, lo: ArrayLike<number>, hi: ArrayLike<number>, colour: string, alpha: number): void;  // one column a pixel
  rect(x: number, y: number, w: number, h: number, colour: string, alpha?: number): void;
  hatch(x: number, y: number, w: number, h: number, colour: string): void;
  text(x: number, y: number, text: string, anchor: 'start' | 'middle' | 'end', colour: string, bold?: boolean): void;
}

const font_size = 12;
const family = 'system-ui, "DejaVu Sans", sans-serif';

/** The slanting lines of a hatched box, clipped to it: x0 y0 x1 y1 for each. */
export function hatch_lines(x: number, y: number, w: number, h: number, gap = 9): number[][] {
  const lines: number[][] = [];
  if (!(w > 0) || !(h > 0)) return lines;
  const first = Math.ceil((x + y) / gap) * gap;
  for (let c = first; c < x + w + y + h; c += gap) {
    // Points with px + py = c inside the box.
    const x0 = Math.max(x, c - (y + h)), x1 = Math.min(x + w, c - y);
    if (x1 > x0) lines.push([x0, c - x0, x1, c - x1]);
  }
  return lines;
}

/** Columns side by side with the same ends, as one. */
function runs(lo: ArrayLike<number>, hi: ArrayLike<number>, each: (from: number, count: number, low: number, high: number) => void): void {
  for (let i = 0; i < lo.length;) {
    let k = i + 1;
    while (k < lo.length && lo[k] === lo[i] && hi[k] === hi[i]) ++k;
    if (!Number.isNaN(lo[i]!)) each(i, k - i, lo[i]!, hi[i]!);
    i = k;
  }
}

const patterns = new Map<string, CanvasPattern | null>();

/** A tile of slanting lines: filling with it costs a tenth of stroking them each frame. */
function hatch_pattern(to: CanvasRenderingContext2D, colour: string): CanvasPattern | null {
  const known = patterns.get(colour);
  if (known !== undefined) return known;
  const tile = document.createElement('canvas');
  tile.width = tile.height = 9;
  const pen = tile.getContext('2d');
  if (pen) {
    pen.strokeStyle = colour;
    pen.lineWidth = 0.9;
    pen.beginPath();
    for (const shift of [-9, 0, 9]) { pen.moveTo(shift - 1, 10); pen.lineTo(shift + 10, -1); }
    pen.stroke();
  }
  const made = pen ? to.createPattern(tile, 'repeat') : null;
  patterns.set(colour, made);
  return made;
}

export class CanvasPen implements Pen {
  constructor(private readonly to: CanvasRenderingContext2D) {}

  private begin(stroke: Stroke): void {
    this.to.strokeStyle = stroke.colour;
    this.to.lineWidth = stroke.width ?? 1;
    this.to.setLineDash(stroke.dash ?? []);
    this.to.beginPath();
  }
  line(points: ArrayLike<number>, stroke: Stroke): void {
    this.begin(stroke);
    let down = false;
    for (let i = 0; i + 1 < points.length; i += 2) {
      const x = points[i]!, y = points[i + 1]!;
      if (Number.isNaN(y)) { down = false; continue; }
      if (down) this.to.lineTo(x, y); else this.to.moveTo(x, y);
      down = true;
    }
    this.to.stroke();
  }
  band(x: number, lo: ArrayLike<number>, hi: ArrayLike<number>, colour: string, alpha: number): void {
    this.to.globalAlpha = alpha;
    this.to.fillStyle = colour;
    runs(lo, hi, (from, count, low, high) => this.to.fillRect(x + from, high, count, Math.max(1, low - high)));
    this.to.globalAlpha = 1;
  }
  rect(x: number, y: number, w: number, h: number, colour: string, alpha = 1): void {
    this.to.globalAlpha = alpha;
    this.to.fillStyle = colour;
    this.to.fillRect(x, y, w, h);
    this.to.globalAlpha = 1;
  }
  hatch(x: number, y: number, w: number, h: number, colour: string): void {
    const pattern = hatch_pattern(this.to, colour);
    if (!pattern || !(w > 0) || !(h > 0)) return;
    this.to.fillStyle = pattern;
    this.to.fillRect(x, y, w, h);
  }
  text(x: number, y: number, text: string, anchor: 'start' | 'middle' | 'end', colour: string, bold = false): void {
    this.to.font = `${bold ? '650 ' : ''}${font_size}px ${family}`;
    this.to.textAlign = anchor === 'middle' ? 'center' : anchor === 'end' ? 'right' : 'left';
    this.to.fillStyle = colour;
    this.to.fillText(text, x, y);
  }
}

const n = (value: number) => String(Math.round(value * 10) / 10);
export const escaped = (text: string) => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

export class SvgPen implements Pen {
  private readonly out: string[] = [];
  constructor(private dx = 0, private dy = 0) {}

  /** Everything after this is moved by this much. */
  move(dx: number, dy: number): void { this.dx = dx; this.dy = dy; }

  line(points: ArrayLike<number>, stroke: Stroke): void {
    let d = '', down = false;
    for (let i = 0; i + 1 < points.length; i += 2) {
      if (Number.isNaN(points[i + 1]!)) { down = false; continue; }
      d += `${down ? 'L' : 'M'}${n(points[i]! + this.dx)} ${n(points[i + 1]! + this.dy)}`;
      down = true;
    }
    if (d === '') return;
    const dash = stroke.dash?.length ? ` stroke-dasharray="${stroke.dash.join(' ')}"` : '';
    this.out.push(`<path d="${d}" fill="none" stroke="${stroke.colour}" stroke-width="${stroke.width ?? 1}"${dash}/>`);
  }
  band(x: number, lo: ArrayLike<number>, hi: ArrayLike<number>, colour: string, alpha: number): void {
    let d = '';
    runs(lo, hi, (from, count, low, high) => {
      d += `M${n(x + from + this.dx)} ${n(high + this.dy)}h${count}v${n(Math.max(1, low - high))}h${-count}z`;
    });
    if (d !== '') this.out.push(`<path d="${d}" fill="${colour}" fill-opacity="${alpha}"/>`);
  }
  rect(x: number, y: number, w: number, h: number, colour: string, alpha = 1): void {
    this.out.push(`<rect x="${n(x + this.dx)}" y="${n(y + this.dy)}" width="${n(w)}" height="${n(h)}" fill="${colour}" fill-opacity="${alpha}"/>`);
  }
  hatch(x: number, y: number, w: number, h: number, colour: string): void {
    const d = hatch_lines(x, y, w, h).map(([x0, y0, x1, y1]) =>
      `M${n(x0! + this.dx)} ${n(y0! + this.dy)}L${n(x1! + this.dx)} ${n(y1! + this.dy)}`).join('');
    if (d !== '') this.out.push(`<path d="${d}" fill="none" stroke="${colour}" stroke-width="0.8"/>`);
  }
  text(x: number, y: number, text: string, anchor: 'start' | 'middle' | 'end', colour: string, bold = false): void {
    this.out.push(`<text x="${n(x + this.dx)}" y="${n(y + this.dy)}" text-anchor="${anchor}" fill="${colour}"${bold ? ' font-weight="650"' : ''}>${escaped(text)}</text>`);
  }
  document(width: number, height: number, paper: string, title: string): string {
    return `<svg xmlns="http://www.w3.org/2000/svg" width="${n(width)}" height="${n(height)}" viewBox="0 0 ${n(width)} ${n(height)}" `
      + `font-family='${family}' font-size="${font_size}" role="img"><title>${escaped(title)}</title>`
      + `<rect width="100%" height="100%" fill="${paper}"/>${this.out.join('')}</svg>\n`;
  }
}
