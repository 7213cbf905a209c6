/** Stands wherever proposed limits do. */
export const LIMITS_NOTE =
  'Limits marked ‘common practice’ are starting values of the trade, set by no standard. The customer’s specification and local law prevail.';
