export { type AppOptions, createApp } from './app.ts';
export {
  PortTakenError,
  type RunningServer,
  type StartOptions,
  startServer,
} from './start-server.ts';
export { openStore, type Store, type StoreOptions } from './store/open-store.ts';
export { StoreFullError, StoreNewerError, StoreTakenError } from './store/store.ts';
