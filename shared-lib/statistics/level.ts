import { z } from 'zod';

/** Confidence level of the intervals, as a fraction. */
export const levelSchema = z.number().min(0.5).max(0.9999).default(0.95);
