import { InputError } from '../../../shared-lib/calculation/input-error.ts';

/** A passphrase is not looked at before a time has passed; the sentence holds that time in words (`waitInWords`). */
export class TooEarly extends InputError {
  constructor(
    field: string,
    message: string,
    readonly waitSeconds: number,
  ) {
    super(field, null, message);
  }
}
