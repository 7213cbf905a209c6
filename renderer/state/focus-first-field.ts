/** Attached to a form that opens by a button: typing can begin at once. */
export function focusFirstField(form: HTMLElement): void {
  form.querySelector<HTMLElement>('input, select, textarea')?.focus();
}
