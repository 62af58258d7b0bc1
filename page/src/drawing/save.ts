/** The elevation on screen as a file of its own. */
import { svgFile } from '../chart/svgFile';
import { save } from '../store/files';

export function saveDrawing(job: string): void {
  const svg = document.querySelector<SVGSVGElement>('svg.el-sheet');
  const name = job.toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '');
  if (svg) save(`stand${name ? `-${name}` : ''}.svg`, svgFile(svg), 'image/svg+xml');
}
