/** Hands a file to the browser or the shell to be saved. */
export function saveFile(fileName: string, base64: string, mediaType: string): void {
  const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
  const address = URL.createObjectURL(new Blob([bytes], { type: mediaType }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // The download has taken its own hold of the blob by then.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
