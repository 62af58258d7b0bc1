declare module 'virtual:core-wasm' {
  /** The core's .wasm, gzipped, in base64. */
  const packed: string;
  export default packed;
}
declare module '@core/holdback.js' {
  import type { CoreModule } from './core/module';
  const create: (options: { wasmBinary: ArrayBuffer }) => Promise<CoreModule>;
  export default create;
}
