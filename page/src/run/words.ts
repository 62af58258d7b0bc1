/** How a run's values are told. */

/** Lengths of ten metres and more read better in metres. */
export const length_kind = (length: number): 'short_length' | 'web_length' => (length >= 10 ? 'web_length' : 'short_length');

/** Air that dies away never quite gets to nothing; below one pascal it is nothing to a reader. */
export const gauge = (pressure: number): number => (Math.abs(pressure) < 1 ? 0 : pressure);
