// Words for the core's keys, as the command line says them.
import { titleOf } from '../schema/fields';

const limitNames: Record<string, string> = {
  tension_resolution: 'tension step', stop_temperature: 'temperature after stop', stop_surface: 'disc face in stop',
  pressure_speed: 'pad pressure × speed', span_sag: 'sag of the longest span', roll_balance: 'balance at standstill',
  cinching: 'cinching of the roll', core_grip: 'grip on the core', shaft_fatigue: 'shaft fatigue safety', whirl_speed: 'shaft whirl',
};
export const limitName = (key: string): string => limitNames[key] ?? titleOf(key);

const count = (n: number, word: string): string => `${n} ${word}${n === 1 ? '' : 's'}`;

export const fitWords = (fit: any): string => `${fit.brakes} × ${fit.brake}, ${count(fit.pairs, 'pair')}${fit.brakes > 1 ? ' each' : ''}, grade ${fit.grade}`;
export const fitKey = (fit: any): string => `${fit.brakes}|${fit.brake}|${fit.grade}|${fit.pairs}`;

export const caseWords = (key: string): string => titleOf(key);
export const knownWords: Record<string, string> = { formula: 'derived', rating: 'maker’s rating', setting: 'your setting', practice: 'common practice' };
export { count as counted };

/** A note of the core as a sentence on its own. */
export const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? '' : '.'}`;
