/** Upper ends of the bands of area lost, in percent; above the last one comes the worst grade. */
const BAND_ENDS_PCT = [5, 15, 35, 65] as const;

/**
 * Grade by ASTM D3359, method B, from the area lost in percent (0–100): 5 stands for 5B, nothing lost, 0 for 0B.
 * The standard's words leave the shared ends of its bands open ('5 to 15 %', '15 to 35 %'). Decided here: exactly 5 % is 3B,
 * since 4B is for less than 5 %; exactly 15, 35 and 65 % belong to the better band, as in ISO 2409.
 */
export function gradeD3359(lostPct: number): number {
  if (lostPct === 0) return 5;
  if (lostPct < BAND_ENDS_PCT[0]) return 4;
  if (lostPct <= BAND_ENDS_PCT[1]) return 3;
  if (lostPct <= BAND_ENDS_PCT[2]) return 2;
  return lostPct <= BAND_ENDS_PCT[3] ? 1 : 0;
}

/** '4B' */
export function textD3359(grade: number): string {
  return `${grade}B`;
}

/** Class by ISO 2409 from the area lost in percent (0–100): 0 nothing lost, 1 up to and including 5 %, … 5 above 65 %. */
export function gradeISO2409(lostPct: number): number {
  if (lostPct === 0) return 0;
  const band = BAND_ENDS_PCT.findIndex((end) => lostPct <= end);
  return band === -1 ? BAND_ENDS_PCT.length + 1 : band + 1;
}

/** Whether the two scales, or two readers of D3359, may part over this area. */
export function isAtBandEdge(lostPct: number): boolean {
  return BAND_ENDS_PCT.some((end) => end === lostPct);
}
