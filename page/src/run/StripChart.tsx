/** The strips of one run on a canvas, drawn from outside once a frame; its numbers stand below as a table. */
import { useEffect, useRef } from 'preact/hooks';

export interface Canvas { context: CanvasRenderingContext2D; width: number; height: number }

/** Keeps the canvas as sharp as the screen and hands it out when it is ready; null when it is gone. */
export function StripChart({ name, height, onCanvas }: { name: string; height: number; onCanvas: (canvas: Canvas | null) => void }) {
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const fit = () => {
      const element = canvas.current, context = element?.getContext?.('2d', { alpha: false });
      if (!element || !context || !box.current) return;
      const width = Math.max(240, Math.floor(box.current.clientWidth)), sharp = Math.min(3, window.devicePixelRatio || 1);
      element.width = Math.round(width * sharp);
      element.height = Math.round(height * sharp);
      element.style.width = `${width}px`;
      element.style.height = `${height}px`;
      context.setTransform(sharp, 0, 0, sharp, 0, 0);
      onCanvas({ context, width, height });
    };
    fit();
    if (typeof ResizeObserver === 'undefined' || !box.current) return undefined;
    const watch = new ResizeObserver(fit);
    watch.observe(box.current);
    return () => { watch.disconnect(); onCanvas(null); };
  }, [height, onCanvas]);
  return (
    <div class="rn-strips" ref={box}>
      <canvas ref={canvas} role="img" aria-label={`${name}: strips of tension with its window, slack, pressure, speed, slip power and temperature over time. The same numbers are in the table below.`} />
    </div>
  );
}
