/** Hands a file to the browser or the shell to be saved. */
export function saveFile(fileName: string, base64: string, mediaType: string): void {
  const address = addressOf(base64, mediaType);
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
}

/** Shows a file in a window of its own; false where the host opens none. */
export function openFile(base64: string, mediaType: string): boolean {
  return window.open(addressOf(base64, mediaType), '_blank') !== null;
}

/** Of the content, for as long as the other side needs to take hold of it. */
function addressOf(base64: string, mediaType: string): string {
  const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
  const address = URL.createObjectURL(new Blob([bytes], { type: mediaType }));
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
  return address;
}
