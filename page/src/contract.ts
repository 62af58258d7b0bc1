/** What the page asks of the core in its worker. JSON as src/holdback/api defines it; SI. */
export interface Core {
  answer(request: Record<string, unknown>): Promise<any>;
  liveOpen(request: Record<string, unknown>): Promise<any>;      // {run, state} or an answer that refuses
  liveAdvance(run: number, seconds: number, inputs: Record<string, unknown>): Promise<any>;  // {run, state} or {problem}
  /** Advances of `step` seconds, one after another for some milliseconds: a list of what liveAdvance answers for each run. */
  liveLeap(runs: number[], step: number, within: number, inputs: Record<string, unknown>): Promise<any[][]>;
  liveClose(run: number): Promise<void>;
}
/** The stand as the file says it, parsed TOML (quantities still text), with what check answered. */
export interface StandView {
  text: string; file: any; check: any; job: string; units: 'si' | 'us';
  /** A table of jobs beside the file, and the fit that the core recommends for the mix, once it is known. */
  jobs?: { name: string; text: string; sheet?: boolean } | null; fit?: any;
}
/** Shown by main.tsx under the area "run". */
export interface RunAreaProps { core: Core; stand: StandView; theme: 'light' | 'dark' }
/** True-to-scale elevation; used at the top of Describe and inside Run. `live` moves it; onPart opens inputs of a part. */
export interface ElevationProps { stand: StandView; live?: any; onPart?: (part: string) => void; selected?: string }
/** A number of a quantity kind in the reader's units, and its unit; page/src/units.ts, from the schema's own unit names. */
export interface Show { (value: number, kind: string, units: 'si' | 'us'): string }
