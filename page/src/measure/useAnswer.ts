// The newest answer of the core to what an area asks, and whether it is the answer to what is asked now.
import { useEffect, useRef, useState } from 'preact/hooks';
import { Superseded } from '../core/client';
import { useApp, useApped } from '../ui/context';

export interface Got {
  answer: any; // of the last request that was answered; null before
  behind: boolean; // it belongs to an older request, or to an older stand file
  fault: string; // why there is no answer
}

const rest = 120; // [ms] without a change, before something new is asked

/** `more` is asked whenever it is another object, or the stand file has changed; null asks nothing. */
export function useAnswer(key: string, more: Record<string, unknown> | null, long = false): Got {
  const app = useApp();
  const turn = useApped((s) => s.turn);
  const [got, setGot] = useState<{ answer: any; of: unknown; turn: number; fault: string }>({ answer: null, of: null, turn: -1, fault: '' });
  const first = useRef(true);
  useEffect(() => {
    if (!more) return undefined;
    let gone = false;
    const ask = () => app.answerOf(key, more, long).then(
      (answer) => void (gone || setGot({ answer, of: more, turn, fault: '' })),
      (error: Error) => void (gone || error instanceof Superseded || setGot({ answer: null, of: more, turn, fault: error.message || 'the calculation stopped' })),
    );
    const timer = setTimeout(() => void ask(), first.current ? 0 : rest);
    first.current = false;
    return () => {
      gone = true;
      clearTimeout(timer);
    };
  }, [more, turn, key, long]);
  if (!more) return { answer: null, behind: false, fault: '' };
  return { answer: got.answer, behind: got.of !== more || got.turn !== turn, fault: got.fault };
}
