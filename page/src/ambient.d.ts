declare module '@core/holdback.js' {
  import type { CoreModule } from './core/module';
  const create: (options: {
    wasmBinary?: Uint8Array;
    instantiateWasm?: (imports: WebAssembly.Imports, got: (instance: WebAssembly.Instance) => void) => object;
  }) => Promise<CoreModule>;
  export default create;
}
