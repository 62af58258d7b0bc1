// A drawing on screen as a file of its own: each part carries the look that it has on screen, so that nothing outside
// of the file is needed to show it.

const kept = ['fill', 'fill-opacity', 'stroke', 'stroke-width', 'stroke-dasharray', 'stroke-linecap', 'stroke-linejoin', 'stroke-opacity', 'paint-order', 'font-family', 'font-size', 'font-weight', 'opacity', 'text-anchor', 'vector-effect'];
/** What a part has of these is as good as not said. */
const usual: Record<string, string> = {
  'fill-opacity': '1', 'stroke-dasharray': 'none', 'stroke-linecap': 'butt', 'stroke-linejoin': 'miter', 'stroke-opacity': '1', 'paint-order': 'normal', opacity: '1', 'text-anchor': 'start', 'vector-effect': 'none',
};
/** For hands and for those who listen: a file has neither. */
const forHands = ['class', 'style', 'role', 'tabindex', 'aria-label', 'aria-pressed', 'data-part'];

/** Mixed colours (oklab and the like) as rgb, which every reader of SVG knows. */
function plainColour(colour: string): string {
  if (!/^(?:oklab|oklch|lab|lch|color|color-mix)\(/.test(colour)) return colour;
  const canvas = document.createElement('canvas');
  canvas.width = canvas.height = 1;
  const pen = canvas.getContext('2d');
  if (!pen) return colour;
  pen.fillStyle = colour;
  pen.fillRect(0, 0, 1, 1);
  const [r, g, b] = pen.getImageData(0, 0, 1, 1).data;
  return `rgb(${r}, ${g}, ${b})`;
}

export function svgFile(svg: SVGSVGElement): string {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  const from = svg.querySelectorAll<SVGElement>('*');
  const parts = copy.querySelectorAll<SVGElement>('*');
  parts.forEach((part, i) => {
    if (part.tagName === 'title' || part.closest('[data-screen-only]')) return;
    const look = getComputedStyle(from[i]!);
    for (const name of kept) {
      const value = look.getPropertyValue(name);
      if (!part.hasAttribute(name) && value !== '' && value !== usual[name]) part.setAttribute(name, name === 'fill' || name === 'stroke' ? plainColour(value) : value);
    }
  });
  for (const part of [copy, ...parts]) for (const name of forHands) if (part !== copy || name !== 'aria-label') part.removeAttribute(name);
  copy.querySelectorAll('[data-screen-only]').forEach((part) => part.remove());
  const paper = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
  for (const [name, value] of Object.entries({ width: '100%', height: '100%', fill: getComputedStyle(document.body).backgroundColor })) paper.setAttribute(name, value);
  copy.prepend(paper);
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  return new XMLSerializer().serializeToString(copy);
}
