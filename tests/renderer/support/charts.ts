import type { VueWrapper } from '@vue/test-utils';
import ChartCanvas from '../../../renderer/chart/ChartCanvas.vue';
import type { ChartSpec } from '../../../renderer/chart/spec.ts';

/** What the charts inside of something are to draw. */
export const specsIn = (wrapper: VueWrapper): ChartSpec[] =>
  wrapper
    .findAllComponents(ChartCanvas)
    .map((canvas) => (canvas.props() as { spec: ChartSpec }).spec);
