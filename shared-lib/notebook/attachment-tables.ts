import type { AttachedTo } from './attachment-entries.ts';

/** Files, what they belong to, and photographs that were measured. See `tables.ts`. */
export interface AttachmentTables {
  attachment: { sha256: string; name: string; mediaType: string; size: number; addedSeq: number };
  attachment_link: {
    attachedTo: AttachedTo;
    attachedId: string;
    sha256: string;
    caption: string;
    linkedAt: string;
    linkedBy: string;
    seq: number;
  };
  photo: {
    photoId: string;
    testId: string;
    row: string;
    key: string;
    sha256: string;
    planeSha256: string;
    /** JSON: `PhotoReading`. */
    reading: string;
    seq: number;
  };
}
