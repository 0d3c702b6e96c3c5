import type { HeatBandId } from '../../core/index.ts';

/** The bands in one word each, for the cells of the table. */
export const BAND_SHORT: Readonly<Record<HeatBandId, string>> = {
  'usual care': 'usual',
  caution: 'caution',
  'half the run time': 'half',
  'walk only': 'walk',
  'no run': 'no run',
};
export const BAND_HEADS: Readonly<Record<HeatBandId, string>> = {
  'usual care': 'Usual care',
  caution: 'Caution',
  'half the run time': 'Half the run time',
  'walk only': 'Walk only',
  'no run': 'No run',
};
