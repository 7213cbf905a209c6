/** A name as the stem of a file's name, with nothing in it that a file system or a mail program minds: 'Pouch, lot 7' → 'Pouch-lot-7'. */
export function fileStem(name: string): string {
  return name.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '');
}
