/**
 * What a technician puts into one field or cell:
 * - text: as it is typed on the keyboard. In a choice cell it is the shortcut key of the choice.
 * - `csv`: the content of a file that is chosen for a force trace or a spectrum.
 * - `pasted`: text from the clipboard, e.g. a spectrum of many lines.
 * - `photo`: path of a picture from the root of the checkout.
 */
export type Typed = string | { csv: string } | { pasted: string } | { photo: string };

/** Typed values by the key of their field; a key that is left out is not typed. */
export type TypedRow = Record<string, Typed>;

/** One test from the first key to its result, worked independently of the program. */
export interface BenchExample {
  /** Id of the method. */
  method: string;
  /** What sets it apart from the method's first example, e.g. 'from spectra'; left out for that one. */
  variant?: string;
  conditions: TypedRow;
  /** In the order of the sheet. */
  rows: TypedRow[];
  /**
   * Per property (its key, or its title) its value, and where wanted its interval, as the sheet prints them: 'Wetting tension' reads
   * `38.4 mN/m` and `95 % interval 37.6 to 39.2`.
   */
  expect: { property: string; text: string; interval?: string }[];
  /** Limits that are set before the readings are typed; the ends as typed. */
  limits?: { property: string; lower?: string; upper?: string }[];
  /** Word beside each limited property. */
  verdict?: { property: string; word: 'meets' | 'falls short' | 'undecided' }[];
  /** Parts of a caution or flag that this sheet must show. */
  flags?: string[];
  /** Where the expectation comes from: the published example, or the arithmetic itself. */
  source: string;
}
