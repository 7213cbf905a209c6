/** Attached to a long form: the key that ends a line of typing does not send it half filled in; its button does. */
export function enterDoesNotSend(form: HTMLElement): () => void {
  const keep = (event: KeyboardEvent) => {
    if (event.key === 'Enter' && event.target instanceof HTMLInputElement) event.preventDefault();
  };
  form.addEventListener('keydown', keep);
  return () => form.removeEventListener('keydown', keep);
}
