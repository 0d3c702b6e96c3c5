/// <reference types="vite/client" />

// For programs that read the components without a Vue compiler, such as the tests' type check.
declare module '*.vue' {
  import type { DefineComponent } from 'vue';

  const component: DefineComponent<object, object, unknown>;
  export default component;
}
