// On the machine: what the tension really is, what the brake really does, what a log says, when pads are due.
import { useStore } from '../store/signal';
import { BrakeReadings } from './BrakeReadings';
import { entered, topics, type Topic } from './entered';
import { Log } from './Log';
import { PadHistory } from './PadHistory';
import { Tension } from './Tension';
import './measure.css';

const words: Record<Topic, string> = { tension: 'Tension', brake: 'Brake', log: 'Log', history: 'History' };

export function Measure() {
  const topic = useStore(entered, (s) => s.topic);
  return (
    <div class="answers measuring">
      <nav class="sections" aria-label="What is measured">
        {topics.map((one) => (
          <button key={one} type="button" aria-current={one === topic ? 'true' : undefined} onClick={() => entered.set({ topic: one })}>{words[one]}</button>
        ))}
      </nav>
      {topic === 'tension' ? <Tension /> : topic === 'brake' ? <BrakeReadings /> : topic === 'log' ? <Log /> : <PadHistory />}
    </div>
  );
}
