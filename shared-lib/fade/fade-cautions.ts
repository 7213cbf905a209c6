/** What to heed with every fade result: of the conclusion and at the bench. */
export const fadeCautions = [
  'Exposure in the laboratory ranks prints against a control under the same lamp; it never equals a time outdoors or in a window. Light, heat, moisture and air act together and differ from place to place.',
  'Xenon and fluorescent lamps give strong UV light and ozone and run hot: do not look into the lamp, keep guards and exhaust in place, let the chamber cool, and follow the maker’s instructions, the safety data sheets and local rules.',
];
