import { fileURLToPath } from 'node:url';

/** The fonts that the handouts are printed with. */
export const fontsFolder = fileURLToPath(new URL('../../../templates/fonts', import.meta.url));
