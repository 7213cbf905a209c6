import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

export const FONT_FAMILY = 'Source Sans 3';

/** The folder of the report's typeface; the only folder that a report may read from. */
export const fontFolder = dirname(createRequire(import.meta.url).resolve('@expo-google-fonts/source-sans-3/package.json'));

/** TrueType files of the cuts in use. */
export const fontFiles = {
  regular: join(fontFolder, '400Regular', 'SourceSans3_400Regular.ttf'),
  italic: join(fontFolder, '400Regular_Italic', 'SourceSans3_400Regular_Italic.ttf'),
  semibold: join(fontFolder, '600SemiBold', 'SourceSans3_600SemiBold.ttf'),
  semiboldItalic: join(fontFolder, '600SemiBold_Italic', 'SourceSans3_600SemiBold_Italic.ttf'),
};
