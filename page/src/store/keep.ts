// The last state, kept by the browser for this page alone. A browser may refuse or be full: then work goes on, and the
// page says that saving is up to the file.

export interface Kept {
  text: string;
  name: string;
  units: 'si' | 'us';
  theme: 'light' | 'dark';
  area: string;
  job: string;
  hintSeen: boolean;
  unsaved: boolean; // the file on disk is older
}

const place = 'holdback.page.1';
const most = 4_000_000; // characters; browsers allow about five million

export type Refusal = 'refused' | 'full' | 'large';

export function keep(kept: Kept, storage: () => Storage = () => localStorage): Refusal | null {
  try {
    if (kept.text.length > most) return 'large';
    storage().setItem(place, JSON.stringify(kept));
    return null;
  } catch (error) {
    return /quota/i.test(`${(error as Error).name} ${(error as Error).message}`) ? 'full' : 'refused';
  }
}

/** Nothing when nothing is kept, or what is kept is not ours. */
export function recall(storage: () => Storage = () => localStorage): Partial<Kept> | null {
  try {
    const text = storage().getItem(place);
    if (text === null) return null;
    const kept: unknown = JSON.parse(text);
    return typeof kept === 'object' && kept !== null && typeof (kept as Kept).text === 'string' ? (kept as Kept) : null;
  } catch {
    return null;
  }
}

export const refusalWords: Record<Refusal, string> = {
  refused: 'This browser keeps nothing for this page. Your work stays in this window only: save the file before you close it.',
  full: 'The browser’s storage for this page is full. Your work stays in this window only: save the file before you close it.',
  large: 'This file is too large for the browser to keep. Your work stays in this window only: save the file before you close it.',
};
