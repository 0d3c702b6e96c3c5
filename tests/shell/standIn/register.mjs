// Preloaded into the child process that boots the built shell: 'electron' resolves to the stand-in.
import { registerHooks } from 'node:module';

const standIn = new URL('./electron.ts', import.meta.url).href;

registerHooks({
  resolve(specifier, context, next) {
    return specifier === 'electron'
      ? { url: standIn, shortCircuit: true }
      : next(specifier, context);
  },
});
