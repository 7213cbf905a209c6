/** '1 entry', '12 entries'. */
export function countWords(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}
