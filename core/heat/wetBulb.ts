import { figure, type Figure } from '../figure.ts';
import { from } from '../origin.ts';
import { checkAir, type Air } from './air.ts';

/** What Stull's fit was made for; outside it the nearest edge is taken. */
const FIT_TEMP_C = { min: -20, max: 50 } as const;
const FIT_HUMIDITY_PCT = { min: 5, max: 100 } as const;

const within = (value: number, { min, max }: { min: number; max: number }): number =>
  Math.min(max, Math.max(min, value));

/**
 * Wet-bulb temperature, °C: how far evaporation can cool in this air, from temperature and
 * humidity at sea level.
 *
 * `Tw = T atan(0.151977 (RH + 8.313659)^½) + atan(T + RH) − atan(RH − 1.676331)
 *  + 0.00391838 RH^1.5 atan(0.023101 RH) − 4.686035`
 *
 * The fit reaches from −20 to 50 °C and 5 to 99 %, within 1 °C; its last per cent, to saturation, is
 * carried on here, and air beyond its other edges is taken at the edge.
 *
 * @throws RangeError for −40–60 °C and 0–100 %.
 * @example wetBulb({ tempC: 20, humidityPct: 50 }) // => 13.7
 * Source: Stull 2011, J Appl Meteorol Climatol 50:2267 (example M).
 */
export function wetBulb(air: Air): number {
  checkAir(air);
  const t = within(air.tempC, FIT_TEMP_C);
  const rh = within(air.humidityPct, FIT_HUMIDITY_PCT);
  return (
    t * Math.atan(0.151977 * Math.sqrt(rh + 8.313659)) +
    Math.atan(t + rh) -
    Math.atan(rh - 1.676331) +
    0.00391838 * rh ** 1.5 * Math.atan(0.023101 * rh) -
    4.686035
  );
}

/**
 * Shade wet-bulb globe temperature, °C: `0.7 Tw + 0.3 T`, without sun the globe being as warm as
 * the air.
 *
 * @throws RangeError for −40–60 °C and 0–100 %.
 * @example shadeWbgt({ tempC: 10, humidityPct: 70 }) // => 7.9
 * Source: Stull 2011 for Tw; the weights are those of the index without sun (C).
 */
export function shadeWbgt(air: Air): number {
  return 0.7 * wetBulb(air) + 0.3 * air.tempC;
}

/**
 * Shade wet-bulb globe temperature of this air, °C, with where it comes from.
 * @example shadeWbgtFigure({ tempC: 10, humidityPct: 70 }) // => { value: 7.9, unit: '°C', … }
 */
export function shadeWbgtFigure(air: Air): Figure {
  return figure(shadeWbgt(air), {
    id: 'shadeWbgt',
    label: 'Shade wet-bulb globe temperature',
    unit: '°C',
    formula: '0.7 Tw + 0.3 T, the wet bulb Tw after Stull 2011',
    inputs: [
      { label: 'Air temperature in the shade', value: air.tempC, unit: '°C' },
      { label: 'Relative humidity', value: air.humidityPct, unit: '%' },
      { label: 'Wet bulb', value: Math.round(wetBulb(air) * 10) / 10, unit: '°C' },
    ],
    notes: [
      'In the shade and at sea level; the wet bulb about {1 °C off} at most.',
      'That a composite of warmth and humidity tells more than warmth alone was seen in dogs after races; where the bands lie on it is our own choice.',
    ],
    ...from('D', 'C', 'stull2011', 'carterHall2018', 'higginsIampietro'),
  });
}
