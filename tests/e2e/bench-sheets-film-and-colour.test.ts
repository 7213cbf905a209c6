import { allBenchExamples, isOfFilmAndColour } from './bench-examples.ts';
import { walkBenchSheets } from './bench-sheet-suite.ts';

// In a file of its own, so that it runs beside the others.
walkBenchSheets('bench-sheets-film-and-colour', (await allBenchExamples()).filter(isOfFilmAndColour));
