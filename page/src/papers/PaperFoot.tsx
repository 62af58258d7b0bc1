// Whence a paper comes, and what it is not.
import { useApped } from '../ui/context';

export function PaperFoot() {
  const name = useApped((s) => s.name);
  const day = new Date().toISOString().slice(0, 10);
  return (
    <footer class="paperfoot">
      <span>{name}</span>
      <span>{day}</span>
      <span>Computed by Holdback from what the file says. Local codes, makers’ ratings and a licensed engineer’s judgement come first.</span>
      <span>checked by: ____________________</span>
    </footer>
  );
}
