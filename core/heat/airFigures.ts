import { figure, type Figure } from '../figure.ts';
import { from } from '../origin.ts';
import { dewPoint, heatIndex, type Air } from './air.ts';

const inputsOf = ({ tempC, humidityPct }: Air) => [
  { label: 'Air temperature in the shade', value: tempC, unit: '°C' },
  { label: 'Relative humidity', value: humidityPct, unit: '%' },
];

/** The heat index of this air, °C, with where it comes from. Information only. */
export function heatIndexFigure(air: Air): Figure {
  return figure(heatIndex(air), {
    id: 'heatIndex',
    label: 'Heat index',
    unit: '°C',
    formula: 'regression of Rothfusz with the agency’s switch and adjustments',
    inputs: inputsOf(air),
    notes: ['Made for resting people in the shade. It gates nothing here.'],
    ...from('B', 'S', 'noaaHeatIndex'),
  });
}

/** The dew point of this air, °C; null in air too dry to have one (under 0.1 % humidity). */
export function dewPointFigure(air: Air): Figure | null {
  if (air.humidityPct < 0.1) return null;
  return figure(dewPoint(air), {
    id: 'dewPoint',
    label: 'Dew point',
    unit: '°C',
    formula: '243.04 γ / (17.625 − γ), γ = ln(RH / 100) + 17.625 t / (243.04 + t)',
    inputs: inputsOf(air),
    notes: ['The higher it is, the less panting cools. It gates nothing here.'],
    ...from('C', 'C', 'magnus'),
  });
}
