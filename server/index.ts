export { type AppOptions, createApp } from './app.ts';
export {
  PortTakenError,
  type RunningServer,
  type StartOptions,
  startServer,
} from './start-server.ts';
