import type { HeatBandId } from './types.ts';

// What each band asks for: common practice. Nobody needs shade at 4 °C, where the bands of a dog
// with burdens may lie: the words go by the air as well as by the band.

/** In every band, and in cold, with running: overheated dogs were seen at cool races too. */
export const WATCH = 'Watch the dog: a wide, long tongue, or falling behind, means stop and walk.';
const WATER = 'Carry water and offer it every 15 to 20 minutes.';
const SHADE = 'Early or late in the day, and in the shade where you can.';

const warmOnly = (warm: boolean, text: string): string[] => (warm ? [text] : []);

/** What to do in a band; `warm` where the air is past usual care for a dog without burdens. */
export function heatAdvice(band: HeatBandId, warm: boolean): string[] {
  switch (band) {
    case 'usual care':
      return [`Run as planned. ${WATER}`, WATCH];
    case 'caution':
      return [`Run as planned, with care. ${WATER}`, WATCH, ...warmOnly(warm, SHADE)];
    case 'half the run time':
      return [`Run half of the planned minutes at most. ${WATER}`, WATCH, ...warmOnly(warm, SHADE)];
    case 'walk only':
      return [
        warm ? 'Do not run. Walk in the shade, with water.' : 'Do not run. Walk, with water.',
      ];
    case 'no run':
      return [
        warm
          ? 'No running. Short walks in the coolest hours only.'
          : 'No running. Quiet walks, with water.',
      ];
  }
}
