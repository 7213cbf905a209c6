/** What is looked at on press and seldom measured, offered for lines that a person adds: common practice. */
export const usualObservations = [
  'Colour matches the approved print',
  'Register is within tolerance',
  'Barcode reads',
  'Text and artwork are those of the approved proof',
  'No streaks, hazing or pinholes',
  'Repeat length is within tolerance',
  'Winding is even and edges are clean',
  'Treated side is printed',
] as const;
