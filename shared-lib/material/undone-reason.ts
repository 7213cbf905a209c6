/** The reason that stands with every entry that undoes another: what was added and undone was never meant. */
export const UNDONE = 'undone';
