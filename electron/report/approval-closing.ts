import type { Content } from 'pdfmake/interfaces.js';
import { LIMITS_NOTE } from '../../shared-lib/plan/limits-note.ts';
import type { ApprovalContent } from '../../shared-lib/report/approval-content.ts';
import { instantText, panelLayout, size, theme } from './look.ts';

/** The food-contact note stands on the page of every approval: what is pressed may lie beside food. */
const FOOD_NOTE =
  'This approval is of the print as tested. Fitness for contact with food is a matter of the law that applies, the declarations of the suppliers and the finished pack.';

/** Cautions, what the limits are worth, and the signature with the record that it stands on. */
export function approvalClosing({ approval, signature, record }: ApprovalContent, missing: string[]): Content[] {
  const food = approval.cautions.filter(({ caution }) => caution.hazard === 'food-contact');
  const small = (text: string, label = ''): Content => ({ text: [...(label ? [{ text: `${label}  `, bold: true }] : []), text], fontSize: size.small - 1, color: theme.quiet, margin: [0, 0, 0, 1.5] });
  return [
    ...food.map(({ caution, methods }) => small(`${caution.text} (${methods})`, 'Caution')),
    small(`${FOOD_NOTE} ${LIMITS_NOTE}`),
    ...(missing.length > 0 ? [small(`Characters that the typeface lacks are printed as □: ${missing.join(', ')}.`)] : []),
    {
      margin: [0, 4, 0, 0],
      unbreakable: true,
      table: {
        widths: ['*'],
        body: [
          [
            {
              stack: [
                { text: `${signature.name}${signature.role ? `, ${signature.role}` : ''}`, bold: true, fontSize: 11 },
                { text: `${signature.meaning}.`, margin: [0, 2, 0, 2] },
                { text: `Signed by passphrase on ${instantText(signature.at)}, on the first ${record.entries} entries of the notebook’s record. The hash of the last of them stands for all before it:`, fontSize: size.small },
                { text: record.chainHash, fontSize: size.small, bold: true, margin: [0, 1, 0, 0] },
              ],
            },
          ],
        ],
      },
      layout: panelLayout(theme.accent),
    },
  ];
}
